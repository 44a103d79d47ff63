"""Does every link inside a built site lead somewhere?

MkDocs checks the links of Markdown pages alone; bodies that are handed over as
HTML, themes and pictures are checked here, in the files as they will be served.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Final
from urllib.parse import unquote

_TAGS: Final = re.compile(
    r"""<!--.*?(?:-->|\Z)"""
    r"""|(?P<opener><(?P<raw>script|style|textarea|title)\b(?:[^"'>]++|"[^"]*+"|'[^']*+')*+>).*?(?:</(?P=raw)|\Z)"""
    r"""|(?P<tag><[a-z](?:[^"'>]++|"[^"]*+"|'[^']*+')*+>)""",
    re.DOTALL | re.IGNORECASE,
)
_TELLING: Final = re.compile(
    r"""[\s"'/](?:id|name|href|xlink:href|src|srcset|poster|http-equiv)\s*=""", re.IGNORECASE
)
_SCHEME: Final = re.compile(r"[a-z][a-z0-9+.-]*:", re.IGNORECASE)
_ELSEWHERE: Final = ("http:", "https:", "mailto:", "tel:", "data:")
_FILES: Final = ("src", "poster")


@dataclass(frozen=True, slots=True, order=True)
class BrokenLink:
    """A link that leads nowhere; ``page`` is the file's address from the site's root."""

    page: str
    href: str
    why: str


@dataclass(frozen=True, slots=True)
class _Tag:
    """What one tag says: links to other places, links to files, names that links can point at."""

    links: tuple[str, ...]
    files: tuple[str, ...]
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Reading:
    """All that one page links to, the files it shows, and the names that links can point at."""

    links: frozenset[str]
    files: frozenset[str]
    names: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Target:
    """A file of the site and the place in it; or, in ``why``, the reason that it is none."""

    file: str
    fragment: str
    why: str = ""


def broken_links(site_dir: Path, base_path: str = "/") -> tuple[BrokenLink, ...]:
    """All links of all pages below ``site_dir`` that lead nowhere, by page.

    ``base_path`` is the path that the site will be served from ("/paper/");
    links from the root count from there. Other hosts are not asked.
    Raises :class:`OSError` where a page cannot be read.
    """
    files = frozenset(_files(site_dir))
    pages = {
        name: read_page((site_dir / name).read_text("utf-8", "replace")) for name in files if _is_page(name)
    }
    base = "/" + base_path.strip("/") + "/" if base_path.strip("/") else "/"
    found = (broken for page in pages for broken in _broken_on(page, pages, files, base))
    return tuple(sorted(found))


def _files(site_dir: Path) -> Iterator[str]:
    # Names are compared as text: some systems would find a file under a name in another case.
    for folder, _, names in os.walk(site_dir):
        inside = Path(folder).relative_to(site_dir)
        yield from ((inside / name).as_posix() for name in names)


def _is_page(name: str) -> bool:
    return name.endswith((".html", ".htm"))


# --- reading a page ------------------------------------------------------------


def read_page(text: str) -> Reading:
    """What ``text``, the HTML of a page, links to and is called."""
    # Tags, unlike pages, recur: reading each kind once is two to three times faster.
    tags = [_read_tag(tag) for found in _TAGS.finditer(text) if (tag := found["opener"] or found["tag"])]
    return Reading(
        links=frozenset(link for tag in tags for link in tag.links),
        files=frozenset(file for tag in tags for file in tag.files),
        names=frozenset(name for tag in tags for name in tag.names),
    )


_NOTHING: Final = _Tag((), (), ())


@lru_cache(maxsize=1 << 16)
def _read_tag(tag: str) -> _Tag:
    if not _TELLING.search(tag):
        return _NOTHING
    reader = _TagReader()
    reader.feed(tag)
    return reader.told


class _TagReader(HTMLParser):
    """Reads a single tag, with its quotes and character references."""

    told = _NOTHING

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {name: (value or "").strip() for name, value in reversed(attrs)}
        links = [told[name] for name in ("href", "xlink:href") if name in told]
        if told.get("http-equiv", "").lower() == "refresh":
            links += re.findall(r"url=\s*['\"]?([^'\"]*)", told.get("content", ""), re.IGNORECASE)
        files = [told[name] for name in _FILES if name in told] + list(_in_srcset(told.get("srcset", "")))
        names = [told[name] for name in ("id", "name") if told.get(name) and (name == "id" or tag == "a")]
        self.told = _Tag(tuple(links), tuple(files), tuple(names))


def _in_srcset(srcset: str) -> Iterator[str]:
    """The addresses in a list of candidates; a comma inside an address does not part it."""
    for candidate in re.split(r",\s+|,$", srcset):
        if candidate.strip():
            yield candidate.split()[0]


# --- following a link ----------------------------------------------------------


def _broken_on(
    page: str, pages: dict[str, Reading], files: frozenset[str], base: str
) -> Iterator[BrokenLink]:
    folder = page.rpartition("/")[0]
    read = pages[page]
    for href in read.links | read.files:
        if not href and href in read.files:
            yield BrokenLink(page, href, "names no file")
        elif not _leads_elsewhere(href):
            target = _follow(folder, href, base)
            if why := target.why or _why_missing(target, page, pages, files):
                yield BrokenLink(page, href, why)


def _leads_elsewhere(href: str) -> bool:
    return href.startswith("//") or href.lower().startswith(_ELSEWHERE)


@lru_cache(maxsize=1 << 14)
def _follow(folder: str, href: str, base: str) -> _Target:
    """Where ``href`` on a page in ``folder`` leads; an empty file means the page itself."""
    if scheme := _SCHEME.match(href):
        return _Target("", "", f"{scheme[0]} is no kind of address for a page")
    address, _, fragment = href.partition("#")
    path = unquote(address.partition("?")[0])
    name = unquote(fragment.partition(":~:")[0])
    if not path:
        return _Target("", name)
    if path.startswith("/") and not (path + "/").startswith(base):
        return _Target("", "", f"leads out of {base}, where the site lives")
    steps = path.removeprefix(base.rstrip("/")) if path.startswith("/") else f"{folder}/{path}"
    inside = _walk(steps)
    if inside is None:
        return _Target("", "", "climbs above the site's first page")
    return _Target(inside, name)


def _walk(path: str) -> str | None:
    """``path`` without its dots; ends in a slash where it names a folder; None: above the root."""
    kept: list[str] = []
    steps = path.split("/")
    for step in steps:
        if step == "..":
            if not kept:
                return None
            kept.pop()
        elif step not in ("", "."):
            kept.append(step)
    return "/".join(kept) + ("/" if steps[-1] in ("", ".", "..") else "")


def _why_missing(target: _Target, page: str, pages: dict[str, Reading], files: frozenset[str]) -> str:
    """Empty where the target is there."""
    file = _file_of(target.file, files) if target.file else page
    if file not in files:
        return f"there is no {file} in the site"
    # Browsers take an empty fragment and “top” for the start of any page.
    if file in pages and target.fragment not in ("", "top") and target.fragment not in pages[file].names:
        return f"nothing on {file} is called “{target.fragment}”"
    return ""


def _file_of(path: str, files: frozenset[str]) -> str:
    if path.endswith("/"):
        return f"{path}index.html".removeprefix("/")
    return path if path in files else (f"{path}/index.html" if f"{path}/index.html" in files else path)
