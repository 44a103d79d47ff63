"""What the tests that look through a browser speak of."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final
from urllib.parse import urlsplit

import html5lib
from playwright.sync_api import ConsoleMessage, Error, Page, Request

SUB_PATH: Final = "/some/deep/path/"
"""A site must work below a path, as it does on most hosts; so it is served there."""
SVG: Final = "{http://www.w3.org/2000/svg}"
"""The namespace of drawings, as a parser of HTML tells their elements from the page's own."""
AxeFaults = Callable[[Page], tuple[str, ...]]
"""Asks about a page; each fault is a line of text."""


@dataclass(frozen=True, slots=True)
class Served:
    """A built site and where it is served; ``url`` ends in a slash."""

    folder: Path
    url: str

    def pages(self) -> list[Path]:
        """Every page of the site, in its frame."""
        return [path for path in self._documents() if not (is_sheet(path) or is_for_the_table(path))]

    def sheets(self) -> list[Path]:
        """Every sheet of companion notes, each a document of its own."""
        return [path for path in self._documents() if is_sheet(path)]

    def _documents(self) -> list[Path]:
        return sorted(self.folder.rglob("*.html"))

    def name(self, path: Path) -> str:
        """A page as the site's own links name it: its address below the site's root."""
        return path.relative_to(self.folder).as_posix().removesuffix("index.html")

    def visit(self, page: Page, name: str) -> None:
        """Open a page; one that has moved is followed to where it leads."""
        page.goto(self.url + name)
        if is_moved(self.file(name)):
            page.wait_for_url(lambda url: url != self.url + name)

    def stay(self, page: Page, name: str) -> None:
        """Open a page and stay there, though it has moved: its own text is looked at."""
        file = self.file(name)
        if is_moved(file):
            # Nothing comes from the new address, so that the browser stays where it is.
            there = (file.parent / moved_to(file)).resolve().relative_to(self.folder.resolve()).as_posix()
            page.route(f"{self.url}{there}/", lambda route: route.fulfill(status=204))
        page.goto(self.url + name)

    def file(self, name: str) -> Path:
        """The file behind a page's address."""
        return self.folder / (f"{name}index.html" if name.endswith("/") or not name else name)

    def kinds(self) -> dict[str, str]:
        """One page of each kind, the fullest where there are several: kind → address."""
        largest = sorted(self.pages(), key=lambda path: (-path.stat().st_size, path))
        found: dict[str, str] = {}
        for path in largest:
            found.setdefault(_kind(path, self.name(path)), self.name(path))
        return found


def _is_here(host: str) -> bool:
    return host == "127.0.0.1" or host.endswith(".localhost")


def parsed(path: Path) -> Any:
    """A page as a browser reads it."""
    return html5lib.parse(path.read_text(encoding="utf-8"), namespaceHTMLElements=False)


def is_sheet(path: Path) -> bool:
    """Whether it is a sheet to print, and not a page in the frame of the site."""
    return bool({"notes", "hand-outs"} & set(path.parts[-4:-1]))


def is_for_the_table(path: Path) -> bool:
    """Whether it is the page for the table, a document of its own; `tests/table` looks at it."""
    return path.parent.name == "table"


def is_moved(path: Path) -> bool:
    """Whether the page only leads on to another address."""
    return 'http-equiv="refresh"' in path.read_text(encoding="utf-8")


def moved_to(path: Path) -> str:
    """Where a moved page leads, as it says it."""
    refresh = next(e for e in parsed(path).iter("meta") if e.get("http-equiv") == "refresh")
    return str(refresh.get("content")).partition("url=")[2]


def _kind(path: Path, name: str) -> str:
    """The page's own name at the top; of pages that lie side by side what they are."""
    folder = name.partition("/")[0]
    if name.count("/") < 2:
        return name or "home"
    if name.endswith("/other-sheets/"):
        return "other sheets"
    if folder == "projects":
        return "moved" if is_moved(path) else f"batch {_stage(path)}"
    if folder == "drawer":
        return "pad" if 'id="papers"' in path.read_text(encoding="utf-8") else "item"
    return f"one of {folder}"


def _stage(path: Path) -> str:
    status = json.loads((path.parent / "figures.json").read_text(encoding="utf-8"))["status"]
    return "made" if status in ("made", "published") else "planned"


def texts_of(element: Any) -> Iterator[str]:
    """The text of an element as it is read: no drawings, scripts, dialogs, nothing hidden from all."""
    if (
        element.tag in (f"{SVG}svg", "script", "style", "noscript", "dialog")
        or element.get("hidden") is not None
    ):
        return
    yield element.text or ""
    for child in element:
        yield from texts_of(child)
        yield child.tail or ""


@dataclass
class Watch:
    """What a page did that it should not: hosts it asked, errors it told the console."""

    other_hosts: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)

    def see_request(self, request: Request) -> None:
        asked = urlsplit(request.url)
        if asked.scheme in ("http", "https", "ws", "wss") and not _is_here(asked.hostname or ""):
            self.other_hosts.append(request.url)

    def see_message(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self.errors.append(f"{message.text} ({message.location['url']})")

    def see_error(self, error: Error) -> None:
        self.errors.append(str(error))

    def follow(self, page: Page) -> None:
        """Note what ``page`` does from now on."""
        page.on("request", self.see_request)
        page.on("console", self.see_message)
        page.on("pageerror", self.see_error)
