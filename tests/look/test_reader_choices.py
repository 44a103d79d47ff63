"""What a reader chooses on the page of a batch, in a browser: how many, and the unit."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from browsing import AxeFaults, Served

BATCH = "projects/ropewalk-place-cards/"


def oat(page: Page) -> str:
    """The sheets of oat card that the number takes."""
    row = page.locator(".for-makes .text > table tbody tr", has_text="oat card")
    return row.locator("td").last.inner_text()


def band(page: Page) -> str:
    """The size of the band, and what stands small below it."""
    return page.locator(".parts-list tr", has_text="band").locator("td").nth(1).inner_text()


def chosen(page: Page) -> None:
    """Thirty of them, in millimetres: table, drawing, words and address."""
    assert oat(page) == "5\u00a0sheets"
    expect(page.locator(".for-makes .text > table thead")).to_contain_text("30 place cards")
    assert re.split(r"\s*\n\s*", band(page).replace("\u00a0", " ")) == ["88.5 × 12.5", "3 1/2 × 1/2 in"]
    expect(page.locator(".instruction").first).to_contain_text("215.9")
    figures = page.locator(".plan .drawing:visible").first.locator("text.figure").all_text_contents()
    assert "88.5" in figures
    assert "unit=mm" in page.url
    assert "makes=30" in page.url


def test_a_choice_changes_page_and_address_and_stays(
    page: Page, demo_site: Served, axe_faults: AxeFaults
) -> None:
    """By keyboard; after a reload, on paper and as a file it is the same, and on another page the unit is."""
    demo_site.visit(page, BATCH)
    assert (oat(page), "?" in page.url) == ("4\u00a0sheets", False)
    page.get_by_label("How many?").focus()
    page.keyboard.press("ArrowDown")
    expect(page.locator(".how-many [data-told]")).to_have_text(re.compile("^30 .*5.sheets of oat card.*€"))
    page.get_by_role("radio", name="inches").focus()
    page.keyboard.press("ArrowRight")
    chosen(page)
    expect(page.locator(".measures .rounded")).to_contain_text("Rounded from inches")
    assert axe_faults(page) == ()
    page.emulate_media(media="print")
    chosen(page)
    expect(page.locator(".how-many select")).to_be_hidden()
    expect(page.locator(".measures .rounded")).to_be_visible()
    page.emulate_media(media="screen")
    page.reload()
    chosen(page)
    demo_site.visit(page, "projects/towpath-accordions/")
    expect(page.get_by_role("radio", name="millimetres")).to_be_checked()
    page.goto(f"{(demo_site.folder / BATCH / 'index.html').as_uri()}?makes=29&unit=mm")
    chosen(page)
    expect(page.locator(".how-many .next")).to_have_text("29 is not worked out; 30 is the next that is.")


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    """A page that runs none."""
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


def test_without_scripts_the_number_of_the_batch_stands(demo_site: Served, without_scripts: Page) -> None:
    """In the unit of the record; nothing to choose, no gap, and all numbers in a table that opens."""
    page = without_scripts
    page.goto(f"{demo_site.url}{BATCH}?makes=30&unit=mm")
    assert oat(page) == "4\u00a0sheets"
    assert band(page).startswith("3\u00a01/2\u00a0×\u00a01/2")
    for control in (".how-many", ".measures"):
        assert page.locator(control).bounding_box() is None
    page.locator(".for-makes summary").click()
    expect(page.locator(".counts tr", has_text="60").first).to_contain_text("10 sheets of oat card")


def test_a_length_has_the_name_of_its_unit_and_no_other(demo_site: Served) -> None:
    """What a rule's marks are to the code is no word of a page."""
    texts = [path.read_text(encoding="utf-8") for path in demo_site.pages()]
    assert len([found for text in texts for found in re.findall(r'data-other="([^"]*)"', text)]) > 100
    assert not [text for text in texts if any(f"{unit} by rule" in text for unit in ("in", "mm"))]
