"""What a reader chooses on the page of a batch, in a browser: how many, the unit, the size of sheets."""

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
    """Seven from A4, in millimetres: table, drawing, words and address."""
    assert oat(page) == "2\u00a0sheets"
    expect(page.locator(".for-makes .text > table thead")).to_contain_text("7 place cards from A4")
    expect(page.locator(".plan-from:visible")).to_have_text("How 24 place cards are cut from A4")
    assert re.split(r"\s*\n\s*", band(page).replace("\u00a0", " ")) == ["88.5 × 12.5", "3 1/2 × 1/2 in"]
    expect(page.locator(".instruction").first).to_contain_text("215.9")
    expect(page.locator(".sent tr").first).to_have_text(re.compile(r"^Weight *(about|at least) [\d.]+.g "))
    figures = page.locator(".plan .drawing:visible").first.locator("text.figure").all_text_contents()
    assert "88.5" in figures
    for part in ("unit=mm", "makes=7", "sheets=A4"):
        assert part in page.url


def choose(page: Page) -> None:
    """All three, by keyboard."""
    page.get_by_label("How many?").focus()
    page.keyboard.type("7")
    expect(page.locator(".how-many [data-told]")).to_have_text(re.compile("^7 .*2.sheets of oat card.*€"))
    page.locator(".how-many").get_by_label("From").focus()
    page.keyboard.press("ArrowDown")
    told = page.locator(".how-many [data-told]")
    expect(told).to_have_text(re.compile("^7 place cards from A4: 2.sheets of oat card.*at least.*€"))
    page.get_by_role("radio", name="inches").focus()
    page.keyboard.press("ArrowRight")


def test_a_choice_changes_page_and_address_and_stays(
    page: Page, demo_site: Served, axe_faults: AxeFaults
) -> None:
    """By keyboard; after a reload, on paper and as a file it is the same; elsewhere all but the number is."""
    demo_site.visit(page, BATCH)
    assert (oat(page), "?" in page.url) == ("4\u00a0sheets", False)
    choose(page)
    chosen(page)
    expect(page.locator(".measures .rounded")).to_contain_text("Rounded from inches")
    assert axe_faults(page) == ()
    page.emulate_media(media="print")
    chosen(page)
    expect(page.locator(".how-many select").first).to_be_hidden()
    expect(page.locator(".measures .rounded")).to_be_visible()
    page.emulate_media(media="screen")
    page.reload()
    chosen(page)
    demo_site.visit(page, "projects/orchard-square-cards/")
    expect(page.get_by_role("radio", name="millimetres")).to_be_checked()
    expect(page.locator(".for-makes .text > table thead")).to_contain_text("from A4")
    page.goto(f"{(demo_site.folder / BATCH / 'index.html').as_uri()}?makes=7&unit=mm&sheets=A4")
    chosen(page)
    page.goto(f"{(demo_site.folder / BATCH / 'index.html').as_uri()}?makes=29&sheets=A0")
    expect(page.locator(".how-many .next")).to_have_text("29 is not worked out; 30 is the next that is.")
    assert oat(page) == "5\u00a0sheets"


@pytest.mark.slow
def test_a_choice_goes_along_without_a_new_page(page: Page, instant_demo: Served) -> None:
    """Where the theme exchanges pages: to the plans from A4, in millimetres too, and back."""
    page.goto(instant_demo.url)
    page.evaluate("window.stayed = true")
    page.locator(f"a[href*='{BATCH}']").first.click()
    page.wait_for_url(f"**/{BATCH}*")
    choose(page)
    chosen(page)
    page.locator(".plan-from:visible a").click()
    page.wait_for_url("**/other-sheets/*")
    expect(page.get_by_role("radio", name="millimetres")).to_be_checked()
    expect(page.locator(".elsewhere .instruction").first).to_contain_text("210")
    page.go_back()
    expect(page.locator(".for-makes")).to_be_visible()
    chosen(page)
    assert page.evaluate("window.stayed")


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    """A page that runs none."""
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


def test_without_scripts_the_number_of_the_batch_stands(demo_site: Served, without_scripts: Page) -> None:
    """In the unit of the record; nothing to choose, no gap, and all numbers in tables that open."""
    page = without_scripts
    page.goto(f"{demo_site.url}{BATCH}?makes=7&unit=mm&sheets=A4")
    assert oat(page) == "4\u00a0sheets"
    assert band(page).startswith("3\u00a01/2\u00a0×\u00a01/2")
    for control in (".how-many", ".measures"):
        assert page.locator(control).bounding_box() is None
    page.locator(".for-makes summary").click()
    expect(page.locator(".counts tr", has_text="60").first).to_contain_text("10 sheets of oat card")
    page.goto(f"{demo_site.url}{BATCH}other-sheets/")
    page.locator(".numbers summary").first.click()
    expect(page.locator(".counts tr", has_text="7").first).to_contain_text("2 sheets of oat card")


def test_a_length_has_the_name_of_its_unit_and_no_other(demo_site: Served) -> None:
    """What a rule's marks are to the code is no word of a page."""
    texts = [path.read_text(encoding="utf-8") for path in demo_site.pages()]
    assert len([found for text in texts for found in re.findall(r'data-other="([^"]*)"', text)]) > 100
    assert not [text for text in texts if any(f"{unit} by rule" in text for unit in ("in", "mm"))]
