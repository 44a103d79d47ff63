"""The kinds of records, and a walk through their models.

Schemas and the reference of keys are made from this walk, so that a key added to
a model is in both.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, Final, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from batchleaf.records.written import (
    DesignWritten,
    InventoryWritten,
    ProjectWritten,
    RecipientsFileWritten,
    SeriesFileWritten,
)


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of record: its model, what it is called, and where its file lies in an archive."""

    model: type[BaseModel]
    called: str
    file: str


KINDS: Final[dict[str, Kind]] = {
    "project": Kind(ProjectWritten, "A batch", "projects/NAME/project.yml"),
    "design": Kind(DesignWritten, "A design", "projects/designs/NAME.yml"),
    "inventory": Kind(InventoryWritten, "The drawer", "projects/inventory/NAME.yml"),
    "series": Kind(SeriesFileWritten, "The series", "projects/series.yml"),
    "recipients": Kind(RecipientsFileWritten, "The recipients", "projects/recipients.yml"),
}
"""The kinds by the word that names their schema file."""


class Held(Enum):
    """How a key holds what stands below it."""

    ONE = auto()
    LIST = auto()
    NAMED = auto()
    """Each under a name of its own."""


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a model; ``below`` is the model of what it holds, where that has keys of its own."""

    name: str
    field: FieldInfo
    held: Held
    below: type[BaseModel] | None


def keys_of(model: type[BaseModel]) -> tuple[Key, ...]:
    """The keys in the order of the model, as they are spelt in a record."""
    return tuple(_key(field.alias or name, field) for name, field in model.model_fields.items())


def models_of(model: type[BaseModel]) -> Iterator[type[BaseModel]]:
    """The model and all that it holds at any depth, each once."""
    seen = [model]
    for one in seen:
        yield one
        seen += [key.below for key in keys_of(one) if key.below and key.below not in seen]


def one_line_forms(model: type[BaseModel]) -> tuple[str, ...]:
    """Examples of the one line that may stand for the keys of ``model``; none where no line may."""
    forms: tuple[str, ...] = getattr(model, "SHORT", ())
    return forms


def word_of(model: type[BaseModel]) -> str:
    """What one of it is called: ``part`` for ``PartWritten``."""
    name = model.__name__.removesuffix("Written")
    return "".join(f" {letter.lower()}" if letter.isupper() else letter for letter in name).strip()


def _key(name: str, field: FieldInfo) -> Key:
    annotation = _without_none(field.annotation)
    origin = get_origin(annotation)
    held = {dict: Held.NAMED, list: Held.LIST}.get(origin, Held.ONE) if origin else Held.ONE
    inner = annotation if held is Held.ONE else _without_none(get_args(annotation)[-1])
    is_model = isinstance(inner, type) and issubclass(inner, BaseModel)
    return Key(name, field, held, inner if is_model else None)


def _without_none(annotation: Any) -> Any:
    members = [member for member in get_args(annotation) if member is not type(None)]
    return members[0] if type(None) in get_args(annotation) else annotation
