"""By what a batch is found: what each choice says of it, in the words of the page.

A :class:`Choosing` gives a batch any number of choices out of an open set, of which a reader may
want several at once. A :class:`Ladder` gives it one number, of which a reader wants at most so much.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Ledger
from batchleaf.core.post.envelopes import own, takes
from batchleaf.core.reserved import needed_sheets
from batchleaf.facts import Status, Supply, Tool
from batchleaf.measure.colour_families import family_of
from batchleaf.measure.colours import Colour
from batchleaf.measure.display import NBSP, show_size
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.lengths import Size
from batchleaf.measure.money import Currency
from batchleaf.views.bench import tools_needed
from batchleaf.views.techniques import techniques
from batchleaf.views.words import counted


@dataclass(frozen=True, slots=True)
class Known:
    """What the words of a choice are taken from."""

    figures: Figures
    supplies: dict[str, Supply]
    tools: dict[str, Tool]

    @property
    def currency(self) -> Currency:
        """That of the site."""
        return self.figures.settings.currency


Choice = tuple[str, str]
"""What stands in the address, and what a reader reads."""


@dataclass(frozen=True, slots=True)
class Choosing:
    """``of``: the choices that are true of a batch.

    ``rank``: what a choice goes by in the list; where it is left out, those of most batches come first.
    """

    key: str
    name: str
    of: Callable[[BatchFigures, Known], Iterator[Choice]]
    rank: Callable[[str], int] | None = None


@dataclass(frozen=True, slots=True)
class Rung:
    """At most so much; ``value`` stands in the address."""

    most: int
    value: str
    text: str


@dataclass(frozen=True, slots=True)
class Ladder:
    """``of``: the number of a batch, or ``None`` where it is not known."""

    key: str
    name: str
    of: Callable[[BatchFigures], int | None]
    rungs: Callable[[Known], Iterator[Rung]]


def _thing(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    yield batch.project.thing, batch.project.thing


def _series(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    for one in known.figures.archive.series:
        if one.slug == batch.project.series:
            yield one.slug, one.title


def _status(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    yield batch.project.status.value, batch.project.status.value


def _year(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    yield str(batch.project.date.year), str(batch.project.date.year)


def _technique(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    for one in techniques(batch.project):
        yield one.replace(" ", "-"), one


def _occasion(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    for one in batch.project.occasions:
        yield one.casefold(), one


def _age(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    months = batch.project.youngest
    if months is not None:
        years, rest = divmod(months, 12)
        age = counted(months, "month", "months") if rest or not years else counted(years, "year", "years")
        yield str(months), f"from {age}"


def _size(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    size, unit = batch.project.finished_size, batch.project.unit
    if size is not None:
        shown = f"{show_size(size, unit)}{NBSP}{unit.word}"
        yield _plain(shown), shown


def _sheet(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    """Of whole sheets that were cut, or are to be; a size that readers have by its name."""
    names = {one.size.upright: one.name for one in known.figures.settings.other_sheets}
    papers = {cut.supply for cut in needed_sheets(batch) if cut.scrap is None}
    for size in dict.fromkeys(known.supplies[slug].sheet.upright for slug in sorted(papers)):
        shown = names.get(size, "").replace(" x ", " × ") or _shown(size, batch)
        yield _plain(shown), shown
    if any(cut.scrap for cut in needed_sheets(batch)):
        yield "scraps", "scraps"


def _shown(size: Size, batch: BatchFigures) -> str:
    unit = batch.project.unit
    return f"{show_size(size, unit)}{NBSP}{unit.word}"


def _plain(text: str) -> str:
    return text.replace(NBSP, " ").replace("×", "x")


def _paper(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    slugs = {slug for part in batch.project.parts for slug in part.papers}
    yield from _supplies(slugs | {cut.supply for cut in needed_sheets(batch)}, known)


def _supply(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    slugs = {use.supply for use in batch.project.uses}
    yield from _supplies(slugs - {slug for part in batch.project.parts for slug in part.papers}, known)


def _supplies(slugs: set[str], known: Known) -> Iterator[Choice]:
    """By name; the papers of a pad as their pad."""
    for slug in sorted({known.supplies[slug].pad or slug for slug in slugs}):
        if known.supplies[slug].named:
            yield slug, known.supplies[slug].name


def _colour(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    """The families of the colours that its papers have."""
    slugs = sorted({slug for part in batch.project.parts for slug in part.papers})
    for text in (colour for slug in slugs for colour in known.supplies[slug].colours):
        family = family_of(Colour.of(text)).value
        yield family, family


def _tool(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    for slug in sorted(tools_needed(batch.project)):
        yield slug, known.tools[slug].name.removeprefix("the ")


def _sheets(batch: BatchFigures) -> int | None:
    cuts = needed_sheets(batch)
    return sum(cut.count for cut in cuts if cut.scrap is None) if cuts else None


def _of_money(known: Known) -> Iterator[Rung]:
    """In tenths and halves of a unit and so on; of money without smaller pieces in whole units."""
    unit = 10**known.currency.digits
    for step in dict.fromkeys(unit * share // 100 for share in (10, 25, 50, 100, 200, 500, 1000, 2000)):
        if step:
            yield Rung(step - 1, known.currency.plain(step), f"under {known.currency.show_with_sign(step)}")


def _of_sheets(known: Known) -> Iterator[Rung]:
    for step in (1, 2, 3, 5, 8, 12, 20):
        yield Rung(step, str(step), f"up to {step}")


def _of_time(known: Known) -> Iterator[Rung]:
    for step in (30, 60, 90, 120, 180, 300, 600):
        yield Rung(step, str(step), f"up to {show_minutes(step)}")


def _today(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    """Private: an edition without a drawer says nothing of it."""
    one = batch.from_drawer
    if one and one.makes:
        yield "one", "at least one"
        if one.makes >= batch.project.begun:
            yield "again", "as many again"


def _envelope(batch: BatchFigures, known: Known) -> Iterator[Choice]:
    """Envelopes on hand that take one; without a drawer none is."""
    post, ledger = batch.by_post, known.figures.ledger
    if ledger is None or post is None or post.thickness is None or post.thickness.is_box:
        return
    clearance = known.figures.archive.postage.clearance
    for supply in known.supplies.values():
        envelope = own(supply)
        if envelope and takes(envelope.size, post.thickness, clearance) and _is_there(supply.slug, ledger):
            yield supply.slug, supply.name


def _is_there(slug: str, ledger: Ledger) -> bool:
    return any(one.holding.supply == slug and one.quantity >= 1 for one in ledger.balances)


STAGES: Final = {status.value: at for at, status in enumerate(reversed(Status))}

CHOOSINGS: Final = (
    Choosing("today", "From today’s drawer", _today),
    Choosing("thing", "Thing", _thing),
    Choosing("sheet", "Cut from", _sheet),
    Choosing("series", "Series", _series),
    Choosing("occasion", "Occasion", _occasion),
    Choosing("technique", "Technique", _technique),
    Choosing("paper", "Paper", _paper),
    Choosing("colour", "Colour", _colour),
    Choosing("supply", "Supply", _supply),
    Choosing("tool", "Tool", _tool),
    Choosing("size", "Finished size", _size),
    Choosing("envelope", "Fits an envelope on hand", _envelope),
    Choosing("age", "For whom", _age, rank=int),
    Choosing("year", "Year", _year, rank=lambda year: -int(year)),
    Choosing("status", "Status", _status, rank=STAGES.__getitem__),
)
LADDERS: Final = (
    Ladder("cost", "Cost of one", lambda batch: batch.one, _of_money),
    Ladder("sheets", "Sheets", _sheets, _of_sheets),
    Ladder("time", "Time", lambda batch: batch.project.minutes, _of_time),
)
