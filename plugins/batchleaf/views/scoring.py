"""Scoring and folding in words: the settings of the score board."""

from __future__ import annotations

from typing import Final

from batchleaf.facts import Fold, Part
from batchleaf.measure.display import show_length
from batchleaf.measure.lengths import Unit
from batchleaf.views.words import NBSP, listed

_THEN: Final = {
    Fold.GATE: ", and fold both doors to the middle.",
    Fold.ACCORDION: ", and fold it to and fro.",
}


def how_to_score(part: Part, unit: Unit) -> str:
    """``Score every A at 2 1/8 and 6 3/8 in along its long side, and fold both doors to the middle.``

    The walls of a box come free where each corner is cut along one of its two scores.
    """
    if part.walls is not None:
        walls = _measured(show_length(part.walls, unit), unit)
        return (
            f"Score all four sides of every {part.letter} at {walls},"
            " then cut into each corner along one score as far as the other."
        )
    settings = _measured(listed([show_length(score.at, unit) for score in part.scores]), unit)
    then = _THEN.get(part.fold, " before it is folded.")
    return f"Score every {part.letter} at {settings}{_along(part)}{then}"


def _measured(figures: str, unit: Unit) -> str:
    return f"{figures}{NBSP}{unit.value}"


def _along(part: Part) -> str:
    """Which side lies along the board; a square has no longer one."""
    if part.size.width == part.size.height:
        return ""
    long = part.scores[0].runs_down == (part.size.width > part.size.height)
    return f" along its {'long' if long else 'short'} side"


def folded_in_words(part: Part, unit: Unit) -> str:
    """``105 × 148``; a box with its height, ``60 × 60 × 30``. A narrow column may break it after a ×."""
    size = part.folded_size
    measures = [size.width, size.height, *([part.walls] if part.walls is not None else [])]
    return f"{NBSP}× ".join(show_length(measure, unit) for measure in measures)
