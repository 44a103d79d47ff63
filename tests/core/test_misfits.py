"""What the core tells of a batch whose record cannot be, or runs into the limits of a tool."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.bench_limits import REMEDY
from batchleaf.core.figures import work_out
from batchleaf.facts import (
    Archive,
    Image,
    ImageUse,
    Origin,
    Place,
    Project,
    Purchase,
    Settings,
    Supply,
    Tool,
    Trim,
)
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.money import Currency
from core.drawers import archive, batch_of, bought, part, size, supply

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
NBSP = "\u00a0"
BOUGHT: tuple[Purchase, ...] = tuple(bought(0, 50, 500, slug) for slug in ("card", "fern"))
CARD = supply("card")
CHAD = Fraction(200, 300)
"""Three hundred of this side lie along two sides of a sheet."""
WORDS = Tool(
    "words", "the tide words", "stamps", Unit.MM,
    images=(Image(1, size(60, 12), "high water"), Image(2, size(20, 12), "ebb"), Image(3, size(41, 9), "")),
)  # fmt: skip


def trimmer(name: str, longest: int | None = None, narrowest: int | None = None) -> Tool:
    """A trimmer with its limits in mm."""
    return Tool(
        name.split()[1], name, "trimmer", Unit.MM,
        longest_cut=None if longest is None else Fraction(longest),
        narrowest_strip=None if narrowest is None else Fraction(narrowest),
    )  # fmt: skip


def told(one: Project, *tools: Tool, card: Supply = CARD) -> list[tuple[Place, str]]:
    """Where and what is told of a batch that names these tools."""
    one = replace(one, tools=tuple(tool.slug for tool in tools))
    records: Archive = archive(one, *BOUGHT, supplies=(card, supply("fern")))
    figures = work_out(replace(records, tools=(*tools, WORDS)), SETTINGS)
    return [(problem.place, problem.sentence.replace(NBSP, " ")) for problem in figures.problems]


def sentences(one: Project, *tools: Tool, card: Supply = CARD) -> list[str]:
    """What is told, without the places."""
    return [sentence for _, sentence in told(one, *tools, card=card)]


def test_a_part_larger_than_what_is_left_of_a_sheet() -> None:
    """Both sizes are told, since the sheet as bought would have done."""
    card = replace(CARD, trim=Trim(top=Fraction(5), left=Fraction(2)))
    one = batch_of(part("A", 100, 100, "card"), makes=1, planned=True)
    (sentence,) = sentences(one, card=card)
    assert sentence == (
        "A is 100 × 100 mm and does not fit a sheet of card, 100 × 100 mm, of which 98 × 95 mm is left"
        " after trimming"
    )


def test_a_part_larger_than_the_sheet() -> None:
    """Nothing is trimmed, so one size is told."""
    one = batch_of(part("A", 101, 100, "card"), makes=1, planned=True)
    assert sentences(one) == ["A is 101 × 100 mm and does not fit a sheet of card, 100 × 100 mm"]


def test_confetti_is_counted_and_not_planned() -> None:
    """A slip in a size would draw thousands of cuts, each inside of the one before; it is told."""
    small, smaller = (
        replace(part("A", 1, 1, "card"), size=Size(side, side)) for side in (CHAD, CHAD * 98 / 100)
    )
    assert sentences(batch_of(small, makes=1, planned=True)) == []
    (sentence,) = sentences(batch_of(smaller, makes=1, planned=True))
    assert sentence == (
        "A is 0.65 × 0.65 mm, and so many of it lie on one sheet of card, 100 × 100 mm, that no cutting"
        " plan is made; check both sizes"
    )


@pytest.mark.parametrize("origin", [Origin.BY_HAND, Origin.READY])
def test_a_part_that_is_not_cut_from_sheets_may_be_of_any_size(origin: Origin) -> None:
    """Nor does a batch of such parts owe an account of its paper."""
    assert sentences(batch_of(replace(part("A", 150, 150, "card"), origin=origin), makes=4)) == []


def test_a_batch_with_a_part_from_sheets_owes_that_account() -> None:
    """One such part is enough."""
    by_hand = replace(part("B", 20, 20, "card"), origin=Origin.BY_HAND)
    assert sentences(batch_of(part("A", 20, 20, "card"), by_hand, makes=4)) == [
        "the record does not say what was cut, so the paper is not in the cost"
    ]


def test_a_paper_that_only_parts_cut_by_hand_come_from_was_cut_for_nothing() -> None:
    """Nobody counts their scraps, so a sheet cannot have gone into them."""
    by_hand = replace(part("B", 20, 20, "fern"), origin=Origin.BY_HAND)
    one = batch_of(part("A", 20, 20, "card"), by_hand, makes=4, cuts=(("card", 1), ("fern", 1)))
    assert sentences(one) == ["no part is cut from fern"]


def stamped(*numbers: int, width: int = 10, height: int = 40) -> Project:
    """A batch whose part is stamped with these images of the tide words."""
    use = ImageUse("words", numbers)
    return batch_of(replace(part("A", width, height, "card"), stamps=(use,)), makes=2, cuts=(("card", 1),))


def test_an_image_larger_than_the_part_it_is_used_on() -> None:
    """Each of them, turned as it fits best, at the part; one without words goes by its number."""
    assert told(stamped(1, 2, 3)) == [
        (Place("batch.yml", 10, 3), sentence)
        for sentence in (
            "image 3 of the tide words is 41 × 9 mm, larger than A, 10 × 40 mm; check both sizes",
            "“ebb” of the tide words is 20 × 12 mm, larger than A, 10 × 40 mm; check both sizes",
            "“high water” of the tide words is 60 × 12 mm, larger than A, 10 × 40 mm; check both sizes",
        )
    ]


def test_an_image_fits_either_way_round() -> None:
    """60 x 12 on a part of 12 x 60; of a set of which no image is named nothing is said."""
    assert told(stamped(1, width=12, height=60)) == []
    assert told(stamped()) == []


def strips(width: int = 20) -> Project:
    """Five strips right across a sheet of 100 x 100."""
    return batch_of(part("A", width, 100, "card"), makes=5, cuts=(("card", 1),))


def test_a_cut_longer_than_any_trimmer_makes() -> None:
    """The strips are cut along 100; told where the sheets are."""
    assert told(strips(), trimmer("the small trimmer", 99)) == [
        (
            Place("batch.yml", 5, 3),
            "the plan has a cut of 100 mm, and the small trimmer makes none longer than 99 mm",
        )
    ]
    assert sentences(strips(), trimmer("the small trimmer", 80), trimmer("the old trimmer", 90)) == [
        "the plan has a cut of 100 mm, and none of its trimmers makes one longer than 90 mm"
    ]


def test_one_trimmer_that_reaches_or_might_is_enough() -> None:
    """Nothing is told where one is long enough, where its reach is not known, or where none is named."""
    small = trimmer("the small trimmer", 80)
    assert sentences(strips(), small, trimmer("the long trimmer", 100)) == []
    assert sentences(strips(), small, trimmer("the lent trimmer")) == []
    assert sentences(strips(), replace(small, kind="score board")) == []


def test_trimming_is_a_cut_as_well() -> None:
    """Four strips of 50 x 20 lie on one of 90 x 50; taking 10 off the left is a cut of 100."""
    card = replace(CARD, trim=Trim(left=Fraction(10), bottom=Fraction(50)))
    one = batch_of(part("A", 20, 50, "card"), makes=4, cuts=(("card", 1),))
    small = trimmer("the small trimmer", 90)
    assert sentences(one, small, card=card) == [
        "the plan has a cut of 100 mm, and the small trimmer makes none longer than 90 mm"
    ]


def test_a_part_narrower_than_any_trimmer_holds() -> None:
    """At the part; five strips of 20 leave nothing."""
    assert told(strips(), trimmer("the small trimmer", None, 25)) == [
        (
            Place("batch.yml", 10, 3),
            f"A is a strip of 20 mm, and the small trimmer holds none below 25 mm; {REMEDY}",
        )
    ]


def test_a_strip_left_that_is_narrower_than_any_trimmer_holds() -> None:
    """Five strips of 19 leave 5, where the sheets are."""
    both = (trimmer("the small trimmer", None, 6), trimmer("the old trimmer", None, 8))
    assert told(strips(19), *both) == [
        (
            Place("batch.yml", 5, 3),
            "the plan leaves a strip of 5 mm, and none of its trimmers holds one below 6 mm",
        )
    ]
    assert sentences(strips(19), trimmer("the small trimmer", None, 5)) == []
    assert sentences(strips(19), both[0], trimmer("the lent trimmer")) == []
