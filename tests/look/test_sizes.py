"""The browser is told how wide each picture is shown, as wide as the style sheet shows it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any, Final

import pytest
from playwright.sync_api import Page, Route

from batchleaf.render.html import render
from batchleaf.views.pages import GalleryEntry, Picture
from browsing import Served
from look.samples import HOME, SERIES_INDEX, full_batch, full_item, picture

WIDTHS: Final = (320, 768, 1400, 2560)
BETWEEN: Final = (390, 640, 832, 833, 1000, 1184, 1185, 1920, 3440)
SHAPES: Final = ((1200, 800), (800, 1200), (2400, 800))
"""Landscape, portrait, and a strip of a landscape."""
CLOSE: Final = 0.7

MEASURE: Final = """() => [...document.querySelectorAll("main picture img")].map((image) => {
  const box = image.getBoundingClientRect();
  const whole = getComputedStyle(image).objectFit === "cover"
    ? Math.max(box.width, box.height * image.getAttribute("width") / image.getAttribute("height"))
    : box.width;
  // What a file that says how wide it is measures by itself is what `sizes` came to.
  return [image.alt || image.closest("li").textContent.trim(), whole, image.naturalWidth];
})"""
"""Of each picture its words, the width at which all of it would be seen, and what was told."""


def shaped(name: str, shape: tuple[int, int]) -> Picture:
    """A picture whose files say in their names how large they are."""
    width, height = shape
    return picture(f"{width}x{height}", name, width, height)


def leaves(count: int, shape: tuple[int, int]) -> tuple[GalleryEntry, ...]:
    """A gallery of so many."""
    return tuple(
        replace(HOME.entries[0], title=f"{n} of {count}", picture=shaped("a", shape)) for n in range(count)
    )


def bodies(shape: tuple[int, int]) -> Iterator[str]:
    """Every place for a picture: galleries of all lengths, and pages with one picture and with more."""
    for count in range(1, 19):
        yield render(replace(HOME, entries=leaves(count, shape)))
    batch, item = full_batch(), full_item()
    steps = tuple(replace(step, pictures=(shaped("step", shape),)) for step in batch.steps)
    for count in (1, 2, 3):
        others = tuple(shaped(f"other of {count}", shape) for _ in range(count))
        yield render(replace(batch, cover=shaped("cover", shape), steps=steps, pictures=others))
    went = tuple(replace(entry, picture=shaped(entry.title, shape)) for entry in item.used_in)
    yield render(replace(item, used_in=went))
    rows = tuple(replace(row, picture=shaped("series", shape)) for row in SERIES_INDEX.rows)
    yield render(replace(SERIES_INDEX, rows=rows))


def drawn(route: Route) -> None:
    """A picture as large as its name says, ``…/800x1200-600.webp`` being 600 wide."""
    found = re.search(r"(\d+)x(\d+)(?:-(\d+))?\.\w+$", route.request.url)
    assert found
    width, height = int(found[1]), int(found[2])
    own = int(found[3] or width)
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{own}" height="{own * height / width}"/>'
    route.fulfill(body=svg, content_type="image/svg+xml")


def _misjudged(page: Page) -> list[Any]:
    page.wait_for_function("[...document.images].every((image) => image.complete && image.naturalWidth)")
    measured: list[tuple[str, float, int]] = page.evaluate(MEASURE)
    assert measured
    return [one for one in measured if not CLOSE * one[2] <= one[1] <= one[2] + 1]


@pytest.mark.parametrize(
    "shape", [SHAPES[0], *(pytest.param(shape, marks=pytest.mark.slow) for shape in SHAPES[1:])]
)
def test_no_picture_is_wider_than_told(demo_site: Served, page: Page, shape: tuple[int, int]) -> None:
    """Nor under seven tenths of it: the file that is taken is sharp, and no larger than it has to be."""
    body = "".join(bodies(shape)).replace(' loading="lazy"', "")
    styles = '<link rel="stylesheet" href="assets/batchleaf.css">'
    html = f'<!doctype html><meta charset="utf-8"><title>Pictures</title>{styles}<main>{body}</main>'
    page.route("**/pictures/**", drawn)
    page.route("**/shown", lambda route: route.fulfill(body=html, content_type="text/html"))
    found = {}
    for width in (*WIDTHS, *BETWEEN):
        page.set_viewport_size({"width": width, "height": 900})
        page.goto(f"{demo_site.url}shown")
        found[width] = _misjudged(page)
    assert {width: wrong for width, wrong in found.items() if wrong} == {}


@pytest.mark.parametrize(
    "width", [pytest.param(width, marks=pytest.mark.slow) if width != 1400 else width for width in WIDTHS]
)
def test_the_demo_tells_its_widths(demo_site: Served, page: Page, width: int) -> None:
    """On every kind of page, with its own photos."""
    page.set_viewport_size({"width": width, "height": 900})
    page.add_init_script(
        "document.addEventListener('DOMContentLoaded', () => "
        "document.querySelectorAll('img').forEach((image) => { image.loading = 'eager' }))"
    )
    for kind, name in demo_site.kinds().items():
        demo_site.stay(page, name)
        if page.locator("main picture").count():
            assert (kind, _misjudged(page)) == (kind, [])


def test_one_picture_of_a_page_comes_at_once(demo_site: Served) -> None:
    """The first on the first pages and on a batch's own; all others when they come near."""
    for name in ("", "projects/sloe-lane-cards/", "series/", "series/hedgerow-year/"):
        images = re.findall(r"<img[^>]*>", demo_site.file(name).read_text(encoding="utf-8"))
        assert len(images) > 1
        assert ["loading" in image for image in images] == [False, *[True] * (len(images) - 1)]
