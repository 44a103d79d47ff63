"""The cut list as makers write it, by paper: ``5 1/2 × 8 1/2, score at 4 1/4, twelve``."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from batchleaf.facts import Origin, Part, Project, Supply
from batchleaf.measure.display import show_length, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.views.links import together
from batchleaf.views.pages import CutGroup, CutLine
from batchleaf.views.shape_in_words import shape_words
from batchleaf.views.words import capitalised, listed, spelt

Supplies = Mapping[str, Supply]
BY_HAND: Final = "Scraps, by hand"


def cut_list(project: Project, supplies: Supplies) -> tuple[CutGroup, ...]:
    """What is cut for the makes that the record begins, in the order of its parts."""
    groups: dict[str, list[Part]] = {}
    for part in project.parts:
        if part.origin is not Origin.READY:
            groups.setdefault(_paper(part, supplies), []).append(part)
    return tuple(
        CutGroup(paper, tuple(_line(part, project) for part in parts)) for paper, parts in groups.items()
    )


def _paper(part: Part, supplies: Supplies) -> str:
    names = listed([paper.name for paper in together(supplies[slug] for slug in part.papers)])
    if part.origin is Origin.BY_HAND:
        return f"Scraps of {names}" if names else BY_HAND
    any_of = f"Any {part.any_of} of " if part.any_of else ""
    return capitalised(f"{any_of}{names}")


def _line(part: Part, project: Project) -> CutLine:
    count = part.each * project.begun + part.extra
    extra = f", {spelt(part.extra)} of them extra" if part.extra else ""
    return CutLine(
        part.letter,
        ", ".join((part.name, *_words(part, project.unit))),
        f"{spelt(count)}{extra}",
    )


def _words(part: Part, unit: Unit) -> Iterator[str]:
    yield show_size(part.cut_size, unit)
    if part.oversize and part.shape.is_rectangle:
        yield f"trim to {show_size(part.size, unit)}"
    yield from scores_in_words(part, unit)
    yield from shape_words(part, unit)
    if part.before:
        yield f"first {part.before.rstrip('.')}"


def scores_in_words(part: Part, unit: Unit) -> Iterator[str]:
    """``score at 2 1/8 and 6 3/8``; of a box its walls; where it is scored both ways, from which edge."""
    down = [show_length(score.at, unit) for score in part.scores if score.runs_down]
    across = [show_length(score.at, unit) for score in part.scores if not score.runs_down]
    if part.walls is not None:
        yield f"score all four sides at {show_length(part.walls, unit)}"
    elif down and across:
        yield f"score at {listed(down)} from the left and at {listed(across)} from the top"
    elif part.scores:
        yield f"score at {listed([*down, *across])}"
