"""A batch and a design, as written."""

from __future__ import annotations

import re
from difflib import get_close_matches
from typing import Any, ClassVar, Final, Literal

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from batchleaf.facts.shapes import WORDS
from batchleaf.measure.lengths import FRACTION_SIGNS, unit_named
from batchleaf.records.written.shape import (
    FORMAT,
    FORMAT_TOLD,
    LengthUnit,
    Prose,
    Slug,
    Text,
    Written,
    YesNo,
)

_BASE = (
    "What one is, its size, and its fold: the part that carries the others. A size in measures is that of the"
    " flat blank, unless it “folds to” it; one by name (A6, quarter-letter) is the finished size. A lid is"
    " larger than its box by 1.5 mm, or 1/16 in, unless a room is written. A sleeve, a slipcase or a cover"
    " is for what goes in, whose width, height and thickness are written."
    " A shape may follow, as for a part."
)
_BASES = [
    "bookmark 50 x 180 mm",
    "card A6, side fold",
    "tag 60 x 100 mm, clipped 14 top, hole 5 top, down 10",
    "card folds to 4 1/4 x 5 1/2, side fold",
    "card 16 x 6 in, accordion of 4",
    "box 60 x 60 x 30, lid 15, room 2",
    "sleeve for 50 x 180 x 4, room 2, flap 12",
]
_SUPPLIES = "What else one make uses; “in all” behind an amount makes it that of the batch."
_STICK = (
    "What its parts are stuck with, but for those that say it themselves: a supply, or nothing. If left out,"
    " what the drawer says."
)
_PACKING = (
    "What finished makes are packed with: a supply, one for each make, or an amount; “per 5” makes it that of"
    " each five makes, the last ones with it."
)
_COLLATE = (
    "Which papers may meet in one make: mixed (none more often than it must), no paper twice, no side twice,"
    " all alike (all from one paper) or any; of single parts B and C alike, or B and C differ. If left out,"
    " mixed."
)
_COLLATES = ["no paper twice", "all alike", "B and C alike", "any, D and E differ"]
_PACKED = [["envelope-a2", "paper-band 220 mm", "clear-bag per 5", "label 2 per 5"]]
_BENCH = (
    "What is done besides cutting, a line for each: a work (score, fold, round, punch, emboss, stamp, die-cut"
    " or ink) and the letters of its parts; then as one likes which corners, where a score runs, the tool or"
    " “by hand”, what is worked in, before cutting, between cuts or after cutting, how long it dries or one"
    " waits, how often it is done to each piece. What follows from scores, stamps and dies of the parts needs"
    " no line."
)
_BENCHES = [
    [
        "round A top, corner-punch",
        "punch A and C, hole-punch, between cuts",
        "score B at 30 across",
        "emboss D, heat-tool, dry 2 min",
        "ink B, sea-ink, before cutting, times 2",
    ]
]
_STEPS = "One sentence each; its time in the film may lead."
_COMMA: Final = re.compile(r"\s*(?:(?<![0-9]),|,(?![0-9]))\s*")
"""A comma between two figures belongs to a number."""
_AT: Final = re.compile(r"\s*,\s*at\s+")
_MEASURED: Final = re.compile(rf"[^,]*[0-9{FRACTION_SIGNS}].*")
_BETWEEN: Final = re.compile(r"[x×]|\bby\b|^border\b")
_LONGEST: Final = 400
_NEARLY: Final = 0.75
"""How alike a slip of the pen is to the word that was meant."""


