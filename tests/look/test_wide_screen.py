"""On a screen far wider than a page, the page grows with it, in its own proportions."""

from __future__ import annotations

from typing import Final

import pytest
from playwright.sync_api import Page

from browsing import Served

BATCH: Final = "projects/sloe-lane-cards/"
DESK, WALL, WIDEST = 1400, 2560, 5120

IN_REM: Final = """() => {
  const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
  const width = (selector) => document.querySelector(selector).getBoundingClientRect().width / rem;
  return {text: width("#steps, .steps"), plan: width(".plan svg"), figure: width(".plan svg .figure"),
    strip: width(".strip svg")};
}"""
"""What is as wide on every screen, if rem is the measure: a line of text, a drawing, a figure in it."""


SQUEEZED: Final = """() => [...document.querySelectorAll(".made :is(p, li, td, th, dd, dt, h3)")]
  .filter((one) => one.innerText.length > 20 && one.checkVisibility() && !one.closest(".said"))
  .filter((one) => one.getBoundingClientRect().width < 48)
  .map((one) => one.innerText.slice(0, 40))"""
"""Words that run down the page letter by letter."""


def look(page: Page, site: Served, width: int, name: str = BATCH) -> None:
    """A page in a window so wide."""
    page.set_viewport_size({"width": width, "height": 1000})
    page.goto(site.url + name)


@pytest.mark.slow
def test_the_page_keeps_its_share_of_a_wide_screen(demo_site: Served, page: Page) -> None:
    """More than half of the window up to 2,560 px, and nothing runs over its edge."""
    for name in demo_site.kinds().values():
        demo_site.stay(page, name)
        for width in (1920, 2200, WALL):
            page.set_viewport_size({"width": width, "height": 1000})
            box = page.locator(".mast__inner").bounding_box()
            assert box is not None
            assert 0.55 <= box["width"] / width <= 0.6
            assert page.evaluate("document.documentElement.scrollWidth") == width


@pytest.mark.parametrize("width", [WALL, WIDEST])
def test_text_and_drawings_grow_alike(demo_site: Served, page: Page, width: int) -> None:
    """Lines break where they did, and figures in a drawing stay as large beside the text as they were."""
    look(page, demo_site, DESK)
    before: dict[str, float] = page.evaluate(IN_REM)
    look(page, demo_site, width)
    assert page.evaluate(IN_REM) == pytest.approx(before, rel=0.02)


def test_letters_grow_no_further_than_by_half(demo_site: Served, page: Page) -> None:
    """On the widest screens too it is a page, and no poster."""
    look(page, demo_site, WIDEST)
    assert page.evaluate("getComputedStyle(document.documentElement).fontSize") == "24px"


@pytest.mark.slow
@pytest.mark.parametrize("width", [390, DESK])
def test_no_words_run_down_the_page(demo_site: Served, page: Page, width: int) -> None:
    """Every kind of page, and batches whose plans have remarks or whose boards have no groove."""
    page.set_viewport_size({"width": width, "height": 1000})
    for name in (*demo_site.kinds().values(), "projects/puddle-ice-cards/", "projects/wren-sleeves/"):
        demo_site.stay(page, name)
        assert page.evaluate(SQUEEZED) == [], name
