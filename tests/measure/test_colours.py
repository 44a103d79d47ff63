"""How far colours stand out from one another, against published figures."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.colours import BLACK, READABLE, WHITE, Colour
from batchleaf.measure.errors import MeasureError

COLOURS = st.builds(Colour, *(st.integers(0, 255) for _ in range(3)))


@pytest.mark.parametrize(
    ("text", "ratio"),
    [
        # W3C, Understanding Success Criterion 1.4.3 (from memory): black, and two greys.
        ("#000000", 21.0),
        ("#ffffff", 1.0),
        ("#767676", 4.54),
        ("#777777", 4.47),
        # The primaries, from their luminance alone: 1.05 / (0.2126 + 0.05) and so on.
        ("#ff0000", 1.05 / 0.2626),
        ("#0000ff", 1.05 / 0.1222),
        ("#00ff00", 1.05 / 0.7652),
    ],
)
def test_contrast_on_white(text: str, ratio: float) -> None:
    """The ratios are those that are published for WCAG 2, to a hundredth."""
    assert Colour.of(text).contrast(WHITE) == pytest.approx(ratio, abs=0.01)


@given(COLOURS, COLOURS)
def test_contrast_has_no_direction(one: Colour, other: Colour) -> None:
    """It is the same both ways, and lies between that of equals and that of black on white."""
    assert one.contrast(other) == other.contrast(one)
    assert 1 <= one.contrast(other) <= WHITE.contrast(BLACK)


@given(COLOURS)
def test_a_colour_is_written_as_it_is_read(colour: Colour) -> None:
    """In small letters, with all six figures."""
    assert Colour.of(str(colour)) == colour


@given(COLOURS, COLOURS)
def test_as_little_as_brings_it_there(colour: Colour, ground: Colour) -> None:
    """The mixture stands out as far as asked, and what does already stays as it is."""
    towards = max(BLACK, WHITE, key=ground.contrast)
    mixture = colour.until(READABLE, ground, towards)
    assert mixture.contrast(ground) >= READABLE
    if colour.contrast(ground) >= READABLE:
        assert mixture == colour


def test_what_cannot_be_reached() -> None:
    """Then nothing is left of the colour."""
    assert Colour.of("#888888").until(22, WHITE, BLACK) == BLACK


@pytest.mark.parametrize(
    "text", ["", "red", "#fff", "#12345g", "123456", "#1234567", "#12345\n", "#１２３４５６"]
)
def test_no_colour(text: str) -> None:
    """Anything but six figures after a # is refused, in a sentence."""
    with pytest.raises(MeasureError, match="is not a colour; write # and six figures"):
        Colour.of(text)
