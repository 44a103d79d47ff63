"""Closed outlines of straight lines and quarter ellipses, in mm: exact points, and exact areas but for π."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, pairwise
from typing import Final

from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect

PI: Final = Fraction(355, 113)
"""π as Zu Chongzhi gave it in the 5th century: too large by less than 2.7 / 10,000,000.

So a circle is told too large by less than one part in eleven million: of one as wide as a
sheet of 305 mm that is less than a hundredth of a square millimetre.
"""
HALF_ANGLES: Final = tuple(
    Fraction(top, bottom) for top, bottom in ((1, 8), (1, 4), (12, 29), (3, 5), (7, 9))
)
"""Tangents of half the angles at which points of a quarter are taken.

For each the sine and the cosine are fractions, so the points lie exactly on the curve;
12/29 is 45° but for less than a thousandth, where the largest square of a circle has its corners.
"""
HUNDREDTHS: Final = 100
"""Points of curves that something has to lie within are moved inwards to a hundredth of a mm."""

Point = tuple[Fraction, Fraction]
"""Right and down from the top left."""


@dataclass(frozen=True, slots=True)
class Step:
    """From where the step before ended to ``to``.

    Straight; or with a ``corner`` a quarter of an ellipse, whose tangents at both ends meet there.
    """

    to: Point
    corner: Point | None = None


Loop = tuple[Step, ...]
"""A closed line: it begins where its last step ends."""


@dataclass(frozen=True, slots=True)
class Outline:
    """The edge of a piece, clockwise as it is seen, and the holes in it. Every curve bulges outwards."""

    edge: Loop
    holes: tuple[Loop, ...] = ()

    @property
    def area(self) -> Fraction:
        """Square millimetres, holes left out; of curves as near as :data:`PI`."""
        return area_within(self.edge) - sum((area_within(hole) for hole in self.holes), Fraction(0))

    def mapped(self, point: Callable[[Point], Point]) -> Outline:
        """The same with every point elsewhere, turned or moved; see :meth:`flipped` for what is mirrored."""
        return Outline(_mapped(self.edge, point), tuple(_mapped(hole, point) for hole in self.holes))

    def moved(self, right: Fraction, lower: Fraction) -> Outline:
        """The same elsewhere."""
        return self.mapped(lambda at: (at[0] + right, at[1] + lower))

    def turned(self, size: Size, quarter_turns: int) -> Outline:
        """After so many quarter turns clockwise of the piece of this size that it lies on."""
        width, height = size.width, size.height
        match quarter_turns % 4:
            case 1:
                return self.mapped(lambda at: (height - at[1], at[0]))
            case 2:
                return self.mapped(lambda at: (width - at[0], height - at[1]))
            case 3:
                return self.mapped(lambda at: (at[1], width - at[0]))
        return self

    def flipped(self, width: Fraction) -> Outline:
        """As it is seen from behind: left and right changed, on a piece so wide."""
        return self.mapped(lambda at: (width - at[0], at[1]))._the_other_way()

    def upside_down(self, height: Fraction) -> Outline:
        """Top and foot changed, on a piece so high."""
        return self.mapped(lambda at: (at[0], height - at[1]))._the_other_way()

    def _the_other_way(self) -> Outline:
        return Outline(_reversed(self.edge), tuple(_reversed(hole) for hole in self.holes))

    def joined(self, other: Outline) -> Outline:
        """Both in one piece, where they have a straight line in common; else :class:`ValueError`."""
        lines = {(start, step.to): number for number, (start, step) in enumerate(starts_of(other.edge))}
        for number, (start, step) in enumerate(starts_of(self.edge)):
            shared = lines.get((step.to, start))
            if shared is not None and step.corner is None and other.edge[shared].corner is None:
                edge = (*_without(self.edge, number), *_without(other.edge, shared))
                return Outline(edge, (*self.holes, *other.holes))
        raise ValueError("the two have no line in common")


def rectangle(rect: Rect) -> Loop:
    """The four sides of a rectangle."""
    x, y, right, bottom = rect.x, rect.y, rect.right, rect.bottom
    return tuple(Step(to) for to in ((right, y), (right, bottom), (x, bottom), (x, y)))


def ellipse(rect: Rect) -> Loop:
    """As large as the rectangle lets it be."""
    x, y, right, bottom = rect.x, rect.y, rect.right, rect.bottom
    across, down = (x + right) / 2, (y + bottom) / 2
    return (
        Step((right, down), (right, y)),
        Step((across, bottom), (right, bottom)),
        Step((x, down), (x, bottom)),
        Step((across, y), (x, y)),
    )


def around(hole: Loop) -> Rect:
    """The rectangle around an ellipse, whose steps end at its sides."""
    xs, ys = [step.to[0] for step in hole], [step.to[1] for step in hole]
    return Rect(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def starts_of(loop: Loop) -> Iterator[tuple[Point, Step]]:
    """Each step with the point at which it begins."""
    before = loop[-1].to
    for step in loop:
        yield before, step
        before = step.to


def area_within(loop: Loop) -> Fraction:
    """What a closed line encloses: the polygon of its points, and what each curve adds to its chord.

    A quarter of an ellipse with the half axes a and b covers πab/4, its triangle below the chord ab/2.
    """
    whole = Fraction(0)
    for start, step in starts_of(loop):
        whole += _cross(start, step.to) / 2
        if step.corner is not None:
            whole += (PI / 4 - Fraction(1, 2)) * _cross(
                _from_to(start, step.corner), _from_to(step.corner, step.to)
            )
    return abs(whole)


def points_on(loop: Loop) -> tuple[Point, ...]:
    """The corners of a polygon that lies inside, with all its corners exactly on the line."""
    return tuple(chain.from_iterable(_points_of(start, step) for start, step in starts_of(loop)))


def points_within(loop: Loop) -> tuple[Point, ...]:
    """The corners of a polygon that lies inside, those on curves moved inwards to a hundredth of a mm."""
    return tuple(chain.from_iterable(_points_inside(start, step) for start, step in starts_of(loop)))


def _points_of(start: Point, step: Step) -> Iterator[Point]:
    if step.corner is not None:
        middle = _middle(start, step)
        towards, away = _from_to(middle, start), _from_to(middle, step.to)
        for half in HALF_ANGLES:
            cosine, sine = (1 - half**2) / (1 + half**2), 2 * half / (1 + half**2)
            yield (
                middle[0] + towards[0] * cosine + away[0] * sine,
                middle[1] + towards[1] * cosine + away[1] * sine,
            )
    yield step.to


def _points_inside(start: Point, step: Step) -> Iterator[Point]:
    middle = _middle(start, step)
    *on_the_way, last = _points_of(start, step)
    yield from ((_nearer(x, middle[0]), _nearer(y, middle[1])) for x, y in on_the_way)
    yield last


def _nearer(at: Fraction, middle: Fraction) -> Fraction:
    """``at`` moved towards the middle of its ellipse to a hundredth: so it stays inside."""
    away = at - middle
    steps = abs(away) * HUNDREDTHS // 1
    return middle + (steps if away > 0 else -steps) / Fraction(HUNDREDTHS)


def _middle(start: Point, step: Step) -> Point:
    """The middle of the ellipse that a quarter is of: across from where its tangents meet."""
    corner = step.corner or step.to
    return start[0] + step.to[0] - corner[0], start[1] + step.to[1] - corner[1]


def clearance(centre: Point, loop: Loop) -> Fraction | None:
    """The square of how far a point inside is from the line, never too large; ``None`` outside."""
    corners = points_on(loop)
    lines = list(pairwise((corners[-1], *corners)))
    crossed = sum(1 for one, other in lines if _is_crossed(centre, one, other))
    return min(_square_to(centre, one, other) for one, other in lines) if crossed % 2 else None


def _is_crossed(at: Point, one: Point, other: Point) -> bool:
    """Whether a line between two points crosses the way from ``at`` to the right."""
    if (one[1] > at[1]) == (other[1] > at[1]):
        return False
    return at[0] < one[0] + (other[0] - one[0]) * (at[1] - one[1]) / (other[1] - one[1])


def _square_to(at: Point, one: Point, other: Point) -> Fraction:
    along, there = _from_to(one, other), _from_to(one, at)
    length = along[0] ** 2 + along[1] ** 2
    if not length:
        return there[0] ** 2 + there[1] ** 2
    share = max(Fraction(0), min(Fraction(1), (along[0] * there[0] + along[1] * there[1]) / length))
    return (there[0] - along[0] * share) ** 2 + (there[1] - along[1] * share) ** 2


def _mapped(loop: Loop, point: Callable[[Point], Point]) -> Loop:
    return tuple(Step(point(step.to), None if step.corner is None else point(step.corner)) for step in loop)


def _reversed(loop: Loop) -> Loop:
    return tuple(Step(start, step.corner) for start, step in reversed(tuple(starts_of(loop))))


def _without(loop: Sequence[Step], number: int) -> tuple[Step, ...]:
    """What is left of a closed line without one of its steps, from where that ended."""
    return (*loop[number + 1 :], *loop[:number])


def _from_to(one: Point, other: Point) -> Point:
    return other[0] - one[0], other[1] - one[1]


def _cross(one: Point, other: Point) -> Fraction:
    return one[0] * other[1] - one[1] * other[0]
