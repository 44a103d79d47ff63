"""Every key that a record may have, as tables made from the models.

Content alone: how a table looks is decided where it is written.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from batchleaf.records.kinds import KINDS, Held, Key, Kind, keys_of, one_line_forms, word_of


@dataclass(frozen=True, slots=True)
class KeyRow:
    """One key. ``usual`` is what it counts as where it is left out, empty where that is nothing.

    ``examples`` are values as they stand in a record: text, a list or a mapping.
    ``below`` is the title of the table of what the key holds, if that has keys of its own.
    """

    key: str
    meaning: str
    needed: bool
    usual: str
    choices: tuple[str, ...]
    examples: tuple[Any, ...]
    below: str = ""


@dataclass(frozen=True, slots=True)
class KeyTable:
    """The keys of a record, or of one thing within it.

    ``under``: the key that holds it, empty for the record itself. ``one_line``:
    examples of the one line that may be written instead.
    """

    title: str
    under: str
    about: str
    one_line: tuple[str, ...]
    rows: tuple[KeyRow, ...]


@dataclass(frozen=True, slots=True)
class KindOfRecord:
    """One kind of record with its tables, the record's own first."""

    name: str
    file: str
    tables: tuple[KeyTable, ...]


def reference() -> tuple[KindOfRecord, ...]:
    """Every kind of record. What two kinds share has its table where it comes first."""
    told: dict[type[BaseModel], str] = {}
    return tuple(_kind(name, kind, told) for name, kind in KINDS.items())


def _kind(name: str, kind: Kind, told: dict[type[BaseModel], str]) -> KindOfRecord:
    told[kind.model] = kind.called
    return KindOfRecord(name, kind.file, tuple(_tables(kind.model, "", told)))


def _tables(model: type[BaseModel], under: str, told: dict[type[BaseModel], str]) -> Iterator[KeyTable]:
    """The table of ``model``, then those of what it holds and ``told`` (model: title) has not yet."""
    keys = keys_of(model)
    held = {key.below: key for key in keys if key.below and key.below not in told}
    told |= {below: _title(key) for below, key in held.items()}
    rows = tuple(_row(key, told) for key in keys)
    yield KeyTable(told[model], under, _about(model), one_line_forms(model), rows)
    for below, key in held.items():
        yield from _tables(below, key.name, told)


def _title(key: Key) -> str:
    word = word_of(key.below) if key.below else ""
    return f"The {word}" if key.held is Held.ONE else f"One {word}"


def _about(model: type[BaseModel]) -> str:
    """The first sentence of the model's own description, on one line."""
    return " ".join((model.__doc__ or "").partition("\n\n")[0].replace("``", "`").split())


def _row(key: Key, told: dict[type[BaseModel], str]) -> KeyRow:
    field = key.field
    return KeyRow(
        key=key.name,
        meaning=field.description or "",
        needed=field.is_required(),
        usual=field.default if isinstance(field.default, str) else "",
        choices=_choices(field),
        examples=tuple(field.examples or ()),
        below=told[key.below] if key.below else "",
    )


def _choices(field: FieldInfo) -> tuple[str, ...]:
    """The words that a key chooses from, if it does."""
    annotations = (field.annotation, *get_args(field.annotation))
    return next((get_args(one) for one in annotations if get_origin(one) is Literal), ())
