"""The page of a batch: its parts, its plans, its cost, its steps."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.bench_work import BenchView
from batchleaf.views.pages.collating import CollatingView
from batchleaf.views.pages.finished import WentView
from batchleaf.views.pages.for_makes import ForMakesView
from batchleaf.views.pages.measures import MeasuresView
from batchleaf.views.pages.pieces import Line, Link, Picture
from batchleaf.views.pages.together import TogetherView


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part in the parts table; ``other_size`` is the size in the other unit.

    ``folded`` says its size once it is folded, ``details`` what the table does not
    measure: "shows the back: dots".
    """

    letter: str
    name: str
    folded: str
    papers: tuple[str | Link, ...]
    details: tuple[str, ...]
    size: str
    other_size: str
    each: str
    cut: str


@dataclass(frozen=True, slots=True)
class CutNumbers:
    """One cut by its number, or a run of cuts by its ``first`` and its ``last``."""

    first: int
    last: int

    @property
    def shown(self) -> str:
        """``7``, or ``5–20``."""
        return str(self.first) if self.first == self.last else f"{self.first}–{self.last}"


@dataclass(frozen=True, slots=True)
class SettingRow:
    """One setting of the trimmer: every cut made before the stop moves.

    ``numbers`` are those of the drawing's rings, ``before`` says what to do first,
    ``what`` what to cut, ``keep`` what is kept for the drawer, ``waste`` what falls away.
    """

    setting: str
    other_setting: str
    numbers: tuple[CutNumbers, ...]
    before: str
    what: str
    keep: str
    waste: str

    @property
    def is_one_cut(self) -> bool:
        """True where the stop moves after one cut."""
        return self.numbers[0].first == self.numbers[-1].last


@dataclass(frozen=True, slots=True)
class PlanView:
    """One sheet plan: heading, instruction, drawing, settings."""

    title: str
    instruction: Line
    drawing: Drawing
    settings: tuple[SettingRow, ...]
    remark: str


@dataclass(frozen=True, slots=True)
class ScoreView:
    """A part that is scored: heading, how its blank lies, drawing, where to score it, on which grooves."""

    title: str
    instruction: str
    drawing: Drawing
    sentence: str
    grooves: str = ""


@dataclass(frozen=True, slots=True)
class SupplyRow:
    """One supply of a batch with what it cost; ``lots``: where its price comes from."""

    supply: Link
    note: str
    used: str
    batch: str
    one: str
    lots: str = ""


@dataclass(frozen=True, slots=True)
class KindShare:
    """What one make cost of one kind; ``letter`` names its share in the strip."""

    letter: str
    kind: str
    one: str


@dataclass(frozen=True, slots=True)
class CostView:
    """What the batch cost and what one is made of."""

    strip: Drawing | None
    strip_caption: str
    currency: str
    rows: tuple[SupplyRow, ...]
    total_label: str
    total_batch: str
    total_one: str
    notes: tuple[str, ...]
    used_label: str = "Used"
    kinds: tuple[KindShare, ...] = ()


@dataclass(frozen=True, slots=True)
class PostRow:
    """One line of how a make is sent; ``other`` is the same in the other unit."""

    head: str
    text: str
    other: str = ""
    details: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PostView:
    """What one make weighs, how thick it is, its envelope, and as what it goes; ``ask``: whom to ask."""

    rows: tuple[PostRow, ...]
    ask: Line
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StepView:
    """One step; ``film`` is its time in the film ("1:05"), and where it is seen."""

    sentence: str
    film: Line
    pictures: tuple[Picture, ...]
    uses: str = ""
    """The sizes of the parts and the amounts of the supplies that it names, for one make."""


@dataclass(frozen=True, slots=True)
class FilmRow:
    """One step before it is filmed: what lies ready, and which sample beside it."""

    number: str
    time: str
    ready: str
    sample: str


@dataclass(frozen=True, slots=True)
class VideoView:
    """The text to go under a video, the way to it as a file, and what it had no room for."""

    text: str
    file: Link
    note: str


@dataclass(frozen=True, slots=True)
class Neighbour:
    """The batch before or after in the same series."""

    word: str
    link: Link


@dataclass(frozen=True, slots=True)
class BatchPage:
    """Everything about one batch."""

    title: str
    when: str
    when_iso: str
    series: Line
    sentence: Line
    cover: Picture | None
    notes_html: str
    about: tuple[Line, ...]
    parts_unit: str
    parts_cut: str
    parts: tuple[PartRow, ...]
    parts_notes: tuple[str, ...]
    plan_intro: str
    plans: tuple[PlanView, ...]
    plan_notes: tuple[str, ...]
    collating: CollatingView | None
    scoring: tuple[ScoreView, ...]
    paper: str
    paper_notes: tuple[str, ...]
    cost: CostView
    together: TogetherView | None
    steps: tuple[StepView, ...]
    pictures: tuple[Picture, ...]
    went: WentView | None
    neighbours: tuple[Neighbour, ...]
    cautions: tuple[str, ...]
    figures_href: str
    how_href: str
    parts_csv: Link | None = None
    plan_csv: Link | None = None
    cost_csv: Link | None = None
    companion: Line = ()
    """The way to the sheet to print, or where it lies."""
    post: PostView | None = None
    bench: BenchView | None = None
    measures: MeasuresView | None = None
    for_makes: ForMakesView | None = None
    for_makes_csv: Link | None = None
    disclosure: str = ""
    other_sheets: Link | None = None
    filming: tuple[FilmRow, ...] = ()
    video: VideoView | None = None
    how_to: Mapping[str, Any] | None = None
    """The same for machines, in the words of schema.org."""
