"""Cord and thread, bent and twisted with a round section; and ribbon, which lies flat."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from camera import Field, Frame, Vector
from colour import linear, rgb
from picture import FINER, Patch, Picture, grown, mean, softened
from PIL import Image, ImageDraw


@dataclass(frozen=True, slots=True)
class Cord:
    """Runs smoothly through ``knots`` (x, y, z in mm)."""

    knots: tuple[tuple[float, float, float], ...]
    radius: float
    colour: str
    twist: float = 1.7
    """How far the strands run along the cord for one turn, in mm; 0: it is a ribbon, woven flat."""

    def path(self) -> Vector:
        """Points close together on a Catmull-Rom curve, one a row."""
        ends = np.array(self.knots)
        held = np.vstack((2 * ends[0] - ends[1], ends, 2 * ends[-1] - ends[-2]))
        t = np.linspace(0, 1, 14, endpoint=False)[:, None]
        spans = [_span(held[i : i + 4], t) for i in range(len(self.knots) - 1)]
        return np.vstack((*spans, ends[-1:]))


def _span(four: Vector, t: Vector) -> Vector:
    a, b, c, d = four
    span: Vector = 0.5 * (
        2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - 3 * c + d - a) * t**3
    )
    return span


def string(picture: Picture, cord: Cord, onto: Frame) -> None:
    """Its shadow on a plane, then the cord."""
    path = cord.path()
    _cast(picture, cord, path, onto)
    seen = picture.camera.seen(path)
    radius = cord.radius * picture.camera.scale_at(path.mean(axis=0))
    patch = picture.patch(seen, radius + 2)
    if patch.empty:
        return
    off, run, turn = _nearest(patch, seen, radius)
    depth = np.clip(np.float32(radius) - np.abs(off) + np.float32(0.5), 0, 1)
    across, along = off / np.float32(radius), run / np.float32(radius)
    if not cord.twist:
        picture.lay(patch, _woven(cord, across, along, turn), depth * _between_ends(patch, seen))
        return
    picture.lay(patch, _strands(picture, cord, across, along, turn), depth)


def _between_ends(patch: Patch, seen: Vector) -> Field:
    """0 where a pixel is beyond the straight cut of either end, 1 elsewhere."""
    x, y = patch.grid()
    kept = np.ones_like(x)
    for end, inner in ((seen[0], seen[3]), (seen[-1], seen[-4])):
        way = (end - inner) / max(float(np.hypot(*(end - inner))), 1e-6)
        beyond = (x - end[0]) * way[0] + (y - end[1]) * way[1]
        near = np.hypot(x - end[0], y - end[1]) < 3 * float(np.hypot(*(end - inner))) + 24
        kept = np.where(near, kept * np.clip(0.5 - beyond, 0, 1), kept)
    return kept.astype(np.float32)


def _woven(cord: Cord, across: Field, along: Field, turn: Field) -> Field:
    """A ribbon's weave, its two firm edges, and a sheen that turns with it."""
    side = np.clip(across, -1, 1)
    weft = np.sin(along * (cord.radius * 2 * np.pi / 0.8))
    warp = np.sin(side * (cord.radius * 2 * np.pi / 0.9))
    firm = np.clip((np.abs(side) - 0.78) / 0.1, 0, 1)
    tone = 0.97 + 0.05 * weft * warp + 0.09 * np.sin(2 * turn + 0.6) - 0.1 * firm + 0.04 * side
    toned: Field = (linear(rgb(cord.colour)) * tone[..., None]).astype(np.float32)
    return toned


def _nearest(patch: Patch, seen: Vector, radius: float) -> tuple[Field, Field, Field]:
    """For each pixel of a patch: how far off the line, how far along it, and the line's direction there."""
    shape = (patch.bottom - patch.top, patch.right - patch.left)
    off = np.full(shape, 1e6, dtype=np.float32)
    run, turn = np.zeros(shape, dtype=np.float32), np.zeros(shape, dtype=np.float32)
    travelled = 0.0
    for start, end in pairwise(seen):
        _measure(patch, (off, run, turn), start, end, radius, travelled)
        travelled += float(np.hypot(*(end - start)))
    return off, run, turn


def _measure(
    patch: Patch,
    kept: tuple[Field, Field, Field],
    start: Vector,
    end: Vector,
    radius: float,
    travelled: float,
) -> None:
    low = np.floor(np.minimum(start, end) - radius - 2).astype(int)
    high = np.ceil(np.maximum(start, end) + radius + 2).astype(int)
    small = Patch(
        max(patch.left, low[0]), max(patch.top, low[1]), min(patch.right, high[0]), min(patch.bottom, high[1])
    )
    length = float(np.hypot(*(end - start)))
    if small.empty or length == 0:
        return
    x, y = small.grid()
    dx, dy = (end - start) / length
    along = np.clip((x - start[0]) * dx + (y - start[1]) * dy, 0, length)
    gone = np.hypot(x - start[0] - along * dx, y - start[1] - along * dy)
    side = np.sign((y - start[1]) * dx - (x - start[0]) * dy)
    rows = slice(small.top - patch.top, small.bottom - patch.top)
    columns = slice(small.left - patch.left, small.right - patch.left)
    off, run, turn = (field[rows, columns] for field in kept)
    nearer = gone < np.abs(off)
    off[nearer] = (gone * side)[nearer]
    run[nearer] = (along + travelled)[nearer]
    turn[nearer] = np.float32(np.arctan2(dy, dx))


def _strands(picture: Picture, cord: Cord, off: Field, run: Field, turn: Field) -> Field:
    side = np.clip(off, -1, 1)
    up = np.sqrt(1 - side**2)
    sun = picture.sun.direction
    across = -np.sin(turn) * sun[0] + np.cos(turn) * sun[1]
    light = 0.42 + 0.6 * np.clip(up * sun[2] + side * across, 0, 1)
    ply = np.sin(run * (2 * np.pi * cord.radius / cord.twist) + 2.4 * side)
    tone = light * (1 + 0.2 * ply * up)
    toned: Field = (linear(rgb(cord.colour)) * tone[..., None]).astype(np.float32)
    return toned


def _cast(picture: Picture, cord: Cord, path: Vector, onto: Frame) -> None:
    height = np.maximum((path - onto.origin) @ onto.normal, 0)[:, None]
    rays = picture.sun.rays()[::3]
    falls = [picture.camera.seen(path - height * (ray / (ray @ onto.normal))) for ray in rays]
    scale = picture.camera.scale_at(path.mean(axis=0))
    patch = picture.patch(np.vstack(falls), scale * 2 + 4)
    if patch.empty:
        return
    width = max(1, round(2 * cord.radius * scale / FINER))
    sunless = mean([_drawn(patch, fall, width) for fall in falls])
    picture.shade(patch, grown(softened(sunless, 0.35 * scale) * np.float32(0.75), patch))


def _drawn(patch: Patch, fall: Vector, width: int) -> Image.Image:
    size = ((patch.right - patch.left) // FINER + 1, (patch.bottom - patch.top) // FINER + 1)
    image = Image.new("L", size, 0)
    moved = [((x - patch.left) / FINER, (y - patch.top) / FINER) for x, y in fall]
    ImageDraw.Draw(image).line(moved, fill=255, width=width, joint="curve")
    return image
