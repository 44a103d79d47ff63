"""A list for filming: what must lie ready for each step, and how far a sample is to be made before it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Part, Supply, Tool, Use
from batchleaf.measure.amounts import measure_of, mm_in
from batchleaf.measure.display import NBSP, show_length, show_number, show_size
from batchleaf.measure.durations import show_film_time
from batchleaf.measure.lengths import Unit
from batchleaf.views.pages import FilmRow
from batchleaf.views.step_uses import StepUses, uses_of_steps
from batchleaf.views.words import listed

Supplies = Mapping[str, Supply]
Tools = Mapping[str, Tool]


def film_rows(batch: BatchFigures, supplies: Supplies, tools: Tools) -> tuple[FilmRow, ...]:
    """One for each step, in order."""
    project = batch.project
    used = uses_of_steps(project, supplies, tools)
    return tuple(
        FilmRow(
            number=str(number),
            time=show_film_time(step.film_seconds) if step.film_seconds is not None else "",
            ready=_ready(one, supplies, tools) or "whatever the step before left",
            sample=_sample(number, len(project.steps), project.thing),
        )
        for number, (step, one) in enumerate(zip(project.steps, used, strict=True), 1)
    )


def _sample(number: int, steps: int, thing: str) -> str:
    """What lies beside it, made before: nothing for the first, something finished for the last."""
    if number == 1:
        return f"a finished {thing}, to show what is made"
    done = f"a {thing} made up to step {number - 1}"
    return f"{done}, and a finished one" if number == steps else done


def _ready(one: StepUses, supplies: Supplies, tools: Tools) -> str:
    named = [
        *(f"{part.letter}, {part.name}" for part in one.parts),
        *(tools[slug].name for slug in one.tools),
        *(supplies[use.supply].name for use in one.uses),
    ]
    return "; ".join(named)


def step_quantities(batch: BatchFigures, supplies: Supplies, tools: Tools) -> tuple[str, ...]:
    """For each step the sizes of its parts and the amounts of its supplies, for one make."""
    project = batch.project
    return tuple(
        "; ".join(_quantities(one, supplies, project.unit)) for one in uses_of_steps(project, supplies, tools)
    )


def _quantities(one: StepUses, supplies: Supplies, unit: Unit) -> Iterator[str]:
    yield from (_part(part, unit) for part in one.parts)
    amounts = [_amount(use, supplies[use.supply], unit) for use in one.uses if use.per_make]
    if amounts:
        yield listed(amounts)


def _part(part: Part, unit: Unit) -> str:
    each = f"{part.each}{NBSP}×{NBSP}" if part.each > 1 else ""
    return f"{each}{part.letter}, {show_size(part.size, unit)}{NBSP}{unit.word}"


def _amount(use: Use, supply: Supply, unit: Unit) -> str:
    """A length in the unit of the record, for whoever has a ruler in hand."""
    amount = use.per_make or Fraction(0)
    if measure_of(supply.unit) == "length":
        return f"{show_length(amount * mm_in(supply.unit), unit)}{NBSP}{unit.word} of {supply.name}"
    number = show_number(amount, 2)
    if supply.unit == "piece":
        return f"{number}{NBSP}×{NBSP}{supply.name}"
    return f"{number}{NBSP}{supply.name_of_unit(amount)} of {supply.name}"
