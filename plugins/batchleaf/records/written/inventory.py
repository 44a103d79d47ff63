"""The drawer and the bench, as written: ``projects/inventory/*.yml``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from batchleaf.records.written.shape import FORMAT, FORMAT_TOLD, Slug, Text, Written, YesNo

_SALE = "May what is made with it be sold? yes, handmade only, no or not known; who says so, and when."
_DISCLOSE = (
    "Whether readers are to be told of a tie to those who sell it: paid (for the link, or for naming it) or"
    " gifted (it was free, or cost less)."
)
Disclosed = Literal["no", "paid", "gifted"]
_SALES = ["handmade only, printed on the packet, 2026-01-12", "yes"]


class OpeningWritten(Written):
    """What lay in the drawer before the first purchase on record."""

    date: Text = Field(description="The day before the first record.", examples=["2026-01-01"])
    amount: Text | None = Field(
        None, description="How much there was; nothing whole if left out.", examples=["4 sheets", "1 pad"]
    )
    worth: Text | None = Field(
        None,
        description="What that had cost in all; “about” before a guess; “gift”. Not known if left out.",
        examples=["0.80", "about 2.00", "gift"],
    )
    scraps: list[Text] = Field(
        default_factory=list,
        description="Odd pieces: how many of which size, and what they are worth.",
        examples=[["2 of 4 x 9 in, worth 0.40"]],
    )


class SupplyWritten(Written):
    """One supply, under its short name."""

    name: Text = Field(description="What you call it.", examples=["chalk card"])
    kind: Text = Field(description="The shelf it stands on.", examples=["card", "patterned paper", "ink"])
    size: Text | None = Field(
        None,
        description="A sheet as bought; what has a size can be cut. Of a bought piece: its own size.",
        examples=["12 x 12 in"],
    )
    unit: Text | None = Field(
        None,
        description="What it is counted in, one and several where the plural is unusual; sheet for what has a"
        " size, else piece.",
        examples=["m", "leaf, leaves"],
    )
    by: Literal["amount", "level"] = Field(
        "amount",
        description="Whether an amount is known, or only how full the open one is: full, half, low, empty.",
        examples=["level"],
    )
    designs: Text | None = Field(
        None,
        description="For a pad of several papers: how many papers, and how many sheets of each. They are"
        " numbered"
        " from 1.",
        examples=["12 x 2"],
    )
    pack: Text | None = Field(
        None, description="How many a pack holds, so that packs can be bought.", examples=["25"]
    )
    sticks: Text | None = Field(
        None,
        description="How much of it sticks one part. Of tape: two long sides, one long side, two short"
        " sides, one short side or all sides; of what is counted: so many for an area, and at least so"
        " many; of glue: so much for an area.",
        examples=["two long sides", "1 per 20 x 30 mm, at least 4", "1 ml per 100 x 100 mm"],
    )
    mark: Text | None = Field(
        None,
        description="The least there should be of it; with less on hand the drawer says to buy again.",
        examples=["5 sheets", "1 pack"],
    )
    grain: Literal["long", "short", "unknown"] = Field(
        "unknown", description="The side of the sheet that the fibres run along.", examples=["long"]
    )
    front: Text | None = Field(
        None,
        description="What its front looks like, and how the pattern lies: one-way (it has an up), two-way"
        " (the"
        " same upside down) or any-way (if left out).",
        examples=["rows of small fish, one-way"],
    )
    back: Text | None = Field(None, description="The same of its back.", examples=["plain", "dots, any-way"])
    core: Text | None = Field(
        None, description="The colour inside, where it is torn or cut.", examples=["white"]
    )
    see_through: YesNo = Field(
        "no",
        alias="see-through",
        description="Whether what lies behind it shows, as with film, acetate or vellum.",
        examples=["yes"],
    )
    trim: Text | None = Field(
        None,
        description="What must be cut off before it is used: a branding strip, a torn edge.",
        examples=["top 1/2 in", "left 3, bottom 10"],
    )
    colour: Text | None = Field(
        None,
        description="Its colour, the main one first, each as # and six figures; in quotes, since"
        " elsewhere # begins"
        " a remark. “about” before them where they were picked from a photo, or by eye.",
        examples=["#c3d6cf", "#c3d6cf #2f4858", "about #c3d6cf"],
    )
    collection: Text | None = Field(
        None,
        description="The range that it was made for, by one name in all records: what goes with one of them"
        " first of all.",
        examples=["Shoal"],
    )
    weight: Text | None = Field(
        None,
        description="Grammage, or pounds with their basis: cover, text, index, bristol or bond.",
        examples=["216 g/m²", "80 lb cover"],
    )
    thickness: Text | None = Field(
        None,
        description="How thick one sheet or one piece is, in mm or in points (a point is a thousandth of an"
        " inch). Of a paper it is estimated from its weight if left out.",
        examples=["0.3 mm", "12 pt"],
    )
    weighs: Text | None = Field(
        None,
        description="What one of its unit weighs: one piece, one m, one ml.",
        examples=["0.4 g"],
    )
    envelope: Text | None = Field(
        None,
        description="The size of the envelope that it is, from outside.",
        examples=["114 x 162 mm", "4 3/8 x 5 3/4 in"],
    )
    opening: OpeningWritten | None = Field(
        None,
        description="What was there before the first purchase on record.",
        examples=[{"date": "2026-01-01", "amount": "4 sheets"}],
    )
    sale: Text | None = Field(None, description=_SALE, examples=_SALES)
    link: Text | None = Field(
        None, description="Where it is found.", examples=["https://example.org/papers/chalk"]
    )
    disclose: Disclosed = Field("no", description=_DISCLOSE, examples=["paid", "gifted"])
    about: Text | None = Field(None, description="A sentence about it.", examples=["Folds cleanly."])


class ToolWritten(Written):
    """One tool, or one set of stamps or dies, under its short name."""

    name: Text = Field(description="What you call it.", examples=["the long trimmer"])
    kind: Text = Field(
        description="Which tool it is.", examples=["trimmer", "score board", "punch", "stamps", "dies"]
    )
    longest: Text | None = Field(None, description="The longest cut it makes.", examples=["310 mm"])
    narrowest: Text | None = Field(
        None, description="The narrowest strip it can still hold.", examples=["1/4 in"]
    )
    kerf: Text | None = Field(
        None,
        description="What its blade takes away at each cut; nothing if left out.",
        examples=["0.5 mm"],
    )
    stack: Text | None = Field(
        None,
        description="How many sheets it takes at once, perhaps up to a weight.",
        examples=["4 up to 120 g/m², 1 up to 300 g/m²"],
    )
    grooves: Text | None = Field(
        None,
        description="For a score board: from one groove to the next.",
        examples=["1/8 in", "1/8 in, 1 cm"],
    )
    plate: Text | None = Field(
        None,
        description="Of a press, or of what dies and stamps lie on: the largest piece that goes into it.",
        examples=["150 x 200 mm"],
    )
    stroke: Text | None = Field(
        None,
        description="How long one stroke with it takes, from piece to piece; if left out, what is usual.",
        examples=["10 s", "1 min"],
    )
    images: list[Text] = Field(
        default_factory=list,
        description="Of stamps or dies: size and words of each image. They are numbered from 1.",
        examples=[["30 x 8 high water", "24 x 10 slack tide"]],
    )
    sale: Text | None = Field(None, description=_SALE, examples=_SALES)
    link: Text | None = Field(
        None, description="Where it is found.", examples=["https://example.org/tools/trimmer"]
    )
    disclose: Disclosed = Field("no", description=_DISCLOSE, examples=["paid", "gifted"])
    about: Text | None = Field(
        None, description="A sentence about it.", examples=["Cuts a little to the left."]
    )


class OrderWritten(Written):
    """One order: what came, what it cost, what the delivery cost."""

    date: Text = Field(description="The day it came.", examples=["2026-01-12"])
    from_: Text | None = Field(None, alias="from", description="From whom.", examples=["a market stall"])
    lines: list[Text] = Field(
        min_length=1,
        description="Supply, amount and, after a comma, the price of all of it; “gift” or “price unknown”"
        " as well.",
        examples=[["chalk-card 12 sheets, 7.20", "shoal-pad 1 pad, 8.40", "star-sticker 20, gift"]],
    )
    delivery: Text | None = Field(
        None, description="What the delivery cost; spread over the lines by price.", examples=["1.70"]
    )


class CountWritten(Written):
    """What was found in the drawer on a day."""

    date: Text = Field(description="The day of counting.", examples=["2026-09-30"])
    found: list[Text] = Field(
        min_length=1,
        description="Supply and what was found of it, at the end of that day; “about” where it is rough."
        " Of odd pieces: how many, and their size. Of what is kept by level: full, half, low, empty,"
        " or 2 and half.",
        examples=[
            ["chalk-card 7 sheets", "shoal-pad about 9 sheets", "shoal-pad-4 1 sheet", "bench-glue half"]
        ],
    )


class GoneWritten(Written):
    """What left the drawer for something else than a batch."""

    date: Text = Field(description="The day.", examples=["2026-03-02"])
    why: Text = Field(
        description="For what, or how it was lost, in a few words.", examples=["swatches for the class"]
    )
    lines: list[Text] = Field(
        min_length=1,
        description="Supply and amount; of odd pieces how many, and their size.",
        examples=[["chalk-card 2 sheets", "chalk-card 3 scraps 60 x 210"]],
    )


class RatesWritten(Written):
    """What the post asks from a day on. Of a kind of letter the lines of its newest day count."""

    date: Text = Field(description="The day from which they hold.", examples=["2026-07-12"])
    lines: list[Text] = Field(
        min_length=1,
        description="The kind of letter, up to which weight, and after a comma the price. The kinds: USPS"
        " letter, USPS nonmachinable letter, USPS flat, Royal Mail letter, Royal Mail large letter, UPU"
        " standardized letter, UPU format P.",
        examples=[["USPS letter up to 1 oz, 0.78", "USPS nonmachinable letter up to 1 oz, 1.27"]],
    )


class InventoryWritten(Written):
    """A file of the drawer and the bench; there may be as many as you like."""

    format: FORMAT = Field("1", description=FORMAT_TOLD, examples=["1"])
    stick: Text | None = Field(
        None,
        description="What parts are stuck with where no record says otherwise: a supply that says how much"
        " of it sticks a part. In one file of the drawer only.",
        examples=["paper-tape"],
    )
    clearance: Text | None = Field(
        None,
        description="How much wider and higher an envelope has to be than what goes into it, in all; 1/8 in"
        " if left out. What is thick needs more. In one file of the drawer only.",
        examples=["1/8 in", "4 mm"],
    )
    supplies: dict[Slug, SupplyWritten] = Field(
        default_factory=dict,
        description="Everything that is used up, each under a short name for records to use.",
        examples=[{"chalk-card": {"name": "chalk card", "kind": "card", "size": "305 x 305 mm"}}],
    )
    tools: dict[Slug, ToolWritten] = Field(
        default_factory=dict,
        description="Everything that is used and kept, each under a short name.",
        examples=[{"long-trimmer": {"name": "the long trimmer", "kind": "trimmer", "longest": "310 mm"}}],
    )
    purchases: list[OrderWritten] = Field(
        default_factory=list,
        description="What was bought, order by order.",
        examples=[[{"date": "2026-01-12", "lines": ["chalk-card 12 sheets, 7.20"]}]],
    )
    counts: list[CountWritten] = Field(
        default_factory=list,
        description="What was counted, day by day; a count sets what is on hand.",
        examples=[[{"date": "2026-09-30", "found": ["chalk-card 7 sheets"]}]],
    )
    gone: list[GoneWritten] = Field(
        default_factory=list,
        description="What left the drawer for something else than a batch, or was lost.",
        examples=[[{"date": "2026-03-02", "why": "a swatch book", "lines": ["chalk-card 1 sheet"]}]],
    )
    rates: list[RatesWritten] = Field(
        default_factory=list,
        description="What the post asks, day by day.",
        examples=[[{"date": "2026-07-12", "lines": ["USPS letter up to 1 oz, 0.78"]}]],
    )
