"""The site's own words: how counts, dates, money and lists are said."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from fractions import Fraction
from typing import Final, TypeVar

from babel.dates import format_date

from batchleaf.core.cost import Cost
from batchleaf.facts import Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import MINUS, show_number
from batchleaf.measure.money import Currency

NBSP: Final = "\u00a0"
_ORDINALS: Final = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth",
    "eleventh", "twelfth",
)  # fmt: skip
T = TypeVar("T")


def listed(words: Sequence[str], last: str = "and") -> str:
    """``chalk card, moss card and ember card``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def joined(pieces: Sequence[tuple[T, ...]], between: T, last: T) -> tuple[T, ...]:
    """Lines one after another with ``between`` and, before the last, ``last``."""
    out: list[T] = []
    for i, piece in enumerate(pieces):
        if i:
            out.append(last if i == len(pieces) - 1 else between)
        out += piece
    return tuple(out)


def counted(count: int, one: str, several: str) -> str:
    """``1 sheet``, ``4 sheets``."""
    return f"{count:,} {one if count == 1 else several}"


def sheets_and_scraps_in_words(sheets: int, scraps: int) -> str:
    """``12 sheets and 3 scraps``; what there is none of is left out."""
    said = [counted(sheets, "sheet", "sheets")] if sheets or not scraps else []
    return listed([*said, *([counted(scraps, "scrap", "scraps")] if scraps else [])])


def amount(quantity: Fraction, supply: Supply) -> str:
    """``4 sheets``, ``3.08 m``."""
    return f"{show_number(quantity, 2)}{NBSP}{supply.name_of_unit(quantity)}"


def number_of(quantity: Fraction, supply: Supply) -> str:
    """The figure for a column: pieces need no noun, the rest names its unit."""
    return (
        amount(quantity, supply)
        if is_measured(supply.unit) or supply.unit != "piece"
        else show_number(quantity, 2)
    )


def signed(quantity: Fraction, shown: str) -> str:
    """``+ 24``, ``− 4``: the sign apart from what is shown of it, as in a ledger."""
    return f"+{NBSP}{shown}" if quantity > 0 else f"{MINUS}{NBSP}{shown}" if quantity < 0 else shown


def money(cost: Cost, currency: Currency) -> str:
    """For columns: ``9.60``, ``at least 3.10``, and ``not known`` where nothing is."""
    if cost.complete:
        return currency.show(cost.known)
    return f"at least {currency.show(cost.known)}" if cost.known else "not known"


def money_said(cost: Cost, currency: Currency) -> str:
    """For sentences: ``9.60 €``, ``at least 3.10 €``, ``an amount that is not known``."""
    if not cost.complete and not cost.known:
        return "an amount that is not known"
    shown = currency.show_with_sign(cost.known)
    return shown if cost.complete else f"at least {shown}"


def money_moved(cost: Cost, currency: Currency) -> str:
    """For the ledger's column: out with a minus."""
    if not cost.complete and not cost.known:
        return "not known"
    shown = currency.show(abs(cost.known))
    return f"{MINUS}{NBSP}{shown}" if cost.known < 0 else shown


def ordinal(place: int) -> str:
    """``third``; from the thirteenth on ``13th``."""
    if place <= len(_ORDINALS):
        return _ORDINALS[place - 1]
    ending = "th" if 10 <= place % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{ending}"


def long_date(date: dt.date) -> str:
    """``14 March 2026``."""
    return format_date(date, "d MMMM y", locale="en_GB")


def short_date(date: dt.date) -> str:
    """``14 Mar 2026``; a narrow column may break it before the year."""
    return format_date(date, f"d{NBSP}MMM y", locale="en")


def day_and_month(date: dt.date) -> str:
    """``14 March``."""
    return format_date(date, f"d{NBSP}MMMM", locale="en_GB")


def day_of_year(date: dt.date) -> str:
    """``14 Mar``, for a column."""
    return format_date(date, f"d{NBSP}MMM", locale="en")


def month_name(month: int) -> str:
    """``March``, from its number."""
    return format_date(dt.date(2000, month, 1), "MMMM", locale="en_GB")


def capitalised(text: str) -> str:
    """The first letter large, the rest as it is."""
    return text[:1].upper() + text[1:]


def uncapitalised(text: str) -> str:
    """The first letter small, the rest as it is."""
    return text[:1].lower() + text[1:]


_SMALL: Final = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip

_TEENS: Final = ("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")
_TENS: Final = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def number_word(count: int) -> str:
    """``five`` in a heading; from thirteen on figures."""
    return _SMALL[count] if count < len(_SMALL) else f"{count:,}"


def spelt(count: int) -> str:
    """``twenty-four``, as a cut list says it behind its measures; from a hundred on ``120 pieces``."""
    if count >= 100:
        return f"{count:,} pieces"
    tens, ones = divmod(count, 10)
    if count < 20:
        return (*_SMALL, *_TEENS)[count]
    return f"{_TENS[tens - 2]}-{_SMALL[ones]}" if ones else _TENS[tens - 2]


def in_batches(count: int) -> str:
    """``in one batch``, ``in three batches``."""
    return f"in {batches_counted(count)}"


def batches_counted(count: int) -> str:
    """``one batch``, ``three batches``."""
    return f"{number_word(count)} {'batch' if count == 1 else 'batches'}"


def month_and_year(date: dt.date) -> str:
    """``March 2026``."""
    return format_date(date, "MMMM y", locale="en_GB")
