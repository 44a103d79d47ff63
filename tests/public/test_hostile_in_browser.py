"""Texts that mean harm, in every page of both editions as a browser shows it."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import pytest
from playwright.sync_api import Browser, Dialog, Page, expect

from batchleaf.edition import VARIABLE, Edition
from browsing import Served, Watch
from public.hostile import MARKDOWN, PLAIN, SCRIPT, TAGS, TEMPLATES, Words, harmful, lay_out_with
from public.marked import MARK
from serving import Server, build

pytestmark = pytest.mark.slow

HARM: Final = {"markup": (TAGS, SCRIPT), "words": (MARKDOWN, TEMPLATES)}
TRAPS: Final = "window.h = () => { window.__hit = 'h'; };"
MADE_OF: Final = """() => Array.from(document.querySelectorAll('*'), one => {
  const names = one.getAttributeNames();
  const leads = one.getAttribute('href') || one.getAttribute('src') || '';
  const address = /^\\s*([a-z][a-z0-9+.-]*):/i.exec(leads);
  return [one.localName, address ? address[1].toLowerCase() : '', ...names.sort()].join(' ');
})"""
"""What a page is made of once its scripts have run."""


def made_of(page: Page) -> set[str]:
    """Elements with the names of their attributes, and the schemes of their addresses."""
    found: list[str] = page.evaluate(MADE_OF)
    return set(found)


@dataclass(frozen=True, slots=True)
class Edited:
    """An edition of the archive with plain words, and of those with texts that mean harm."""

    plain: Served
    harm: tuple[Served, ...]


def built(words: Words, root: Path, edition: Edition, sites: Server) -> Served:
    """The archive's site, served."""
    lay_out_with(words, root)
    if os.name != "nt":
        batch = root / "projects" / f"{MARK}-made"
        name = "\"'><img src=x onerror=h()>&amp;.jpg" if words is not PLAIN else "another.jpg"
        shutil.copy(batch / f"{MARK}-photo.jpg", batch / name)
    folder = root.with_name(f"{root.name}-site")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(VARIABLE, edition.value)
        build(root, folder, root.name, "build")
    return Served(folder, sites.serve(root.name, folder))


@pytest.fixture(scope="module", params=Edition, ids=str)
def edited(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, sites: Server) -> Edited:
    """All archives in an edition."""
    edition: Edition = request.param
    root = tmp_path_factory.mktemp("browsed")

    def one(name: str, words: Words) -> Served:
        return built(words, root / f"{name}-{edition.value}", edition, sites)

    return Edited(one("plain", PLAIN), tuple(one(kind, harmful(*texts)) for kind, texts in HARM.items()))


@pytest.fixture
def trapped(browser: Browser, watch: Watch) -> Iterator[Page]:
    """A page that notes whatever a text would set off."""
    context = browser.new_context()
    context.set_default_timeout(20_000)
    context.add_init_script(TRAPS)
    # A sheet of notes names no icon, so a browser looks for one above the site.
    context.route("**/favicon.ico", lambda route: route.fulfill(status=204))
    page = context.new_page()
    watch.follow(page)

    def close(dialog: Dialog) -> None:
        watch.errors.append(f"a dialog says {dialog.message}")
        dialog.dismiss()

    page.on("dialog", close)
    yield page
    context.close()


def assert_nothing_happened(page: Page, watch: Watch, name: str) -> None:
    """No script of a text ran, nobody else was asked, nothing failed."""
    assert page.evaluate("'__hit' in window") is False, name
    assert (watch.other_hosts, watch.errors) == ([], []), name


def test_every_page_shows_texts_as_texts(edited: Edited, trapped: Page, watch: Watch) -> None:
    """Pages and sheets of notes: made of what they are made of with plain words, and nothing happens."""
    names = [edited.plain.name(path) for path in sorted(edited.plain.folder.rglob("*.html"))]
    assert len(names) > 30
    for name in names:
        plain = seen_on(edited.plain, trapped, name)
        for harm in edited.harm:
            # Notes are Markdown, and may be bold.
            assert seen_on(harm, trapped, name) - {"strong "} <= plain, name
            assert_nothing_happened(trapped, watch, name)


def seen_on(site: Served, page: Page, name: str) -> set[str]:
    """What a page is made of; one that has moved is looked at as well."""
    site.stay(page, name)
    seen = made_of(page)
    page.unroute_all()
    return seen


def put_in(site: Served, page: Page) -> tuple[set[str], set[str]]:
    """What pages are made of once batches were found, and laid side by side."""
    site.visit(page, "find/")
    page.locator(".finding [name=q]").fill(MARK)
    expect(page.locator(".hits a").first).to_be_visible()
    found = made_of(page)
    page.goto(f"{site.url}side-by-side/?batch={MARK}-made&batch={MARK}-cut")
    expect(page.locator(".beside tbody").first).to_be_attached()
    page.wait_for_timeout(1_000)  # a picture that is none tells so a moment later
    return found, made_of(page)


def test_what_scripts_put_in_is_text(edited: Edited, trapped: Page, watch: Watch) -> None:
    """Found batches, and batches side by side; `test_hostile.py` looks at what the search is given."""
    plain = put_in(edited.plain, trapped)
    for harm in edited.harm:
        for before, after in zip(plain, put_in(harm, trapped), strict=True):
            assert after <= before
        assert_nothing_happened(trapped, watch, harm.url)
