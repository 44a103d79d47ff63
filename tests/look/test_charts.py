"""Charts: honest from nothing on, and their words apart at every width."""

from __future__ import annotations

import datetime as dt
import itertools
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.measure.money import Currency
from batchleaf.views.drawing.canvas import WIDEST_PX, Extent, Lettering
from batchleaf.views.drawing.charts.field import hatch
from batchleaf.views.drawing.charts.makes import Pile, draw_makes
from batchleaf.views.drawing.charts.money import draw_spent, draw_worth
from batchleaf.views.drawing.charts.paper import Share, draw_paper
from batchleaf.views.drawing.charts.scale import scale_for
from batchleaf.views.drawing.charts.unit_prices import PricePoint, draw_prices
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke
from look.year_samples import makes_drawing, paper_drawing, prices_drawing, spent_drawing, worth_drawing

PILES = st.lists(st.builds(Pile, st.just("a"), st.integers(0, 60), st.integers(0, 5)), max_size=6)
MONTHS_OF_PILES = st.lists(PILES, min_size=12, max_size=12)
COSTS = st.builds(Cost, st.integers(0, 3_000_00), st.booleans())
CURRENCIES = st.sampled_from([Currency.of(code) for code in ("EUR", "JPY", "KWD")])
VALUES = st.fractions(min_value=0, max_value=10**7)


def lettered(months: list[list[Pile]]) -> list[list[Pile]]:
    """Letters in order."""
    letters = (chr(97 + i) for i in range(26))
    return [[Pile(next(letters, ""), one.finished, one.spoiled) for one in month] for month in months]


def makes(months: list[list[Pile]]) -> Drawing:
    """The chart of makes."""
    return draw_makes(lettered(months), id="m", title="t", description="d")


def worth(months: list[Cost | None], currency: Currency) -> Drawing:
    """The chart of worth."""
    return draw_worth(months, currency, id="w", title="t", description="d")


def spent(months: list[Cost], currency: Currency) -> Drawing:
    """The chart of what was spent."""
    return draw_spent(months, currency, id="s", title="t", description="d")


def boxes(drawing: Drawing, role: str) -> list[Box]:
    """The boxes drawn in one way."""
    return [shape for shape in drawing.shapes if isinstance(shape, Box) and shape.role == role]


def lines(drawing: Drawing, role: str) -> list[tuple[float, float, float, float]]:
    """All lines drawn in one way."""
    return [
        line for one in drawing.shapes if isinstance(one, Stroke) and one.role == role for line in one.lines
    ]


def words(drawing: Drawing) -> list[Label]:
    """All that is written."""
    return [shape for shape in drawing.shapes if isinstance(shape, Label)]


def crowded(drawing: Drawing) -> list[tuple[str, str]]:
    """Words that lie on one another, or past the edge, at their largest."""
    lettering = Lettering(drawing.scale, drawing.width_class)
    frame = Extent(drawing.x, drawing.y, drawing.x + drawing.width, drawing.y + drawing.height)
    placed = [(one.text, lettering.extent(one)) for one in words(drawing)]
    past = [(text, "past the edge") for text, extent in placed if not frame.holds(extent)]
    pairs = itertools.combinations(placed, 2)
    return past + [(one, other) for (one, a), (other, b) in pairs if a.meets(b)]


def fits(drawing: Drawing) -> bool:
    """As wide as all charts of a page, which is as wide as its lettering allows."""
    return drawing.width == WIDEST_PX["large"] and drawing.width_class == "large"


# --- the rule -----------------------------------------------------------------------------


@given(VALUES, st.integers(1, 9), st.booleans())
def test_a_rule_starts_at_nothing_and_holds_the_highest(highest: Fraction, most: int, whole: bool) -> None:  # noqa: FBT001
    """Round steps, not more than there is room for; it ends at the first tick that holds the highest."""
    scale = scale_for(highest, most, whole=whole)
    assert scale.figures()[0][0] == 0
    assert str(float(scale.step)).strip("0.")[:1] in {"1", "2", "5"} or scale.step in {
        10**k for k in range(9)
    }
    assert len(scale.figures()) - 1 <= most
    part = scale.step / scale.parts
    assert highest <= scale.top
    assert scale.top - part < highest or scale.top == scale.step
    assert not whole or part.denominator == 1
    both = [value for value, _ in scale.figures()] + scale.ticks()
    assert sorted(both) == [part * i for i in range(int(scale.top / part) + 1)]


