"""What is done to the paper besides cutting it, in the words by which a batch is found again."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from batchleaf.facts import Fold, Project, WorkKind
from batchleaf.views.pages import Line

_FORMS: Final = {
    "score": r"scor(e|es|ed|ing)",
    "fold": r"fold(s|ed|ing)?",
    "stamp": r"stamp(s|ed|ing)?",
    "emboss": r"emboss(es|ed|ing)?",
    "punch": r"punch(es|ed|ing)?",
    "die-cut": r"die[- ]?cut(s|ting)?",
    "round corners": r"round(s|ed|ing)?\b[^.;]*\bcorners?",
    "stitch": r"stitch(es|ed|ing)?",
    "weave": r"weav(e|es|ing)|woven?",
    "stencil": r"stencil(s|led|ling)?",
}
"""A technique, and how a sentence may speak of it: the usual ones of the trade."""

_IN_STEPS: Final = {name: re.compile(rf"\b({forms})\b", re.IGNORECASE) for name, forms in _FORMS.items()}


def techniques(project: Project) -> tuple[str, ...]:
    """``side fold``, ``score``, ``stamp``: kinds of fold first, then the rest in the order of the work."""
    folds = tuple(dict.fromkeys(part.fold.value for part in project.parts if part.fold is not Fold.NONE))
    done = {*_of_the_parts(project), *_of_the_bench(project), *_of_the_steps(project)}
    said = {"fold"} if any("fold" in kind for kind in folds) else set()
    return (*folds, *(name for name in _FORMS if name in done - said))


def techniques_in_words(project: Project) -> Iterator[Line]:
    """``Techniques: side fold, score, stamp.``"""
    if found := techniques(project):
        yield (f"Techniques: {', '.join(found)}.",)


def _of_the_parts(project: Project) -> Iterator[str]:
    for part in project.parts:
        if part.scores:
            yield from ("score", "fold")
        if part.stamps:
            yield "stamp"
        if part.dies:
            yield "die-cut"


def _of_the_bench(project: Project) -> Iterator[str]:
    kinds = (work.kind for work in project.works)
    yield from ("round corners" if kind is WorkKind.ROUND else kind.value for kind in kinds)


def _of_the_steps(project: Project) -> Iterator[str]:
    for step in project.steps:
        yield from (name for name, forms in _IN_STEPS.items() if forms.search(step.sentence))