def part_in_one_line(text: str) -> dict[str, str]:
    """``44 x 70, water, rounded 6, at bottom, up 6``: size or border; paper, or “ready” and what is bought;
    shape; place.

    Raises :class:`PydanticCustomError` for what is no such line.
    """
    text, *at = _AT.split(text.strip(), 1)
    place = {"at": at[0]} if at else {}
    text, shape = _with_shape_apart(text)
    place |= {"shape": shape} if shape else {}
    measure, *sources = _COMMA.split(text, 1)
    source = sources[0] if sources else ""
    if len(text) > _LONGEST:
        return {"size": text}  # too long for any value, and told so
    if measure.startswith("ready "):
        return {"ready": text.removeprefix("ready ").strip()} | place
    if not _MEASURED.match(measure):
        raise PydanticCustomError("one_line_part", "no part in one line")
    if not sources and not shape and (better := _with_comma(measure)):
        raise PydanticCustomError("one_line_comma", "no comma", {"better": better})
    border = measure.removeprefix("border ")
    keys = {"size": measure} if border == measure else {"border": border.strip()}
    ready = source.removeprefix("ready ")
    made_of = {"ready": ready.strip()} if ready != source else {"paper": source} if source else {}
    return keys | made_of | place


def _with_shape_apart(text: str) -> tuple[str, str]:
    """What stands before a shape in one line, and the shape with all that follows it.

    Behind the paper a word that is nearly one of a shape is taken for it, so that it is told as such.
    """
    for number, comma in enumerate(_COMMA.finditer(text)):
        word = text[comma.end() :].partition(",")[0].split(" ")[0].lower()
        if word in WORDS or (number and get_close_matches(word, WORDS, 1, _NEARLY)):
            return text[: comma.start()], text[comma.end() :]
    return text, ""


def _with_comma(text: str) -> str:
    """``44 x 70 water`` with the comma that is missing, or nothing where none is."""
    words = text.split()
    for i, word in enumerate(words[1:], start=1):
        size, rest = " ".join(words[:i]), " ".join(words[i:])
        if word[0].isalpha() and word not in ("x", "by") and unit_named(word) is None:
            return f"{size}, {rest}" if _BETWEEN.search(size) else ""
    return ""


class PartWritten(Written):
    """One part of a make, under its letter and name."""

    SHORT: ClassVar[tuple[str, ...]] = (
        "44 x 70, water",
        "44 x 70, water, at bottom, up 6",
        "border 1/8, panel",
        "30 x 12, scraps of chalk-card",
        "16 x 16, white-card, circle, at top right",
        "18 x 18, ready star-sticker",
        "ready star-sticker",
    )

    size: Text | None = Field(None, description="Width and height.", examples=["44 x 70"])
    border: Text | None = Field(
        None,
        description="Instead of a size: how much smaller it is on each side than the part below it.",
        examples=["1/8"],
    )
    on: Text | None = Field(
        None, description="The letter of the part it lies on; the one before if left out.", examples=["B"]
    )
    at: Text | None = Field(
        None,
        description="Where it sits: the face, the edge or corner that it lies on, how far from there, how it"
        " is turned, what it is tucked behind; the middle if left out. Several places with a"
        " semicolon between.",
        examples=["bottom, up 6", "top left, right 1/4, down 1/4", "left door; right door", "inside right"],
    )
    paper: Text | None = Field(
        None,
        description="What it is cut from: a role from papers, a supply, “as C”, or “scraps of” one of them"
        " where it is cut by hand from scraps that nobody measures. If left out, the role"
        " that has the part’s name.",
        examples=["water", "chalk-card", "as C", "scraps of chalk-card", "any 6 of shoal-pad"],
    )
    ready: Text | None = Field(
        None,
        description="Instead of paper, for what is bought as it is (a blank, a sticker, a die-cut piece):"
        " the supply, or a role from papers.",
        examples=["star-sticker"],
    )
    side: Literal["front", "back"] = Field(
        "front", description="Which side of its paper shows.", examples=["back"]
    )
    each: Text = Field("1", description="How many of it one make has.", examples=["4"])
    extra: Text = Field(
        "0",
        description="How many are made on top of what the makes need, for the whole batch.",
        examples=["1"],
    )
    turn: YesNo = Field(
        "yes",
        description="May it be turned on the sheet? Never where the pattern that shows has a direction.",
        examples=["no"],
    )
    shape: Text | None = Field(
        None,
        description="What it is cut or punched to, one after the other: circle or oval, which fill its size;"
        " corners rounded or clipped; an edge pointed, notched or scalloped; a hole, by its"
        " diameter and its place. A rectangle if left out.",
        examples=["circle", "rounded 6", "clipped 14 top, hole 5 top, down 10", "scalloped 8 bottom"],
    )
    oversize: Text | None = Field(
        None,
        description="How much larger it is cut on each side, to be trimmed to its size later.",
        examples=["1/8"],
    )
    before: Text | None = Field(
        None,
        description="What is done to the piece in hand before this part is cut from it, in a few words.",
        examples=["punch one edge"],
    )
    stamp: Text | None = Field(
        None,
        description="A set of stamps, and which images by number, of which each part gets one, dealt round;"
        " the set alone where it is one image.",
        examples=["tide-words 1 2 3"],
    )
    die: Text | None = Field(
        None, description="The same of a set of dies and its shapes.", examples=["leaf-dies 2"]
    )

    stick: Text | None = Field(
        None,
        description="What it is stuck with, and perhaps how much one takes; or nothing. If left out, what"
        " the batch, its design or the drawer says; what is bought ready is then not stuck.",
        examples=["foam-square", "foam-square 6", "bench-glue 2 ml", "nothing"],
    )

    @model_validator(mode="before")
    @classmethod
    def _from_one_line(cls, written: Any) -> Any:
        return part_in_one_line(written) if isinstance(written, str) else written


