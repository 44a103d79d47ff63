"""A site opened as files, by a double click on its first page."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from browsing import Served


@pytest.fixture
def first(page: Page, demo_site: Served) -> Page:
    """The first page, as a file."""
    page.goto((demo_site.folder / "index.html").as_uri())
    return page


def follow(page: Page, href: str) -> None:
    """Click the link that is written so, and arrive at the page in that folder."""
    page.locator(f"a[href$='{href}']").first.click()
    expect(page).to_have_url(re.compile(f"^file:.*{re.escape(href)}$"))
    expect(page.locator("h1")).to_have_count(1)


def test_every_click_arrives_at_a_page(first: Page) -> None:
    """From home to a batch, a supply, the drawer and a series, and back by the site's name."""
    follow(first, "projects/wren-note-bookmarks/index.html")
    follow(first, "drawer/chalk-card/index.html")
    first.get_by_role("navigation", name="Site").get_by_role("link", name="Drawer").click()
    expect(first.locator("h1")).to_have_text("Drawer")
    first.get_by_role("navigation", name="Site").get_by_role("link", name="Series").click()
    follow(first, "house-post/index.html")
    follow(first, "how/index.html")
    first.locator(".mast .name").click()
    expect(first.locator(".gallery")).to_be_visible()


def test_no_link_leads_to_the_list_of_a_folder(first: Page, demo_site: Served) -> None:
    """Also where it leads to a place on a page."""
    found: list[str] = []
    for name in ("index.html", "projects/wren-note-bookmarks/index.html", "about/index.html"):
        first.goto((demo_site.folder / name).as_uri())
        found += first.locator("a").evaluate_all("links => links.map(link => link.href)")
    files = [href for href in found if href.startswith("file:")]
    assert not [href for href in files if href.partition("#")[0].endswith("/")]
    assert any(href.endswith("/how/index.html#paper") for href in files)


def test_a_link_that_a_script_brings_later_arrives_too(first: Page) -> None:
    """It is led as it is followed."""
    first.evaluate("document.body.insertAdjacentHTML('afterbegin', '<a id=late href=\"drawer/\">late</a>')")
    first.locator("#late").click()
    expect(first.locator("h1")).to_have_text("Drawer")


def test_an_old_address_sends_on_to_a_page(page: Page, demo_site: Served) -> None:
    """As on the web, without a click."""
    moved = next(
        file
        for file in sorted((demo_site.folder / "projects").glob("*/index.html"))
        if 'http-equiv="refresh"' in file.read_text(encoding="utf-8")
    )
    page.goto(moved.as_uri())
    expect(page.locator(".batch h1")).to_have_count(1)
    assert page.url.endswith("/index.html")


def test_on_the_web_addresses_stay_short(page: Page, demo_site: Served) -> None:
    """No link of a page that is served names a file."""
    page.goto(demo_site.url)
    hrefs: list[str] = page.locator("a").evaluate_all("links => links.map(link => link.href)")
    assert hrefs
    assert not any("index.html" in href for href in hrefs)
    page.locator(".gallery a").first.click()
    assert page.url.endswith("/")
