"""As what a piece goes by the rules of a post: its first kind that takes it, and why no smaller one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from batchleaf.facts.postage import Dearer, Limits, Post, PostKind
from batchleaf.measure.lengths import Size


class Measure(Enum):
    """What a rule limits."""

    LENGTH = "length"
    HEIGHT = "height"
    THICKNESS = "thickness"
    WEIGHT = "weight"
    RATIO = "ratio"
    """Length ÷ height."""


@dataclass(frozen=True, slots=True)
class Piece:
    """What is handed in: its longer side is its length. ``thinnest``: how thick it is at least."""

    size: Size
    thickness: Fraction
    thinnest: Fraction
    grams: Fraction
    uneven: bool = False

    @property
    def length(self) -> Fraction:
        """The longer side, in mm."""
        return self.size.upright.height

    @property
    def height(self) -> Fraction:
        """The shorter side, in mm."""
        return self.size.upright.width

    def of(self, measure: Measure) -> Fraction:
        """In mm, grams, or as a plain number."""
        match measure:
            case Measure.LENGTH:
                return self.length
            case Measure.HEIGHT:
                return self.height
            case Measure.THICKNESS:
                return self.thickness
            case Measure.WEIGHT:
                return self.grams
            case Measure.RATIO:
                return self.length / self.height


@dataclass(frozen=True, slots=True)
class Breach:
    """One limit that a piece does not keep: ``value`` is more than the most, or less than the least.

    ``kind``: whose limit it is; empty: that of all that is sent.
    """

    measure: Measure
    value: Fraction
    limit: Fraction
    over: bool
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """``kind`` None: it goes by none; ``breaches`` say why not as a smaller kind, or as any.

    ``dearer``: why it costs more than others of its kind; ``thin``, ``uneven``: because it is.
    """

    post: Post
    kind: PostKind | None
    breaches: tuple[Breach, ...] = ()
    dearer: tuple[Breach, ...] = ()
    thin: bool = False
    uneven: bool = False

    @property
    def costs_more(self) -> bool:
        """Whether it is dearer than others of its kind."""
        return bool(self.dearer) or self.thin or self.uneven

    @property
    def too_small(self) -> bool:
        """Whether it is smaller than anything that may be sent."""
        return self.kind is None and any(not breach.kind for breach in self.breaches)

    @property
    def name(self) -> str:
        """``letter``, ``nonmachinable letter``, as rates call it; empty: no kind."""
        return self._sort.name if self._sort else ""

    @property
    def told(self) -> str:
        """``a letter``, ``a parcel``; empty: it may not be sent."""
        if self._sort:
            return self._sort.told
        return "" if self.too_small else self.post.beyond

    @property
    def _sort(self) -> PostKind | Dearer | None:
        return self.kind.dearer if self.kind and self.costs_more else self.kind


def judge(piece: Piece, post: Post) -> Verdict:
    """The first kind of letter that takes a piece. What is just as large as a limit is within."""
    small = tuple(_under(piece, post.least, ""))
    if small and not _may_be_smaller(piece, post):
        return Verdict(post, None, small)
    first: tuple[Breach, ...] = ()
    for kind in post.kinds:
        breaches = (*_over(piece, kind.most, kind.told), *_under(piece, kind.least, kind.told))
        if small:
            return Verdict(post, None, breaches)
        if not breaches:
            return _with_dearer(piece, Verdict(post, kind, first))
        first = first or breaches
    return Verdict(post, None, first)


def _may_be_smaller(piece: Piece, post: Post) -> bool:
    """What is too thick for a letter may be smaller than one: it is no flat then either."""
    return post.smaller_above is not None and piece.thickness > post.smaller_above


def _with_dearer(piece: Piece, verdict: Verdict) -> Verdict:
    rule = verdict.kind.dearer if verdict.kind else None
    if rule is None or verdict.kind is None:
        return verdict
    name = verdict.kind.told
    return Verdict(
        verdict.post,
        verdict.kind,
        verdict.breaches,
        (*_over(piece, rule.most, name), *_under(piece, rule.least, name)),
        thin=_too_thin(piece, rule),
        uneven=rule.uneven and piece.uneven,
    )


def _over(piece: Piece, most: Limits, kind: str) -> Iterator[Breach]:
    for measure, limit in _limits(most):
        value = piece.of(measure)
        if value > limit:
            yield Breach(measure, value, limit, over=True, kind=kind)


def _under(piece: Piece, least: Limits, kind: str) -> Iterator[Breach]:
    for measure, limit in _limits(least):
        value = piece.thinnest if measure is Measure.THICKNESS else piece.of(measure)
        if value < limit:
            yield Breach(measure, value, limit, over=False, kind=kind)


def _too_thin(piece: Piece, rule: Dearer) -> bool:
    """Larger than a small letter, and thinner than such a one may be."""
    thin = rule.thin
    if thin.thickness is None or piece.thinnest >= thin.thickness:
        return False
    long = thin.length is not None and piece.length > thin.length
    high = thin.height is not None and piece.height > thin.height
    return long or high


def _limits(limits: Limits) -> Iterator[tuple[Measure, Fraction]]:
    for measure in Measure:
        limit: Fraction | None = getattr(limits, measure.value)
        if limit is not None:
            yield measure, limit
