"""What the theme's search finds on the pages made from records: read off each body once, then kept.

The search reads every tag of every page in every build. Here it reads what it is to find alone, and
what it made of an equal page before is handed to it instead.
"""

from __future__ import annotations

import contextlib
import json
from collections.abc import Mapping, MutableMapping
from dataclasses import dataclass
from html import escape
from importlib.metadata import version
from typing import Any, Final

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.pages import Page

from batchleaf.render.html import searched
from batchleaf.store import CannotKeepError, Store, key_of

FOUND: Final = "found"
"""The part of the store for entries of the search."""
PLUGINS: Final = ("search", "material/search")


class Searching:
    """For one build: pages on their way past the search."""

    def __init__(self, config: MkDocsConfig, store: Store) -> None:
        self._store = store.part(FOUND)
        self._entries = _entries_of(config)
        self._reads = repr([sorted(_search_settings(config).items()), version("mkdocs-material")])
        self._under_way: _UnderWay | None = None

    def before(self, page: Page) -> None:
        """Spare the search what it knows already."""
        whole, meta = page.content or "", page.meta
        page.content = searched(whole)
        told = json.dumps([page.url, page.title, meta, page.content, str(page.toc)])
        key = key_of(told.encode(), self._reads.encode())
        entries = self._entries
        kept = None if entries is None else self._store.read(key)
        if entries is not None and kept is not None:
            entries += json.loads(kept)
            page.meta = {**meta, "search": {"exclude": True}}
            key = ""
        else:
            # The theme's script puts what the search knows of a title into the page as HTML.
            page.meta = {**meta, "title": escape(str(meta.get("title") or page.title), quote=False)}
        self._under_way = _UnderWay(key, whole, meta, len(entries or ()))

    def after(self, page: Page) -> None:
        """Readers get the whole page; what the search made of it is kept."""
        one, self._under_way = self._under_way, None
        if one is None:
            return
        page.content, page.meta = one.content, one.meta
        if one.key and self._entries is not None:
            with contextlib.suppress(CannotKeepError):
                self._store.put(one.key, json.dumps(self._entries[one.entries :]).encode())


@dataclass(frozen=True, slots=True)
class _UnderWay:
    """``key``: under which its entries are to be kept, if at all; ``entries``: how many there were before."""

    key: str
    content: str
    meta: MutableMapping[str, Any]
    entries: int


def _search_settings(config: MkDocsConfig) -> Mapping[str, object]:
    found = next((config.plugins[name] for name in PLUGINS if name in config.plugins), None)
    return dict(found.config) if found else {}


def _entries_of(config: MkDocsConfig) -> list[dict[str, Any]] | None:
    """The list that the theme's search fills; ``None`` where another search, or none, is at work."""
    for name in PLUGINS:
        index = getattr(config.plugins.get(name), "search_index", None)
        entries = getattr(index, "entries", None)
        if isinstance(entries, list):
            return entries
    return None
