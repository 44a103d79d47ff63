"""The odd pieces on hand, and where they came from."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.entries import Kind
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.odd_pieces import OddPieces, odd_pieces
from batchleaf.facts import CostFlow, KeptPiece, Project, Scrap
from core.drawers import archive, batch, bought, counted, cut, day, size, supply

SMALL, LARGE = size(20, 30), size(50, 60)


def found(*batches: Project, scraps: tuple[Scrap, ...] = ()) -> tuple[OddPieces, ...]:
    """The pieces that are left after ``batches``."""
    card = supply(scraps=scraps)
    return odd_pieces(keep_ledger(archive(bought(0, 99, 9900), *batches, supplies=(card,)), CostFlow.AVERAGE))


def scrap(count: int) -> Scrap:
    """Small pieces that were there at the start, worth ten each."""
    return Scrap(SMALL, count, 10 * count, day(0))


def keeps(on: int, count: int) -> Project:
    """A batch that cuts a sheet and keeps small pieces of it."""
    return batch(on, cut=(cut(1, KeptPiece(SMALL, count)),))


def takes(on: int, count: int) -> Project:
    """A batch that uses small pieces up."""
    return batch(on, cut=(cut(count, scrap=SMALL),))


def told(one: OddPieces) -> list[str]:
    """The sources by batch, and the start."""
    return [source.project or "start" for source in one.sources]


def test_sources_are_named_newest_first() -> None:
    """The start and both batches, though the pieces of the first may be those that were taken."""
    (one,) = found(keeps(1, 2), takes(2, 3), keeps(3, 1), scraps=(scrap(2),))
    assert (one.size, one.count, told(one)) == (SMALL, 2, ["batch-3", "batch-1", "start"])
    assert [source.date for source in one.sources] == [day(3), day(1), day(0)]


def test_what_was_used_up_brought_nothing() -> None:
    """Once a pile is empty, what came before is no source of what comes after."""
    (one,) = found(keeps(1, 2), takes(2, 4), keeps(3, 1), scraps=(scrap(2),))
    assert told(one) == ["batch-3"]


def test_pieces_that_are_gone_are_not_there() -> None:
    """Neither those that were used up, nor those that were used and never came in."""
    assert found(keeps(1, 2), takes(2, 2)) == ()
    assert found(takes(1, 2)) == ()


def test_a_count_that_finds_more_is_a_source() -> None:
    """One that finds fewer, or as many as there are, is none."""
    counts = [replace(counted(on, found), piece=SMALL) for on, found in ((2, 5), (3, 5), (4, 4))]
    card = supply(scraps=(scrap(2),))
    records = archive(bought(0, 9, 900), keeps(1, 1), *counts, supplies=(card,))
    (one,) = odd_pieces(keep_ledger(records, CostFlow.AVERAGE))
    assert (one.count, [source.date for source in one.sources]) == (4, [day(2), day(1), day(0)])
    assert [source.kind for source in one.sources] == [Kind.COUNTED, Kind.KEPT, Kind.OPENING]


def test_a_batch_that_keeps_in_two_lines_is_named_once() -> None:
    """Two cut lines of one batch, one source; each size is a pile of its own."""
    two = batch(1, cut=(cut(1, KeptPiece(SMALL, 1)), cut(1, KeptPiece(SMALL, 2), KeptPiece(LARGE, 1))))
    small, large = sorted(found(two), key=lambda one: one.size.area)
    assert (small.count, told(small)) == (3, ["batch-1"])
    assert (large.count, told(large)) == (1, ["batch-1"])


changes = st.lists(st.integers(-3, 3), max_size=12)


@given(changes, st.sampled_from(CostFlow))
def test_pieces_are_what_the_drawer_has(moves: list[int], flow: CostFlow) -> None:
    """Counts and costs are those of the piles; sources brought enough, each by a batch that kept some."""
    batches = [keeps(on, n) if n >= 0 else takes(on, -n) for on, n in enumerate(moves, 1)]
    card = supply(scraps=(scrap(1),))
    ledger = keep_ledger(archive(bought(0, 99, 9900), *batches, supplies=(card,)), flow)
    pieces = odd_pieces(ledger)
    piles = {one.holding: one for one in ledger.balances if one.holding.piece and one.quantity}
    assert [(one.size, Fraction(one.count), one.cost) for one in pieces] == [
        (holding.piece, pile.quantity, pile.cost) for holding, pile in piles.items()
    ]
    brought = {"": 1, **{f"batch-{on}": n for on, n in enumerate(moves, 1) if n > 0}}
    for one in pieces:
        dates = [source.date for source in one.sources]
        assert dates == sorted(dates, reverse=True)
        assert sum(brought[source.project] for source in one.sources) >= one.count
