"""The drawer's records in, facts out."""

from __future__ import annotations

import datetime as dt
from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.facts import (
    Archive,
    Basis,
    Direction,
    Image,
    PaperSide,
    Sale,
    StackLimit,
    Supply,
    Terms,
    Tool,
    Trim,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.grammage import grammage_of
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.sheets import read_side
from records.test_cases import laid_out, read

INCH = Fraction("25.4")
DRAWER = """\
=== projects/inventory/drawer.yml
supplies:
  shoal-pad:
    name: shoal pad
    kind: patterned paper
    size: 6 x 6 1/2 in
    designs: 12 x 2
    front: rows of small fish, one-way
    back: dots, two-way
    core: white
    trim: bottom 1/2, left 3 mm
    colour: "#C3D6CF #2f4858"
    collection: Shoal
    weight: 80 lb text
    sale: handmade only, printed on the cover, front and back, 2026-01-12
    opening:
      date: 2026-01-01
      amount: 1 pad
      worth: about 7.00
      scraps:
        - 2 of 4 x 3 in, gift
        - 60 x 50, worth about 0.10
        - 60 x 70
  star-sticker:
    name: star
    kind: stickers
    colour: "About #A92C1B, #a92c1b"
    pack: 25
    sale: yes
tools:
  long-trimmer:
    name: the long trimmer
    kind: trimmer
    longest: 12 1/4 in
    narrowest: 1/4 in
    stack: 1 up to 300 g/m², 4 sheets up to 80 lb text, 1
    about: Drifts.
  score-board:
    name: the score board
    kind: score board
    grooves: 1/8 in, 1 cm
  sea-words:
    name: sea words
    kind: stamps
    images:
      - 30 x 8 high water
      - 1 1/4 x 5/16 in slack tide
      - 1¼ x ½ in ebb
      - 24 by 10 mm in the rain
      - 2 gulls
      - 30 x 8 2026
purchases:
  - date: 2026-01-12
    from: a stall
    delivery: 1.00
    lines:
      - shoal-pad 2 pads, 16.80
      - shoal-pad 1 pack, gift
      - shoal-pad-3 2 sheets, about 0.60
      - star-sticker 2 packs, price unknown
      - star-sticker 12, 1.20
counts:
  - date: 2026-02-01
    found:
      - shoal-pad about 9 left
      - shoal-pad-4 1 sheet
      - star-sticker about 60
=== told
"""


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Archive:
    """The drawer above; nothing is told of it."""
    folder = tmp_path_factory.mktemp("drawer")
    laid_out(DRAWER, folder)
    worked = read(folder)
    assert worked.problems == ()
    return worked.archive


def supply(archive: Archive, slug: str) -> Supply:
    """One supply by name."""
    return next(one for one in archive.supplies if one.slug == slug)


def tool(archive: Archive, slug: str) -> Tool:
    """One tool by name."""
    return next(one for one in archive.tools if one.slug == slug)


def test_what_a_pad_is(archive: Archive) -> None:
    """Sides, core, trim, colours, weight and terms mean what they say."""
    pad = supply(archive, "shoal-pad")
    assert (pad.designs, pad.copies, pad.pad_sheets, pad.turns) == (12, 2, 24, False)
    assert pad.front == PaperSide("rows of small fish", Direction.ONE_WAY)
    assert pad.back == PaperSide("dots", Direction.TWO_WAY)
    assert (pad.core, pad.collection) == ("white", "Shoal")
    assert (pad.colours, pad.colours_are_about) == (("#c3d6cf", "#2f4858"), False)
    assert pad.trim == Trim(left=Fraction(3), bottom=INCH / 2)
    assert (pad.sheet, pad.usable) == (
        Size(6 * INCH, INCH * 13 / 2),
        Size(6 * INCH - 3, 6 * INCH),
    )
    assert (pad.grammage, pad.pounds) == (grammage_of(Fraction(80), "text"), "80 lb text")
    assert pad.terms == Terms(Sale.HANDMADE, "printed on the cover, front and back", dt.date(2026, 1, 12))


def test_colours_that_were_picked(archive: Archive) -> None:
    """The word “about” makes all of them rough; one that is written twice is one."""
    star = supply(archive, "star-sticker")
    assert (star.colours, star.colours_are_about) == (("#a92c1b",), True)


def test_a_pad_opens_into_numbered_papers(archive: Archive) -> None:
    """Each is a paper like its pad; nothing lies under its number at the start."""
    papers = [one for one in archive.supplies if one.pad]
    assert sorted(one.number for one in papers) == list(range(1, 13))
    fourth = supply(archive, "shoal-pad-4")
    assert (fourth.name, fourth.sheet, fourth.front, fourth.trim) == (
        "shoal pad 4",
        supply(archive, "shoal-pad").sheet,
        supply(archive, "shoal-pad").front,
        supply(archive, "shoal-pad").trim,
    )
    assert (fourth.designs, fourth.opening, fourth.scraps) == (0, None, ())


def test_what_was_there_and_how_well_its_worth_is_known(archive: Archive) -> None:
    """A guess has a value, a gift cost nothing, and what is not said is not known."""
    pad = supply(archive, "shoal-pad")
    assert pad.opening is not None
    assert (pad.opening.quantity, pad.opening.value, pad.opening.basis) == (Fraction(24), 700, Basis.GUESSED)
    assert [(scrap.count, scrap.value, scrap.basis) for scrap in pad.scraps] == [
        (2, 0, Basis.GIFT),
        (1, 10, Basis.GUESSED),
        (1, None, Basis.UNKNOWN),
    ]
    # The pattern has a direction, so a scrap lies as it is written.
    assert [scrap.size for scrap in pad.scraps] == [
        Size(4 * INCH, 3 * INCH),
        Size(Fraction(60), Fraction(50)),
        Size(Fraction(60), Fraction(70)),
    ]


def test_what_was_bought_in_pads_and_packs(archive: Archive) -> None:
    """Pads of 24 sheets, packs of 25; the delivery of 1.00 goes by price: 16.80, 0.60 and 1.20 of 18.60."""
    bought = [(one.supply, int(one.quantity), one.value, one.basis) for one in archive.purchases]
    assert bought == [
        ("shoal-pad", 48, 1680 + 90, Basis.STATED),
        ("shoal-pad", 24, 0, Basis.GIFT),
        ("shoal-pad-3", 2, 60 + 3, Basis.GUESSED),
        ("star-sticker", 50, None, Basis.UNKNOWN),
        ("star-sticker", 12, 120 + 7, Basis.STATED),
    ]


def test_what_was_counted(archive: Archive) -> None:
    """Roughly, or to the sheet."""
    assert [(one.supply, int(one.quantity), one.about) for one in archive.counts] == [
        ("shoal-pad", 9, True),
        ("shoal-pad-4", 1, False),
        ("star-sticker", 60, True),
    ]


def test_what_tools_can_do(archive: Archive) -> None:
    """Limits in mm, stacks by weight with the lightest first, images numbered from 1."""
    trimmer = tool(archive, "long-trimmer")
    assert (trimmer.longest_cut, trimmer.narrowest_strip) == (INCH * 49 / 4, INCH / 4)
    assert trimmer.length_unit is Unit.INCH
    assert trimmer.stack == (
        StackLimit(4, grammage_of(Fraction(80), "text")),
        StackLimit(1, Fraction(300)),
        StackLimit(1, None),
    )
    assert tool(archive, "score-board").grooves == (INCH / 8, Fraction(10))
    assert tool(archive, "sea-words").images == (
        Image(1, Size(Fraction(30), Fraction(8)), "high water"),
        Image(2, Size(INCH * 5 / 4, INCH * 5 / 16), "slack tide"),
        Image(3, Size(INCH * 5 / 4, INCH / 2), "ebb"),
        Image(4, Size(Fraction(24), Fraction(10)), "in the rain"),
        Image(5, None, "2 gulls"),
        Image(6, Size(Fraction(30), Fraction(8)), "2026"),
    )


@pytest.mark.parametrize(
    ("text", "side"),
    [
        ("small fish, one-way", PaperSide("small fish", Direction.ONE_WAY)),
        ("small fish, one way", PaperSide("small fish", Direction.ONE_WAY)),
        ("Two-Way", PaperSide("", Direction.TWO_WAY)),
        ("dots any-way", PaperSide("dots", Direction.ANY_WAY)),
        ("red, blue and green, twoway", PaperSide("red, blue and green", Direction.TWO_WAY)),
        ("plain", PaperSide("plain")),
        ("railways", PaperSide("railways")),
        ("the milky way", PaperSide("the milky way")),
        ("rows, turnips", PaperSide("rows, turnips")),
        ("leaves of autumn, saturated", PaperSide("leaves of autumn, saturated")),
    ],
)
def test_a_side_in_words(text: str, side: PaperSide) -> None:
    """The last words may say how the pattern lies; words that only sound like it do not."""
    assert read_side(text) == side


@pytest.mark.parametrize(
    ("text", "last"),
    [
        ("stripes, sideways", "sideways"),
        ("sideways", "sideways"),
        ("stripes, three-way", "three-way"),
        ("fish, do not turn", "do not turn"),
        ("fish, turned", "turned"),
        ("no turn", "no turn"),
        ("fish, never turn it", "never turn it"),
    ],
)
def test_what_was_meant_for_a_direction_is_told(text: str, last: str) -> None:
    """Which words were not understood, and the three that are."""
    with pytest.raises(MeasureError) as told:
        read_side(text)
    assert str(told.value) == f"“{last}” is not how a pattern lies; write one-way, two-way or any-way"


@pytest.mark.parametrize("text", ["1 pad", "2 pads", "1 pack"])
def test_an_ink_pad_is_no_pad_of_papers(text: str, tmp_path: Path) -> None:
    """What is counted in pads, or packs, is so without any designs."""
    unit = text.split()[1].removesuffix("s")
    laid_out(
        "=== projects/inventory/drawer.yml\nsupplies:\n  ink:\n    name: ink\n    kind: ink\n"
        f"    unit: {unit}\npurchases:\n  - date: 2026-01-01\n    lines:\n      - ink {text}, 3.00\n"
        "=== told\n",
        tmp_path,
    )
    [purchase] = read(tmp_path).archive.purchases
    assert purchase.quantity == int(text.split()[0])
