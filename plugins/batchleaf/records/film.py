"""Where the film of a batch is, as written: ``https://example.org/films/wren``."""

from __future__ import annotations

import re

from batchleaf.facts.film import SECONDS, Film
from batchleaf.measure.errors import MeasureError


def read_film(text: str) -> Film:
    """An address on the web, perhaps with a place for the time. Raises :class:`MeasureError`."""
    if not re.fullmatch(r"https?://[^\s/?#]\S*", text):
        raise MeasureError(
            f"“{text}” is no address of a film; it begins with https:// or http://, and has no spaces"
        )
    plain = text.replace(SECONDS, "")
    if re.search(r"[{}]", plain):
        raise MeasureError(f"“{text}” has braces around something else than the time; write {SECONDS}")
    if "#" in plain and SECONDS not in text:
        raise MeasureError(
            f"“{text}” goes on after a #, where the time of a step would go; leave that out, or write"
            f" {SECONDS} where the time goes"
        )
    return Film(text)
