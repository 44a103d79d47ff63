"""One picture's batch, table, view, light and composition."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

from camera import Camera
from develop import Exposure
from makes import Batch
from picture import Picture, Sun
from tables import spread

COVER: Final = "cover.jpg"


@dataclass(frozen=True, slots=True)
class Scene:
    """One picture: its file in the batch's folder, its view, and what ``compose`` puts into it."""

    slug: str
    file: str
    table: str
    compose: Callable[[Picture, Batch], None]
    width: float
    pitch: float = 0.0
    target: tuple[float, float] = (0.0, 0.0)
    distance: float = 900.0
    table_turn: float = 0.0
    sun: Sun = field(default_factory=Sun)
    exposure: Exposure = field(default_factory=Exposure)

    def shoot(self, batch: Batch, pixels: tuple[int, int]) -> Picture:
        """The picture before it is developed."""
        camera = Camera(pixels, self.width, self.pitch, self.distance, self.target)
        picture = Picture(camera, self.sun)
        spread(picture, self.table, self.table_turn)
        self.compose(picture, batch)
        return picture
