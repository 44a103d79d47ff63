"""On paper nothing of a page is lost."""

from __future__ import annotations

import re
import shutil
import subprocess
import unicodedata
from pathlib import Path
from typing import Final

import pytest
from playwright.sync_api import Page

from browsing import Served

MM: Final = 72 / 25.4
"""In points, as PDF measures."""
MARGIN: Final = 15 * MM
"""The style sheet's own at the sides."""
SHEET: Final = re.compile(r'<page width="([\d.]+)"')
WORD: Final = re.compile(r'<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">(.*?)</word>')

SHOWN: Final = """() => {
  const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
  const texts = [];
  while (walker.nextNode()) {
    const around = walker.currentNode.parentElement;
    if (around.checkVisibility() && !around.closest(".said, script, title, desc"))
      texts.push(walker.currentNode.data);
  }
  return texts;
}"""
"""Every text of the page that is shown on paper, those of drawings too."""


@pytest.fixture(scope="module")
def pdftotext() -> str:
    """The reader of PDF files that is not the browser's own."""
    found = shutil.which("pdftotext")
    if found is None:
        pytest.skip("no pdftotext found; install poppler-utils")
    return found


def _squeezed(text: str) -> str:
    """Text without its gaps and ligatures: lines and columns break elsewhere on paper."""
    return "".join(unicodedata.normalize("NFKC", text).split())


@pytest.mark.slow
def test_every_kind_of_page_prints_whole(
    demo_site: Served, page: Page, pdftotext: str, tmp_path: Path
) -> None:
    """Printed on A4, every text of the page is on the sheet, and no table runs over its edge."""
    page.emulate_media(media="print")
    for kind, name in demo_site.kinds().items():
        demo_site.stay(page, name)
        printed = tmp_path / "page.pdf"
        page.pdf(path=printed, format="A4", prefer_css_page_size=True)
        read = [pdftotext, "-bbox", str(printed), "-"]
        found = subprocess.run(read, capture_output=True, text=True, check=True).stdout
        width, words = float(SHEET.findall(found)[0]), WORD.findall(found)
        assert words, kind
        over = [text for left, right, text in words if not _inside(float(left), width - float(right))]
        assert (kind, over) == (kind, [])
        plain = subprocess.run(
            [pdftotext, "-raw", str(printed), "-"], capture_output=True, text=True, check=True
        )
        on_paper = _squeezed(plain.stdout)
        lost = [text for text in page.evaluate(SHOWN) if not _is_on(text, on_paper)]
        assert (kind, lost) == (kind, [])


def _inside(left: float, right: float) -> bool:
    # Half a millimetre: the sheet is rounded to pixels, and figures that are set flush stand out a little.
    return min(left, right) >= MARGIN - MM / 2


def _is_on(text: str, on_paper: str) -> bool:
    """Whether all words of the text are there; a page may end within it."""
    return all(_squeezed(word) in on_paper for word in text.split())
