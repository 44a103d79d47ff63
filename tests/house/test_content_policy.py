"""The header that SECURITY.md offers to hosts forbids nothing that a site needs.

Its words are those of Content Security Policy Level 3 (W3C).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final

import pytest
from playwright.sync_api import Browser, Page, expect

from browsing import Served, Watch
from serving import Server

ROOT: Final = Path(__file__).parents[2]
NAME: Final = "Content-Security-Policy"
POLICY: Final = re.findall(rf"^{NAME}: (.+)$", (ROOT / "SECURITY.md").read_text("utf-8"), re.MULTILINE)
NOTED: Final = """() => {
  window.violations = [];
  document.addEventListener('securitypolicyviolation', ({effectiveDirective, blockedURI}) =>
    window.violations.push(`${effectiveDirective} ${blockedURI}`));
}"""
INLINE: Final = re.compile(
    r"""<script(?![^>]*\bsrc=)(?![^>]*\btype="application/(?:ld\+)?json")|<[^>]*\son[a-z]+="""
)


def test_all_scripts_of_a_site_are_files(demo_site: Served) -> None:
    """No page has one within it, nor an attribute that is run; data is no script."""
    for path in demo_site.folder.rglob("*.html"):
        assert not INLINE.search(path.read_text("utf-8")), path


@pytest.fixture(scope="module")
def defended(demo_site: Served, sites: Server) -> Served:
    """The demo, from a host that sends the header."""
    assert len(POLICY) == 1
    return Served(demo_site.folder, sites.serve("defended", demo_site.folder, {NAME: POLICY[0]}))


@pytest.fixture
def watched(browser: Browser, watch: Watch) -> Iterator[Page]:
    """A page that notes what the header forbade."""
    context = browser.new_context(permissions=["clipboard-read", "clipboard-write"])
    context.set_default_timeout(20_000)
    context.add_init_script(f"({NOTED})()")
    # A sheet of notes names no icon, so a browser looks for one above the site.
    context.route("**/favicon.ico", lambda route: route.fulfill(status=204))
    page = context.new_page()
    watch.follow(page)
    yield page
    context.close()


def assert_nothing_forbidden(page: Page, watch: Watch) -> None:
    """Neither on the page nor in a worker of it, which only the console tells of."""
    assert page.evaluate("window.violations") == []
    assert (watch.errors, watch.other_hosts) == ([], [])


def test_the_header_forbids_what_it_should(defended: Served, watched: Page) -> None:
    """A script within a page is not run, and another host is not asked."""
    watched.goto(defended.url)
    watched.evaluate("""() => {
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(script);
      document.body.insertAdjacentHTML('beforeend',
        '<img src="x" onerror="window.ran = true"><img src="https://hit.example.org/p.png">');
    }""")
    watched.wait_for_function("window.violations.length > 2")
    assert watched.evaluate("window.ran") is None
    assert {*watched.evaluate("window.violations")} == {
        *("script-src-elem inline", "script-src-attr inline", "img-src https://hit.example.org/p.png"),
    }


@pytest.mark.slow
def test_every_kind_of_page_is_allowed_all_it_asks_for(defended: Served, watched: Page, watch: Watch) -> None:
    """Sheets of notes and the page for the table as well."""
    sheets = [defended.name(path) for path in defended.sheets()[:2]]
    for name in [*defended.kinds().values(), *sheets, "table/"]:
        defended.visit(watched, name)
        watched.wait_for_load_state("networkidle")
        assert_nothing_forbidden(watched, watch)


@pytest.mark.slow
def test_whatever_a_reader_does_is_allowed(defended: Served, watched: Page, watch: Watch) -> None:
    """Search, finding, side by side, a large photo, the other unit, the dark."""
    watched.goto(defended.url)
    field = watched.locator(".md-search__input")
    field.click()
    field.fill("wren")
    # The search asks at the first key after it is ready.
    field.press("End")
    expect(watched.locator(".md-search-result__meta")).to_have_text(re.compile("Found on"))
    assert_nothing_forbidden(watched, watch)

    defended.visit(watched, "find/")
    watched.locator(".finding [name=q]").fill("cards")
    expect(watched.locator(".listed .told")).not_to_have_text("All 15 batches.")
    assert_nothing_forbidden(watched, watch)

    watched.goto(f"{defended.url}side-by-side/?batch=hazel-square-cards&batch=orchard-square-cards")
    expect(watched.locator(".beside tbody").first).to_be_attached()
    assert_nothing_forbidden(watched, watch)

    defended.visit(watched, "projects/sloe-lane-cards/")
    watched.locator("a.photo").first.click()
    expect(watched.locator("dialog.viewer img")).to_have_js_property("complete", value=True)
    assert watched.locator("dialog.viewer img").evaluate("image => image.naturalWidth") > 0
    watched.keyboard.press("Escape")
    assert_nothing_forbidden(watched, watch)

    defended.visit(watched, "projects/ropewalk-place-cards/")
    watched.get_by_role("radio", name="millimetres").check()
    expect(watched).to_have_url(re.compile("unit=mm"))
    watched.locator("form.palette label:visible").click()
    scheme = watched.evaluate("document.body.getAttribute('data-md-color-scheme')")
    watched.reload()
    assert watched.evaluate("document.body.getAttribute('data-md-color-scheme')") == scheme
    assert_nothing_forbidden(watched, watch)


@pytest.mark.slow
def test_the_page_for_the_table_is_kept_and_answers(defended: Served, watched: Page, watch: Watch) -> None:
    """Its worker keeps it, and without a connection it counts on."""
    defended.visit(watched, "table/")
    expect(watched.locator("#offline")).to_have_text(re.compile("^Kept on this device"))
    watched.context.set_offline(True)
    watched.reload()
    watched.get_by_role("button", name="12 × 12").click()
    watched.get_by_label("Size A, width × height").fill("6 x 6 in")
    expect(watched.locator("#answer")).to_have_text("4 pieces.")
    assert_nothing_forbidden(watched, watch)
