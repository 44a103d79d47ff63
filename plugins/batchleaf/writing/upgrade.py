"""Old records in today's format: a list of steps, each of which changes what one format had otherwise.

A step edits the text in places, so that remarks, the order of keys and the ends of lines stay.
"""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.records.formats import FIRST, LATEST, format_of, wrong_format
from batchleaf.records.nodes import Mapping, Scalar, child
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.edits import Edit, Put, Rename, edited


class CannotUpgradeError(ValueError):
    """Why a record stays as it is, as a sentence; ``line`` where the reason stands."""

    def __init__(self, sentence: str, line: int = 1) -> None:
        super().__init__(sentence)
        self.line = line


@dataclass(frozen=True, slots=True)
class Step:
    """What records of ``kind`` had otherwise up to the format ``written_in``: in words, and as edits."""

    written_in: int
    kind: str
    told: str
    edits: Callable[[Mapping], Iterator[Edit]]


def _turn(record: Mapping) -> Iterator[Edit]:
    """``turn: no`` said that no part may be turned on a paper; now its side says how the pattern lies."""
    supplies = child(record, "supplies")
    for name, supply in supplies.entries if isinstance(supplies, Mapping) else ():
        turn = child(supply, "turn")
        if isinstance(supply, Mapping) and isinstance(turn, Scalar) and child(supply, "front") is None:
            way = {"no": "one-way", "yes": "any-way"}.get(turn.text)
            if way:
                yield Put(("supplies", name.text), "turn", way)
                yield Rename(("supplies", name.text, "turn"), "front")


STEPS: Final = (
    Step(FIRST, "inventory", "“turn” of a supply is now “front”, which says how its pattern lies", _turn),
)
"""The oldest first. The first one belongs to drafts of format 1, which had the key before it was settled."""


@dataclass(frozen=True, slots=True)
class Upgraded:
    """The record as it is to be, and what was changed in it, in words; nothing where it stays."""

    record: bytes
    told: tuple[str, ...]


def upgraded(record: bytes, kind: str, steps: Sequence[Step] = STEPS, latest: int = LATEST) -> Upgraded:
    """``record`` in format ``latest``. Raises :class:`CannotUpgradeError`."""
    mark = BOM_UTF8 if record.startswith(BOM_UTF8) else b""
    root = _read(record)
    number = format_of(root)
    if number is None or number > latest:
        said = child(root, "format")
        text = said.text.strip() if isinstance(said, Scalar) else ""
        raise CannotUpgradeError(wrong_format(text), said.place.line if said else 1)
    text, told = record.removeprefix(mark).decode(), list[str]()
    for step in steps:
        if step.kind == kind and number <= step.written_in:
            edits = list(step.edits(root))
            if edits:
                text, told = edited(text, root, edits), [*told, step.told]
                root = _read(text.encode())
    if number != latest:
        text = edited(text, root, [Put((), "format", str(latest))])
        told.append(f"its format is {latest}")
    return Upgraded(mark + text.encode() if told else record, tuple(told))


def _read(record: bytes) -> Mapping:
    root, problems = read_yaml(record, "")
    if problems:
        raise CannotUpgradeError(problems[0].sentence, problems[0].place.line)
    if not isinstance(root, Mapping):
        raise CannotUpgradeError("it is not written as keys with values")
    return root
