"""Room to write and room to stamp, as a page tells them and its drawings show them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from batchleaf.core.geometry.aspects import Aspect
from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.core.geometry.panels import Panel
from batchleaf.core.geometry.room import RoomToWrite, plain_parts, room_to_stamp, room_to_write
from batchleaf.facts import Supply
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.room import Room
from batchleaf.views.lying_in_words import ON_FACE, in_from_edges
from batchleaf.views.words import NBSP, listed

Supplies = Mapping[str, Supply]


def rooms_in(aspect: Aspect, made: MadeUp, supplies: Supplies, unit: Unit) -> tuple[Room, ...]:
    """What is drawn of them where it looks at us; room to stamp only if it is less than the part."""
    leaves = {leaf.panel.key: leaf for leaf in aspect.nearest.leaves}
    found = [
        Room(leaves[panel.key].placed(rect), said) for panel, rect, said in _drawn(made, supplies, unit)
        if panel.key in leaves
    ]  # fmt: skip
    return tuple(found)


def _drawn(made: MadeUp, supplies: Supplies, unit: Unit) -> Iterator[tuple[Panel, Rect, tuple[str, ...]]]:
    if write := room_to_write(made, plain_parts(made, supplies)):
        yield write.panel, write.rect, ("room to write", show_size(write.rect.size, unit))
    for lying in stamped(made):
        room = room_to_stamp(made, lying)
        if room is not None and room.rect != lying.rect:
            yield lying.panel, room.rect, ()


def stamped(made: MadeUp) -> list[Lying]:
    """Every copy that gets a stamp."""
    return [one for one in made.lying if one.part.stamps]


def rooms_in_words(made: MadeUp, supplies: Supplies, unit: Unit) -> tuple[tuple[str, str], ...]:
    """What each room is for, and where and how large it is."""
    write = room_to_write(made, plain_parts(made, supplies))
    told = [("Room to write", _to_write(made, write, unit))] if write else []
    alike: dict[str, list[str]] = {}
    for one in stamped(made):
        alike.setdefault(_to_stamp(made, one, unit), []).append(one.part.letter)
    for words, letters in alike.items():
        told.append((f"Room to stamp on {listed(list(dict.fromkeys(letters)))}", words))
    return tuple(told)


def _to_write(made: MadeUp, room: RoomToWrite, unit: Unit) -> str:
    where = f"on {room.on.part.letter}, {room.on.part.name}" if room.on else _on_face(made, room.panel)
    area = room.on.rect if room.on else _whole(room.panel.size)
    return f"{_size(room.rect.size, unit)} {where}{_within(room.rect, area, unit)}"


def _on_face(made: MadeUp, panel: Panel) -> str:
    return f"on the {panel.name}" if panel.number else ON_FACE[panel.face]


def _to_stamp(made: MadeUp, lying: Lying, unit: Unit) -> str:
    room = room_to_stamp(made, lying)
    if room is None:
        return "none: nothing of it stays in sight"
    return f"{_size(room.rect.size, unit)}{_within(room.rect, lying.rect, unit)}"


def _within(rect: Rect, area: Rect, unit: Unit) -> str:
    return ", all of it" if rect == area else f", {in_from_edges(rect, area, unit)}"


def _size(size: Size, unit: Unit) -> str:
    return f"{show_size(size, unit)}{NBSP}{unit.word}"


def _whole(size: Size) -> Rect:
    return Rect(Fraction(0), Fraction(0), size.width, size.height)
