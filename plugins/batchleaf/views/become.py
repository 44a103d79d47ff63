"""What it could become: pieces of the drawer with the parts that they give, and what lies there untouched."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.could_become import CouldBecome, Use
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Project, Supply
from batchleaf.measure.display import NBSP, show_share, show_size
from batchleaf.views import site_map
from batchleaf.views.drawing.shapes import Box, Drawing, Stroke
from batchleaf.views.links import supply_named
from batchleaf.views.pages import BecomePage, BecomeRow, Line, Link, UntouchedRow
from batchleaf.views.sentence import Supplies
from batchleaf.views.stock import Stock, last_use, on_shelves, stock_of
from batchleaf.views.words import amount, counted, joined, long_date, number_word

HERE: Final = site_map.BECOME
UNTOUCHED_FOR: Final = dt.timedelta(days=183)
"""Half a year."""
_NAMED: Final = 2
"""So many batches with one part are named."""
_LONGEST_PX: Final = 150.0
"""The longer side of a piece on the screen, where it is a sheet of a foot; others in proportion."""
_FOOT: Final = 304.8


def become_page(figures: Figures, ledger: Ledger) -> BecomePage:
    """Odd pieces first, since they are what is to be used up."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    projects = {project.slug: project for project in figures.archive.projects}
    found = figures.could_become
    odd, whole = ([one for one in found if one.pieces.odd is is_odd] for is_odd in (True, False))
    return BecomePage(
        title="What it could become",
        sentence=(_sentence(odd, whole),),
        odd=tuple(_row(n, one, supplies, projects) for n, one in enumerate(odd, 1)),
        whole=tuple(_row(n, one, supplies, projects) for n, one in enumerate(whole, len(odd) + 1)),
        untouched=tuple(_untouched(figures, ledger)),
        how=Link("How this is worked out", site_map.href(HERE, site_map.HOW, "become")),
    )


def _sentence(odd: Sequence[CouldBecome], whole: Sequence[CouldBecome]) -> str:
    pieces = sum(count for one in odd for _, count in one.pieces.counts)
    sheets = sum(count for one in whole for _, count in one.pieces.counts)
    kept = counted(pieces, "kept piece", "kept pieces")
    return f"{kept} and {counted(sheets, 'sheet', 'sheets')}, with the parts of batches that each would give."


def _row(number: int, one: CouldBecome, supplies: Supplies, projects: dict[str, Project]) -> BecomeRow:
    unit = supplies[one.pieces.counts[0][0]].length_unit
    size = f"{show_size(one.pieces.size, unit)}{NBSP}{unit.value}"
    return BecomeRow(
        size=size,
        papers=joined(list(_papers(one, supplies)), ", ", " and "),
        uses=tuple(_use(use, projects) for use in one.uses),
        drawing=_drawn(number, one, size, projects),
    )


def _papers(one: CouldBecome, supplies: Supplies) -> Iterator[Line]:
    for slug, count in one.pieces.counts:
        noun = ("piece", "pieces") if one.pieces.odd else ("sheet", "sheets")
        yield (f"{counted(count, *noun)} of ", supply_named(supplies[slug], HERE))


def _use(use: Use, projects: dict[str, Project]) -> Line:
    """``3 × A tag of First frost tags, 72 % of it``."""
    batches = [_part_of(slug, letter, projects) for slug, letter in use.part.of[:_NAMED]]
    others = len(use.part.of) - len(batches)
    more = f", and of {number_word(others)} more" if others else ""
    share = f"{show_share(use.share, Fraction(1))}{NBSP}of{NBSP}it"
    return (f"{use.count}{NBSP}×{NBSP}", *joined(batches, ", ", " or "), f"{more}; {share}")


def _part_of(slug: str, letter: str, projects: dict[str, Project]) -> Line:
    project = projects[slug]
    part = next(part for part in project.parts if part.letter == letter)
    named = f"{letter}{NBSP}{part.name}".rstrip()
    return (f"{named} of ", Link(project.title, site_map.href(HERE, site_map.batch(slug))))


# --- the drawing -------------------------------------------------------------------


def _drawn(number: int, one: CouldBecome, size: str, projects: dict[str, Project]) -> Drawing | None:
    """One piece, cut for the best use: its parts, and the cuts from edge to edge."""
    if one.plan is None:
        return None
    laid = lay_out(one.plan, one.job)
    width, height = float(laid.sheet.width), float(laid.sheet.height)
    slug, letter = one.uses[0].part.of[0]
    count = counted(len(laid.parts), "part", "parts")
    return Drawing(
        id=f"become-{number}",
        title=f"{size}: {count} {letter} of {projects[slug].title}",
        description=f"{count} by {counted(len(laid.cuts), 'cut', 'cuts')}.",
        x=-2.0,
        y=-2.0,
        width=width + 4.0,
        height=height + 4.0,
        scale=_LONGEST_PX / max(_FOOT, width, height),
        width_class="unlettered",
        shapes=tuple(_shapes(laid, width, height)),
    )


def _shapes(laid: LaidOut, width: float, height: float) -> Iterator[Box | Stroke]:
    for placed in laid.parts:
        rect = placed.rect
        yield Box("part", float(rect.x), float(rect.y), float(rect.width), float(rect.height))
    yield Stroke("cut", tuple(map(_cut, laid.cuts)))
    yield Box("outline", 0.0, 0.0, width, height)


def _cut(cut: CutStep) -> tuple[float, float, float, float]:
    """Where the second piece begins, from edge to edge of the piece in hand."""
    second = cut.second
    if cut.axis is Axis.X:
        return (float(second.x), float(cut.piece.y), float(second.x), float(cut.piece.bottom))
    return (float(cut.piece.x), float(second.y), float(cut.piece.right), float(second.y))


# --- what lies untouched -----------------------------------------------------------


def _untouched(figures: Figures, ledger: Ledger) -> Iterator[UntouchedRow]:
    """Papers on hand that no batch took for half a year, the longest first."""
    if figures.as_of is None:
        return
    kinds = {one.pieces.kind for one in figures.could_become}
    papers = [supply for supply in on_shelves(figures) if supply.size is not None and supply.kind in kinds]
    rows = [(last_use(supply, figures), supply) for supply in papers]
    old = [(last, supply) for last, supply in rows if last is None or figures.as_of - last > UNTOUCHED_FOR]
    for last, supply in sorted(old, key=lambda row: (row[0] or dt.date.min, row[1].name)):
        stock = stock_of(supply, figures, ledger)
        if stock.quantity > 0 or stock.kept:
            yield UntouchedRow(
                supply=supply_named(supply, HERE),
                there=_there(supply, stock),
                last=long_date(last) if last else "never",
                last_iso=last.isoformat() if last else "",
            )


def _there(supply: Supply, stock: Stock) -> str:
    whole = amount(stock.quantity, supply) if stock.quantity > 0 else ""
    pieces = counted(stock.kept, "piece", "pieces") if stock.kept else ""
    return " and ".join(text for text in (whole, pieces) if text)
