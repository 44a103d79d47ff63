"""Page models: everything a page shows, in the order it shows it.

Templates only lay these out. Text here is plain text: no markup, not escaped.
Addresses (``href``) are relative to the page they stand on.
"""

from __future__ import annotations

from batchleaf.views.pages.about import HowPage, HowSection, MovedPage, ProblemRow, ProblemsPage
from batchleaf.views.pages.batch import (
    BatchPage,
    CostView,
    CutNumbers,
    FilmRow,
    KindShare,
    Neighbour,
    PartRow,
    PlanView,
    PostRow,
    PostView,
    ScoreView,
    SettingRow,
    StepView,
    SupplyRow,
    VideoView,
)
from batchleaf.views.pages.become import BecomePage, BecomeRow, UntouchedRow
from batchleaf.views.pages.bench import BenchPage, BenchShelf, ImageRow, ToolRow
from batchleaf.views.pages.bench_work import BenchView, ToolInHand, WorkRow
from batchleaf.views.pages.collating import CollatingView, SortedColumn, SortedMakes, SortedPart
from batchleaf.views.pages.colours import ColourGroup, ColourLabel, ColoursPage, GoesWithView
from batchleaf.views.pages.compare import ComparedBatch, ComparePage, CompareView, DesignPage
from batchleaf.views.pages.drawer import (
    BoughtRow,
    BoughtView,
    BuyNext,
    BuyRow,
    DrawerPage,
    DrawerRow,
    DrawerShelf,
    ItemPage,
    MovementRow,
    PadPaperRow,
)
from batchleaf.views.pages.find import ChoiceView, FacetView, FindPage, FoundView
from batchleaf.views.pages.finished import FinishedPage, FinishedRow, WentRow, WentView
from batchleaf.views.pages.gallery import ComingEntry, GalleryEntry, HomePage
from batchleaf.views.pages.notes import (
    Block,
    CutGroup,
    CutLine,
    GatherRow,
    NotesSheet,
    PrintedDrawing,
    PrintedFigure,
    PrintedPlan,
    PrintedSetting,
    PrintedStep,
    Shelf,
    TemplateView,
)
from batchleaf.views.pages.offcuts import LaidPaper, LaidPile, OffcutsPage
from batchleaf.views.pages.other_sheets import OtherSheetsPage, OtherSheetView
from batchleaf.views.pages.pieces import Aside, InBoth, Line, Link, Picture, Source, text_of
from batchleaf.views.pages.prices import PriceRow, PricesPage, SoldRow
from batchleaf.views.pages.series import SeriesBatchRow, SeriesIndexPage, SeriesPage, SeriesRow
from batchleaf.views.pages.to_make import ToMakePage, ToMakeRow
from batchleaf.views.pages.today import TodayPage, TodayRow
from batchleaf.views.pages.together import FigureView, LyingRow, TogetherView
from batchleaf.views.pages.years import (
    DrawerOfYear,
    MadeInYear,
    MoneyRow,
    PaperOfYear,
    PaperRow,
    UsedInYear,
    UsedRow,
    YearBatchRow,
    YearsPage,
    YearView,
)

Page = (
    HomePage
    | BatchPage
    | DrawerPage
    | BenchPage
    | ItemPage
    | BecomePage
    | ComparePage
    | DesignPage
    | FindPage
    | ColoursPage
    | FinishedPage
    | PricesPage
    | OffcutsPage
    | OtherSheetsPage
    | SeriesIndexPage
    | SeriesPage
    | ToMakePage
    | TodayPage
    | YearsPage
    | HowPage
    | ProblemsPage
    | MovedPage
)

__all__ = [
    "Aside",
    "BatchPage",
    "BecomePage",
    "BecomeRow",
    "BenchPage",
    "BenchShelf",
    "BenchView",
    "Block",
    "BoughtRow",
    "BoughtView",
    "BuyNext",
    "BuyRow",
    "ChoiceView",
    "CollatingView",
    "ColourGroup",
    "ColourLabel",
    "ColoursPage",
    "ComingEntry",
    "ComparePage",
    "CompareView",
    "ComparedBatch",
    "CostView",
    "CutGroup",
    "CutLine",
    "CutNumbers",
    "DesignPage",
    "DrawerOfYear",
    "DrawerPage",
    "DrawerRow",
    "DrawerShelf",
    "FacetView",
    "FigureView",
    "FilmRow",
    "FindPage",
    "FinishedPage",
    "FinishedRow",
    "FoundView",
    "GalleryEntry",
    "GatherRow",
    "GoesWithView",
    "HomePage",
    "HowPage",
    "HowSection",
    "ImageRow",
    "InBoth",
    "ItemPage",
    "KindShare",
    "LaidPaper",
    "LaidPile",
    "Line",
    "Link",
    "LyingRow",
    "MadeInYear",
    "MoneyRow",
    "MovedPage",
    "MovementRow",
    "Neighbour",
    "NotesSheet",
    "OffcutsPage",
    "OtherSheetView",
    "OtherSheetsPage",
    "PadPaperRow",
    "Page",
    "PaperOfYear",
    "PaperRow",
    "PartRow",
    "Picture",
    "PlanView",
    "PostRow",
    "PostView",
    "PriceRow",
    "PricesPage",
    "PrintedDrawing",
    "PrintedFigure",
    "PrintedPlan",
    "PrintedSetting",
    "PrintedStep",
    "ProblemRow",
    "ProblemsPage",
    "ScoreView",
    "SeriesBatchRow",
    "SeriesIndexPage",
    "SeriesPage",
    "SeriesRow",
    "SettingRow",
    "Shelf",
    "SoldRow",
    "SortedColumn",
    "SortedMakes",
    "SortedPart",
    "Source",
    "StepView",
    "SupplyRow",
    "TemplateView",
    "ToMakePage",
    "ToMakeRow",
    "TodayPage",
    "TodayRow",
    "TogetherView",
    "ToolInHand",
    "ToolRow",
    "UntouchedRow",
    "UsedInYear",
    "UsedRow",
    "VideoView",
    "WentRow",
    "WentView",
    "WorkRow",
    "YearBatchRow",
    "YearView",
    "YearsPage",
    "text_of",
]
