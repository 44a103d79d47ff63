"""The picture while it is made: pixels in linear light, the sun, and the shadows it casts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from camera import Camera, Field, Frame, Vector, vector
from PIL import Image, ImageDraw, ImageFilter

FINER: Final = 2
"""Pixels drawn for one kept, along each side."""
RAYS: Final = 24
SHADE: Final = np.array((0.66, 0.61, 0.53), dtype=np.float32)
"""What a full shadow takes away: least of the blue, which comes from the sky."""


@dataclass(frozen=True, slots=True)
class Sun:
    """A window's light: where it stands, and how large it looks."""

    towards: tuple[float, float, float] = (-0.6, -0.48, 0.64)
    spread: float = 0.085

    @property
    def direction(self) -> Vector:
        """A unit vector from the table to the light."""
        to = vector(*self.towards)
        return to / float(np.linalg.norm(to))

    def rays(self) -> list[Vector]:
        """Directions over the face of the light, evenly (a sunflower's spiral)."""
        turns = np.arange(RAYS) * np.pi * (3 - 5**0.5)
        reach = self.spread * np.sqrt((np.arange(RAYS) + 0.5) / RAYS)
        return [
            self.direction + vector(r * np.cos(t), r * np.sin(t)) for r, t in zip(reach, turns, strict=True)
        ]

    def on(self, normal: Vector) -> float:
        """How bright a face is that looks along ``normal``; a sheet lying on the table is 1."""
        level = float(self.direction[2])
        return 0.56 + 0.44 * max(0.0, float(normal @ self.direction)) / level


@dataclass(frozen=True, slots=True)
class Patch:
    """A rectangle of the picture, in pixels."""

    left: int
    top: int
    right: int
    bottom: int

    @property
    def empty(self) -> bool:
        """Whether nothing of it is on the picture."""
        return self.right <= self.left or self.bottom <= self.top

    @property
    def slices(self) -> tuple[slice, slice]:
        """Rows and columns."""
        return slice(self.top, self.bottom), slice(self.left, self.right)

    def grid(self) -> tuple[Field, Field]:
        """The middles of its pixels."""
        xs = np.arange(self.left, self.right, dtype=np.float32) + np.float32(0.5)
        ys = np.arange(self.top, self.bottom, dtype=np.float32) + np.float32(0.5)
        x, y = np.meshgrid(xs, ys)
        return x, y


