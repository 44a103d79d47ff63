"""Charts in a browser: what is written on them can be read on a phone and on a desk."""

from __future__ import annotations

from typing import Any, Final

import pytest
from playwright.sync_api import Page

from browsing import Served

CHARTS: Final = {"year/": 8, "drawer/oat-card/": 1}
"""Pages of the demo and how many charts they have: four for each of two years."""

WORDS: Final = """(least) => [...document.querySelectorAll(".drawing svg")]
  .filter((svg) => svg.querySelector(".level, .measure"))
  .map((svg) => {
    const frame = svg.getBoundingClientRect();
    const words = [...svg.querySelectorAll("text")].map((text) => {
      const box = text.getBoundingClientRect();
      return {text: text.textContent, left: box.left + 1, right: box.right - 1, top: box.top + 1.5,
        bottom: box.bottom - 1.5, size: parseFloat(getComputedStyle(text).fontSize) * frame.width
          / svg.viewBox.baseVal.width};
    });
    const past = words.filter((one) => one.left < frame.left - 2 || one.right > frame.right + 2
      || one.top < frame.top - 2 || one.bottom > frame.bottom + 2);
    const meet = words.flatMap((one, i) => words.slice(i + 1).filter((other) => one.left < other.right
      && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
      .map((other) => `${one.text} / ${other.text}`));
    return {count: words.length, past: past.map((one) => one.text), meet,
      small: words.filter((one) => one.size < least).map((one) => one.text)};
  })"""
"""Each chart with its words that lie past its edge, on one another, or are too small to be read."""


MONTH_OF_CHARTS: Final = """() => ["makes", "worth", "spent"].map((name) => {
  const chart = document.querySelector(`[aria-labelledby^="${name}-2026"]`);
  const letter = [...chart.querySelectorAll("text")].find((one) => one.textContent === "D");
  const box = letter.getBoundingClientRect();
  return Math.round(box.left + box.width / 2);
})"""
"""Where December stands in each chart of one year."""


@pytest.mark.parametrize("width", [320, 390, 700, 1400])
@pytest.mark.parametrize("name", CHARTS)
def test_words_on_charts_stay_apart(demo_site: Served, page: Page, name: str, width: int) -> None:
    """Inside the drawing, clear of one another, and never under 11 px."""
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(demo_site.url + name)
    found: list[dict[str, Any]] = page.evaluate(WORDS, 11)
    assert len(found) == CHARTS[name]
    assert all(one["count"] >= 4 for one in found)
    assert [(one["past"], one["meet"], one["small"]) for one in found] == [([], [], [])] * len(found)


def test_words_that_meet_are_seen(demo_site: Served, page: Page) -> None:
    """Lettering of twice the size lies on one another."""
    page.goto(demo_site.url + "year/")
    page.add_style_tag(content=".drawing svg { --em: calc(30px / var(--k)) !important; }")
    assert any(one["meet"] for one in page.evaluate(WORDS, 11))


def test_months_of_a_year_stand_under_one_another(demo_site: Served, page: Page) -> None:
    """Makes, worth and spent have their rule of time at the same place, on a desk and on a phone."""
    for width in (390, 1400):
        page.set_viewport_size({"width": width, "height": 900})
        page.goto(demo_site.url + "year/")
        found = page.evaluate(MONTH_OF_CHARTS)
        assert len(found) == 3
        assert len(set(found)) == 1
