"""A job for the cutting planner, as written: no part of an archive, a file of its own."""

from __future__ import annotations

from pydantic import Field

from batchleaf.records.written.shape import LengthUnit, Text, Written, YesNo


class JobSheetWritten(Written):
    """One kind of sheet, or a scrap."""

    id: Text = Field(description="What the answer calls it.", examples=["letter"])
    size: Text = Field(description="Its width and height.", examples=["8 1/2 x 11"])
    have: Text | None = Field(None, description="How many there are; no limit.", examples=["7"])
    cost: Text | None = Field(None, description="What one costs; 1, and 0 for a scrap.", examples=["0.40"])
    scrap: YesNo | None = Field(None, description="Whether it is an odd piece; no.", examples=["yes"])


class JobPartWritten(Written):
    """One kind of part."""

    id: Text = Field(description="What the answer calls it.", examples=["A"])
    size: Text = Field(description="Its width and height.", examples=["3 3/4 x 5"])
    each: Text | None = Field(None, description="How often one make needs it; 1.", examples=["2"])
    turns: YesNo | None = Field(
        None, description="Whether it may lie either way on a sheet; yes.", examples=["no"]
    )
    from_: list[Text] | None = Field(
        None, alias="from", description="The sheets it may come from; any.", examples=[["letter"]]
    )
    worth: Text | None = Field(
        None, description="What one is worth, where one sheet is to be filled; its area.", examples=["12"]
    )
    most: Text | None = Field(
        None, description="How many are of use, where one sheet is to be filled; no limit.", examples=["4"]
    )


class JobWritten(Written):
    """Sheets, parts, and what is asked: ``want`` so many makes, the most, or to ``fill`` one sheet."""

    unit: LengthUnit | None = Field(None, description="The unit of its lengths; mm.", examples=["in"])
    sheets: list[JobSheetWritten] = Field(
        description="What there is to cut from.", examples=[[{"id": "letter", "size": "8 1/2 x 11"}]]
    )
    parts: list[JobPartWritten] = Field(
        description="What is to be cut.", examples=[[{"id": "A", "size": "4 1/4 x 5 1/2"}]]
    )
    want: Text | None = Field(None, description="How many makes, or most.", examples=["12", "most"])
    fill: Text | None = Field(None, description="The one sheet to make the most of.", examples=["letter"])
    kerf: Text | None = Field(None, description="What a cut takes away; nothing.", examples=["1/32"])
    gap: Text | None = Field(None, description="What is left between parts; nothing.", examples=["1/8"])
