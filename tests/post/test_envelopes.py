"""Which envelope takes a make, against published sizes."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.stacked import RIM
from batchleaf.core.post.envelopes import empty_grams, enclosed, own, room_needed, smallest, takes
from batchleaf.core.thickness import Thickness
from batchleaf.facts.envelopes import AMERICAN, METRIC, Envelope, named, on_sale
from batchleaf.facts.postage import USUAL_CLEARANCE
from batchleaf.measure.lengths import Size, Unit, parse_size
from post.makes import thing

PUBLISHED = {
    # ISO 269, as in reportlab and Debian's paperconf, and in printed tables of the standard.
    "C4": "229 x 324 mm", "C5": "162 x 229 mm", "C6": "114 x 162 mm", "C7": "81 x 114 mm",
    "DL": "110 x 220 mm", "B4": "250 x 353 mm", "B5": "176 x 250 mm", "B6": "125 x 176 mm",
    "C6/C5": "114 x 229 mm", "C7/C6": "81 x 162 mm",
    # As sold in America.
    "A1": "3 5/8 x 5 1/8 in", "A2": "4 3/8 x 5 3/4 in", "A6": "4 3/4 x 6 1/2 in", "A7": "5 1/4 x 7 1/4 in",
    "A8": "5 1/2 x 8 1/8 in", "A9": "5 3/4 x 8 3/4 in", "A10": "6 x 9 1/2 in", "#10": "4 1/8 x 9 1/2 in",
    "slimline": "3 7/8 x 8 7/8 in",
}  # fmt: skip


def of(size: str, most: str = "1", rim: str | None = None) -> Thickness:
    """A make of a size, as thick all over unless its rim is said."""
    thick = Fraction(most)
    return Thickness(thick, thick, thick if rim is None else Fraction(rim), parse_size(size, Unit.MM))


@pytest.mark.parametrize(("name", "size"), PUBLISHED.items())
def test_sizes_are_those_published(name: str, size: str) -> None:
    """Each by its own name, and no two under one."""
    assert named(name).size == parse_size(size, Unit.MM)
    assert len({one.name for one in (*METRIC, *AMERICAN)}) == len(METRIC) + len(AMERICAN)


@pytest.mark.parametrize(
    ("card", "envelope"),
    [
        ("4 1/4 x 5 1/2 in", "A2"),
        ("5 1/2 x 8 1/2 in", "A9"),
        ("3 1/2 x 8 1/2 in", "slimline"),
        ("5 x 7 in", "A7"),
        ("5 x 5 in", "square"),
        ("105 x 148 mm", "C6"),
        ("148 x 210 mm", "C5"),
        ("210 x 297 mm", "C4"),
        ("74 x 105 mm", "C7"),
        ("99 x 210 mm", "DL"),
        ("50 x 150 mm", "C7/C6"),
    ],
)
def test_the_usual_cards_go_into_their_usual_envelopes(card: str, envelope: str) -> None:
    """A card of a millimetre and a half, at the usual clearance: the smallest that takes it is its own."""
    for make in (of(card, "1.5"), replace(of(card, "1.5"), size=of(card).size.turned)):
        found = smallest(on_sale(named(envelope).unit), make, USUAL_CLEARANCE)
        assert found == named(envelope)


def test_the_commonest_card_has_just_an_eighth_of_an_inch() -> None:
    """A sixteenth thick is the most; a strict quarter of an inch would refuse every one of them."""
    a2 = named("A2").size
    sixteenth = Fraction("25.4") / 16
    assert USUAL_CLEARANCE == Fraction("3.175") == 2 * sixteenth
    assert takes(a2, of("4 1/4 x 5 1/2 in", str(sixteenth)), USUAL_CLEARANCE)
    assert not takes(a2, of("4 1/4 x 5 1/2 in", str(sixteenth + Fraction(1, 1000))), USUAL_CLEARANCE)
    assert not takes(a2, of("4 1/4 x 5 1/2 in", "0.1"), 2 * USUAL_CLEARANCE)
    assert takes(a2, of("4 1/4 x 5 1/2 in", "3.3", "0.6"), USUAL_CLEARANCE)


def test_a_bump_in_the_middle_needs_less_room_than_a_thick_rim() -> None:
    """Never less than a rim of that thickness by itself, never more than one that is as thick as the bump."""
    bump = room_needed(of("100 x 150", "4", "1"), USUAL_CLEARANCE)
    assert bump == USUAL_CLEARANCE / 2 + 1 + Fraction(9, 10)
    assert room_needed(of("100 x 150", "1"), USUAL_CLEARANCE) <= bump
    assert bump <= room_needed(of("100 x 150", "4"), USUAL_CLEARANCE)


@given(st.fractions(0, 12, max_denominator=20), st.fractions(0, 12, max_denominator=20))
def test_the_paper_reaches_round_the_bump(one: Fraction, other: Fraction) -> None:
    """Half the way round is at least half of a tight loop: the rim, and twice half of the way up and down."""
    rim, most = sorted((one, other))
    room = room_needed(of("100 x 150", str(most), str(rim)), Fraction(0))
    up = float(most - rim)
    way = float(rim) + (float(RIM) ** 2 + up**2) ** 0.5 - float(RIM)
    assert float(room) >= way - 1e-12


@given(st.integers(10, 300), st.integers(10, 300), st.integers(0, 40), st.integers(0, 20))
def test_what_is_thicker_or_wants_more_room_never_fits_a_smaller_one(
    width: int, height: int, tenths: int, more: int
) -> None:
    """And turning the make changes nothing."""
    size = f"{width} x {height}"
    thick, thicker = (str(Fraction(one, 10)) for one in (tenths, tenths + more))
    clearance = USUAL_CLEARANCE + Fraction(more, 10)
    for envelope in METRIC:
        make = of(size, thick)
        fits = takes(envelope.size, make, USUAL_CLEARANCE)
        assert takes(envelope.size.turned, replace(make, size=make.size.turned), USUAL_CLEARANCE) is fits
        assert fits or not takes(envelope.size, of(size, thicker), USUAL_CLEARANCE)
        assert fits or not takes(envelope.size, make, clearance)


def test_of_equals_the_makers_own_is_taken_and_none_is_said_where_none_is() -> None:
    """The drawer's C6 before that of the shop."""
    mine = Envelope("blue", named("C6").size, Unit.MM, "blue")
    assert smallest([*METRIC, mine], of("105 x 148"), USUAL_CLEARANCE) == mine
    assert smallest([*METRIC, mine], of("400 x 400"), USUAL_CLEARANCE) is None


def test_an_envelope_of_the_drawer_brings_its_own_weight_and_thickness() -> None:
    """What it does not say is estimated, heavy and thick: a C6 of 120 g/m² weighs 5.54 g."""
    blue = replace(thing("blue", weighs="4.6", thick="0.4"), envelope=named("C6").size)
    envelope = own(blue)
    assert envelope is not None
    assert (envelope.name, envelope.supply, envelope.size) == ("blue", "blue", named("C6").size)
    found = enclosed(envelope, blue, fits=True)
    assert (found.grams, found.thickness, found.estimated) == (Fraction("4.6"), Fraction("0.4"), False)
    bought = enclosed(named("C6"), None, fits=True)
    assert (bought.grams, bought.thickness, bought.estimated) == (Fraction("5.5404"), Fraction("0.768"), True)
    assert empty_grams(Size(Fraction(100), Fraction(100))) == 3
    assert own(thing("brad")) is None
