"""One make as its record has it: the faces of its base, and on each the parts in their places, in mm."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from typing import Final

from outlines import Outline, shaped
from papers import Paper, paper_named
from pieces import Stamp
from recorded import Recorded
from stamps import stamped

from batchleaf.facts import Fold, Part

SHEET: Final = 0.45
"""How far a glued layer stands off: card, glue and a little air."""
FOAM: Final = 1.4
DARK_INK: Final = "#3a3733"

Shape = Callable[[float, float], Outline]
"""The outline of a part from its width and height."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a part sits: so far from the edges of what it lies on, centred where nothing is said.

    ``on``: the letter of what it is measured from, where the record names none. ``panel``:
    which face of the base, from the left.
    """

    left: float | None = None
    top: float | None = None
    right: float | None = None
    foot: float | None = None
    on: str = ""
    panel: int | None = None

    def corner(self, area: Area, size: tuple[float, float]) -> tuple[float, float]:
        """The upper left corner of a part on an area."""
        x = _along(self.left, self.right, area.width, size[0])
        y = _along(self.top, self.foot, area.height, size[1])
        return area.x + x, area.y + y


def _along(near: float | None, far: float | None, whole: float, size: float) -> float:
    if near is not None:
        return near
    return (whole - size) / 2 if far is None else whole - size - far


@dataclass(frozen=True, slots=True)
class Lies:
    """What the record of a batch does not hold yet.

    ``spots``: letter → places of its copies. ``foam``: the letters of parts on foam.
    ``first``: the letters of parts that are stuck before the others. ``shapes``:
    letter → outline; the base's is A.
    """

    spots: Mapping[str, tuple[Spot, ...]] = field(default_factory=dict)
    foam: str = ""
    first: str = ""
    shapes: Mapping[str, Shape] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle on a face of the base."""

    panel: int
    x: float
    y: float
    width: float
    height: float

    def meets(self, other: Area) -> bool:
        """Whether they lie over each other anywhere."""
        return (
            self.panel == other.panel
            and self.x < other.x + other.width
            and other.x < self.x + self.width
            and self.y < other.y + other.height
            and other.y < self.y + self.height
        )


@dataclass(frozen=True, slots=True)
class Layer:
    """A part in its place; ``under`` and ``lift``: how high what it lies on is, and its own face."""

    letter: str
    area: Area
    paper: Paper
    outline: Outline
    under: float
    lift: float
    stamps: tuple[Stamp, ...] = ()


@dataclass(frozen=True, slots=True)
class Batch:
    """A batch as its pictures need it: its record, and how its parts lie."""

    recorded: Recorded
    lies: Lies

    @property
    def panels(self) -> tuple[tuple[float, float], ...]:
        """The faces of the base from the left; of a card the front and the inside of its back."""
        base = self.lid or self.recorded.base
        if base.fold not in (Fold.GATE, Fold.ACCORDION):
            return (_floats(base.folded_size.width, base.folded_size.height),) * 2
        edges = [Fraction(0), *(score.at for score in base.scores if score.runs_down), base.size.width]
        return tuple(_floats(b - a, base.size.height) for a, b in pairwise(edges))

    @property
    def size(self) -> tuple[float, float]:
        """The finished face."""
        finished = self.recorded.project.finished_size or self.recorded.base.folded_size
        return _floats(finished.width, finished.height)

    @property
    def lid(self) -> Part | None:
        """The lid of a box."""
        boxes = [part for part in self.recorded.project.parts if part.fold is Fold.BOX]
        return boxes[1] if len(boxes) > 1 else None

    @property
    def count(self) -> int:
        """How many there are to be put on the table."""
        return self.recorded.project.finished

    @property
    def fold(self) -> Fold:
        """How the base is folded."""
        return self.recorded.base.fold

    def outline(self, panel: int = 0) -> Outline:
        """A face's edge."""
        return self._outline(self.recorded.base, *self.panels[panel])

    def _outline(self, part: Part, width: float, height: float) -> Outline:
        """As its batch says in :data:`HOW_THEY_LIE`, else as its record does."""
        by_hand = self.lies.shapes.get(part.letter)
        return by_hand(width, height) if by_hand else shaped(part, width, height)

    def paper(self, letter: str, number: int = 0) -> Paper:
        """The paper of a part's first copy on a make."""
        part = self.recorded.part(letter)
        return self._papers(part, number)[0]

    def layers(self, number: int) -> tuple[Layer, ...]:
        """All that sits on the base of the make with this number, lowest first.

        Raises :class:`ValueError` for more makes than were begun: no picture shows any.
        """
        if number >= self.recorded.project.begun:
            raise ValueError(f"{self.recorded.project.slug} has no make {number + 1}")
        placed: list[Layer] = []
        bases = {self.recorded.base.letter, *([self.lid.letter] if self.lid else [])}
        parts = sorted(self.recorded.project.parts, key=lambda part: part.letter not in self.lies.first)
        for part in parts:
            if part.letter not in bases:
                placed += self._copies(part, number, placed, bases)
        return tuple(placed)

    def loose(self, letter: str, number: int = 0) -> Layer:
        """A part before it is stuck, its corner at zero."""
        part = self.recorded.part(letter)
        width, height = part_size(part)
        return self._layer(part, Area(0, 0, 0, width, height), number, 0, [])

    def _copies(self, part: Part, number: int, placed: list[Layer], bases: set[str]) -> list[Layer]:
        made: list[Layer] = []
        spots = self.lies.spots.get(part.letter, (Spot(),) * part.each)
        for copy, spot in enumerate(spots):
            below = self._below(spot, spot.on or part.below, placed, bases)
            size = part_size(part)
            area = Area(below.panel, *spot.corner(below, size), *size)
            made.append(self._layer(part, area, number, copy, [*placed, *made]))
        return made

    def _below(self, spot: Spot, letter: str, placed: list[Layer], bases: set[str]) -> Area:
        if spot.panel is None and letter not in bases:
            for layer in placed:
                if layer.letter == letter:
                    return layer.area
        panel = spot.panel or 0
        return Area(panel, 0, 0, *self.panels[panel])

    def _layer(self, part: Part, area: Area, number: int, copy: int, placed: list[Layer]) -> Layer:
        under = max((layer.lift for layer in placed if layer.area.meets(area)), default=0.0)
        papers = self._papers(part, number)
        return Layer(
            part.letter,
            area,
            papers[copy % len(papers)],
            self._outline(part, area.width, area.height),
            under,
            under + (FOAM if part.letter in self.lies.foam else SHEET),
            self._stamps(part, area, number),
        )

    def _papers(self, part: Part, number: int) -> list[Paper]:
        supplies = self.recorded.supplies
        return [paper_named(name, supplies, part.side) for name in self.recorded.papers_of(part, number)]

    def _stamps(self, part: Part, area: Area, number: int) -> tuple[Stamp, ...]:
        image = self.recorded.image(part, number)
        if image is None:
            return ()
        ink = self.recorded.used("embossing powder") or self.recorded.used("ink")
        size = _floats(image.size.width, image.size.height) if image.size else None
        room = size or (area.width * 0.8, area.height * 0.8)
        return (
            stamped(image.words, ink.colour if ink else DARK_INK, (area.width / 2, area.height / 2), room),
        )


def part_size(part: Part) -> tuple[float, float]:
    """The face that a part shows, in mm."""
    return _floats(part.folded_size.width, part.folded_size.height)


def _floats(width: Fraction, height: Fraction) -> tuple[float, float]:
    return float(width), float(height)
