"""Which column of a sheet fills which key of a record: by the words of its heading.

Large letters, spaces, hyphens and underscores do not count. What stands in brackets or
behind "in" at the end of a heading is the unit of its bare numbers: ``width in mm``,
``price (EUR)``.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from batchleaf.measure.money import Currency
from batchleaf.records.shape_problems import did_you_mean, one_of


class Subject(StrEnum):
    """What the rows of a sheet are."""

    SUPPLIES = "supplies"
    PURCHASES = "purchases"


_SUPPLY_WORDS: Final[Mapping[str, tuple[str, ...]]] = {
    "supply": ("short name", "slug", "id", "code", "key"),
    "name": ("item", "article", "title", "description", "product", "paper", "what"),
    "kind": ("shelf", "type", "category", "group", "sort"),
    "size": ("sheet size", "dimensions", "measures", "format"),
    "width": ("w", "wide"),
    "height": ("h", "high", "length"),
    "unit": ("units", "counted in", "measured in"),
    "amount": ("on hand", "quantity", "qty", "count", "number", "stock", "in stock", "how many", "have"),
    "worth": ("value", "total value", "total cost", "total price"),
    "each": ("unit price", "price each", "price per unit", "unit cost", "cost each", "price of one"),
    "date": ("opening", "as of", "day", "counted", "counted on"),
    "mark": ("reorder at", "minimum", "least", "buy again below", "low"),
    "pack": ("pack size", "per pack", "pieces per pack"),
    "designs": ("papers", "papers in the pad"),
    "grain": ("grain direction", "fibres"),
    "front": ("pattern", "front side", "look"),
    "back": ("back side", "reverse"),
    "core": ("core colour", "core color"),
    "colour": ("color", "colours", "colors", "hex"),
    "collection": ("range",),
    "weight": ("grammage", "gsm", "paper weight"),
    "thickness": ("caliper", "thick"),
    "weighs": ("weight of one", "weight each"),
    "link": ("url", "web", "website", "address", "page"),
    "sale": ("terms", "for sale", "licence", "license"),
    "about": ("note", "notes", "remark", "remarks", "comment", "comments"),
    "price known": ("how known", "basis"),
}
_PURCHASE_WORDS: Final[Mapping[str, tuple[str, ...]]] = {
    "date": ("day", "bought", "bought on", "date bought", "ordered", "order date", "purchase date", "came"),
    "from": ("shop", "store", "seller", "supplier", "merchant", "vendor", "source", "bought from", "where"),
    "supply": (*_SUPPLY_WORDS["supply"], "name", *_SUPPLY_WORDS["name"]),
    "amount": ("quantity", "qty", "count", "number", "how many", "how much", "bought amount"),
    "unit": ("units", "counted in", "measured in"),
    "price": ("paid", "total", "total price", "cost", "total cost", "sum", "line total"),
    "each": ("unit price", "price each", "price per unit", "unit cost", "cost each", "price of one"),
    "delivery": ("shipping", "postage", "delivery cost", "shipping cost", "carriage"),
    "price known": ("how known", "basis"),
}
WORDS: Final[Mapping[Subject, Mapping[str, tuple[str, ...]]]] = {
    Subject.SUPPLIES: _SUPPLY_WORDS,
    Subject.PURCHASES: _PURCHASE_WORDS,
}
"""Key → the headings that mean it besides its own word."""
_OF_ONE_OR_ALL: Final = ("price", "cost", "paid")
"""Headings that, of supplies, could be what one cost, or all of them."""
NEEDED: Final[Mapping[Subject, tuple[str, ...]]] = {
    Subject.SUPPLIES: ("name",),
    Subject.PURCHASES: ("date", "supply", "amount"),
}
"""Keys without which no row can be taken."""
MONEY: Final = frozenset({"worth", "price", "each", "delivery"})
"""Keys of money, which is all in one currency."""
_UNIT: Final = re.compile(
    r"(?P<words>.*?)\s*(?:\(\s*(?P<within>[^()]+?)\s*\)|\bin\s+(?P<behind>\S+(?:\s*/\s*\S+)?))\s*"
)


class CannotMapError(ValueError):
    """Why the columns of a sheet fill no record, as a sentence."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column by its place in the rows, its heading, the key that it fills and the unit it names.

    A column without a ``key`` is not taken; ``why`` says why, where it is not for its words.
    """

    at: int
    heading: str
    key: str = ""
    unit: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Columns:
    """All columns of a sheet, in its order, and what its rows are."""

    subject: Subject
    columns: tuple[Column, ...]

    @property
    def by_key(self) -> dict[str, Column]:
        """The columns that are taken."""
        return {column.key: column for column in self.columns if column.key}


def columns_of(
    headings: Sequence[str], subject: Subject | None = None, told: Mapping[str, str] | None = None
) -> Columns:
    """The columns under ``headings``; ``told``: heading → key, where the maker says so.

    Where no ``subject`` is told it is the one of which more columns are understood.
    Raises :class:`CannotMapError`.
    """
    if subject is None:
        subject = _subject_of(headings, told or {})
    wanted = dict(_told(headings, told or {}, subject))
    columns = Columns(subject, tuple(_understood(headings, wanted, subject)))
    if missing := [key for key in NEEDED[subject] if key not in _given(columns)]:
        raise CannotMapError(
            f"no column is understood as {one_of(missing)} of {subject.value}; say which one it is, like"
            f' --map "{headings[0]}={missing[0]}"{_or_the_other(subject)}'
        )
    return columns


def _given(columns: Columns) -> set[str]:
    """A supply that has a short name alone is called by it."""
    keys = set(columns.by_key)
    return keys | {"name"} if columns.subject is Subject.SUPPLIES and "supply" in keys else keys


def _or_the_other(subject: Subject) -> str:
    other = next(one for one in Subject if one is not subject)
    return f", or --as {other.value} where its rows are that"


def bare(heading: str) -> str:
    """A heading where only its words count."""
    folded = unicodedata.normalize("NFKC", heading).casefold()
    return " ".join(re.findall(r"[^\W_]+", folded))


def _subject_of(headings: Sequence[str], told: Mapping[str, str]) -> Subject:
    counted: dict[Subject, int] = {}
    for subject in Subject:
        wanted = dict(_told(headings, {h: k for h, k in told.items() if k in WORDS[subject]}, subject))
        columns = Columns(subject, tuple(_understood(headings, wanted, subject)))
        if all(key in _given(columns) for key in NEEDED[subject]):
            counted[subject] = len(columns.by_key)
    if not counted:
        raise CannotMapError(
            "its first line does not tell whether its rows are supplies or purchases; say --as supplies or"
            ' --as purchases, and which column is which with --map, like --map "Heading=name"'
        )
    most = [subject for subject, count in counted.items() if count == max(counted.values())]
    if len(most) > 1:
        raise CannotMapError("its rows may be supplies or purchases; say --as supplies or --as purchases")
    return most[0]


def _told(headings: Sequence[str], told: Mapping[str, str], subject: Subject) -> Iterator[tuple[int, str]]:
    """The places of columns that the maker named, with their keys."""
    places = {bare(heading): at for at, heading in reversed(list(enumerate(headings)))}
    for heading, key in told.items():
        if bare(heading) not in places:
            raise CannotMapError(f"there is no column “{heading}”{did_you_mean(heading, headings)}")
        if key and key not in WORDS[subject]:
            keys = one_of(WORDS[subject])
            raise CannotMapError(f"“{key}” is no key of {subject.value} that a column fills; write {keys}")
        yield places[bare(heading)], key


def _understood(headings: Sequence[str], wanted: Mapping[int, str], subject: Subject) -> Iterator[Column]:
    taken = {key: at for at, key in wanted.items()}
    for at, heading in enumerate(headings):
        words, unit = _parted(heading, subject)
        key = wanted[at] if at in wanted else _key_of(words, subject)
        first = taken.setdefault(key, at) if key else at
        if first != at:
            yield Column(at, heading, why=f"“{headings[first]}” is taken as {key} already")
        else:
            unclear = not key and at not in wanted and bare(words) in _OF_ONE_OR_ALL
            yield Column(at, heading, key, unit, _which(heading) if unclear else "")


def _which(heading: str) -> str:
    return f'it may be of one or of all; say --map "{heading}=each" or --map "{heading}=worth"'


def _key_of(words: str, subject: Subject) -> str:
    bare_words = bare(words)
    return next((key for key, others in WORDS[subject].items() if bare_words in (key, *others)), "")


def _parted(heading: str, subject: Subject) -> tuple[str, str]:
    """The words of a heading and its unit; “in stock” is no unit, since the whole is understood."""
    found = _UNIT.fullmatch(heading)
    if found is None or _key_of(heading, subject):
        return heading, ""
    return found["words"], found["within"] or found["behind"]


def in_another_currency(columns: Columns, currency: Currency) -> Columns:
    """The columns, with those of money in another currency not taken."""
    taken = (
        replace(column, key="", why=f"all money here is in {currency.code}")
        if column.key in MONEY and column.unit and column.unit.upper() not in (currency.code, currency.sign)
        else column
        for column in columns.columns
    )
    return replace(columns, columns=tuple(taken))
