"""The lines of a drawing as the text that SVG knows them by: path data (W3C, SVG 2, section 9.3)."""

from __future__ import annotations

from collections.abc import Iterable

from batchleaf.views.drawing.shapes import Cutout, Path, Polygon, Stroke

Point = tuple[float, float]


def number(value: float) -> str:
    """A coordinate of a drawing: a hundredth is finer than any screen."""
    return f"{value:.2f}".replace(".00", "")


def path_data(shape: Polygon | Cutout | Stroke) -> str:
    """``M0 0L210 0L210 297Z``."""
    match shape:
        case Polygon():
            return f"M{_joined(shape.corners, 'L')}Z"
        case Cutout():
            return "".join(map(_path, shape.paths))
        case Stroke():
            return "".join(
                f"M{number(x1)} {number(y1)}L{number(x2)} {number(y2)}" for x1, y1, x2, y2 in shape.lines
            )


def _path(path: Path) -> str:
    pieces = (f"{'L' if len(piece) == 1 else 'C'}{_joined(piece, ' ')}" for piece in path.pieces)
    return f"M{_joined([path.start], '')}{''.join(pieces)}{'Z' if path.closed else ''}"


def _joined(points: Iterable[Point], between: str) -> str:
    return between.join(f"{number(x)} {number(y)}" for x, y in points)
