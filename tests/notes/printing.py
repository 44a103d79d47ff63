"""What the tests of printed sheets share: printing, counting sides, measuring on the paper."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import pytest
from PIL import Image
from playwright.sync_api import Page

DOTS: Final = 300
"""Dots to the inch: 0.085 mm each."""
PER_MM: Final = DOTS / 25.4
DARK: Final = 150
FORMATS: Final = ("A4", "Letter")


@dataclass(frozen=True, slots=True)
class Printed:
    """A printed file."""

    path: Path

    @property
    def sides(self) -> int:
        """How many sides of paper it has."""
        told = _asked("pdfinfo", str(self.path))
        return int(next(line.split()[1] for line in told.splitlines() if line.startswith("Pages:")))

    @property
    def texts(self) -> list[str]:
        """The text of each side, without its line ends."""
        told = _asked("pdftotext", "-raw", str(self.path), "-")
        return [" ".join(side.split()) for side in told.split("\f")[:-1]]

    def pictures(self) -> list[Image.Image]:
        """Each side in greys."""
        stem = self.path.with_suffix("")
        _asked("pdftoppm", "-r", str(DOTS), "-gray", str(self.path), str(stem))
        return [_read(one) for one in sorted(stem.parent.glob(f"{stem.name}-*.pgm"))]


def _read(path: Path) -> Image.Image:
    with Image.open(path) as opened:
        opened.load()
        return opened.copy()


def printed(page: Page, url: str, path: Path, form: str) -> Printed:
    """The document at ``url`` as Chromium prints it on paper of a form, the size left to the printer."""
    page.goto(url)
    page.pdf(path=path, format=form, print_background=True, prefer_css_page_size=False)
    return Printed(path)


def need_poppler() -> None:
    """Printed files are read by other means than the browser's own, where these are installed."""
    for name in ("pdfinfo", "pdftotext", "pdftoppm"):
        if shutil.which(name) is None:
            pytest.skip(f"no {name} found; install poppler-utils")


def _asked(*command: str) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def check_rules(side: Image.Image) -> list[float]:
    """The lengths in mm of the two rules at the foot of a front, from end tick to end tick.

    A rule is told from other lines by its length, and its ends by ticks that stand out above it.
    """
    pixels: Any = side.load()
    found: list[float] = []
    row = int(225 * PER_MM)
    while row < int(272 * PER_MM):
        run = _longest_run(pixels, side.width, row)
        if 97 < (run[1] - run[0]) / PER_MM < 104:
            found.append(_between_ticks(pixels, run, row - round(0.6 * PER_MM)) / PER_MM)
            row += round(2 * PER_MM)
        row += 1
    return found


def _longest_run(pixels: Any, width: int, row: int) -> tuple[int, int]:
    best = (0, 0)
    start: int | None = None
    for x in range(width + 1):
        dark = x < width and pixels[x, row] < DARK
        if dark and start is None:
            start = x
        elif not dark and start is not None:
            best, start = max(best, (start, x), key=lambda run: run[1] - run[0]), None
    return best


def _between_ticks(pixels: Any, run: tuple[int, int], row: int) -> float:
    """From the middle of the first tick to that of the last, each weighed by how dark its dots are."""
    reach = round(0.8 * PER_MM)
    return _middle(pixels, run[1] - reach, run[1] + reach, row) - _middle(
        pixels, run[0] - reach, run[0] + reach, row
    )


def _middle(pixels: Any, start: int, end: int, row: int) -> float:
    dark: dict[int, int] = {x: 255 - pixels[x, row] for x in range(start, end)}
    return sum((x + 0.5) * weight for x, weight in dark.items()) / sum(dark.values())


def longest_upright_line(side: Image.Image) -> float:
    """The longest upright line of a side, in mm, with the thickness of the lines that it ends in."""
    pixels: Any = side.load()
    longest = 0
    for x in range(side.width):
        run = 0
        for y in range(side.height):
            run = run + 1 if pixels[x, y] < DARK else 0
            longest = max(longest, run)
    return longest / PER_MM


def nearest_to_the_edge(side: Image.Image) -> float:
    """How near to an edge of the paper anything is printed, in mm."""
    inked = side.point(lambda grey: 255 if grey < 250 else 0).getbbox()
    assert inked is not None
    left, top, right, bottom = inked
    return min(left, top, side.width - right, side.height - bottom) / PER_MM
