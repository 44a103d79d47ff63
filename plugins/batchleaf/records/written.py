"""The records as written: which keys there are, and that each value is text.

Keys are spelt here and nowhere else. What a text means is read afterwards
(``projects``, ``inventory``, ``series``), since a length depends on the
record's unit and a role on the other records.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints
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


class Written(BaseModel):
    """A record or a piece of one: no key that is not listed."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


class PartWritten(Written):
    """One part of a make, under its letter and name."""

    size: Text | None = Field(None, description="Width and height.", examples=["44 x 70"])
    border: Text | None = Field(None, description="Instead of a size: so much smaller on each side.")
    on: Text | None = Field(None, description="The letter of the part below it; the one before if left out.")
    paper: Text = Field(description="A role from papers, a supply, or “as C”.", examples=["base"])
    each: Text = Field("1", description="How many of it one make has.")
    turn: YesNo = Field("yes", description="May it be turned on the sheet?")


class ProjectWritten(Written):
    """One batch: ``projects/<slug>/project.yml``."""

    title: Text = Field(description="What the batch is called.", examples=["Wren note bookmarks"])
    date: Text = Field(description="The day, year first.", examples=["2026-03-14"])
    format: FORMAT = Field("1", description="The format of this record.")
    status: Literal["idea", "planned", "cut", "made", "published"] = Field(
        "made", description="How far the batch has come."
    )
    series: Slug | None = Field(None, description="The series it belongs to.")
    unit: LengthUnit | None = Field(None, description="The unit of its lengths; the site's if left out.")
    makes: Text = Field(description="How many were finished, of how many begun.", examples=["22 of 24"])
    thing: Text | None = Field(None, description="What one make is called; “box, boxes” gives the plural.")
    base: Text | None = Field(None, description="The part that carries the others: bookmark 50 x 180 mm.")
    papers: dict[Text, Text] = Field(default_factory=dict, description="Role: the supply that fills it.")
    parts: dict[Text, PartWritten] = Field(default_factory=dict, description="Letter and name of each part.")
    supplies: list[Text] = Field(default_factory=list, description="What else one make uses.")
    cut: list[Text] = Field(default_factory=list, description="What was really cut, and kept.")
    was: list[Slug] = Field(default_factory=list, description="Names that its folder had before.")
    time: Text | None = Field(None, description="Time at the table: 3 h 10.")
    steps: list[Text] = Field(
        default_factory=list, description="One sentence each; a time in the film may lead."
    )
    photos: dict[Text, Text] = Field(default_factory=dict, description="File name: what the picture shows.")


class OpeningWritten(Written):
    """What lay in the drawer before the first purchase on record."""

    date: Text = Field(description="The day before the first record.", examples=["2026-01-01"])
    amount: Text | None = None
    worth: Text | None = None
    scraps: list[Text] = Field(default_factory=list)


class SupplyWritten(Written):
    """One supply, under its slug."""

    name: Text = Field(description="What the maker calls it.", examples=["chalk card"])
    kind: Text = Field(description="The shelf it stands on: paper, card, ink.", examples=["card"])
    size: Text | None = Field(None, description="A sheet as bought: 12 x 12 in.")
    unit: Text | None = Field(
        None, description="What it is counted in; sheet for what has a size, else piece."
    )
    grain: Literal["long", "short", "unknown"] = "unknown"
    turn: YesNo = Field("yes", description="May parts be turned on it? no for a pattern with an up.")
    colour: Text | None = Field(None, description="A colour like #c3d6cf.")
    weight: Text | None = Field(None, description="Grammage in g/m².")
    opening: OpeningWritten | None = None
    link: Text | None = None
    about: Text | None = None


class OrderWritten(Written):
    """One order: what came, what it cost, what the delivery cost."""

    date: Text = Field(description="The day it came.", examples=["2026-01-12"])
    from_: Text | None = Field(None, alias="from")
    lines: list[Text] = Field(
        min_length=1,
        description="Supply, amount and price of each.",
        examples=[["chalk-card 12 sheets, 7.20"]],
    )
    delivery: Text | None = None


class CountWritten(Written):
    """What was found in the drawer on a day."""

    date: Text = Field(description="The day of counting.", examples=["2026-09-30"])
    found: list[Text] = Field(
        min_length=1, description="Supply and what was found of it.", examples=[["chalk-card 7 sheets"]]
    )


class InventoryWritten(Written):
    """``projects/inventory/*.yml``: any part of the drawer."""

    format: FORMAT = "1"
    supplies: dict[Slug, SupplyWritten] = Field(default_factory=dict)
    purchases: list[OrderWritten] = Field(default_factory=list)
    counts: list[CountWritten] = Field(default_factory=list)


class SeriesWritten(Written):
    """One series, under its slug."""

    title: Text = Field(description="What the series is called.", examples=["Hedgerow Year"])
    about: Prose | None = None


class SeriesFileWritten(Written):
    """``projects/series.yml``."""

    format: FORMAT = "1"
    series: dict[Slug, SeriesWritten] = Field(description="Address: the series.", examples=[{}])


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
