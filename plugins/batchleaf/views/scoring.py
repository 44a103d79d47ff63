"""Scoring and folding: the settings of the score board in words, and the flat blank beside them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.panels import Panel, panels_of
from batchleaf.core.grooves import score_lines
from batchleaf.facts import Fold, Origin, Part, Project, Score, Tool
from batchleaf.facts.spots import Face
from batchleaf.measure.display import show_length, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.bench import groove_in_words
from batchleaf.views.drawing.blank import Named, draw_blank
from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.pages import ScoreView
from batchleaf.views.words import NBSP, capitalised, listed

_THEN: Final = {
    Fold.GATE: ", and fold both doors to the middle.",
    Fold.ACCORDION: ", and fold it to and fro.",
}
PIXELS_PER_MM: Final = 1.46
"""The scale of the sheet plans, which stand above."""
_SMALLER: Final = 0.96
_OPENED_DOORS: Final = {
    Face.INSIDE_LEFT_DOOR: "left door",
    Face.INSIDE: "middle",
    Face.INSIDE_RIGHT_DOOR: "right door",
}
_OF_A_SLEEVE: Final = {Face.RIGHT_WALL: "side", Face.LEFT_WALL: "side"}
_OF_A_BOX: Final = {
    Face.FRONT: "bottom",
    Face.FRONT_WALL: "front",
    Face.BACK_WALL: "back",
    Face.LEFT_WALL: "left",
    Face.RIGHT_WALL: "right",
}


def score_views(project: Project, tools: Mapping[str, Tool]) -> tuple[ScoreView, ...]:
    """Each part that is scored at this bench: how, and its blank as it lies before that."""
    scored = (part for part in project.parts if part.scores and part.origin is not Origin.READY)
    boards = [tools[slug] for slug in project.tools if tools[slug].grooves]
    return tuple(_score_view(part, project, boards) for part in scored)


def _score_view(part: Part, project: Project, boards: Sequence[Tool]) -> ScoreView:
    faces = list(faces_of(part, project))
    seen = "inside" if part.fold is Fold.GATE else "outside"
    size = f"{show_size(part.size, project.unit)}{NBSP}{project.unit.word}"
    names = [name for name, _ in sorted(faces, key=lambda face: (face[1].y, face[1].x))]
    canvas = _fitted(part, faces, project.unit)
    return ScoreView(
        title=f"Score {part.letter}",
        instruction=f"{capitalised(part.name)}, flat, {size}; the {seen} is up.",
        drawing=canvas.drawing(
            f"score-{part.letter.lower()}-drawing",
            f"Flat blank of {part.letter}, {part.name}",
            f"A blank of {size}, its {seen} up. {how_to_score(part, project.unit)}"
            f" Its faces: {listed(names)}.",
        ),
        sentence=how_to_score(part, project.unit),
        grooves=on_grooves(part, boards[0], project.unit) if boards else "",
    )


def on_grooves(part: Part, board: Tool, unit: Unit) -> str:
    """Which lines lie on grooves of the score board, which once the piece is turned round, which between."""
    lines = list(dict.fromkeys(score_lines(part, board)))
    lie_between = sorted({line.nearest for line in lines if line.step is None})
    between = [show_length(at, unit) for at in lie_between]
    turned = [line for line in lines if line.turned_round]
    there = list(dict.fromkeys(groove_in_words(line.step, unit) for line in lines if line.step is not None))
    of_it = capitalised(f"{board.name} has a groove")
    if not between and not turned:
        return f"{of_it} for {'it' if len(lines) == 1 else 'each'}: every {listed(there)}."
    said = []
    if turned:
        ways = [f"{show_length(one.at, unit)} at {show_length(one.setting, unit)}" for one in turned]
        said.append(f"{of_it} for {_measured(listed(ways), unit)} with the piece turned round")
    if between:
        lies, line = ("lies", "the line") if len(between) == 1 else ("lie", "the lines")
        there_not = f"{_measured(listed(between), unit)} {lies} between the grooves of {board.name}"
        said.append(f"{there_not}: mark {line}, and score along a rule")
    return f"{capitalised('; '.join(said))}."


def _fitted(part: Part, faces: list[Named], unit: Unit) -> Canvas:
    """At the scale of the plans, or as large as its column lets it be."""
    scale = PIXELS_PER_MM
    while True:
        for width_class in ("narrow", "middle", "large"):
            canvas = draw_blank(part, faces, unit, Lettering(scale, width_class))
            if (canvas.extent.right - canvas.extent.left) * scale <= WIDEST_PX[width_class]:
                return canvas
        scale *= _SMALLER


def faces_of(part: Part, project: Project) -> Iterator[Named]:
    """The faces of the side that is up, by the names a maker folds them to."""
    is_lid = part.letter != project.parts[0].letter
    for panel in panels_of(part):
        if panel.outer is not (part.fold is Fold.GATE):
            yield _name(panel, part, is_lid=is_lid), panel.blank
    if part.fold is Fold.SLEEVE:
        start = part.scores[-1].at
        yield "flap", Rect(start, Fraction(0), part.size.width - start, part.size.height)


def _name(panel: Panel, part: Part, *, is_lid: bool) -> str:
    if part.fold is Fold.SLEEVE and panel.face in _OF_A_SLEEVE:
        return _OF_A_SLEEVE[panel.face]
    if part.fold is Fold.BOX:
        return "top" if is_lid and panel.face is Face.FRONT else _OF_A_BOX[panel.face]
    return _OPENED_DOORS[panel.face] if part.fold is Fold.GATE else panel.name


def how_to_score(part: Part, unit: Unit) -> str:
    """``Score every A at 2 1/8 and 6 3/8 in along its long side, and fold both doors to the middle.``

    The walls of a box come free where each corner is cut along one of its two scores.
    """
    if part.walls is not None:
        walls = _measured(show_length(part.walls, unit), unit)
        return (
            f"Score all four sides of every {part.letter} at {walls},"
            " then cut into each corner along one score as far as the other."
        )
    if part.fold.goes_round:
        return _how_to_fold_round(part, unit)
    settings = _measured(listed([show_length(score.at, unit) for score in part.scores]), unit)
    then = _THEN.get(part.fold, " before it is folded.")
    return f"Score every {part.letter} at {settings}{_along(part)}{then}"


def _how_to_fold_round(part: Part, unit: Unit) -> str:
    """Scores one way, then the other; what is cut, glued and turned in."""
    down = _settings([score for score in part.scores if score.runs_down], unit)
    match part.fold:
        case Fold.SLEEVE:
            flap = _measured(show_length(part.size.width - part.scores[-1].at, unit), unit)
            return (
                f"Score every {part.letter} at {down} from its left edge, fold it round,"
                f" and glue the flap of {flap} under the other end."
            )
        case Fold.SLIPCASE:
            flaps = _measured(show_length(part.depth, unit), unit)
            return (
                f"Score every {part.letter} at {down} from its left edge, and {flaps} from its upper and its"
                " lower edge. Cut along the upright scores as far as the level ones; fold it, tuck the two"
                " small squares in, and glue the flaps of the front over those of the back."
            )
    edge = _measured(show_length(part.scores[0].at, unit), unit)
    inner = _settings([score for score in part.scores if score.runs_down][1:-1], unit)
    return (
        f"Score every {part.letter} {edge} from all four edges, and at {inner} from its left edge."
        " Cut the corners off aslant, a little outside of where the scores cross; turn the edges in,"
        " and stick them down."
    )


def _settings(scores: Sequence[Score], unit: Unit) -> str:
    return _measured(listed([show_length(score.at, unit) for score in scores]), unit)


def _measured(figures: str, unit: Unit) -> str:
    return f"{figures}{NBSP}{unit.word}"


def _along(part: Part) -> str:
    """Which side lies along the board; a square has no longer one."""
    if part.size.width == part.size.height:
        return ""
    long = part.scores[0].runs_down == (part.size.width > part.size.height)
    return f" along its {'long' if long else 'short'} side"


def folded_in_words(part: Part, unit: Unit) -> str:
    """``105 × 148``; a box with its height, a sleeve with its depth, ``60 × 60 × 30``.

    A narrow column may break it after a ×.
    """
    size = part.folded_size
    thick = part.walls or part.depth
    measures = [size.width, size.height, *([thick] if thick else [])]
    return f"{NBSP}× ".join(show_length(measure, unit) for measure in measures)