@pytest.mark.parametrize(
    ("highest", "figures", "top"),
    [
        (Fraction(24), ["0", "5", "10", "15", "20"], 24),
        (Fraction(3), ["0", "1", "2", "3"], 3),
        (Fraction(30, 100), ["0.0", "0.1", "0.2", "0.3"], Fraction(3, 10)),
        (Fraction(9819, 100), ["0", "20", "40", "60", "80", "100"], 100),
        (Fraction(0), ["0", "1"], 1),
    ],
)
def test_rules_by_hand(highest: Fraction, figures: list[str], top: Fraction) -> None:
    """Cards, cents, euros, and nothing at all."""
    scale = scale_for(highest, 5, whole=highest.denominator == 1)
    assert ([text for _, text in scale.figures()], scale.top) == (figures, top)


# --- makes ----------------------------------------------------------------------------------


@given(MONTHS_OF_PILES)
def test_a_pile_is_as_high_as_its_makes(months: list[list[Pile]]) -> None:
    """Every make of the year has one height; piles of a month stand on one another from nothing up."""
    drawing = makes(months)
    piles = [one for month in months for one in month if one.finished]
    drawn = boxes(drawing, "piece")
    assert len(drawn) == len(piles)
    heights = {round(box.height / one.finished, 6) for box, one in zip(drawn, piles, strict=True)}
    assert len(heights) <= 1
    stack: dict[float, float] = {}
    for box in drawn:
        assert box.y + box.height == pytest.approx(stack.get(box.x, 0.0))
        stack[box.x] = box.y


@given(MONTHS_OF_PILES)
def test_the_words_of_makes_stay_apart(months: list[list[Pile]]) -> None:
    """How many are finished stands over every month with a batch; each letter is said, alone or in a row."""
    drawing = makes(months)
    assert crowded(drawing) == []
    assert fits(drawing)
    said = [one.text for one in words(drawing) if {"key", "keys"} & set(one.role.split())]
    told = {chr(c) for text in said for c in range(ord(text[0]), ord(text[-1]) + 1)}
    assert told == {one.letter for month in lettered(months) for one in month if one.letter}
    over = [one for one in words(drawing) if one.role.split()[0] == "halo"]
    assert [one.text for one in over] == [str(sum(p.finished for p in month)) for month in months if month]


def test_what_was_spoiled_lies_on_top_with_a_dotted_edge() -> None:
    """A quarter as high as what was finished, and no part of the pile."""
    months: list[list[Pile]] = [[] for _ in range(12)]
    months[3] = [Pile("a", 16, 4)]
    drawing = makes(months)
    (pile,), (spoiled,) = boxes(drawing, "piece"), boxes(drawing, "waste")
    assert spoiled.y + spoiled.height == pytest.approx(pile.y - 2)
    assert spoiled.height + 4 == pytest.approx(pile.height / 4)
    assert [line for line in lines(drawing, "extension") if line[1] < pile.y] == []


# --- money ----------------------------------------------------------------------------------


@given(st.lists(COSTS, min_size=12, max_size=12), CURRENCIES)
def test_bars_are_in_proportion(months: list[Cost], currency: Currency) -> None:
    """Each as high as its money, from nothing; over it stands the sum, and whether it is all."""
    drawing = spent(months, currency)
    paid = [month.known for month in months if month.known]
    bars = boxes(drawing, "piece")
    assert len(bars) == len(paid)
    for bar, amount in zip(bars, paid, strict=True):
        assert bar.height == pytest.approx(bars[0].height * amount / paid[0])
        assert bar.y + bar.height == pytest.approx(0)
    over = [one.text for one in words(drawing) if one.role.split()[0] == "halo"]
    assert [text.endswith(("+", "?")) for text in over] == [
        not month.complete for month in months if month.known or not month.complete
    ]
    assert crowded(drawing) == []
    assert fits(drawing)


@given(st.lists(st.none() | COSTS, min_size=12, max_size=12), CURRENCIES)
def test_a_step_is_as_high_as_the_worth_of_its_month(months: list[Cost | None], currency: Currency) -> None:
    """From the base line up; months of which nothing is told have none."""
    drawing = worth(months, currency)
    level = [line for line in lines(drawing, "stepped") if line[0] != line[2]]
    known = [month.known for month in months if month is not None]
    assert len(level) == len(known)
    highest = max(known, default=0)
    if highest:
        unit = -min(line[1] for line in level) / highest
        assert [-line[1] for line in level] == pytest.approx([amount * unit for amount in known])
    assert crowded(drawing) == []
    assert fits(drawing)


def test_the_last_worth_is_measured_and_the_highest_named() -> None:
    """12.25 stands at the measure, 31.50 over its step, and nothing else is written of money."""
    figures = [one.text for one in words(worth_drawing()) if one.role.split()[0] in ("halo", "figure")]
    assert sorted(figures) == ["12.25", "31.50"]
    assert [one.text for one in words(spent_drawing()) if one.role.split()[0] == "halo"] == [
        "20.00", "11.50 +", "?",
    ]  # fmt: skip


