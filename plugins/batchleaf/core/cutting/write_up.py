"""From chosen patterns to the sheet plans of an answer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from batchleaf.core.cutting.choose import Chosen
from batchleaf.core.cutting.integers import WholeJob
from batchleaf.core.cutting.job import Job
from batchleaf.core.cutting.offcuts import SheetCutter
from batchleaf.core.cutting.plan import SheetPlan, leaves_of
from batchleaf.core.cutting.strips import Arrangement, parts_of, spelling, without

_Cut = tuple[int, Arrangement]


def sheet_plans(job: Job, whole: WholeJob, chosen: Chosen, makes: int) -> tuple[SheetPlan, ...]:
    """The plans, those for most sheets first, scraps before full sheets of as many."""
    cutter = SheetCutter(whole, tuple(part.id for part in job.parts))
    sheets = without_idle_spares(job, chosen, makes)
    order = sorted(
        sheets.items(),
        key=lambda item: (-item[1], not job.stocks[item[0][0]].scrap, item[0][0], spelling(item[0][1])),
    )
    return tuple(
        SheetPlan(job.stocks[stock].id, times, cutter.cut(piece, whole.sheets[stock]).tree)
        for (stock, piece), times in order
    )


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
    piece: Arrangement | None = cut[1]
    for _ in range(many):
        piece = without(piece, part) if piece else None
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
