"""What may be sold, and where something is found."""

from __future__ import annotations

import re
from typing import Final

from batchleaf.facts import Sale, Terms
from batchleaf.measure.errors import MeasureError
from batchleaf.records.grammar import read_date

_YEAR_FIRST: Final = re.compile(r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}")
_DATE_LIKE: Final = re.compile(r"[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{1,4}")


def read_terms(text: str) -> Terms:
    """``handmade only, printed on the packet, 2026-01-12``: whether, who says so, when that was read.

    Raises :class:`MeasureError`.
    """
    first, *rest = (piece.strip() for piece in text.split(","))
    if first.lower() not in list(Sale):
        raise MeasureError(
            f"“{first}” does not say whether what is made may be sold;"
            " write yes, handmade only, no or not known"
        )
    date = read_date(rest.pop()) if rest and _DATE_LIKE.fullmatch(rest[-1]) else None
    early = next((piece for piece in rest if _YEAR_FIRST.fullmatch(piece)), "")
    if early:
        raise MeasureError(f"“{early}” stands in the middle; write who says so first, and the day last")
    return Terms(Sale(first.lower()), ", ".join(filter(None, rest)), date, noted=True)


def read_link(text: str) -> str:
    """An address that a page may lead to. Raises :class:`MeasureError`."""
    if not re.fullmatch(r"(https?://|mailto:)\S+", text):
        raise MeasureError(f"“{text}” is not a link; it begins with https://, http:// or mailto:")
    return text
