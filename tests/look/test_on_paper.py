"""What pages with photos are on paper."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import Any, Final

import pytest
from playwright.sync_api import Page

from browsing import Served

MM: Final = 96 / 25.4
"""In pixels of CSS."""
SHEETS: Final = {"A4": (210, 297), "Letter": (215.9, 279.4)}
SIDES, ENDS = 2 * 15, 16 + 18
"""What the style sheet leaves free, in mm."""
HIGHEST: Final = 75
"""Of a photo, in mm: the cover is as wide as the sheet, all others are smaller."""

WHOLE: Final = """() => [...document.querySelectorAll("main img, main svg[role=img]")].map((one) => {
  const box = one.getBoundingClientRect();
  let around = one;
  const kept = (e) => getComputedStyle(e).breakInside === "avoid";
  while (around.tagName !== "MAIN" && !kept(around)) around = around.parentElement;
  return {what: one.outerHTML.slice(0, 90), photo: one.tagName === "IMG", kept: kept(around),
    width: box.width, left: box.left, height: box.height, around: around.getBoundingClientRect().height};
})"""
"""Each picture and drawing, and what stays together with it on one sheet."""


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("kind", ["home", "batch made", "item", "series/", "one of series", "year/"])
def test_no_figure_is_cut_off(demo_site: Served, page: Page, kind: str, sheet: str) -> None:
    """Each stays whole on a sheet with its words, lies within it, and no photo takes more than it needs."""
    width, height = ((full - free) * MM for full, free in zip(SHEETS[sheet], (SIDES, ENDS), strict=True))
    page.set_viewport_size({"width": int(width), "height": int(height)})
    page.emulate_media(media="print")
    page.goto(demo_site.url + demo_site.kinds()[kind])
    page.evaluate("[...document.images].forEach((image) => { image.loading = 'eager' })")
    page.wait_for_function("[...document.images].every((image) => image.complete && image.naturalWidth)")
    found: list[dict[str, Any]] = page.evaluate(WHOLE)
    assert found
    assert [one["what"] for one in found if not one["kept"] or one["around"] > height] == []
    assert [one["what"] for one in found if one["left"] < -1 or one["left"] + one["width"] > width + 1] == []
    assert [one["what"] for one in found if one["photo"] and one["height"] > HIGHEST * MM] == []


def test_photos_that_were_never_scrolled_to_are_printed(
    demo_site: Served, page: Page, tmp_path: Path
) -> None:
    """What comes only when it is looked at comes for the sheet too."""
    reader = shutil.which("pdfimages")
    if reader is None:
        pytest.skip("no pdfimages found; install poppler-utils")
    page.set_viewport_size({"width": 1400, "height": 300})
    page.goto(demo_site.url + "projects/sloe-lane-cards/")
    printed = tmp_path / "page.pdf"
    page.pdf(path=printed, format="A4", prefer_css_page_size=True)
    listed = subprocess.run([reader, "-list", str(printed)], capture_output=True, text=True, check=True)
    photos = [line for line in listed.stdout.splitlines() if " image " in line]
    assert len(photos) == page.locator("a.photo").count() == 3
