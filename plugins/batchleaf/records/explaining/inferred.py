"""One value that a record leaves to be understood."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.records.nodes import Path, Plain
from batchleaf.records.written import Written

DEFAULT: Final = "the default"


@dataclass(frozen=True, slots=True)
class Inferred:
    """What would stand under ``key`` of the group or list at ``path`` if it were written out, and ``why``.

    ``instead``: the key that it takes the place of, where it is another.
    """

    path: Path
    key: str | int
    value: Plain
    why: str
    instead: str = ""


@dataclass(frozen=True, slots=True)
class Lettered:
    """The ``key`` that the part at ``path`` would have if its letter were written, and ``why``."""

    path: Path
    key: str
    why: str


Understood = Inferred | Lettered


def defaults(written: Written, path: Path = ()) -> Iterator[Inferred]:
    """The keys of a record that are left out and have one text as their default."""
    for name, field in type(written).model_fields.items():
        if name not in written.model_fields_set and isinstance(field.default, str):
            yield Inferred(path, field.alias or name, field.default, DEFAULT)


def differing(path: Path, key: str | int, written: str | None, full: str, why: str) -> Iterator[Inferred]:
    """``full``, where it is not what is ``written`` already."""
    if written != full:
        yield Inferred(path, key, full, why)
