"""What every batch of an archive is found by."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views.find.facets import CHOOSINGS, LADDERS, Choice, Choosing, Known, Ladder, Rung
from batchleaf.views.pages import ChoiceView, FacetView


@dataclass(frozen=True, slots=True)
class Chosen:
    """A facet, and by the order of the batches which of its choices are true of each."""

    view: FacetView
    true_of: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """A ladder, the limit of each of its rungs, and the number of each batch."""

    view: FacetView
    limits: tuple[int, ...]
    numbers: tuple[int | None, ...]


@dataclass(frozen=True, slots=True)
class Indexed:
    """The batches, newest first, and what tells them apart."""

    batches: tuple[BatchFigures, ...]
    chosen: tuple[Chosen, ...]
    measured: tuple[Measured, ...]


def indexed(figures: Figures) -> Indexed:
    """Facets that are the same of every batch are left out: they find nothing."""
    archive = figures.archive
    known = Known(
        figures,
        {supply.slug: supply for supply in archive.supplies},
        {tool.slug: tool for tool in archive.tools},
    )
    batches = tuple(reversed(tuple(figures.batches.values())))
    chosen = (_chosen(one, batches, known) for one in CHOOSINGS)
    measured = (_measured(one, batches, known) for one in LADDERS)
    return Indexed(batches, tuple(one for one in chosen if one), tuple(one for one in measured if one))


def _chosen(facet: Choosing, batches: tuple[BatchFigures, ...], known: Known) -> Chosen | None:
    found = [dict.fromkeys(facet.of(batch, known)) for batch in batches]
    counts = Counter(choice for of_batch in found for choice in of_batch)
    if all(count == len(batches) for count in counts.values()):
        return None
    choices = sorted(counts, key=lambda choice: (_rank(facet, choice, counts), choice[1]))
    place = {choice: at for at, choice in enumerate(choices)}
    view = FacetView(
        facet.key, facet.name, tuple(ChoiceView(value, text, counts[value, text]) for value, text in choices)
    )
    return Chosen(view, tuple(tuple(sorted(place[choice] for choice in of_batch)) for of_batch in found))


def _rank(facet: Choosing, choice: Choice, counts: Counter[Choice]) -> int:
    return facet.rank(choice[0]) if facet.rank else -counts[choice]


def _measured(ladder: Ladder, batches: tuple[BatchFigures, ...], known: Known) -> Measured | None:
    """Only rungs that leave something out, and more than the one below them lets in."""
    numbers = tuple(ladder.of(batch) for batch in batches)
    told = [number for number in numbers if number is not None]
    within = {rung: sum(number <= rung.most for number in told) for rung in ladder.rungs(known)}
    useful: list[Rung] = []
    for rung, count in within.items():
        if (within[useful[-1]] if useful else 0) < count < len(batches):
            useful.append(rung)
    if not useful:
        return None
    choices = tuple(ChoiceView(rung.value, rung.text, within[rung]) for rung in useful)
    view = FacetView(ladder.key, ladder.name, choices, is_ladder=True)
    return Measured(view, tuple(rung.most for rung in useful), numbers)
