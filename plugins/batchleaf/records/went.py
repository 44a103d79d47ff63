"""Where finished makes went: ``12 sold, 3.50 each, winter market, 2026-12-05``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from batchleaf.facts import Went, Whereabouts
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.money import Currency, parse_money
from batchleaf.measure.slips import refuse_slips
from batchleaf.records.grammar import read_date
from batchleaf.records.made_of import Line
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean

_HEAD: Final = re.compile(r"(?P<count>[0-9]{1,5})\s+(?P<where>\S+)")
_DATE: Final = re.compile(r"[0-9]{1,4}([-./])[0-9]{1,2}\1[0-9]{1,4}")
_WAYS: Final = "kept, given, sold, sample or class"


def read_all_went(lines: Sequence[Line], finished: int, currency: Currency, report: Report) -> Iterator[Went]:
    """Every line; more than were ``finished`` is told where the sum goes over."""
    gone = 0
    for line in lines:
        went = report.read(line.place, read_went, line.text, currency)
        if went is None:
            continue
        if gone <= finished < gone + went.count:
            were = "was" if finished == 1 else "were"
            report.error(
                line.place, f"with these, {gone + went.count} went somewhere, and {finished} {were} finished"
            )
        gone += went.count
        yield replace(went, place=line.place)


def read_went(text: str, currency: Currency) -> Went:
    """How many went which way, and where it is said the price, the day and a word.

    An amount alone is for all of them, with “each” behind it for one. Raises :class:`MeasureError`.
    """
    refuse_slips(text, "12 sold, 3.50 each")
    if comma := re.search(r"(?<![0-9.,])[0-9]+,[0-9]{1,2}(?![0-9-])", text):
        raise MeasureError(f"“{comma[0]}” has a comma; write {comma[0].replace(',', '.')}")
    head, *others = (" ".join(piece.split()) for piece in text.split(","))
    went = _read_head(head)
    for piece in others:
        went = _with(went, piece, currency)
    return went


def _read_head(text: str) -> Went:
    found = _HEAD.fullmatch(text)
    if found is None or not int(found["count"]):
        raise MeasureError(
            f"“{text}” does not say how many went where; write a number and {_WAYS}, like 12 sold, 3.50 each"
        )
    where = found["where"]
    if where not in list(Whereabouts):
        raise MeasureError(
            f"“{where}” is not where makes go; write {_WAYS}{did_you_mean(where, list(Whereabouts))}"
        )
    return Went(int(found["count"]), Whereabouts(where))


def _with(went: Went, piece: str, currency: Currency) -> Went:
    """``went`` with what one piece says besides."""
    if not piece:
        raise MeasureError("a comma stands here with nothing behind it; leave it out")
    if _DATE.fullmatch(piece):
        if went.date is not None:
            raise MeasureError(f"“{piece}” is a second day; give each day a line of its own")
        return replace(went, date=read_date(piece))
    if _is_price(piece, currency):
        return _with_price(went, piece, currency)
    if went.words:
        raise MeasureError(f"“{piece}” comes after “{went.words}”; write one or two words, without a comma")
    return replace(went, words=piece)


def _is_price(piece: str, currency: Currency) -> bool:
    """Figures, perhaps with the currency or “each”; other words with a figure in them are a remark."""
    bare = piece.removesuffix(" each").strip()
    for mine in (currency.code, currency.sign):
        bare = bare.removeprefix(mine).removesuffix(mine).strip()
    return bool(re.fullmatch(r"[0-9.]+", bare)) or (piece.endswith(" each") and bare[:1].isdigit())


def _with_price(went: Went, piece: str, currency: Currency) -> Went:
    if went.where is not Whereabouts.SOLD:
        raise MeasureError(f"“{piece}” is a price, and a price goes with what was sold only")
    if went.value is not None:
        raise MeasureError(f"“{piece}” is a second price; give each price a line of its own")
    amount = piece.removesuffix(" each")
    value = parse_money(amount, currency)
    return replace(went, value=value if amount == piece else value * went.count)
