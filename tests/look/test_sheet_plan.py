"""Laws of a drawn sheet plan, on random plans of through cuts."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.facts import Fold, Grain, Score
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.callouts import Callout
from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Extent, Lettering
from batchleaf.views.drawing.shapes import Drawing, Label, Ring, Shape, Stroke
from batchleaf.views.drawing.sheet_plan import common_scale, draw_sheet_plan
from batchleaf.views.drawing.sheet_to_draw import sheet_to_draw
from batchleaf.views.drawing.sides import Side, stops
from batchleaf.views.drawing.spread import spread
from batchleaf.views.drawing.standing import stand
from batchleaf.views.pages import CutNumbers
from look.samples import kept_of, pad_sheet, plan_drawing, tag_sheet, wide_sheet

LETTERS = "ABCDEFGHIJ"
RENAMED = {"base": "A", "panel": "B", "label": "C", "sky": "D", "water": "E", "tag": "F"}


class Plan:
    """A random plan: where everything lies, what is kept, and how it is drawn."""

    def __init__(self, laid: LaidOut, kept: tuple[Rect, ...], unit: Unit, fold: Fold, grain: Grain) -> None:
        self.laid, self.kept = laid, kept
        self.scores = scored(laid, fold)
        self.drawing = draw_sheet_plan(
            sheet_to_draw(
                laid,
                letters={name: name for name in LETTERS},
                kept=kept,
                scores={"A": self.scores},
                grain=grain,
            ),
            id="plan",
            title="A sheet",
            description="Some parts.",
            unit=unit,
            scale=common_scale([laid.sheet.size]),
        )


def scored(laid: LaidOut, fold: Fold) -> tuple[Score, ...]:
    """The scores of part A: within the smallest A that the plan has, for its sizes are random."""
    sizes = [
        part.rect.size.turned if part.turned else part.rect.size for part in laid.parts if part.part == "A"
    ]
    width = min((size.width for size in sizes), default=Fraction(1))
    height = min((size.height for size in sizes), default=Fraction(1))
    half, fifths = [Fraction(1, 2)], [Fraction(1, 5), Fraction(4, 5)]
    down = {
        Fold.SIDE: half,
        Fold.GATE: [Fraction(1, 4), Fraction(3, 4)],
        Fold.ACCORDION: [Fraction(i, 7) for i in range(1, 7)],
        Fold.BOX: fifths,
    }
    across = {Fold.TOP: half, Fold.TENT: half, Fold.BOX: fifths}
    return (
        *(Score(runs_down=True, at=width * share) for share in down.get(fold, [])),
        *(Score(runs_down=False, at=height * share) for share in across.get(fold, [])),
    )


def trees(width: int, height: int, depth: int) -> st.SearchStrategy[Node]:
    """Trees of cuts at whole millimetres; equal strips now and then, as makers cut them."""
    leaf: st.SearchStrategy[Node] = st.one_of(st.sampled_from(LETTERS).map(PartLeaf), st.just(Leftover()))
    if depth == 0 or max(width, height) < 16:
        return leaf

    @st.composite
    def cut(draw: st.DrawFn) -> Node:
        down = draw(st.booleans()) if min(width, height) >= 16 else width >= height
        length = width if down else height
        at = draw(st.integers(min_value=4, max_value=length - 4))
        rest = (length - at, height) if down else (width, length - at)
        first = draw(trees(*((at, height) if down else (width, at)), depth - 1))
        return ThroughCut(Axis.X if down else Axis.Y, Fraction(at), first, draw(trees(*rest, depth - 1)))

    @st.composite
    def strips(draw: st.DrawFn) -> Node:
        down = draw(st.booleans())
        length = width if down else height
        at = draw(st.integers(min_value=4, max_value=max(4, length // 2)))
        cross = (at, height) if down else (width, at)
        each: Node = draw(trees(*cross, depth - 1))
        node: Node = Leftover()
        for _ in range(min(14, (length - 1) // at)):
            node = ThroughCut(Axis.X if down else Axis.Y, Fraction(at), each, node)
        return node

    return st.one_of(cut(), strips()) if min(width, height) >= 16 else leaf


def laid_out(width: int, height: int, tree: Node) -> LaidOut:
    """``tree`` on a sheet; the parts' own sizes play no role in where they lie."""
    sheet = Size(Fraction(width), Fraction(height))
    parts = tuple(PartKind(name, Size(Fraction(1), Fraction(1))) for name in LETTERS)
    return lay_out(SheetPlan("s", 1, tree), Job((Stock("s", sheet),), parts))


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    """A sheet between a small scrap and a large sheet, cut up to three levels deep."""
    width, height = draw(st.integers(60, 420)), draw(st.integers(60, 420))
    laid = laid_out(width, height, draw(trees(width, height, 3)))
    worth_it = [rect for rect in laid.leftovers if min(rect.width, rect.height) >= 25]
    kept = draw(st.sets(st.sampled_from(worth_it), max_size=4)) if worth_it else set()
    return Plan(
        laid,
        tuple(sorted(kept, key=lambda rect: (rect.x, rect.y))),
        draw(st.sampled_from(Unit)),
        draw(st.sampled_from(Fold)),
        draw(st.sampled_from(Grain)),
    )


