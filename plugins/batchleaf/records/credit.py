"""Whose design it is, as written: ``after a fold by a friend, https://example.org/fold``."""

from __future__ import annotations

import re
from typing import Final

from batchleaf.facts import Credit
from batchleaf.measure.errors import MeasureError
from batchleaf.records.terms import read_link

_ADDRESS: Final = re.compile(r"[a-z][a-z0-9+.-]*:\S|www\.", re.IGNORECASE)
_INSIDE: Final = re.compile(r"://|mailto:|www\.", re.IGNORECASE)


def read_credit(text: str) -> Credit:
    """The words, and the link where one stands last. Raises :class:`MeasureError`."""
    words, _, last = (piece.strip() for piece in text.rpartition(","))
    if not _ADDRESS.match(last):
        words, last = text, ""
    if _INSIDE.search(words):
        raise MeasureError(f"“{text}” has a link before its end; write the words, a comma, and the link last")
    if not words:
        raise MeasureError(f"“{text}” is a link alone; write whose design it is before it, and a comma")
    return Credit(words, read_link(last) if last else "")
