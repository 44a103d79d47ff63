"""The drawer, and the page of one supply."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.colours import GoesWithView
from batchleaf.views.pages.gallery import GalleryEntry
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class DrawerRow:
    """One supply in the drawer index; ``swatch`` is a colour or empty, ``colours`` all of them in words.

    ``places``: where the row stands among all in each of the page's ``orders`` but the first.
    """

    supply: Link
    swatch: str
    about: str
    on_hand: str
    worth: str
    used_in: tuple[Link, ...]
    places: tuple[int, ...] = ()
    colours: str = ""


@dataclass(frozen=True, slots=True)
class DrawerShelf:
    """Supplies of one kind."""

    heading: str
    rows: tuple[DrawerRow, ...]


@dataclass(frozen=True, slots=True)
class BuyRow:
    """One supply to buy next: what there is of it, what is asked of it, and the lot last bought.

    ``about``: of which size, where it is a scrap; ``needed``: by which planned batches.
    """

    supply: Link
    swatch: str
    about: str
    needed: Line
    on_hand: str
    mark: str
    last: Line
    each: str
    link: Link | None


@dataclass(frozen=True, slots=True)
class BuyNext:
    """All that is to be bought."""

    sentence: str
    rows: tuple[BuyRow, ...]
    csv: Link | None = None


@dataclass(frozen=True, slots=True)
class DrawerPage:
    """The drawer's index. ``orders``: by what its rows can be put in order, the first as they stand."""

    title: str
    sentence: Line
    currency: str
    shelves: tuple[DrawerShelf, ...]
    orders: tuple[str, ...] = ()
    buy_next: BuyNext | None = None
    csv: Link | None = None
    by_hue: Link | None = None
    disclosure: str = ""


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
class BoughtRow:
    """One purchase. ``bundles``: the packs or pads that it was; ``one``: the price of one unit.

    ``paid``: with its share of the delivery, or that it was a gift, or is not known.
    """

    date: str
    date_iso: str
    source: str
    quantity: str
    bundles: str
    paid: str
    one: str


@dataclass(frozen=True, slots=True)
class BoughtView:
    """What was bought of a supply, its sum, and the price of one over time where there are two or more."""

    unit: str
    paid_label: str
    one_label: str
    rows: tuple[BoughtRow, ...]
    total_quantity: str
    total_bundles: str
    total_paid: str
    average: str
    chart: Drawing | None
    chart_caption: str
    notes: tuple[str, ...]
    csv: Link | None = None


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
    bought: BoughtView | None
    movements: tuple[MovementRow, ...]
    movements_unit: str
    currency: str
    total_on_hand: str
    total_value: str
    notes: tuple[str, ...]
    used_in: tuple[GalleryEntry, ...]
    colours: str = ""
    """The same as the swatches, in words."""
    goes_with: GoesWithView | None = None
    movements_csv: Link | None = None
    disclosure: str = ""
