"""Rules of post offices for letters, by edition, and the maker's own rates."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Final

from batchleaf.facts.places import NOWHERE, Place
from batchleaf.measure.lengths import MM_PER_INCH, Unit


@dataclass(frozen=True, slots=True)
class Limits:
    """In mm and grams; ``None``: the rule says nothing of it. What is just as large is within.

    ``ratio``: length ÷ height.
    """

    length: Fraction | None = None
    height: Fraction | None = None
    thickness: Fraction | None = None
    weight: Fraction | None = None
    ratio: Fraction | None = None


NO_LIMITS: Final = Limits()


@dataclass(frozen=True, slots=True)
class Dearer:
    """What makes a piece of a kind dearer, and what it is called then.

    ``told``: its name in a sentence. ``thin``: what is longer or higher than that, and not as
    thick. ``uneven``: whether being uneven does. ``unseen``: what does besides, and no record tells.
    """

    name: str
    told: str
    least: Limits = NO_LIMITS
    most: Limits = NO_LIMITS
    thin: Limits = NO_LIMITS
    uneven: bool = False
    unseen: str = ""


@dataclass(frozen=True, slots=True)
class PostKind:
    """One kind of letter: how large it may be; ``told``: its name in a sentence."""

    name: str
    told: str
    most: Limits
    least: Limits = NO_LIMITS
    dearer: Dearer | None = None


@dataclass(frozen=True, slots=True)
class Post:
    """The rules of one post office; its kinds are in order, the smallest first.

    ``least``: what is smaller is not taken, unless it is thicker than ``smaller_above`` (mm).
    ``beyond``: what it is that is larger than all. ``unit``: in which its lengths are told.
    ``says``: the rules in a sentence each.
    """

    name: str
    title: str
    unit: Unit
    edition: str
    source: str
    says: tuple[str, ...]
    kinds: tuple[PostKind, ...]
    beyond: str
    least: Limits = NO_LIMITS
    smaller_above: Fraction | None = None

    def rate_names(self) -> tuple[str, ...]:
        """What its kinds are called in rates: ``USPS letter``, ``USPS nonmachinable letter``."""
        found: list[str] = []
        for kind in self.kinds:
            found += [self.rate_name(kind.name), *([self.rate_name(kind.dearer.name)] if kind.dearer else [])]
        return tuple(found)

    def rate_name(self, kind: str) -> str:
        """``USPS letter`` for its kind ``letter``."""
        return f"{self.name} {kind}"


@dataclass(frozen=True, slots=True)
class Rate:
    """What the post asks from a day on, up to a weight in grams, in minor units.

    ``post``: a kind of letter, as :meth:`Post.rate_names` has it; ``step``: the weight as written.
    """

    date: dt.date
    post: str
    up_to: Fraction
    step: str
    price: int
    place: Place = field(default=NOWHERE, compare=False, repr=False)


USUAL_CLEARANCE: Final = MM_PER_INCH / 8
"""How much wider and higher an envelope has to be than what goes into it, in all: common practice,
from memory. The commonest card, 4 1/4 x 5 1/2 in, has just that in its A2 envelope."""


@dataclass(frozen=True, slots=True)
class Postage:
    """What holds for all that is sent: the posts, the maker's rates, and the room in envelopes (mm)."""

    posts: tuple[Post, ...] = ()
    rates: tuple[Rate, ...] = ()
    clearance: Fraction = USUAL_CLEARANCE

    def until(self, day: dt.date | None) -> Postage:
        """With the rates of that day and before; ``None``: all."""
        if day is None:
            return self
        return replace(self, rates=tuple(rate for rate in self.rates if rate.date <= day))


NO_POSTAGE: Final = Postage()
"""No rules, no rates, the usual clearance."""
