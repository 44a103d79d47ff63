"""The year at the table and what was bought, of an invented bench."""

from __future__ import annotations

import datetime as dt
from fractions import Fraction

from batchleaf.core.cost import Cost
from batchleaf.measure.money import Currency
from batchleaf.views.drawing.charts.makes import Pile, draw_makes
from batchleaf.views.drawing.charts.money import draw_spent, draw_worth
from batchleaf.views.drawing.charts.paper import Share, draw_paper
from batchleaf.views.drawing.charts.unit_prices import PricePoint, draw_prices
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages import (
    BoughtRow,
    BoughtView,
    DrawerOfYear,
    Link,
    MadeInYear,
    MoneyRow,
    PaperOfYear,
    PaperRow,
    UsedInYear,
    UsedRow,
    YearBatchRow,
    YearsPage,
    YearView,
)

EURO = Currency.of("EUR")


def makes_drawing() -> Drawing:
    """Two batches in March, one of which is too thin for its letter, and one in May."""
    months: list[list[Pile]] = [[] for _ in range(12)]
    months[2] = [Pile("a", 24, 2), Pile("b", 1, 0)]
    months[4] = [Pile("c", 12, 0)]
    return draw_makes(months, id="makes", title="Makes by month, 2026", description="March: a, b; May: c.")


def worth_drawing() -> Drawing:
    """From March to May, the highest in April."""
    months = [None, None, Cost(20_00), Cost(31_50), Cost(12_25, complete=False), *[None] * 7]
    return draw_worth(months, EURO, id="worth", title="Worth by month, 2026", description="March 20.00 €.")


def spent_drawing() -> Drawing:
    """One month with all that can stand over a bar."""
    months = [Cost(0)] * 12
    months[2:5] = [Cost(20_00), Cost(11_50, complete=False), Cost(0, complete=False)]
    return draw_spent(months, EURO, id="spent", title="Spent by month, 2026", description="March 20.00 €.")


def paper_drawing() -> Drawing:
    """Most in makes, little kept."""
    shares = (
        Share("part", "in makes 80 %", "1.60", 80.0),
        Share("keep", "kept 3 %", "0.06", 3.0),
        Share("waste", "waste 17 %", "0.34", 17.0),
    )
    return draw_paper(shares, "2.00 m²", id="paper", title="The paper cut in 2026", description="Of 2.00 m².")


def prices_drawing() -> Drawing:
    """Over two years, one of four a guess."""
    points = (
        PricePoint(dt.date(2025, 3, 1), Fraction(30, 100), "first 0.30"),
        PricePoint(dt.date(2025, 6, 1), Fraction(45, 100), "highest 0.45"),
        PricePoint(dt.date(2025, 7, 1), Fraction(24, 100), "lowest about 0.24", rough=True),
        PricePoint(dt.date(2026, 5, 1), Fraction(33, 100), "last 0.33"),
    )
    ends = ("1 Mar 2025", "1 May 2026")
    return draw_prices(points, ends, id="price", title="What one sheet cost", description="Four purchases.")


def bought_sample() -> BoughtView:
    """A purchase with its price, a gift with its delivery, and one whose price nobody knows."""
    return BoughtView(
        unit="Papers",
        paid_label="Paid, €",
        one_label="One paper, €",
        rows=(
            BoughtRow("10 Jan 2026", "2026-01-10", "the quay fair", "24", "1 pad", "9.60", "0.40"),
            BoughtRow("2 Mar 2026", "2026-03-02", "a friend, paper 2", "3", "", "gift, 0.80", ""),
            BoughtRow("4 Apr 2026", "2026-04-04", "", "48", "2 pads", "not known", ""),
        ),
        total_quantity="75",
        total_bundles="3 pads",
        total_paid="at least 10.40",
        average="0.40",
        chart=prices_drawing(),
        chart_caption="One paper in €; each tick is a purchase.",
        notes=("A gift has no price of its own; beside it stands its delivery.",),
    )


def years_sample() -> YearsPage:
    """A year with everything, and one of which only batches are told."""
    rows = (
        YearBatchRow("a", "3 Mar", "2026-03-03", Link("Gull tags", "../projects/gull/"), "24", "2", "1 h 10"),
        YearBatchRow("b", "9 Mar", "2026-03-09", Link("Quay card", "../projects/quay/"), "1", "", ""),
        YearBatchRow("c", "2 May", "2026-05-02", Link("Buoy tags", "../projects/buoy/"), "12", "", "50 min"),
    )
    made = MadeInYear(
        anchor="made-2026",
        chart=makes_drawing(),
        caption="Each batch is a pile of its makes.",
        rows=rows,
        total_label="3 batches",
        total_makes="37",
        total_spoiled="2",
        total_time="2 h",
        notes=("The time at the table is not told of one batch.",),
    )
    paper = PaperOfYear(
        anchor="paper-2026",
        chart=paper_drawing(),
        unit="m²",
        rows=(
            PaperRow("In finished makes", "1.60", "80 %"),
            PaperRow("Kept", "0.06", "3 %"),
            PaperRow("Waste", "0.34", "17 %"),
        ),
        total=PaperRow("Cut", "2.00", "100 %"),
    )
    drawer = DrawerOfYear(
        anchor="drawer-2026",
        worth=worth_drawing(),
        worth_caption="Worth of all in the drawer at the end of each month, in €.",
        spent=spent_drawing(),
        spent_caption="Spent in each month, in €.",
        currency="€",
        rows=(MoneyRow("Bought", "with the delivery", "31.50"), MoneyRow("Missing at counts", "", "− 1.00")),
        total=MoneyRow("After the last record", "of May", "at least 30.50"),
        notes=("The price of one purchase is not known.",),
    )
    used = UsedInYear(
        anchor="used-2026",
        currency="€",
        rows=(
            UsedRow((Link("dune card", "../drawer/dune-card/"),), "7 sheets", "1.75"),
            UsedRow(("3 other supplies",), "", "0.25"),
        ),
        total="2.00",
        notes=("Dearest first.",),
    )
    bare = YearView("y2025", "2025", ("2 batches, 9 makes.",), None, None, None, None)
    return YearsPage(
        "The year at the table",
        ("In 2026: 3 batches, 37 makes of 39 begun.",),
        (YearView("y2026", "2026", (), made, paper, drawer, used), bare),
    )
