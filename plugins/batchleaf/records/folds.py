"""How a piece is folded, as a record says it, and where that puts the score lines of its blank."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Fold, Score
from batchleaf.facts.shapes import WORDS
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size
from batchleaf.records.shape_problems import did_you_mean

FEWEST_PANELS: Final = 2
MOST_PANELS: Final = 12
"""More panels than this nobody folds from one strip."""
_FORMS: Final = (Fold.SIDE, Fold.TOP, Fold.TENT, Fold.GATE, Fold.NONE)
FOLD_WORDS: Final = (*_FORMS, "accordion of 4")
"""What may be written for a fold."""


@dataclass(frozen=True, slots=True)
class Form:
    """A fold; ``panels`` counts those of an accordion."""

    fold: Fold
    panels: int = 0


def read_form(text: str) -> Form:
    """``side fold`` · ``gate fold`` · ``accordion of 4`` · ``flat``.

    Raises :class:`MeasureError` with a sentence.
    """
    words = " ".join(text.lower().split())
    if words in _FORMS:
        return Form(Fold(words))
    accordion = re.fullmatch(r"accordion(?: of)? ([0-9]{1,5})", words)
    if accordion is None and words.startswith("accordion"):
        raise MeasureError(f"“{text}” does not say how many panels it has; write for example accordion of 4")
    if accordion is None:
        hint = did_you_mean(words, [*FOLD_WORDS, "ready-made"]) or did_you_mean(words.split(" ")[0], WORDS)
        known = f"{', '.join(FOLD_WORDS[:-1])} or {FOLD_WORDS[-1]}"
        raise MeasureError(f"“{text}” is not a fold{hint or f'; write {known}'}")
    panels = int(accordion[1])
    if not FEWEST_PANELS <= panels <= MOST_PANELS:
        raise MeasureError(f"“{text}” cannot be; an accordion has {FEWEST_PANELS} to {MOST_PANELS} panels")
    return Form(Fold.ACCORDION, panels)


def blank_size(finished: Size, form: Form) -> Size:
    """The flat piece that folds to ``finished``; a top fold or a tent lies along the longer side."""
    return unfolded(finished.turned if form.fold in (Fold.TOP, Fold.TENT) else finished, form)


def unfolded(finished: Size, form: Form) -> Size:
    """The flat piece that folds to just ``finished``."""
    match form.fold:
        case Fold.SIDE | Fold.GATE:
            return Size(finished.width * 2, finished.height)
        case Fold.TOP | Fold.TENT:
            return Size(finished.width, finished.height * 2)
        case Fold.ACCORDION:
            return Size(finished.width * form.panels, finished.height)
    return finished


def scores_of(blank: Size, form: Form) -> tuple[Score, ...]:
    """Where a blank is scored, from the left or from the top."""
    match form.fold:
        case Fold.SIDE:
            return (down_at(blank.width / 2),)
        case Fold.TOP | Fold.TENT:
            return (across_at(blank.height / 2),)
        case Fold.GATE:
            return (down_at(blank.width / 4), down_at(blank.width * 3 / 4))
        case Fold.ACCORDION:
            return tuple(down_at(blank.width * i / form.panels) for i in range(1, form.panels))
    return ()


@dataclass(frozen=True, slots=True)
class Blank:
    """A flat piece with its score lines."""

    size: Size
    scores: tuple[Score, ...]


def box_blank(bottom: Size, height: Fraction) -> Blank:
    """Bottom and four walls in one piece, scored at ``height`` from each edge."""
    size = Size(bottom.width + 2 * height, bottom.height + 2 * height)
    down = (down_at(height), down_at(size.width - height))
    return Blank(size, (*down, across_at(height), across_at(size.height - height)))


def down_at(at: Fraction) -> Score:
    """From the top edge to the foot, so far from the left."""
    return Score(runs_down=True, at=at)


def across_at(at: Fraction) -> Score:
    """From the left edge to the right, so far from the top."""
    return Score(runs_down=False, at=at)