class ProjectWritten(Written):
    """One batch."""

    title: Text = Field(description="What the batch is called.", examples=["Wren note bookmarks"])
    date: Text = Field(description="The day, year first.", examples=["2026-03-14"])
    format: FORMAT = Field("1", description=FORMAT_TOLD, examples=["1"])
    status: Literal["idea", "planned", "cut", "made", "published"] = Field(
        "made",
        description="How far the batch has come; from “cut” on it has left the drawer.",
        examples=["planned"],
    )
    series: Slug | None = Field(None, description="The series it belongs to.", examples=["hedgerow-year"])
    unit: LengthUnit | None = Field(
        None, description="The unit of its lengths; the site’s if left out.", examples=["in"]
    )
    design: Slug | None = Field(
        None,
        description="A design that stands alone; the batch fills its roles and may say more or otherwise.",
        examples=["strip-bookmark"],
    )
    makes: Text = Field(
        description="How many were finished, of how many begun.", examples=["22 of 24", "18", "0 of 24"]
    )
    thing: Text | None = Field(
        None,
        description="What one make is called, and several where the plural is unusual; from the base if"
        " left out.",
        examples=["box, boxes"],
    )
    base: Text | None = Field(None, description=_BASE, examples=_BASES)
    papers: dict[Text, Text] = Field(
        default_factory=dict,
        description="Role: the supply that fills it, or several that are dealt round; of a pad its papers by"
        " number, or any so many.",
        examples=[{"base": "chalk-card", "water": "shoal-pad 1 4 7", "sky": "any 6 of shoal-pad"}],
    )
    parts: dict[Text, PartWritten] = Field(
        default_factory=dict,
        description="The other parts, each under its letter and name; without a letter it gets the next"
        " free one.",
        examples=[{"B water strip": "44 x 70, water"}],
    )
    stick: Text | None = Field(None, description=_STICK, examples=["foam-square", "nothing"])
    supplies: list[Text] = Field(
        default_factory=list, description=_SUPPLIES, examples=[["sea-ink", "jute-cord 140 mm"]]
    )
    packing: list[Text] = Field(default_factory=list, description=_PACKING, examples=_PACKED)
    collate: Text | None = Field(None, description=_COLLATE, examples=_COLLATES)
    tools: list[Slug] = Field(
        default_factory=list, description="Tools of the bench that it needs.", examples=[["long-trimmer"]]
    )
    bench: list[Text] = Field(default_factory=list, description=_BENCH, examples=_BENCHES)
    cut: list[Text] = Field(
        default_factory=list,
        description="What was really cut, by supply or role, and what of it was kept.",
        examples=[
            ["chalk-card 4 sheets", "water 1 sheet each, kept 60 x 60", "shoal-pad-4 2 sheets, kept 2 B"]
        ],
    )
    youngest: Text | None = Field(
        None,
        description="How old the youngest is who gets one; cautions follow from it.",
        examples=["2 years", "18 months"],
    )
    occasion: Text | None = Field(
        None,
        description="What it is for, by which it is found again; several with commas.",
        examples=["birthday", "new home, thank you"],
    )
    time: Text | None = Field(None, description="Time at the table.", examples=["3 h 10", "45 min"])
    steps: list[Text] = Field(
        default_factory=list, description=_STEPS, examples=[["1:05 Cut and score", "Fold"]]
    )
    film: Text | None = Field(
        None,
        description="Where its film is seen. The times of the steps lead there: with #t= and the seconds, or"
        " with the seconds where {seconds} stands in the address.",
        examples=["https://example.org/films/wren", "https://example.org/watch?film=wren&at={seconds}"],
    )
    photos: dict[Text, Text] = Field(
        default_factory=dict,
        description="File name: what the picture shows; the step’s sentence if left out.",
        examples=[{"cover.jpg": "Six bookmarks, fanned"}],
    )
    went: list[Text] = Field(
        default_factory=list,
        description="Where finished makes went: kept, given, sold, sample or class, and where one likes"
        " the day, a word, and of what was sold the price: of one with “each”, else of all.",
        examples=[["12 sold, 3.50 each, winter market, 2026-12-05", "2 kept"]],
    )
    asks: Text | None = Field(
        None, description="The price that is asked for one.", examples=["3.50", "3.50 EUR"]
    )
    credit: Text | None = Field(
        None,
        description="Whose design it is, and last where it was found.",
        examples=["after a fold by a friend, https://example.org/fold"],
    )
    notes: Literal["public", "hand-out"] = Field(
        "public",
        description="Who gets the companion notes, the sheet to print: everybody, or only those to whom you"
        " hand them out, so that they are no page of the public site.",
        examples=["hand-out"],
    )
    was: list[Slug] = Field(
        default_factory=list,
        description="Names that its folder had before; they lead here.",
        examples=[["sloe-cards"]],
    )


