"""A row of a sheet as a supply."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from batchleaf.facts import Settings, Supply
from batchleaf.measure.errors import MeasureError
from batchleaf.records.known import bare
from batchleaf.records.nodes import Plain
from batchleaf.writing.csv_in.cells import iso_day
from batchleaf.writing.csv_in.said import Said
from batchleaf.writing.slugs import slug_of

COPIED: Final = (
    "unit", "designs", "pack", "mark", "front", "back", "core", "colour", "collection",
    "weight", "thickness", "weighs", "sale", "link", "about",
)  # fmt: skip
"""Keys whose cell is the value as it stands."""


@dataclass(frozen=True, slots=True)
class Usual:
    """What is meant where a sheet does not say it: the shelf, and the day of what is there."""

    kind: str
    date: str


@dataclass(slots=True)
class Names:
    """The names that are taken: in the drawer, and by earlier rows of the sheet."""

    drawer: Mapping[str, Supply]
    tools: frozenset[str]
    rows: dict[str, int] = field(default_factory=dict)

    def there(self, said: Said) -> str:
        """The name in the drawer of what a row speaks of; nothing where it is new."""
        slug, name = slug_for(said), bare(said.get("name"))
        if slug in self.drawer or slug in self.tools:
            return slug
        called_so = (one.slug for one in self.drawer.values() if name and bare(one.name) == name)
        return "" if said.get("supply") else next(called_so, "")

    def take(self, said: Said) -> str:
        """The name of a new supply. Raises :class:`MeasureError` where it has none, or an earlier row's."""
        if not said.get("name") and not said.get("supply"):
            raise MeasureError("no name stands here; write what the supply is called")
        slug = slug_for(said)
        if (first := self.rows.setdefault(slug, said.line)) != said.line:
            raise MeasureError(
                f"line {first} has the name “{slug}” already; give this one another name or short name"
            )
        return slug


def slug_for(said: Said) -> str:
    """The short name that a row gives, or the one that follows from its name."""
    return said.get("supply") or slug_of(said.get("name"))


def supply_in(said: Said, usual: Usual, settings: Settings) -> dict[str, Plain]:
    """The keys of a supply in their usual order. Raises :class:`MeasureError`."""
    kind = said.get("kind") or usual.kind
    if not kind:
        raise MeasureError(
            "no kind stands here, the shelf it belongs on; write it, or say --kind card for all of these"
        )
    size, opening = _size(said), _opening(said, usual, settings)
    grain = said.get("grain").lower()
    return {
        "name": said.get("name") or said.get("supply").replace("-", " "),
        "kind": kind,
        **({"size": size} if size else {}),
        **({"grain": grain} if grain else {}),
        **{key: said.get(key) for key in COPIED if said.get(key)},
        **({"opening": opening} if opening else {}),
    }


def _size(said: Said) -> str:
    if size := said.get("size"):
        return size
    width, height = said.get("width"), said.get("height")
    if bool(width) != bool(height):
        raise MeasureError("one side of a size stands here alone; write width and height, or neither")
    number, _, unit = width.rpartition(" ")
    if number and height.endswith(f" {unit}"):
        return f"{number} x {height}"
    return f"{width} x {height}" if width else ""


def _opening(said: Said, usual: Usual, settings: Settings) -> dict[str, Plain]:
    """What is there already; nothing where there is none of it."""
    amount = said.amount()
    if not amount.strip("0. "):
        if (worth := said.get("worth")).strip("0. "):
            raise MeasureError(f"a worth of {worth} is given, and no amount; write how much there is")
        return {}
    worth = said.priced("worth", settings.currency)
    day = iso_day(said.get("date")) if said.get("date") else usual.date
    return {"date": day, "amount": amount, **({"worth": worth} if worth else {})}
