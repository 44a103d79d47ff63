"""What is used and was never seen to come in: the sentence that says what would explain it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.movements import Holding, Moment
from batchleaf.facts import Archive, Place, Problem, Project, Purchase, Supply, Weight
from batchleaf.measure.display import show_number, show_size
from batchleaf.measure.lengths import Size, Unit


@dataclass(frozen=True, slots=True)
class Wanted:
    """So many of a supply, or of its odd pieces of one size, of which fewer are ``there``."""

    supply: Supply
    piece: Size | None
    quantity: Fraction
    there: Fraction
    unit: Unit
    """That of the record which takes them."""

    @property
    def holding(self) -> Holding:
        """What is taken."""
        return Holding(self.supply.slug, self.piece)

    def said(self, quantity: Fraction) -> str:
        """``3 sheets``, ``2 of 60 × 60 mm``."""
        if self.piece is not None:
            return f"{show_number(quantity)} of {show_size(self.piece, self.unit)} {self.unit.value}"
        return f"{show_number(quantity)} {self.supply.name_of_unit(quantity)}"


class Comings:
    """What came in of each holding by the records, to look up what came too late."""

    def __init__(self, archive: Archive) -> None:
        pads = {supply.slug: supply.pad or supply.slug for supply in archive.supplies}
        self._pads = pads
        self._bought: dict[str, list[Purchase]] = {}
        self._kept: dict[Holding, list[Project]] = {}
        for purchase in archive.purchases:
            self._bought.setdefault(pads[purchase.supply], []).append(purchase)
        for project in archive.projects:
            for cut in project.cut if project.status.moves_the_drawer else ():
                for piece in cut.kept:
                    self._kept.setdefault(Holding(cut.supply, piece.size), []).append(project)

    def later(self, holding: Holding, moment: Moment) -> str:
        """What came in next after ``moment`` and would explain it with an earlier day, if anything did."""
        if holding.piece is None:
            bought = min(self._bought_later(holding, moment), default=None)
            return f"the order of {_told(*bought)} came before that day" if bought else ""
        kept = min(self._kept_later(holding, moment), default=None)
        return f"the batch of {_told(*kept)}, which keeps such a piece, came before" if kept else ""

    def _bought_later(self, holding: Holding, moment: Moment) -> Iterator[tuple[str, Place]]:
        for one in self._bought.get(self._pads[holding.supply], ()):
            if one.date > moment.date:
                yield one.date.isoformat(), one.place

    def _kept_later(self, holding: Holding, moment: Moment) -> Iterator[tuple[str, Place]]:
        for one in self._kept.get(holding, ()):
            if one.date >= moment.date and one.slug != moment.project:
                yield one.date.isoformat(), one.place


def _told(day: str, place: Place) -> str:
    return f"{day} ({place.file}, line {place.line})"


def shortage(wanted: Wanted, moment: Moment, comings: Comings) -> Problem:
    """A notice where it is taken: how much is missing, and which records would explain it."""
    supply, missing = wanted.supply, wanted.quantity - wanted.there
    has = "the pad has" if supply.pad and wanted.piece is None else "the drawer has"
    of = " of it" if supply.pad and wanted.piece is None else ""
    later = comings.later(wanted.holding, moment)
    sentence = (
        f"this takes {wanted.said(wanted.quantity)} of {supply.name}, and on {moment.date.isoformat()}"
        f" {has} {show_number(wanted.there)}{of}; a purchase, an opening or a count of"
        f" {show_number(missing)} more is missing from the records"
    )
    return Problem(moment.place, f"{sentence}, or {later}" if later else sentence, Weight.NOTICE)
