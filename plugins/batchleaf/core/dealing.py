"""Parts dealt round: each comes evenly from the papers it may come from.

What does not divide evenly goes on with the paper after the last, part by part, so that no paper
has to come twice in a make for it; parts that are collated alike come from the same papers.

The papers of a pad have no names where the record says "any 6 of" it. Its sheets
are then dealt out among so many unnamed papers, so that no sheet stands for two.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from batchleaf.core.cutting.plan import CostPlan, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.with_the_grain import all_lie, lies_turned, lying, told_as_asked
from batchleaf.facts import Cut, Part, Supply
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.money import share

Supplies = Mapping[str, Supply]
Cheapest = Callable[[Job, int], CostPlan]


@dataclass(frozen=True, slots=True)
class Wanted:
    """So many of one part, for all makes together; ``alike``: those of one make are from one paper."""

    part: Part
    count: int
    alike: bool = False


@dataclass(frozen=True, slots=True)
class Lot:
    """Equal sheets or scraps of one ``paper``; ``line``: the line of the record they belong to.

    ``paper`` is the supply's slug, with a number behind it for an unnamed paper of a pad.
    """

    stock: Stock
    line: str
    supply: str
    paper: str


def may_come_from(part: Part, supply: str, supplies: Supplies) -> bool:
    """Whether a part may be cut from a supply; a pad and its numbered papers stand for each other."""
    return any(
        paper == supply or supplies[supply].pad == paper or supplies[paper].pad == supply
        for paper in part.papers
    )


def lots_of(
    lines: Mapping[str, Cut], parts: Sequence[Part], supplies: Supplies, *, counted: bool
) -> tuple[Lot, ...]:
    """Every line of sheets as lots; ``counted`` False: as many sheets as it takes."""
    return tuple(
        lot for id_, cut in lines.items() for lot in _lots(id_, cut, parts, supplies, counted=counted)
    )


def _lots(line: str, cut: Cut, parts: Sequence[Part], supplies: Supplies, *, counted: bool) -> Iterator[Lot]:
    unnamed = 1 if cut.scrap else max((_asked(part, cut.supply, supplies) for part in parts), default=1)
    papers = min(unnamed, cut.count) if counted else unnamed
    if papers <= 1:
        yield Lot(_stock(line, cut, cut.count if counted else None, supplies), line, cut.supply, cut.supply)
        return
    for number, count in enumerate(share(cut.count, [Fraction(1)] * papers), 1):
        stock = _stock(f"{line}.{number}", cut, count if counted else None, supplies)
        yield Lot(stock, line, cut.supply, f"{cut.supply} {number}")


def _asked(part: Part, pad: str, supplies: Supplies) -> int:
    """How many papers of a pad a part is dealt over."""
    if pad in part.papers:
        return max(part.any_of, 1)
    return sum(supplies[paper].pad == pad for paper in part.papers)


def _stock(id_: str, cut: Cut, have: int | None, supplies: Supplies) -> Stock:
    """A sheet costs its area, so that the least paper is sought; a scrap costs nothing."""
    supply = supplies[cut.supply]
    worth = Fraction(0) if cut.scrap else supply.sheet.area
    size = cut.scrap or supply.usable
    return Stock(id_, size, have=have, cost=worth, scrap=cut.scrap is not None, name=supply.name)


def kind_of(part: Part, sources: tuple[str, ...]) -> PartKind:
    """A part as the planner knows it."""
    return PartKind(
        id=part.letter, size=part.cut_size, each=part.each, turns=part.turns, sources=sources, name=part.name
    )


def as_they_come(
    wanted: Sequence[Wanted], lots: Sequence[Lot], supplies: Supplies, ask: Cheapest
) -> CostPlan:
    """The cheapest sheets that give all that is wanted, whichever papers it comes from."""
    kinds = []
    for one in wanted:
        sources = tuple(lot.stock.id for lot in lots if may_come_from(one.part, lot.supply, supplies))
        kinds.append(replace(kind_of(one.part, sources), each=one.count))
    letters = {one.part.letter: one.part.letter for one in wanted}
    return _asked_of(wanted, lots, Dealt(tuple(kinds), letters), supplies, ask)


@dataclass(frozen=True, slots=True)
class Dealt:
    """Kinds of parts, each of one paper, and the letter of the part that each kind is."""

    kinds: tuple[PartKind, ...]
    letters: Mapping[str, str]


def dealt(wanted: Sequence[Wanted], lots: Sequence[Lot], supplies: Supplies) -> Dealt:
    """Each part evenly from its papers."""
    kinds: list[PartKind] = []
    letters: dict[str, str] = {}
    turns = Counter[tuple[str, ...]]()
    for one in wanted:
        papers = papers_of(one.part, lots, supplies)
        counts = shares(one, len(papers), turns[tuple(papers)])
        turns[tuple(papers)] += 0 if one.alike else one.count
        for (paper, ids), count in zip(papers.items(), counts, strict=True):
            kind = kind_of(one.part, ids)
            kinds.append(replace(kind, id=f"{one.part.letter} {paper}", each=count))
            letters[kinds[-1].id] = one.part.letter
    return Dealt(tuple(kinds), letters)


def dealt_round(wanted: Sequence[Wanted], lots: Sequence[Lot], supplies: Supplies, ask: Cheapest) -> CostPlan:
    """The cheapest sheets if each part comes evenly from its papers."""
    return _asked_of(wanted, lots, dealt(wanted, lots, supplies), supplies, ask)


def _asked_of(
    wanted: Sequence[Wanted], lots: Sequence[Lot], kinds: Dealt, supplies: Supplies, ask: Cheapest
) -> CostPlan:
    """The cheapest sheets; where it costs no more, parts lie so that they fold with the grain."""
    job = Job(tuple(lot.stock for lot in lots), tuple(kind for kind in kinds.kinds if kind.each))
    plan = ask(job, 1)
    turned = _with_the_grain(wanted, lots, kinds.letters, supplies)
    if plan.cost is not None and not all_lie(plan, turned):
        other = ask(lying(job, turned), 1)
        plan = told_as_asked(other, turned) if other.cost == plan.cost else plan
    return _by_line(plan, lots, kinds.letters)


def _with_the_grain(
    wanted: Sequence[Wanted], lots: Sequence[Lot], letters: Mapping[str, str], supplies: Supplies
) -> dict[str, bool]:
    """Kind of part → whether it lies turned if it folds with the grain; of odd pieces nobody knows it."""
    ways: dict[str, bool] = {}
    for one in wanted:
        whole = (lot.supply for lot in lots if not lot.stock.scrap)
        papers = [supplies[slug] for slug in whole if may_come_from(one.part, slug, supplies)]
        if (way := lies_turned(one.part, papers)) is not None:
            ways[one.part.letter] = way
    return {id_: ways[letter] for id_, letter in letters.items() if letter in ways}


def papers_of(part: Part, lots: Sequence[Lot], supplies: Supplies) -> dict[str, tuple[str, ...]]:
    """The papers that a part may come from, in the order of its record → the stocks that are of each."""
    papers: dict[str, dict[str, None]] = {}
    for slug in part.papers:
        only = replace(part, papers=(slug,))
        for lot in lots:
            if may_come_from(only, lot.supply, supplies):
                papers.setdefault(lot.paper, {})[lot.stock.id] = None
    return {paper: tuple(ids) for paper, ids in papers.items()}


def shares(wanted: Wanted, papers: int, turn: int = 0) -> tuple[int, ...]:
    """All that is wanted of one part, shared out among so many papers; the first to get one more is ``turn``.

    Parts of which those of one make are alike go in whole makes, and what is over after these.
    """
    if not papers:
        return ()
    together = wanted.part.each if wanted.alike else 1
    makes, over = divmod(wanted.count, together)
    full = [together * count for count in _round(makes, papers, turn)]
    return tuple(a + b for a, b in zip(full, _round(over, papers, turn + makes), strict=True))


def _round(count: int, papers: int, turn: int) -> list[int]:
    each, more = divmod(count, papers)
    return [each + ((paper - turn) % papers < more) for paper in range(papers)]


def _by_line(plan: CostPlan, lots: Sequence[Lot], letters: Mapping[str, str]) -> CostPlan:
    """The plan in the letters of the parts and by lines of the record; alike sheets are one plan again."""
    lines = {lot.stock.id: lot.line for lot in lots}
    times = Counter[tuple[str, Node]]()
    for one in plan.plans:
        times[lines[one.stock], _relettered(one.tree, letters)] += one.times
    spares = Counter[str]()
    for id_, count in plan.spares:
        spares[letters[id_]] += count
    plans = tuple(SheetPlan(line, count, tree) for (line, tree), count in times.items())
    return replace(plan, plans=plans, spares=tuple(spares.items()))


def _relettered(tree: Node, letters: Mapping[str, str]) -> Node:
    match tree:
        case PartLeaf(part, turned):
            return PartLeaf(letters[part], turned)
        case ThroughCut(axis, at, first, second):
            return ThroughCut(axis, at, _relettered(first, letters), _relettered(second, letters))
        case Leftover():
            return tree
