"""What a planned batch finds in the drawer, and what not."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.core.figures import BatchFigures
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.movements import Holding
from batchleaf.core.reserved import reservations
from batchleaf.core.shortage import Shortage, shortages
from batchleaf.facts import CostFlow, Cut, KeptPiece, Project, Purchase, Status, Supply, Use
from batchleaf.measure.lengths import Size
from core.drawers import archive, batch, bought, cut, day, pad, supply

PIECE = Size(Fraction(20), Fraction(30))


def lacking(
    supplies: tuple[Supply, ...],
    needed: tuple[Cut, ...],
    *records: Project | Purchase,
    after: tuple[BatchFigures, ...] = (),
) -> list[Shortage]:
    """What of ``needed`` the drawer lacks after ``records``, when the batches ``after`` have their share."""
    ledger = keep_ledger(archive(*records, supplies=supplies), CostFlow.AVERAGE)
    return list(shortages(needed, ledger, {one.slug: one for one in supplies}, reservations(after)))


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


# --- what planned batches have a claim to -----------------------------------------


def to_come(on: int, *cuts: Cut, status: Status = Status.PLANNED, uses: tuple[Use, ...] = ()) -> BatchFigures:
    """A batch of four, of which nothing is cut yet."""
    project = replace(batch(on, cut=cuts, status=status), begun=4, finished=0, uses=uses)
    return BatchFigures(project, None, None, ())


def test_what_another_batch_will_take_is_not_there() -> None:
    """Eight sheets, five of them spoken for: three are left, and of the scrap none."""
    other = to_come(3, cut(5), cut(1, scrap=PIECE))
    bench = (bought(0, 8, 1_00), batch(1, cut=(cut(1, KeptPiece(PIECE, 1)),)), bought(2, 1, 10))
    assert lacking((supply(),), (cut(3),), *bench, after=(other,)) == []
    assert lacking((supply(),), (cut(4), cut(1, scrap=PIECE)), *bench, after=(other,)) == [
        Shortage(Holding("card"), 4, Fraction(3)),
        Shortage(Holding("card", PIECE), 1, Fraction(0)),
    ]


def test_there_is_never_less_than_nothing() -> None:
    """Ten spoken for, of eight: none is left, not minus two."""
    assert lacking((supply(),), (cut(1),), bought(0, 8, 1_00), after=(to_come(3, cut(10)),)) == [
        Shortage(Holding("card"), 1, Fraction(0))
    ]


def test_a_paper_that_is_spoken_for_is_missing_from_its_pad_too() -> None:
    """Six sheets, two of each: one of paper 2 spoken for leaves one of it, and five in all."""
    other = to_come(3, cut(1, slug="pad-2"))
    whole = bought(0, 6, 3_00, "pad")
    assert lacking(pad(), (cut(2, slug="pad-2"), cut(6, slug="pad")), whole, after=(other,)) == [
        Shortage(Holding("pad-2"), 2, Fraction(1)),
        Shortage(Holding("pad"), 6, Fraction(5)),
    ]


def test_only_what_is_planned_has_a_claim_and_the_earlier_has_the_first() -> None:
    """An idea has none, nor has what was cut; quantities for one make count for all that are begun."""
    cord = Use("cord", Fraction(0), Fraction(1, 2))
    ink = Use("ink", None)
    later, sooner = to_come(9, cut(2)), to_come(3, cut(1), cut(1), uses=(cord, ink))
    idea, done = to_come(1, cut(7), status=Status.IDEA), to_come(2, cut(7), status=Status.CUT)
    assert [
        (one.project.date, one.holding, int(one.quantity))
        for one in reservations((later, idea, done, sooner))
    ] == [
        (day(3), Holding("card"), 2),
        (day(3), Holding("cord"), 2),
        (day(9), Holding("card"), 2),
    ]
