"""``projects/series.yml``, as written."""

from __future__ import annotations

from pydantic import Field

from batchleaf.records.written.shape import FORMAT, FORMAT_TOLD, Prose, Slug, Text, Written


class SeriesWritten(Written):
    """One series, under its address."""

    title: Text = Field(description="What the series is called.", examples=["Hedgerow Year"])
    about: Prose | None = Field(
        None, description="A few words about it.", examples=["One small thing a month."]
    )


class SeriesFileWritten(Written):
    """The file of series."""

    format: FORMAT = Field("1", description=FORMAT_TOLD, examples=["1"])
    series: dict[Slug, SeriesWritten] = Field(
        description="Each series under its address.", examples=[{"hedgerow-year": {"title": "Hedgerow Year"}}]
    )
