"""The companion notes on paper, printed by a real browser and measured on the print."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

import pytest
from playwright.sync_api import Page

from batchleaf.facts import Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.render.notes import notes_html
from batchleaf.views.masthead import Masthead
from batchleaf.views.notes.sheet import notes_sheets
from batchleaf.workflow import read_and_work_out
from browsing import Served
from notes.printing import (
    FORMATS,
    check_rules,
    longest_upright_line,
    nearest_to_the_edge,
    need_poppler,
    printed,
)

WITH_TEMPLATES: Final = (
    *("first-frost-tags", "harbour-square-cards", "hawthorn-boxes", "ivy-gate-cards"),
    *("towpath-accordions", "wren-sleeves"),
)
SIDES: Final = dict.fromkeys(WITH_TEMPLATES, 3)
"""Batches of the demo with templates on a third side; every other one is a leaf of two sides."""
HAND_OUTS: Final = {"swift-slim-cards"}
NINE_POINTS: Final = 12.0
"""In px of CSS."""

LETTERING: Final = """() => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  while (walker.nextNode()) {
    const around = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || !around.checkVisibility()) continue;
    if (around.closest("title, desc, style")) continue;
    const svg = around.closest("svg");
    const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    found.push([walker.currentNode.data, parseFloat(getComputedStyle(around).fontSize) * scale]);
  }
  return found;
}"""
"""Each text of the sheet with the size it is printed in, in px."""


def slug_of(path: Path) -> str:
    """The batch of a sheet, by where it lies, whatever its unit."""
    around = {"projects", "hand-outs", "notes", "in", "mm"}
    return next(part for part in reversed(path.parts[:-1]) if part not in around)


def address(site: Served, path: Path) -> str:
    """Where a sheet is served."""
    return f"{site.url}{path.relative_to(site.folder).as_posix()}"


def test_an_ordinary_batch_is_one_leaf(demo_site: Served, page: Page, tmp_path: Path) -> None:
    """Bookmarks print on two sides, of A4 and of Letter, and nothing stands in the outer 8 mm.

    The rules measure 100 mm and 4 in on the paper.
    """
    need_poppler()
    sheet = demo_site.folder / "projects" / "wren-note-bookmarks" / "notes" / "index.html"
    for form in FORMATS:
        leaf = printed(page, address(demo_site, sheet), tmp_path / f"{form}.pdf", form)
        assert (form, leaf.sides) == (form, 2)
        sides = leaf.pictures()
        assert min(map(nearest_to_the_edge, sides)) >= 8
        assert check_rules(sides[0]) == [pytest.approx(100, abs=0.2), pytest.approx(101.6, abs=0.254)]


@pytest.mark.slow
@pytest.mark.parametrize("form", FORMATS)
def test_every_batch_prints_on_as_many_sides_as_it_needs(
    demo_site: Served, page: Page, tmp_path: Path, form: str
) -> None:
    """Two sides for ordinary ones, a third where there are templates; all inside the page less 8 mm.

    So they are in either unit.
    """
    need_poppler()
    found: dict[str, int] = {}
    for path in demo_site.sheets():
        name = demo_site.name(path)
        leaf = printed(page, address(demo_site, path), tmp_path / f"{name.replace('/', '-')}.pdf", form)
        sides = leaf.pictures()
        found[name] = leaf.sides
        assert (name, min(map(nearest_to_the_edge, sides)) >= 8) == (name, True)
        assert check_rules(sides[0]) == [pytest.approx(100, abs=0.2), pytest.approx(101.6, abs=0.254)]
    assert found == {demo_site.name(path): SIDES.get(slug_of(path), 2) for path in demo_site.sheets()}
    assert len(found) == 2 * len(list((demo_site.folder / "projects").glob("*/figures.json")))


@pytest.mark.slow
def test_nothing_is_printed_smaller_than_nine_points(demo_site: Served, page: Page) -> None:
    """Neither the words nor the figures of a drawing."""
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 719, "height": 1000})  # as wide as a side less its margins
    for path in demo_site.sheets():
        page.goto(address(demo_site, path))
        texts: list[list[Any]] = page.evaluate(LETTERING)
        small = [text for text, size in texts if size < NINE_POINTS - 0.02]
        assert (slug_of(path), small) == (slug_of(path), [])
        assert len(texts) > 20


@pytest.mark.slow
def test_a_template_is_printed_at_its_true_size(demo_site: Served, page: Page, tmp_path: Path) -> None:
    """The outline of the box's blank, 120 mm each way, measures that on the paper."""
    need_poppler()
    path = demo_site.folder / "projects" / "hawthorn-boxes" / "notes" / "index.html"
    side = printed(page, address(demo_site, path), tmp_path / "box.pdf", "A4").pictures()[2]
    outline = 0.5
    assert longest_upright_line(side) - outline == pytest.approx(120.0, abs=0.2)


