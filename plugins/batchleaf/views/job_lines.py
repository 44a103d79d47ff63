"""The answer to a cutting job in lines for a terminal."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from batchleaf.core.cutting.answer import Answer, AnsweredPlan
from batchleaf.core.cutting.from_one_sheet import from_one_sheet
from batchleaf.facts.jobs import AskedJob, CostQuestion, FillQuestion, MakesQuestion, PartKind, Stock
from batchleaf.measure.display import show_number, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.views.settings_rows import CutsInWords
from batchleaf.views.words import capitalised, counted, listed


def job_lines(asked: AskedJob, answer: Answer) -> Iterator[str]:
    """What was found, why there is nothing better, and each sheet cut by cut."""
    stocks, parts = _asked_of(asked)
    yield f"{_found(asked, answer)}."
    yield f"{_reason(answer)}."
    yield from _tip(asked)
    for number, one in enumerate(answer.plans, 1):
        yield ""
        yield from _plan(number, one, stocks[one.plan.stock], parts, asked.unit)
    if answer.spares:
        yield ""
        yield f"Spares: {listed([f'{many} × {part}' for part, many in answer.spares])}."


def _asked_of(asked: AskedJob) -> tuple[dict[str, Stock], tuple[PartKind, ...]]:
    match asked.question:
        case FillQuestion(stock, offers):
            return {stock.id: stock}, tuple(offer.part for offer in offers)
        case MakesQuestion(job) | CostQuestion(job):
            return {stock.id: stock for stock in job.stocks}, job.parts


def _found(asked: AskedJob, answer: Answer) -> str:
    unit = asked.unit
    match asked.question:
        case FillQuestion(stock):
            return f"{_size(stock, unit)} gives parts worth {_number(answer.value)}"
        case MakesQuestion(job):
            what = _what(job.parts, answer.makes or 0, unit)
            verb = "gives" if _count(answer) == 1 else "give"
            return f"{_sheets(answer, job.stocks, unit)} {verb} {what}"
        case CostQuestion(job, makes):
            what = _what(job.parts, makes, unit)
            spent = "" if answer.cost == _count(answer) else f", cost {_number(answer.cost)}"
            return f"{capitalised(what)}: {_sheets(answer, job.stocks, unit)}{spent}"


def _what(parts: tuple[PartKind, ...], makes: int, unit: Unit) -> str:
    """``24 of 3 3/4 × 5 and 48 of 2 × 2 in``; of many kinds only how many sets."""
    if len(parts) > 4:
        return counted(makes, "make", "makes")
    pieces = [f"{makes * part.each} of {show_size(part.size, unit)}" for part in parts]
    return f"{listed(pieces)} {unit.value}"


def _count(answer: Answer) -> int:
    return sum(one.plan.times for one in answer.plans)


def _sheets(answer: Answer, stocks: tuple[Stock, ...], unit: Unit) -> str:
    """``6 sheets of 8 1/2 × 11 in and 1 scrap of 4 × 8 1/2 in``."""
    used = Counter[str]()
    for one in answer.plans:
        used[one.plan.stock] += one.plan.times
    return listed(
        [f"{_pieces(stock, used[stock.id])} of {_size(stock, unit)}" for stock in stocks if used[stock.id]]
    )


def _pieces(stock: Stock, count: int) -> str:
    return counted(count, "scrap", "scraps") if stock.scrap else counted(count, "sheet", "sheets")


def _size(stock: Stock, unit: Unit) -> str:
    return f"{show_size(stock.size, unit)} {unit.value}"


def _number(number: Fraction | None) -> str:
    return show_number(number or Fraction(0), 6)


def _reason(answer: Answer) -> str:
    why = capitalised(answer.reason)
    return f"Proved: {answer.reason}" if answer.proved else f"{why}; the bound is {_number(answer.bound)}"


def _tip(asked: AskedJob) -> Iterator[str]:
    """One size from one sheet: what other ways of cutting would give."""
    match asked.question:
        case MakesQuestion(job) if len(job.parts) == len(job.stocks) == 1 and job.stocks[0].have == 1:
            part, stock = job.parts[0], job.stocks[0]
            count = from_one_sheet(stock.size, part.size, turns=part.turns, kerf=job.kerf)
            if count.grid < count.through:
                yield f"Rows and columns that all lie one way would give {count.grid}."
            if count.stopped > count.through:
                yield f"Cuts that stop part way, with knife and rule, would give {count.stopped}."


def _plan(
    number: int, one: AnsweredPlan, stock: Stock, parts: tuple[PartKind, ...], unit: Unit
) -> Iterator[str]:
    times = _pieces(stock, one.plan.times)
    name = f" of {stock.name}" if stock.name else ""
    yield f"Plan {number}. Cut {times}{name} like this, {_size(stock, unit)}:"
    in_words = CutsInWords(one.laid, {part.id: part.name for part in parts}, unit, (), one.plan.times)
    rows = list(in_words.settings())
    widest = max((len(row.setting) for row in rows), default=0)
    for row in rows:
        said = " ".join(words for words in (row.what, row.waste) if words)
        yield f"  {row.setting:>{widest}}  {said}"
    if not rows:
        yield f"  It is part {one.laid.parts[0].part} as it lies."
