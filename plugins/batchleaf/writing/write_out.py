"""What a record leaves to be understood, as lines to read and written into the record itself."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, cast

from batchleaf.records.explaining.inferred import Lettered, Understood
from batchleaf.records.nodes import Listing, Mapping, Node, Path, Plain, Scalar, child, plain
from batchleaf.writing.block import entry
from batchleaf.writing.edits import Drop, Edit, Put, Rename, edited


def written_out(text: str, root: Mapping, understood: Iterable[Understood]) -> str:
    """The record with all that it leaves to be understood, which means exactly the same."""
    return edited(text, root, _edits(root, understood))


def _edits(root: Mapping, understood: Iterable[Understood]) -> Iterator[Edit]:
    """A group that is written on one line, or not at all, is written anew as a whole."""
    whole: dict[Path, list[Understood]] = {}
    for one in understood:
        inside = one.path[:-1] if isinstance(one, Lettered) else one.path
        anew = _not_in_lines(root, inside)
        if anew is not None:
            whole.setdefault(anew, []).append(one)
        elif isinstance(one, Lettered):
            yield Rename(one.path, one.key)
        else:
            yield Put(one.path, one.key, one.value)
            if one.instead:
                yield Drop((*one.path, one.instead))
    for path, ones in whole.items():
        yield Put(path[:-1], path[-1], _anew(root, path, ones))


def _not_in_lines(root: Mapping, path: Path) -> Path | None:
    """The outermost group on the way that has no line for each of its keys, if there is one."""
    for depth in range(1, len(path) + 1):
        node = _at(root, path[:depth])
        if not isinstance(node, Mapping | Listing) or node.flow:
            return path[:depth]
    return None


def _anew(root: Mapping, path: Path, ones: Iterable[Understood]) -> Plain:
    node = _at(root, path)
    value: Any = [] if node is None or isinstance(node, Scalar) else plain(node)
    value = value or {}
    renamed = []
    for one in ones:
        if isinstance(one, Lettered):
            renamed.append(one)
            continue
        group = value
        for step in one.path[len(path) :]:
            if isinstance(group, dict) and not isinstance(group.get(step), dict | list):
                group[step] = {}
            group = group[step]
        if isinstance(group, dict):
            group.pop(one.instead, None)
        group[one.key] = one.value
    for letter in renamed:
        value = {letter.key if key == letter.path[-1] else key: below for key, below in value.items()}
    return cast("Plain", value)


def _at(root: Node, path: Path) -> Node | None:
    node: Node | None = root
    for step in path:
        node = child(node, step) if node else None
    return node


@dataclass(slots=True)
class _Branch:
    """Inferred values as a tree, so that each stands below its own group."""

    leaves: list[Understood] = field(default_factory=list)
    below: dict[str | int, _Branch] = field(default_factory=dict)


def explanation(understood: Iterable[Understood]) -> Iterator[str]:
    """The lines that might be written, each with a remark that says why it need not be."""
    yield from _lines(_tree(understood), 0)


def new_lines(understood: Iterable[Understood]) -> Iterator[str]:
    """The lines that :func:`written_out` writes new or otherwise, below the keys that they belong to."""
    yield from _bare_lines(_tree(understood), 0)


def _tree(understood: Iterable[Understood]) -> _Branch:
    tree = _Branch()
    for one in understood:
        branch = tree
        for step in one.path[:-1] if isinstance(one, Lettered) else one.path:
            branch = branch.below.setdefault(step, _Branch())
        branch.leaves.append(one)
    return tree


def _lines(branch: _Branch, indent: int) -> Iterator[str]:
    for leaf in branch.leaves:
        first, *more = _written(leaf, indent)
        yield f"{first}  # {leaf.why}"
        yield from more
    for step, below in branch.below.items():
        yield f"{' ' * indent}{step}:"
        yield from _lines(below, indent + 2)


def _bare_lines(branch: _Branch, indent: int) -> Iterator[str]:
    keys = {leaf.path[-1]: leaf.key for leaf in branch.leaves if isinstance(leaf, Lettered)}
    for leaf in branch.leaves:
        # A part that gets its letter and more is shown once, with its new key.
        if not isinstance(leaf, Lettered) or leaf.path[-1] not in branch.below:
            yield from _written(leaf, indent)
    for step, below in branch.below.items():
        yield f"{' ' * indent}{keys.get(step, step)}:"
        yield from _bare_lines(below, indent + 2)


def _written(leaf: Understood, indent: int) -> list[str]:
    if isinstance(leaf, Lettered):
        return [f"{' ' * indent}{leaf.key}:"]
    if isinstance(leaf.key, int):
        return [f"{' ' * indent}- {leaf.value}"]
    return entry(leaf.key, leaf.value, indent)
