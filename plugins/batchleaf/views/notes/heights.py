"""About how high the text of a side is, so that drawings take what is left of it.

The style sheet lays the sides out; where it finds that something takes more, the side goes on
to the next.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from batchleaf.views.notes.on_paper import BELOW, LINE, WIDTH, lines_of, lines_of_pieces, used_of, width_of
from batchleaf.views.pages import Block, CutGroup, PrintedFigure, PrintedPlan, PrintedStep, Shelf

_HEAD: Final = 7.0
"""A heading with the space below it."""
_ROW: Final = LINE + 0.8
_TICK: Final = 6.0
"""A tick box with the space beside it."""
_FILM: Final = 14.0
"""The time in the film that leads a step."""
_BETWEEN_STEPS: Final = 2.0
_LEAST_FOR_STEPS: Final = 76.0
_RING: Final = 3.5
"""What is around the number of a cut."""
_AFTER: Final = 3.0
"""From one setting to the next."""
_COLUMN: Final = (WIDTH - 9.0) / 2
_CAUTIONS: Final = 118.0


def of_cut_list(groups: Sequence[CutGroup]) -> float:
    """In two columns, of which one may be longer by its last group."""
    each = [sum(_of_cut_lines(group)) for group in groups]
    return _HEAD + (sum(each) + max(each)) / 2 if each else 0.0


def _of_cut_lines(group: CutGroup) -> Iterator[float]:
    yield LINE * lines_of(group.paper, _COLUMN) + 2.0
    for line in group.lines:
        text = f"{line.letter} {line.words}, {line.count}"
        yield LINE * (lines_of(text, _COLUMN - _TICK) - 1) + _ROW


def of_tools_and_cautions(tools: Sequence[str], cautions: Sequence[str]) -> float:
    """Side by side: a row for each tool, and the sentences."""
    told = LINE * sum(lines_of(sentence, _CAUTIONS) for sentence in cautions)
    return _HEAD + max(_ROW * len(tools), told) if tools or cautions else 0.0


def of_back(shelves: Sequence[Shelf], steps: Sequence[PrintedStep]) -> float:
    """Everything between the heading and the foot."""
    beside = steps_fit_beside(shelves, steps)
    last = _with_steps_beside(shelves, steps) if beside else _with_steps_below(shelves, steps)
    return sum(map(_of_shelf, shelves[:-1])) + last


def steps_fit_beside(shelves: Sequence[Shelf], steps: Sequence[PrintedStep]) -> bool:
    """Whether the last shelf leaves a column wide enough to read, and they take less height there."""
    if not (shelves and steps) or WIDTH - used_of(shelves[-1]) < _LEAST_FOR_STEPS:
        return False
    return _with_steps_beside(shelves, steps) <= _with_steps_below(shelves, steps)


def _with_steps_beside(shelves: Sequence[Shelf], steps: Sequence[PrintedStep]) -> float:
    last = shelves[-1]
    return max(_of_shelf(last), _of_steps(steps, WIDTH - used_of(last)) + BELOW)


def _with_steps_below(shelves: Sequence[Shelf], steps: Sequence[PrintedStep]) -> float:
    return sum(map(_of_shelf, shelves[-1:])) + (_of_steps(steps, WIDTH) + BELOW if steps else 0.0)


def _of_shelf(shelf: Shelf) -> float:
    return max(map(_of_block, shelf)) + BELOW


def _of_block(block: Block) -> float:
    if isinstance(block, PrintedFigure):
        return block.printed.height + LINE * lines_of(block.caption, block.width) + 1.0
    words = (f"{block.title}. {block.instruction}", block.remark)
    lines = sum(lines_of(text, block.width) for text in words)
    settings = lines_of_pieces(_settings(block), block.width)
    return block.printed.height + 1.0 + LINE * (lines + settings)


def _settings(plan: PrintedPlan) -> Iterator[float]:
    """How wide each is with the rings of its cuts."""
    for one in plan.settings:
        texts = (one.setting, one.before, *(cuts.shown for cuts in one.numbers))
        yield sum(map(width_of, texts)) + _RING * len(one.numbers) + _AFTER


def _of_steps(steps: Sequence[PrintedStep], width: float) -> float:
    return _HEAD + sum(LINE * lines_of(one.sentence, width - _FILM) + _BETWEEN_STEPS for one in steps)
