"""What a record leaves to be understood, as lines to read and written into the record itself."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from batchleaf.records.explaining.inferred import Inferred, Lettered, Understood
from batchleaf.records.nodes import Listing, Mapping, Node, Path, Plain, child, plain
from batchleaf.writing.block import entry
from batchleaf.writing.edits import Drop, Edit, Put, Rename, edited


def written_out(text: str, root: Mapping, understood: Iterable[Understood]) -> str:
    """The record with all that it leaves to be understood, which means exactly the same."""
    return edited(text, root, _edits(root, understood))


def _edits(root: Mapping, understood: Iterable[Understood]) -> Iterator[Edit]:
    """A group that is written on one line, or not at all, is written anew as a whole."""
    whole: dict[Path, list[Inferred]] = {}
    for one in understood:
        group = _at(root, one.path)
        if isinstance(one, Lettered):
            yield Rename(one.path, one.key)
        elif isinstance(group, Listing) or (isinstance(group, Mapping) and not group.flow):
            yield Put(one.path, one.key, one.value)
            if one.instead:
                yield Drop((*one.path, one.instead))
        else:
            whole.setdefault(one.path, []).append(one)
    for path, ones in whole.items():
        yield Put(path[:-1], path[-1], _with(root, path, ones))


def _with(root: Mapping, path: Path, ones: Iterable[Inferred]) -> Plain:
    group = _at(root, path)
    values = plain(group) if isinstance(group, Mapping) else {}
    keys = dict(values) if isinstance(values, dict) else {}
    for one in ones:
        keys.pop(one.instead, None)
        keys[str(one.key)] = one.value
    return keys


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
    tree = _Branch()
    for one in understood:
        branch = tree
        for step in one.path[:-1] if isinstance(one, Lettered) else one.path:
            branch = branch.below.setdefault(step, _Branch())
        branch.leaves.append(one)
    yield from _lines(tree, 0)


def _lines(branch: _Branch, indent: int) -> Iterator[str]:
    for leaf in branch.leaves:
        first, *more = _written(leaf, indent)
        yield f"{first}  # {leaf.why}"
        yield from more
    for step, below in branch.below.items():
        yield f"{' ' * indent}{step}:"
        yield from _lines(below, indent + 2)


def _written(leaf: Understood, indent: int) -> list[str]:
    if isinstance(leaf, Lettered):
        return [f"{' ' * indent}{leaf.key}:"]
    if isinstance(leaf.key, int):
        return [f"{' ' * indent}- {leaf.value}"]
    return entry(leaf.key, leaf.value, indent)
