"""Small makes, built by hand for the tests of their geometry."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.facts import Fold, Part, Project
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.folds import Form, box_blank, scores_of
from batchleaf.records.spots import read_spots
from core.drawers import batch, size


def base(width: int, height: int, fold: Fold = Fold.NONE, *, panels: int = 0, letter: str = "A") -> Part:
    """A base of this flat size."""
    blank = size(width, height)
    return Part(
        letter,
        "base",
        blank,
        1,
        ("card",),
        turns=True,
        fold=fold,
        scores=scores_of(blank, Form(fold, panels)),
    )


def box(width: int, depth: int, height: int, letter: str = "A") -> Part:
    """The bottom, or the lid, of a box with these measures."""
    blank = box_blank(size(width, depth), Fraction(height))
    return Part(letter, "box", blank.size, 1, ("card",), turns=True, fold=Fold.BOX, scores=blank.scores)


def layer(letter: str, width: int, height: int, at: str = "", *, on: str = "A", each: int = 1) -> Part:
    """A part that lies on another, in mm."""
    spots = read_spots(at, Unit.MM) if at else ()
    return Part(
        letter, letter.lower(), size(width, height), each, ("card",), turns=True, below=on, spots=spots
    )


def make(*parts: Part) -> Project:
    """One make of these parts."""
    return replace(batch(1), parts=parts)


def whole(width: int, height: int) -> Size:
    """A size in whole millimetres."""
    return size(width, height)
