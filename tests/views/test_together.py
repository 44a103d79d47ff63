"""How one make is put together, in words and as drawings of the page."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import Figures
from batchleaf.core.geometry.lying import put_together
from batchleaf.facts import Direction, Fold, ImageUse, PaperSide, ShownSide
from batchleaf.facts.spots import Spot
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.records.spots import read_spots
from batchleaf.views.drawing.apart import draw_apart
from batchleaf.views.drawing.aspect import draw_aspect
from batchleaf.views.drawing.canvas import Lettering
from batchleaf.views.drawing.paper import Fill, Marks, fill_of, fills_of, marks_on
from batchleaf.views.drawing.shapes import Box, Label, Stroke
from batchleaf.views.drawing.surfaces import blank, papers_of
from batchleaf.views.layers_apart import stacks_of
from batchleaf.views.lying_in_words import in_from_edges
from batchleaf.views.lying_json import lying_json
from batchleaf.views.pages import TogetherView
from batchleaf.views.together import first_together, shown_aspects, together_view
from core.drawers import part, supply
from geometry.makes import base, layer, make

ROOT = Path(__file__).parents[2]


def plain(text: str) -> str:
    """With spaces that break, for comparing."""
    return text.replace("\u00a0", " ")


@pytest.fixture(scope="module")
def figures() -> Figures:
    """Those of the demo."""
    figures = open_archive(ROOT).worked().figures
    assert figures is not None
    return figures


@pytest.fixture(scope="module")
def views(figures: Figures) -> dict[str, TogetherView]:
    """Every batch of the demo."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    found = {slug: first_together(batch, supplies) for slug, batch in figures.batches.items()}
    return {slug: view for slug, view in found.items() if view is not None}


@pytest.mark.parametrize("scale", [0.4, 1.3])
def test_a_drawing_is_as_large_with_blank_paper(figures: Figures, scale: float) -> None:
    """Patterns lie within the edges of their pieces, so that a scale may be tried without them."""
    supplies, patterned = {one.slug: one for one in figures.archive.supplies}, 0
    papers, lettering = papers_of(supplies), Lettering(scale, "middle")
    for batch in figures.batches.values():
        made = put_together(batch.project)
        if made is None:
            continue
        for stack in stacks_of(made):
            drawn = draw_apart(stack.layers, papers, lettering)
            assert drawn.extent == draw_apart(stack.layers, blank, lettering).extent
            patterned += any("pattern" in shape.role for shape in drawn.shapes)
        for shown in shown_aspects(made, supplies):
            drawn = draw_aspect(shown, papers, Unit.MM, lettering)
            assert drawn.extent == draw_aspect(shown, blank, Unit.MM, lettering).extent
            patterned += any("pattern" in shape.role for shape in drawn.shapes)
    assert patterned


def words(view: TogetherView) -> dict[str, str]:
    """Caption → description."""
    return {one.caption: plain(one.drawing.description) for one in (*view.figures, *view.layers)}


def test_a_layered_card_in_words(views: dict[str, TogetherView]) -> None:
    """Each part with its paper, size, what it lies on and how far from which edges."""
    assert words(views["sloe-lane-cards"]) == {
        "Front": "Base of oat card, 4 1/4 × 5 1/2 in, folded at the left. B, mat of moss card, 3 3/4 × 5 in,"
        " on the front, 1/4 in from every edge. C, panel of bramble paper, 3 1/2 × 3 in, on the mat, 1/8 in"
        " from the top and both sides. D, strip of ember card, 3 1/2 × 3/4 in, on the mat, 3 1/4 in"
        " from the top, 1/8 in from both sides. E, label of oat card, 2 × 3/4 in, on the mat, 1/8 in"
        " from the foot, 7/8 in from both sides.",
        "Inside, open": "Base of oat card, 8 1/2 × 5 1/2 in, folded down the middle. Nothing lies there.",
        "Layers apart, from the base up": "From the base up: A, base of oat card; B, mat of moss card; C,"
        " panel of bramble paper; D, strip of ember card; E, label of oat card. Each lies above its place.",
    }


def test_a_clear_card_in_words(views: dict[str, TogetherView]) -> None:
    """What is seen through the film is said to be, and what shows its back."""
    said = words(views["puddle-ice-cards"])
    assert said["Front"] == (
        "Base of clear film, 105 × 148 mm, folded at the left. D, label of slate card, 60 × 16 mm, on"
        " the front, 20 mm from the foot, 22.5 mm from both sides. B, backing of slate card, 95 × 138"
        " mm, inside on the right, 5 mm from every edge, seen through the base. C, ice of frost paper,"
        " 65 × 65 mm, on the backing, 15 mm from the top and both sides, seen through the base."
    )
    assert said["Inside, open"].endswith("22.5 mm from both sides, its back seen through the base.")


