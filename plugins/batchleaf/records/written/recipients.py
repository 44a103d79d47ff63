"""``projects/recipients.yml``, as written."""

from __future__ import annotations

from pydantic import Field

from batchleaf.records.written.shape import FORMAT, FORMAT_TOLD, Slug, Text, Written


class RecipientWritten(Written):
    """Somebody who gets makes, under a short name."""

    name: Text | None = Field(
        None,
        description="Who it is, in words; the short name if left out.",
        examples=["the aunt on the marsh"],
    )
    sent: list[Text] = Field(
        default_factory=list,
        description="What was sent: the day, how many where it is more than one, and the batch.",
        examples=[["2026-02-21 hazel-square-cards", "2026-05-16 2 hawthorn-boxes"]],
    )


class RecipientsFileWritten(Written):
    """The file of recipients, which no edition of the site shows and no site is made from."""

    format: FORMAT = Field("1", description=FORMAT_TOLD, examples=["1"])
    people: dict[Slug, RecipientWritten] = Field(
        description="Each of them under a short name.",
        examples=[{"marsh-aunt": {"name": "the aunt on the marsh"}}],
    )