class DesignWritten(Written):
    """A design that stands alone, for batches with other papers to use."""

    title: Text = Field(description="What the design is called.", examples=["Strip bookmark"])
    format: FORMAT = Field("1", description=FORMAT_TOLD, examples=["1"])
    unit: LengthUnit | None = Field(
        None, description="The unit of its lengths; the site’s if left out.", examples=["in"]
    )
    thing: Text | None = Field(
        None, description="What one make is called; from the base if left out.", examples=["box, boxes"]
    )
    base: Text | None = Field(None, description=_BASE, examples=_BASES)
    roles: dict[Text, Text] = Field(
        default_factory=dict,
        description="The papers it asks for, and what would do; all that its parts name are roles anyway.",
        examples=[{"water": "a patterned paper with a calm pattern"}],
    )
    parts: dict[Text, PartWritten] = Field(
        default_factory=dict,
        description="The other parts, each under its letter and name.",
        examples=[{"B water strip": "44 x 70, water"}],
    )
    stick: Text | None = Field(None, description=_STICK, examples=["foam-square", "nothing"])
    supplies: list[Text] = Field(default_factory=list, description=_SUPPLIES, examples=[["jute-cord 140 mm"]])
    packing: list[Text] = Field(default_factory=list, description=_PACKING, examples=_PACKED)
    collate: Text | None = Field(None, description=_COLLATE, examples=_COLLATES)
    tools: list[Slug] = Field(
        default_factory=list, description="Tools of the bench that it needs.", examples=[["long-trimmer"]]
    )
    bench: list[Text] = Field(default_factory=list, description=_BENCH, examples=_BENCHES)
    steps: list[Text] = Field(default_factory=list, description=_STEPS, examples=[["Cut and score", "Fold"]])
    credit: Text | None = Field(
        None, description="Whose design it is.", examples=["a friend, https://example.org/fold"]
    )
    sale: Text | None = Field(
        None,
        description="May what is made to it be sold? yes, handmade only, no or not known; who says so,"
        " and when.",
        examples=["handmade only, the designer’s page, 2026-01-12"],
    )
    about: Prose | None = Field(None, description="A few words about it.", examples=["Takes small rests."])
