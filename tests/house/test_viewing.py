"""The instruments that look at pages see what they are there to see."""

from __future__ import annotations

from playwright.sync_api import Page

from browsing import AxeFaults, Served, Watch

SOUND = '<!doctype html><html lang="en"><title>Paper</title><main><h1>Paper</h1>{}</main></html>'


def test_axe_finds_a_picture_without_words(page: Page, axe_faults: AxeFaults) -> None:
    """A picture without a description is a fault; with one, the page has none."""
    picture = '<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw="{}>'
    page.set_content(SOUND.format(picture.format(' alt="a card"')))
    assert axe_faults(page) == ()
    page.set_content(SOUND.format(picture.format("")))
    assert [fault.partition(":")[0] for fault in axe_faults(page)] == ["image-alt"]


def test_a_request_to_another_host_is_seen(page: Page, watch: Watch) -> None:
    """A style sheet from elsewhere and an error in a script do not go unseen."""
    page.route("https://example.org/**", lambda route: route.fulfill(body=""))
    page.set_content(SOUND.format('<link rel="stylesheet" href="https://example.org/a.css">'))
    page.add_script_tag(content="console.error('torn')")
    assert watch.other_hosts == ["https://example.org/a.css"]
    assert any("torn" in error for error in watch.errors)


def test_nothing_is_served_beside_the_site(page: Page, demo_site: Served) -> None:
    """The test's server answers below the site's path alone, so that a link out of it is noticed."""
    inside = page.goto(demo_site.url)
    beside = page.goto(demo_site.url.removesuffix("path/"))
    assert inside is not None
    assert beside is not None
    assert (inside.status, beside.status) == (200, 404)
