"""The demo archive built once and served, and a browser that looks at it."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any, Final

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, Page, sync_playwright

from batchleaf.edition import VARIABLE, Edition
from browsing import AxeFaults, Served, Watch
from serving import Server, build, once, server

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


@pytest.fixture(scope="session")
def sites() -> Iterator[Server]:
    """Where all sites are served."""
    with server() as served:
        yield served


@pytest.fixture(scope="session")
def for_all_processes(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that all processes of the run share."""
    own = tmp_path_factory.getbasetemp()
    return (own.parent if os.environ.get("PYTEST_XDIST_WORKER") else own) / "shared"


@pytest.fixture(scope="session")
def demo_site(sites: Server, for_all_processes: Path) -> Served:
    """The demo archive, built once for the address it is then served from."""
    folder = for_all_processes / "demo"
    once(folder, lambda: build(ROOT, folder, "demo", "build"))
    return Served(folder, sites.serve("demo", folder))


@pytest.fixture(scope="session")
def public_demo(sites: Server, for_all_processes: Path) -> Served:
    """The same in its public edition."""
    folder = for_all_processes / "public"
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(VARIABLE, Edition.PUBLIC.value)
        once(folder, lambda: build(ROOT, folder, "public", "build"))
    return Served(folder, sites.serve("public", folder))


@pytest.fixture(scope="session")
def instant_demo(sites: Server, for_all_processes: Path) -> Served:
    """The same with instant navigation: the theme's script exchanges the page below its header."""
    folder = for_all_processes / "instant"
    theme = {"name": "material", "features": ["navigation.instant"]}
    once(folder, lambda: build(ROOT, folder, "instant", "build", theme=theme))
    return Served(folder, sites.serve("instant", folder))


@pytest.fixture(scope="session")
def faulty_site(sites: Server, for_all_processes: Path) -> Served:
    """What a maker sees while writing, when a record of the demo cannot be read."""
    folder = for_all_processes / "faulty"
    once(folder, lambda: _build_faulty(folder))
    return Served(folder, sites.serve("faulty", folder))


def _build_faulty(folder: Path) -> None:
    archive = folder.with_name("faulty-archive")
    shutil.copytree(ROOT / "projects", archive / "projects", ignore=shutil.ignore_patterns("*.jpg"))
    shutil.copytree(ROOT / "site_src", archive / "site_src")
    shutil.copy(ROOT / "mkdocs.yml", archive)
    (archive / "projects" / "series.yml").write_text("series: none\nseires: two\n", encoding="utf-8")
    build(archive, folder, "faulty", "serve")


# --- the browser ---------------------------------------------------------------


def chromium() -> str | None:
    """The system's Chromium: the one in the variable CHROMIUM, else the first on the path."""
    named = os.environ.get("CHROMIUM")
    return named or next((found for name in BROWSERS if (found := shutil.which(name))), None)


@pytest.fixture(scope="session")
def browser(sites: Server) -> Iterator[Browser]:
    """One Chromium for all tests; a test run of the project itself may not do without."""
    path = chromium()
    if path is None:
        if os.environ.get("CI"):
            pytest.fail("no Chromium is installed; the browser tests may not be left out here")
        pytest.skip("no Chromium found; install it, or name it in CHROMIUM")
    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    arguments = [*ARGUMENTS, sites.rule, *(["--no-sandbox"] if as_root else [])]
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
