"""The best use of one sheet, with and without limits."""

from __future__ import annotations

import pytest

from batchleaf.core.cutting.best_use import best_use
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import BestUse
from batchleaf.core.cutting.verify import use_faults
from batchleaf.core.cutting.verify_sheet import layout_faults
from batchleaf.facts.jobs import Job, Offer, PartKind, Stock
from cutting.brute import brute_best_use, tiny_job
from cutting.jobs import mm

# Christofides and Whitlock, Operations Research 25 (1977) 30-44, no. 1: sheet 15 x 10,
# (width, height, worth, at most).
CHRISTOFIDES_WHITLOCK_1 = [
    (8, 4, 66, 2), (3, 7, 35, 1), (8, 2, 24, 3), (3, 4, 17, 5), (3, 3, 11, 2), (3, 2, 8, 2), (2, 1, 2, 1),
]  # fmt: skip


def offers(*, limited: bool) -> tuple[Offer, ...]:
    """The seven parts of the paper, none of which may turn."""
    return tuple(
        Offer(PartKind(str(at), mm(w, h), turns=False), worth, most if limited else None)
        for at, (w, h, worth, most) in enumerate(CHRISTOFIDES_WHITLOCK_1)
    )


@pytest.mark.parametrize(("limited", "worth"), [(True, 244), (False, 249)])
def test_christofides_and_whitlock(limited: bool, worth: int) -> None:  # noqa: FBT001
    """The published optimum, 244, and 249 without limits."""
    use = best_use(Stock("sheet", mm(15, 10)), offers(limited=limited))
    assert (use.worth, use.bound) == (worth, worth)


def test_the_plan_is_worth_what_it_says() -> None:
    """Its parts, none of them too often, add up to the worth, and its cuts go through."""
    stock = Stock("sheet", mm(15, 10), 1)
    use = best_use(stock, offers(limited=True))
    assert use_faults(stock, offers(limited=True), use) == ()
    assert layout_faults(lay_out(use.plan, Job((stock,), ()))) == ()


def test_a_sheet_for_which_nothing_is_small_enough_has_no_use() -> None:
    """Nothing fits: worth 0, proved."""
    use: BestUse = best_use(Stock("sheet", mm(2, 2)), [Offer(PartKind("A", mm(3, 1)), 5)])
    assert (use.worth, use.proved) == (0, True)


@pytest.mark.parametrize("seed", range(120))
def test_nothing_better_is_found_by_trying_everything(seed: int) -> None:
    """On tiny sheets the best use is that of every way tried."""
    job = tiny_job(6000 + seed)
    stock, most = job.stocks[0], 1 + seed % 3
    worths = [1 + (7 * seed + 5 * at) % 11 for at in range(len(job.parts))]
    open_parts = [PartKind(part.id, part.size, turns=part.turns) for part in job.parts]
    asked = [Offer(part, worth, most) for part, worth in zip(open_parts, worths, strict=True)]
    use = best_use(stock, asked, kerf=job.kerf)
    assert use_faults(stock, asked, use, kerf=job.kerf) == ()
    assert (use.worth, use.bound) == (brute_best_use(job, asked),) * 2
