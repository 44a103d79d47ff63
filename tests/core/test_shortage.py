"""What a planned batch finds in the drawer, and what not."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.core.ledger import keep_ledger
from batchleaf.core.movements import Holding
from batchleaf.core.shortage import Shortage, shortages
from batchleaf.facts import CostFlow, Cut, Project, Purchase, Supply
from batchleaf.measure.lengths import Size
from core.drawers import archive, batch, bought, cut, pad, supply

PIECE = Size(Fraction(20), Fraction(30))


def lacking(
    supplies: tuple[Supply, ...], needed: tuple[Cut, ...], *records: Project | Purchase
) -> list[Shortage]:
    """What of ``needed`` the drawer lacks after ``records``."""
    ledger = keep_ledger(archive(*records, supplies=supplies), CostFlow.AVERAGE)
    return list(shortages(needed, ledger, {one.slug: one for one in supplies}))


def test_sheets_of_all_lines_are_taken_together() -> None:
    """Eight bought, two cut: six are enough for six, and not for five and three."""
    records = (bought(0, 8, 1_00), batch(1, cut=(cut(2),)))
    assert lacking((supply(),), (cut(6),), *records) == []
    assert lacking((supply(),), (cut(5), cut(3)), *records) == [Shortage(Holding("card"), 8, Fraction(6))]


def test_a_scrap_is_not_a_sheet() -> None:
    """Sheets on hand do not stand for odd pieces of a size."""
    assert lacking((supply(),), (Cut("card", 2, PIECE),), bought(0, 8, 1_00)) == [
        Shortage(Holding("card", PIECE), 2, Fraction(0))
    ]


def test_a_numbered_paper_is_counted_by_its_number_where_that_is_known() -> None:
    """A pad of three papers, two of each: two of a number, also after one was taken without."""
    assert lacking(pad(), (cut(3, slug="pad-2"),), bought(0, 6, 3_00, "pad")) == [
        Shortage(Holding("pad-2"), 3, Fraction(2))
    ]
    taken = batch(1, cut=(cut(1, slug="pad"),))
    assert lacking(pad(), (cut(2, slug="pad-2"),), bought(0, 6, 3_00, "pad"), taken) == []


def test_sheets_without_a_number_may_be_of_any() -> None:
    """Four sheets of the pad came in singly: all of them may be of one number, and no more than four."""
    loose = bought(0, 4, 3_00, "pad")
    assert lacking(pad(), (cut(4, slug="pad-1"),), loose) == []
    assert lacking(pad(), (cut(5, slug="pad-1"),), loose) == [Shortage(Holding("pad-1"), 5, Fraction(4))]
    assert lacking(pad(), (cut(5, slug="pad"),), loose) == [Shortage(Holding("pad"), 5, Fraction(4))]
