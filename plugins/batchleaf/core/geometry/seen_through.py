"""Backs of parts, and what these are stuck with, that a see-through base or paper lets be seen."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Final

from batchleaf.core.geometry.aspects import AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.off_their_face import notice, place_of
from batchleaf.core.geometry.room import largest_empty
from batchleaf.core.geometry.seen import Seen, seen_in
from batchleaf.facts import Part, Problem, Project, ShownSide, Supply
from batchleaf.facts.spots import Face

Supplies = Mapping[str, Supply]
_FROM: Final = {
    AspectKind.FRONT: "from the front",
    AspectKind.INSIDE: "from inside",
    AspectKind.BACK: "from behind",
    AspectKind.CLOSED: "once it is closed",
    AspectKind.LID_INSIDE: "from inside the lid",
    AspectKind.WALL: "from outside",
}


def seen_through(project: Project, supplies: Supplies) -> Iterator[Problem]:
    """One notice for each part whose back shows through its base, or whose own paper shows its adhesive."""
    made = put_together(project)
    if made is None:
        return
    for letter, ways in _backs_seen(made, supplies).items():
        yield from _told(made, letter, ways, supplies)
    for part in dict.fromkeys(one.part for one in made.lying if one.panel.face is not Face.ROUND):
        yield from _shows_its_adhesive(part, supplies)


def clear_bases(made: MadeUp, supplies: Supplies) -> frozenset[str]:
    """The letters of the bases that one sees through."""
    return frozenset(base.letter for base in made.bases if is_clear(base, supplies))


def is_clear(part: Part, supplies: Supplies) -> bool:
    """Whether any paper that it may come from is see-through."""
    return any(supplies[slug].see_through for slug in part.papers)


def _backs_seen(made: MadeUp, supplies: Supplies) -> dict[str, list[AspectKind]]:
    """The letters of the parts whose back is in sight, each with the aspects in which it is."""
    clear, found = clear_bases(made, supplies), dict[str, list[AspectKind]]()
    if not clear:
        return found
    for aspect in aspects_of(made):
        for letter in _reverse_in(seen_in(aspect, made, clear), clear, supplies):
            ways = found.setdefault(letter, [])
            if aspect.kind not in ways:
                ways.append(aspect.kind)
    return found


def _reverse_in(seen: Sequence[Seen], clear: Collection[str], supplies: Supplies) -> Iterator[str]:
    for number, one in enumerate(seen):
        if one.index is None or not one.reverse:
            continue
        over = [other.rect for other in seen[number + 1 :] if not is_clear(other.part, supplies)]
        if largest_empty(one.rect, over) is not None:
            yield one.part.letter


def _told(made: MadeUp, letter: str, ways: Sequence[AspectKind], supplies: Supplies) -> Iterator[Problem]:
    one = next(lying for lying in made.lying if lying.part.letter == letter)
    seen = [*_plain_back(one.part, supplies), *_adhesive(one.part, supplies)]
    if seen:
        base = next(part for part in made.bases if part.letter == one.panel.base)
        film = next(supplies[slug].name for slug in base.papers if supplies[slug].see_through)
        where = " and ".join(_FROM[way] for way in ways)
        yield notice(
            place_of(one.spot, one.part),
            f"{' and '.join(seen)} of {letter} show{'s' if len(seen) == 1 else ''} through {film} {where};"
            f" a part on the other side hides {'it' if len(seen) == 1 else 'them'}",
        )


def _plain_back(part: Part, supplies: Supplies) -> Iterator[str]:
    """The side that a part turns away, where it looks other than the one it shows."""
    away = ShownSide.BACK if part.side is ShownSide.FRONT else ShownSide.FRONT
    papers = [supplies[slug] for slug in part.papers]
    if any(paper.side(away).look != paper.side(part.side).look for paper in papers):
        yield f"the {away.value}"


def _adhesive(part: Part, supplies: Supplies) -> Iterator[str]:
    if part.stuck is not None and not supplies[part.stuck.supply].see_through:
        yield f"the {supplies[part.stuck.supply].name.removeprefix('the ')}"


def _shows_its_adhesive(part: Part, supplies: Supplies) -> Iterator[Problem]:
    if part.below and is_clear(part, supplies):
        for adhesive in _adhesive(part, supplies):
            paper = next(supplies[slug].name for slug in part.papers if supplies[slug].see_through)
            yield notice(
                part.place,
                f"{adhesive} of {part.letter} shows through {paper}; put it where a part lies over it, or"
                " take one that is see-through",
            )
