"""What lies in the drawer could become: for each piece the parts that it gives, the best use first.

    share = how many of one part a piece gives by through cuts × its area ÷ the area of the piece

The best use is the largest part that takes two thirds of the piece: small ones find room anywhere. A part is
thought of for every paper of the kind that its batch took it from: a mat of moss card may as well be one of
fern card. Parts of one size stand once, with all batches that have them; papers of one kind and size too.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice
from typing import Final

from batchleaf.core.batch_cutting import Planner
from batchleaf.core.cutting.from_one_sheet import through_cuts_give
from batchleaf.core.cutting.plan import SheetPlan
from batchleaf.core.dealing import Supplies
from batchleaf.core.from_the_drawer import Lying
from batchleaf.facts import Project
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size

MOST: Final = 3
"""So many uses of one piece are told."""
ENOUGH: Final = Fraction(2, 3)
"""Of a piece; the house's own."""


@dataclass(frozen=True, slots=True)
class WantedPart:
    """Parts of one size that some kinds of paper may be cut for, with the batches and the letters."""

    size: Size
    turns: bool
    kinds: frozenset[str]
    of: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Use:
    """``count`` of one part from one piece, of which they take the ``share``."""

    part: WantedPart
    count: int
    share: Fraction


@dataclass(frozen=True, slots=True)
class Pieces:
    """Equal pieces of one kind of paper: how many there are of each supply, of a pad's papers together."""

    size: Size
    odd: bool
    kind: str
    counts: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class CouldBecome:
    """Equal pieces with their best uses, and how one is cut for the best; ``None``: no plan was found."""

    pieces: Pieces
    uses: tuple[Use, ...]
    job: Job
    plan: SheetPlan | None


def equal_pieces(lying: Sequence[Lying], supplies: Supplies) -> tuple[Pieces, ...]:
    """What lies in the drawer, in the order in which each size is first met."""
    found: dict[tuple[Size, bool, str], Counter[str]] = {}
    for one in lying:
        supply = supplies[one.supply]
        size = one.piece or supply.usable
        counts = found.setdefault((size, one.piece is not None, supply.kind), Counter())
        counts[supply.pad or supply.slug] += one.count
    return tuple(Pieces(size, odd, kind, tuple(of.items())) for (size, odd, kind), of in found.items())


def wanted_parts(projects: Iterable[Project], supplies: Supplies) -> tuple[WantedPart, ...]:
    """Every size that is cut for some batch, in the order in which it is first met."""
    of: dict[tuple[Size, bool], dict[tuple[str, str], None]] = {}
    kinds: dict[tuple[Size, bool], set[str]] = {}
    for project in projects:
        for part in project.cut_parts:
            size = part.cut_size.upright if part.turns else part.cut_size
            of.setdefault((size, part.turns), {})[project.slug, part.letter] = None
            kinds.setdefault((size, part.turns), set()).update(supplies[slug].kind for slug in part.papers)
    return tuple(
        WantedPart(size, turns, frozenset(kinds[size, turns]), tuple(batches))
        for (size, turns), batches in of.items()
    )


def could_become(
    pieces: Sequence[Pieces], wanted: Sequence[WantedPart], planner: Planner
) -> Iterator[CouldBecome]:
    """One for all pieces that give something, in their order."""
    for some in pieces:
        parts = [part for part in wanted if some.kind in part.kinds]
        if uses := best_uses(some.size, parts):
            yield _planned(some, uses, planner)


def best_uses(size: Size, parts: Sequence[WantedPart]) -> tuple[Use, ...]:
    """The largest parts that take enough of a piece; where these are few, those that take most of it."""
    by_area = sorted(parts, key=lambda part: -part.size.area)
    good = list(islice((use for part in by_area if (use := _use(size, part, ENOUGH))), MOST))
    if len(good) == MOST:
        return tuple(good)
    rest = [use for part in by_area if (use := _use(size, part)) and use not in good]
    return (*good, *sorted(rest, key=lambda use: -use.share)[: MOST - len(good)])


def _use(size: Size, part: WantedPart, least: Fraction = Fraction(0)) -> Use | None:
    """``None`` where not even one lies on the piece, or they take less than ``least`` of it."""
    at_most = size.area // part.size.area
    if at_most * part.size.area < least * size.area:
        return None
    count = through_cuts_give(size, part.size, turns=part.turns)
    share = count * part.size.area / size.area
    return Use(part, count, share) if count and share >= least else None


def _planned(pieces: Pieces, uses: tuple[Use, ...], planner: Planner) -> CouldBecome:
    """One piece, cut for the best use."""
    best = uses[0].part
    stock = Stock("piece", pieces.size, 1, Fraction(0), scrap=pieces.odd)
    job = Job((stock,), (PartKind("A", best.size, 1, best.turns),))
    plans = planner.most(job).plans
    return CouldBecome(pieces, uses, job, plans[0] if plans else None)
