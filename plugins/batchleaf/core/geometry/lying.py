"""Where every part of a make lies: on which face, how far from its edges, in which order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from batchleaf.core.geometry.panels import Panel, default_face, panels_of, round_of
from batchleaf.facts import Part, Project
from batchleaf.facts.spots import Face, Spot
from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect


@dataclass(frozen=True, slots=True)
class Lying:
    """One copy of a part at its place.

    ``rect`` is on its face, from the top left as it is seen; ``on``: the index of the
    copy that it lies on, ``None`` where that is the face itself. ``behind``: the index
    of one that it is tucked under.
    """

    part: Part
    copy: int
    panel: Panel
    rect: Rect
    spot: Spot
    on: int | None
    behind: int | None = None


@dataclass(frozen=True, slots=True)
class MadeUp:
    """One make put together: its faces, and all that lies on them in order of sticking.

    ``bases``: what carries all others, of a box with its lid. ``lost``: parts of which a
    place names a face, a panel or a part that is not there.
    """

    bases: tuple[Part, ...]
    panels: tuple[Panel, ...]
    lying: tuple[Lying, ...]
    lost: tuple[tuple[Part, Spot], ...]

    def on(self, panel: Panel) -> tuple[Lying, ...]:
        """What lies on a face, the lowest first: what is tucked under another comes before it."""
        return tuple(self.lying[i] for i in self.order_on(panel))

    def order_on(self, panel: Panel) -> tuple[int, ...]:
        """The indices of what lies on a face, the lowest first."""
        return tuple(i for i in self.order if self.lying[i].panel == panel)

    @property
    def order(self) -> tuple[int, ...]:
        """The indices of all that lies there, the lowest first on each face."""
        return tuple(_lowest_first(self.lying))


def put_together(project: Project) -> MadeUp | None:
    """One make of a batch; ``None`` where its record names no base."""
    bases = [part for part in project.parts if not part.below]
    if not bases or bases[0].letter != "A":
        return None
    made = _Maker(bases)
    for part in project.parts:
        if part.below:
            made.put(part)
    return MadeUp(tuple(bases), made.panels, tuple(made.lying), tuple(made.lost))


class _Maker:
    """What lies there so far."""

    def __init__(self, bases: Sequence[Part]) -> None:
        self._default = {
            part.letter: default_face(part, is_lid=number > 0) for number, part in enumerate(bases)
        }
        self.panels = tuple(panel for part in bases for panel in (*panels_of(part), round_of(part)))
        self.lying: list[Lying] = []
        self.lost: list[tuple[Part, Spot]] = []

    def put(self, part: Part) -> None:
        """Every copy of a part at its place."""
        for copy, (spot, carriers) in enumerate(self._places(part)):
            found = self._carrier(part, spot, carriers)
            if found is None:
                self.lost.append((part, spot))
                continue
            panel, on, area = found
            behind = self._last_of(spot.behind, panel) if spot.behind else None
            if spot.behind and behind is None:
                self.lost.append((part, spot))
                continue
            self.lying.append(
                Lying(part, copy, panel, _at(area, _turned(part, spot), spot), spot, on, behind)
            )

    def _places(self, part: Part) -> Iterator[tuple[Spot, int]]:
        """A spot for each copy, and which copy of what carries it.

        Where no place is written, copies go one on each of so many carriers or panels, else
        they are spread over the face.
        """
        carriers = self._copies(part.below)
        panels = [panel for panel in self.panels if panel.base == part.below and panel.face is Face.PANEL]
        if part.spots:
            for number in range(max(part.each, len(part.spots))):
                yield part.spots[number % len(part.spots)], number % max(len(carriers), 1)
        elif part.each == 1:
            yield Spot(), 0
        elif len(carriers) == part.each:
            yield from ((Spot(), number) for number in range(part.each))
        elif len(panels) == part.each:
            yield from ((Spot(face=Face.PANEL, panel=number + 1), 0) for number in range(part.each))
        else:
            yield from ((spot, 0) for spot in self._spread(part))

    def _copies(self, letter: str) -> list[int]:
        return [number for number, one in enumerate(self.lying) if one.part.letter == letter]

    def _carrier(self, part: Part, spot: Spot, copy: int) -> tuple[Panel, int | None, Rect] | None:
        """The face, the copy that carries it there, and the area it is placed on."""
        carriers = self._copies(part.below)
        if carriers and spot.face is None:
            on = carriers[min(copy, len(carriers) - 1)]
            return self.lying[on].panel, on, self.lying[on].rect
        base = part.below if not carriers else self.panels[0].base
        face = spot.face or self._default.get(base)
        number = spot.panel or (1 if face in (Face.PANEL, Face.BACK_OF_PANEL) else 0)
        panel = next((one for one in self.panels if one.key == (base, face, number)), None)
        if panel is None:
            return None
        return panel, None, Rect(Fraction(0), Fraction(0), panel.size.width, panel.size.height)

    def _last_of(self, letter: str, panel: Panel) -> int | None:
        there = [number for number in self._copies(letter) if self.lying[number].panel == panel]
        return there[-1] if there else None

    def _spread(self, part: Part) -> Iterator[Spot]:
        """As many columns and rows as leave the widest gaps, the same between all and at the edges."""
        found = self._carrier(part, Spot(), 0)
        if found is None:
            yield from [Spot()] * part.each
            return
        area = found[2]
        columns = max(range(1, part.each + 1), key=lambda n: (_gap(area, part.size, n, part.each), -n))
        rows = -(-part.each // columns)
        across = (area.width - columns * part.size.width) / (columns + 1)
        down = (area.height - rows * part.size.height) / (rows + 1)
        for row, column in list(product(range(rows), range(columns)))[: part.each]:
            yield Spot(
                across=Fraction(0),
                down=Fraction(0),
                right=across + column * (across + part.size.width),
                lower=down + row * (down + part.size.height),
            )


def _gap(area: Rect, size: Size, columns: int, count: int) -> Fraction:
    rows = -(-count // columns)
    return min(
        (area.width - columns * size.width) / (columns + 1), (area.height - rows * size.height) / (rows + 1)
    )


def _turned(part: Part, spot: Spot) -> Size:
    """Its size as it lies; of a base that lies on another, folded."""
    size = part.folded_size
    return size.turned if spot.quarter_turns % 2 else size


def _at(area: Rect, size: Size, spot: Spot) -> Rect:
    x = area.x + (area.width - size.width) * spot.across + spot.right
    y = area.y + (area.height - size.height) * spot.down + spot.lower
    return Rect(x, y, size.width, size.height)


def _lowest_first(lying: Sequence[Lying]) -> list[int]:
    """In order of sticking; what is tucked under another goes just below it, and all it carries with it."""
    order: list[int] = []
    tucked: set[int] = set()
    for index, one in enumerate(lying):
        if one.behind is not None:
            order.insert(order.index(one.behind), index)
            tucked.add(index)
        elif one.on in tucked:
            carried = {one.on, *(i for i in tucked if lying[i].on == one.on)}
            order.insert(max(order.index(i) for i in carried) + 1, index)
            tucked.add(index)
        else:
            order.append(index)
    return order
