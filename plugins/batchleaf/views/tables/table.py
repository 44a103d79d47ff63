"""A table for spreadsheets: plain values under plain names, in a file beside the page that shows it.

A page hands over a :class:`Table`, or lets :func:`tabled` make one; all else is done here. Values
are exact: dates as ISO 8601 has them, lengths in millimetres, money as a decimal number in the
archive's currency, which the column names.
"""

from __future__ import annotations

import csv
import datetime as dt
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, TypeVar

from batchleaf.core.cost import Cost
from batchleaf.measure.display import NBSP
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.pages import Link

T = TypeVar("T")
PLACES: Final = 6
"""Decimals of a number that has no end, such as a third of an inch in millimetres."""
MARK_OF_UTF_8: Final = "\ufeff"
"""Without it some spreadsheets take the file for another encoding."""
_FORMULA: Final = re.compile(r"\s*[=+\-@＝＋－＠]|[\t\r\n]")


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in minor units."""

    minor: int
    currency: Currency


Cell = str | int | Fraction | dt.date | Money | None
"""``None``: nothing is known, or there is nothing to say."""
Column = tuple[str, Callable[[T], Cell]]
"""Its name, and what it says of one thing."""


@dataclass(frozen=True, slots=True)
class Table:
    """``address``: of the file, from the site's root. ``title``: what its rows are, for the link to it.

    Raises :class:`ValueError` where a row has more or fewer cells than there are columns.
    """

    address: str
    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def __post_init__(self) -> None:
        if any(len(row) != len(self.columns) for row in self.rows):
            raise ValueError(f"{self.address}: each row needs {len(self.columns)} cells")

    def link(self, here: str) -> Link | None:
        """How the page at ``here`` leads to the file; a table without rows has none."""
        return Link(f"{self.title} as CSV", site_map.href(here, self.address)) if self.rows else None


def tabled(address: str, title: str, columns: Sequence[Column[T]], of: Iterable[T]) -> Table:
    """A table with a row for each of the things ``of``."""
    return Table(
        address,
        title,
        tuple(name for name, _ in columns),
        tuple(tuple(value(one) for _, value in columns) for one in of),
    )


def money_known(cost: Cost, currency: Currency) -> Money | None:
    """What is known of a cost; nothing where nothing is."""
    return Money(cost.known, currency) if cost.known or cost.complete else None


def how_far_known(cost: Cost) -> str:
    """Whether a sum of money is all there is to it."""
    return "yes" if cost.complete else "in part" if cost.known else "no"


def csv_text(table: Table) -> str:
    """The file of a table, as RFC 4180 has it."""
    lines = _Lines()
    writer = csv.writer(lines)
    writer.writerow(table.columns)
    writer.writerows([_written(cell) for cell in row] for row in table.rows)
    return MARK_OF_UTF_8 + "".join(lines)


class _Lines(list[str]):
    """Takes lines as a file would."""

    def write(self, line: str) -> None:
        self.append(line)


def _written(cell: Cell) -> str:
    match cell:
        case None:
            return ""
        case str():
            return _harmless(cell.replace(NBSP, " "))
        case Money():
            return cell.currency.plain(cell.minor)
        case dt.date():
            return cell.isoformat()
        case int() | Fraction():
            return _decimal(Fraction(cell))


def _harmless(text: str) -> str:
    """Text that a spreadsheet would work out as a formula gets a quotation mark before it."""
    return f"'{text}" if _FORMULA.match(text) else text


def _decimal(number: Fraction) -> str:
    """Exactly, where a decimal can say it."""
    places = next((n for n in range(2 * PLACES) if 10**n % number.denominator == 0), PLACES)
    scaled = round(abs(number) * 10**places)
    whole, rest = divmod(scaled, 10**places)
    sign = "-" if number < 0 and scaled else ""
    return f"{sign}{whole}.{rest:0{places}d}" if places else f"{sign}{whole}"
