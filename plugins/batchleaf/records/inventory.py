"""A file of the drawer and the bench, as written."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Concatenate, ParamSpec, TypeVar

from batchleaf.facts import Place
from batchleaf.records.nodes import Node, Path, key_place, place_of
from batchleaf.records.report import Report
from batchleaf.records.written import InventoryWritten

P = ParamSpec("P")
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class InventoryFile:
    """One file as written, with its nodes for places."""

    file: str
    node: Node
    written: InventoryWritten

    def place(self, *path: str | int) -> Place:
        """Where the value at ``path`` stands."""
        return place_of(self.node, path)


@dataclass(frozen=True, slots=True)
class Entry:
    """What stands below one name of a file; each value is read, and told of, by itself."""

    file: InventoryFile
    path: Path
    report: Report

    @property
    def name_place(self) -> Place:
        """Where the name stands."""
        return key_place(self.file.node, self.path)

    def place(self, *below: str | int) -> Place:
        """Where a value stands."""
        return self.file.place(*self.path, *below)

    def read(
        self,
        key: str,
        reader: Callable[Concatenate[str, P], T],
        text: str | None,
        *args: P.args,
        **kw: P.kwargs,
    ) -> T | None:
        """What ``reader`` makes of the text under ``key``, or ``None`` (where it cannot, with a problem)."""
        return None if text is None else self.report.read(self.place(key), reader, text, *args, **kw)