@dataclass(slots=True)
class Picture:
    """Pixels in linear light, ``FINER`` times finer than they will be kept."""

    camera: Camera
    sun: Sun
    pixels: Field = field(init=False)

    def __post_init__(self) -> None:
        """Starts in the dark."""
        wide, high = self.camera.pixels
        self.pixels = np.zeros((high, wide, 3), dtype=np.float32)

    def patch(self, seen: Vector, margin: float) -> Patch:
        """The rectangle round some pixels, cut to the picture."""
        wide, high = self.camera.pixels
        low, top = np.floor(seen.min(axis=0) - margin), np.ceil(seen.max(axis=0) + margin)
        return Patch(max(0, int(low[0])), max(0, int(low[1])), min(wide, int(top[0])), min(high, int(top[1])))

    def lay(self, patch: Patch, colour: Field, cover: Field) -> None:
        """Paint over a patch where ``cover`` says so."""
        rows, columns = patch.slices
        under = self.pixels[rows, columns]
        for channel in range(3):
            under[..., channel] += (colour[..., channel] - under[..., channel]) * cover

    def shade(self, patch: Patch, depth: Field) -> None:
        """Darken a patch; ``depth`` 1 is full shadow."""
        rows, columns = patch.slices
        under = self.pixels[rows, columns]
        for channel, share in enumerate(SHADE):
            under[..., channel] *= 1 - share * depth

    def cast(
        self,
        corners: Vector,
        onto: Frame,
        strength: float = 1.0,
        cover: Callable[[Patch], Field] | None = None,
    ) -> None:
        """The shadow of a flat thing on a plane, or where ``cover`` says that the plane is.

        Its outline is let fall along rays from all over the light, so that the
        edge grows softer the higher the thing stands. To that comes the dimness
        of a narrow gap, where little of the sky is seen.
        """
        height = np.maximum((corners - onto.origin) @ onto.normal, 0)[:, None]
        scale = self.camera.scale_at(corners.mean(axis=0))
        blur = scale * (float(height.mean()) + 0.7) * 0.9
        straight = self.camera.seen(corners - height * onto.normal)
        falls = [self.camera.seen(fall) for fall in self._falls(corners, height, onto.normal)]
        patch = self.patch(np.vstack((straight, *falls)), 3 * blur + 4)
        if patch.empty:
            return
        skyless = _filled(patch, straight).filter(ImageFilter.GaussianBlur(blur / FINER))
        depth = np.float32(0.3) * _open(skyless)
        if falls:
            sunless = mean([_filled(patch, fall) for fall in falls])
            depth = depth + np.float32(0.8) * softened(sunless, 0.12 * scale)
        shadow = grown(np.minimum(depth, 1) * np.float32(strength), patch)
        self.shade(patch, shadow if cover is None else shadow * cover(patch))

    def cast_block(self, corners: Vector, onto: Frame, strength: float = 1.0) -> None:
        """The shadow of a solid thing: of the hull of its corners, for every ray."""
        height = np.maximum((corners - onto.origin) @ onto.normal, 0)[:, None]
        scale = self.camera.scale_at(corners.mean(axis=0))
        foot = self.camera.seen(corners - height * onto.normal)
        falls = [self.camera.seen(fall) for fall in self._falls(corners, height, onto.normal)]
        blur = 1.6 * scale
        patch = self.patch(np.vstack((foot, *falls)), 3 * blur + 4)
        if patch.empty:
            return
        skyless = softened(_filled(patch, hull(foot)), 2 * blur)
        sunless = softened(mean([_filled(patch, hull(fall)) for fall in falls]), 0.2 * scale)
        depth = np.minimum(np.float32(0.5) * skyless + np.float32(0.8) * sunless, 1)
        self.shade(patch, grown(depth * np.float32(strength), patch))

    def _falls(self, corners: Vector, height: Vector, normal: Vector) -> list[Vector]:
        """Where the corners' shadows are, ray by ray; none on a plane that the light does not reach."""
        rays = [(ray, float(ray @ normal)) for ray in self.sun.rays()]
        return [corners - height * (ray / reach) for ray, reach in rays if reach > 0.05]


def hull(points: Vector) -> Vector:
    """The convex outline of some points of a plane (Andrew's monotone chain)."""
    ordered = sorted(map(tuple, points.tolist()))
    halves = []
    for run in (ordered, ordered[::-1]):
        half: list[tuple[float, ...]] = []
        for point in run:
            while len(half) > 1 and _left_turn(half[-2], half[-1], point) <= 0:
                half.pop()
            half.append(point)
        halves += half[:-1]
    return np.array(halves)


def _left_turn(a: tuple[float, ...], b: tuple[float, ...], c: tuple[float, ...]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _filled(patch: Patch, corners: Vector) -> Image.Image:
    """The inside of an outline over a patch, at half the fineness."""
    size = ((patch.right - patch.left) // FINER + 1, (patch.bottom - patch.top) // FINER + 1)
    image = Image.new("L", size, 0)
    moved = [((x - patch.left) / FINER, (y - patch.top) / FINER) for x, y in corners]
    ImageDraw.Draw(image).polygon(moved, fill=255, outline=255)
    return image


def mean(images: list[Image.Image]) -> Image.Image:
    total = sum(np.asarray(image, dtype=np.float32) for image in images)
    return Image.fromarray((np.asarray(total) / len(images)).astype(np.uint8))


def softened(image: Image.Image, blur: float) -> Field:
    return _open(image.filter(ImageFilter.GaussianBlur(max(0.8, blur / FINER))))


def _open(image: Image.Image) -> Field:
    return np.asarray(image, dtype=np.float32) / np.float32(255)


def grown(depth: Field, patch: Patch) -> Field:
    """Back to the full fineness."""
    size = (patch.right - patch.left, patch.bottom - patch.top)
    # The half-fine grid covers a whole number of its own cells, which may reach past the patch.
    whole = Image.fromarray(depth).resize(
        (depth.shape[1] * FINER, depth.shape[0] * FINER), Image.Resampling.BILINEAR
    )
    return np.asarray(whole, dtype=np.float32)[: size[1], : size[0]]
