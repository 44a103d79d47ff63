"""Sample pages with invented batches: one of each kind, for tests and for looking at."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.cutting.steps import LaidOut
from batchleaf.facts import Grain, Score
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.cost_strip import draw_cost_strip
from batchleaf.views.drawing.makes_row import Group, draw_makes_row
from batchleaf.views.drawing.pieces import draw_pieces
from batchleaf.views.drawing.shapes import Box, Drawing, Label
from batchleaf.views.drawing.sheet_plan import common_scale, draw_sheet_plan
from batchleaf.views.drawing.sheet_to_draw import sheet_to_draw
from batchleaf.views.pages import (
    Aside,
    BatchPage,
    BenchPage,
    BenchShelf,
    BuyNext,
    BuyRow,
    CollatingView,
    ComingEntry,
    CostView,
    CutNumbers,
    DrawerPage,
    DrawerRow,
    DrawerShelf,
    FigureView,
    FinishedPage,
    FinishedRow,
    GalleryEntry,
    HomePage,
    HowPage,
    HowSection,
    ImageRow,
    ItemPage,
    KindShare,
    LaidPaper,
    LaidPile,
    Link,
    LyingRow,
    MovementRow,
    Neighbour,
    OffcutsPage,
    PadPaperRow,
    Page,
    PartRow,
    Picture,
    PlanView,
    PriceRow,
    PricesPage,
    ProblemRow,
    ProblemsPage,
    ScoreView,
    SeriesBatchRow,
    SeriesIndexPage,
    SeriesPage,
    SeriesRow,
    SettingRow,
    SoldRow,
    SortedColumn,
    SortedMakes,
    SortedPart,
    Source,
    StepView,
    SupplyRow,
    TogetherView,
    ToolRow,
    WentRow,
    WentView,
)
from look.year_samples import bought_sample, years_sample

NBSP = "\u00a0"


def picture(name: str, alt: str, width: int = 1200, height: int = 800) -> Picture:
    """A picture whose files stand in ``pictures/``."""
    sources = tuple(
        Source(kind, ((f"pictures/{name}-600.{end}", 600), (f"pictures/{name}.{end}", width)))
        for kind, end in (("image/webp", "webp"), ("image/jpeg", "jpg"))
    )
    return Picture(sources, f"pictures/{name}.jpg", width, height, alt)


def plain_drawing(id_: str) -> Drawing:
    """One box with one word, where a page needs any drawing."""
    shapes = (Box("outline", 0, 0, 100, 60), Label("letter", 50, 30, "A"))
    return Drawing(id_, "One sheet", "A sheet with one part.", -5, -5, 110, 70, 2.0, "middle", shapes)


ENTRIES = tuple(
    GalleryEntry(
        title,
        f"projects/{slug}/",
        picture(slug, alt) if alt else None,
        line,
        date,
        iso,
        () if alt else (Box("frame", 0, 0, 210, 297), Box("part", 0, 0, 105, 148, "#e0c9a6")),
    )
    for title, slug, alt, line, date, iso in (
        (
            "Harbour-wall cards",
            "harbour-wall",
            "Four cards with a grey wall and a red boat",
            "12 cards from 6 sheets of dune card, 0.68\u00a0€ each.",
            "4 October 2026",
            "2026-10-04",
        ),
        (
            "Kite-string tags",
            "kite-string",
            "Long tags on a board",
            "30 tags, 0.14\u00a0€ each.",
            "20 August 2026",
            "2026-08-20",
        ),
        (
            "Rain-gauge bookmarks",
            "rain-gauge",
            "Blue bookmarks",
            "22 of 24 bookmarks, 0.42\u00a0€ each.",
            "3 July 2026",
            "2026-07-03",
        ),
        (
            "Allotment boxes",
            "allotment",
            "",
            "8 boxes with lids, 0.75\u00a0€ each.",
            "1 June 2026",
            "2026-06-01",
        ),
        (
            "Night-train cards",
            "night-train",
            "Dark cards",
            "10 cards, 0.81\u00a0€ each.",
            "9 May 2026",
            "2026-05-09",
        ),
        (
            "Clothes-line banners",
            "clothes-line",
            "Banners",
            "16 banners, all from scraps.",
            "12 April 2026",
            "2026-04-12",
        ),
        (
            "Lock-keeper place cards",
            "lock-keeper",
            "Place cards",
            "36 place cards from two sheets and a scrap.",
            "2 March 2026",
            "2026-03-02",
        ),
        (
            "Orchard gate folds",
            "orchard",
            "Gate folds",
            "9 gate folds, 0.92\u00a0€ each.",
            "1 February 2026",
            "2026-02-01",
        ),
    )
)

TO_COME = (
    ComingEntry(
        Link("Ferry-bell tags", "projects/ferry-bell/"),
        "24 tags planned; they need 2 sheets of dune card.",
        "3 November 2026",
        "2026-11-03",
    ),
)

HOME = HomePage(
    "Batches",
    (
        "143 pieces in eight batches since February, from ",
        Link("47 sheets", "how/#sheets"),
        " and a good many scraps.",
    ),
    ENTRIES,
    (Link("Six Locks", "series/six-locks/"), Link("Rain or Shine", "series/rain-or-shine/")),
    (
        Link("Finished makes", "finished/"),
        Link("Prices", "prices/"),
        Link("The year at the table", "year/"),
    ),
    TO_COME,
)


def went() -> WentView:
    """Twelve cards, one of which may be anywhere."""
    groups = (Group("a", 3), Group("b", 7), Group("c", 1, kept=True), Group("d", 1, told=False))
    return WentView(
        draw_makes_row(groups, aspect=0.7, id="makes-row", title="12 cards, in a row", description="Sold."),
        "One for each card.",
        "€",
        (
            WentRow("a", "Sold", "quay market", "3 Nov 2026", "2026-11-03", "3", "3.50", "10.50"),
            WentRow("b", "Given", "", "", "", "7", "", ""),
            WentRow("c", "Kept", "", "", "", "1", "", ""),
            WentRow("d", "Not told", "", "", "", "1", "", ""),
        ),
        "All",
        "12",
        "10.50",
        Link("All finished makes", "../../finished/"),
    )


FINISHED = FinishedPage(
    "Finished makes",
    ("12 pieces are finished, in one batch: 7 were given, and of 1 it is not told.",),
    ("Kept", "Given", "Sold", "Sample", "Class"),
    "€",
    (
        FinishedRow(
            Link("Harbour-wall cards", "../projects/wall/#went"),
            "12",
            ("1", "7", "3", "", ""),
            "1",
            "at least 10.50",
        ),
    ),
    FinishedRow(Link("One batch", ""), "12", ("1", "7", "3", "", ""), "1", "at least 10.50"),
    (Link("How this is worked out", "../how/#finished"), "."),
)
PRICES = PricesPage(
    "Prices",
    ("A price is asked for one batch.",),
    "€",
    (
        PriceRow(
            Link("Harbour-wall cards", "../projects/wall/"),
            "at least 0.67",
            "14 min",
            "3.50",
            "at most 2.83",
            "at most 12.10",
        ),
    ),
    (SoldRow(Link("Harbour-wall cards", "../projects/wall/"), "3", "10.50", "2.01", "8.49"),),
    SoldRow(Link("One batch", ""), "3", "10.50", "2.01", "8.49"),
    "The owner’s own licence text decides.",
    (("Harbour words: handmade only; in ", Link("Harbour-wall cards", "../projects/wall/"), "."),),
    ("Time has no price. ", Link("How this is worked out", "../how/#prices"), "."),
)


def batch(plans: tuple[PlanView, ...], strip: Drawing | None) -> BatchPage:
    """A batch with everything a batch page can show."""
    return BatchPage(
        title="Harbour-wall cards",
        when="4 October 2026",
        when_iso="2026-10-04",
        series=("third of ", Link("Six Locks", "../../series/six-locks/")),
        sentence=(
            "12 cards from ",
            Link("6 sheets", "#plan"),
            " of dune card and 4 papers of the ",
            Link("Shingle pad", "../../drawer/shingle-pad/"),
            "; these sheets could have given ",
            Link("13", "../../how/#could-have-given"),
            ". ",
            Link(f"0.68{NBSP}€", "#cost"),
            f" each, 2{NBSP}h{NBSP}50 at the table.",
        ),
        cover=picture("harbour-wall", "Four cards with a grey wall and a red boat", 1600, 800),
        notes_html="<p>The wall is one strip of grey, torn along a rule, so no two are the same.</p>",
        about=(
            ("Made to the design Wall card; so is ", Link("Night-train cards", "../night-train/"), "."),
            (Link("After a fold by a friend", "https://example.org/fold"), "."),
            ("Tools: the long trimmer and a score board.",),
            ("Techniques: side fold, score, stamp, die-cut.",),
        ),
        parts_unit="mm",
        parts_cut="Cut",
        parts=(
            PartRow(
                "A",
                "base",
                "folds to 105 × 148",
                (Link("dune card", "../../drawer/dune/"),),
                (),
                "210 × 148",
                "8 1/4 × 5 13/16 in",
                "1",
                "12",
            ),
            PartRow(
                "B",
                "panel",
                "",
                (Link("dune card", "../../drawer/dune/"),),
                ("shows the back: small dots",),
                "95 × 138",
                "3 11/16 × 5 7/16 in",
                "1",
                "12",
            ),
            PartRow(
                "C",
                "label",
                "",
                (Link("dune card", "../../drawer/dune/"), Link("ember card", "../../drawer/ember/")),
                ("stamped with high water and slack tide", "die-cut with the wave die"),
                "44 × 26",
                "1 11/16 × 1 in",
                "1",
                "12",
            ),
        ),
        parts_notes=("Sizes in inches are rounded down to the mark of the rule.",),
        plan_intro="Ten sheets, two plans. Set each measure once, and take every "
        "sheet of that plan through before you move the stop.",
        plans=plans,
        plan_notes=("The bound is met: no way of through cuts gives more.",),
        collating=COLLATING,
        scoring=(
            ScoreView(
                "Score A",
                "Base, flat, 210 × 148; the outside is up.",
                plain_drawing("score-a-drawing"),
                "Score every A at 105\u00a0mm along its long side before it is folded.",
            ),
        ),
        paper="Of all that was cut, 85\u00a0% is in the cards, 4\u00a0% was kept and 11\u00a0% is waste.",
        paper_notes=("Kept: four pieces of 95 × 77.",),
        cost=CostView(
            strip,
            "One card, 73 cents long. The rule is in cents.",
            "€",
            (
                SupplyRow(Link("dune card", "../../drawer/dune/"), "", "6 sheets", "5.52", "0.46"),
                SupplyRow(
                    Link("Shingle pad", "../../drawer/shingle-pad/"),
                    "less what was kept",
                    "4 papers",
                    "1.44",
                    "0.12",
                ),
                SupplyRow(Link("envelope, C6", "../../drawer/c6/"), "", "12", "1.08", "0.09"),
                SupplyRow(Link("harbour ink", "../../drawer/ink/"), "not measured", "", "", ""),
            ),
            "Twelve cards",
            "8.04",
            "0.67",
            ("The price of the ink is not known; it is not in the sum.",),
            kinds=(KindShare("a", "papers", "0.58"), KindShare("b", "packing", "0.09")),
        ),
        together=TogetherView(
            figures=(FigureView(plain_drawing("together-1"), "Front"),),
            layers=(FigureView(plain_drawing("apart-1"), "Layers apart, from the base up"),),
            rows=(
                LyingRow("B", "panel", "on the front, 5\u00a0mm from every edge"),
                LyingRow("C", "label", "on the panel, 8\u00a0mm from the foot and the right"),
            ),
            note="Drawn with the papers of the first card.",
        ),
        steps=(
            StepView("Cut both plans, then score every base at 105.", ("0:40",), ()),
            StepView(
                "Tear the wall along a steel rule, towards you.",
                ("6:15",),
                (picture("night-train", "A hand tears grey paper along a rule"),),
            ),
            StepView("Stick panel, wall and label, in this order.", (), ()),
        ),
        pictures=(picture("orchard", "Cards in a row"), picture("kite-string", "One card from the side")),
        went=went(),
        neighbours=(Neighbour("earlier", Link("Night-train cards", "../night-train/")),),
        cautions=("Two lines of the record say that sheets were left over, and do not say where they went.",),
        figures_href="figures.json",
        how_href="../../how/",
    )


SETTINGS = (
    SettingRow("210", "8 1/4", (CutNumbers(1, 1),), "", "Six cuts. Both pieces are used.", "", ""),
    SettingRow(
        "148",
        "5 13/16",
        (CutNumbers(2, 2), CutNumbers(3, 3)),
        "",
        "Twelve cuts across the wide piece: twelve bases A.",
        "",
        "A strip of 9 is waste.",
    ),
    SettingRow(
        "153", "6", (CutNumbers(5, 8),), "", "Four cuts.", "Keep 95 × 77 for the drawer, four pieces.", ""
    ),
)


def plan_view(drawing: Drawing, title: str) -> PlanView:
    """A plan with its settings beside it."""
    instruction = ("Cut six sheets of ", Link("dune card", "../../drawer/dune/"), " like this, 305 × 305.")
    return PlanView(
        title,
        instruction,
        drawing,
        SETTINGS,
        "Measure the sheet first: its whole width is used.",
    )


DRAWER = DrawerPage(
    "Drawer",
    (f"17 papers and 40 sheets on hand, worth 31.20{NBSP}€ with the kept pieces.",),
    "€",
    (
        DrawerShelf(
            "Card",
            (
                DrawerRow(
                    Link("dune card", "dune/"),
                    "#e9dfc7",
                    "305 × 305, 240 g/m²",
                    "12 sheets",
                    "10.08",
                    (
                        Link("Harbour-wall cards", "../projects/harbour-wall/"),
                        Link("Orchard gate folds", "../projects/orchard/"),
                    ),
                    (0, 2),
                ),
                DrawerRow(
                    Link("ember card", "ember/"),
                    "#c9553a",
                    "210 × 297",
                    "3 sheets and 2 pieces",
                    "1.75",
                    (),
                    (1, 1),
                ),
            ),
        ),
        DrawerShelf("Ink", (DrawerRow(Link("harbour ink", "ink/"), "", "pad", "1", "", (), (2, 0)),)),
    ),
    ("by shelf", "by name", "by worth"),
    BuyNext(
        "Two supplies are below their mark, and one planned batch lacks paper.",
        (
            BuyRow(
                Link("dune card", "dune/"),
                "#e9dfc7",
                "",
                ("20 sheets for ", Link("Lock-gate tags", "../projects/lock-gate/")),
                "12 sheets",
                "15 sheets",
                ("25 sheets ", Aside("from a market stall, 3 Jan 2026")),
                "0.84",
                Link("example.org", "https://example.org/dune"),
            ),
            BuyRow(Link("harbour ink", "ink/"), "", "a scrap of 4 × 9 in", (), "none", "1", (), "", None),
        ),
        Link("Buy next as CSV", "buy-next.csv"),
    ),
    Link("Supplies as CSV", "drawer.csv"),
)

OFFCUTS = OffcutsPage(
    "Kept pieces",
    Link("Drawer", "../drawer/"),
    ("4 pieces of 2 papers, worth ", Link(f"1.20{NBSP}€", "../how/#on-hand"), "."),
    plain_drawing("rule"),
    f"100{NBSP}mm. All pieces are drawn to the scale of this rule.",
    (
        LaidPaper(
            Link("dune card", "../drawer/dune/"),
            (
                LaidPile(
                    plain_drawing("dune-1"),
                    "3 of 60 × 60 mm",
                    ("kept from ", Link("Harbour-wall cards", "../projects/harbour-wall/"), ", 4 Oct 2026"),
                    "worth 0.90\u00a0€ together",
                ),
                LaidPile(
                    plain_drawing("dune-2"), "40 × 20 mm", ("there at the start, 1 Jan 2026",), "worth 0.30"
                ),
            ),
        ),
    ),
    Link("Pieces as CSV", "offcuts.csv"),
)


def item(pieces: Drawing | None) -> ItemPage:
    """A supply with kept pieces and movements."""
    return ItemPage(
        title="Shingle pad",
        drawer=Link("Drawer", "../"),
        pad=Link("Shore pads", "../shore/"),
        kind="paper",
        sentence=(
            "14 of 24 papers on hand and ",
            Link("five kept pieces", "#kept"),
            ", worth 5.98\u00a0€ together.",
        ),
        swatches=("#9dbac6", "#2f4858"),
        facts=(("As bought", "180 × 230 mm"), ("Grain", "long"), ("Weight", "120 g/m²")),
        link=Link("example.org", "https://example.org/shingle-pad"),
        papers=(
            PadPaperRow(Link("shingle 1", "1/"), "2 papers", (Link("Harbour-wall cards", "../harbour/"),)),
            PadPaperRow(Link("shingle 2", "2/"), "none", ()),
        ),
        papers_note="2 papers left the pad, and no record says which.",
        pieces=pieces,
        pieces_caption="Drawn to one scale beside a whole paper.",
        bought=bought_sample(),
        movements=(
            MovementRow("10 Jan 2026", "2026-01-10", ("bought ", Aside("one pad")), "+ 24", "24", "9.60"),
            MovementRow(
                "4 Oct 2026",
                "2026-10-04",
                (Link("Harbour-wall cards", "../../projects/harbour-wall/"), " ", Aside("four pieces kept")),
                "− 4",
                "20",
                "− 1.32",
            ),
            MovementRow(
                "20 Oct 2026", "2026-10-20", ("counted ", Aside("one is missing")), "− 1", "19", "− 0.40"
            ),
        ),
        movements_unit="Papers",
        currency="€",
        total_on_hand="19",
        total_value="7.88",
        notes=("A kept piece stays in the drawer with its share of the paper’s cost, by area.",),
        used_in=ENTRIES[:3],
    )


BENCH = BenchPage(
    "Bench",
    ("Three tools, with 2 images to stamp or cut.",),
    (
        BenchShelf(
            "Stamps",
            (
                ToolRow(
                    "shore-words",
                    "shore words",
                    "Clear, on a card.",
                    (("Selling what is made", "handmade only"),),
                    (ImageRow("1", "high water", "30 × 8 mm"), ImageRow("2", "slack tide", "")),
                    Link("example.org", "https://example.org/shore-words"),
                    (Link("Harbour-wall cards", "../projects/harbour-wall/"),),
                ),
            ),
        ),
        BenchShelf(
            "Trimmer",
            (
                ToolRow(
                    "long-trimmer",
                    "the long trimmer",
                    "",
                    (("Longest cut", "310 mm"), ("At once", "4 sheets of up to 120 g/m²")),
                    (),
                    None,
                    (),
                ),
            ),
        ),
    ),
)


SERIES_INDEX = SeriesIndexPage(
    "Series",
    ("Two series, eleven batches.",),
    (
        SeriesRow(
            Link("Six Locks", "six-locks/"),
            "Three of six batches, 58 pieces.",
            "A flight of locks, one batch for each.",
            picture("harbour-wall", "Cards"),
        ),
        SeriesRow(Link("Rain or Shine", "rain-or-shine/"), "Two batches.", "", None),
    ),
)

SERIES = SeriesPage(
    "Six Locks",
    ("58 pieces in three batches from 19 sheets; they could have given 61.",),
    "A flight of locks, one batch for each.",
    "€",
    ENTRIES[:3],
    TO_COME,
    (
        SeriesBatchRow(
            "1",
            Link("Rain-gauge bookmarks", "../../projects/rain-gauge/"),
            "3 Jul 2026",
            "2026-07-03",
            "22",
            "5",
            "24",
            "9.24",
            "0.42",
        ),
        SeriesBatchRow(
            "2",
            Link("Kite-string tags", "../../projects/kite-string/"),
            "20 Aug 2026",
            "2026-08-20",
            "24",
            "4",
            "24",
            "3.36",
            "0.14",
        ),
        SeriesBatchRow(
            "3",
            Link("Harbour-wall cards", "../../projects/harbour-wall/"),
            "4 Oct 2026",
            "2026-10-04",
            "12",
            "10",
            "13",
            "8.16",
            "0.68",
        ),
    ),
    SeriesBatchRow("", Link("All three", "#table"), "", "", "58", "19", "61", "20.76", "0.36"),
)

HOW = HowPage(
    "How it is worked out",
    ("Every number comes from the records, by the rules below.",),
    (
        HowSection(
            "could-have-given",
            "Could have given",
            (
                "The most full sets of parts that the sheets can give by through cuts.",
                "Where no proof was found, the page says how far off it may be.",
            ),
        ),
        HowSection(
            "cost-of-one",
            "Cost of one",
            ("What the batch drew from the drawer, divided by the finished ones.",),
        ),
    ),
)

PROBLEMS = ProblemsPage(
    "One record cannot be read",
    ("Nothing of it is shown until it is mended; the other pages are up to date.",),
    (
        ProblemRow(
            "projects/harbour-wall/project.yml, line 12, column 9",
            "“44 by” is not a size.",
            "  size: 44 by",
            "        ^",
        ),
        ProblemRow("projects/series.yml, line 3", "Two series are called “six-locks”.", "", ""),
    ),
)


def pages() -> tuple[Page, ...]:
    """One page of each kind."""
    drawing = plain_drawing("plan-1-drawing")
    return (
        HOME,
        batch((plan_view(drawing, "Plan 1"),), plain_drawing("strip")),
        DRAWER,
        BENCH,
        item(plain_drawing("pieces")),
        OFFCUTS,
        SERIES_INDEX,
        SERIES,
        years_sample(),
        HOW,
        FINISHED,
        PRICES,
        PROBLEMS,
    )


def cut(axis: Axis, at: int | Fraction, first: Node, second: Node) -> ThroughCut:
    """A through cut at ``at`` mm."""
    return ThroughCut(axis, Fraction(at), first, second)


def strips(axis: Axis, at: int | Fraction, times: int, each: Node, rest: Node) -> Node:
    """``times`` pieces of ``at`` mm cut off one after the other."""
    node = rest
    for _ in range(times):
        node = cut(axis, at, each, node)
    return node


LETTERS = {"base": "A", "panel": "B", "label": "C", "sky": "D", "water": "E", "tag": "T"}
SIZES = {
    "base": (210, 148),
    "panel": (95, 138),
    "label": (44, 26),
    "sky": (85, 51),
    "water": (85, 74),
    "tag": (30, 12),
}
REST = Leftover()


def laid_out(width: int, height: int, tree: Node) -> LaidOut:
    """``tree`` on a sheet of ``width`` × ``height`` mm."""
    stock = Stock("sheet", Size(Fraction(width), Fraction(height)))
    parts = tuple(PartKind(name, Size(Fraction(w), Fraction(h))) for name, (w, h) in SIZES.items())
    return lay_out(SheetPlan("sheet", 1, tree), Job((stock,), parts))


def wide_sheet() -> LaidOut:
    """Two bases, two panels and a row of labels."""
    row = strips(Axis.X, 44, 2, PartLeaf("label"), REST)
    right = strips(Axis.Y, 138, 2, PartLeaf("panel"), cut(Axis.Y, 26, row, REST))
    return laid_out(305, 305, cut(Axis.X, 210, strips(Axis.Y, 148, 2, PartLeaf("base"), REST), right))


def pad_sheet() -> LaidOut:
    """Waters and skies, and a piece to keep."""
    skies = cut(Axis.X, 85, strips(Axis.Y, 51, 2, PartLeaf("sky"), PartLeaf("sky")), REST)
    right = cut(Axis.Y, 153, skies, REST)
    return laid_out(180, 230, cut(Axis.X, 85, strips(Axis.Y, 74, 3, PartLeaf("water"), REST), right))


def tag_sheet() -> LaidOut:
    """A hundred and forty-four small tags: cuts closer than their rings are wide."""
    row = strips(Axis.X, 30, 6, PartLeaf("tag"), REST)
    return laid_out(190, 300, strips(Axis.Y, 12, 24, row, REST))


def plan_drawing(
    laid: LaidOut, name: str, kept: tuple[Rect, ...] = (), unit: Unit = Unit.MM, grain: Grain = Grain.LONG
) -> Drawing:
    """``laid`` at the scale of a sheet of 305 mm."""
    return draw_sheet_plan(
        sheet_to_draw(
            laid,
            letters=LETTERS,
            kept=kept,
            scores={"base": (Score(runs_down=True, at=Fraction(105)),)},
            grain=grain,
        ),
        id=name,
        title="A sheet",
        description="Parts and cuts.",
        unit=unit,
        scale=common_scale([Size(Fraction(305), Fraction(305))]),
    )


def kept_of(laid: LaidOut) -> tuple[Rect, ...]:
    """The largest leftover."""
    return (max(laid.leftovers, key=lambda rect: rect.size.area),)


SHARES = (("a", 46), ("b", 12), ("c", 9), ("d", 3), ("e", 2), ("f", 1))


def strip_drawing() -> Drawing:
    """Seventy-three cents."""
    return draw_cost_strip(SHARES, id="strip", title="One card", description="Six shares.", digits=2)


def pieces_drawing() -> Drawing:
    """Three squares, four offcuts and a long strip."""
    sizes = ((60, 60, 3), (95, 77, 4), (40, 180, 1), (20, 25, 9))
    pieces = tuple((Size(Fraction(w), Fraction(h)), n) for w, h, n in sizes)
    sheet = Size(Fraction(180), Fraction(230))
    return draw_pieces(sheet, pieces, id="pieces", title="Kept", description="Four sizes.", unit=Unit.MM)


def _sorted(paper: str, colour: str, box: str, images: str) -> tuple[tuple[SortedPart, ...], ...]:
    squares = (
        SortedPart(f"2{NBSP}×", paper, colour, (), ""),
        SortedPart("", "shoal pad 4", "", ("4",), ""),
    )
    return squares, (SortedPart("", "", "", (box, box), ""),), (SortedPart("", "", "", (), images),)


COLLATING = CollatingView(
    sentence="10 of the 12 sets have no paper more than twice; with 2 more squares there would be 11.",
    things="Cards",
    columns=(
        SortedColumn("B", "square", ""),
        SortedColumn("C", "strip", "shoal pad"),
        SortedColumn("D", "label", ""),
    ),
    rows=(
        SortedMakes(f"1{NBSP}to{NBSP}4", _sorted("dune paper", "#d8c49a", "1", "high water"), ""),
        SortedMakes(f"5{NBSP}to{NBSP}10", _sorted("sea paper", "#3c495c", "7", "slack tide"), ""),
        SortedMakes(
            f"11{NBSP}and{NBSP}12", _sorted("sea paper", "#3c495c", "a", "slack tide"), "from what is left"
        ),
    ),
    csv=Link("Collating as CSV", "collating.csv"),
    notes=("On D: high water 4, slack tide 8.",),
)


def full_batch() -> BatchPage:
    """A batch with real drawings."""
    pad = pad_sheet()
    drawings = (
        plan_drawing(wide_sheet(), "drawing-1"),
        plan_drawing(pad, "drawing-2", kept_of(pad)),
        plan_drawing(tag_sheet(), "drawing-3"),
    )
    plans = tuple(plan_view(one, f"Plan {i}") for i, one in enumerate(drawings, 1))
    return batch(plans, strip_drawing())


def full_item() -> ItemPage:
    """A supply with its kept pieces drawn."""
    return item(pieces_drawing())
