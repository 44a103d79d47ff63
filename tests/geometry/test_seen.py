"""What is seen of five makes, held to coordinates that were worked out by hand, in mm from the top left."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.aspects import Aspect, AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.seen import Seen, seen_in
from batchleaf.facts import Fold, Part
from geometry.makes import base, box, layer, make


def made_of(*parts: Part) -> MadeUp:
    """One make of these parts."""
    made = put_together(make(*parts))
    assert made is not None
    assert made.lost == ()
    return made


def aspect(made: MadeUp, kind: AspectKind) -> Aspect:
    """One of its aspects; of the walls the first."""
    return next(one for one in aspects_of(made) if one.kind is kind)


def seen(made: MadeUp, kind: AspectKind, clear: str = "") -> list[tuple[str, int, int, int, int, bool]]:
    """Letter, left, top, width, height, whether it shows its other side; the farthest first."""
    return [(one.part.letter, *_whole(one), one.reverse) for one in seen_in(aspect(made, kind), made, clear)]


def _whole(one: Seen) -> tuple[int, int, int, int]:
    rect = one.rect
    measures = (rect.x, rect.y, rect.width, rect.height)
    assert all(measure.denominator == 1 for measure in measures)
    x, y, width, height = map(int, measures)
    return x, y, width, height


def test_a_card_with_its_fold_at_the_left() -> None:
    """A6: a mat 5 in from each edge, so 95 x 138 at 5, 5; on it a panel 8 below its top, in the middle.

    (95 - 65) / 2 = 15 from the mat's left is 20 from the card's; 8 below the mat's top is 13.
    The label lies 10 above the mat's foot: 138 - 10 - 16 = 112 from its top, 117 from the card's.
    """
    made = made_of(
        base(210, 148, Fold.SIDE),
        layer("B", 95, 138),
        layer("C", 65, 65, "top, down 8", on="B"),
        layer("D", 60, 16, "bottom left, up 10", on="B"),
    )
    assert seen(made, AspectKind.FRONT) == [
        ("A", 0, 0, 105, 148, False),
        ("B", 5, 5, 95, 138, False),
        ("C", 20, 13, 65, 65, False),
        ("D", 5, 117, 60, 16, False),
    ]
    assert seen(made, AspectKind.INSIDE) == [("A", 0, 0, 210, 148, True)]


def test_a_gate_closed_and_open_with_a_band() -> None:
    """200 x 140: doors of 50, a back of 100. Each door has a layer of 40 x 130, 5 in from its edges.

    Closed, the right door begins at 50, so its layer at 55. Open, the middle begins at 50: a
    message of 90 x 130 lies at 55. The band is 220 long and seen as wide as the card, at (140 - 20) / 2.
    """
    made = made_of(
        base(200, 140, Fold.GATE),
        layer("B", 40, 130, "left door; right door", each=2),
        layer("C", 90, 130),
        layer("D", 20, 220, "round, turned 90"),
    )
    assert seen(made, AspectKind.FRONT) == [
        ("A", 0, 0, 50, 140, False),
        ("A", 50, 0, 50, 140, False),
        ("B", 5, 5, 40, 130, False),
        ("B", 55, 5, 40, 130, False),
        ("D", 0, 60, 100, 20, False),
    ]
    assert seen(made, AspectKind.INSIDE) == [
        ("A", 0, 0, 200, 140, True),
        ("C", 55, 5, 90, 130, False),
    ]
    assert seen(made, AspectKind.BACK) == [("A", 0, 0, 100, 140, False), ("D", 0, 60, 100, 20, False)]


def test_an_accordion_with_something_tucked_behind() -> None:
    """Panels of 100. A reed 25 from the left of panel 3 stands at 225, under the bank that came before it.

    Turned over, the back of panel 1 lies at the right, from 300 on.
    """
    made = made_of(
        base(400, 130, Fold.ACCORDION, panels=4),
        layer("B", 100, 45, "panel 1, bottom; panel 3, bottom", each=2),
        layer("C", 12, 75, "panel 3, top left, right 25, down 30, behind B"),
        layer("D", 20, 10, "back of panel 1"),
    )
    assert seen(made, AspectKind.FRONT) == [
        ("A", 0, 0, 400, 130, False),
        ("B", 0, 85, 100, 45, False),
        ("C", 225, 30, 12, 75, False),
        ("B", 200, 85, 100, 45, False),
    ]
    assert seen(made, AspectKind.BACK) == [("A", 0, 0, 400, 130, True), ("D", 340, 60, 20, 10, False)]


def test_a_clear_card_shows_what_lies_behind_it() -> None:
    """Film, A6. A label 10 from the left of the front is seen inside through the front, its back, mirrored.

    On the left page its left edge lies at 105 - 10 - 30 = 65. The backing, inside on the right, begins at
    105 + 5; closed, it looks out through the front at 5. From behind its back is seen, and the label last
    of all, 65 from the left again.
    """
    made = made_of(
        base(210, 148, Fold.SIDE),
        layer("B", 90, 138, "inside right, left, right 5"),
        layer("C", 30, 16, "front, bottom left, right 10, up 20"),
    )
    assert seen(made, AspectKind.FRONT) == [("A", 0, 0, 105, 148, False), ("C", 10, 112, 30, 16, False)]
    assert seen(made, AspectKind.FRONT, clear="A") == [
        ("A", 0, 0, 105, 148, True),
        ("B", 5, 5, 90, 138, False),
        ("A", 0, 0, 105, 148, False),
        ("C", 10, 112, 30, 16, False),
    ]
    assert seen(made, AspectKind.INSIDE, clear="A") == [
        ("C", 65, 112, 30, 16, True),
        ("A", 0, 0, 210, 148, True),
        ("B", 110, 5, 90, 138, False),
    ]
    assert seen(made, AspectKind.BACK, clear="A") == [
        ("C", 65, 112, 30, 16, True),
        ("A", 0, 0, 105, 148, True),
        ("B", 10, 5, 90, 138, True),
        ("A", 0, 0, 105, 148, False),
    ]


def test_a_box_from_above() -> None:
    """Bottom 60 x 60, lid 62 x 62 with a layer of 55 x 50: (62 - 55) / 2 is no whole, so 56 x 50 at 3, 6.

    A lining of 58 x 58 lies 1 in; through a clear lid it is seen 2 in, for the lid stands out by 1.
    """
    made = made_of(
        box(60, 60, 30),
        box(62, 62, 15, "L"),
        layer("B", 56, 50, on="L"),
        layer("C", 58, 58, on="A"),
    )
    assert seen(made, AspectKind.FRONT) == [("L", 0, 0, 62, 62, False), ("B", 3, 6, 56, 50, False)]
    assert seen(made, AspectKind.INSIDE) == [("A", 0, 0, 60, 60, True), ("C", 1, 1, 58, 58, False)]
    assert seen(made, AspectKind.FRONT, clear="L") == [
        ("A", 1, 1, 60, 60, True),
        ("C", 2, 2, 58, 58, False),
        ("L", 0, 0, 62, 62, False),
        ("B", 3, 6, 56, 50, False),
    ]
    assert seen(made, AspectKind.WALL) == [("A", 0, 0, 60, 30, False)]


def test_a_clear_card_with_its_fold_on_top() -> None:
    """90 x 50 each. Inside above the fold, 5 from that edge on top: closed it hangs, 5 from the foot.

    From the front that is its back; from behind, through the back, it looks at us upside down, left and
    right changed: its left edge, 10 from the left open, is 90 - 10 - 20 = 60.
    """
    made = made_of(
        base(90, 100, Fold.TOP),
        layer("B", 20, 8, "inside top, top left, right 10, down 5"),
    )
    assert seen(made, AspectKind.INSIDE) == [("A", 0, 0, 90, 100, True), ("B", 10, 5, 20, 8, False)]
    assert seen(made, AspectKind.FRONT, clear="A")[1:] == [
        ("B", 10, 37, 20, 8, True),
        ("A", 0, 0, 90, 50, False),
    ]
    (part,) = [one for one in seen_in(aspect(made, AspectKind.BACK), made, "A") if one.part.letter == "B"]
    assert (_whole(part), part.reverse, part.quarter_turns) == ((60, 37, 20, 8), False, 2)


FOLDED = st.sampled_from([Fold.NONE, Fold.SIDE, Fold.TOP, Fold.TENT, Fold.GATE, Fold.ACCORDION])


@given(FOLDED, st.integers(20, 400), st.integers(20, 400), st.integers(2, 9))
def test_each_face_is_looked_at_once(fold: Fold, width: int, height: int, panels: int) -> None:
    """Front, inside and back together show every face of a base, and none twice."""
    made = made_of(base(width, height, fold, panels=panels))
    faces = [
        leaf.panel.key
        for one in aspects_of(made)
        if one.kind is not AspectKind.CLOSED
        for leaf in one.nearest.leaves
    ]
    assert sorted(faces) == sorted(panel.key for panel in made.panels if panel.name != "round")


@given(FOLDED, st.integers(20, 400), st.integers(20, 400), st.integers(2, 9))
def test_the_leaves_of_an_aspect_fill_its_sheets(fold: Fold, width: int, height: int, panels: int) -> None:
    """At every depth: what is seen from one side has as much behind it as before it."""
    made = made_of(base(width, height, fold, panels=panels))
    for one in aspects_of(made):
        whole = one.size
        for level in one.levels:
            assert sum(leaf.rect.area for leaf in level.leaves) == whole.area
            assert sum(sheet.area for sheet in level.sheets) in (0, whole.area)


@given(FOLDED, st.integers(20, 400), st.integers(20, 400), st.integers(2, 9))
def test_behind_each_leaf_is_its_other_side(fold: Fold, width: int, height: int, panels: int) -> None:
    """The same piece of the blank, which is turned over across its folds."""
    on_top = fold in (Fold.TOP, Fold.TENT)
    for one in aspects_of(made_of(base(width, height, fold, panels=panels))):
        if on_top and one.kind is AspectKind.BACK:
            continue  # it stands the other way up than on the blank
        near, far = one.levels[:2]
        other = {leaf.rect: leaf.panel.blank for leaf in far.leaves}
        for leaf in near.leaves:
            blank, behind = leaf.panel.blank, other[leaf.rect]
            turned = (blank.x, height - blank.bottom) if on_top else (width - blank.right, blank.y)
            assert (behind.x, behind.y, behind.size) == (*turned, blank.size)


@pytest.mark.parametrize("kind", list(AspectKind))
def test_only_a_box_has_walls_and_a_lid(kind: AspectKind) -> None:
    """A card has none of them."""
    kinds = {one.kind for one in aspects_of(made_of(base(210, 148, Fold.SIDE)))}
    assert (kind in kinds) == (kind not in (AspectKind.WALL, AspectKind.LID_INSIDE, AspectKind.CLOSED))
