"""The demo archive built once and served, and a browser that looks at it."""

from __future__ import annotations

import functools
import os
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from pathlib import Path
from typing import Any, Final, Literal
from urllib.parse import urlsplit

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, Page, sync_playwright

from batchleaf.edition import VARIABLE, Edition
from browsing import SUB_PATH, AxeFaults, Served, Watch

# How long an example takes depends on what else the machine does; speed is measured elsewhere.
settings.register_profile("house", deadline=None)
settings.load_profile("house")

ROOT: Final = Path(__file__).resolve().parent.parent
BROWSERS: Final = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome")
ARGUMENTS: Final = (
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)

os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Whatever looks through the browser is marked so."""
    for item in items:
        if "browser" in getattr(item, "fixturenames", ()):
            item.add_marker("browser")


# --- the demo archive ----------------------------------------------------------


class _Below(SimpleHTTPRequestHandler):
    """Serves a folder below :data:`SUB_PATH` and nothing beside it."""

    def translate_path(self, path: str) -> str:
        if not urlsplit(path).path.startswith(SUB_PATH):
            return str(Path(self.directory, "no-such-place"))
        return super().translate_path("/" + path.removeprefix(SUB_PATH))

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Keep the test's output readable."""


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The demo archive, built once for the address it is then served from."""
    with _served(ROOT, tmp_path_factory.mktemp("demo") / "site", "build") as site:
        yield site


@pytest.fixture(scope="session")
def public_demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The same in its public edition."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(VARIABLE, Edition.PUBLIC.value)
        with _served(ROOT, tmp_path_factory.mktemp("demo") / "public", "build") as site:
            patch.undo()
            yield site


@pytest.fixture(scope="session")
def instant_demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The same with instant navigation: the theme's script exchanges the page below its header."""
    theme = {"name": "material", "features": ["navigation.instant"]}
    with _served(ROOT, tmp_path_factory.mktemp("demo") / "instant", "build", theme=theme) as site:
        yield site


@pytest.fixture(scope="session")
def faulty_site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """What a maker sees while writing, when a record of the demo cannot be read."""
    archive = tmp_path_factory.mktemp("faulty")
    shutil.copytree(ROOT / "projects", archive / "projects", ignore=shutil.ignore_patterns("*.jpg"))
    shutil.copytree(ROOT / "site_src", archive / "site_src")
    shutil.copy(ROOT / "mkdocs.yml", archive)
    (archive / "projects" / "series.yml").write_text("series: none\nseires: two\n", encoding="utf-8")
    with _served(archive, archive / "site", "serve") as site:
        yield site


@contextmanager
def _served(
    archive: Path, folder: Path, command: Literal["build", "serve"], **options: Any
) -> Iterator[Served]:
    handler = functools.partial(_Below, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        url = f"http://127.0.0.1:{server.server_address[1]}{SUB_PATH}"
        _build(archive / "mkdocs.yml", folder, command, site_url=url, **options)
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        yield Served(folder, url)
        server.shutdown()
        thread.join()


def _build(config_file: Path, site_dir: Path, command: Literal["build", "serve"], **options: Any) -> None:
    # Only within Python can an archive be built for another address than its own.
    from mkdocs.commands.build import build
    from mkdocs.config import load_config

    strict = command == "build"
    config = load_config(str(config_file), site_dir=str(site_dir), strict=strict, **options)
    config.plugins.on_startup(command=command, dirty=False)
    build(config)
    config.plugins.on_shutdown()


# --- the browser ---------------------------------------------------------------


def chromium() -> str | None:
    """The system's Chromium: the one in the variable CHROMIUM, else the first on the path."""
    named = os.environ.get("CHROMIUM")
    return named or next((found for name in BROWSERS if (found := shutil.which(name))), None)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for all tests; a test run of the project itself may not do without."""
    path = chromium()
    if path is None:
        if os.environ.get("CI"):
            pytest.fail("no Chromium is installed; the browser tests may not be left out here")
        pytest.skip("no Chromium found; install it, or name it in CHROMIUM")
    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    arguments = [*ARGUMENTS, "--no-sandbox"] if as_root else [*ARGUMENTS]
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=path, args=arguments)
        yield launched
        launched.close()


@pytest.fixture
def watch() -> Watch:
    """What the test's ``page`` asked of other hosts, and its console's errors."""
    return Watch()


@pytest.fixture
def page(browser: Browser, watch: Watch) -> Iterator[Page]:
    """A fresh page in a fresh profile, watched by ``watch``."""
    context = browser.new_context()
    context.set_default_timeout(15_000)
    opened = context.new_page()
    watch.follow(opened)
    yield opened
    context.close()


@pytest.fixture(scope="session")
def axe_faults() -> AxeFaults:
    """Asks axe-core about a page with every rule it has: each fault as a line of text.

    That is WCAG 2.0 to 2.2 up to AAA, best practices, and what is still on trial.
    """
    script = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
    every_rule = "Object.fromEntries(axe.getRules().map(({ruleId}) => [ruleId, {enabled: true}]))"
    ask = f"axe.run(document, {{resultTypes: ['violations'], rules: {every_rule}}})"

    def faults(page: Page) -> tuple[str, ...]:
        page.evaluate(script)
        found: dict[str, Any] = page.evaluate(ask)
        return tuple(
            f"{violation['id']}: {violation['help']}: {node['target']} {node['html'][:120]}"
            for violation in found["violations"]
            for node in violation["nodes"]
        )

    return faults
