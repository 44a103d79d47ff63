"""Changes to the text of a record that leave all the rest of it as it stands.

A change is named by the way to a value, as problems are. Remarks, the order of
keys and the ends of lines stay.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from batchleaf.facts import Place
from batchleaf.records.nodes import Listing, Mapping, Node, Path, Plain, Scalar, child
from batchleaf.writing.block import entry, in_braces, quoted


@dataclass(frozen=True, slots=True)
class Put:
    """Write ``key: value`` into the group at ``path``, or in place of what the key has there.

    In a list the key is the number of an item that is there, from 0, and the value a text.
    """

    path: Path
    key: str | int
    value: Plain


@dataclass(frozen=True, slots=True)
class Rename:
    """Write another key for the one at the end of ``path``."""

    path: Path
    key: str


@dataclass(frozen=True, slots=True)
class Drop:
    """Leave out the key at the end of ``path`` with its value."""

    path: Path


Edit = Put | Rename | Drop


@dataclass(frozen=True, slots=True)
class _Splice:
    start: int
    end: int
    text: str


def edited(text: str, root: Mapping, edits: Iterable[Edit]) -> str:
    """``text``, which was read as ``root``, with the ``edits`` made."""
    line_end = "\r\n" if "\r\n" in text else "\n"
    text += "" if text.endswith(("\r", "\n")) else line_end
    editor = _Editor(text, root, line_end)
    # Lines that are added at one place end the inner groups before the outer ones.
    inwards = sorted(edits, key=lambda edit: -len(edit.path))
    splices = sorted(map(editor.splice, inwards), key=lambda splice: (splice.start, splice.end))
    out, at = [], 0
    for splice in splices:
        out += [text[at : splice.start], splice.text]
        at = splice.end
    return "".join([*out, text[at:]])


class _Editor:
    """Knows where each node stands in the text."""

    def __init__(self, text: str, root: Mapping, line_end: str) -> None:
        self._text, self._root, self._line_end = text, root, line_end
        ends = [found.end() for found in re.finditer("\r\n|[\r\n\x85\u2028\u2029]", text)]
        self._starts = [0, *ends]

    def splice(self, edit: Edit) -> _Splice:
        """Where an edit changes the text, and what it writes there."""
        match edit:
            case Put(path=path, key=int(number), value=str(text)):
                return self._replace_item(path, number, text)
            case Put(path=path, key=str(key), value=value):
                group = self._group(path)
                if _key_in(group, key) is None:
                    return self._insert(group, key, value)
                return self._replace(group, self._key((*path, key)), value)
            case Put():
                raise TypeError("an item of a list is one text")
            case Rename(path=path, key=key):
                old = self._key(path)
                return _Splice(self._index(old.place), self._index(old.end), quoted(key))
            case Drop(path=path):
                old, value_at = self._key(path), child(self._group(path[:-1]), path[-1])
                start = self._starts[old.place.line - 1]
                return _Splice(start, self._after(value_at.end if value_at else old.end), "")

    def _replace_item(self, path: Path, number: int, text: str) -> _Splice:
        listing = self._node(path)
        item = child(listing, number) if isinstance(listing, Listing) else None
        if not isinstance(listing, Listing) or item is None:
            raise TypeError(f"no item {number} stands at {path}")
        written = in_braces(text) if listing.flow else quoted(text)
        return _Splice(self._index(item.place), self._index(item.end), written)

    def _insert(self, group: Mapping, key: str, value: Plain) -> _Splice:
        if group.flow:
            at = self._index(group.end) - 1
            comma = ", " if group.entries else ""
            return _Splice(at, at, f"{comma}{in_braces(key)}: {in_braces(value)}")
        at = self._after(group.end)
        return _Splice(at, at, self._line_end.join([*entry(key, value, group.place.column - 1), ""]))

    def _replace(self, group: Mapping, key: Scalar, value: Plain) -> _Splice:
        old = child(group, key.text) or key
        start, end = self._index(old.place), self._index(old.end)
        if group.flow:
            return _Splice(start, end, in_braces(value))
        if isinstance(value, str) and isinstance(old, Scalar):
            return _Splice(start, end, quoted(value))
        first, *below = entry(key.text, value, group.place.column - 1)
        lines = [first[first.index(quoted(key.text)) + len(quoted(key.text)) :], *below]
        if isinstance(old, Listing | Mapping) and not old.flow:
            end = self._after(old.end)
            lines.append("")
        return _Splice(self._index(key.end), end, self._line_end.join(lines))

    def _node(self, path: Path) -> Node | None:
        node: Node | None = self._root
        for step in path:
            node = child(node, step) if node else None
        return node

    def _group(self, path: Path) -> Mapping:
        node = self._node(path)
        if not isinstance(node, Mapping):
            raise TypeError(f"no group of keys stands at {path}")
        return node

    def _key(self, path: Path) -> Scalar:
        found = _key_in(self._group(path[:-1]), path[-1])
        if found is None:
            raise TypeError(f"no key stands at {path}")
        return found

    def _index(self, place: Place) -> int:
        return self._starts[place.line - 1] + place.column - 1

    def _after(self, end: Place) -> int:
        """The start of the line below a node; a block of text ends at the foot of its own last line."""
        line = end.line if end.column > 1 else end.line - 1
        while line > 1 and not self._line(line).strip():
            line -= 1
        return self._starts[line]

    def _line(self, number: int) -> str:
        return self._text[self._starts[number - 1] : self._starts[number]]


def _key_in(group: Mapping, key: str | int) -> Scalar | None:
    return next((one for one, _ in group.entries if one.text == key), None)
