"""YAML as plain text with places: nothing is a number or a date yet.

Each node runs from its ``place`` to its ``end``, where the next letter would stand;
``flow`` marks what is written in brackets or braces.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from batchleaf.facts import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """One text and where it stands."""

    text: str
    place: Place
    end: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Listing:
    """Items below one another."""

    items: tuple[Node, ...]
    place: Place
    end: Place = field(default=NOWHERE, compare=False)
    flow: bool = field(default=False, compare=False)


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with values, in the order written."""

    entries: tuple[tuple[Scalar, Node], ...]
    place: Place
    end: Place = field(default=NOWHERE, compare=False)
    flow: bool = field(default=False, compare=False)
    by_key: dict[str, tuple[Scalar, Node]] = field(init=False, repr=False, compare=False)
    """A drawer of thousands is asked for each of its supplies by name."""

    def __post_init__(self) -> None:
        found = {key.text: (key, value) for key, value in self.entries}
        object.__setattr__(self, "by_key", found)


Node = Scalar | Listing | Mapping
Path = tuple[str | int, ...]
Plain = str | list["Plain"] | dict[str, "Plain"]


def plain(node: Node) -> Plain:
    """The node without places, as a validator takes it."""
    match node:
        case Scalar(text=text):
            return text
        case Listing(items=items):
            return [plain(item) for item in items]
        case Mapping(entries=entries):
            return {key.text: plain(value) for key, value in entries}


def child(node: Node, step: str | int) -> Node | None:
    """The value below ``step``, if there is one."""
    match node:
        case Listing(items=items) if isinstance(step, int) and step < len(items):
            return items[step]
        case Mapping(by_key=by_key) if isinstance(step, str) and step in by_key:
            return by_key[step][1]
    return None


def place_of(node: Node, path: Path) -> Place:
    """Where the value at ``path`` stands, or the nearest thing above it that exists."""
    for step in path:
        below = child(node, step)
        if below is None:
            break
        node = below
    return node.place


def key_place(node: Node, path: Path) -> Place:
    """Where the *key* at the end of ``path`` stands."""
    for step in path[:-1]:
        below = child(node, step)
        if below is None:
            return node.place
        node = below
    if isinstance(node, Mapping) and path[-1] in node.by_key:
        return node.by_key[str(path[-1])][0].place
    return place_of(node, path[-1:])
