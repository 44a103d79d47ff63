"""Shapes in a browser: what is cut off and punched out shows what lies behind."""

from __future__ import annotations

from typing import Any, Final

from playwright.sync_api import Page

from browsing import Served

PAINTED: Final = """([selector, points]) => {
  const path = document.querySelector(selector);
  const svg = path.ownerSVGElement;
  return points.map(([x, y]) => {
    const at = svg.createSVGPoint();
    at.x = x; at.y = y;
    const there = at.matrixTransform(svg.getScreenCTM());
    return document.elementsFromPoint(there.x, there.y).includes(path);
  });
}"""
"""For each point in mm of a drawing whether a path is painted there."""


def painted(page: Page, selector: str, points: list[tuple[float, float]]) -> list[bool]:
    """Whether it is, on the screen."""
    page.locator(selector).first.scroll_into_view_if_needed()
    found: list[Any] = page.evaluate(PAINTED, [selector, points])
    return found


def test_the_tag_is_cut_and_punched(demo_site: Served, page: Page) -> None:
    """60 x 100: paper in the middle; none in its clipped corners, beside it, or in its hole at 30, 12.5."""
    page.goto(f"{demo_site.url}projects/first-frost-tags/")
    tag = 'svg[aria-labelledby^="together-1"] path.base'
    points = [(30.0, 30.0), (1.0, 20.0), (4.0, 4.0), (56.0, 4.0), (30.0, 12.5), (30.0, 8.0), (61.0, 50.0)]
    assert painted(page, tag, points) == [True, True, False, False, False, True, False]
    # The moon, 8 from the top and the right of the panel that begins at 5, 33: its middle is at 39, 49.
    moon = 'svg[aria-labelledby^="together-1"] path.layer'
    assert painted(page, moon, [(39.0, 49.0), (46.0, 49.0), (45.5, 42.5), (32.5, 55.5)]) == [
        True, True, False, False,
    ]  # fmt: skip
