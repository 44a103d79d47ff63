"""What one make weighs, against published figures and laws."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.weight import Weighed, grammage_of, grams_of_one, weigh, weigh_part
from batchleaf.facts import Origin, Purpose, Use
from batchleaf.facts.shapes import Shape, Whole
from batchleaf.measure.grammage import parse_grammage
from batchleaf.measure.lengths import Size, Unit, parse_size
from core.drawers import supply
from post.makes import CARD, THIN, drawer, make_of, on, thing, used


def sheet(size: str, weight: str) -> Weighed:
    """A flat make that is nothing but one piece of paper."""
    paper = replace(CARD, grammage=parse_grammage(weight))
    made = make_of(f"card {size}", unit=parse_unit(size))
    return weigh(made, {"card": paper})


def parse_unit(size: str) -> Unit:
    """The unit at the end of a size."""
    return Unit.INCH if size.endswith("in") else Unit.MM


@pytest.mark.parametrize(
    ("size", "weight", "grams"),
    [
        # A hundredth of a pound: 500 sheets of 17 x 22 in weigh 20 lb, and each gives four letter sheets.
        ("8 1/2 x 11 in", "20 lb bond", "4.5359237"),
        ("210 x 297", "80 g/m²", "4.9896"),
    ],
)
def test_identities(size: str, weight: str, grams: str) -> None:
    """Exactly, by the definition of the units."""
    assert sheet(size, weight) == Weighed(Fraction(grams))


def test_half_a_letter_sheet_of_80_lb_cover() -> None:
    """6.5248 g, worked out from the basic size to four places."""
    assert abs(sheet("5 1/2 x 8 1/2 in", "80 lb cover").grams - Fraction("6.5248")) < Fraction("0.00005")


def test_a_card_worked_by_hand() -> None:
    """A6 side fold of 240 g/m² with two panels of 100 g/m², tape, foam, a brad and 200 mm of cord.

    Base 210 x 148: 7.4592 g. Two of 50 x 40: 0.4 g. Tape 0.2 m of 0.6 g, 0.12 g; four foam squares of
    0.05 g, 0.2 g; a brad of 0.6 g; cord 0.2 m of 1.3 g, 0.26 g. The envelope is packing.
    """
    made = make_of(
        "card A6, side fold",
        on("B", "50", "40", each=2),
        uses=(
            used("tape", "0.2", Purpose.STICKING),
            used("foam", "4", Purpose.STICKING),
            used("brad", "1"),
            used("cord", "0.2"),
            used("envelope", "1", Purpose.PACKING),
        ),
    )
    found = weigh(
        made,
        drawer(
            thing("tape", "m", weighs="0.6"),
            thing("foam", weighs="0.05"),
            thing("brad", weighs="0.6"),
            thing("cord", "m", weighs="1.3"),
            thing("envelope", weighs="5"),
        ),
    )
    assert found == Weighed(Fraction("7.4592") + Fraction("0.4") + Fraction("1.18"))


def test_what_has_no_known_weight_is_named_and_adds_nothing() -> None:
    """The weight is then at least the rest: a paper, a brad, a part from scraps of nobody knows what."""
    unknown = replace(supply("mystery"), grammage=None)
    made = make_of(
        "card 100 x 100",
        on("B", "50", "40", paper="mystery"),
        replace(on("C", "50", "40"), papers=(), origin=Origin.BY_HAND),
        uses=(used("brad", "1"), Use("ink", None)),
    )
    found = weigh(made, drawer(unknown, thing("brad"), thing("ink", "pad")))
    assert found == Weighed(Fraction("2.4"), ("mystery", "brad"), ("C",), ("ink",))
    assert not found.complete


def test_parts_cut_by_hand_weigh_as_much_as_any() -> None:
    """Nobody measured the scrap; the part has a size."""
    by_hand = on("B", "50", "40", origin=Origin.BY_HAND)
    assert weigh_part(by_hand, drawer()) == weigh_part(on("B", "50", "40"), drawer())


def test_of_several_papers_the_heaviest_counts_and_one_unknown_hides_all() -> None:
    """Nobody knows which paper a make gets."""
    part = replace(on("B", "100", "100"), papers=("paper", "card"))
    assert weigh_part(part, drawer()) == Weighed(Fraction("2.4"))
    part = replace(part, papers=("paper", "card", "mystery"))
    assert weigh_part(part, drawer(supply("mystery"))) == Weighed(Fraction(0), ("mystery",))


def test_what_is_bought_ready_made_weighs_what_one_of_it_does() -> None:
    """It counts once, although it is listed among what is used as well; else its own size counts."""
    star = replace(supply("star", size=Size(Fraction(20), Fraction(20))), weighs=Fraction("0.7"))
    part = on("B", "20", "20", paper="star", each=3, origin=Origin.READY)
    made = make_of("card 100 x 100", part, uses=(used("star", "3"),))
    assert weigh(made, drawer(star)) == Weighed(Fraction("4.5"))
    star = replace(star, weighs=None, grammage=Fraction(500))
    assert weigh(made, drawer(star)) == Weighed(Fraction("3.0"))


def test_a_sheet_that_was_weighed_gives_its_grammage() -> None:
    """4.9896 g of an A4 sheet are 80 g/m²; what is printed on the packet comes first."""
    weighed = replace(supply(size=parse_size("210 x 297", Unit.MM)), weighs=Fraction("4.9896"))
    assert grammage_of(weighed) == 80
    assert grammage_of(replace(weighed, grammage=Fraction(90))) == 90


def test_what_is_kept_by_weight_weighs_that() -> None:
    """A gram a gram, and a kilogram a thousand."""
    assert [grams_of_one(thing("a", unit)) for unit in ("g", "kg")] == [1, 1000]
    assert grams_of_one(thing("c", "ml")) is None
    assert grams_of_one(THIN) == 4


def test_what_is_said_for_the_batch_is_shared_by_what_was_finished() -> None:
    """Of a batch that is not begun by what is planned."""
    made = make_of("card 100 x 100", uses=(Use("glue", Fraction(8), None),))
    assert weigh(made, drawer(thing("glue", "g"))) == Weighed(Fraction("4.4"))
    planned = replace(made, finished=0, begun=2)
    assert weigh(planned, drawer(thing("glue", "g"))) == Weighed(Fraction("6.4"))


SIDES = st.integers(1, 400).map(str)
PARTS = st.lists(st.tuples(SIDES, SIDES, st.integers(1, 5)), max_size=6)


@given(PARTS, PARTS)
def test_weight_is_additive_and_never_falls(
    some: list[tuple[str, str, int]], more: list[tuple[str, str, int]]
) -> None:
    """What two lots of parts weigh together is the sum, and each part more weighs more."""
    base = weigh(make_of("card 100 x 100"), drawer()).grams

    def together(sizes: list[tuple[str, str, int]]) -> Fraction:
        parts = [on("B", width, height, each=each) for width, height, each in sizes]
        return weigh(make_of("card 100 x 100", *parts), drawer()).grams

    both = together([*some, *more])
    assert both - base == (together(some) - base) + (together(more) - base)
    assert both >= together(some) + (0 if not more else Fraction(1, 10_000))


@given(SIDES, SIDES, st.integers(1, 5))
def test_turning_a_part_changes_nothing(width: str, height: str, each: int) -> None:
    """Neither does cutting it larger, since it is trimmed."""
    part = on("B", width, height, each=each)
    turned = replace(part, size=part.size.turned, oversize=Fraction(5))
    assert weigh_part(part, drawer()) == weigh_part(turned, drawer())


def test_a_shape_weighs_what_is_left_of_it() -> None:
    """A tag of 60 x 100 of 240 g/m² with clipped corners of 14 and a hole of 5, and a moon of 16 of 100 g/m².

    6000 - 196 - 25π/4 = 5784.365 mm², 1.3882 g; 64π = 201.062 mm², 0.0201 g. The moon is cut 18 x 18.
    """
    moon = replace(on("B", "16", "16"), shape=Shape(Whole.CIRCLE), oversize=Fraction(1))
    made = make_of("tag 60 x 100, clipped 14 top, hole 5 top, down 10", moon)
    assert abs(weigh(made, drawer(CARD, THIN)).grams - Fraction("1.40835")) < Fraction("0.00001")
