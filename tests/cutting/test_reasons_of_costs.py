"""Why nothing costs less, in a sentence that a maker can follow."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size
from cutting.jobs import mm

SHEET = Stock("sheet", mm(100, 100))
HALF = Stock("half", mm(100, 50), None, Fraction(3, 5))
SCRAP = Stock("scrap", mm(100, 40), 1, Fraction(0), scrap=True)


@pytest.mark.parametrize(
    ("stocks", "part", "makes", "cost", "reason"),
    [
        # 14,000 mm² are wanted, and a sheet has 10,000.
        ((SHEET,), mm(100, 70), 2, 2, "one sheet has less paper than the parts need"),
        # 35,000 of 30,000; with the scrap 34,000.
        ((SHEET,), mm(100, 70), 5, 5, "no way of cutting 4 sheets gives them all"),
        ((SHEET,), mm(100, 100), 4, 4, "3 sheets have less paper than the parts need"),
        (
            (SHEET, SCRAP),
            mm(100, 100),
            2,
            2,
            "one sheet and all the scraps have less paper than the parts need",
        ),
        ((SHEET, SCRAP), mm(60, 60), 2, 2, "no way of cutting one sheet and all the scraps gives them all"),
        ((SHEET, SCRAP), mm(100, 50), 1, 1, "all the scraps have less paper than the parts need"),
        ((SHEET, SCRAP), mm(50, 50), 1, 1, "no way of cutting all the scraps gives them all"),
        ((SHEET, SCRAP), mm(100, 40), 1, 0, "only pieces that cost nothing are cut"),
        ((SHEET,), mm(100, 40), 1, 1, "without a sheet there is nothing to cut"),
        (
            (SHEET, Stock("half", mm(100, 50), None, Fraction(3, 5))),
            mm(100, 50),
            1,
            Fraction(3, 5),
            "no choice of sheets costs less",
        ),
    ],
)
def test_why_nothing_costs_less(
    stocks: tuple[Stock, ...], part: Size, makes: int, cost: Fraction, reason: str
) -> None:
    """Area alone where it shows it, else that no way of cutting does it; with prices, that no choice does."""
    plan = least_cost(Job(stocks, (PartKind("A", part),)), makes)
    assert (plan.cost, plan.proved, plan.reason) == (cost, True, reason)
