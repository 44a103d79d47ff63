"""How the parts of each make are put together before assembly, by the papers they come from."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from batchleaf.facts.places import NOWHERE, Place


class Rule(StrEnum):
    """Which papers may meet in one make, in the words of the record."""

    MIXED = "mixed"
    """No paper comes more often than it must: none twice where there are papers enough."""
    NONE_TWICE = "no paper twice"
    NO_SIDE_TWICE = "no side twice"
    """A paper may come twice if it shows its front once and its back once."""
    ALIKE = "all alike"
    """All from one paper."""
    ANY = "any"


@dataclass(frozen=True, slots=True)
class Collating:
    """Parts, by their letters, to which one rule holds. A part stands in one of these at most."""

    letters: tuple[str, ...]
    rule: Rule
    place: Place = field(default=NOWHERE, compare=False, repr=False)
