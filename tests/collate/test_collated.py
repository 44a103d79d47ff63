"""The collated sets of whole batches: what was cut, which rule, and every make that was begun."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, cutting_of
from batchleaf.core.collate.collated import MOST_IN_ONE, MOST_PARTS, Collated, collated
from batchleaf.core.collate.makes import Copies
from batchleaf.core.collate.parts_cut import parts_cut
from batchleaf.facts import Collating, ImageUse, Origin, Part, Project, Rule, ShownSide
from core.drawers import batch_of, pad, part, supply

PADS = pad(designs=12)
SUPPLIES = {one.slug: one for one in (*PADS, *(supply(f"p{n}") for n in range(1, 7)), supply("card"))}
FOUR = ("p1", "p2", "p3", "p4")


def with_rules(one: Project, *rules: tuple[str, Rule]) -> Project:
    """The batch with these rules, each for the parts of some letters."""
    return replace(one, collating=tuple(Collating(tuple(letters), rule) for letters, rule in rules))


def sets_of(one: Project, *, planned: bool = True) -> Collated:
    """The sets that there must be; ``planned``: with a cutting plan."""
    cutting = cutting_of(one, SUPPLIES, PLANNER) if planned else None
    found = collated(one, cutting, SUPPLIES)
    assert found is not None
    return found


def shown(copies: Copies) -> str:
    """``p1 p1 p2``, ``pad/2``, ``p1:3`` with image 3."""
    said = []
    for copy in copies:
        paper = "" if copy.paper is None else copy.paper.supply + f"/{copy.paper.nth}" * bool(copy.paper.nth)
        said.append(paper + "".join(f":{number}" for _, number in copy.images))
    return " ".join(said)


def table(found: Collated) -> list[tuple[str, ...]]:
    """``("1-4", "p1", "p2")``: the makes, and what they get of each letter."""
    return [
        (
            f"{one.first}-{one.last}" if one.keeps else f"({one.first}-{one.last})",
            *(shown(copies) for copies in one.parts.values()),
        )
        for one in found.makes
    ]


def cut_in_short(one: Project, letter: str) -> dict[str, int]:
    """Paper → how many parts of one letter there are."""
    found = parts_cut(one, cutting_of(one, SUPPLIES, PLANNER), SUPPLIES)[letter]
    return {f"{paper.supply}/{paper.nth}" if paper.nth else paper.supply: n for paper, n in found.items()}


# --- how many parts there are of each paper ----------------------------------------


def test_a_plan_says_how_many_come_from_each_paper() -> None:
    """Four lie on a sheet: of eight four come from each; for ten, the second paper gives its eight."""
    strip = part("B", 50, 50, "p1", "p2")
    assert cut_in_short(batch_of(strip, makes=8, cuts=(("p1", 1), ("p2", 1))), "B") == {"p1": 4, "p2": 4}
    assert cut_in_short(batch_of(strip, makes=10, cuts=(("p1", 1), ("p2", 2))), "B") == {"p1": 2, "p2": 8}


def test_without_a_plan_parts_come_evenly_from_their_papers() -> None:
    """Nothing is said of what was cut; nor are parts that are cut by hand, or bought."""
    one = batch_of(part("B", 50, 50, *FOUR, each=2), makes=5)
    assert cut_in_short(one, "B") == {"p1": 3, "p2": 3, "p3": 2, "p4": 2}
    for origin in (Origin.BY_HAND, Origin.READY):
        other = replace(part("C", 5, 5, "p1", "p2"), origin=origin)
        assert cut_in_short(batch_of(part("B", 50, 50, "p3"), other, makes=3), "C") == {"p1": 2, "p2": 1}


def test_a_plan_that_does_not_give_all_is_not_asked() -> None:
    """One sheet gives four, and six were begun: the record knows better."""
    one = batch_of(part("B", 50, 50, "p1", "p2"), makes=6, cuts=(("p1", 1),))
    assert cut_in_short(one, "B") == {"p1": 6}


def test_papers_of_a_pad_that_the_record_does_not_name() -> None:
    """Any 3: the first, second and third; named where the cut lines, or the part, name as many."""
    any_three = replace(part("B", 50, 50, "pad"), any_of=3)
    assert cut_in_short(batch_of(any_three, makes=6, planned=True), "B") == {
        "pad/1": 2,
        "pad/2": 2,
        "pad/3": 2,
    }
    cut = batch_of(any_three, makes=6, cuts=(("pad-2", 1), ("pad-7", 1)))
    assert cut_in_short(cut, "B") == {"pad-2": 3, "pad-7": 3}
    numbered = part("B", 50, 50, "pad-1", "pad-4", "pad-7")
    assert cut_in_short(batch_of(numbered, makes=6, cuts=(("pad", 3),)), "B") == {
        "pad-1": 2,
        "pad-4": 2,
        "pad-7": 2,
    }
    assert cut_in_short(batch_of(numbered, makes=6, cuts=(("pad", 2),)), "B") == {"pad/1": 3, "pad/2": 3}
    assert cut_in_short(batch_of(any_three, makes=6), "B") == {"pad/1": 2, "pad/2": 2, "pad/3": 2}


@pytest.mark.parametrize("makes", range(1, 9))
def test_what_is_planned_can_be_collated(makes: int) -> None:
    """Four parts from four papers: what does not divide evenly goes on with the next paper, part by part."""
    parts = [part(letter, 20, 20, *FOUR) for letter in "BCDE"]
    one = with_rules(batch_of(*parts, makes=makes, planned=True), ("BCDE", Rule.NONE_TWICE))
    assert sets_of(one).possible == makes


@pytest.mark.parametrize("makes", range(2, 9))
def test_what_is_planned_alike_can_be_collated_alike(makes: int) -> None:
    """Two of B and one of C of one paper: whole makes are shared out among the papers."""
    parts = (part("B", 20, 20, *FOUR, each=2), part("C", 20, 20, *FOUR))
    one = with_rules(batch_of(*parts, makes=makes, planned=True), ("BC", Rule.ALIKE))
    found = sets_of(one)
    assert found.sets == found.possible == makes
    assert all(len({copy.paper for some in one.parts.values() for copy in some}) == 1 for one in found.makes)


# --- rules -------------------------------------------------------------------------


def test_mixed_parts_of_other_papers_are_mixed_with_one_another() -> None:
    """Two papers for B and two for D: each pair of them twice."""
    parts = (part("B", 20, 20, "p1", "p2"), part("D", 20, 20, "p3", "p4"))
    one = with_rules(batch_of(*parts, makes=8), ("B", Rule.MIXED), ("D", Rule.MIXED))
    assert table(sets_of(one)) == [
        ("1-2", "p1", "p3"),
        ("3-4", "p1", "p4"),
        ("5-6", "p2", "p3"),
        ("7-8", "p2", "p4"),
    ]


def test_each_rule_by_itself() -> None:
    """Three of B, two fronts and a back, from two papers, for four makes."""
    front = part("B", 20, 20, "p1", "p2", each=2)
    back = replace(part("C", 20, 20, "p1", "p2"), side=ShownSide.BACK)
    one = batch_of(front, back, makes=4)
    most = {rule: sets_of(with_rules(one, ("BC", rule)), planned=False).possible for rule in Rule}
    assert most == {
        Rule.MIXED: 4,  # none more than twice
        Rule.NONE_TWICE: 0,
        Rule.NO_SIDE_TWICE: 4,
        Rule.ALIKE: 4,  # B in twos: 4 of each paper are two makes; C two of each
        Rule.ANY: 4,
    }


def test_makes_beyond_the_rule_get_what_is_left() -> None:
    """B from p1 and p2, C from p1 alone: of three makes one is without p1 twice."""
    parts = (part("B", 20, 20, "p1", "p2"), part("C", 20, 20, "p1"))
    one = with_rules(batch_of(*parts, makes=3), ("BC", Rule.NONE_TWICE))
    found = sets_of(one)
    assert (found.sets, found.possible) == (1, 1)
    assert table(found) == [("1-1", "p2", "p1"), ("(2-3)", "p1", "p1")]


def test_the_makes_that_keep_all_rules_are_as_many_as_keep_the_strictest() -> None:
    """One of three by the first rule, all by the second: one by both, and that comes first."""
    parts = (
        *(part("B", 20, 20, "p1", "p2"), part("C", 20, 20, "p1")),
        *(part("D", 20, 20, "p3", "p4"), part("E", 20, 20, "p3", "p4")),
    )
    one = with_rules(batch_of(*parts, makes=3), ("BC", Rule.NONE_TWICE), ("DE", Rule.ALIKE))
    found = sets_of(one, planned=False)
    assert [one.sets for one in found.ruled] == [1, 3]
    assert [(one.first, one.last, one.keeps) for one in found.makes if one.last == 1] == [(1, 1, True)]
    assert not any(one.keeps for one in found.makes if one.first > 1)


def test_there_is_nothing_to_collate_where_every_make_gets_the_same() -> None:
    """One paper, one image."""
    one = replace(part("B", 20, 20, "card"), stamps=(ImageUse("words", (2,)),))
    assert collated(batch_of(one, makes=3), None, SUPPLIES) is None


def test_a_rule_that_cannot_but_be_kept_is_nothing_to_collate() -> None:
    """Two parts of one paper are alike, two of two papers differ; two of one that are to differ cannot."""
    same = batch_of(part("B", 20, 20, "p1"), part("C", 20, 20, "p1"), makes=3)
    other = batch_of(part("B", 20, 20, "p1"), part("C", 20, 20, "p2"), makes=3)
    assert collated(with_rules(same, ("BC", Rule.ALIKE)), None, SUPPLIES) is None
    assert collated(with_rules(other, ("BC", Rule.NONE_TWICE)), None, SUPPLIES) is None
    assert sets_of(with_rules(same, ("BC", Rule.NONE_TWICE)), planned=False).sets == 0


def test_nobody_lays_out_so_many_parts() -> None:
    """Beyond that, in one make or in all, no table is made, and no time is spent."""
    for makes, each in ((MOST_PARTS + 1, 1), (MOST_PARTS // 100 + 1, 100), (1, MOST_IN_ONE + 1)):
        one = part("B", 20, 20, "p1", "p2", each=each)
        assert collated(with_rules(batch_of(one, makes=makes), ("B", Rule.MIXED)), None, SUPPLIES) is None


def test_as_many_parts_as_there_may_be_are_laid_out() -> None:
    """With images in turn over all of them, or all in few makes: each make has its set."""
    for makes, each in ((MOST_PARTS // 2, 2), (MOST_PARTS // MOST_IN_ONE, MOST_IN_ONE)):
        one = stamped(part("B", 20, 20, *FOUR, each=each), 1, 2, 3)
        found = sets_of(with_rules(batch_of(one, makes=makes), ("B", Rule.MIXED)), planned=False)
        assert found.sets == makes


# --- images ------------------------------------------------------------------------


def stamped(one: Part, *numbers: int, die: Sequence[int] = ()) -> Part:
    """The part with images dealt round."""
    dies = (ImageUse("leaves", tuple(die)),) if die else ()
    return replace(one, stamps=(ImageUse("words", numbers),), dies=dies)


def test_images_meet_each_paper_of_the_part_below() -> None:
    """A label on a strip of three papers: nine makes, every pair once."""
    strip = part("B", 20, 20, "p1", "p2", "p3")
    label = replace(stamped(part("C", 10, 10, "card"), 1, 2, 3), below="B")
    one = with_rules(batch_of(strip, label, makes=9), ("B", Rule.MIXED))
    assert [row[1:] for row in table(sets_of(one))] == [
        (paper, f":{image}") for paper in ("p1", "p2", "p3") for image in (1, 2, 3)
    ]


def test_images_meet_the_papers_of_the_part_they_lie_on_not_of_another() -> None:
    """A label that lies on D by way of a plain mat: both of its images with both papers of D."""
    first, second = part("B", 20, 20, "p1", "p2"), part("D", 20, 20, "p3", "p4")
    mat = replace(part("E", 15, 15, "card"), below="D")
    label = replace(stamped(part("F", 10, 10, "card"), 1, 2), below="E")
    one = with_rules(batch_of(first, second, mat, label, makes=4), ("B", Rule.MIXED), ("D", Rule.MIXED))
    assert {row[2:] for row in table(sets_of(one))} == {
        ("p3", ":1"),
        ("p3", ":2"),
        ("p4", ":1"),
        ("p4", ":2"),
    }


def test_images_of_a_part_of_several_papers_meet_its_own() -> None:
    """Two papers and two images: each pair twice; two in a make get one of each image."""
    single = stamped(part("B", 20, 20, "p1", "p2"), 4, 7)
    one = with_rules(batch_of(single, makes=8), ("B", Rule.MIXED))
    assert table(sets_of(one)) == [("1-2", "p1:4"), ("3-4", "p1:7"), ("5-6", "p2:4"), ("7-8", "p2:7")]
    double = stamped(part("B", 20, 20, "p1", "p2", each=2), 4, 7)
    one = with_rules(batch_of(double, makes=4), ("B", Rule.MIXED))
    assert table(sets_of(one)) == [("1-2", "p1:4 p2:7"), ("3-4", "p1:7 p2:4")]


def test_two_sets_of_images_are_mixed_with_one_another() -> None:
    """Two stamps and two dies on one part of one paper: all four pairs in four makes."""
    one = batch_of(stamped(part("B", 20, 20, "card"), 1, 2, die=(1, 2)), makes=4)
    assert [row[1] for row in table(sets_of(one))] == [":1:1", ":1:2", ":2:1", ":2:2"]


# --- laws --------------------------------------------------------------------------

PARTS = st.lists(
    st.tuples(
        st.lists(st.sampled_from(["p1", "p2", "p3", "p4"]), min_size=1, max_size=4, unique=True),
        st.integers(1, 3),
        st.integers(0, 3),
    ),
    min_size=1,
    max_size=3,
)


@settings(max_examples=100, deadline=None)
@given(PARTS, st.integers(1, 9), st.lists(st.sampled_from(Rule), min_size=3, max_size=3))
def test_every_make_gets_all_its_parts_and_no_part_is_used_twice(
    made_of: list[tuple[list[str], int, int]], makes: int, rules: list[Rule]
) -> None:
    """Those that keep the rules and those that get what is left together use no more than was cut."""
    parts = [
        stamped(part(letter, 5, 5, *papers, each=each), *range(1, images + 1))
        for letter, (papers, each, images) in zip("BCD", made_of, strict=False)
    ]
    ruled = [(one.letter, rule) for one, rule in zip(parts, rules, strict=False)]
    one = with_rules(batch_of(*parts, makes=makes), *ruled)
    found = collated(one, None, SUPPLIES)
    if found is None:
        assert not any(some.dealt_images for some in parts)
        return
    assert [alike.first for alike in found.makes] == [1, *(alike.last + 1 for alike in found.makes[:-1])]
    assert found.makes[-1].last == makes
    assert found.sets == sum(alike.last - alike.first + 1 for alike in found.makes if alike.keeps)
    told = parts_cut(one, None, SUPPLIES).items()
    for mine, cut in ((letter, cut) for letter, cut in told if shows_papers(found, letter)):
        each = next(one.each for one in parts if one.letter == mine)
        assert {len(alike.parts[mine]) for alike in found.makes} == {each}
        for paper, count in cut.items():
            times = (
                sum(copy.paper == paper for copy in alike.parts[mine]) * (alike.last - alike.first + 1)
                for alike in found.makes
            )
            assert sum(times) <= count


def shows_papers(found: Collated, letter: str) -> bool:
    """Whether the papers of a part are collated."""
    return any(kind.letter == letter for ruled in found.ruled for kind in ruled.group.kinds)


def test_the_order_of_the_drawer_changes_nothing() -> None:
    """Papers are dealt in the order of the record."""
    parts = [part(letter, 20, 20, "p4", "p2", "p3") for letter in "BC"]
    one = with_rules(batch_of(*parts, makes=7, planned=True), ("BC", Rule.MIXED))
    cutting = cutting_of(one, SUPPLIES, PLANNER)
    backwards = dict(reversed(SUPPLIES.items()))
    assert collated(one, cutting, backwards) == collated(one, cutting, SUPPLIES)
    assert collated(one, cutting_of(one, backwards, PLANNER), backwards) == sets_of(one)