# --- more than two sides ---------------------------------------------------------

PAPERS: Final = 14
STEPS: Final = 24
MAKES: Final = 9
LETTERS: Final = "ABCDEFGHIJKLMN"


def _long_archive(projects: Path) -> None:
    """A batch of fourteen parts, each of a paper of its own, in twenty-four long steps."""
    supplies = "\n".join(
        f"  paper-{n}: {{name: paper {n}, kind: card, size: {231 + n} x {331 + n} mm}}" for n in range(PAPERS)
    )
    parts = "\n".join(f"  piece {n}: {{size: {60 + n} x {80 + n}, paper: paper-{n}}}" for n in range(PAPERS))
    steps = "\n".join(
        f"  - Step {n} is long, " + "stick what lies before you where it belongs, " * 3 + f"so ends step {n}."
        for n in range(STEPS)
    )
    (projects / "inventory").mkdir(parents=True)
    (projects / "inventory" / "drawer.yml").write_text(f"supplies:\n{supplies}\n", encoding="utf-8")
    (projects / "long").mkdir()
    (projects / "long" / "project.yml").write_text(
        f"title: Long\ndate: 2026-03-14\nstatus: planned\nmakes: 0 of {MAKES}\nthing: wreath\n"
        f"parts:\n{parts}\nsteps:\n{steps}\n",
        encoding="utf-8",
    )


@pytest.mark.slow
@pytest.mark.parametrize("form", FORMATS)
def test_a_long_batch_goes_on_without_parting_what_belongs_together(
    page: Page, tmp_path: Path, form: str
) -> None:
    """Each step, each row and each plan with its words is on one side, and every part of it is somewhere."""
    need_poppler()
    _long_archive(tmp_path / "projects")
    worked = read_and_work_out(tmp_path / "projects", Settings(Unit.MM, Currency.of("EUR")))
    assert worked.figures is not None
    sheets = notes_sheets(worked.figures.batches["long"], worked.figures, Masthead("The bench"))
    (_, sheet), _ = sheets
    document = tmp_path / "long.html"
    document.write_text(notes_html(sheet), encoding="utf-8")
    leaf = printed(page, document.as_uri(), tmp_path / "long.pdf", form)
    assert leaf.sides > 3
    assert min(map(nearest_to_the_edge, leaf.pictures())) >= 8
    sides = [side.replace("\u00a0", " ") for side in leaf.texts]
    for n in range(STEPS):
        assert [side for side in sides if f"Step {n} is long" in side and f"so ends step {n}." in side]
    for n in range(PAPERS):
        assert sides[0].count(f"piece {n}, {60 + n} × {80 + n}, nine") == 1
        words = f"of paper {n} like this, {231 + n} × {331 + n} mm"
        # Nine parts lie in three rows: in a parted drawing some of their letters would be on another side.
        drawn = [side.replace(f"{LETTERS[n]} piece", "").split() for side in sides[1:]]
        letters = [words_of_it.count(LETTERS[n]) for words_of_it in drawn]
        assert [count > 0 for count in letters] == [words in side for side in sides[1:]]
        assert sum(letters) == MAKES
