"""What goes with a supply by its colours: held to everything tried, to laws, and to cases by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.goes_with import MOST_NEAR, NEAR, STEP, GoesWith, Matches, goes_with
from batchleaf.facts import Supply
from batchleaf.measure.colour_difference import Lab, ciede2000, difference, lab_of
from batchleaf.measure.colours import Colour
from core.drawers import supply

COLOURS = st.builds("#{:06x}".format, st.integers(0, (1 << 24) - 1))
# Papers are mostly pale and dull, so that many of them lie near one another.
PALE = st.builds("#{:02x}{:02x}{:02x}".format, *(st.integers(170, 240) for _ in range(3)))
DRAWERS = st.lists(st.lists(COLOURS | PALE, min_size=1, max_size=3), min_size=2, max_size=14)


def coloured(slug: str, *colours: str, collection: str = "", name: str = "") -> Supply:
    """A card with colours."""
    return replace(supply(slug), name=name or slug, colours=colours, collection=collection)


def drawer(colours: Sequence[Sequence[str]]) -> list[Supply]:
    """Cards of these colours, called by number."""
    return [coloured(f"card-{number}", *own) for number, own in enumerate(colours)]


def slugs(matches: Matches) -> list[str]:
    """In their order."""
    return [match.supply.slug for match in matches]


def groups(found: GoesWith) -> list[Matches]:
    """All that is told."""
    return [found.collection, found.near, found.lighter, found.darker, found.opposite]


@given(DRAWERS, st.randoms(use_true_random=False))
def test_the_order_of_the_drawer_changes_nothing(colours: list[list[str]], chance: Random) -> None:
    """Records may stand in any order."""
    cards = drawer(colours)
    shuffled = chance.sample(cards, len(cards))
    assert goes_with(cards[0], cards) == goes_with(cards[0], shuffled)


@given(DRAWERS)
def test_nothing_is_named_twice(colours: list[list[str]]) -> None:
    """Neither the supply itself, nor any other in two groups."""
    cards = drawer(colours)
    named = [slug for matches in groups(goes_with(cards[0], cards)) for slug in slugs(matches)]
    assert len(set(named)) == len(named)
    assert cards[0].slug not in named


@given(st.lists(PALE | COLOURS, min_size=2, max_size=14))
def test_what_is_near_is_found_by_trying_all(colours: list[str]) -> None:
    """Of one colour each: the four nearest of all that differ by ten or less, in order."""
    mine, *others = drawer([[colour] for colour in colours])
    tried = sorted((difference(Colour.of(mine.colour), Colour.of(one.colour)), one.slug) for one in others)
    within = [slug for apart, slug in tried if apart <= NEAR]
    assert slugs(goes_with(mine, others).near) == within[:MOST_NEAR]


@given(DRAWERS)
def test_differences_are_those_of_the_nearest_colours(colours: list[list[str]]) -> None:
    """Whatever is named, and the colour that is told is the one that is so near."""
    mine, *others = drawer(colours)
    for match in (match for matches in groups(goes_with(mine, others)) for match in matches):
        pairs = {
            (one, other): difference(Colour.of(one), Colour.of(other))
            for one in mine.colours
            for other in match.supply.colours
        }
        assert match.difference == min(pairs.values()) == pairs[mine.colours[match.to], match.colour]


@given(DRAWERS)
def test_lighter_is_lighter(colours: list[list[str]]) -> None:
    """By the main colours, and darker is darker."""
    mine, *others = drawer(colours)
    found, own = goes_with(mine, others), lab_of(Colour.of(mine.colour)).lightness
    steps = [
        [lab_of(Colour.of(match.supply.colour)).lightness - own for match in matches]
        for matches in (found.lighter, found.darker)
    ]
    assert all(step > STEP - 0.001 for step in steps[0])
    assert all(step < 0.001 - STEP for step in steps[1])


LABS = st.builds(Lab, st.floats(0, 100), st.floats(-120, 120), st.floats(-120, 120))


@given(LABS, LABS)
def test_lightness_alone_may_tell_colours_apart(one: Lab, other: Lab) -> None:
    """A difference is at least that of lightness, divided by 1.75: what is left out for it is not near."""
    assert ciede2000(one, other) >= abs(one.lightness - other.lightness) / 1.75 - 1e-9


def test_alike_ones_stand_by_name() -> None:
    """Three that are the same: the order is that of their names, small and large letters alike."""
    cards = [
        coloured("x", "#b7b0a2", name="Sand"),
        coloured("y", "#b7b0a2", name="pebble"),
        coloured("z", "#b7b0a2", name="reed"),
    ]
    near = goes_with(coloured("mine", "#b7b0a2"), cards).near
    assert slugs(near) == ["y", "z", "x"]
    assert {match.difference for match in near} == {0.0}


def test_each_colour_is_served_in_turn() -> None:
    """Five near the first colour do not crowd out the one that is near the second."""
    whites = [coloured(f"white-{n}", f"#f{n}f0f0") for n in range(5)]
    mine = coloured("mine", "#f0f0f0", "#3c4a2e")
    near = goes_with(mine, [*whites, coloured("moss", "#40502e")]).near
    assert [match.to for match in near] == [0, 0, 0, 1]
    assert slugs(near)[-1] == "moss"


def test_the_collection_comes_first_however_far() -> None:
    """Told by one name, in small or large letters; it is not named as near again."""
    mine = coloured("mine", "#f0ece2", collection="Shore")
    cards = [
        coloured("far", "#3c4a2e", collection="shore"),
        coloured("same", "#f0ece2", collection="Shore"),
        coloured("alike", "#f0ece2", collection="Hills"),
    ]
    found = goes_with(mine, cards)
    assert (slugs(found.collection), slugs(found.near)) == (["same", "far"], ["alike"])


def test_supplies_without_a_collection_have_none() -> None:
    """Nothing is not a name that they share."""
    assert goes_with(coloured("mine", "#f0ece2"), [coloured("other", "#000000")]).collection == ()


@pytest.mark.parametrize(
    ("other", "group"),
    [
        ("#c8ae8a", "lighter"),  # hue 80, lightness 72
        ("#5b4a33", "darker"),  # hue 79, lightness 32
        ("#3c495c", "opposite"),  # hue 270
        ("#3c4a2e", ""),  # hue 128
        ("#808080", ""),  # grey has no hue
    ],
)
def test_shades_and_what_lies_opposite(other: str, group: str) -> None:
    """Jute, hue 79 and lightness 59: of one hue lighter and darker, and half a turn away."""
    found = goes_with(coloured("jute", "#a98a5c"), [coloured("other", other)])
    names = ("collection", "near", "lighter", "darker", "opposite")
    assert [name for name, matches in zip(names, groups(found), strict=True) if matches] == [group] * bool(
        group
    )


def test_greys_have_lighter_greys() -> None:
    """Without a hue the others without one are of the same."""
    found = goes_with(
        coloured("slate", "#606060"), [coloured("white", "#ffffff"), coloured("black", "#000000")]
    )
    assert (slugs(found.lighter), slugs(found.darker), found.opposite) == (["white"], ["black"], ())


def test_papers_of_a_pad_are_told_with_the_pad() -> None:
    """Its twelve papers are one thing here; what has no colour is left out."""
    pad = coloured("pad", "#f0ece2")
    papers = [replace(pad, slug=f"pad-{n}", pad="pad", number=n) for n in (1, 2)]
    assert slugs(goes_with(coloured("mine", "#f0ece2"), [pad, *papers, supply("bare")]).near) == ["pad"]
