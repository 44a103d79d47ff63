"""Score lines on a sheet, and the panels between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from batchleaf.core.cutting.steps import PlacedPart
from batchleaf.facts import Score
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.canvas import Canvas, Extent
from batchleaf.views.drawing.shapes import Label, Stroke

Scores = Mapping[str, tuple[Score, ...]]
"""The scores of each part that has any, by part id."""


@dataclass(frozen=True, slots=True)
class _Grid:
    """A part's edges and score lines where they lie on the sheet, from the left and from the top."""

    down: tuple[Fraction, ...]
    across: tuple[Fraction, ...]

    @classmethod
    def of(cls, part: PlacedPart, scores: Scores) -> _Grid:
        """A turned part has had a quarter turn to the right, and its scores with it."""
        rect, own = part.rect, scores.get(part.part, ())
        down = [score.at for score in own if score.runs_down]
        across = [score.at for score in own if not score.runs_down]
        if part.turned:
            down, across = [rect.width - at for at in across], down
        return cls(_ruled(rect.x, rect.width, down), _ruled(rect.y, rect.height, across))

    @property
    def lines(self) -> tuple[tuple[float, float, float, float], ...]:
        """The score lines, from edge to edge."""
        (left, *xs, right), (top, *ys, foot) = map(float, self.down), map(float, self.across)
        return (*((x, top, x, foot) for x in xs), *((left, y, right, y) for y in ys))


def _ruled(start: Fraction, length: Fraction, scores: Iterable[Fraction]) -> tuple[Fraction, ...]:
    return (start, *sorted(start + at for at in scores), start + length)


def panels_of(part: PlacedPart, scores: Scores) -> list[Rect]:
    """The faces between the score lines, those with fewest outer edges first, then the largest.

    So a box begins with its bottom, a gate with its back; a part without scores is one panel.
    """
    if part.part not in scores:
        return [part.rect]
    grid = _Grid.of(part, scores)
    panels = [
        Rect(left, top, right - left, foot - top)
        for top, foot in pairwise(grid.across)
        for left, right in pairwise(grid.down)
    ]
    return sorted(panels, key=lambda panel: (_outer_edges(panel, part.rect), -panel.size.area))


def _outer_edges(panel: Rect, whole: Rect) -> int:
    return sum(
        (
            panel.x == whole.x,
            panel.y == whole.y,
            panel.x + panel.width == whole.x + whole.width,
            panel.y + panel.height == whole.y + whole.height,
        )
    )


@dataclass(frozen=True, slots=True)
class Scored:
    """The score lines of a part where it lies; ``words``: what may be said on them, each with its room."""

    part: str
    lines: Stroke
    words: tuple[tuple[Label, Extent], ...]


def scored(parts: Iterable[PlacedPart], scores: Scores) -> Iterator[Scored]:
    """Those of the parts that are scored, in their order."""
    for part in parts:
        grid = _Grid.of(part, scores)
        if grid.lines:
            yield Scored(part.part, Stroke("fold", grid.lines), tuple(_words(grid)))


def draw_scores(canvas: Canvas, parts: Iterable[Scored]) -> None:
    """Dash-dot lines on each scored part, which nothing is written across but one word of each kind."""
    worded: set[str] = set()
    for part in parts:
        canvas.add(part.lines)
        if part.part not in worded and any(
            canvas.add_if_free(word, within=room) for word, room in part.words
        ):
            worded.add(part.part)
        canvas.keep_clear(part.lines)


def _words(grid: _Grid) -> Iterator[tuple[Label, Extent]]:
    """The word on each score line with the room it has there: the two panels that share the line."""
    top, foot = max(pairwise(grid.across), key=lambda ends: ends[1] - ends[0])
    left, right = max(pairwise(grid.down), key=lambda ends: ends[1] - ends[0])
    for before, x, after in zip(grid.down, grid.down[1:], grid.down[2:], strict=False):
        yield _word(x, (top + foot) / 2, upright=False), _extent(before, top, after, foot)
    for before, y, after in zip(grid.across, grid.across[1:], grid.across[2:], strict=False):
        yield _word((left + right) / 2, y, upright=True), _extent(left, before, right, after)


def _word(x: Fraction, y: Fraction, *, upright: bool) -> Label:
    return Label("quiet halo on-sheet", float(x), float(y), "fold", upright=upright)


def _extent(left: Fraction, top: Fraction, right: Fraction, bottom: Fraction) -> Extent:
    return Extent(float(left), float(top), float(right), float(bottom))
