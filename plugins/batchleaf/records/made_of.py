"""What one make is, as written: in a batch, in a design, or in a batch that varies a design."""

from __future__ import annotations

import string
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.facts import Place
from batchleaf.measure.lengths import Unit
from batchleaf.records.grammar import read_part_key
from batchleaf.records.nodes import Mapping, Node, child, key_place, place_of
from batchleaf.records.report import Report
from batchleaf.records.written import DesignWritten, PartWritten, ProjectWritten

BASE_LETTER: Final = "A"
ANY_LETTER: Final = ""
"""Among lost letters: a part was lost, and nobody knows which letter it would have had."""


@dataclass(frozen=True, slots=True)
class Line:
    """A text, where it stands, and the unit of the lengths in it. ``own``: not from a design."""

    text: str
    place: Place
    unit: Unit
    own: bool = True


@dataclass(frozen=True, slots=True)
class PartLine:
    """One part as written. ``told_at``: where a batch is told of what a part of its design does there.

    ``mended``: its shape was faulty, so that what is missing in it is no problem of its own.
    """

    key: str
    letter: str
    written: PartWritten
    node: Node
    unit: Unit
    mended: bool
    told_at: Place | None = None

    @property
    def name(self) -> str:
        return read_part_key(self.key)[1]

    @property
    def own(self) -> bool:
        return self.told_at is None

    @property
    def place(self) -> Place:
        """Where its letter and name stand."""
        return self.told_at or key_place(self.node, ("parts", self.key))

    def at(self, key: str) -> Place:
        """Where what it says under ``key`` stands."""
        return self.told_at or place_of(self.node, ("parts", self.key, key))


@dataclass(frozen=True, slots=True)
class MadeOf:
    """The lines of a record that say what one make is. ``lost``: letters of parts of a faulty shape."""

    thing: Line | None
    base: Line | None
    parts: tuple[PartLine, ...]
    stick: Line | None
    supplies: tuple[Line, ...]
    packing: tuple[Line, ...]
    collate: Line | None
    tools: tuple[Line, ...]
    bench: tuple[Line, ...]
    steps: tuple[Line, ...]
    credit: Line | None
    lost: frozenset[str] = frozenset()


def made_of(node: Node, written: ProjectWritten | DesignWritten, unit: Unit) -> MadeOf:
    """What a record says of one make; its parts have the letters that are written, and no others yet."""

    def line(key: str, text: str | None) -> Line | None:
        return None if text is None else Line(text, place_of(node, (key,)), unit)

    return MadeOf(
        thing=line("thing", written.thing),
        base=line("base", written.base),
        parts=tuple(_part(key, part, node, unit) for key, part in written.parts.items()),
        stick=line("stick", written.stick),
        supplies=lines_in(node, "supplies", written.supplies, unit),
        packing=lines_in(node, "packing", written.packing, unit),
        collate=line("collate", written.collate),
        tools=lines_in(node, "tools", written.tools, unit),
        bench=lines_in(node, "bench", written.bench, unit),
        steps=lines_in(node, "steps", written.steps, unit),
        credit=line("credit", written.credit),
        lost=frozenset(_lost(node, written)),
    )


def lines_in(node: Node, key: str, texts: Sequence[str], unit: Unit) -> tuple[Line, ...]:
    """The items of a list of the record, each with its place."""
    return tuple(Line(text, place_of(node, (key, i)), unit) for i, text in enumerate(texts))


def _part(key: str, written: PartWritten, node: Node, unit: Unit) -> PartLine:
    said = child(child(node, "parts") or node, key)
    keys = {entry.text for entry, _ in said.entries} if isinstance(said, Mapping) else None
    mended = keys is not None and keys != written.model_fields_set
    return PartLine(key, read_part_key(key)[0], written, node, unit, mended)


