"""A record's lines by key: each of its keys with what stands below it and the remarks above it.

What commands leave out, take over or add between is whole keys, so that everything
else stays as its maker wrote it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from batchleaf.records.nodes import Mapping, Plain, plain
from batchleaf.records.yaml_text import read_yaml


class CannotPartError(ValueError):
    """Why a record's text cannot be parted, as a sentence."""


@dataclass(frozen=True, slots=True)
class KeyLines:
    """One key of a record: blank lines and remarks ``above`` it, and its ``lines``."""

    key: str
    above: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RecordLines:
    """A record: what stands before its first key, its keys, and what follows the last one.

    All lines together are the text that was read as ``root``, line ends with them.
    """

    head: tuple[str, ...]
    keys: tuple[KeyLines, ...]
    tail: tuple[str, ...]
    root: Mapping

    @property
    def text(self) -> str:
        """The whole record."""
        rows = [row for one in self.keys for row in (*one.above, *one.lines)]
        return "".join([*self.head, *rows, *self.tail])

    @property
    def values(self) -> dict[str, Plain]:
        """What each key says."""
        return {key.text: plain(value) for key, value in self.root.entries}


def record_lines(record: bytes) -> RecordLines:
    """The lines of a record without the mark that may begin it. Raises :class:`CannotPartError`."""
    node, problems = read_yaml(record, "")
    if problems:
        raise CannotPartError(f"line {problems[0].place.line}: {problems[0].sentence}")
    if not isinstance(node, Mapping) or not node.entries:
        raise CannotPartError("it is not written as keys with values")
    starts = [key.place.line - 1 for key, _ in node.entries]
    if any(key.place.column != 1 for key, _ in node.entries) or len(set(starts)) < len(starts):
        raise CannotPartError(
            "its keys do not stand at the start of their lines; write each on a line of its own"
        )
    return _parted(record.decode("utf-8-sig").splitlines(keepends=True), starts, node)


def _parted(rows: list[str], starts: list[int], root: Mapping) -> RecordLines:
    nexts = [*starts[1:], len(rows)]
    ends = [_end_of_content(rows, start, end) for start, end in zip(starts, nexts, strict=True)]
    keys = tuple(
        KeyLines(key.text, tuple(rows[above:start]), tuple(rows[start:end]))
        for (key, _), above, start, end in zip(root.entries, [starts[0], *ends], starts, ends, strict=False)
    )
    return RecordLines(tuple(rows[: starts[0]]), keys, tuple(rows[ends[-1] :]), root)


def _end_of_content(rows: Sequence[str], start: int, end: int) -> int:
    """Blank lines and remarks at the end belong to what follows."""
    while end > start + 1 and (not rows[end - 1].strip() or rows[end - 1].startswith(("#", "..."))):
        end -= 1
    return end
