"""What other numbers of makes take: counts by hand, laws, and what it costs."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import accumulate

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, cutting_of, remembering
from batchleaf.core.cost import Cost
from batchleaf.core.figures import Figures, all_in_full, work_out
from batchleaf.core.for_makes import COUNTS, ForMakes, Needed
from batchleaf.core.sheets_needed import (
    SheetsFor,
    asking_for_sheets,
    count_sheets,
    no_more_for_fewer,
    remembering_counts,
    sheets_for_each,
)
from batchleaf.facts import Project, Purchase, Settings, Supply, Use
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from core.drawers import archive, batch_of, bought, part, supply

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
REMEMBERED = remembering(PLANNER)
COUNT = remembering_counts(count_sheets)
PAPERS = {slug: supply(slug) for slug in ("card", "fern", "plum")}
MIXED = batch_of(
    part("A", 60, 90, "card"), part("B", 30, 40, "fern", "plum", each=2), part("C", 20, 30, "card"), makes=7
)
"""One base from a sheet with labels beside it, and two of six strips from either of two papers."""


def worked(*records: Project | Purchase, supplies: tuple[Supply, ...]) -> Figures:
    """The figures of an archive with what other numbers take."""
    found = work_out(archive(*records, supplies=supplies), SETTINGS, REMEMBERED)
    return all_in_full(found, REMEMBERED, COUNT)


def of(figures: Figures, makes: int) -> ForMakes:
    """What so many of the only batch take."""
    (batch,) = figures.batches.values()
    return next(one for one in batch.for_makes if one.makes == makes)


def test_sheets_for_each_number_by_hand() -> None:
    """Four squares of 50 lie on a sheet of 100: of thirteen and more the last sheet is begun in vain."""
    one = batch_of(part("A", 50, 50, "card"), makes=13, cuts=(("card", 4),))
    (batch,) = worked(one, supplies=(supply(),)).batches.values()
    found = {
        one.makes: [(needed.supply, needed.quantity) for needed in one.sheets] for one in batch.for_makes
    }
    assert found == {makes: [("card", -(-makes // 4))] for makes in {*COUNTS, 13}}
    assert all(one.proved for one in batch.for_makes)


def test_another_make_never_takes_fewer_sheets() -> None:
    """Neither in all nor of one paper, where parts are dealt round over two."""
    found = list(map(asking_for_sheets(MIXED, PAPERS, COUNT), range(1, 19)))
    counts = [dict(each.sheets) for each in found if each]
    assert len(counts) == 18
    for slug in PAPERS:
        mine = [count.get(slug, 0) for count in counts]
        assert mine == sorted(mine)


def test_the_number_of_the_batch_takes_what_its_own_plan_takes() -> None:
    """From whole sheets it is one question, asked twice."""
    planned = replace(batch_of(*MIXED.parts, makes=7, planned=True), finished=0)
    plan = cutting_of(planned, PAPERS, REMEMBERED)
    mine = asking_for_sheets(MIXED, PAPERS, COUNT)(7)
    assert plan
    assert mine
    assert dict(mine.sheets) == {cut.supply: cut.count for cut in plan.sheets.values()}
    assert mine.area == sum(10_000 * cut.count for cut in plan.sheets.values())


@given(st.lists(st.integers(1, 50), min_size=1, max_size=12))
def test_what_serves_for_more_serves_for_fewer(areas: list[int]) -> None:
    """No area falls, none is more than was found, and the last stays."""
    found = [SheetsFor(makes, (), Fraction(area), proved=False) for makes, area in enumerate(areas, 1)]
    least = no_more_for_fewer(found)
    assert [one.makes for one in least] == [one.makes for one in found]
    assert [one.area for one in least] == [min(areas[i:]) for i in range(len(areas))]


def with_uses(*uses: Use) -> Project:
    """Four squares from one sheet, and these besides."""
    return replace(batch_of(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),)), uses=uses)


TAPE = replace(supply("tape"), unit="m", units="m", size=None)
INK = replace(supply("ink"), unit="pad", units="pads", size=None)
BAG = replace(supply("bag"), unit="piece", units="pieces", size=None)


def test_supplies_follow_the_number_where_one_make_is_told() -> None:
    """An amount for the whole batch stays, what is not measured stays so; the cost says what it lacks."""
    one = with_uses(Use("tape", Fraction(2), Fraction(1, 2)), Use("bag", Fraction(1)), Use("ink", None))
    orders = (bought(0, 10, 150), bought(0, 8, 100, "tape"), bought(0, 5, 50, "bag"))
    figures = worked(one, *orders, supplies=(supply(), TAPE, BAG, INK))
    nine = of(figures, 9)
    # Three sheets at 15 and 4 1/2 m at 12 1/2, which is 56 1/4.
    assert nine.sheets == (Needed("card", Fraction(3), cost=45),)
    assert nine.uses == (
        Needed("tape", Fraction(9, 2), cost=56),
        Needed("bag", Fraction(1), scales=False),
        Needed("ink", None, scales=False),
    )
    assert (nine.cost, nine.without) == (Cost(101, complete=False), ("bag",))


def test_an_unknown_price_is_not_nothing() -> None:
    """What was never bought is left out of the cost and named; without any cost none is told."""
    figures = worked(with_uses(), supplies=(supply(),))
    assert (of(figures, 8).cost, of(figures, 8).without) == (Cost(0, complete=False), ("card",))
    planned = replace(with_uses(), status=batch_of(makes=1, planned=True).status, cut=(), finished=0)
    assert of(worked(planned, supplies=(supply(),)), 8).cost is None


def test_where_nothing_follows_the_number_nothing_is_said() -> None:
    """A part that fits on no sheet, and a batch of which the record tells no part and no amount."""
    too_large = batch_of(part("A", 150, 50, "card"), makes=4)
    bare = batch_of(makes=4)
    for one in (too_large, bare):
        (batch,) = worked(one, supplies=(supply(),)).batches.values()
        assert batch.for_makes == ()


@given(
    st.lists(st.integers(0, 4), min_size=1, max_size=14),
    st.sets(st.integers(1, 90), min_size=14, max_size=14),
    st.data(),
)
def test_numbers_between_equal_ends_are_not_asked(
    steps: list[int], numbers: set[int], data: st.DataObject
) -> None:
    """Whatever rises by steps is found as if each number had been asked, the batch's own among them."""
    counts = sorted(numbers)[: len(steps)]
    area = dict(zip(counts, accumulate(steps), strict=True))
    begun = data.draw(st.sampled_from(counts))
    asked: list[int] = []

    def ask(makes: int) -> SheetsFor:
        asked.append(makes)
        return SheetsFor(makes, (("card", area[makes]),), Fraction(area[makes]), proved=True)

    found = sheets_for_each(counts, begun, ask)
    assert [(one.makes, one.sheets, one.proved) for one in found] == [
        (makes, (("card", area[makes]),), True) for makes in counts
    ]
    assert begun in asked
    assert len(asked) == len(set(asked))
    if not any(steps[1:]):
        assert set(asked) == {counts[0], begun, counts[-1]}


def test_where_one_number_has_no_plan_none_is_told() -> None:
    """Nothing is said of twenty if nothing is known of sixty."""
    assert sheets_for_each([1, 20, 60], 20, lambda makes: None if makes == 60 else some(makes)) == ()


def some(makes: int) -> SheetsFor:
    """A sheet for each."""
    return SheetsFor(makes, (("card", makes),), Fraction(makes), proved=True)


def test_what_serves_for_more_is_proved_only_if_fewer_were() -> None:
    """Of one make it is not known whether two sheets are the least: of two it is not known either."""

    def ask(makes: int) -> SheetsFor:
        return replace(some(2), makes=makes, area=Fraction(2), proved=makes > 1)

    assert [one.proved for one in sheets_for_each([1, 2, 3], 3, ask)] == [False, False, True]
