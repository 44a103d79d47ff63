"""Who was sent what: kept apart from all other facts, since no page may ever know of it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field

from batchleaf.facts.places import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Sent:
    """So many makes of one batch, by its address, on one day."""

    date: dt.date
    count: int
    batch: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Recipient:
    """Somebody under a short name; ``sent`` is the oldest first."""

    slug: str
    name: str
    sent: tuple[Sent, ...]
    place: Place = field(default=NOWHERE, compare=False, repr=False)
