"""The odd pieces of the drawer: offcuts, spare parts and scraps, laid out as on a table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.entries import Kind
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.core.odd_pieces import OddPieces, PieceSource, odd_pieces
from batchleaf.facts import Project, Supply
from batchleaf.measure.display import NBSP, show_share, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.drawing.pieces import draw_pile, scale_for
from batchleaf.views.drawing.shapes import Drawing, Stroke
from batchleaf.views.pages import LaidPaper, LaidPile, Line, Link, OffcutsPage
from batchleaf.views.stock import worth_in_words
from batchleaf.views.tables.table import Column, Table, how_far_known, money_known, tabled
from batchleaf.views.words import capitalised, counted, joined, listed, long_date, short_date

HERE: Final = site_map.OFFCUTS
WIDEST_PX: Final = 232.0
"""A pile is no wider, so that it fits the narrowest column."""
HIGHEST_PX: Final = 320.0
COLUMN_PX: Final = 240.0
"""How wide the piles of one paper may lie side by side, as in the style sheet."""
GAPS_PX: Final = (16.0, 12.0)
"""What is left between them across and down."""
PIXELS_PER_MM: Final = 0.75
"""At most; larger pieces make all of them smaller."""
_RULE: Final = {Unit.MM: (100, 10), Unit.CM: (10, 10), Unit.INCH: (4, 4)}
"""How long the rule is in each unit, and in how many steps it is divided."""
_CAME: Final = {Kind.OPENING: "there at the start", Kind.COUNTED: "found by a count"}
_TICK: Final = 8.0
"""A tick of the rule, in px."""


def offcuts_page(figures: Figures, ledger: Ledger) -> OffcutsPage:
    """Every odd piece that is on hand."""
    pieces = _in_order(figures, ledger)
    scale = scale_for([(one.size, one.count) for one in pieces], WIDEST_PX, HIGHEST_PX, PIXELS_PER_MM)
    unit = figures.settings.unit
    length, steps = _RULE[unit]
    return OffcutsPage(
        title="Kept pieces",
        drawer=Link("Drawer", site_map.href(HERE, site_map.DRAWER)),
        sentence=_sentence(pieces, figures),
        rule=_rule(length * unit.in_mm, steps, f"{length} {unit.value}", scale),
        rule_caption=f"{length}{NBSP}{unit.value}. All pieces are drawn to the scale of this rule.",
        papers=tuple(sorted(_papers(pieces, figures, scale), key=lambda one: -_height(one.piles))),
        csv=offcuts_table(figures, ledger).link(HERE),
    )


def _height(piles: Sequence[LaidPile]) -> float:
    """How high the piles of one paper reach, in px. The highest papers come first, so that none that
    comes later makes those beside it move.
    """
    across, down = GAPS_PX
    rows: list[tuple[float, float]] = []
    for drawing in (pile.drawing for pile in piles):
        wide, high = drawing.width * drawing.scale, drawing.height * drawing.scale
        if rows and rows[-1][0] + across + wide <= COLUMN_PX:
            rows[-1] = (rows[-1][0] + across + wide, max(rows[-1][1], high))
        else:
            rows.append((wide, high))
    return sum(high for _, high in rows) + down * (len(rows) - 1)


def offcuts_table(figures: Figures, ledger: Ledger) -> Table:
    """A row for each pile of equal pieces."""
    supplies = _supplies(figures)
    currency = figures.settings.currency
    columns: list[Column[OddPieces]] = [
        ("supply", lambda one: one.supply),
        ("name", lambda one: supplies[one.supply].name),
        ("width in mm", lambda one: one.size.width),
        ("height in mm", lambda one: one.size.height),
        ("pieces", lambda one: one.count),
        (f"worth in {currency.code}", lambda one: money_known(one.cost, currency)),
        ("price known", lambda one: how_far_known(one.cost)),
        ("from", lambda one: ", ".join(source.project or _CAME[source.kind] for source in one.sources)),
        ("newest", lambda one: one.sources[0].date),
    ]
    return tabled(f"{HERE}offcuts.csv", "Pieces", columns, _in_order(figures, ledger))


def _supplies(figures: Figures) -> dict[str, Supply]:
    return {supply.slug: supply for supply in figures.archive.supplies}


def _in_order(figures: Figures, ledger: Ledger) -> list[OddPieces]:
    """By shelf and paper as in the drawer, of one paper the largest first."""
    places = {supply.slug: (supply.kind, place) for place, supply in enumerate(figures.archive.supplies)}
    return sorted(odd_pieces(ledger), key=lambda one: (places[one.supply], -one.size.area, one.size.width))


def _sentence(pieces: Sequence[OddPieces], figures: Figures) -> Line:
    papers = counted(len({one.supply for one in pieces}), "paper", "papers")
    many = f"{counted(sum(one.count for one in pieces), 'piece', 'pieces')} of {papers}"
    worth = sum((one.cost for one in pieces), NOTHING)
    if not worth.known and not worth.complete:
        return (f"{many}; what they cost is not known.",)
    how = site_map.href(HERE, site_map.HOW, "on-hand")
    as_of = f", as of {long_date(figures.as_of)}" if figures.as_of else ""
    return (f"{many}, worth ", Link(worth_in_words(worth, figures.settings.currency), how), f"{as_of}.")


def _rule(length: Fraction, steps: int, words: str, scale: float) -> Drawing:
    """A rule with a tick at each step, longer ones at its ends."""
    long, tick = float(length), _TICK / scale
    marks = [(long * i / steps, tick if i in (0, steps) else tick / 2) for i in range(steps + 1)]
    air = 1 / scale
    return Drawing(
        id="rule",
        title=f"A rule of {words}",
        description="All pieces below are drawn to the same scale.",
        x=-air,
        y=-air,
        width=long + 2 * air,
        height=tick + 2 * air,
        scale=scale,
        width_class="unlettered",
        shapes=(Stroke("measure", ((0.0, 0.0, long, 0.0), *((x, 0.0, x, y) for x, y in marks))),),
    )


def _papers(pieces: Sequence[OddPieces], figures: Figures, scale: float) -> Iterator[LaidPaper]:
    supplies = _supplies(figures)
    for slug in dict.fromkeys(one.supply for one in pieces):
        supply = supplies[slug]
        mine = [one for one in pieces if one.supply == slug]
        yield LaidPaper(
            paper=Link(supply.name, site_map.href(HERE, site_map.item(slug))),
            piles=tuple(_pile(one, place, supply, figures, scale) for place, one in enumerate(mine, 1)),
        )


def _pile(one: OddPieces, place: int, supply: Supply, figures: Figures, scale: float) -> LaidPile:
    size = f"{show_size(one.size, supply.length_unit)}{NBSP}{supply.length_unit.value}"
    whole = f", {show_share(one.size.area, supply.size.area)} of a whole {supply.unit}" if supply.size else ""
    each = " each" if one.count > 1 else ""
    return LaidPile(
        drawing=draw_pile(
            one.size,
            one.count,
            id=f"{supply.slug}-{place}",
            title=f"{capitalised(supply.name)}, {counted(one.count, 'piece', 'pieces')} of {size}",
            description=f"In true proportion{whole}{each}.",
            fill=supply.colour,
            scale=scale,
        ),
        size=f"{size}, {counted(one.count, 'piece', 'pieces')}",
        sources=_sources(one, figures),
        worth=_worth(one.cost, one.count, figures.settings.currency),
    )


def _worth(cost: Cost, count: int, currency: Currency) -> str:
    if not cost.known and not cost.complete:
        return "price not known"
    return f"worth {worth_in_words(cost, currency)}{' together' if count > 1 else ''}"


def _sources(one: OddPieces, figures: Figures) -> Line:
    """``from Swift slim cards, 15 Aug 2026``; several with the newest first."""
    return joined([_source(source, one, figures) for source in one.sources], "; ", "; ")


def _source(source: PieceSource, one: OddPieces, figures: Figures) -> Line:
    date = short_date(source.date)
    if not source.project:
        return (f"{_CAME[source.kind]}, {date}",)
    project = figures.batches[source.project].project
    spares = _spares(one, project)
    kept = f"spare {listed(spares)} of " if spares else "kept from "
    return (kept, Link(project.title, site_map.href(HERE, site_map.batch(project.slug))), f", {date}")


def _spares(one: OddPieces, project: Project) -> list[str]:
    """The letters of the parts that these pieces are, where the batch kept them as spare parts."""
    kept = [piece for cut in project.cut if cut.supply == one.supply for piece in cut.kept]
    return sorted({piece.letter for piece in kept if piece.letter and piece.size == one.size})
