"""The layers of a make apart, in an oblique view: the base lowest, each part above its place.

Dashed lines lead from a layer's corners down to where it lies. Letters stand on a plumb
line at the right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from batchleaf.core.geometry.aspects import Crease
from batchleaf.core.geometry.seen import Seen
from batchleaf.views.drawing.canvas import Canvas, Lettering
from batchleaf.views.drawing.cutouts import cutout, farthest
from batchleaf.views.drawing.oblique import Plane, Point, depth_of
from batchleaf.views.drawing.paper import Fill, Line
from batchleaf.views.drawing.shapes import Cutout, Label, Polygon, Stroke
from batchleaf.views.drawing.spread import spread
from batchleaf.views.drawing.surfaces import PaperOf, marks_of

_GAP: Final = 0.62
"""From one layer to the next, as a share of what the base takes from top to foot."""
_LEAST_GAP_PX: Final = 22.0
_MOST_PX: Final = 330.0
"""All gaps together; many layers lie closer."""
_PLUMB: Final = 1.4
"""How far right of the layers the plumb line stands, in em."""
_PITCH: Final = 1.45
"""Distance of letters on it, in em."""


Point3 = tuple[float, float, float]
"""Right, towards the foot, and up, in mm."""


@dataclass(frozen=True, slots=True)
class Layer:
    """What lies at one height: the base, a lid, or all copies of one part.

    ``walls``: how high those of a box stand above it (below nothing: how low those of a
    lid hang). ``hinge``: pieces of the base under it, that hang together with it at a fold.
    ``rests``: for each of its pieces the number of the layer that it lies on.
    """

    letter: str
    name: str
    pieces: tuple[Seen, ...]
    rests: tuple[int, ...] = ()
    creases: tuple[Crease, ...] = ()
    walls: float = 0.0
    hinge: tuple[tuple[Point3, ...], ...] = ()
    shift: tuple[float, float] = (0.0, 0.0)


def draw_apart(layers: Sequence[Layer], paper_of: PaperOf, lettering: Lettering) -> Canvas:
    """The layers, the lowest first."""
    canvas = Canvas(lettering)
    planes = _planes(layers, lettering)
    for layer, plane in zip(layers, planes, strict=True):
        _draw_drops(canvas, layer, plane, layers, planes)
        _draw_layer(canvas, layer, plane, paper_of)
    _draw_letters(canvas, layers, planes)
    return canvas


def extent_of_base(layers: Sequence[Layer]) -> tuple[float, float]:
    """How wide and how high the lowest layer alone is drawn, in mm."""
    corners = [Plane(0.0).corners(piece.rect) for piece in layers[0].pieces]
    xs, ys = ([one[i] for piece in corners for one in piece] for i in (0, 1))
    return max(xs) - min(xs), max(ys) - min(ys)


def _planes(layers: Sequence[Layer], lettering: Lettering) -> list[Plane]:
    base = layers[0].pieces[0].rect
    wide = depth_of(float(base.width), float(base.height))
    most = _MOST_PX / lettering.scale / max(len(layers) - 1, 1)
    gap = max(min(_GAP * wide, most), min(_LEAST_GAP_PX / lettering.scale, most))
    planes, height = [], 0.0
    for before, layer in zip([None, *layers], layers, strict=False):
        if before is not None:
            height += gap + max(before.walls, 0.0) + max(-layer.walls, 0.0)
        planes.append(Plane(height, *layer.shift))
    return planes


def _draw_drops(
    canvas: Canvas, layer: Layer, plane: Plane, layers: Sequence[Layer], planes: Sequence[Plane]
) -> None:
    """From each corner straight down to what it lies on."""
    lines: list[Line] = []
    for piece, rests in zip(layer.pieces, layer.rests, strict=False):
        foot = planes[rests].height + (layers[rests].walls if layer.walls else 0.0)
        hangs = max(-layer.walls, 0.0)
        lines += [(x, y + hangs, x, y + plane.height - foot) for x, y in _corners(piece, plane)]
    if lines:
        canvas.add(Stroke("apart", tuple(lines)))


def _draw_layer(canvas: Canvas, layer: Layer, plane: Plane, paper_of: PaperOf) -> None:
    first = layer.pieces[0]
    for corners in layer.hinge:
        flat = tuple(Plane(plane.height + z, plane.left, plane.top).point(x, y) for x, y, z in corners)
        canvas.add(_hanging(first, flat, paper_of(first)))
    if layer.walls > 0:
        _draw_walls(canvas, first, plane, layer.walls, paper_of, near=False)
    for piece in layer.pieces:
        fill = paper_of(piece)
        role = "base" if piece.index is None else "layer"
        canvas.add(_slab(f"{role} slab", piece, plane, fill))
        lines = plane.lines(marks_of(piece, fill, canvas.lettering.scale))
        if lines:
            canvas.add(Stroke(f"pattern {fill.marks.value}", lines, fill.marks_colour))
    if layer.creases:
        folds = tuple(
            plane.line(*map(float, (one.x1, one.y1, one.x2, one.y2)))
            for one in layer.creases
            if not one.at_edge
        )
        if folds:
            canvas.add(Stroke("fold" + paper_of(first).edge, folds))
    if layer.walls:
        _draw_walls(canvas, first, plane, layer.walls, paper_of, near=True)


def _draw_walls(
    canvas: Canvas, piece: Seen, plane: Plane, walls: float, paper_of: PaperOf, *, near: bool
) -> None:
    """Two of the four walls of a box: those behind its bottom, or those before it."""
    top_left, top_right, bottom_right, bottom_left = plane.corners(piece.rect)
    edges = (
        ((top_right, bottom_right), (bottom_left, bottom_right))
        if near
        else ((top_left, top_right), (top_left, bottom_left))
    )
    for (x1, y1), (x2, y2) in edges:
        corners = ((x1, y1), (x2, y2), (x2, y2 - walls), (x1, y1 - walls))
        canvas.add(_sheet("layer", corners, paper_of(piece)))


def _corners(piece: Seen, plane: Plane) -> tuple[Point, Point, Point, Point]:
    """Of a piece with another outline the points that lie nearest to the corners of its rectangle."""
    outline = piece.outline
    if outline is None:
        return plane.corners(piece.rect)
    ways = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    top_left, top_right, bottom_right, bottom_left = (
        plane.point(*farthest(outline, right, lower)) for right, lower in ways
    )
    return top_left, top_right, bottom_right, bottom_left


def _slab(role: str, piece: Seen, plane: Plane, fill: Fill) -> Polygon | Cutout:
    if piece.outline is None:
        return _sheet(role, plane.corners(piece.rect), fill)
    return cutout(piece.outline, role + fill.edge, fill.colour, lambda at: plane.point(*at))


def _hanging(piece: Seen, flat: tuple[Point, ...], fill: Fill) -> Polygon | Cutout:
    """A piece below the first one, as large and of its outline, that slants to these four corners."""
    if piece.outline is None:
        return _sheet("layer", flat, fill)
    (x0, y0), (x1, y1), _, (x3, y3) = flat
    width, height = float(piece.rect.width), float(piece.rect.height)

    def point(at: Point) -> Point:
        across, down = at[0] / width, at[1] / height
        return x0 + (x1 - x0) * across + (x3 - x0) * down, y0 + (y1 - y0) * across + (y3 - y0) * down

    return cutout(piece.outline, f"layer{fill.edge}", fill.colour, point)


def _sheet(role: str, corners: tuple[Point, ...], fill: Fill) -> Polygon:
    return Polygon(role + fill.edge, corners, fill.colour)


def _draw_letters(canvas: Canvas, layers: Sequence[Layer], planes: Sequence[Plane]) -> None:
    em = canvas.lettering.em
    corners = [max(_right_corners(layer, plane)) for layer, plane in zip(layers, planes, strict=True)]
    plumb = max(x for x, _ in corners) + _PLUMB * em
    called = sorted(zip(corners, layers, strict=True), key=lambda one: one[0][1])
    steps = [_PITCH * em for _ in pairwise(called)]
    around = canvas.extent
    places = spread([y for (_, y), _ in called], steps, around.top + 0.5 * em, around.bottom - 0.5 * em)
    for ((x, y), layer), place in zip(called, places, strict=True):
        end = plumb - 0.3 * em
        lines = ((x, y, end, place),)
        canvas.add(Stroke("leader halo", lines), Stroke("leader", lines))
        canvas.add(Label("letter small start", plumb, place, layer.letter))
        if layer.name:
            canvas.add(Label("quiet start", plumb + 1.2 * em, place, layer.name))


def _right_corners(layer: Layer, plane: Plane) -> list[Point]:
    return [_corners(piece, plane)[1] for piece in layer.pieces]
