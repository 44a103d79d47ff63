"""What to buy next: what is below its mark, what planned batches lack, and the lot last bought."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.buying import Lack, ToBuy, cost_of_a_unit, to_buy
from batchleaf.core.figures import work_out
from batchleaf.core.movements import Holding
from batchleaf.facts import Archive, Basis, Cut, KeptPiece, Project, Purchase, Scrap, Settings, Status, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from core.drawers import archive, batch, bought, counted, cut, day, pad, size, supply

SMALL = size(20, 30)
SETTINGS = Settings(Unit.MM, Currency.of("EUR"))


def marked(mark: int | None, slug: str = "card", scraps: tuple[Scrap, ...] = ()) -> Supply:
    """A supply with this mark."""
    return replace(supply(slug, scraps=scraps), mark=None if mark is None else Fraction(mark))


def buying(records: Archive, as_of: dt.date | None = None) -> tuple[ToBuy, ...]:
    """What is to be bought."""
    figures = work_out(records, replace(SETTINGS, as_of=as_of))
    assert figures.ledger is not None
    return to_buy(figures, figures.ledger)


def planned(slug: str, on: int, *cuts: Cut, status: Status = Status.PLANNED) -> Project:
    """A batch that will take this."""
    return batch(on, cut=cuts, slug=slug, finished=0, status=status)


@given(st.integers(1, 6), st.integers(1, 6))
def test_only_what_is_below_its_mark_is_bought(there: int, mark: int) -> None:
    """As much as the mark is enough; one less is not."""
    card = marked(mark)
    found = buying(archive(bought(0, there, 100), supplies=(card,)))
    assert [(one.on_hand, one.mark) for one in found] == (
        [(Fraction(there), Fraction(mark))] if there < mark else []
    )


def test_what_has_no_mark_is_never_bought() -> None:
    """Though nothing is left of it."""
    assert buying(archive(bought(0, 1, 5), counted(1, 0), supplies=(marked(None),))) == ()


def test_what_nobody_counted_is_below_its_mark() -> None:
    """And nobody knows how much there is; where only odd pieces were told of, there is none whole."""
    (one,) = buying(archive(supplies=(marked(1),)))
    assert (one.on_hand, one.mark, one.last) == (None, Fraction(1), None)
    (one,) = buying(archive(supplies=(marked(1, scraps=(Scrap(SMALL, 9, None, day(0)),)),)))
    assert one.on_hand == 0


def test_kept_pieces_do_not_count() -> None:
    """Of whole sheets there is none."""
    card = marked(1, scraps=(Scrap(SMALL, 9, None, day(0)),))
    keeps = batch(2, cut=(cut(1, KeptPiece(SMALL, 3)),))
    (one,) = buying(archive(bought(1, 1, 5), keeps, supplies=(card,)))
    assert (one.holding, one.on_hand) == (Holding("card"), Fraction(0))


def test_a_pad_is_counted_in_all_its_sheets() -> None:
    """Its papers have no mark of their own."""
    whole, *papers = pad(designs=3, copies=2)
    records = archive(bought(0, 6, 60, "pad"), supplies=(replace(whole, mark=Fraction(7)), *papers))
    assert [(one.holding.supply, one.on_hand) for one in buying(records)] == [("pad", Fraction(6))]


def test_the_newest_purchase_is_the_usual_lot() -> None:
    """Whatever the order of the records; of one day the last of them."""
    lots = bought(5, 2, 50), bought(9, 4, 90), bought(9, 3, 80), bought(1, 9, 100), counted(10, 0)
    (one,) = buying(archive(*lots, supplies=(marked(1),)))
    assert one.last is not None
    assert (one.last.date, one.last.quantity, one.last.value) == (day(9), Fraction(3), 80)


def test_a_gift_is_no_lot_to_buy_again() -> None:
    """The lot before it is, and the gift only where nothing was ever paid."""
    gift = bought(9, 30, 0, basis=Basis.GIFT)
    (one,) = buying(archive(bought(5, 2, 50), gift, counted(10, 0), supplies=(marked(1),)))
    assert one.last is not None
    assert (one.last.quantity, one.last.value) == (Fraction(2), 50)
    (one,) = buying(archive(gift, counted(10, 0), supplies=(marked(1),)))
    assert one.last is not None
    assert one.last.basis is Basis.GIFT


def test_of_a_day_what_came_later_is_not_told() -> None:
    """Neither what is on hand now, nor the lot that was bought since."""
    records = archive(bought(5, 2, 50), bought(9, 4, 90), supplies=(marked(9),))
    (one,) = buying(records, as_of=day(7))
    assert one.last is not None
    assert (one.on_hand, one.last.quantity) == (Fraction(2), Fraction(2))


def test_what_a_planned_batch_lacks_is_bought() -> None:
    """Whole sheets, and scraps of the size it asks for; what there is enough of is not.

    The batch whose day comes first has the first claim, and an idea has none.
    """
    autumn = planned("autumn", 60, cut(5), cut(1, slug="moss"), cut(2, scrap=SMALL))
    spring, idea = planned("spring", 30, cut(1)), planned("idea", 20, cut(99), status=Status.IDEA)
    lots = bought(0, 3, 10), bought(0, 9, 10, "moss")
    found = buying(archive(*lots, autumn, spring, idea, supplies=(supply(), supply("moss"))))
    two, three = Fraction(2), Fraction(3)
    assert [(one.holding, one.on_hand, one.mark, one.lacks) for one in found] == [
        (Holding("card"), three, None, (Lack("autumn", 5, two),)),
        (Holding("card", SMALL), None, None, (Lack("autumn", 2, Fraction(0)),)),
    ]


def test_one_supply_is_named_once() -> None:
    """Below its mark and asked for by a batch: one line with both reasons."""
    (one,) = buying(archive(bought(0, 2, 10), planned("autumn", 9, cut(3)), supplies=(marked(4),)))
    assert (one.on_hand, one.mark, one.lacks) == (Fraction(2), Fraction(4), (Lack("autumn", 3, Fraction(2)),))


def test_a_paper_of_a_pad_is_bought_with_its_pad() -> None:
    """What is lacking of one number was last bought as a whole pad."""
    autumn = planned("autumn", 9, cut(3, slug="pad-2"))
    (one,) = buying(archive(bought(0, 6, 60, "pad"), autumn, supplies=pad(designs=3, copies=2)))
    assert (one.holding, one.on_hand) == (Holding("pad-2"), Fraction(2))
    assert one.last is not None
    assert (one.last.supply, one.last.quantity) == ("pad", Fraction(6))


def lot(quantity: Fraction, value: int | None) -> Purchase:
    """A purchase."""
    return Purchase(dt.date(2026, 1, 1), "card", quantity, value, "", Basis.STATED)


def test_what_a_unit_cost_by_hand() -> None:
    """12 for 7.83 is 0.6525 each, so 0.65; half a cent goes up; a gift cost nothing, or nobody knows."""
    assert cost_of_a_unit(lot(Fraction(12), 783)) == 65
    assert cost_of_a_unit(lot(Fraction(2), 25)) == 13
    assert cost_of_a_unit(lot(Fraction(1, 2), 300)) == 600
    assert cost_of_a_unit(lot(Fraction(4), 0)) == 0
    assert cost_of_a_unit(lot(Fraction(4), None)) is None


@given(st.fractions(Fraction(1, 50), 500, max_denominator=50), st.integers(0, 100_000))
def test_a_unit_cost_its_part_of_the_lot(quantity: Fraction, value: int) -> None:
    """No further off than half of the smallest coin."""
    one = cost_of_a_unit(lot(quantity, value))
    assert one is not None
    assert abs(one * quantity - value) <= quantity / 2
