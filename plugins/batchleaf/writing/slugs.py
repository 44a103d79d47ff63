"""Addresses from titles, safe on every system."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container, Iterable
from typing import Final

from batchleaf.records.addresses import DEVICES, OWN_FOLDERS
from batchleaf.records.shape_problems import did_you_mean

_LETTERS: Final = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "đ": "d", "þ": "th"})
_APOSTROPHES: Final = str.maketrans(dict.fromkeys("'’‘ʼ´`", ""))
"""Whatever a keyboard offers for one; it parts no word."""
LONGEST: Final = 60


def slug_of(title: str, taken: Container[str] = ()) -> str:
    """``Écluse & Été`` becomes ``ecluse-ete``; one that is taken gets a number, ``ecluse-ete-2``."""
    plain = unicodedata.normalize("NFKD", title.lower().translate(_LETTERS).translate(_APOSTROPHES))
    words = re.findall(r"[a-z0-9]+", "".join(c for c in plain if not unicodedata.combining(c)))
    slug = "-".join(words)[:LONGEST].strip("-") or "batch"
    if slug in DEVICES or slug in OWN_FOLDERS:
        slug = f"{slug}-batch"
    if slug not in taken:
        return slug
    return next(other for n in range(2, 10_000) if (other := f"{slug}-{n}") not in taken)


def not_there(slug: str, batches: Iterable[str]) -> str:
    """That no batch has this address, with the one that was perhaps meant."""
    return f"there is no batch “{slug}”{did_you_mean(slug, batches)}"
