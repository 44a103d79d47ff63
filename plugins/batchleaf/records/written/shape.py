"""What all records have in common: kinds of text, and finding the keys of a place."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar, Literal, get_args, get_origin

from pydantic import AfterValidator, BaseModel, ConfigDict, StringConstraints
from pydantic.fields import FieldInfo
from pydantic_core import PydanticCustomError

from batchleaf.records.addresses import DEVICES, SLUG

Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=400)]
Prose = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=4000)]


def _no_device(slug: str) -> str:
    if slug in DEVICES:
        raise PydanticCustomError("device_name", "a name that Windows keeps for a device")
    return slug


Slug = Annotated[str, StringConstraints(pattern=SLUG, max_length=80), AfterValidator(_no_device)]
YesNo = Literal["yes", "no"]
LengthUnit = Literal["mm", "cm", "in"]
FORMAT = Literal["1"]
FORMAT_TOLD = "The format of this record, so that later versions know how to read it."
"""The newest is :data:`batchleaf.records.formats.LATEST`; a test holds the two to each other."""


class Written(BaseModel):
    """A record or a piece of one: no key that is not listed.

    Where ``SHORT`` has examples, the piece may be written as one line of text as well.
    """

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)
    SHORT: ClassVar[tuple[str, ...]] = ()


def fields_at(model: type[BaseModel], path: tuple[str | int, ...]) -> dict[str, FieldInfo]:
    """The fields, by their key, of what stands at ``path`` of a record; none where no keys may stand."""
    annotation: Any = model
    for step in path:
        if _is_model(annotation):
            field = _by_key(annotation).get(str(step))
            annotation = field.annotation if field else None
        else:
            annotation = get_args(annotation)[-1] if get_origin(annotation) in (dict, list) else None
        annotation = _without_none(annotation)
    return _by_key(annotation) if _is_model(annotation) else {}


def _is_model(annotation: Any) -> bool:
    return isinstance(annotation, type) and issubclass(annotation, BaseModel)


def _by_key(model: type[BaseModel]) -> dict[str, FieldInfo]:
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _without_none(annotation: Any) -> Any:
    members = [member for member in get_args(annotation) if member is not type(None)]
    return members[0] if type(None) in get_args(annotation) else annotation
