"""The table to sort parts by: on one sheet of paper, and ticked off row by row."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from browsing import Served
from look.test_on_paper import ENDS, MM, SHEETS, SIDES

LONGER = """(rows) => {
  const body = document.querySelector(".sorting tbody");
  while (body.rows.length < rows) body.append(body.rows[0].cloneNode(true));
  const section = document.querySelector(".collating");
  const table = document.querySelector(".sorting").getBoundingClientRect();
  return {kept: getComputedStyle(section).breakInside, height: section.getBoundingClientRect().height,
    right: table.right, ticks: section.querySelectorAll("input").length};
}"""
"""What the section measures with so many rows."""


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("slug", ["orchard-square-cards", "hazel-square-cards", "wren-note-bookmarks"])
def test_it_is_printed_on_one_sheet(demo_site: Served, page: Page, slug: str, sheet: str) -> None:
    """Thirty rows and what is said of them stay together, on A4 as on letter paper."""
    width, height = ((full - free) * MM for full, free in zip(SHEETS[sheet], (SIDES, ENDS), strict=True))
    page.set_viewport_size({"width": int(width), "height": int(height)})
    page.emulate_media(media="print")
    page.goto(f"{demo_site.url}projects/{slug}/")
    found = page.evaluate(LONGER, 30)
    assert (found["kept"], found["ticks"]) == ("avoid", 30)
    assert found["height"] <= height
    assert found["right"] <= width + 1


def test_what_is_sorted_is_ticked_and_stays_so(demo_site: Served, page: Page) -> None:
    """By a click on the numbers too; other rows and the settings of the plan are left alone."""
    page.goto(f"{demo_site.url}projects/orchard-square-cards/")
    page.locator(".sorting label").nth(1).click()
    page.reload()
    assert [box.is_checked() for box in page.locator(".sorting input").all()] == [False, True, False]
    expect(page.locator(".settings input:checked")).to_have_count(0)


@pytest.mark.parametrize("slug", ["orchard-square-cards", "towpath-accordions", "wren-note-bookmarks"])
def test_on_a_narrow_screen_each_cell_says_what_it_is(demo_site: Served, page: Page, slug: str) -> None:
    """Without scrolling sideways: the part, its pad, and the papers below."""
    page.set_viewport_size({"width": 320, "height": 700})
    page.goto(f"{demo_site.url}projects/{slug}/")
    heads = page.locator(".sorting td").evaluate_all(
        "(cells) => cells.map((one) => getComputedStyle(one, '::before').content)"
    )
    assert heads
    assert all(len(head) > len('"B x"') for head in heads)
    assert page.evaluate("document.documentElement.scrollWidth") == 320
