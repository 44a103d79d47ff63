"""One row of a sheet, key by key, as a record would say it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.measure.amounts import plural
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import parse_number
from batchleaf.measure.money import Currency, parse_money
from batchleaf.measure.slips import refuse_slips
from batchleaf.writing.csv_in.cells import is_bare, with_points, with_unit, without_mark
from batchleaf.writing.csv_in.columns import MONEY, Columns
from batchleaf.writing.csv_in.sheet import Row

_NUMBERS: Final = MONEY | {
    "size", "width", "height", "amount", "mark", "pack", "weight", "thickness", "weighs",
}  # fmt: skip
_UNKNOWN: Final = ("no", "unknown", "in part", "not known", "price unknown")
_GUESSED: Final = ("guessed", "about", "estimated")


@dataclass(frozen=True, slots=True)
class Said:
    """What a row says under each key; a key without text is not there. ``line``: where the row begins."""

    line: int
    values: Mapping[str, str]

    def get(self, key: str) -> str:
        """What stands under ``key``; nothing where nothing does."""
        return self.values.get(key, "")

    def amount(self) -> str:
        """How much, with the unit that a column of its own names."""
        amount = self.get("amount")
        one, _, several = (word.strip() for word in self.get("unit").partition(","))
        refuse_slips(amount, "4 sheets")
        if "," in amount:
            raise MeasureError(f"“{amount}” is no amount; write for example 4, or 4 sheets")
        word = one if amount == "1" or not one else several or plural(one)
        return f"{amount} {word}" if word and is_bare(amount) else amount

    def priced(self, money: str, currency: Currency) -> str:
        """What all of it cost, in the words of a record; nothing where it is not known."""
        how, price = self.get("price known").lower(), self.get(money)
        if how in _UNKNOWN or price.lower() in _UNKNOWN:
            return ""
        if how == "gift":
            return "gift"
        if not price and self.get("each"):
            price = self._times(currency)
        return f"about {price}" if how in _GUESSED and price else price

    def _times(self, currency: Currency) -> str:
        """The price of one times how many, where that is a sum that can be paid."""
        each, number = parse_money(self.get("each"), currency), _number_of(self.get("amount"))
        total = each * number
        if total.denominator != 1:
            raise MeasureError(
                f"{self.get('each')} each for {self.get('amount')} is no whole sum; write what all of it cost"
            )
        return currency.plain(int(total))


def said_in(row: Row, columns: Columns, currency: Currency, *, decimal_comma: bool) -> Said:
    """The cells of a row by key. Raises :class:`MeasureError` for one that cannot be what its key asks."""
    width = len(columns.columns)
    if any(row.cells[width:]):
        extra = next(cell for cell in row.cells[width:] if cell)
        raise MeasureError(
            f"“{extra}” stands under no heading; a value with a comma or a semicolon inside goes in"
            " quotation marks"
        )
    values: dict[str, str] = {}
    for key, column in columns.by_key.items():
        text = without_mark(row.cells[column.at])
        if text:
            number = with_points(text, decimal_comma=decimal_comma) if key in _NUMBERS else text
            values[key] = number if key in MONEY else with_unit(number, column.unit)
    return Said(row.line, values)


def _number_of(amount: str) -> Fraction:
    """The number that an amount begins with."""
    number = amount.rstrip("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ. ")
    if not number:
        raise MeasureError("a price of one is given, and no amount; write how many there are")
    return parse_number(number)
