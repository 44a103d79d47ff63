"""What holds for sending: the room in envelopes, and what the post asks, as files of the drawer say it."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Settings
from batchleaf.facts.postage import USUAL_CLEARANCE, Post, Postage, Rate
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import parse_length
from batchleaf.measure.mass import parse_mass
from batchleaf.measure.money import parse_money
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean, one_of

_EXAMPLE: Final = "USPS letter up to 1 oz, 0.78"
_KIND: Final = re.compile(r"(?P<post>\S.*?)\s+up\s+to\s+(?P<weight>\S.*)", re.IGNORECASE)


def postage_of(
    files: Iterable[InventoryFile], posts: tuple[Post, ...], settings: Settings, report: Report
) -> Postage:
    """The clearance that one file says, and the rates of all files, newest first."""
    files = tuple(files)
    rates = [rate for one in files for rate in _rates(one, posts, settings, report)]
    _tell_twice(rates, report)
    rates.sort(key=lambda rate: (-rate.date.toordinal(), rate.post, rate.up_to))
    return Postage(posts, tuple(rates), _clearance(files, settings, report))


def _clearance(files: Sequence[InventoryFile], settings: Settings, report: Report) -> Fraction:
    found, first = None, None
    for one in files:
        if one.written.clearance is None:
            continue
        place = one.place("clearance")
        if first is None:
            first, found = place, report.read(place, parse_length, one.written.clearance, settings.unit)
            continue
        report.error(
            place,
            f"clearance is said once for the whole drawer, and stands in {first.file}, line {first.line},"
            " already; leave this one out",
        )
    return USUAL_CLEARANCE if found is None else found


def _rates(one: InventoryFile, posts: tuple[Post, ...], settings: Settings, report: Report) -> Iterator[Rate]:
    for i, written in enumerate(one.written.rates):
        entry = Entry(one, ("rates", i), report)
        date = entry.read("date", read_date, written.date)
        for j, text in enumerate(written.lines):
            place = entry.place("lines", j)
            rate = report.read(place, read_rate, text, posts, settings)
            if rate is not None and date is not None:
                yield replace(rate, date=date, place=place)


def read_rate(text: str, posts: tuple[Post, ...], settings: Settings) -> Rate:
    """``USPS letter up to 1 oz, 0.78``, still without its day. Raises :class:`MeasureError`."""
    named, comma, price = (piece.strip() for piece in text.rpartition(","))
    if not comma or not price:
        raise MeasureError(f"“{text}” has no price; write it after a comma, like {_EXAMPLE}")
    found = _KIND.fullmatch(named)
    if found is None:
        raise MeasureError(f"“{named}” does not say up to which weight; write for example {_EXAMPLE}")
    return Rate(
        date=dt.date.min,
        post=_post(found["post"], posts),
        up_to=parse_mass(found["weight"]),
        step=found["weight"],
        price=parse_money(price, settings.currency),
    )


def _post(text: str, posts: tuple[Post, ...]) -> str:
    names = [name for post in posts for name in post.rate_names()]
    words = " ".join(text.split())
    for name in names:
        if name.casefold() == words.casefold():
            return name
    hint = did_you_mean(words, names)
    raise MeasureError(
        f"“{words}” is no kind of letter whose rules are known{hint or f'; write {one_of(names)}'}"
    )


def _tell_twice(rates: Sequence[Rate], report: Report) -> None:
    """One day has one price for one weight."""
    seen: dict[tuple[object, ...], Rate] = {}
    for rate in rates:
        first = seen.setdefault((rate.date, rate.post, rate.up_to), rate)
        if first is not rate:
            report.error(
                rate.place,
                f"the rate of that day for this weight stands in {first.place.file}, line {first.place.line},"
                " already; leave one of them out",
            )
