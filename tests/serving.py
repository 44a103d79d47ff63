"""Sites that tests look at: each built once for all processes of a run, served by one server in each."""

from __future__ import annotations

import os
import threading
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, Final, Literal
from urllib.parse import urlsplit

from browsing import SUB_PATH

PORT: Final = 8000
LONGEST: Final = 400
"""Seconds that one process waits for what another one builds."""


def address(host: str) -> str:
    """Where a site stands, the same in every run and process, so that what is made of it is as well.

    Browsers take a name below ``localhost`` for a safe place, as they do a site behind ``https``.
    """
    return f"http://{host}.localhost:{PORT}{SUB_PATH}"


Headers = dict[str, Mapping[str, str]]
"""Host → what it sends with each file besides."""


class Server:
    """Serves folders below :data:`SUB_PATH` and nothing beside it, each under a host of its own."""

    def __init__(self, server: ThreadingHTTPServer, folders: dict[str, Path], headers: Headers) -> None:
        self._port = server.server_address[1]
        self._folders, self._headers = folders, headers

    def serve(self, host: str, folder: Path, headers: Mapping[str, str] | None = None) -> str:
        """Show ``folder``, each file with these headers besides; returns its address."""
        self._folders[f"{host}.localhost:{PORT}"] = folder
        self._headers[f"{host}.localhost:{PORT}"] = headers or {}
        return address(host)

    @property
    def rule(self) -> str:
        """What a browser is told, so that it finds these hosts here."""
        return f"--host-resolver-rules=MAP *.localhost:{PORT} 127.0.0.1:{self._port}"


@contextmanager
def server() -> Iterator[Server]:
    """A server for as long as it is needed."""
    folders: dict[str, Path] = {}
    headers: Headers = {}

    class Handler(SimpleHTTPRequestHandler):
        def translate_path(self, path: str) -> str:
            folder = folders.get(self.headers.get("Host", ""))
            if folder is None or not urlsplit(path).path.startswith(SUB_PATH):
                return str(Path(os.devnull, "no-such-place"))
            self.directory = str(folder)
            return super().translate_path("/" + path.removeprefix(SUB_PATH))

        def end_headers(self) -> None:
            for name, value in headers.get(self.headers.get("Host", ""), {}).items():
                self.send_header(name, value)
            super().end_headers()

        def log_message(self, format: str, *args: object) -> None:  # noqa: A002
            """Keep the test's output readable."""

    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as served:
        thread = threading.Thread(target=served.serve_forever, daemon=True)
        thread.start()
        yield Server(served, folders, headers)
        served.shutdown()
        thread.join()


def once(folder: Path, make: Callable[[], object]) -> None:
    """Let ``make`` fill ``folder``, in the first of the processes that ask for it; the others wait."""
    mine, done, failed = (folder.with_name(f"{folder.name}.{word}") for word in ("mine", "done", "failed"))
    folder.parent.mkdir(parents=True, exist_ok=True)
    try:
        mine.mkdir()
    except FileExistsError:
        for _ in range(LONGEST * 10):
            if done.exists():
                return
            assert not failed.exists(), "another process could not build this; its own tests say why"
            time.sleep(0.1)
        raise TimeoutError(f"{folder} was not built by another process") from None
    try:
        make()
    except BaseException:
        failed.mkdir()
        raise
    done.mkdir()


def build(archive: Path, folder: Path, host: str, command: Literal["build", "serve"], **options: Any) -> None:
    """Build an archive into ``folder`` for its address, as MkDocs' ``command`` does."""
    # Only within Python can an archive be built for another address than its own.
    from mkdocs.commands.build import build
    from mkdocs.config import load_config

    config = load_config(
        str(archive / "mkdocs.yml"),
        site_dir=str(folder),
        site_url=address(host),
        strict=command == "build",
        **options,
    )
    config.plugins.on_startup(command=command, dirty=False)
    build(config)
    config.plugins.on_shutdown()
