"""Round things: sloes and hazelnuts from the hedge, and the head of a brad."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, radians, sin
from typing import Final

import numpy as np
from camera import Field, Frame, Vector, vector
from colour import linear, rgb
from grain import noise, sample
from outlines import disc
from picture import Patch, Picture
from pieces import TABLE

DOME: Final = 0.45


@dataclass(frozen=True, slots=True)
class Fruit:
    """A ball on the table whose ``crown`` looks some way, in degrees round the table."""

    x: float
    y: float
    radius: float
    crown: float

    @property
    def axis(self) -> Vector:
        """From its middle to its crown."""
        t = radians(self.crown)
        return vector(cos(t), sin(t), 0.75) / 1.25


@dataclass(frozen=True, slots=True)
class Seen:
    """The half of a ball that is seen: where on it each pixel looks, and which way it faces there."""

    patch: Patch
    u: Field
    v: Field
    normal: Vector
    cover: Field


def sloe(picture: Picture, fruit: Fruit) -> None:
    """Nearly black, with a bloom that has been rubbed off in places, and a dimple for the stalk."""
    seen = _seen(picture, fruit)
    rubbed = sample(noise(1.3, 71), seen.u * 9 + fruit.x, seen.v * 9 + fruit.y, 3)
    bloom = 0.5 * np.clip(0.55 + 0.35 * rubbed, 0, 1)[..., None]
    skin = linear(rgb("#232338")) * (1 - bloom) + linear(rgb("#8f9bb4")) * bloom
    dimple = np.exp(-(((1 - seen.normal @ fruit.axis) / 0.02) ** 2))
    _lay(picture, seen, skin * (1 - 0.8 * dimple)[..., None], 0.22)


def hazelnut(picture: Picture, fruit: Fruit) -> None:
    """Brown, streaked from pole to pole, with the pale scar it sat on."""
    seen = _seen(picture, fruit)
    toward = seen.normal @ fruit.axis
    side = np.cross(fruit.axis, vector(0, 0, 1))
    around = np.arctan2(seen.normal @ side, seen.normal @ np.cross(side, fruit.axis))
    streaks = sample(
        noise(0.8, 72), (around * 5 + fruit.x).astype(np.float32), (toward * 0.8).astype(np.float32), 9
    )
    skin = linear(rgb("#94653c")) * (1 + 0.09 * streaks + 0.2 * toward)[..., None]
    scar = np.clip((toward - 0.84 - 0.015 * np.sin(around * 11)) * 30, 0, 1)[..., None]
    pale = linear(rgb("#bda078")) * (1 + 0.07 * sample(noise(0.6, 73), seen.u * 8, seen.v * 8, 9))[..., None]
    _lay(picture, seen, skin * (1 - scar) + pale * scar, 0.14)


def knob(picture: Picture, at: Frame, radius: float, colour: str) -> None:
    """The domed head of a brad in a plane: brushed metal."""
    ring = at.points(disc(2 * radius, 2 * radius).corners) - radius * (at.along + at.down)
    picture.cast(ring + 1.2 * at.normal, at)
    seen = _ball(picture, at.origin + 0.2 * radius * at.normal, radius, _squash(picture, at))
    turned = seen.normal * 0.72 + at.normal * 0.28
    seen = Seen(
        seen.patch, seen.u, seen.v, turned / np.linalg.norm(turned, axis=2, keepdims=True), seen.cover
    )
    _lay(picture, seen, np.broadcast_to(linear(rgb(colour)), seen.normal.shape), 0.5)


def _seen(picture: Picture, fruit: Fruit) -> Seen:
    """Casts the shadow, too."""
    turns = np.linspace(0, 2 * pi, 40, endpoint=False)
    centre = vector(fruit.x, fruit.y, fruit.radius)
    picture.cast(np.array([centre + fruit.radius * vector(cos(t), sin(t)) for t in turns]), TABLE)
    return _ball(picture, centre, fruit.radius)


def _squash(picture: Picture, at: Frame) -> tuple[float, float, float]:
    """How a dome DOME as high as wide is seen: the direction of its axis on the picture, and how short."""
    foot, tip = picture.camera.seen(np.array([at.origin, at.origin + at.normal]))
    length = float(np.hypot(*(tip - foot))) or 1.0
    eye = picture.camera.eye - at.origin
    upright = float(eye @ at.normal) / float(np.linalg.norm(eye))
    short = float(np.hypot(upright, DOME * (1 - upright**2) ** 0.5))
    return float(tip[0] - foot[0]) / length, float(tip[1] - foot[1]) / length, short


def _ball(
    picture: Picture, centre: Vector, size: float, squash: tuple[float, float, float] = (0, 1, 1)
) -> Seen:
    """The half of a ball that is seen, perhaps flattened; ``size`` is its radius in mm."""
    middle = picture.camera.seen(centre[None, :])[0]
    radius = size * picture.camera.scale_at(centre)
    patch = picture.patch(np.array((middle - radius, middle + radius)), 2)
    x, y = patch.grid()
    u, v = (x - middle[0]) / np.float32(radius), (y - middle[1]) / np.float32(radius)
    stretch = np.float32(1 / squash[2] - 1) * (u * squash[0] + v * squash[1])
    u, v = u + stretch * np.float32(squash[0]), v + stretch * np.float32(squash[1])
    right, down, forward = picture.camera.axes
    w = np.sqrt(np.clip(1 - u**2 - v**2, 0, 1))
    normal = u[..., None] * right + v[..., None] * down - w[..., None] * forward
    cover = np.clip((1 - np.hypot(u, v)) * np.float32(radius) + np.float32(0.5), 0, 1)
    return Seen(patch, u.astype(np.float32), v.astype(np.float32), normal, cover.astype(np.float32))


def _lay(picture: Picture, seen: Seen, skin: Vector, gloss: float) -> None:
    sun = picture.sun.direction
    half = sun - picture.camera.axes[2]
    lit = np.clip(seen.normal @ sun, 0, 1)
    shine = gloss * np.clip(seen.normal @ (half / np.linalg.norm(half)), 0, 1) ** 36
    sky = 0.3 + 0.26 * seen.normal[..., 2]
    light = skin * (sky + 0.8 * lit)[..., None] + shine[..., None]
    if not seen.patch.empty:
        picture.lay(seen.patch, np.asarray(light, dtype=np.float32), seen.cover)
