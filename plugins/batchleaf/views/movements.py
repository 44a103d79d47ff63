"""What moved of a supply, row by row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, groupby

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.entries import Kind
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Found, Ledger, Moment, Movement
from batchleaf.facts import Basis, Supply
from batchleaf.measure.display import show_aligned, show_number, show_size
from batchleaf.measure.lengths import Size
from batchleaf.views import site_map
from batchleaf.views.levels import level, part_of_one
from batchleaf.views.pages import Aside, Line, Link, MovementRow
from batchleaf.views.stock import papers_in
from batchleaf.views.words import counted, listed, money_moved, number_of, short_date, signed


@dataclass(frozen=True, slots=True)
class Moved:
    """One movement as the page of one supply tells it.

    ``whole``: by how much its whole units changed; ``None`` where odd pieces moved.
    ``cost``: ``None`` where the page tells no prices.
    """

    moment: Moment
    whole: Fraction | None
    pieces: tuple[int, Size] | None
    cost: Cost | None
    paper: int = 0
    basis: Basis = Basis.STATED
    found: Found | None = None


def movement_rows(supply: Supply, figures: Figures, ledger: Ledger, here: str) -> Iterator[MovementRow]:
    """A batch takes one row, whatever it took and kept; everything else has its own."""
    rows = [list(group) for _, group in groupby(moves_of(supply, figures, ledger), key=_one_row)]
    changes = [_change(moved) for moved in rows]
    on_hand = show_aligned(list(accumulate(change or Fraction(0) for change in changes)))
    sizes = show_aligned([abs(change or Fraction(0)) for change in changes])
    for moved, change, size, there in zip(rows, changes, sizes, on_hand, strict=True):
        costs = [one.cost for one in moved if one.cost is not None]
        yield MovementRow(
            date=short_date(moved[0].moment.date),
            date_iso=moved[0].moment.date.isoformat(),
            what=_what(moved, supply, figures, here),
            quantity="" if change is None else signed(change, size),
            on_hand=there,
            value=money_moved(sum(costs, NOTHING), figures.settings.currency) if costs else "",
        )


def moves_of(supply: Supply, figures: Figures, ledger: Ledger) -> list[Moved]:
    """All that moved of a supply, one by one in order."""
    return _of_paper(supply, ledger) if supply.pad else list(_of_supply(supply, figures, ledger))


def _of_supply(supply: Supply, figures: Figures, ledger: Ledger) -> Iterator[Moved]:
    """What moved of a supply; of a pad also what moved of its papers, since it lies in one pile."""
    numbers = {paper.slug: paper.number for paper in papers_in(supply, figures)}
    for one in ledger.movements:
        of = one.holding.supply
        if of == supply.slug or of in numbers:
            number = numbers.get(one.paper or of, 0)
            pieces = _pieces(one)
            whole = None if pieces else one.quantity
            yield Moved(one.moment, whole, pieces, one.cost, number, one.basis, one.found)


def _of_paper(paper: Supply, ledger: Ledger) -> list[Moved]:
    """What moved of a numbered paper: its sheets, which are priced with the pad, and its odd pieces."""
    sheets = [one for one in ledger.paper_movements if one.paper == paper.slug]
    counts = {one.moment: one.found for one in ledger.movements if one.paper == paper.slug and one.found}
    moved = {one.moment for one in sheets}
    pieces = [one for one in ledger.movements if one.holding.supply == paper.slug]
    moves = [
        *(Moved(one.moment, one.quantity, None, None, found=counts.get(one.moment)) for one in sheets),
        *(
            Moved(moment, Fraction(0), None, None, found=found)
            for moment, found in counts.items()
            if moment not in moved
        ),
        *(Moved(one.moment, None, _pieces(one), None) for one in pieces),
    ]
    batches = list(ledger.draws)
    return sorted(moves, key=lambda one: _in_order(one.moment, batches))


def _in_order(moment: Moment, batches: Sequence[str]) -> tuple[object, ...]:
    """The ledger's own order, for what is put together from several lists."""
    batch = batches.index(moment.project) if moment.project else 0
    if moment.project:
        return moment.date, Kind.UNEXPLAINED, batch, moment.kind
    return moment.date, moment.kind, batch, moment.kind


def _pieces(movement: Movement) -> tuple[int, Size] | None:
    size = movement.holding.piece
    return None if size is None else (int(movement.quantity), size)


def _one_row(moved: Moved) -> tuple[object, ...]:
    moment = moved.moment
    if moment.kind in (Kind.TAKEN, Kind.KEPT):
        return (moment.date, moment.project)
    return (moment.date, moment.kind, moved.pieces, moment.place)


