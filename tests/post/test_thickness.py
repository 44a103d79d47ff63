"""How thick a make is, folded flat: panels over panels, parts over parts, foam and brads."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.folded import Folded, fold_up, wrapped
from batchleaf.core.thickness import BULK, UNEVEN, caliper, thickness_of
from batchleaf.facts import Part, Purpose, Use
from batchleaf.facts.spots import Face, Spot
from batchleaf.measure.grammage import parse_grammage
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.measure.thickness import MM_PER_POINT
from batchleaf.records.spots import read_spots
from core.drawers import supply
from post.makes import BASES, CARD, FOLDED, THIN, drawer, make_of, on, put, thing, used

SHEET = replace(CARD, thickness=Fraction("0.3"))
LEAF = replace(THIN, thickness=Fraction("0.1"))
FOAM = thing("foam", thick="2")
TAPE = thing("tape", "m", thick="0.1", kind="adhesive")
KNOWN = drawer(SHEET, LEAF, FOAM, TAPE)


def at(text: str) -> Spot:
    """A place in the words of a record."""
    (spot,) = read_spots(text, Unit.MM)
    return spot


def folded(text: str, *parts: Part) -> Folded:
    """The make as it lies flat."""
    project = make_of(text, *parts)
    return fold_up(put(project), project.parts[0])


# --- estimates ------------------------------------------------------------------


@pytest.mark.parametrize(
    ("weight", "points"),
    [
        # "Guide only", says the paper guide that prints them.
        ("65 lb cover", "8"),
        ("80 lb cover", "9.5"),
        ("100 lb cover", "11"),
        ("110 lb index", "9"),
        ("20 lb bond", "3.8"),
        # Uncoated card, from memory.
        ("80 lb cover", "11"),
        ("80 lb cover", "13"),
    ],
)
def test_an_estimate_is_never_thinner_than_what_is_published(weight: str, points: str) -> None:
    """It errs thick; by no more than twice what the thinnest of them is."""
    grammage = parse_grammage(weight)
    estimated, published = caliper(replace(CARD, grammage=grammage)), Fraction(points) * MM_PER_POINT
    assert estimated == (grammage * BULK / 1000, True)
    assert published <= estimated[0] < published * 2


def test_what_the_drawer_says_comes_before_any_estimate() -> None:
    """Nothing is estimated of a brad; of a sheet that was weighed its grammage is known."""
    assert caliper(SHEET) == (Fraction("0.3"), False)
    assert caliper(thing("brad", weighs="0.4")) is None
    assert caliper(supply()) is None
    weighed = replace(supply(), weighs=Fraction("2.4"))
    assert caliper(weighed) == (Fraction("0.384"), True)


# --- folding --------------------------------------------------------------------


@pytest.mark.parametrize(("text", "layers"), BASES)
def test_as_many_panels_lie_over_one_another_as_the_fold_makes(text: str, layers: int) -> None:
    """A gate fold has its back and the doors, an accordion all of its panels."""
    found = thickness_of(make_of(text), KNOWN)
    assert found is not None
    assert (found.most, found.usual, found.rim) == (layers * Fraction("0.3"),) * 3
    assert found.size == Size(Fraction(100), Fraction(150))
    assert (found.complete, found.estimated, found.uneven) == (True, (), False)


PLACES = [
    # Under the front at its lower right, as each face is seen by itself.
    ("card 200 x 150, side fold", "front, bottom right", "inside left, bottom left"),
    ("card 200 x 150, side fold", "front, bottom right", "inside right, bottom right"),
    ("card 200 x 150, side fold", "front, bottom right", "back, bottom left"),
    # What lies inside on top stands on its head once the card is closed.
    ("card 100 x 300, top fold", "front, bottom right", "inside top, top right"),
    ("card 100 x 300, top fold", "front, bottom right", "inside bottom, bottom right"),
    ("card 100 x 300, top fold", "front, bottom right", "back, bottom left"),
    ("card 100 x 300, tent", "front, top left", "back, top right"),
    ("card 200 x 150, gate fold", "right door, bottom right", "inside, bottom right"),
    ("card 200 x 150, gate fold", "right door, bottom right", "inside right door, bottom left"),
    ("card 200 x 150, gate fold", "left door, bottom left", "inside left door, bottom right"),
    ("card 200 x 150, gate fold", "left door, bottom left", "back, bottom right"),
    ("card 400 x 150, accordion of 4", "panel 1, top left", "panel 2, top right"),
    ("card 400 x 150, accordion of 4", "panel 1, top left", "panel 3, top left"),
    ("card 400 x 150, accordion of 4", "panel 1, top left", "back of panel 4, top left"),
    ("card 400 x 150, accordion of 4", "panel 2, top left", "back of panel 3, top left"),
    ("card 100 x 150", "front, top left", "back, top right"),
]
"""A base, and two places that lie over one another once it is folded."""


@pytest.mark.parametrize(("text", "one", "other"), PLACES)
def test_places_that_fall_on_one_another(text: str, one: str, other: str) -> None:
    """By hand, with a folded piece of paper: the two small pieces lie in one corner."""
    b, c = on("B", "20", "30", at(one)), on("C", "20", "30", at(other))
    small = [layer.rect for layer in folded(text, b, c).layers if layer.carried]
    assert len(small) == 2
    assert small[0] == small[1]


@pytest.mark.parametrize(("text", "one", "other"), PLACES)
def test_places_that_do_not_fall_on_one_another_do_not_add_up(text: str, one: str, other: str) -> None:
    """The other one in the opposite corner: each by itself is the thickest spot."""
    swap = {"top": "bottom", "bottom": "top", "left": "right", "right": "left"}
    face, _, corner = other.rpartition(", ")
    opposite = f"{face}, {' '.join(swap[word] for word in corner.split())}"
    together, apart = (
        thickness_of(make_of(text, on("B", "20", "30", at(one)), on("C", "20", "30", at(place))), KNOWN)
        for place in (other, opposite)
    )
    assert together is not None
    assert apart is not None
    assert together.most == apart.most + Fraction("0.1")


@pytest.mark.parametrize("text", FOLDED)
def test_the_papers_of_a_folded_make_have_the_area_of_the_flat_one(text: str) -> None:
    """Nothing is lost or doubled: all layers have together the area of the blank and of the parts."""
    made = folded(text, on("B", "20", "30"), on("C", "10", "10"))
    blank = make_of(text).parts[0].size.area
    assert sum(layer.rect.area for layer in made.layers) == blank + 700
    assert made.face == Rect(made.face.x, made.face.y, Fraction(100), Fraction(150))


def test_a_box_does_not_lie_flat() -> None:
    """It has no layers."""
    with pytest.raises(ValueError, match="does not lie flat"):
        folded("box 60 x 60 x 30")


# --- what sticks out, and what goes round -------------------------------------------


def test_a_band_goes_round_and_what_overhangs_one_edge_sticks_out() -> None:
    """A band of 230 round a card of 100: 100 in front, 100 behind, 30 over one another behind."""
    band = folded("card 100 x 150", on("B", "230", "20"))
    rects = [layer.rect for layer in band.layers if layer.carried]
    assert [rect.width for rect in rects] == [100, 65, 65]
    assert band.size == Size(Fraction(100), Fraction(150))
    found = thickness_of(make_of("card 100 x 150", on("B", "230", "20")), KNOWN)
    assert found is not None
    assert found.most == Fraction("0.3") + 3 * Fraction("0.1")
    tab = thickness_of(make_of("card 100 x 150", on("B", "20", "20", at("right, right 5"))), KNOWN)
    assert tab is not None
    assert (tab.size, tab.most) == (Size(Fraction(105), Fraction(150)), Fraction("0.4"))


@pytest.mark.parametrize("text", [text for text, _ in BASES])
def test_what_goes_round_the_whole_goes_round_every_base(text: str) -> None:
    """Of 230, 85 below the top, round 100: once in front, twice behind, and nothing sticks out."""
    band = folded(text, on("B", "20", "230", at("round, top, down 85, turned 90")))
    rects = [layer.rect for layer in band.layers if layer.carried]
    assert sum(rect.width for rect in rects) == 230
    assert len(rects) >= 3
    assert all(band.face.holds(rect) and rect.y - band.face.y == 85 for rect in rects)


ON_TOP = [(text, "front") for text in FOLDED[:4]] + [(FOLDED[4], "left door"), (FOLDED[5], "panel 1")]


@pytest.mark.parametrize(("text", "face"), ON_TOP)
def test_a_make_is_seen_from_its_front(text: str, face: str) -> None:
    """What lies at the upper left of the front lies there once it is folded; a band crosses it there."""
    seal, band = on("B", "20", "30", at(f"{face}, top left")), on("C", "230", "20", at("round, top, down 5"))
    made = folded(text, seal, band)
    rects = [layer.rect.moved(-made.face.x, -made.face.y) for layer in made.layers if layer.carried]
    assert rects[0] == Rect(Fraction(0), Fraction(0), Fraction(20), Fraction(30))
    assert {(int(rect.y), int(rect.height)) for rect in rects[1:]} == {(5, 20)}


def test_a_band_round_a_box_lies_on_top_and_below() -> None:
    """30 mm of walls and one card of 0.3, and twice 0.1."""
    found = thickness_of(make_of("box 60 x 60 x 30", on("B", "20", "200", at("round"))), KNOWN)
    assert found is not None
    assert found.most == Fraction("30.5")


@given(st.integers(1, 2000), st.integers(0, 300))
def test_a_band_keeps_its_length_however_often_it_goes_round(length: int, left: int) -> None:
    """All of it lies on the face, in as many pieces as it needs."""
    face = Rect(Fraction(0), Fraction(0), Fraction(100), Fraction(150))
    band = Rect(Fraction(-left), Fraction(10), Fraction(length), Fraction(20))
    pieces = list(wrapped(band, face))
    assert sum(piece.width for piece in pieces) == length
    if left and length - left > 100:
        assert all(face.holds(piece) for piece in pieces)
    else:
        assert pieces == [band]


# --- what is stuck on, and what has no place ---------------------------------------------


def test_foam_counts_under_the_whole_of_its_part() -> None:
    """2 mm of foam and 0.1 of paper on two panels of 0.3: 2.7; over most of the card it is 0.6."""
    found = thickness_of(make_of("card A6, side fold", on("B", "40", "50", stuck="foam")), KNOWN)
    assert found is not None
    assert (found.most, found.usual) == (Fraction("2.7"), Fraction("0.6"))
    assert found.uneven
    taped = thickness_of(make_of("card A6, side fold", on("B", "40", "50", stuck="tape")), KNOWN)
    assert taped is not None
    assert (taped.most, taped.uneven) == (Fraction("0.8"), False)


def test_a_millimetre_is_even_and_more_is_not() -> None:
    """By the house's own rule."""
    for extra, uneven in ((Fraction(0), False), (Fraction(1, 1000), True)):
        pad = thing("pad", thick=str(UNEVEN - Fraction("0.1") + extra))
        found = thickness_of(
            make_of("card 100 x 150", on("B", "20", "20", stuck="pad")), {**KNOWN, "pad": pad}
        )
        assert found is not None
        assert found.uneven is uneven