@given(*(st.floats(-90, 90) for _ in range(2)), *(st.floats(20, 90) for _ in range(2)))
def test_hatching_goes_on_from_one_rectangle_to_the_next(
    x: float, y: float, wide: float, high: float
) -> None:
    """Lines lie in the rectangle; two halves have those of the whole."""
    whole = hatch(x, y, x + wide, y + high)
    assert whole
    for x1, y1, x2, y2 in whole:
        assert all(x - 1e-6 <= one <= x + wide + 1e-6 for one in (x1, x2))
        assert all(y - 1e-6 <= one <= y + high + 1e-6 for one in (y1, y2))
        assert x1 + y1 == pytest.approx(x2 + y2)
    halves = [*hatch(x, y, x + wide / 2, y + high), *hatch(x + wide / 2, y, x + wide, y + high)]

    def length(of: list[tuple[float, float, float, float]]) -> float:
        return sum(abs(one[2] - one[0]) for one in of)

    assert length(halves) == pytest.approx(length(whole), abs=1e-6)


# --- paper ------------------------------------------------------------------------------------


@given(st.lists(st.integers(0, 100), min_size=3, max_size=3).filter(any))
def test_the_strip_is_shared_by_area(areas: list[int]) -> None:
    """Its parts fill it; each is named and measured, the whole as well, and no two words meet."""
    told = zip(("part", "keep", "waste"), ("in makes 33 %", "kept 100 %", "waste 33 %"), areas, strict=True)
    shares = [Share(role, word, f"12.{area:02d}", float(area)) for role, word, area in told]
    drawing = draw_paper(shares, "112.00 m²", id="p", title="t", description="d")
    there = [share for share in shares if share.area]
    drawn = [box for role in ("part", "keep") for box in boxes(drawing, role)]
    length = boxes(drawing, "outline")[0].width
    expected = [share.area / sum(areas) * length for share in there if share.role != "waste"]
    assert [box.width for box in drawn] == pytest.approx(expected)
    said = sorted(one.text for one in words(drawing))
    assert said == sorted([*(share.word for share in there), *(share.figure for share in there), "112.00 m²"])
    assert crowded(drawing) == []
    assert fits(drawing)


# --- prices -----------------------------------------------------------------------------------

ORDERS = st.lists(
    st.tuples(st.integers(0, 2000), st.integers(0, 5000), st.booleans()), min_size=2, max_size=30
).map(sorted)


@given(ORDERS, st.data())
def test_prices_stand_at_their_days(orders: list[tuple[int, int, bool]], data: st.DataObject) -> None:
    """A point for each purchase, as high as its price and as far along as its day; words stay apart."""
    named = data.draw(st.sets(st.sampled_from(range(len(orders))), max_size=4))
    points = [
        PricePoint(
            dt.date(2024, 1, 1) + dt.timedelta(days=on),
            Fraction(price, 100),
            f"first and lowest {price / 100}" if i in named else "",
            rough=rough,
        )
        for i, (on, price, rough) in enumerate(orders)
    ]
    drawing = draw_prices(points, ("1 Jan 2024", "31 Dec 2029"), id="p", title="t", description="d")
    assert crowded(drawing) == []
    assert fits(drawing)
    marks = [((a + c) / 2, (b + d) / 2, False) for a, b, c, d in lines(drawing, "point")]
    marks += [(box.x + box.width / 2, box.y + box.height / 2, True) for box in boxes(drawing, "piece")]
    assert sorted(rough for *_, rough in marks) == sorted(rough for *_, rough in orders)
    steps = lines(drawing, "stepped")
    at = [(steps[0][0], steps[0][1]), *((line[2], line[3]) for line in steps[1::2])]
    assert sorted((round(x, 6), round(y, 6)) for x, y, _ in marks) == sorted(
        (round(x, 6), round(y, 6)) for x, y in at
    )
    highest = max(price for _, price, _ in orders)
    if highest:
        unit = -min(y for _, y in at) / highest
        assert [-y for _, y in at] == pytest.approx([price * unit for _, price, _ in orders], abs=1e-6)
    days = orders[-1][0] - orders[0][0]
    if days:
        far = at[-1][0] - at[0][0]
        assert [x - at[0][0] for x, _ in at] == pytest.approx(
            [(on - orders[0][0]) / days * far for on, *_ in orders]
        )


@pytest.mark.parametrize(
    "drawing",
    [makes_drawing(), worth_drawing(), spent_drawing(), paper_drawing(), prices_drawing()],
    ids=lambda drawing: drawing.id,
)
def test_samples_are_not_crowded(drawing: Drawing) -> None:
    """As they stand on the sample pages."""
    assert crowded(drawing) == []
