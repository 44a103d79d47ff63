"""What a batch is for: ``birthday`` · ``new home, thank you``."""

from __future__ import annotations

from typing import Final

from batchleaf.measure.errors import MeasureError

LONGEST: Final = 40
"""Letters: it is a word or two by which batches are found, not a sentence."""


def read_occasions(text: str) -> tuple[str, ...]:
    """Each one once, in their order. Raises :class:`MeasureError`."""
    said = [" ".join(one.split()) for one in text.split(",")]
    if not all(said):
        raise MeasureError(
            f"“{text}” has an empty place between commas; write for example birthday, thank you"
        )
    if long := next((one for one in said if len(one) > LONGEST), None):
        raise MeasureError(f"“{long}” is long for an occasion; write a word or two, for example birthday")
    folded = [one.casefold() for one in said]
    if again := next((one for i, one in enumerate(said) if folded[i] in folded[:i]), None):
        raise MeasureError(f"“{again}” stands there twice; once is enough")
    return tuple(said)
