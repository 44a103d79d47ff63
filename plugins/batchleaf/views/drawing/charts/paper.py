"""Where the paper of a year went: one strip of it, measured above part by part and below as a whole."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Final

from batchleaf.views.drawing.canvas import Canvas, Lettering
from batchleaf.views.drawing.charts.field import CLASS, WIDTH, Line, hatch
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke
from batchleaf.views.drawing.spread import spread

LENGTH: Final = WIDTH - 10.0
"""The rest is for the ticks at both ends."""
HEIGHT: Final = 52.0
_INSET: Final = 3.0
_SHOWN_FROM: Final = 5.0
"""Waste narrower than this stays blank, as in a cutting plan."""
_TICK: Final = 0.2
"""Half the height of a tick, in em."""


@dataclass(frozen=True, slots=True)
class Share:
    """A part of the strip. ``role``: how it is drawn, ``part``, ``keep`` or ``waste``."""

    role: str
    word: str
    figure: str
    area: float


def draw_paper(
    shares: Sequence[Share],
    whole: str,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """A strip of as many parts as there are ``shares`` that are not nothing; ``whole`` measures it all."""
    there = [share for share in shares if share.area > 0]
    total = sum(share.area for share in there)
    stops = [0.0, *accumulate(share.area / total * LENGTH for share in there)]
    canvas = Canvas(Lettering(1.0, CLASS))
    for share, (start, end) in zip(there, pairwise(stops), strict=True):
        _draw_share(canvas, share.role, start, end)
    canvas.add(Box("outline", 0, 0, LENGTH, HEIGHT))
    if len(there) > 1:
        canvas.add(Stroke("tick", tuple((x, 0, x, HEIGHT) for x in stops[1:-1])))
    _write_words(canvas, there, stops)
    _draw_chain(canvas, [share.figure for share in there], stops, -0.95 * canvas.lettering.em)
    below = canvas.extent.bottom - HEIGHT > canvas.lettering.em
    _draw_chain(canvas, [whole], [0.0, LENGTH], HEIGHT + (2.35 if below else 0.95) * canvas.lettering.em)
    around = canvas.extent
    return Drawing(
        id=id,
        title=title,
        description=description,
        x=(LENGTH - WIDTH) / 2,
        y=around.top,
        width=WIDTH,
        height=around.bottom - around.top,
        scale=1.0,
        width_class=CLASS,
        shapes=tuple(canvas.shapes),
    )


def _draw_share(canvas: Canvas, role: str, start: float, end: float) -> None:
    wide = end - start
    if role == "waste":
        if wide >= _SHOWN_FROM:
            inset = min(_INSET, wide / 4)
            canvas.add(Box(role, start + inset, _INSET, wide - 2 * inset, HEIGHT - 2 * _INSET))
        return
    canvas.add(Box(role, start, 0, wide, HEIGHT))
    if role == "keep":
        canvas.add(Stroke("hatch", tuple(hatch(start, 0, end, HEIGHT))))


def _write_words(canvas: Canvas, shares: Sequence[Share], stops: Sequence[float]) -> None:
    """Each in its part, or below the strip with a thin line to it."""
    em = canvas.lettering.em
    below: list[tuple[str, float]] = []
    for share, (start, end) in zip(shares, pairwise(stops), strict=True):
        if end - start >= canvas.lettering.width(share.word) + 0.5 * em:
            role = "halo on-sheet" if share.role == "part" else "halo"
            canvas.add(Label(role, (start + end) / 2, HEIGHT / 2, share.word))
        else:
            below.append((share.word, (start + end) / 2))
    for (word, middle), place in zip(below, _in_a_row(canvas, below), strict=True):
        y = HEIGHT + 0.25 * em
        lines: tuple[Line, ...] = (
            (middle, HEIGHT / 2, middle, y),
            (middle, y, place, HEIGHT + 0.75 * em),
        )
        canvas.add(Stroke("extension", lines), Label("halo", place, HEIGHT + 1.3 * em, word))


def _in_a_row(canvas: Canvas, wanted: Sequence[tuple[str, float]]) -> tuple[float, ...]:
    """Where texts stand side by side, each as near as can be to its place."""
    halves = [canvas.lettering.width(text) / 2 for text, _ in wanted]
    if not halves:
        return ()
    steps = [one + other + 0.5 * canvas.lettering.em for one, other in pairwise(halves)]
    return spread([place for _, place in wanted], steps, halves[0], LENGTH - halves[-1])


def _draw_chain(canvas: Canvas, figures: Sequence[str], stops: Sequence[float], y: float) -> None:
    """Measures end to end; a figure too long for its measure stands further out."""
    em = canvas.lettering.em
    half = _TICK * em
    edge = HEIGHT if y > 0 else 0.0
    away = 1.0 if y > 0 else -1.0
    canvas.add(
        Stroke("extension", tuple((x, edge + away * 0.2 * em, x, y + away * half) for x in stops)),
        Stroke(
            "measure",
            ((stops[0], y, stops[-1], y), *((x - half, y + half, x + half, y - half) for x in stops)),
        ),
    )
    out: list[tuple[str, float]] = []
    for figure, (start, end) in zip(figures, pairwise(stops), strict=True):
        if end - start >= canvas.lettering.width(figure) + 0.5 * em:
            canvas.add(Label("figure", (start + end) / 2, y, figure))
        else:
            out.append((figure, (start + end) / 2))
    for (figure, middle), place in zip(out, _in_a_row(canvas, out), strict=True):
        canvas.add(
            Stroke("extension", ((middle, y, place, y + away * 0.55 * em),)),
            Label("halo", place, y + away * 1.1 * em, figure),
        )
