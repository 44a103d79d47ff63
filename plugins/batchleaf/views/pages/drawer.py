"""The drawer, and the page of one supply."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.gallery import GalleryEntry
from batchleaf.views.pages.pieces import Line, Link


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
    csv: Link | None = None


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
    movements_csv: Link | None = None