def test_what_has_no_place_lies_on_the_thickest_spot_and_what_is_tied_goes_round() -> None:
    """A brad of 3 mm once, however many there are; a cord of 1.5 twice; ink and glue not at all."""
    extra = [
        thing("brad", thick="3"),
        thing("cord", "m", thick="1.5"),
        thing("ink", "pad"),
        thing("glue", "ml"),
        thing("bag", thick="9"),
    ]
    uses = (
        used("brad", "4"),
        used("cord", "0.2"),
        used("glue", "2"),
        Use("ink", None),
        used("bag", "1", Purpose.PACKING),
    )
    found = thickness_of(make_of("card 100 x 150", uses=uses), drawer(SHEET, *extra))
    assert found is not None
    assert (found.most, found.rim, found.usual) == (Fraction("6.3"), Fraction("6.3"), Fraction("0.3"))
    assert found.complete


def test_what_has_no_known_thickness_is_named() -> None:
    """Foam, a brad and a cord; glue has none that counts."""
    extra = [thing("foam"), thing("brad"), thing("cord", "m"), thing("glue", "bottle")]
    parts = (on("B", "20", "20", stuck="foam"), replace(on("C", "20", "20"), papers=()))
    uses = (used("brad", "1"), used("cord", "0.2"), used("glue", "1/10"))
    found = thickness_of(make_of("card 100 x 150", *parts, uses=uses), drawer(SHEET, LEAF, *extra))
    assert found is not None
    assert (set(found.without), found.parts) == ({"foam", "brad", "cord"}, ("C",))
    assert (found.most, found.complete) == (Fraction("0.4"), False)


