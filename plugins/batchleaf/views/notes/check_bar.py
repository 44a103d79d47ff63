"""A rule of 100 mm and of 4 inches, by which a maker sees whether the printer kept the size."""

from __future__ import annotations

from typing import Final

from batchleaf.views.drawing.shapes import Drawing, Label, Shape, Stroke

_INCH: Final = 25.4
_MM: Final = 100
_INCHES: Final = 4
_BETWEEN: Final = 6.0
"""From one rule to the other."""
_TALL: Final = 2.4
_SHORT: Final = 1.4


def check_bar(id: str) -> Drawing:  # noqa: A002  as pages call it
    """Both rules from one line at the left, in mm."""
    whole, tens = (0.0, 100.0), tuple(float(at) for at in range(10, _MM, 10))
    ends, inches = (0.0, _INCHES * _INCH), tuple(n * _INCH for n in range(1, _INCHES))
    shapes: list[Shape] = [
        _rule("millimetres", 0.0, whole, tens),
        _rule("inches", _BETWEEN, ends, inches),
        Label("figure-on-bar start", _INCHES * _INCH + 2.0, 0.0, f"{_MM} mm"),
        Label("figure-on-bar start", _INCHES * _INCH + 2.0, _BETWEEN, f"{_INCHES} in"),
    ]
    return Drawing(
        id=id,
        title="Rule to check the size by",
        description="One line of 100 mm, ticked every 10 mm; below it one of 4 in, ticked every inch.",
        x=-1.0,
        y=-2.5,
        width=_INCHES * _INCH + 18.0,
        height=_BETWEEN + 5.0,
        scale=1.0,
        width_class="unlettered",
        shapes=tuple(shapes),
    )


def _rule(name: str, y: float, ends: tuple[float, float], ticks: tuple[float, ...]) -> Stroke:
    start, end = ends
    tall = tuple((x, y - _TALL / 2, x, y + _TALL / 2) for x in ends)
    short = tuple((x, y - _SHORT / 2, x, y + _SHORT / 2) for x in ticks)
    return Stroke(f"bar {name}", ((start, y, end, y), *tall, *short))
