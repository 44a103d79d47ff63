"""All records of one maker, and what holds for all of them."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.facts.batch import Project
from batchleaf.facts.drawer import Count, Gone, Purchase, Supply
from batchleaf.facts.parts import Design
from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.postage import NO_POSTAGE, Postage
from batchleaf.facts.tools import Tool
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.money import Currency


class CostFlow(StrEnum):
    """Which of the sheets on hand a batch is taken to have used (IAS 2, paragraph 25)."""

    AVERAGE = "average"
    """Each costs the average of all on hand."""
    OLDEST_FIRST = "oldest first"
    """The oldest lot goes first."""


LEAST_KEPT: Final = Size(Fraction(20), Fraction(20))
"""What is smaller is waste, where the maker sets nothing else: in mm."""


@dataclass(frozen=True, slots=True)
class OtherSheet:
    """A size of sheet that readers elsewhere have, as it is called: ``A4``, ``12 x 12 in``."""

    name: str
    size: Size


DISCLOSURE: Final = (
    "Some of what is named here is marked: paid, where its seller pays the maker for the link or for"
    " naming it; gifted, where it was free for the maker, or cost less."
)
"""What readers are told before the first thing that is marked, unless the maker says it in other words."""


VIDEO_TEXT: Final = 5000
"""Characters that the text for a video may have, where the maker sets nothing else (common practice)."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What holds for the whole archive."""

    unit: Unit
    currency: Currency
    cost_flow: CostFlow = CostFlow.AVERAGE
    as_of: dt.date | None = None
    """The day of which the drawer is told; ``None``: that of the newest record."""
    least_kept: Size = LEAST_KEPT
    """The smallest piece that is kept; a smaller one is waste."""
    disclosure: str = DISCLOSURE
    other_sheets: tuple[OtherSheet, ...] = ()
    """Sizes of sheets that each batch is planned on as well."""
    video_text: int = VIDEO_TEXT
    """How many characters the text for a video may have."""


@dataclass(frozen=True, slots=True)
class Series:
    """Projects that belong together, in order of date."""

    slug: str
    title: str
    about: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Archive:
    """All records of one maker, sorted: nothing depends on the order of files."""

    projects: tuple[Project, ...]
    supplies: tuple[Supply, ...]
    purchases: tuple[Purchase, ...]
    counts: tuple[Count, ...]
    series: tuple[Series, ...]
    designs: tuple[Design, ...] = ()
    tools: tuple[Tool, ...] = ()
    gone: tuple[Gone, ...] = ()
    postage: Postage = NO_POSTAGE
