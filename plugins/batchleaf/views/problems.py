"""The page that stands in for the site while a record cannot be read."""

from __future__ import annotations

from collections.abc import Sequence

from batchleaf.facts import Problem
from batchleaf.measure.signs import on_one_line, with_turns_shown
from batchleaf.views.pages import ProblemRow, ProblemsPage
from batchleaf.views.words import capitalised, number_word


def problems_page(problems: Sequence[Problem]) -> ProblemsPage:
    """Every problem with its place, its line and a caret below it."""
    count = number_word(len(problems))
    noun = "thing stands" if len(problems) == 1 else "things stand"
    return ProblemsPage(
        title=f"{capitalised(count)} {noun} in the way",
        sentence=("The pages come back when the records can be read; save the file and this page follows.",),
        rows=tuple(_row(problem) for problem in problems),
    )


def _row(problem: Problem) -> ProblemRow:
    place = problem.place
    caret = " " * (place.column - 1) + "^" if problem.line_text else ""
    return ProblemRow(
        on_one_line(f"{place.file}, line {place.line}"),
        on_one_line(problem.sentence),
        with_turns_shown(problem.line_text),
        caret,
    )