def hand_made() -> list[Plan]:
    """Plans as makers cut them: a kept piece, close cuts, many small parts."""
    found = []
    for laid in (wide_sheet(), pad_sheet(), tag_sheet()):
        parts = tuple(replace(part, part=RENAMED[part.part]) for part in laid.parts)
        renamed = replace(laid, parts=parts)
        found.append(Plan(renamed, kept_of(laid), Unit.INCH, Fold.SIDE, Grain.LONG))
    return found


def lettering(drawing: Drawing) -> Lettering:
    """The largest lettering that the style sheet gives this drawing."""
    return Lettering(drawing.scale, drawing.width_class)


def marks(drawing: Drawing) -> list[tuple[Shape, Extent]]:
    """Every label and ring with what it covers; a number lies in its ring and is left out."""
    rings = {(shape.x, shape.y) for shape in drawing.shapes if isinstance(shape, Ring)}
    return [
        (shape, lettering(drawing).extent(shape))
        for shape in drawing.shapes
        if isinstance(shape, Ring) or (isinstance(shape, Label) and (shape.x, shape.y) not in rings)
    ]


def words(drawing: Drawing) -> list[str]:
    """What is written on it."""
    return [shape.text.replace("\u00a0", " ") for shape in drawing.shapes if isinstance(shape, Label)]


def collisions(drawing: Drawing) -> Iterator[tuple[Shape, Shape]]:
    """Labels and rings that lie on one another; touching within a thousandth is none."""
    for (one, a), (other, b) in itertools.combinations(marks(drawing), 2):
        if Extent(a.left + 1e-3, a.top + 1e-3, a.right - 1e-3, a.bottom - 1e-3).meets(b):
            yield one, other


slowly = settings(max_examples=60, deadline=None)


@slowly
@given(plans())
@example(hand_made()[0])
@example(hand_made()[1])
@example(hand_made()[2])
def test_nothing_written_meets(plan: Plan) -> None:
    """No two labels or rings overlap, at the largest lettering the drawing ever has."""
    assert list(collisions(plan.drawing)) == []


@slowly
@given(plans())
def test_all_is_in_the_frame(plan: Plan) -> None:
    """Nothing is cut off, and the drawing fits its width class, so figures keep 11 px at 320 px."""
    drawing = plan.drawing
    frame = Extent(drawing.x, drawing.y, drawing.x + drawing.width, drawing.y + drawing.height)
    assert all(frame.holds(lettering(drawing).extent(shape)) for shape in drawing.shapes)
    assert drawing.width * drawing.scale <= WIDEST_PX[drawing.width_class]


@slowly
@given(plans())
def test_every_part_and_kept_piece_is_named(plan: Plan) -> None:
    """The letter of every part is written, and each kept piece says keep."""
    written = {text.split(" × ")[0] for text in words(plan.drawing)}
    assert {part.part for part in plan.laid.parts} <= written
    assert sum(text.startswith("keep") for text in words(plan.drawing)) == len(plan.kept)


def numbers(drawing: Drawing) -> list[int]:
    """Every number that the rings tell, those within a range as well."""
    found: list[int] = []
    for text in (one.text for one in drawing.shapes if isinstance(one, Label) and "no" in one.role.split()):
        first, _, last = text.partition("–")
        found += range(int(first), int(last or first) + 1)
    return sorted(found)


@slowly
@given(plans())
@example(hand_made()[0])
@example(hand_made()[1])
@example(hand_made()[2])
def test_every_cut_is_told_once(plan: Plan) -> None:
    """Each number from the first to the last cut stands in one ring, alone or within a range."""
    assert numbers(plan.drawing) == [cut.n for cut in plan.laid.cuts]


