"""What was made last time, given again where it would be made of the same.

While a site is served, an edit changes one thing, and most is made of what it was made of before. What is
remembered is made by a function that gets all it looks at as arguments; these are held against those of
the last time, whole. So it is never older than what it is made of.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any, Protocol, TypeVar, TypeVarTuple

from batchleaf.facts import Place

T = TypeVar("T")
Of = TypeVarTuple("Of")


class Remembering(Protocol):
    """A way to make something of something: each time anew, or perhaps as last time."""

    def __call__(self, name: str, make: Callable[[*Of], T], *of: *Of) -> T:
        """What ``make`` gives for ``of``; ``name`` tells apart what one function makes."""


def afresh(name: str, make: Callable[[*Of], T], *of: *Of) -> T:
    """Nothing is remembered."""
    return make(*of)


class Remembered:
    """For each function and name what it was asked last, and gave.

    Arguments in whose order something is told are tuples: the order of a mapping is not compared.
    """

    def __init__(self) -> None:
        self._last: dict[tuple[object, str], tuple[tuple[object, ...], Any]] = {}

    def __call__(self, name: str, make: Callable[[*Of], T], *of: *Of) -> T:
        """What ``make`` gives for ``of``."""
        known = self._last.get((make, name))
        if known is None or known[0] != of:
            known = self._last[make, name] = (of, make(*of))
        made: T = known[1]
        return made


def places_in(fact: object) -> Iterator[Place]:
    """Where in their files a fact and those it holds stand.

    Equal facts may stand elsewhere than last time. What is made of them to be told with its place, a problem,
    is made of these as well.
    """
    if isinstance(fact, Place):
        yield fact
    elif isinstance(fact, tuple):
        for one in fact:
            yield from places_in(one)
    elif is_dataclass(fact):
        for field in fields(fact):
            yield from places_in(getattr(fact, field.name))
