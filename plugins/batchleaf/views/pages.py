"""Page models: everything a page shows, in the order it shows it.

Templates only lay these out. Text here is plain text: no markup, not escaped.
Addresses (``href``) are relative to the page they stand on.
"""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Box, Drawing


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere."""

    text: str
    href: str


@dataclass(frozen=True, slots=True)
class Aside:
    """Words in the quieter voice of a note within a line."""

    text: str


Line = tuple[str | Link | Aside, ...]
"""A sentence, some of whose words are links or quiet."""


def text_of(line: Line) -> str:
    """The words of a line alone."""
    return "".join(piece if isinstance(piece, str) else piece.text for piece in line)


@dataclass(frozen=True, slots=True)
class Source:
    """One format of a picture in its widths: ``(href, width in px)``, smallest first."""

    media_type: str
    files: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A photo in WebP and JPEG; ``width`` and ``height`` of the largest, for a steady layout."""

    sources: tuple[Source, ...]
    fallback: str
    width: int
    height: int
    alt: str


@dataclass(frozen=True, slots=True)
class GalleryEntry:
    """A batch as the home page and series pages show it.

    ``stand_in``: drawn where there is no picture, the first box being the frame.
    """

    title: str
    href: str
    picture: Picture | None
    line: str
    date: str
    date_iso: str
    stand_in: tuple[Box, ...]


@dataclass(frozen=True, slots=True)
class ComingEntry:
    """A batch that is planned, or only an idea: what it needs."""

    batch: Link
    line: str
    date: str
    date_iso: str


@dataclass(frozen=True, slots=True)
class HomePage:
    """The gallery of what was made, newest first; ``to_come``: what is planned, nearest first."""

    title: str
    sentence: Line
    entries: tuple[GalleryEntry, ...]
    series: tuple[Link, ...]
    to_come: tuple[ComingEntry, ...]


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
class SupplyRow:
    """One supply of a batch with what it cost; ``letter`` names its share in the strip."""

    letter: str
    supply: Link
    note: str
    used: str
    batch: str
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


@dataclass(frozen=True, slots=True)
class StepView:
    """One step; ``film`` is its time in the film ("1:05")."""

    sentence: str
    film: str
    pictures: tuple[Picture, ...]


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
    paper: str
    paper_notes: tuple[str, ...]
    cost: CostView
    steps: tuple[StepView, ...]
    pictures: tuple[Picture, ...]
    went: str
    neighbours: tuple[Neighbour, ...]
    cautions: tuple[str, ...]
    figures_href: str
    how_href: str


@dataclass(frozen=True, slots=True)
class DrawerRow:
    """One supply in the drawer index; ``swatch`` is a colour or empty."""

    supply: Link
    swatch: str
    about: str
    on_hand: str
    worth: str
    used_in: tuple[Link, ...]


@dataclass(frozen=True, slots=True)
class DrawerShelf:
    """Supplies of one kind."""

    heading: str
    rows: tuple[DrawerRow, ...]


@dataclass(frozen=True, slots=True)
class DrawerPage:
    """The drawer's index."""

    title: str
    sentence: Line
    currency: str
    shelves: tuple[DrawerShelf, ...]


@dataclass(frozen=True, slots=True)
class MovementRow:
    """One movement: date, what moved, quantity, what was on hand after it, value."""

    date: str
    date_iso: str
    what: Line
    quantity: str
    on_hand: str
    value: str


@dataclass(frozen=True, slots=True)
class PadPaperRow:
    """One numbered paper of a pad: how much of it is there, and where it went."""

    paper: Link
    on_hand: str
    used_in: tuple[Link, ...]


@dataclass(frozen=True, slots=True)
class ItemPage:
    """One supply: what is on hand, what moved, where it went.

    ``pad``: where the supply is a numbered paper, the pad it lies in; its
    movements have no value then, and ``currency`` is empty. An edition that tells
    nothing of the drawer leaves out all that is of stock.
    """

    title: str
    drawer: Link
    pad: Link | None
    kind: str
    sentence: Line
    swatches: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    """Label and text: size as bought, grain, weight, terms of sale."""
    link: Link | None
    papers: tuple[PadPaperRow, ...]
    papers_note: str
    pieces: Drawing | None
    pieces_caption: str
    movements: tuple[MovementRow, ...]
    movements_unit: str
    currency: str
    total_on_hand: str
    total_value: str
    notes: tuple[str, ...]
    used_in: tuple[GalleryEntry, ...]


@dataclass(frozen=True, slots=True)
class ImageRow:
    """One image of a set of stamps or dies, under its number."""

    number: str
    words: str
    size: str


@dataclass(frozen=True, slots=True)
class ToolRow:
    """One tool: what it is, how far it goes, which batches need it. ``anchor`` is its place on the page."""

    anchor: str
    name: str
    about: str
    facts: tuple[tuple[str, str], ...]
    """Label and text: its limits, terms of sale."""
    images: tuple[ImageRow, ...]
    link: Link | None
    used_in: tuple[Link, ...]


@dataclass(frozen=True, slots=True)
class BenchShelf:
    """Tools of one kind."""

    heading: str
    rows: tuple[ToolRow, ...]


@dataclass(frozen=True, slots=True)
class BenchPage:
    """The bench: every tool with its limits."""

    title: str
    sentence: Line
    shelves: tuple[BenchShelf, ...]


@dataclass(frozen=True, slots=True)
class SeriesRow:
    """One series in the index of series."""

    series: Link
    line: str
    about: str
    picture: Picture | None


@dataclass(frozen=True, slots=True)
class SeriesIndexPage:
    """All series."""

    title: str
    sentence: Line
    rows: tuple[SeriesRow, ...]


@dataclass(frozen=True, slots=True)
class SeriesBatchRow:
    """One batch in a series' table."""

    ordinal: str
    batch: Link
    date: str
    date_iso: str
    makes: str
    sheets: str
    could_have: str
    cost: str
    one: str


@dataclass(frozen=True, slots=True)
class SeriesPage:
    """One series in order, with totals."""

    title: str
    sentence: Line
    about: str
    currency: str
    entries: tuple[GalleryEntry, ...]
    to_come: tuple[ComingEntry, ...]
    rows: tuple[SeriesBatchRow, ...]
    total: SeriesBatchRow


@dataclass(frozen=True, slots=True)
class HowPage:
    """How each number is worked out: anchor, heading, paragraphs."""

    title: str
    sentence: Line
    sections: tuple[HowSection, ...]


@dataclass(frozen=True, slots=True)
class HowSection:
    """One number explained."""

    anchor: str
    heading: str
    paragraphs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ProblemRow:
    """One problem: where, the sentence, the line it speaks of and a caret under it."""

    where: str
    sentence: str
    line_text: str
    caret: str


@dataclass(frozen=True, slots=True)
class ProblemsPage:
    """Shown while serving, when a record cannot be read."""

    title: str
    sentence: Line
    rows: tuple[ProblemRow, ...]


@dataclass(frozen=True, slots=True)
class MovedPage:
    """Stands at an old address and leads to the new one."""

    title: str
    sentence: Line
    href: str


Page = (
    HomePage
    | BatchPage
    | DrawerPage
    | BenchPage
    | ItemPage
    | SeriesIndexPage
    | SeriesPage
    | HowPage
    | ProblemsPage
    | MovedPage
)