def test_copies_are_said_together(views: dict[str, TogetherView]) -> None:
    """On both doors alike; on four panels; in the four corners; round the whole; in a box and on its lid."""
    rows = {(slug, row.letter): plain(row.where) for slug, view in views.items() for row in view.rows}
    assert rows["ivy-gate-cards", "B"] == "on the left door and the right door, 1/8 in from every edge"
    assert rows["ivy-gate-cards", "D"] == "round the whole, 2 1/4 in from the top and the foot"
    assert rows["towpath-accordions", "B"] == "on panels 1, 2, 3 and 4, level with the foot and both sides"
    assert rows["towpath-accordions", "C"] == (
        "on panels 1 and 3, 1 in from the top and the foot, 1 in from the left, tucked behind the bank"
    )
    assert rows["hazel-square-cards", "C"] == (
        "on the panel: 8 mm from the top and the left; 8 mm from the top and the right;"
        " 8 mm from the foot and the right; 8 mm from the foot and the left"
    )
    assert rows["hawthorn-boxes", "B"] == "on the lid, 3.25 mm from every edge"
    assert rows["hawthorn-boxes", "C"] == "on the bottom inside, 1 mm from every edge"
    assert [row.letter for row in views["towpath-accordions"].rows] == ["C", "B"]


def test_papers_that_are_dealt_are_those_of_the_first(views: dict[str, TogetherView]) -> None:
    """Three papers for the strips of the bookmarks, and the first gets one; the cards are all alike."""
    assert views["wren-note-bookmarks"].note == "Drawn with the papers of the first bookmark."
    assert "water strip of ripple green, 44" in words(views["wren-note-bookmarks"])["Front"]
    assert views["sloe-lane-cards"].note == ""


def test_every_batch_of_the_demo_is_drawn_without_a_word_lost(views: dict[str, TogetherView]) -> None:
    """Each has its front and its layers; every letter of the list is in a description."""
    assert len(views) == 15
    for view in views.values():
        told = " ".join(one.drawing.description for one in view.figures)
        assert all(f"{row.letter}, {row.name}" in told for row in view.rows)
        assert view.layers
        assert all(one.drawing.description.endswith(".") for one in (*view.figures, *view.layers))


@pytest.mark.parametrize(
    ("at", "measures", "said"),
    [
        ("", (20, 40), "30 mm from the top and the foot, 40 mm from both sides"),
        ("", (90, 90), "5 mm from every edge"),
        ("", (100, 100), "edge to edge"),
        ("", (110, 110), "reaching 5 mm over every edge"),
        ("top, down 70", (20, 20), "70 mm from the top, 40 mm from both sides"),
        ("up 20", (20, 20), "20 mm from the top, 40 mm from both sides"),
        ("top left, right 7, down 7", (20, 20), "7 mm from the top and the left"),
        ("bottom", (100, 20), "level with the foot and both sides"),
        ("right, right 5", (20, 100), "level with the top and the foot, 5 mm over the right"),
    ],
)
def test_how_far_from_which_edges(at: str, measures: tuple[int, int], said: str) -> None:
    """On a face of 100 x 100: the edges that a place names, else the nearer ones."""
    width, height = map(Fraction, measures)
    (spot,) = read_spots(at, Unit.MM) if at else (Spot(),)
    x = (100 - width) * spot.across + spot.right
    y = (100 - height) * spot.down + spot.lower
    whole = Rect(Fraction(0), Fraction(0), Fraction(100), Fraction(100))
    assert plain(in_from_edges(Rect(x, y, width, height), whole, Unit.MM, spot)) == said


def test_a_make_without_parts_is_not_taken_apart() -> None:
    """A plain card has its blank and nothing to put together."""
    assert together_view(make(base(210, 148, Fold.SIDE)), {"card": supply()}) is None
    assert (
        together_view(make(part("A", 50, 60, "card"), part("B", 20, 20, "card")), {"card": supply()}) is None
    )


def test_the_back_is_shown_where_something_lies_on_it() -> None:
    """And the wall of no card."""
    view = together_view(
        make(base(210, 148, Fold.SIDE), layer("B", 30, 20, "back, bottom, up 5")), {"card": supply()}
    )
    assert view is not None
    assert [one.caption for one in view.figures] == ["Front", "Inside, open", "Back"]
    (label,) = (
        shape for shape in view.figures[2].drawing.shapes if isinstance(shape, Box) and "layer" in shape.role
    )
    assert (label.x, label.y, label.width, label.height) == (37.5, 123, 30, 20)


# --- papers ------------------------------------------------------------------------

BLUE, DARK = "#c1d0d9", "#39434f"
PATTERNED = replace(supply(), kind="patterned paper", colours=(BLUE, DARK))


@pytest.mark.parametrize(
    ("direction", "marks"),
    [(Direction.ONE_WAY, Marks.UPS), (Direction.TWO_WAY, Marks.STRIPES), (Direction.ANY_WAY, Marks.DOTS)],
)
def test_marks_say_how_a_pattern_lies(direction: Direction, marks: Marks) -> None:
    """In the second colour of the record, on the first."""
    paper = replace(PATTERNED, front=PaperSide("swifts", direction))
    assert fill_of(paper, ShownSide.FRONT) == Fill(BLUE, marks, DARK)