def _change(moved: list[Moved]) -> Fraction | None:
    """By how much whole units changed; None where only odd pieces moved."""
    whole = [one.whole for one in moved if one.whole is not None]
    return sum(whole, Fraction(0)) if whole else None


def _what(moved: list[Moved], supply: Supply, figures: Figures, here: str) -> Line:
    first = moved[0]
    match first.moment.kind:
        case Kind.OPENING:
            return _came_in("at the start", first, supply)
        case Kind.BOUGHT if supply.pad:
            return ("came in with the pad",)
        case Kind.BOUGHT:
            return _came_in("came in" if first.basis is Basis.GIFT else "bought", first, supply)
        case Kind.COUNTED:
            return ("counted ", Aside(_count_said(first, supply)))
        case Kind.GONE:
            return (first.moment.why, *_pieces_gone(first, supply))
        case Kind.UNEXPLAINED if supply.pad:
            return ("of no known number before ", Aside("it was used, so it must have been there"))
        case Kind.UNEXPLAINED:
            return ("missing from the records ", Aside("it was used, so it must have come in"))
    project = figures.batches[first.moment.project].project
    link = Link(project.title, site_map.href(here, site_map.batch(project.slug)))
    asides = list(_asides(moved, supply))
    return (link, " ", Aside(", ".join(asides))) if asides else (link,)


def _came_in(word: str, moved: Moved, supply: Supply) -> Line:
    """``bought the autumn fair, a gift``: with its source, and how well its price is known."""
    scraps = ""
    if moved.pieces:
        count, size = moved.pieces
        scraps = f"{counted(count, 'scrap', 'scraps')} {show_size(size, supply.length_unit)}"
    paper = f"paper {moved.paper}" if moved.paper else ""
    how = {Basis.GUESSED: "a guess", Basis.GIFT: "a gift"}.get(moved.basis, "")
    said = ", ".join(filter(None, (scraps, paper, moved.moment.supplier, how)))
    return (f"{word} ", Aside(said)) if said else (word,)


def _asides(moved: list[Moved], supply: Supply) -> Iterator[str]:
    numbers = sorted({one.paper for one in moved if one.paper and one.whole is not None})
    if numbers:
        yield f"{'paper' if len(numbers) == 1 else 'papers'} {listed([str(number) for number in numbers])}"
    for one in moved:
        if one.pieces:
            count, size = abs(one.pieces[0]), show_size(one.pieces[1], supply.length_unit)
            of = f" of paper {one.paper}" if one.paper and len(numbers) != 1 else ""
            if one.moment.kind is Kind.KEPT:
                yield f"{counted(count, 'piece', 'pieces')} of {size}{of} kept"
            else:
                yield f"{counted(count, 'scrap', 'scraps')} of {size}{of}"


def _pieces_gone(moved: Moved, supply: Supply) -> Line:
    """Odd pieces, or the number of the paper, that went elsewhere."""
    paper = f"paper {moved.paper}" if moved.paper else ""
    scraps = ""
    if moved.pieces:
        count, size = abs(moved.pieces[0]), show_size(moved.pieces[1], supply.length_unit)
        scraps = f"{counted(count, 'scrap', 'scraps')} of {size}"
    said = ", ".join(filter(None, (scraps, paper)))
    return (" ", Aside(said)) if said else ()


def _count_said(moved: Moved, supply: Supply) -> str:
    """``6 found, 7 expected; 1 missing since 2 May 2026``."""
    found = moved.found
    if found is None:
        return ""
    size = show_size(moved.pieces[1], supply.length_unit) if moved.pieces else ""
    of = f"paper {moved.paper}, " if moved.paper else f"pieces of {size}, " if size else ""
    change = found.differs
    if found.about or found.quantity == found.expected:
        about = "about " if found.about else ""
        there = show_number(found.quantity, 2) if size else number_of(found.quantity, supply)
        return f"{of}{about}{there}, as expected"
    since = f" since {short_date(found.since)}" if found.since and found.since < moved.moment.date else ""
    if supply.by_level:
        differs = part_of_one(abs(change), supply)
        return f"{level(found.quantity, supply)}; {differs} {'used' if change < 0 else 'more'}{since}"
    told = [f"{of}{show_number(found.quantity, 2)} found, {show_number(found.expected, 2)} expected"]
    if found.unnamed:
        way = "were taken" if found.unnamed < 0 else "came in"
        told.append(f"{show_number(abs(found.unnamed), 2)} {way} without a number")
    if change:
        told.append(f"{show_number(abs(change), 2)} {'missing' if change < 0 else 'more'}{since}")
    return "; ".join(told)
