"""The family of a colour: every one has one, and named colours have the one that their name says."""

from __future__ import annotations

from typing import Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.colour_families import Family, family_of
from batchleaf.measure.colours import Colour

SHARES = st.integers(0, 255)
NAMED: Final = """
red #ff0000, dark red #8b0000, maroon #800000, firebrick #b22222, crimson #dc143c, tomato #ff6347;
orange #ffa500, dark orange #ff8c00, coral #ff7f50;
saddle brown #8b4513, sienna #a0522d, chocolate #d2691e, peru #cd853f, tan #d2b48c, burlywood #deb887;
yellow #ffff00, light yellow #ffffe0, gold #ffd700, khaki #f0e68c, wheat #f5deb3;
green #008000, dark green #006400, light green #90ee90, pale green #98fb98, lime green #32cd32,
forest green #228b22, sea green #2e8b57, light sea green #20b2aa, dark olive green #556b2f, olive #808000;
blue #0000ff, dark blue #00008b, navy #000080, midnight blue #191970, medium blue #0000cd, royal blue #4169e1,
steel blue #4682b4, light blue #add8e6, sky blue #87ceeb, powder blue #b0e0e6, cornflower blue #6495ed;
violet #ee82ee, purple #800080, rebecca purple #663399, medium purple #9370db, indigo #4b0082,
dark violet #9400d3, lavender #e6e6fa, thistle #d8bfd8;
pink #ffc0cb, light pink #ffb6c1, hot pink #ff69b4, deep pink #ff1493, salmon #fa8072;
grey #808080, dark grey #a9a9a9, light grey #d3d3d3, dim grey #696969, silver #c0c0c0;
black #000000;
white #ffffff, white smoke #f5f5f5, snow #fffafa, ivory #fffff0, linen #faf0e6, sea shell #fff5ee
"""
"""Colours of CSS Color Module Level 4 (W3C), by the family that their name says, in the order of families."""


def _named() -> list[tuple[Family, str, str]]:
    rows = NAMED.strip().split(";")
    named = [
        (family, one.strip().rpartition(" "))
        for family, row in zip(Family, rows, strict=True)
        for one in row.split(",")
    ]
    return [(family, name, colour) for family, (name, _, colour) in named]


@pytest.mark.parametrize(("family", "name", "colour"), _named())
def test_named_colours(family: Family, name: str, colour: str) -> None:
    """A colour that is called after a family, or after a thing of that colour, is in it."""
    assert family_of(Colour.of(colour)) is family, name


@pytest.mark.parametrize(
    ("colour", "family"),
    [
        ("#f3ede1", Family.WHITE),  # cream card is bought as white
        ("#e8dfc8", Family.YELLOW),
        ("#c8ae8a", Family.BROWN),  # kraft
        ("#b7b0a2", Family.GREY),  # pebble
        ("#c1d0d9", Family.BLUE),
        ("#e6d3d0", Family.PINK),
        ("#722f37", Family.RED),  # wine
        ("#5b3049", Family.VIOLET),  # plum
        ("#6b4a44", Family.BROWN),
        ("#0a0a14", Family.BLACK),
    ],
)
def test_colours_of_papers_and_inks(colour: str, family: Family) -> None:
    """Papers and inks are called what one calls them at the table."""
    assert family_of(Colour.of(colour)) is family


@given(SHARES)
def test_greys_have_no_hue(share: int) -> None:
    """Equal shares are black, grey or white, and never darker in words than in light."""
    order = (Family.BLACK, Family.GREY, Family.WHITE)
    mine = family_of(Colour(share, share, share))
    assert mine in order
    assert not mine.has_hue
    if share < 255:
        lighter = family_of(Colour(share + 1, share + 1, share + 1))
        assert order.index(mine) <= order.index(lighter)


def test_every_family_has_colours() -> None:
    """No word is never said; of a grid over all of sRGB."""
    steps = range(0, 256, 15)
    found = {family_of(Colour(red, green, blue)) for red in steps for green in steps for blue in steps}
    assert found == set(Family)