def _lost(node: Node, written: ProjectWritten | DesignWritten) -> Iterator[str]:
    """The letters of the parts that have fallen out of a record of a faulty shape."""
    parts = child(node, "parts")
    if parts is not None and not isinstance(parts, Mapping):
        yield ANY_LETTER
    for key, _ in parts.entries if isinstance(parts, Mapping) else ():
        if key.text not in written.parts:
            yield read_part_key(key.text)[0]


def varied(design: MadeOf, own: MadeOf, told_at: Place) -> MadeOf:
    """The design with what a batch says otherwise; its lines are told of where the batch names it."""
    return MadeOf(
        thing=own.thing or _of_design(design.thing, told_at),
        base=own.base or _of_design(design.base, told_at),
        parts=_varied_parts(design.parts, own.parts, told_at),
        stick=own.stick or _of_design(design.stick, told_at),
        supplies=_varied_lines(design.supplies, own.supplies, told_at),
        packing=_varied_lines(design.packing, own.packing, told_at),
        collate=own.collate or _of_design(design.collate, told_at),
        tools=(*_all_of_design(design.tools, told_at), *own.tools),
        bench=(*_all_of_design(design.bench, told_at), *own.bench),
        steps=own.steps or _all_of_design(design.steps, told_at),
        credit=own.credit or _of_design(design.credit, told_at),
        lost=own.lost,
    )


def supply_in(line: Line) -> str:
    """The first word of a line, which names a supply."""
    return next(iter(line.text.split()), "")


def _varied_lines(design: Sequence[Line], own: Sequence[Line], told_at: Place) -> tuple[Line, ...]:
    """The lines of the design whose supply the batch does not name itself; then the batch's own."""
    named = {supply_in(line) for line in own}
    return (*_all_of_design((line for line in design if supply_in(line) not in named), told_at), *own)


def _of_design(line: Line | None, told_at: Place) -> Line | None:
    return line and replace(line, place=told_at, own=False)


def _all_of_design(lines: Iterator[Line] | tuple[Line, ...], told_at: Place) -> tuple[Line, ...]:
    return tuple(replace(line, place=told_at, own=False) for line in lines)


def _varied_parts(
    design: Sequence[PartLine], own: Sequence[PartLine], told_at: Place
) -> tuple[PartLine, ...]:
    """Each part of the design, or the batch's own with the same letter or name; then the batch's others."""
    rest = list(own)
    parts: list[PartLine] = []
    for part in design:
        instead = _same(part, rest)
        if instead:
            rest.remove(instead)
            parts.append(replace(instead, letter=instead.letter or part.letter))
        else:
            parts.append(replace(part, told_at=told_at))
    return (*parts, *rest)


def _same(part: PartLine, own: Sequence[PartLine]) -> PartLine | None:
    by_letter = (one for one in own if one.letter == part.letter)
    by_name = (one for one in own if one.name.casefold() == part.name.casefold())
    return next(by_letter, None) or next(by_name, None)


def lid_letter(parts: Sequence[PartLine]) -> str:
    """The letter of a lid: L, or where a part has that the first that is free."""
    taken = {BASE_LETTER, *(part.letter for part in parts)}
    return next((letter for letter in f"L{string.ascii_uppercase}" if letter not in taken), "")


def lettered(parts: Sequence[PartLine], of_base: Collection[str], report: Report) -> tuple[PartLine, ...]:
    """The parts with a letter each: the one written, else the next that is free."""
    seen = set(of_base)
    taken = seen | {part.letter for part in parts}
    free = (letter for letter in string.ascii_uppercase if letter not in taken)
    done: list[PartLine] = []
    for part in parts:
        letter = part.letter or next(free, "")
        if not letter:
            report.error(part.place, "there are more parts here than letters; one make has at most 26")
        elif letter in seen:
            report.error(part.place, f"the letter {letter} is taken by another part")
        seen |= {letter} - {""}
        done.append(replace(part, letter=letter))
    return tuple(done)
