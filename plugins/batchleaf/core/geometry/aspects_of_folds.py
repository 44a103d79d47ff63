"""Which aspects each kind of base has: the faces of a card, a gate fold, an accordion, a box as they lie."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import partial
from typing import Final

from batchleaf.core.geometry.aspects import NOTHING, Aspect, AspectKind, Crease, Leaf, far, near
from batchleaf.core.geometry.lying import MadeUp
from batchleaf.core.geometry.outlined import trimmed
from batchleaf.core.geometry.panels import Panel
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import Face

Faces = Callable[..., Panel]
"""A face of one base by its name, and of an accordion by its number."""
WALLS: Final = (Face.FRONT_WALL, Face.BACK_WALL, Face.LEFT_WALL, Face.RIGHT_WALL)


def aspects_of(made: MadeUp) -> tuple[Aspect, ...]:
    """Every aspect, what is seen first before all others."""
    first, *lids = made.bases
    faces = partial(_face, made, first)
    match first.fold:
        case Fold.SIDE:
            found = _side_fold(faces)
        case Fold.TOP | Fold.TENT:
            found = _top_fold(faces)
        case Fold.GATE:
            found = _gate(faces)
        case Fold.ACCORDION:
            found = _accordion(faces, len(first.scores) + 1)
        case Fold.BOX:
            found = _box(made, first, lids[0] if lids else None)
        case Fold.SLEEVE | Fold.SLIPCASE | Fold.COVER:
            found = _around(made, first)
        case _:
            found = _flat(faces)
    return tuple(trimmed(aspect, made.bases) for aspect in found)


def _face(made: MadeUp, base: Part, face: Face, number: int = 0) -> Panel:
    return next(panel for panel in made.panels if panel.key == (base.letter, face, number))


def _flat(faces: Faces) -> Iterator[Aspect]:
    front, back, round_ = Leaf(faces(Face.FRONT)), Leaf(faces(Face.BACK)), Leaf(faces(Face.ROUND))
    yield Aspect(AspectKind.FRONT, (near(front), far(back.turned_over())), round=(round_,))
    yield Aspect(AspectKind.BACK, (near(back), far(front.turned_over())), round=(round_.turned_over(),))


def _side_fold(faces: Faces) -> Iterator[Aspect]:
    """The fold is at the left of the front, and between the two pages inside."""
    front, back, round_ = Leaf(faces(Face.FRONT)), Leaf(faces(Face.BACK)), Leaf(faces(Face.ROUND))
    left, right = Leaf(faces(Face.INSIDE_LEFT)), Leaf(faces(Face.INSIDE_RIGHT))
    width, height = front.panel.size.width, front.panel.size.height
    yield Aspect(
        AspectKind.FRONT,
        (near(front), far(left.turned_over()), near(right), far(back.turned_over())),
        (_upright(NOTHING, height, at_edge=True),),
        (round_,),
    )
    yield Aspect(
        AspectKind.INSIDE,
        (
            near(left, Leaf(right.panel, width)),
            far(front.turned_over(), Leaf(back.panel, width).turned_over()),
        ),
        (_upright(width, height),),
    )
    yield Aspect(
        AspectKind.BACK,
        (near(back), far(right.turned_over()), near(left), far(front.turned_over())),
        (_upright(width, height, at_edge=True),),
        (round_.turned_over(),),
    )


def _top_fold(faces: Faces) -> Iterator[Aspect]:
    """The fold is on top, of the back too; what lies inside on top stands on its head once it is closed."""
    front, back, round_ = Leaf(faces(Face.FRONT)), Leaf(faces(Face.BACK)), Leaf(faces(Face.ROUND))
    top, foot = faces(Face.INSIDE_TOP), faces(Face.INSIDE_BOTTOM)
    width, height = front.panel.size.width, front.panel.size.height
    edge = (_level(NOTHING, width, at_edge=True),)
    yield Aspect(
        AspectKind.FRONT,
        (near(front), far(Leaf(top, down=True)), near(Leaf(foot)), far(back.turned_over())),
        edge,
        (round_,),
    )
    yield Aspect(
        AspectKind.INSIDE,
        (
            near(Leaf(top), Leaf(foot, y=height)),
            far(Leaf(front.panel, down=True), Leaf(back.panel, y=height, across=True)),
        ),
        (_level(height, width),),
    )
    yield Aspect(
        AspectKind.BACK,
        (
            near(back),
            far(Leaf(foot, across=True)),
            near(Leaf(top, across=True, down=True)),
            far(front.turned_over()),
        ),
        edge,
        (round_.turned_over(),),
    )


def _gate(faces: Faces) -> Iterator[Aspect]:
    """Closed, its two doors meet in the middle; opened, they stand beside it."""
    back, middle, round_ = Leaf(faces(Face.BACK)), faces(Face.INSIDE), Leaf(faces(Face.ROUND))
    left, right = faces(Face.LEFT_DOOR), faces(Face.RIGHT_DOOR)
    in_left, in_right = faces(Face.INSIDE_LEFT_DOOR), faces(Face.INSIDE_RIGHT_DOOR)
    door, width, height = left.size.width, middle.size.width, middle.size.height
    edges = (_upright(NOTHING, height, at_edge=True), _upright(width, height, at_edge=True))
    yield Aspect(
        AspectKind.FRONT,
        (
            near(Leaf(left), Leaf(right, width - right.size.width), apart=True),
            far(Leaf(in_left, across=True), Leaf(in_right, width - right.size.width, across=True)),
            near(Leaf(middle)),
            far(back.turned_over()),
        ),
        edges,
        (round_,),
    )
    yield Aspect(
        AspectKind.INSIDE,
        (
            near(Leaf(in_left), Leaf(middle, door), Leaf(in_right, door + width)),
            far(
                Leaf(left, across=True),
                Leaf(back.panel, door, across=True),
                Leaf(right, door + width, across=True),
            ),
        ),
        (_upright(door, height), _upright(door + width, height)),
    )
    yield Aspect(
        AspectKind.BACK,
        (
            near(back),
            far(Leaf(middle, across=True)),
            near(Leaf(in_left, width - door), Leaf(in_right), apart=True),
            far(Leaf(left, width - door, across=True), Leaf(right, across=True)),
        ),
        edges,
        (round_.turned_over(),),
    )


def _accordion(faces: Faces, count: int) -> Iterator[Aspect]:
    """Pulled out flat, its panels in a row."""
    fronts = [faces(Face.PANEL, number) for number in range(1, count + 1)]
    backs = [faces(Face.BACK_OF_PANEL, number) for number in range(1, count + 1)]
    height = fronts[0].size.height
    starts = [panel.blank.x for panel in fronts]
    creases = tuple(_upright(start, height) for start in starts[1:])
    shown = [Leaf(panel, start) for panel, start in zip(fronts, starts, strict=True)]
    behind = [Leaf(panel, panel.blank.x) for panel in backs]
    through = [Leaf(panel, start, across=True) for panel, start in zip(backs, starts, strict=True)]
    from_behind = [Leaf(panel, one.x, across=True) for panel, one in zip(fronts, behind, strict=True)]
    yield Aspect(AspectKind.FRONT, (near(*shown), far(*through)), creases)
    yield Aspect(AspectKind.BACK, (near(*behind), far(*from_behind)), creases)
    yield Aspect(
        AspectKind.CLOSED,
        (near(Leaf(fronts[0])), far(Leaf(backs[0], across=True))),
        (_upright(fronts[0].size.width, height, at_edge=True),),
        (Leaf(faces(Face.ROUND)),),
    )


def _box(made: MadeUp, bottom: Part, lid: Part | None) -> Iterator[Aspect]:
    """From above with its lid on and off, from underneath, and each wall from outside."""
    faces = partial(_face, made, bottom)
    floor, under = Leaf(faces(Face.INSIDE)), Leaf(faces(Face.FRONT))
    open_ = (near(floor), far(under.turned_over()))
    if lid is None:
        yield Aspect(AspectKind.FRONT, open_, round=(Leaf(faces(Face.ROUND)),))
    else:
        of_lid = partial(_face, made, lid)
        top, ceiling = Leaf(of_lid(Face.FRONT)), Leaf(of_lid(Face.INSIDE))
        across = (top.panel.size.width - floor.panel.size.width) / 2
        down = (top.panel.size.height - floor.panel.size.height) / 2
        below = (near(Leaf(floor.panel, across, down)), far(Leaf(under.panel, across, down).turned_over()))
        yield Aspect(
            AspectKind.FRONT,
            (near(top), far(ceiling.turned_over()), *below),
            round=(Leaf(of_lid(Face.ROUND)), Leaf(faces(Face.ROUND), across, down)),
        )
        yield Aspect(AspectKind.INSIDE, open_)
        yield Aspect(AspectKind.LID_INSIDE, (near(ceiling), far(top.turned_over())))
    yield Aspect(AspectKind.BACK, (near(under), far(floor.turned_over())))
    for base in (bottom, lid):
        if base is not None:
            yield from (Aspect(AspectKind.WALL, (near(Leaf(_face(made, base, wall))),)) for wall in WALLS)


def _around(made: MadeUp, base: Part) -> Iterator[Aspect]:
    """From the front and from behind; a cover opened too; each of its narrow sides from outside."""
    there = {panel.face: panel for panel in made.panels if panel.base == base.letter}
    front, back, round_ = Leaf(there[Face.FRONT]), Leaf(there[Face.BACK]), Leaf(there[Face.ROUND])
    width, height = front.panel.size.width, front.panel.size.height
    edges = (_upright(NOTHING, height, at_edge=True), _upright(width, height, at_edge=True))
    of_back = edges if base.fold is Fold.SLEEVE else edges[1:]
    yield Aspect(
        AspectKind.FRONT, (near(front),), edges if base.fold is Fold.SLEEVE else edges[:1], (round_,)
    )
    if base.fold is Fold.COVER:
        spine = there[Face.SPINE].size.width if Face.SPINE in there else NOTHING
        left, right = Leaf(there[Face.INSIDE_LEFT]), Leaf(there[Face.INSIDE_RIGHT], width + spine)
        folds = dict.fromkeys((width, width + spine))
        yield Aspect(AspectKind.INSIDE, (near(left, right),), tuple(_upright(x, height) for x in folds))
    yield Aspect(AspectKind.BACK, (near(back),), of_back, (round_.turned_over(),))
    for face in (Face.SPINE, *WALLS):
        if face in there:
            yield Aspect(AspectKind.WALL, (near(Leaf(there[face])),))


def _upright(x: Fraction, height: Fraction, *, at_edge: bool = False) -> Crease:
    return Crease(x, NOTHING, x, height, at_edge)


def _level(y: Fraction, width: Fraction, *, at_edge: bool = False) -> Crease:
    return Crease(NOTHING, y, width, y, at_edge)