@slowly
@given(plans())
@example(hand_made()[2])
def test_every_number_has_its_ring(plan: Plan) -> None:
    """A number lies in a ring that is wide enough for it."""
    rings = {(ring.x, ring.y): ring.characters for ring in plan.drawing.shapes if isinstance(ring, Ring)}
    told = [one for one in plan.drawing.shapes if isinstance(one, Label) and "no" in one.role.split()]
    assert {(one.x, one.y): len(one.text) for one in told} == rings


@slowly
@given(plans())
@example(hand_made()[2])
def test_letters_keep_off_the_cuts(plan: Plan) -> None:
    """Neither a letter nor the number of equal parts after it lies across a cut."""
    written = [
        lettering(plan.drawing).extent(shape)
        for shape in plan.drawing.shapes
        if isinstance(shape, Label) and "letter" in shape.role.split()
    ]
    cuts = [Extent(*line) for cut in plan.laid.cuts for line in (line_of(cut),)]
    assert not any(around.meets(line) for around in written for line in cuts)


def line_of(cut: CutStep) -> tuple[float, float, float, float]:
    """Where ``cut`` lies on the sheet, as x and y of both its ends."""
    x, y = float(cut.piece.x), float(cut.piece.y)
    if cut.axis is Axis.X:
        at = x + float(cut.setting)
        return (at, y, at, y + float(cut.piece.height))
    at = y + float(cut.setting)
    return (x, at, x + float(cut.piece.width), at)


def brackets(drawing: Drawing) -> list[tuple[float, float, float, float]]:
    """The long line of each bracket."""
    return [
        shape.lines[0] for shape in drawing.shapes if isinstance(shape, Stroke) and shape.role == "bracket"
    ]


def test_a_run_has_one_ring_and_a_bracket() -> None:
    """Twenty-four rows of tags, then six cuts in each: two rings, and brackets from outer to outer line."""
    drawing = hand_made()[2].drawing
    assert {one for one in words(drawing) if "–" in one} == {"1–24", "25–168"}
    assert sum(isinstance(shape, Ring) for shape in drawing.shapes) == 2
    spans = {(x1, x2) if x1 != x2 else (y1, y2) for x1, y1, x2, y2 in brackets(drawing)}
    assert spans == {(12, 288), (30, 180)}


def test_two_cuts_keep_their_rings() -> None:
    """Two are no run: each has its number."""
    drawing = hand_made()[0].drawing
    assert {"2", "3"} <= set(words(drawing))
    assert brackets(drawing) == []


def cut_callouts(many: int, every: float, step: int = 1) -> list[Callout]:
    """``many`` single cuts from the left side, numbered by ``step``."""
    return [
        Callout(Side.LEFT, i * every, i * every, 0, CutNumbers(1 + i * step, 1 + i * step))
        for i in range(1, many + 1)
    ]


@given(st.integers(1, 60), st.integers(1, 20), st.integers(60, 400))
def test_rings_stand_in_two_rows_at_most(many: int, every: int, length: int) -> None:
    """Where there are more, numbers that follow one another share a ring; none gets lost."""
    canvas = Canvas(Lettering(1.46, "large"))
    standing = stand(canvas, cut_callouts(many, every), length)
    told = [one.callout.told for one in standing]
    covered = [n for one in told if isinstance(one, CutNumbers) for n in range(one.first, one.last + 1)]
    assert sorted(covered) == list(range(2, many + 2))
    assert len({one.out for one in standing}) <= 2


def test_numbers_that_cannot_be_joined_take_a_further_row() -> None:
    """Odd cuts alone on a side: all stand, each with its own number."""
    standing = stand(Canvas(Lettering(1.46, "large")), cut_callouts(30, 2, step=2), 80)
    assert len(standing) == 30


@slowly
@given(plans(), st.sampled_from(Side))
def test_a_chain_adds_up_to_the_sheet(plan: Plan, side: Side) -> None:
    """Stops run from corner to corner, each after the other, and lie on edges of pieces."""
    found = stops(side, plan.laid, plan.kept)
    edges = {
        end
        for piece in (*(part.rect for part in plan.laid.parts), *plan.laid.leftovers)
        for end in side.span(piece)
    }
    assert found[0] == 0
    assert found[-1] == side.length(plan.laid.sheet)
    assert list(found) == sorted(set(found))
    assert set(found) <= edges


