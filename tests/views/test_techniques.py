"""What was done to the paper, as the parts and the steps say it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.facts import Fold, ImageUse, Score, Step
from batchleaf.views.techniques import techniques
from core.drawers import batch, cut, part

FLAT = part("A", 100, 90, "card")
SCORES = (Score(runs_down=True, at=Fraction(50)),)


def _done(*sentences: str, fold: Fold = Fold.NONE) -> tuple[str, ...]:
    """The techniques of a batch with these steps, of one part with this fold."""
    base = FLAT if fold is Fold.NONE else replace(FLAT, fold=fold, scores=SCORES)
    steps = tuple(Step(sentence) for sentence in sentences)
    return techniques(replace(batch(1, cut=(cut(1),)), parts=(base,), steps=steps))


@pytest.mark.parametrize(
    ("fold", "found"),
    [
        (Fold.NONE, ()),
        (Fold.SIDE, ("side fold", "score")),
        (Fold.TOP, ("top fold", "score")),
        (Fold.GATE, ("gate fold", "score")),
        (Fold.TENT, ("tent", "score", "fold")),
        (Fold.ACCORDION, ("accordion", "score", "fold")),
        (Fold.BOX, ("box", "score", "fold")),
    ],
)
def test_a_fold_is_called_by_its_kind(fold: Fold, found: tuple[str, ...]) -> None:
    """A base that is folded is scored; it is folded too, where its kind does not say so."""
    assert _done(fold=fold) == found


@pytest.mark.parametrize(
    ("sentence", "found"),
    [
        ("Score at 135 and fold.", ("score", "fold")),
        ("Scored and folded, then scoring again.", ("score", "fold")),
        ("Stamp the labels, let them dry.", ("stamp",)),
        ("EMBOSSED in gold after punching a hole.", ("emboss", "punch")),
        ("Die cut the leaves; die-cutting goes on.", ("die-cut",)),
        ("Round the top corners.", ("round corners",)),
        ("Stitch it, weaving the strips; woven, stencilled.", ("stitch", "weave", "stencil")),
        ("Put it in a folder, on a postage-stamp-sized spot, twenty score-marks off.", ("score", "stamp")),
        ("A tenfold of scorn for stampedes and the folder.", ()),
        ("Go round. Cut the corners.", ()),
    ],
)
def test_steps_are_read_for_their_verbs(sentence: str, found: tuple[str, ...]) -> None:
    """In any form of the word; a longer word that holds it is another word."""
    assert _done(sentence) == found


def test_images_are_pressed_and_cut() -> None:
    """A part that gets an image of a stamp is stamped, one that gets a die is die-cut."""
    pressed = replace(FLAT, stamps=(ImageUse("words", (1,)),))
    shaped = replace(FLAT, letter="B", dies=(ImageUse("leaf"),))
    project = replace(batch(1, cut=(cut(1),)), parts=(pressed, shaped))
    assert techniques(project) == ("stamp", "die-cut")
