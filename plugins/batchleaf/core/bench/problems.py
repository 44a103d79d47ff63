"""What bench work runs into: papers too heavy for a tool, pieces larger than its plate, a strange order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from batchleaf.core.bench.order import must_precede
from batchleaf.core.bench.work import Bench, each_pile, on_the_plate, too_heavy
from batchleaf.core.bench_limits import Tools
from batchleaf.core.dealing import Supplies
from batchleaf.facts import Moment, Place, Problem, Project, Weight, Work
from batchleaf.measure.display import show_number, show_size


def bench_problems(
    project: Project, bench: Bench | None, supplies: Supplies, tools: Tools
) -> Iterator[Problem]:
    """One notice for each."""
    if bench is None:
        return
    yield from dict.fromkeys(_of_tools(project, bench, supplies, tools))
    for work in project.works:
        if late := [other for other in project.works if _is_late(other, work)]:
            yield _out_of_order(late, work)


def _of_tools(project: Project, bench: Bench, supplies: Supplies, tools: Tools) -> Iterator[Problem]:
    for work, pile in each_pile(bench):
        if not work.tool:
            continue
        tool, unit = tools[work.tool], project.unit
        if too_heavy(tool, pile.grammage):
            paper = supplies[pile.papers[0]]
            yield _notice(
                work.place,
                f"{paper.name} weighs {show_number(pile.grammage or Fraction(0), 0)} g/m²,"
                f" and {tool.name} takes up to {show_number(tool.heaviest or Fraction(0), 0)} g/m²;"
                f" try it on a rest before {work.kind} {pile.letter}",
            )
        if tool.plate and not on_the_plate(tool.plate, pile.size):
            what = f"a sheet with {pile.letter}" if pile.sheets else pile.letter
            yield _notice(
                work.place,
                f"{what} is {show_size(pile.size, unit)} {unit.value}, larger than the plate of {tool.name},"
                f" {show_size(tool.plate, unit)} {unit.value}; check both sizes",
            )


def _is_late(first: Work, then: Work) -> bool:
    """Whether what usually comes first is said to come at a later moment."""
    moments = tuple(Moment)
    return must_precede(first, then) and moments.index(first.moment) > moments.index(then.moment)


def _out_of_order(late: Sequence[Work], then: Work) -> Problem:
    letter = next(one for one in late[0].letters if one in then.letters)
    *most, last = dict.fromkeys(work.kind.value for work in late)
    said = (
        f"{', '.join(most)} and {last}, which usually come first, later"
        if most
        else (f"{last}, which usually comes first, later")
    )
    return _notice(
        then.place, f"{then.kind} {letter} comes {then.moment}, and {said}; check when each is done"
    )


def _notice(place: Place, sentence: str) -> Problem:
    return Problem(place, sentence, Weight.NOTICE)