@slowly
@given(plans())
def test_letters_lie_in_their_parts(plan: Plan) -> None:
    """A letter inside the sheet stands on a part of its own kind."""
    sheet = plan.laid.sheet
    for shape in plan.drawing.shapes:
        if not isinstance(shape, Label) or "letter" not in shape.role.split():
            continue
        inside = 0 < shape.x < sheet.width and 0 < shape.y < sheet.height
        kinds = {
            part.part
            for part in plan.laid.parts
            if part.rect.x <= shape.x <= part.rect.x + part.rect.width
            and part.rect.y <= shape.y <= part.rect.y + part.rect.height
        }
        assert not inside or shape.text.split(" × ")[0] in kinds


@st.composite
def rows(draw: st.DrawFn) -> tuple[list[int], list[int], list[int]]:
    """Wanted places, the steps between them, and what each weighs."""
    wanted = sorted(draw(st.lists(st.integers(0, 300), min_size=1, max_size=9)))
    many = len(wanted)
    steps = draw(st.lists(st.integers(1, 25), min_size=many - 1, max_size=many - 1))
    return wanted, steps, draw(st.lists(st.integers(1, 10), min_size=many, max_size=many))


@given(rows())
def test_spread_is_the_nearest_that_keeps_distance(row: tuple[list[int], list[int], list[int]]) -> None:
    """Places keep their distance and bounds, and no shift of a run of them comes nearer."""
    wanted, steps, weights = row
    places = spread(wanted, steps, 0, 300, weights)

    def off(tried: list[float]) -> float:
        return sum(c * (a - b) ** 2 for a, b, c in zip(tried, wanted, weights, strict=True))

    def allowed(tried: list[float]) -> bool:
        gaps = zip(itertools.pairwise(tried), steps, strict=True)
        apart = all(b - a >= step - 1e-9 for (a, b), step in gaps)
        return apart and tried[0] >= -1e-9 and tried[-1] <= 300 + 1e-9

    assert allowed(list(places))
    for start, end in itertools.combinations(range(len(places) + 1), 2):
        for step in (-0.05, 0.05):
            tried = [place + step * (start <= i < end) for i, place in enumerate(places)]
            assert not allowed(tried) or off(tried) >= off(list(places)) - 1e-9


def test_a_sheet_in_its_measures() -> None:
    """The chains of the sample sheet, worked out by hand."""
    laid = wide_sheet()
    assert list(stops(Side.TOP, laid, ())) == [0, 210, 305]
    assert list(stops(Side.LEFT, laid, ())) == [0, 148, 296, 305]
    assert list(stops(Side.RIGHT, laid, ())) == [0, 138, 276, 302, 305]
    assert list(stops(Side.BOTTOM, laid, ())) == [0, 210, 254, 298, 305]


def test_figures_are_in_the_records_unit() -> None:
    """A sheet of 12 in with a cut at 8 1/4 says so."""
    inch = Fraction(127, 5)
    tree = ThroughCut(Axis.X, inch * 33 / 4, PartLeaf("A"), Leftover())
    laid = lay_out(
        SheetPlan("s", 1, tree),
        Job((Stock("s", Size(inch * 12, inch * 12)),), (PartKind("A", Size(inch * 33 / 4, inch * 12)),)),
    )
    drawing = draw_sheet_plan(
        sheet_to_draw(
            laid,
            letters={"A": "A"},
            kept=laid.leftovers,
            scores={},
            grain=Grain.UNKNOWN,
        ),
        id="d",
        title="t",
        description="d",
        unit=Unit.INCH,
        scale=1.4,
    )
    assert {"8 1/4", "3 3/4", "12", "keep 3 3/4 × 12"} <= set(words(drawing))


@pytest.mark.parametrize("side_of_sheet", [Fraction(305), 12 * Fraction(127, 5)], ids=["305 mm", "12 in"])
def test_the_last_figure_is_written_past_the_end(side_of_sheet: Fraction) -> None:
    """Where a strip at the edge is too narrow for its figure, whatever fraction of a mm the sheet ends at."""
    strip = Fraction(10)
    tree = ThroughCut(Axis.X, side_of_sheet - strip, PartLeaf("A"), PartLeaf("B"))
    size = Size(side_of_sheet, side_of_sheet)
    drawing = Plan(
        lay_out(SheetPlan("s", 1, tree), Job((Stock("s", size),), ())), (), Unit.MM, Fold.NONE, Grain.UNKNOWN
    ).drawing
    (last,) = (one for one in drawing.shapes if isinstance(one, Label) and one.text == "10")
    assert last.x > side_of_sheet


