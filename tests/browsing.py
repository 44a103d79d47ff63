"""What the tests that look through a browser speak of."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final
from urllib.parse import urlsplit

from playwright.sync_api import ConsoleMessage, Error, Page, Request

SUB_PATH: Final = "/paper/"
"""A site must work below a path, as it does on most hosts; so it is served there."""
AxeFaults = Callable[[Page], tuple[str, ...]]
"""Asks about a page; each fault is a line of text."""


@dataclass(frozen=True, slots=True)
class Served:
    """A built site and where it is served; ``url`` ends in a slash."""

    folder: Path
    url: str


@dataclass
class Watch:
    """What a page did that it should not: hosts it asked, errors it told the console."""

    other_hosts: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)

    def see_request(self, request: Request) -> None:
        asked = urlsplit(request.url)
        if asked.scheme in ("http", "https", "ws", "wss") and asked.hostname != "127.0.0.1":
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
