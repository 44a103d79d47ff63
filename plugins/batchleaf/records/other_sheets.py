"""The sizes of sheets that readers elsewhere have: ``A4, letter, 12 x 12 in, 30.5 x 30.5 cm``."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.facts import OtherSheet
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.records.standard_sizes import NAMED

MOST: Final = 8
"""More sizes than that nobody reads through."""
_CALLED: Final = {"letter": "Letter"}


def read_other_sheets(text: str, unit: Unit) -> tuple[OtherSheet, ...]:
    """Each by name or by its measures; nothing for ``none``. Raises :class:`MeasureError`."""
    if text.strip().lower() in ("", "none"):
        return ()
    found = tuple(dict.fromkeys(_read(text, unit)))
    if len(found) > MOST:
        raise MeasureError(f"“{text}” names {len(found)} sizes of sheets; {MOST} are the most")
    return found


def _read(text: str, unit: Unit) -> Iterator[OtherSheet]:
    for piece in text.split(","):
        name = " ".join(piece.split())
        size = NAMED.get(name.lower()) or parse_size(name, unit)
        yield OtherSheet(_CALLED.get(name.lower(), name.upper() if name.lower() in NAMED else name), size)
