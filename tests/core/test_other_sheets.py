"""A batch on the sheets that readers elsewhere have."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.other_sheets import OnOther, on_other_sheets
from batchleaf.facts import Cut, OtherSheet, Part, Project, Trim
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import MM_PER_INCH, Size, Unit
from batchleaf.records.other_sheets import read_other_sheets
from core.drawers import batch, cut, part, size, supply

A4 = OtherSheet("A4", size(210, 297))
LETTER = OtherSheet("Letter", Size(Fraction(17, 2) * MM_PER_INCH, 11 * MM_PER_INCH))
SMALL = OtherSheet("small", size(100, 90))
CARD = supply("card", size=size(305, 305))


def project(*parts: Part, makes: int) -> Project:
    """A batch that took ten sheets."""
    return replace(batch(1), parts=parts, begun=makes, finished=makes, cut=(cut(10),))


def on(*sheets: OtherSheet, makes: int = 8) -> list[OnOther]:
    """Cards of 100 x 148 on these sheets."""
    one = project(part("A", 100, 148, "card"), makes=makes)
    return list(on_other_sheets(one, {"card": CARD}, sheets, PLANNER))


def test_sheets_by_hand() -> None:
    """Four of 100 x 148 on A4, two by two; three on Letter: two upright, one turned below them, 148 + 100.

    So eight take two sheets, or three.
    """
    a4, letter = on(A4, LETTER)
    assert (a4.needed("card"), letter.needed("card")) == (2, 3)


@pytest.mark.parametrize("makes", [1, 3, 7, 20])
def test_every_plan_holds(makes: int) -> None:
    """It gives all that was begun, from as many sheets as it says; more never take fewer."""
    for one, more in zip(on(A4, LETTER, makes=makes), on(A4, LETTER, makes=makes + 1), strict=True):
        assert one.cutting is not None
        assert one.cutting.makes == makes
        assert sum(plan.times for plan in one.cutting.plans) == one.needed("card")
        assert one.needed("card") <= more.needed("card")


def test_a_part_that_does_not_fit_is_named() -> None:
    """The first of them, and no plan."""
    (one,) = on(SMALL)
    assert one.cutting is None
    assert one.too_large is not None
    assert one.too_large.letter == "A"


def test_its_own_size_is_no_other() -> None:
    """Either way round; a sheet that is trimmed first is another."""
    own = OtherSheet("own", size(305, 305))
    assert on(own) == []
    one = project(part("A", 100, 148, "card"), makes=8)
    trimmed = replace(CARD, trim=Trim(top=Fraction(5)))
    (untrimmed,) = on_other_sheets(one, {"card": trimmed}, (own,), PLANNER)
    assert untrimmed.papers["card"].usable == size(305, 305)


def test_what_the_batch_took_changes_nothing() -> None:
    """Scraps and kept pieces are this maker's own."""
    one = project(part("A", 100, 148, "card"), makes=8)
    other = replace(one, cut=(Cut("card", 1, size(100, 200)), cut(3)))
    found = [next(on_other_sheets(each, {"card": CARD}, (A4,), PLANNER)) for each in (one, other)]
    assert found[0] == found[1]


def test_they_are_read_by_name_or_measures() -> None:
    """As they are called; a size in another unit, and one that stands twice."""
    read = read_other_sheets("a4, Letter, 12 x 12 in, 300 x 300, A4", Unit.MM)
    assert [one.name for one in read] == ["A4", "Letter", "12 x 12 in", "300 x 300"]
    assert read[1].size == LETTER.size
    assert read[2].size == Size(12 * MM_PER_INCH, 12 * MM_PER_INCH)
    assert read_other_sheets("none", Unit.MM) == ()
    with pytest.raises(MeasureError, match="names 9 sizes of sheets; 8 are the most"):
        read_other_sheets(", ".join(f"{n}00 x 300" for n in range(1, 10)), Unit.MM)
