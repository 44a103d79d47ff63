"""The back of the sheet: sheet plans and layers as large as they can be where all fit on one side."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, partial
from typing import Final

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Project, Tool
from batchleaf.measure.lengths import Size
from batchleaf.views.drawing.canvas import FIGURE_PX, GROWTH
from batchleaf.views.first_make import as_first_made
from batchleaf.views.notes.heights import of_back
from batchleaf.views.notes.layers import CLOSE, WIDE, LayersRoom, layers_apart
from batchleaf.views.notes.on_paper import HEIGHT, LETTERING, printed, shelved
from batchleaf.views.pages import (
    PrintedFigure,
    PrintedPlan,
    PrintedSetting,
    PrintedStep,
    Shelf,
    text_of,
)
from batchleaf.views.plan import PlanToShow, ToldPlan, plans_to_show, told_plans
from batchleaf.views.together import Supplies

_SIZES: Final = (
    *((78.0, WIDE), (72.0, WIDE), (66.0, WIDE), (60.0, WIDE)),
    *((60.0, CLOSE), (54.0, WIDE), (54.0, CLOSE), (48.0, CLOSE), (42.0, CLOSE), (38.0, CLOSE)),
)
"""Tried in turn: how long a side of a square sheet is on the paper, in mm, and the room of the layers."""
_ON_SEVERAL_SIDES: Final = (60.0, WIDE)
"""Where no size lets all fit on one side, so that they go on to the next."""
_OF_LONGER: Final = 0.8
"""How much the longer side of a sheet counts against the shorter: a strip may be longer than a square."""
_LARGEST: Final = 0.27
"""No piece is drawn larger than about a quarter of its size."""
_WIDEST: Final = 92.0
_HIGHEST: Final = 150.0
_NARROWEST: Final = 44.0
"""The words of a plan need so much width."""
_AROUND: Final = 26.0
"""What the heading, the foot and the space between take."""


@dataclass(frozen=True, slots=True)
class ForBack:
    """What the back of a batch's sheet shows, in both units alike: its plans, and its layers in a room."""

    plans: tuple[PlanToShow, ...]
    layers: Callable[[LayersRoom], tuple[PrintedFigure, ...]]


def for_back(batch: BatchFigures, supplies: Supplies) -> ForBack:
    """Layers are drawn once for each room that is tried."""
    return ForBack(
        plans_to_show(batch.project, batch.cutting, supplies),
        cache(partial(layers_apart, as_first_made(batch), supplies)),
    )


def back_shelves(
    shown: ForBack,
    project: Project,
    supplies: Supplies,
    tools: Mapping[str, Tool],
    steps: Sequence[PrintedStep],
) -> tuple[Shelf, ...]:
    """The plans in their order and then the layers, as large as lets them fit on a side with the steps."""
    told = told_plans(shown.plans, project, supplies, tools)

    @cache
    def plans(longest: float) -> tuple[PrintedPlan, ...]:
        return tuple(_printed(plan, longest) for plan in told)

    def of_size(longest: float, room: LayersRoom) -> tuple[Shelf, ...]:
        return tuple(shelved((*plans(longest), *shown.layers(room))))

    tried = (of_size(*size) for size in _SIZES)
    fitting = (shelves for shelves in tried if of_back(shelves, steps) <= HEIGHT - _AROUND)
    return next(fitting, None) or of_size(*_ON_SEVERAL_SIDES)


def _scale(sheet: Size, longest: float) -> float:
    """In mm of paper to the mm of a sheet."""
    long, short = float(sheet.upright.height), float(sheet.upright.width)
    across = math.pow(long, _OF_LONGER) * math.pow(short, 1 - _OF_LONGER)
    return min(_LARGEST, longest / across)


def _printed(plan: ToldPlan, longest: float) -> PrintedPlan:
    scale = _scale(plan.size, longest)
    # Where the drawing takes the lettering of its width class, its figures are printed in 9 points.
    view = plan.drawn(scale * FIGURE_PX * GROWTH["middle"] / LETTERING)
    drawn = printed(view.drawing, _WIDEST, _HIGHEST, scale)
    return PrintedPlan(
        title=view.title,
        instruction=text_of(view.instruction),
        printed=drawn,
        settings=tuple(PrintedSetting(row.setting, row.numbers, row.before) for row in view.settings),
        remark=view.remark,
        width=max(drawn.width, _NARROWEST),
    )
