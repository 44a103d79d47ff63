"""Where each part of a make lies, and what room stays bare, for programs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from batchleaf.core.geometry.lying import Lying, MadeUp, put_together
from batchleaf.core.geometry.room import RoomToWrite, plain_parts, room_to_stamp, room_to_write
from batchleaf.facts import Project, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect

Json = dict[str, Any]


def lying_json(project: Project, supplies: Mapping[str, Supply]) -> Json:
    """What is known of one make; ``left`` and ``top`` are those of its face. Nothing without a base."""
    made = put_together(project)
    if made is None or not made.lying:
        return {}
    unit = project.unit
    write = room_to_write(made, plain_parts(made, supplies))
    stamp = [_to_stamp(made, one, unit) for one in made.lying if one.part.stamps]
    return {
        "lies": [_lies(made, made.lying[index], unit) for index in made.order],
        **({"room_to_write": _to_write(write, unit)} if write else {}),
        **({"room_to_stamp": stamp} if stamp else {}),
    }


def _lies(made: MadeUp, one: Lying, unit: Unit) -> Json:
    """One copy of a part, the lowest first."""
    on = made.lying[one.on].part.letter if one.on is not None else one.panel.base
    return {"part": one.part.letter, "on": on, "face": one.panel.name, **_rect(one.rect, unit)}


def _to_write(room: RoomToWrite, unit: Unit) -> Json:
    on = room.on.part.letter if room.on else room.panel.base
    return {"on": on, "face": room.panel.name, **_rect(room.rect, unit)}


def _to_stamp(made: MadeUp, one: Lying, unit: Unit) -> Json:
    """One copy of a stamped part; nothing but its letter and face where nothing of it stays in sight."""
    room = room_to_stamp(made, one)
    return {"part": one.part.letter, "face": one.panel.name} | (_rect(room.rect, unit) if room else {})


def _rect(rect: Rect, unit: Unit) -> Json:
    mm = unit.in_mm
    sides = {"left": rect.x, "top": rect.y, "width": rect.width, "height": rect.height}
    return {name: str(side / mm) for name, side in sides.items()}
