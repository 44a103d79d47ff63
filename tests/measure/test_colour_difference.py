"""CIEDE2000: the published pairs, the laws of a difference, and another implementation."""

from __future__ import annotations

import random
from itertools import pairwise
from pathlib import Path
from typing import Any, Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.colour_difference import Lab, ciede2000, difference, lab_of
from batchleaf.measure.colours import BLACK, WHITE, Colour

PUBLISHED: Final = [
    [float(figure) for figure in row.split("\t")]
    for row in (Path(__file__).parent / "colour-differences.tsv").read_text(encoding="utf-8").splitlines()
    if not row.startswith("#")
]
SHARES = st.integers(0, 255)
COLOURS = st.builds(Colour, SHARES, SHARES, SHARES)
LABS = st.builds(Lab, st.floats(0, 100), st.floats(-120, 120), st.floats(-120, 120))


def test_all_pairs_are_there() -> None:
    """The table has thirty-four of them."""
    assert len(PUBLISHED) == 34


@pytest.mark.parametrize("row", PUBLISHED, ids=range(1, 35))
def test_published_pairs(row: list[float]) -> None:
    """Each pair of Sharma, Wu and Dalal (2005) differs by what the paper says, to its four decimals."""
    one, other, published = Lab(*row[:3]), Lab(*row[3:6]), row[6]
    assert round(ciede2000(one, other), 4) == published
    assert round(ciede2000(other, one), 4) == published


@pytest.mark.parametrize(
    ("text", "lab"),
    [
        # The primaries of sRGB under D65, as tables of the matrix of IEC 61966-2-1 have them (from memory).
        ("#ff0000", (53.23, 80.11, 67.22)),
        ("#00ff00", (87.74, -86.18, 83.18)),
        ("#0000ff", (32.30, 79.20, -107.86)),
        ("#ffffff", (100, 0, 0)),
        ("#000000", (0, 0, 0)),
    ],
)
def test_primaries_in_cielab(text: str, lab: tuple[float, float, float]) -> None:
    """The primaries lie where they are published, to a fiftieth."""
    found = lab_of(Colour.of(text))
    assert (found.lightness, found.a, found.b) == pytest.approx(lab, abs=0.02)


@given(COLOURS, COLOURS)
def test_no_difference_means_the_same_colour(one: Colour, other: Colour) -> None:
    """What is told is 0 for one colour alone, and never below."""
    assert difference(one, other) >= 0
    assert (difference(one, other) == 0) == (one == other)


@given(LABS, LABS)
def test_a_difference_has_no_direction(one: Lab, other: Lab) -> None:
    """It is the same both ways, wherever the two lie."""
    assert ciede2000(one, other) == pytest.approx(ciede2000(other, one), abs=1e-9)


@given(LABS)
def test_opposite_hues(one: Lab) -> None:
    """Half a turn apart, where the mean hue may be taken on either side, both ways say the same."""
    opposite = Lab(one.lightness / 2, -one.a / 2, -one.b / 2)
    assert ciede2000(one, opposite) == pytest.approx(ciede2000(opposite, one), abs=1e-9)


@given(COLOURS)
def test_black_and_white_are_a_hundred_apart(colour: Colour) -> None:
    """And no colour is darker than the one or lighter than the other."""
    assert difference(WHITE, BLACK) == 100
    assert 0 <= round(lab_of(colour).lightness, 9) <= 100


@given(SHARES)
def test_greys_have_no_chroma(share: int) -> None:
    """Equal shares of red, green and blue make no hue."""
    assert lab_of(Colour(share, share, share)).chroma < 1e-9


def test_greys_in_order() -> None:
    """The further apart two greys are, the larger the difference."""
    from_black = [difference(BLACK, Colour(share, share, share)) for share in range(256)]
    assert all(nearer < further for nearer, further in pairwise(from_black))


@pytest.mark.slow
def test_another_implementation() -> None:
    """Coloraide finds the same for 2,000 pairs; its matrix has more decimals than that of IEC 61966-2-1."""
    other: Any = pytest.importorskip("coloraide", reason="coloraide is not installed").Color
    chance = random.Random(2005)
    for _ in range(2000):
        one, two = (Colour.of(f"#{chance.randrange(1 << 24):06x}") for _ in range(2))
        expected = other(str(one)).delta_e(other(str(two)), method="2000")
        assert difference(one, two) == pytest.approx(expected, abs=0.02), (one, two)
