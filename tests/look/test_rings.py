"""Rings in a browser: what they hold, and that the list beside a plan has the same ones."""

from __future__ import annotations

from typing import Final

import pytest
from playwright.sync_api import Page

from browsing import Served

BATCHES: Final = ("projects/towpath-accordions/", "projects/wren-note-bookmarks/", "projects/hawthorn-boxes/")
"""Batches with runs along both axes, at every side of a sheet."""

OUTSIDE: Final = """() => {
  const inside = (a, b) =>
    a.left >= b.left - 1 && a.right <= b.right + 1 && a.top >= b.top - 1 && a.bottom <= b.bottom + 1;
  const rings = [...document.querySelectorAll(".drawing:not([hidden]) .ring")]
    .map(one => one.getBoundingClientRect());
  return [...document.querySelectorAll(".drawing:not([hidden]) .no")]
    .filter(one => !rings.some(ring => inside(one.getBoundingClientRect(), ring)))
    .map(one => one.textContent);
}"""
"""Numbers that no ring holds, at the size they have now; a line is a little higher than its figures."""

PLANS: Final = """() => [...document.querySelectorAll(".plan")].map(plan =>
  [".drawing:not([hidden]) .no", ".settings .no"].map(which => [...plan.querySelectorAll(which)].map(one => {
    const copy = one.cloneNode(true);
    copy.querySelectorAll(".said").forEach(said => said.remove());
    return copy.textContent;
  }).sort()))"""
"""For each plan what its rings say, in the drawing and in the list."""

READ: Final = """() => [...document.querySelectorAll(".settings .numbers")].map(numbers => {
  const copy = numbers.cloneNode(true);
  copy.querySelectorAll("[aria-hidden]").forEach(hidden => hidden.remove());
  return copy.textContent;
})"""
"""What a screen reader says."""


@pytest.mark.parametrize("width", [320, 390, 700, 1400])
@pytest.mark.parametrize("batch", BATCHES)
def test_a_ring_holds_its_numbers(demo_site: Served, page: Page, batch: str, width: int) -> None:
    """At every width a range lies within its ring."""
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(demo_site.url + batch)
    assert page.locator(".drawing .ring.wide").count() > 0
    assert page.evaluate(OUTSIDE) == []


@pytest.mark.parametrize("batch", BATCHES)
def test_drawing_and_list_have_the_same_rings(demo_site: Served, page: Page, batch: str) -> None:
    """Whoever reads 5–20 in the list finds 5–20 on the sheet."""
    page.goto(demo_site.url + batch)
    plans = page.evaluate(PLANS)
    assert plans
    assert [drawn for drawn, _ in plans] == [listed for _, listed in plans]


def test_a_range_is_read_in_words(demo_site: Served, page: Page) -> None:
    """A screen reader says “Cuts 5 to 20”, and a single cut by its number."""
    page.goto(demo_site.url + BATCHES[0])
    said = page.evaluate(READ)
    assert "Cuts 5 to 20:" in said
    assert "Cut 1:" in said
