"""Laws of the drawings of one make, on random makes."""

from __future__ import annotations

import itertools
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.geometry.lying import put_together
from batchleaf.facts import Fold, Part, Project, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.views.drawing.canvas import WIDEST_PX, Extent, Lettering
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Polygon
from batchleaf.views.pages import TogetherView
from batchleaf.views.scoring import score_views
from batchleaf.views.together import together_view
from core.drawers import size, supply
from geometry.makes import base, box, layer, make

FOLDS = (Fold.NONE, Fold.SIDE, Fold.TOP, Fold.TENT, Fold.GATE, Fold.ACCORDION, Fold.BOX)
PLACES = ("", "top left", "bottom, up 3", "right", "top right, left 4, down 4", "turned 90", "round")
NAMES = ("panel", "a long strip of water", "o")


@st.composite
def makes(draw: st.DrawFn) -> Project:
    """Up to seven layers of all sizes, on the base or on one another, on one face or another."""
    fold = draw(st.sampled_from(FOLDS))
    width, height = draw(st.integers(30, 420)), draw(st.integers(30, 320))
    parts: list[Part] = (
        [box(width // 4 + 8, height // 4 + 8, 10), box(width // 4 + 10, height // 4 + 10, 6, "L")]
        if fold is Fold.BOX
        else [base(width, height, fold, panels=draw(st.integers(2, 6)))]
    )
    for letter in "BCDEFGH"[: draw(st.integers(1, 7))]:
        wide, high = draw(st.integers(4, max(5, width // 2))), draw(st.integers(4, max(5, height)))
        on = draw(st.sampled_from([part.letter for part in parts]))
        part = layer(letter, wide, high, draw(st.sampled_from(PLACES)), on=on, each=draw(st.integers(1, 4)))
        parts.append(replace(part, name=draw(st.sampled_from(NAMES))))
    return make(*parts)


def shown(project: Project, *, clear: bool = False) -> TogetherView:
    """Its drawings."""
    view = together_view(project, {"card": card(clear=clear)})
    assert view is not None
    return view


def card(*, clear: bool = False) -> Supply:
    """The paper of all parts."""
    paper = supply("card", size=size(600, 600))
    return replace(paper, see_through=clear, kind="patterned paper", colours=("#c1d0d9", "#39434f"))


def labels(drawing: Drawing) -> list[tuple[Label, Extent]]:
    """Every label with what it covers at its largest."""
    lettering = Lettering(drawing.scale, drawing.width_class)
    return [(one, lettering.extent(one)) for one in drawing.shapes if isinstance(one, Label)]


def letters(drawing: Drawing) -> list[str]:
    """The letters of parts."""
    return [label.text for label, _ in labels(drawing) if "letter" in label.role.split()]


@given(makes(), st.sampled_from(["paper", "film"]))
@settings(deadline=None, max_examples=60)
def test_words_of_a_drawing_stay_apart(project: Project, base_of: str) -> None:
    """No two meet at their largest, and every drawing has the width of its class at most."""
    view = shown(project, clear=base_of == "film")
    drawings = [one.drawing for one in (*view.figures, *view.layers)]
    drawings += [one.drawing for one in score_views(project, {})]
    for drawing in drawings:
        assert drawing.width * drawing.scale <= WIDEST_PX[drawing.width_class] + 1e-6
        for (one, here), (other, there) in itertools.combinations(labels(drawing), 2):
            assert not here.meets(there), (one, other)


def _holds(box: Box, extent: Extent) -> bool:
    return Extent(box.x, box.y, box.x + box.width, box.y + box.height).holds(extent)


@given(makes(), st.sampled_from(["paper", "film"]))
@settings(deadline=None, max_examples=60)
def test_no_letter_lies_on_paper(project: Project, base_of: str) -> None:
    """Letters and measures stand beside what is drawn; words are only where unprinted paper stays bare."""
    view = shown(project, clear=base_of == "film")
    for figure in view.figures:
        papers = [one for one in figure.drawing.shapes if isinstance(one, Box) and "base" in one.role.split()]
        for label, extent in labels(figure.drawing):
            if "bare" in label.role.split():
                assert any(_holds(box, extent) for box in papers)
                continue
            assert not any(
                extent.meets(Extent(box.x, box.y, box.x + box.width, box.y + box.height)) for box in papers
            )
    for figure in view.layers:
        corners = [x for one in figure.drawing.shapes if isinstance(one, Polygon) for x, _ in one.corners]
        assert all(extent.left >= max(corners) for _, extent in labels(figure.drawing))


@given(makes())
@settings(deadline=None, max_examples=60)
def test_every_part_has_its_letter_once(project: Project) -> None:
    """In the layers each, with the base; in what is seen from a side none twice; in the list each, once."""
    view = shown(project)
    made = put_together(project)
    assert made is not None
    there = {one.part.letter for one in made.lying}
    assert sorted(row.letter for row in view.rows) == sorted(there)
    for figure in (*view.figures, *view.layers):
        found = letters(figure.drawing)
        assert len(found) == len(set(found))
    apart = {letter for figure in view.layers for letter in letters(figure.drawing)}
    on_walls = {one.part.letter for one in made.lying if "wall" in one.panel.name}
    assert there - on_walls <= apart
    assert made.bases[0].letter in apart


def test_a_blank_names_its_faces_and_its_folds() -> None:
    """A gate of 200 x 140 from inside: doors of 50, a middle of 100; the word fold once."""
    (score,) = score_views(make(base(200, 140, Fold.GATE)), {})
    words = [label.text for label, _ in labels(score.drawing)]
    assert sorted(words) == sorted(["fold", "left door", "middle", "right door", "50", "100", "50", "140"])
    assert score.drawing.description == (
        "A blank of 200\u00a0×\u00a0140\u00a0mm, its inside up. Score every A at 50 and 150\u00a0mm along its"
        " long side, and fold both doors to the middle. Its faces: left door, middle and right door."
    )


def test_a_drawing_is_the_same_each_time() -> None:
    """Nothing in it is thrown: two drawings of one make are equal, marks and all."""
    project = make(base(210, 148, Fold.SIDE), layer("B", 90, 120), layer("C", 40, 30, on="B"))
    assert shown(project) == shown(project)
    assert shown(replace(project, unit=Unit.INCH)) != shown(project)
