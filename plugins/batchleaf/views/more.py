"""Pages beside the sections of the header: each is there only where there is something to show.

The first page names them below its series, and the foot of every page does too, so that the
header keeps its few words on a phone.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from batchleaf.core.figures import Figures
from batchleaf.core.years import has_years
from batchleaf.views import site_map
from batchleaf.views.colours import has_colours
from batchleaf.views.pages import Link


@dataclass(frozen=True, slots=True)
class MorePage:
    """A page of this kind: what links call it, where it stands, and whether an archive has it."""

    title: str
    address: str
    is_there: Callable[[Figures], bool]


def tells_where(figures: Figures) -> bool:
    """Whether any record says where finished makes went."""
    return any(batch.project.went for batch in figures.batches.values())


def tells_prices(figures: Figures) -> bool:
    """Whether a price is asked for what is made."""
    return any(batch.made and batch.project.asks for batch in figures.batches.values())


def has_several(figures: Figures) -> bool:
    """Whether there is anything to choose from."""
    return len(figures.batches) > 1


def tells_today(figures: Figures) -> bool:
    """Whether it is known how often a batch can be made from what is on hand."""
    return any(batch.from_drawer for batch in figures.batches.values())


def has_to_make(figures: Figures) -> bool:
    """Whether anything is still to be made."""
    return any(not batch.made for batch in figures.batches.values())


def tells_become(figures: Figures) -> bool:
    """Whether something that lies in the drawer gives a part of some batch."""
    return bool(figures.could_become)


def always(_: Figures) -> bool:
    """It needs no record."""
    return True


MORE: Final = (
    MorePage("At the table", site_map.TABLE, always),
    MorePage("Find a batch", site_map.FIND, has_several),
    MorePage("From today’s drawer", site_map.TODAY, tells_today),
    MorePage("What it could become", site_map.BECOME, tells_become),
    MorePage("To make", site_map.TO_MAKE, has_to_make),
    MorePage("Colours", site_map.COLOURS, has_colours),
    MorePage("Finished makes", site_map.FINISHED, tells_where),
    MorePage("Prices", site_map.PRICES, tells_prices),
    MorePage("The year at the table", site_map.YEAR, has_years),
)


def more_of(figures: Figures) -> tuple[MorePage, ...]:
    """Those that an archive has."""
    return tuple(one for one in MORE if one.is_there(figures))


def more_links(figures: Figures, here: str) -> tuple[Link, ...]:
    """The ways to them from the page at ``here``."""
    return tuple(Link(one.title, site_map.href(here, one.address)) for one in more_of(figures))