def test_a_plain_side_has_no_marks() -> None:
    """Nor has a card, or what the drawer gives no colour; a pattern of one colour has its own shade."""
    plain_back = replace(PATTERNED, back=PaperSide("plain"))
    assert fill_of(plain_back, ShownSide.BACK) == Fill(BLUE)
    assert fill_of(replace(supply(), colours=(BLUE,)), ShownSide.FRONT) == Fill(BLUE)
    assert fill_of(replace(PATTERNED, colours=()), ShownSide.FRONT) == Fill()
    shaded = fill_of(replace(PATTERNED, colours=(BLUE,)), ShownSide.FRONT)
    assert (shaded.colour, shaded.marks) == (BLUE, Marks.DOTS)
    assert shaded.marks_colour not in ("", BLUE)


def test_papers_are_dealt_to_the_copies_of_a_make() -> None:
    """Two in turn; of three, the one that comes twice lies on a corner and its opposite."""
    colours = {"one": "#111111", "two": "#222222", "three": "#333333"}
    papers = {slug: replace(supply(slug), colours=(colour,)) for slug, colour in colours.items()}
    squares = replace(part("B", 50, 50, "one", "two"), each=4)
    dealt = [fill.colour for fill in fills_of(squares, papers, ShownSide.FRONT)]
    assert dealt == ["#111111", "#222222", "#111111", "#222222"]
    three = replace(squares, papers=("one", "two", "three"))
    dealt = [fill.colour for fill in fills_of(three, papers, ShownSide.FRONT)]
    assert dealt == ["#111111", "#222222", "#111111", "#333333"]


@pytest.mark.parametrize("marks", list(Marks))
def test_marks_stay_on_their_paper(marks: Marks) -> None:
    """On pieces of all sizes, and never so many that they are more than quiet."""
    for width, height in ((4, 4), (50, 9), (105, 148), (600, 400)):
        lines = list(marks_on(float(width), float(height), marks, 2.0))
        assert len(lines) <= 2 * 270
        for x1, y1, x2, y2 in lines:
            assert 0 <= min(x1, x2) <= max(x1, x2) <= width
            assert 0 <= min(y1, y2) <= max(y1, y2) <= height


def test_where_parts_lie_for_programs() -> None:
    """In the unit of the record, exactly, from the top left of the face, the lowest first."""
    inch = Fraction(127, 5)
    spots = read_spots("top left, right 1/8, down 1/3", Unit.INCH)
    one = replace(
        make(base(100, 100), layer("B", 50, 40), replace(layer("C", 10, 10, on="B"), spots=spots)),
        unit=Unit.INCH,
    )
    assert lying_json(one, {"card": supply()})["lies"] == [
        {"part": "B", "on": "A", "face": "front", "left": str(25 / inch), "top": str(30 / inch),
         "width": str(50 / inch), "height": str(40 / inch)},
        {"part": "C", "on": "B", "face": "front", "left": str(25 / inch + Fraction(1, 8)),
         "top": str(30 / inch + Fraction(1, 3)), "width": str(10 / inch), "height": str(10 / inch)},
    ]  # fmt: skip


# --- room to write and to stamp ----------------------------------------------------


def test_room_to_write_is_drawn_where_it_lies(views: dict[str, TogetherView]) -> None:
    """On the right page of a card whose inside is bare; on the message of a gate; not on film or patterns."""
    said = {slug: dict(view.rooms) for slug, view in views.items()}
    assert (
        plain(said["sloe-lane-cards"]["Room to write"]) == "4 1/4 × 5 1/2 in inside on the right, all of it"
    )
    assert plain(said["ivy-gate-cards"]["Room to write"]) == "4 × 5 1/4 in on C, message, all of it"
    assert plain(said["puddle-ice-cards"]["Room to write"]) == (
        "95 × 58 mm on B, backing, level with the foot and both sides"
    )
    assert "Room to write" not in said["hawthorn-boxes"]
    _, inside = views["sloe-lane-cards"].figures
    bare = [
        shape.text for shape in inside.drawing.shapes if isinstance(shape, Label) and "bare" in shape.role
    ]
    assert [plain(text) for text in bare] == ["room to write", "4 1/4 × 5 1/2"]


def test_room_to_stamp_that_is_less_than_the_part_is_drawn() -> None:
    """A label of 40 x 20 under a strip of 40 x 8: 12 are left below it; a whole one needs no lines."""
    stamped = replace(layer("B", 40, 20), stamps=(ImageUse("words"),))
    one = make(base(100, 100), stamped, layer("C", 40, 8, "top", on="B"))
    view = together_view(one, {"card": supply()})
    assert view is not None
    assert plain(dict(view.rooms)["Room to stamp on B"]) == "40 × 12 mm, level with the foot and both sides"
    front = view.figures[0].drawing
    (lines,) = (shape.lines for shape in front.shapes if isinstance(shape, Stroke) and "room" in shape.role)
    assert {(x1, y1) for x1, y1, _, _ in lines} == {(30, 48), (70, 48), (70, 60), (30, 60)}
    whole = together_view(make(base(100, 100), stamped), {"card": supply()})
    assert whole is not None
    assert plain(dict(whole.rooms)["Room to stamp on B"]) == "40 × 20 mm, all of it"
    assert not any("room" in shape.role for shape in whole.figures[0].drawing.shapes)
