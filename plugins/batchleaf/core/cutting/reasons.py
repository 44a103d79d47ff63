"""Why there are no more makes, in words for the person at the table.

Each reason is a clause without capital or full stop: "each sheet gives at most
2 of base A". Only what has been shown is said.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from batchleaf.core.cutting.integers import Sheet, WholeJob
from batchleaf.core.cutting.one_size import most_of_one_size
from batchleaf.facts.jobs import Job, PartKind, Stock


def nothing_wanted() -> str:
    """A job without parts."""
    return "there is no part to cut"


def fits_nothing(job: Job, parts: Iterable[int]) -> str:
    """Some parts have no sheet they could come from."""
    names = [called(job.parts[part]) for part in parts]
    if all(stock.have == 0 for stock in job.stocks):
        return "there is no sheet to cut"
    if len(names) == 1:
        return f"{names[0]} fits on none of these sheets"
    return f"{', '.join(names[:-1])} and {names[-1]} fit on none of these sheets"


def why_no_more(job: Job, whole: WholeJob, makes: int, bound: int) -> str:
    """The plainest reason that holds for ``makes``."""
    if makes < bound:
        return (
            f"a way to cut {makes + 1} was not found, and no way gives more than {bound}"
            if makes
            else f"a way to cut one was not found, and no way gives more than {bound}"
        )
    return (
        _too_little_paper(job, makes)
        or _one_part_runs_out(job, whole, makes)
        or f"no way of cutting these sheets gives {makes + 1}"
    )


def too_few_sheets(makes: int, *, never: bool) -> str:
    """Sheets with a limit do not reach for ``makes``."""
    if never:
        return f"no way of cutting these sheets gives {makes}"
    return f"a way to cut {makes} from these sheets was not found"


def why_not_cheaper(job: Job, makes: int, cost: Fraction, *, proved: bool) -> str:
    """The plainest reason that holds for ``cost``; sheets that cost alike are counted."""
    if not proved:
        return "whether another choice costs less is not known"
    if not cost:
        return "only pieces that cost nothing are cut"
    prices = {stock.cost for stock in job.stocks if stock.cost}
    if len(prices) > 1:
        return "no choice of sheets costs less"
    fewer = int(cost / prices.pop()) - 1
    free = [stock for stock in job.stocks if not stock.cost]
    they = _fewer_sheets(fewer, with_scraps=bool(free))
    if they and _less_paper(job, makes, fewer, free):
        return f"{they} {'has' if they == 'one sheet' else 'have'} less paper than the parts need"
    return f"no way of cutting {they} gives them all" if they else "without a sheet there is nothing to cut"


def _fewer_sheets(sheets: int, *, with_scraps: bool) -> str:
    """``two sheets``, ``two sheets and all the scraps``; nothing where that is none."""
    count = f"{sheets} sheets" if sheets > 1 else "one sheet" if sheets else ""
    return " and ".join(filter(None, (count, "all the scraps" if with_scraps else "")))


def _less_paper(job: Job, makes: int, sheets: int, free: Sequence[Stock]) -> bool:
    """Area alone shows it, whatever sheets are taken."""
    if any(stock.have is None for stock in free):
        return False
    scraps = sum((stock.size.area * (stock.have or 0) for stock in free), Fraction(0))
    largest = max(stock.size.area for stock in job.stocks if stock.cost)
    needed = sum((part.size.area * part.each for part in job.parts), Fraction(0)) * makes
    return scraps + sheets * largest < needed


def called(part: PartKind) -> str:
    """``base A``, or ``part A`` where the part has no name."""
    return f"{part.name or 'part'} {part.id}"


def _too_little_paper(job: Job, makes: int) -> str | None:
    """Area alone shows it, where any part may come from any sheet or not."""
    there = sum((stock.size.area * (stock.have or 0) for stock in job.stocks), Fraction(0))
    make = sum((part.size.area * part.each for part in job.parts), Fraction(0))
    if make * (makes + 1) <= there:
        return None
    return f"{makes + 1} would need more paper than these sheets have"


def _one_part_runs_out(job: Job, whole: WholeJob, makes: int) -> str | None:
    """One part taken alone already gives no more."""
    by_size = sorted(range(len(job.parts)), key=lambda at: job.parts[at].size.area, reverse=True)
    for at in by_size:
        need = job.parts[at].each * (makes + 1)
        if _plain_count(job, whole, at) >= need:
            continue
        most = {
            stock.id: most_of_part(whole.sheets[number], at)
            for number, stock in enumerate(job.stocks)
            if stock.have
        }
        total = sum((stock.have or 0) * most.get(stock.id, 0) for stock in job.stocks)
        if total < need:
            return _sentence(job, at, most, total, need)
    return None


def _plain_count(job: Job, whole: WholeJob, part: int) -> int:
    """What rows and columns give: where that is enough, nothing runs out."""
    total = 0
    for sheet, stock in zip(whole.sheets, job.stocks, strict=True):
        ways = [
            (sheet.width // shape.width) * (sheet.height // shape.height)
            for shape in sheet.shapes
            if shape.part == part
        ]
        total += (stock.have or 0) * max(ways, default=0)
    return total


def most_of_part(sheet: Sheet, part: int) -> int:
    """No way of through cuts gives more of one part alone from a sheet."""
    alone = tuple(shape for shape in sheet.shapes if shape.part == part)
    return most_of_one_size(Sheet(sheet.width, sheet.height, alone)).at_most


def _sentence(job: Job, at: int, most: dict[str, int], total: int, need: int) -> str:
    part = job.parts[at]
    giving = [stock for stock in job.stocks if most.get(stock.id)]
    if len(giving) == 1:
        stock = giving[0]
        each = (
            f"each {_sheet_word(stock)} gives" if (stock.have or 0) > 1 else f"the {_sheet_word(stock)} gives"
        )
        return f"{each} at most {most[stock.id]} of {called(part)}"
    return f"these sheets give at most {total} of {called(part)}, and one more make would need {need}"


def _sheet_word(stock: Stock) -> str:
    word = "scrap" if stock.scrap else "sheet"
    return f"{word} of {stock.name}" if stock.name else word