def test_unknown_grain_is_not_drawn() -> None:
    """No arrow where nobody knows how the fibres lie."""
    assert "grain" not in words(plan_drawing(wide_sheet(), "d", grain=Grain.UNKNOWN))
    assert "grain" in words(plan_drawing(wide_sheet(), "d", grain=Grain.SHORT))


@pytest.mark.parametrize("narrow", [4, 5])
def test_narrow_waste_stays_blank(narrow: int) -> None:
    """Waste narrower than 5 mm has no dotted edge."""
    laid = laid_out(200, 100, ThroughCut(Axis.X, Fraction(200 - narrow), PartLeaf("A"), Leftover()))
    drawing = Plan(laid, (), Unit.MM, Fold.NONE, Grain.UNKNOWN).drawing
    assert any(shape.role == "waste" for shape in drawing.shapes) == (narrow == 5)


def strokes(drawing: Drawing) -> list[tuple[float, float, float, float]]:
    """Every score line that is drawn."""
    return [
        line
        for shape in drawing.shapes
        if isinstance(shape, Stroke) and shape.role == "fold"
        for line in shape.lines
    ]


@pytest.mark.parametrize(
    ("scores", "upright", "turned"),
    [
        ([Score(runs_down=True, at=Fraction(100))], [(100, 0, 100, 100)], [(0, 100, 100, 100)]),
        ([Score(runs_down=False, at=Fraction(30))], [(0, 30, 200, 30)], [(70, 0, 70, 200)]),
        (
            [Score(runs_down=True, at=Fraction(at)) for at in (50, 150)],
            [(50, 0, 50, 100), (150, 0, 150, 100)],
            [(0, 50, 100, 50), (0, 150, 100, 150)],
        ),
    ],
    ids=["side fold", "off the middle", "gate fold"],
)
def test_scores_turn_with_their_part(
    scores: list[Score], upright: list[tuple[int, ...]], turned: list[tuple[int, ...]]
) -> None:
    """A part of 200 x 100 that is given a quarter turn to the right: its left edge comes to the top."""
    for width, height, tree, lines in (
        (200, 100, PartLeaf("A"), upright),
        (100, 200, PartLeaf("A", turned=True), turned),
    ):
        drawing = draw_sheet_plan(
            sheet_to_draw(
                laid_out(width, height, tree),
                letters={"A": "A"},
                kept=(),
                scores={"A": tuple(scores)},
                grain=Grain.UNKNOWN,
            ),
            id="d",
            title="t",
            description="d",
            unit=Unit.MM,
            scale=1.4,
        )
        assert strokes(drawing) == lines


@pytest.mark.slow
@slowly
@given(plans())
def test_every_score_of_every_part_is_drawn(plan: Plan) -> None:
    """Each part has all its lines, from edge to edge of it and of no other."""
    drawn = sorted(strokes(plan.drawing))
    expected = []
    for part in plan.laid.parts:
        if part.part != "A":
            continue
        x, y, width, height = part.rect.x, part.rect.y, part.rect.width, part.rect.height
        for score in plan.scores:
            if score.runs_down and not part.turned:
                line = (x + score.at, y, x + score.at, y + height)
            elif score.runs_down:
                line = (x, y + score.at, x + width, y + score.at)
            elif part.turned:
                line = (x + width - score.at, y, x + width - score.at, y + height)
            else:
                line = (x, y + score.at, x + width, y + score.at)
            expected.append(tuple(map(float, line)))
    assert drawn == sorted(expected)


@pytest.mark.slow
@slowly
@given(plans())
def test_nothing_is_written_across_a_score(plan: Plan) -> None:
    """Letters, figures and arrows keep clear of score lines; the word “fold” alone lies on one."""
    arrows = [
        lettering(plan.drawing).extent(shape)
        for shape in plan.drawing.shapes
        if isinstance(shape, Stroke) and shape.role == "grain"
    ]
    written = [
        around
        for shape, around in marks(plan.drawing)
        if not isinstance(shape, Label) or shape.text != "fold"
    ]
    for line in itertools.starmap(Extent, strokes(plan.drawing)):
        assert not any(around.meets(line) for around in written + arrows)
