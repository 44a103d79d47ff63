"""Where parts sit, as it is written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts.spots import END, MIDDLE, START, Face, Spot
from batchleaf.measure.lengths import WRITTEN, Unit
from batchleaf.records.spots import POSITIONS, read_spots, spell_spots

SIX: Fraction = Fraction(6)


@pytest.mark.parametrize(
    ("text", "spots"),
    [
        ("bottom, up 6", [Spot(MIDDLE, END, lower=-SIX)]),
        ("top left, right 6, down 6", [Spot(START, START, right=SIX, lower=SIX)]),
        ("Right", [Spot(END, MIDDLE)]),
        ("up 1/4 in", [Spot(lower=Fraction(-127, 20))]),
        ("left door; right door", [Spot(face=Face.LEFT_DOOR), Spot(face=Face.RIGHT_DOOR)]),
        ("inside  right, top", [Spot(MIDDLE, START, face=Face.INSIDE_RIGHT)]),
        ("back of panel 3, turned 90", [Spot(quarter_turns=1, face=Face.BACK_OF_PANEL, panel=3)]),
        ("centre, upside down, behind c", [Spot(quarter_turns=2, behind="C")]),
        ("top, turned 270°", [Spot(MIDDLE, START, quarter_turns=3)]),
    ],
)
def test_a_place_in_the_words_of_the_trade(text: str, spots: list[Spot]) -> None:
    """Face, edge or corner, distance, turn, what it is tucked behind, in any order."""
    assert list(read_spots(text, Unit.MM)) == spots


LENGTHS = st.integers(16, 4000).map(lambda n: Fraction(n, 16))
PANELS = st.one_of(
    st.tuples(st.none(), st.just(0)),
    st.tuples(
        st.sampled_from([face for face in Face if face not in (Face.PANEL, Face.BACK_OF_PANEL)]), st.just(0)
    ),
    st.tuples(st.sampled_from([Face.PANEL, Face.BACK_OF_PANEL]), st.integers(1, 12)),
)


@st.composite
def any_spot(draw: st.DrawFn) -> Spot:
    """Any place that can be written."""
    across, down = draw(st.sampled_from(sorted(set(POSITIONS.values()))))
    face, panel = draw(PANELS)
    return Spot(
        across=across,
        down=down,
        right=draw(st.one_of(st.just(Fraction(0)), LENGTHS, LENGTHS.map(lambda one: -one))),
        lower=draw(st.one_of(st.just(Fraction(0)), LENGTHS, LENGTHS.map(lambda one: -one))),
        quarter_turns=draw(st.integers(0, 3)),
        face=face,
        panel=panel,
        behind=draw(st.sampled_from(["", "B", "Z"])),
    )


@given(st.lists(any_spot(), min_size=1, max_size=4), st.sampled_from(WRITTEN))
def test_a_place_written_out_reads_back_as_the_same(spots: list[Spot], unit: Unit) -> None:
    """Whatever the unit of the record."""
    assert list(read_spots(spell_spots(spots, unit), unit)) == spots
