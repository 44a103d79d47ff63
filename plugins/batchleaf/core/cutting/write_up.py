"""From chosen patterns to the sheet plans of an answer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.arrange import arrangements
from batchleaf.core.cutting.choose import Chosen
from batchleaf.core.cutting.integers import WholeJob
from batchleaf.core.cutting.layout import lay_out, settings_of
from batchleaf.core.cutting.offcuts import Prefer, SheetCutter
from batchleaf.core.cutting.plan import Node, SheetPlan, leaves_of
from batchleaf.core.cutting.steps import LaidOut
from batchleaf.core.cutting.strips import Arrangement, parts_of, spelling, without
from batchleaf.facts.jobs import Job

_Cut = tuple[int, Arrangement]

ENOUGH_OF_THE_OFFCUT: Final = Fraction(4, 5)
"""For fewer settings a plan may lose so much: its squared offcuts stay at least this share."""
KEEPSAKE: Final = Fraction(1, 10)
"""An offcut smaller than this share of its sheet is not worth a setting."""
MANY_PARTS: Final = 250
"""A sheet of more parts is cut in the first way that is found; to compare ways takes too long."""


def sheet_plans(job: Job, whole: WholeJob, chosen: Chosen, makes: int) -> tuple[SheetPlan, ...]:
    """The plans, those for most sheets first, scraps before full sheets of as many."""
    ids = tuple(part.id for part in job.parts)
    cutters = tuple(SheetCutter(whole, ids, prefer) for prefer in Prefer)
    sheets = _alike_together(without_idle_spares(job, chosen, makes))
    order = sorted(
        sheets.items(),
        key=lambda item: (-item[1], not job.stocks[item[0][0]].scrap, item[0][0], spelling(item[0][1])),
    )
    return tuple(
        replace(_easiest(job, whole, cutters, stock, piece), times=times) for (stock, piece), times in order
    )


def _alike_together(sheets: Counter[_Cut]) -> Counter[_Cut]:
    """Sheets that give the same parts are cut the same way."""
    ways: dict[tuple[int, frozenset[tuple[int, int]]], Arrangement] = {}
    alike: Counter[_Cut] = Counter()
    for (stock, piece), times in sheets.items():
        same = ways.setdefault((stock, frozenset(parts_of(piece).items())), piece)
        alike[stock, same] += times
    return alike


def _easiest(
    job: Job, whole: WholeJob, cutters: tuple[SheetCutter, ...], stock: int, piece: Arrangement
) -> SheetPlan:
    """The fewest settings, then the fewest cuts, among ways that keep a large offcut large."""
    sheet = whole.sheets[stock]
    if parts_of(piece).total() > MANY_PARTS:
        return SheetPlan(job.stocks[stock].id, 1, cutters[0].cut(piece, sheet).tree)
    ways = (piece, *arrangements(piece, sheet))
    outs = [cutter.cut(way, sheet) for way in ways for cutter in cutters]
    most = max(out.squares for out in outs)
    worth_keeping = most > (KEEPSAKE * sheet.width * sheet.height) ** 2
    least = ENOUGH_OF_THE_OFFCUT * most if worth_keeping else 0
    plans = [SheetPlan(job.stocks[stock].id, 1, out.tree) for out in outs if out.squares >= least]
    return min(plans, key=lambda plan: _trouble(lay_out(plan, job)))


def _trouble(laid: LaidOut) -> tuple[int, int]:
    return settings_of(laid), len(laid.cuts)


def tree_of(job: Job, whole: WholeJob, stock: int, piece: Arrangement | None) -> Node:
    """How ``piece`` is cut from one sheet of ``stock``."""
    cutter = SheetCutter(whole, tuple(part.id for part in job.parts), Prefer.LARGE_OFFCUTS)
    return cutter.cut(piece, whole.sheets[stock]).tree


def without_idle_spares(job: Job, chosen: Chosen, makes: int) -> Counter[_Cut]:
    """``chosen`` without parts that no make needs, so far as all sheets of a plan stay alike.

    Paper that is not cut is worth more in the drawer than a spare part. Plans for
    few sheets give up their spares first: that leaves the largest offcuts.
    """
    sheets: Counter[_Cut] = Counter()
    for pattern, times in chosen:
        sheets[pattern.stock, pattern.piece] += times
    over = spare_counts(job, sheets.items(), makes)
    for part in sorted(over, key=lambda at: job.parts[at].size.area, reverse=True):
        for cut in sorted(sheets, key=lambda cut: (sheets[cut], cut[0], spelling(cut[1]))):
            over[part] -= _give_up(sheets, cut, part, over[part])
    return sheets


def _give_up(sheets: Counter[_Cut], cut: _Cut, part: int, spare: int) -> int:
    """Take ``part`` out of a plan as often as there are ``spare``; how many are gone."""
    times = sheets[cut]
    many = min(spare // times, parts_of(cut[1])[part])
    if not many:
        return 0
    piece = without(cut[1], part, many)
    del sheets[cut]
    if piece is not None:
        sheets[cut[0], piece] += times
    return many * times


def spare_counts(job: Job, sheets: Iterable[tuple[_Cut, int]], makes: int) -> dict[int, int]:
    """How many of each part are cut beyond what ``makes`` need."""
    cut: Counter[int] = Counter()
    for (_, piece), times in sheets:
        for part, many in parts_of(piece).items():
            cut[part] += many * times
    return {
        at: cut[at] - part.each * makes for at, part in enumerate(job.parts) if cut[at] > part.each * makes
    }


def spares_of(job: Job, plans: Iterable[SheetPlan], makes: int) -> tuple[tuple[str, int], ...]:
    """(part, how many) for every part of which ``plans`` cut more than ``makes`` need."""
    cut: Counter[str] = Counter()
    for plan in plans:
        for part, many in leaves_of(plan.tree).items():
            cut[part] += many * plan.times
    return tuple(
        (part.id, cut[part.id] - part.each * makes) for part in job.parts if cut[part.id] > part.each * makes
    )
