"""The companion notes of a batch: a sheet to print, side by side as paper has them.

All measures are millimetres of the printed paper.
"""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.measure.licences import Licence
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.batch import CutNumbers
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class PrintedDrawing:
    """A drawing as large as it is printed: ``scale`` mm of paper to the mm, its figures ``lettering`` mm."""

    drawing: Drawing
    scale: float
    lettering: float

    @property
    def width(self) -> float:
        """What it takes of the paper."""
        return self.drawing.width * self.scale

    @property
    def height(self) -> float:
        """What it takes of the paper."""
        return self.drawing.height * self.scale

    @property
    def em(self) -> float:
        """The lettering in the drawing's own mm."""
        return self.lettering / self.scale


@dataclass(frozen=True, slots=True)
class GatherRow:
    """Something to lay ready: ``7 sheets``, ``oat card, 8 1/2 × 11 in``."""

    quantity: str
    what: str


@dataclass(frozen=True, slots=True)
class CutLine:
    """One part to cut: ``5 1/2 × 8 1/2, score at 4 1/4``, ``twelve``."""

    letter: str
    words: str
    count: str


@dataclass(frozen=True, slots=True)
class CutGroup:
    """All that is cut from one paper, or from several that are dealt round."""

    paper: str
    lines: tuple[CutLine, ...]


@dataclass(frozen=True, slots=True)
class PrintedSetting:
    """One setting of the trimmer with the cuts made at it; ``before``: what is done first."""

    setting: str
    numbers: tuple[CutNumbers, ...]
    before: str


@dataclass(frozen=True, slots=True)
class PrintedPlan:
    """One sheet plan, ``width`` mm wide with its words."""

    title: str
    instruction: str
    printed: PrintedDrawing
    settings: tuple[PrintedSetting, ...]
    remark: str
    width: float


@dataclass(frozen=True, slots=True)
class PrintedFigure:
    """A drawing of the make with what it shows."""

    printed: PrintedDrawing
    caption: str

    @property
    def width(self) -> float:
        """What it takes of the paper."""
        return self.printed.width


Block = PrintedPlan | PrintedFigure
"""What stands on the back, side by side with others."""
Shelf = tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class PrintedStep:
    """One step; ``film`` is its time in the film."""

    sentence: str
    film: str


@dataclass(frozen=True, slots=True)
class TemplateView:
    """A part at its true size; ``beside``: there is room for its words at its right."""

    title: str
    sentence: str
    printed: PrintedDrawing
    beside: bool


@dataclass(frozen=True, slots=True)
class NotesSheet:
    """The sheet. ``of``: whose it is; ``rounded``: how its lengths are, where they are not as written.

    ``back``: the way to the page of the batch, and ``other`` to the sheet in the other unit, where
    they have one.
    ``shelves``: the sheet plans and the layers apart, those that stand side by side together.
    ``steps_beside``: the last shelf has room for the steps.
    """

    title: str
    sentence: str
    disclosure: str
    credits: tuple[Line, ...]
    front: PrintedDrawing | None
    gather_head: str
    gather: tuple[GatherRow, ...]
    cut_unit: str
    rounded: str
    cut: tuple[CutGroup, ...]
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    larger: tuple[str, ...]
    check_bar: Drawing
    shelves: tuple[Shelf, ...]
    steps: tuple[PrintedStep, ...]
    steps_beside: bool
    templates: tuple[TemplateView, ...]
    of: str
    back: str = ""
    other: Link | None = None
    licence: Licence | None = None
