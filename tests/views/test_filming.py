"""What each step uses, as its sentence names it, and what lies ready when it is filmed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import Figures
from batchleaf.facts import Project, Step
from batchleaf.views.filming import film_rows, step_quantities
from batchleaf.views.step_uses import uses_of_steps
from browsing import Served
from core.drawers import batch, part, supply

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def figures() -> Figures:
    """The demo."""
    found = open_archive(ROOT).worked().figures
    assert found is not None
    return found


def rows(figures: Figures, slug: str) -> list[tuple[str, str]]:
    """What lies ready, and the quantities, step by step."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    tools = {one.slug: one for one in figures.archive.tools}
    one = figures.batches[slug]
    ready = [row.ready for row in film_rows(one, supplies, tools)]
    amounts = [text.replace("\u00a0", " ") for text in step_quantities(one, supplies, tools)]
    return list(zip(ready, amounts, strict=True))


def test_steps_of_a_batch(figures: Figures) -> None:
    """By whole names, by last words, by the verb of what a tool does."""
    assert rows(figures, "wren-note-bookmarks") == [
        ("A, base; B, water strip; C, label; the craft knife",
         "A, 50 × 180 mm; B, 44 × 70 mm; C, 30 × 12 mm"),
        ("B, water strip", "B, 44 × 70 mm"),
        ("B, water strip; C, label; the hedge sprigs", "B, 44 × 70 mm; C, 30 × 12 mm"),
        ("the hole punch; jute cord", "140 mm of jute cord"),
    ]  # fmt: skip
    first, *_ = rows(figures, "hazel-square-cards")
    assert first == ("A, base; the craft knife; the score board", "A, 270 × 135 mm")


def named(sentence: str, *names: str) -> list[str]:
    """The parts that a sentence names."""
    parts = tuple(
        replace(part(letter, 20, 20, "card"), name=name) for letter, name in zip("ABCD", names, strict=False)
    )
    one: Project = replace(batch(1), parts=parts, steps=(Step(sentence),), thing="card", things="cards")
    (used,) = uses_of_steps(one, {"card": supply()}, {})
    return [found.name for found in used.parts]


@pytest.mark.parametrize(
    ("sentence", "names", "found"),
    [
        ("Stick the strips on.", ("base", "water strip"), ["water strip"]),
        # Two strips: the last word alone says nothing.
        ("Stick the strip on.", ("base", "water strip", "sky strip"), []),
        ("Stick the sky strip on.", ("base", "water strip", "sky strip"), ["sky strip"]),
        # What one make is called is no part of it.
        ("Turn the card.", ("base", "small card"), []),
        ("Stripes all over.", ("base", "strip"), []),
        ("Patches and boxes.", ("base", "patch", "box"), ["patch", "box"]),
        ("Cut, score, fold.", ("base", "strip"), ["base"]),
        ("", ("base", "strip"), []),
    ],
)
def test_what_is_a_name(sentence: str, names: tuple[str, ...], found: list[str]) -> None:
    """Plurals are the same; a word inside of another is not; what several end in is none of them."""
    assert named(sentence, *names) == found


def test_samples_are_made_as_far_as_the_step_before(figures: Figures) -> None:
    """Something finished lies beside the first step and the last."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    tools = {one.slug: one for one in figures.archive.tools}
    first, second, last = film_rows(figures.batches["sloe-lane-cards"], supplies, tools)
    assert first.sample == "a finished card, to show what is made"
    assert second.sample == "a card made up to step 1"
    assert last.sample == "a card made up to step 2, and a finished one"


def test_only_the_maker_is_told_what_lies_ready(demo_site: Served, public_demo: Served) -> None:
    """The quantities of a step are for readers too."""
    for site, told in ((demo_site, True), (public_demo, False)):
        html = Path(site.folder, "projects/wren-note-bookmarks/index.html").read_text(encoding="utf-8")
        assert ("For filming" in html) is told
        assert "of jute cord" in html
