"""The collated sets of a batch: which paper, and which image, each part of each make gets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.collate.makes import AlikeMakes, alike_makes
from batchleaf.core.collate.missing import Missing, missing
from batchleaf.core.collate.most_sets import fewest_times, most_sets
from batchleaf.core.collate.parts_cut import PartsCut, parts_cut
from batchleaf.core.collate.question import Group, Kind
from batchleaf.core.dealing import Supplies
from batchleaf.facts import Collating, Part, Project, Rule

MOST_PARTS: Final = 20_000
MOST_IN_ONE: Final = 100
"""Nobody lays more than that out make by make."""


@dataclass(frozen=True, slots=True)
class Ruled:
    """Parts that are collated ``by`` one rule, and the most sets that gives."""

    by: Collating
    group: Group
    sets: int


@dataclass(frozen=True, slots=True)
class Collated:
    """``sets`` of the makes begun keep all rules; the parts cut give ``possible`` such sets at most.

    ``missing``: what one set more than that takes; ``None`` where no more parts of these papers would
    give one. ``makes``: all that were begun, those that keep the rules first.
    """

    sets: int
    possible: int
    ruled: tuple[Ruled, ...]
    missing: tuple[Missing, ...] | None
    makes: tuple[AlikeMakes, ...]


def collated(project: Project, cutting: Cutting | None, supplies: Supplies) -> Collated | None:
    """How the parts of a batch are collated; ``None`` where every make gets the same anyway.

    None, too, where these would be more than :data:`MOST_PARTS`, or in one make :data:`MOST_IN_ONE`.
    """
    parts = {part.letter: part for part in project.parts}
    ruled_letters = {letter for one in project.collating for letter in one.letters}
    laid_out = [part for part in project.parts if part.letter in ruled_letters or part.dealt_images]
    in_one = sum(part.each for part in laid_out)
    if in_one > MOST_IN_ONE or in_one * project.begun > MOST_PARTS:
        return None
    cut = parts_cut(project, cutting, supplies)
    ruled = tuple(one for one in _ruled(project.collating, parts, cut) if _says_something(one, project.begun))
    if not ruled and not any(part.dealt_images for part in project.parts):
        return None
    possible = min((one.sets for one in ruled), default=project.begun)
    lacking = [missing(one.group, possible + 1) for one in ruled]
    return Collated(
        sets=min(possible, project.begun),
        possible=possible,
        ruled=ruled,
        missing=None if None in lacking else tuple(one for some in lacking for one in some or ()),
        makes=tuple(alike_makes(project.begun, [(one.group, one.sets) for one in ruled], project.parts)),
    )


def _ruled(collating: Sequence[Collating], parts: Mapping[str, Part], cut: PartsCut) -> Iterator[Ruled]:
    for one in collating:
        kinds = tuple(
            Kind(letter, parts[letter].each, cut[letter], parts[letter].side)
            for letter in one.letters
            if letter in cut
        )
        for group in _groups(one.rule, kinds) if kinds else ():
            yield Ruled(one, group, most_sets(group))


def _says_something(one: Ruled, begun: int) -> bool:
    """Whether makes may differ, or cannot all keep the rule: not where each part has one paper anyway."""
    return one.sets < begun or any(len(kind.cut) > 1 for kind in one.group.kinds)


def _groups(rule: Rule, kinds: tuple[Kind, ...]) -> tuple[Group, ...]:
    match rule:
        case Rule.MIXED:
            return (Group(kinds, fewest_times(kinds)),)
        case Rule.NONE_TWICE | Rule.NO_SIDE_TWICE:
            return (Group(kinds, 1, by_side=rule is Rule.NO_SIDE_TWICE),)
        case Rule.ALIKE:
            return (Group(kinds, 0),)
        case Rule.ANY:
            return tuple(Group((kind,), kind.each) for kind in kinds)
