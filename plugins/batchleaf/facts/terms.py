"""What may be done with the work of others: credit, and terms of sale."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final


@dataclass(frozen=True, slots=True)
class Credit:
    """Whose design it is, and where it was found."""

    words: str
    link: str = ""


class Tie(StrEnum):
    """What ties the maker to those who sell something: readers are told of it before they follow a link.

    US 16 CFR 255.5: money, and goods that are free or cost less, are to be disclosed.
    """

    NONE = "no"
    PAID = "paid"
    """The maker is paid for the link, or for naming it."""
    GIFTED = "gifted"
    """It was free for the maker, or cost less, so that it would be shown."""


class Sale(StrEnum):
    """Whether what is made with a supply, a stamp or a design may be sold."""

    YES = "yes"
    HANDMADE = "handmade only"
    NO = "no"
    UNKNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Terms:
    """What its maker allows, who says so, and when that was read.

    ``noted``: a record says so, be it that nothing is known.
    """

    sale: Sale = Sale.UNKNOWN
    source: str = ""
    date: dt.date | None = None
    noted: bool = field(default=False, compare=False)


NO_TERMS: Final = Terms()
"""Nothing is known of terms."""
