"""Words in drawings as a browser shows them: never too small, never out of their drawing."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

import pytest
from playwright.sync_api import Page, expect

from browsing import Served

LEAST_PX: Final = 11.0
WIDTHS: Final = (320, 390, 1400)
UNITS: Final = ("mm", "in")
ROOT: Final = Path(__file__).parents[2]
BATCHES: Final = tuple(path.parent.name for path in sorted(ROOT.glob("projects/*/project.yml")))
FEW: Final = ("sloe-lane-cards", "towpath-accordions", "hawthorn-boxes")

WORDS: Final = """() => [
  ...document.querySelectorAll(".batch .drawing:not([hidden]) svg text")].map((word) => {
  const box = word.getBoundingClientRect();
  const around = word.closest("svg").getBoundingClientRect();
  const {a, b} = word.getScreenCTM();
  return {said: word.textContent, in: word.closest("svg").querySelector("title").textContent,
    size: parseFloat(getComputedStyle(word).fontSize) * Math.hypot(a, b),
    out: Math.max(around.left - box.left, box.right - around.right, around.top - box.top,
      box.bottom - around.bottom),
    right: box.right};
})"""
"""Each word of a drawing: its size in px of the screen, how far it stands out, where it ends."""


def words(site: Served, page: Page, batch: str, width: int, unit: str) -> list[dict[str, Any]]:
    """All words in the drawings of one batch, in a window so wide, with lengths in ``unit``."""
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(f"{site.url}projects/{batch}/?unit={unit}")
    expect(page.locator(".measures")).to_be_visible()
    found: list[dict[str, Any]] = page.evaluate(WORDS)
    assert found
    return found


def check(found: list[dict[str, Any]], width: int) -> None:
    """Large enough, and within; a line of text is a little higher than its letters."""
    assert [one for one in found if one["size"] < LEAST_PX] == []
    assert [one for one in found if one["out"] > 2] == []
    assert [one for one in found if one["right"] > width] == []


@pytest.mark.parametrize("batch", FEW)
def test_words_keep_their_size_and_their_place(demo_site: Served, page: Page, batch: str) -> None:
    """On the narrowest phone, where drawings shrink most, in either unit."""
    for unit in UNITS:
        check(words(demo_site, page, batch, WIDTHS[0], unit), WIDTHS[0])


@pytest.mark.slow
@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("batch", BATCHES)
def test_words_of_every_batch(demo_site: Served, page: Page, batch: str, width: int) -> None:
    """On phones and on a wide screen."""
    for unit in UNITS:
        check(words(demo_site, page, batch, width, unit), width)


@pytest.mark.parametrize("width", [WIDTHS[0], WIDTHS[-1]])
def test_drawings_of_a_make_stand_within_their_row(demo_site: Served, page: Page, width: int) -> None:
    """Side by side where there is room, below one another on a phone; nothing scrolls sideways."""
    words(demo_site, page, FEW[0], width, "in")
    boxes = [one.bounding_box() for one in page.locator(".figures > .drawing").all()]
    lefts = [box["x"] for box in boxes if box is not None]
    assert len(lefts) == len(boxes) == 3
    assert (len(set(lefts)) == 1) == (width == WIDTHS[0])
    assert page.evaluate("document.documentElement.scrollWidth") == width
