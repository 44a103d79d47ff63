"""Why a piece goes as what it does: ``6.378 in high, and a letter has at most 6 1/8``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.post.verdict import Breach, Measure, Verdict
from batchleaf.facts.postage import Post
from batchleaf.measure.display import NBSP, show_length, show_number
from batchleaf.measure.lengths import Unit
from batchleaf.measure.mass import GRAMS_PER_OUNCE

MOST_PLACES: Final = 6
"""So many decimals tell a piece from a limit that it only just misses."""


_WAY: Final = {Measure.LENGTH: "long", Measure.HEIGHT: "high", Measure.THICKNESS: "thick"}


def reasons(verdict: Verdict) -> Iterator[str]:
    """Why it goes as no smaller kind, and why it is dearer than others of its kind."""
    post = verdict.post
    for first, breach in _with_first(verdict.breaches):
        whose = f"and {breach.kind or 'what is sent'} has " if first else ""
        yield f"{_value(breach, post)}, {whose}{_limit(breach, post)}"
    for first, breach in _with_first(verdict.dearer):
        yield f"{_value(breach, post)}, {'and machines take ' if first else ''}{_limit(breach, post)}"
    if verdict.thin:
        yield f"for its size it may be too thin for machines: {_thin_limit(verdict)}"
    if verdict.uneven:
        yield "it is uneven"


def _with_first(breaches: Sequence[Breach]) -> Iterator[tuple[bool, Breach]]:
    """Each with whether it is the first: the others need not say again whose limit it is."""
    return ((not number, breach) for number, breach in enumerate(breaches))


def _thin_limit(verdict: Verdict) -> str:
    rule = verdict.kind.dearer if verdict.kind else None
    limit = rule.thin.thickness if rule else None
    unit = verdict.post.unit
    return f"below {show_length(limit or Fraction(0), unit)}{NBSP}{unit.value}"


def _value(breach: Breach, post: Post) -> str:
    """``6.378 in high``, ``21.147 g``, ``1.314 times as long as high``."""
    value, limit = (one / _step(breach.measure, post) for one in (breach.value, breach.limit))
    shown = _told(value, limit, _places(breach.measure, post))
    match breach.measure:
        case Measure.RATIO:
            return "as long as high" if value == 1 else f"{shown} times as long as high"
        case Measure.WEIGHT:
            return f"{shown}{NBSP}{'oz' if post.unit is Unit.INCH else 'g'}"
    return f"{shown}{NBSP}{post.unit.value} {_WAY[breach.measure]}"


def _limit(breach: Breach, post: Post) -> str:
    """``at most 6 1/8``, ``at least 1.4 times``."""
    least = "at most" if breach.over else "at least"
    if breach.measure in _WAY:
        return f"{least} {show_length(breach.limit, post.unit)}"
    times = " times" if breach.measure is Measure.RATIO else ""
    return f"{least} {show_number(breach.limit / _step(breach.measure, post))}{times}"


def _step(measure: Measure, post: Post) -> Fraction:
    """One of the unit that a measure is told in."""
    if measure in _WAY:
        return post.unit.in_mm
    return GRAMS_PER_OUNCE if measure is Measure.WEIGHT and post.unit is Unit.INCH else Fraction(1)


def _places(measure: Measure, post: Post) -> int:
    """How many decimals are enough: thousandths of an inch, tenths of a millimetre and of a gram."""
    if measure is Measure.RATIO or (measure in _WAY and post.unit is Unit.INCH):
        return 3
    return 2 if post.unit is Unit.INCH else 1


def _told(value: Fraction, limit: Fraction, enough: int) -> str:
    """With as many decimals as tell it from the limit."""
    for places in range(enough, MOST_PLACES):
        shown = Fraction(round(value * 10**places), 10**places)
        if shown != limit:
            return show_number(shown, places)
    return show_number(value, MOST_PLACES)