def test_of_several_papers_the_thickest_counts() -> None:
    """Nobody knows which paper a make gets."""
    part = replace(on("B", "20", "20"), papers=("paper", "card"))
    found = thickness_of(make_of("card 100 x 150", part), KNOWN)
    assert found is not None
    assert found.most == Fraction("0.6")


def test_an_estimate_is_named_and_may_be_half_of_it() -> None:
    """For a rule that asks for a least thickness."""
    found = thickness_of(make_of("card 200 x 150, side fold"), drawer())
    assert found is not None
    assert found.estimated == ("card",)
    assert (found.most, found.least) == (Fraction("0.768"), Fraction("0.384"))
    known = thickness_of(make_of("card 200 x 150, side fold"), KNOWN)
    assert known is not None
    assert known.least == Fraction("0.6")


def test_a_part_whose_place_is_not_there_lies_on_the_thickest_spot() -> None:
    """Its record is told of elsewhere."""
    lost = on("B", "20", "20", Spot(face=Face.LEFT_DOOR))
    found = thickness_of(make_of("card 200 x 150, side fold", lost), KNOWN)
    assert found is not None
    assert found.most == Fraction("0.7")


def test_a_box_is_as_high_as_its_walls_its_card_and_what_stands_on_it() -> None:
    """30 mm of walls, bottom and top of 0.3, and a label of 0.1 on its lid; what lies inside adds nothing."""
    label, lining = on("B", "40", "40", below="L"), on("C", "50", "50", below="A")
    found = thickness_of(make_of("box 60 x 60 x 30, lid 15", label, lining), KNOWN)
    assert found is not None
    assert (found.most, found.is_box, found.uneven) == (Fraction("30.7"), True, False)
    assert found.size == Size(Fraction("61.5"), Fraction("61.5"))


def test_without_a_base_nobody_knows() -> None:
    """How the parts lie."""
    assert thickness_of(replace(make_of("card 100 x 150"), parts=()), KNOWN) is None


@given(
    st.sampled_from(FOLDED),
    st.lists(st.tuples(st.integers(1, 90), st.integers(1, 90), st.booleans()), max_size=5),
)
def test_turning_a_make_changes_nothing_and_a_part_more_never_makes_it_thinner(
    text: str, sizes: list[tuple[int, int, bool]]
) -> None:
    """Each part in the middle of the base, stuck with foam or not."""
    parts = [
        on(chr(ord("B") + n), str(width), str(height), stuck="foam" if raised else "")
        for n, (width, height, raised) in enumerate(sizes)
    ]
    before = Fraction(0)
    for count in range(len(parts) + 1):
        found = thickness_of(make_of(text, *parts[:count]), KNOWN)
        assert found is not None
        assert found.most >= before
        before = found.most
    upside_down = [replace(part, spots=(Spot(quarter_turns=2),)) for part in parts]
    turned = thickness_of(make_of(text, *upside_down), KNOWN)
    assert turned == found
