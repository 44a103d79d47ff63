"""What the parts of a batch leave to be understood."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from batchleaf.facts import Origin, Part, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.measure.spelling import spell_size
from batchleaf.records.cut_to_shape import spell_shape
from batchleaf.records.explaining.inferred import DEFAULT, Inferred, Lettered, Understood
from batchleaf.records.explaining.sticking import stick_in_full, why_stuck
from batchleaf.records.grammar import read_part_key
from batchleaf.records.made_of import PartLine
from batchleaf.records.nodes import Mapping as Group
from batchleaf.records.nodes import Node, Plain, child
from batchleaf.records.papers import role_like
from batchleaf.records.parts import BASE, LID
from batchleaf.records.spots import spell_spots
from batchleaf.records.written import PartWritten

FROM_DESIGN: Final = "from the design"
AS_WRITTEN: Final = "as written"
_AS: Final = "as "


def of_parts(
    node: Node,
    lines: Sequence[PartLine],
    parts: Sequence[Part],
    roles: Mapping[str, str],
    supplies: Mapping[str, Supply],
    unit: Unit,
) -> Iterator[Understood]:
    """All that the parts mean besides what they say.

    ``parts`` begins with the base and its lid, which have no ``lines``; ``roles``
    are those of the batch, ``unit`` its own.
    """
    of_base = parts[: len(parts) - len(lines)]
    sources = {part.letter: _named(part, LID if part.name == LID else BASE, roles) for part in of_base}
    for line, part in zip(lines, parts[len(of_base) :], strict=True):
        source = sources[part.letter] = _source(line, part, roles, sources)
        full = _in_full(line.written, part, source, unit) | stick_in_full(line.written, part, supplies)
        stuck = why_stuck(part, supplies, unit)
        if line.own:
            yield from _own(node, line, part, full, stuck)
        else:
            path = ("parts", f"{part.letter} {part.name}")
            for key, value in full.items():
                told = stuck if key == "stick" and not line.written.stick else FROM_DESIGN
                yield Inferred(path, key, value, told)


def _named(part: Part, name: str, roles: Mapping[str, str]) -> tuple[str, str]:
    role = role_like(name, roles) or role_like(BASE, roles) or ", ".join(part.papers)
    return ("ready" if part.origin is Origin.READY else "paper"), role


def _source(
    line: PartLine, part: Part, roles: Mapping[str, str], sources: Mapping[str, tuple[str, str]]
) -> tuple[str, str]:
    """The key and the text that name what a part is made from, leaning on no other part."""
    if line.written.ready:
        return "ready", line.written.ready
    paper = line.written.paper
    if paper is None:
        return _named(part, line.name, roles)
    return sources[paper.removeprefix(_AS).strip()] if paper.startswith(_AS) else ("paper", paper)


def _in_full(written: PartWritten, part: Part, source: tuple[str, str], unit: Unit) -> dict[str, Plain]:
    """Every key of a part."""
    full: dict[str, Plain] = {
        "size": spell_size(part.size, unit),
        "on": part.below,
        "at": spell_spots(part.spots, unit),
        source[0]: source[1],
        "side": part.side.value,
        "each": str(part.each),
        "extra": str(part.extra),
        "turn": written.turn,
        "shape": spell_shape(part.shape, unit),
        "oversize": written.oversize or "",
        "before": written.before or "",
        "stamp": written.stamp or "",
        "die": written.die or "",
    }
    return {key: value for key, value in full.items() if value}


def _own(
    node: Node, line: PartLine, part: Part, full: Mapping[str, Plain], stuck: str
) -> Iterator[Understood]:
    """``stuck``: why the part is stuck with what it is."""
    path, written = ("parts", line.key), line.written
    if not read_part_key(line.key)[0]:
        yield Lettered(path, f"{part.letter} {part.name}", "the next letter that is free")
    group = child(child(node, "parts") or node, line.key)
    said = written.model_fields_set if isinstance(group, Group) else frozenset[str]()
    for key, value in full.items():
        why, instead = (stuck, "") if key == "stick" and not written.stick else _why(key, written)
        if key not in said or instead == key:
            yield Inferred(path, key, value, why, instead if instead in said and instead != key else "")


def _why(key: str, written: PartWritten) -> tuple[str, str]:
    """Why a value holds, and the key that says so now in another way."""
    match key:
        case "size" if written.border:
            return "so much smaller than the part below", "border"
        case "size" if written.size is None:
            return "its own size in the drawer", ""
        case "on" if written.on is None:
            return "the part before", ""
        case "paper" | "ready" if written.paper and written.paper.startswith(_AS):
            return "the same as that part", "paper"
        case "paper" if written.paper is None:
            return "the role of that name", ""
    return (AS_WRITTEN if key in written.model_fields_set else DEFAULT), ""
