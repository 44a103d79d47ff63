"""Make by make: the sets of each rule put together, and images dealt over them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import groupby

from batchleaf.core.collate.images import deal_images
from batchleaf.core.collate.question import Group, Paper
from batchleaf.core.collate.sets import AlikeSets, Papers, dealt
from batchleaf.facts import ImageUse, Part


@dataclass(frozen=True, slots=True)
class Copy:
    """One part of one make: its paper, where that is collated, and its images (set, number)."""

    paper: Paper | None = None
    images: tuple[tuple[str, int], ...] = ()


Copies = tuple[Copy, ...]
"""The parts of one letter in one make."""


@dataclass(frozen=True, slots=True)
class AlikeMakes:
    """The makes from ``first`` to ``last``, which have the same; ``keeps``: by all rules."""

    first: int
    last: int
    parts: Mapping[str, Copies]
    keeps: bool


@dataclass(frozen=True, slots=True)
class _Make:
    keeps: bool = True
    parts: Mapping[str, Copies] = field(default_factory=dict)


def alike_makes(
    begun: int, groups: Sequence[tuple[Group, int]], parts: Sequence[Part]
) -> Iterator[AlikeMakes]:
    """All makes begun, those that keep the rules first, and those that have the same together.

    ``groups``: each with how many sets it gives by its rule; the makes beyond these get what is left.
    """
    papers = dict.fromkeys(paper for group, _ in groups for paper in group.papers)
    rank = {paper: at for at, paper in enumerate(papers)}
    makes = [_Make()] * begun
    for group, sets in groups:
        makes = _in_order(_with_papers(makes, group, min(sets, begun)), rank)
    for part in parts:
        for images in part.dealt_images:
            makes = _in_order(_with_images(makes, part, images, parts), rank)
    first = 1
    for make, alike in groupby(makes):
        last = first + len(list(alike)) - 1
        yield AlikeMakes(first, last, make.parts, make.keeps)
        first = last + 1


def _in_order(makes: Iterable[_Make], rank: Mapping[Paper, int]) -> list[_Make]:
    """Those that keep the rules first; then by their papers, in the order of the record, and images."""

    def of_copy(copy: Copy) -> tuple[int, tuple[tuple[str, int], ...]]:
        return rank[copy.paper] if copy.paper else -1, copy.images

    def of_make(make: _Make) -> tuple[bool, list[list[tuple[int, tuple[tuple[str, int], ...]]]]]:
        return not make.keeps, [[of_copy(copy) for copy in copies] for copies in make.parts.values()]

    sorted_copies = (
        replace(make, parts={one: tuple(sorted(copies, key=of_copy)) for one, copies in make.parts.items()})
        for make in makes
    )
    return sorted(sorted_copies, key=of_make)


# --- papers ---------------------------------------------------------------------


def _with_papers(makes: Sequence[_Make], group: Group, sets: int) -> Iterator[_Make]:
    """With the parts of one more group: its sets spread evenly over the makes, then what is left."""
    by_rule = dealt(group, sets)
    rest = dealt(_left(group, by_rule), len(makes) - sets)
    for at, (make, papers) in enumerate(zip(makes, (*_spread(by_rule), *_spread(rest)), strict=True)):
        more = {letter: tuple(Copy(paper) for paper in of) for letter, of in papers.items()}
        yield _Make(make.keeps and at < sets, {**make.parts, **more})


def _left(group: Group, sets: Sequence[AlikeSets]) -> Group:
    """The parts that these sets leave, from which a make gets whatever comes."""
    used = Counter[tuple[str, Paper]]()
    for one in sets:
        for letter, papers in one.papers.items():
            for paper in papers:
                used[letter, paper] += one.times
    kinds = tuple(
        replace(kind, cut={paper: cut - used[kind.letter, paper] for paper, cut in kind.cut.items()})
        for kind in group.kinds
    )
    return Group(kinds, most=group.slots)


def _spread(sets: Sequence[AlikeSets]) -> Iterator[Mapping[str, Papers]]:
    """Set by set, each kind of them as evenly over all as can be."""
    spots = (
        (Fraction(2 * nth + 1, 2 * one.times), at, one.papers)
        for at, one in enumerate(sets)
        for nth in range(one.times)
    )
    for _, _, papers in sorted(spots, key=lambda spot: spot[:2]):
        yield papers


# --- images ---------------------------------------------------------------------


def _with_images(
    makes: Sequence[_Make], part: Part, images: ImageUse, parts: Sequence[Part]
) -> Iterator[_Make]:
    """With one of these images on each part of one letter."""
    under = _met_by(part, parts)
    copies = [make.parts.get(part.letter, (Copy(),) * part.each) for make in makes]
    meets = [_things(make, under, part.each) for make in makes]
    dealt_round = deal_images(meets, len(images.numbers))
    for make, mine, got in zip(makes, copies, dealt_round, strict=True):
        stamped = tuple(
            replace(copy, images=(*copy.images, (images.tool, images.numbers[at])))
            for copy, at in zip(mine, got, strict=True)
        )
        yield replace(make, parts={**make.parts, part.letter: stamped})


def _met_by(part: Part, parts: Sequence[Part]) -> str:
    """The letter of the part whose papers an image meets.

    That is the part itself, where it comes from several papers, else the next below it that does, else
    the first that does.
    """
    by_letter = {one.letter: one for one in parts}
    below: Part | None = part
    while below and not below.has_several_papers:
        below = by_letter.get(below.below)
    first = next((one.letter for one in parts if one.has_several_papers), "")
    return below.letter if below else first


def _things(make: _Make, letter: str, each: int) -> list[tuple[Paper | None, ...]]:
    """What each of so many parts meets: the paper of its fellow, or all papers of that letter together."""
    papers = tuple(copy.paper for copy in make.parts.get(letter, ()))
    return [(paper,) for paper in papers] if len(papers) == each else [papers] * each
