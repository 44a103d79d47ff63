"""Pads by their papers: how many sheets of each number are there.

The sheets of a pad lie in one pile and have one price; which of them a batch
took is kept beside it. For each pad, at every moment,

    sheets in the pile = sheets of each number + unnamed sheets

where unnamed are those of which no record says the number: what came in other
than as whole pads, less what was taken or found missing without a number.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from batchleaf.core.movements import Moment, PaperMovement
from batchleaf.facts import Supply


class PadBook:
    """The numbered papers of all pads, as the records are run through."""

    def __init__(self, supplies: Iterable[Supply]) -> None:
        self._supplies = {supply.slug: supply for supply in supplies}
        papers = [supply for supply in self._supplies.values() if supply.pad]
        self._papers: dict[str, list[str]] = {paper.pad: [] for paper in papers}
        for paper in papers:
            self._papers[paper.pad].append(paper.slug)
        self._of = {paper.slug: Fraction(0) for paper in papers}
        self._unnamed = dict.fromkeys(self._papers, Fraction(0))
        self.movements: list[PaperMovement] = []

    def papers(self) -> Mapping[str, Fraction]:
        """Sheets of each number; never more than the pad has."""
        return {slug: self.on_hand(slug) for slug in self._of}

    def unnamed(self) -> Mapping[str, Fraction]:
        """Sheets of each pad of which no record says the number."""
        return dict(self._unnamed)

    def on_hand(self, paper: str) -> Fraction:
        """Sheets of one number; never more than the pad has."""
        return min(self._of[paper], self._total(self._supplies[paper].pad))

    def most(self, paper: str) -> Fraction:
        """As many sheets of one number as there can be: the unnamed ones may all be of it."""
        pad = self._supplies[paper].pad
        return min(self._of[paper] + max(self._unnamed[pad], Fraction(0)), self._total(pad))

    def put(self, moment: Moment, slug: str, sheets: Fraction) -> None:
        """Sheets come in: whole pads by number, or of one number, or nobody knows of which."""
        pad = self._supplies[slug]
        if slug in self._of:
            self._change(moment, slug, sheets)
        elif slug in self._papers and sheets % pad.pad_sheets == 0:
            for paper in self._papers[slug]:
                self._change(moment, paper, pad.copies * sheets / pad.pad_sheets)
        elif slug in self._papers:
            self._unnamed[slug] += sheets

    def take(self, moment: Moment, unexplained: Moment, slug: str, sheets: Fraction) -> None:
        """Sheets that are in the pile go out.

        What is not known to be there of a number must have been among the unnamed.
        """
        if slug in self._of:
            self._name(unexplained, slug, max(sheets - self._of[slug], Fraction(0)))
            self._change(moment, slug, -sheets)
        elif slug in self._papers:
            self._unnamed[slug] -= sheets
        self._clear_if_empty(moment, self._supplies[slug].pad or slug)

    def set_total(self, moment: Moment, pad: str, change: Fraction) -> None:
        """A count of the whole pad moves its pile by ``change``."""
        if pad in self._papers:
            self._unnamed[pad] += change
            self._clear_if_empty(moment, pad)

    def set_paper(self, moment: Moment, paper: str, found: Fraction) -> Fraction:
        """A count of one number; returns by how much it moves the pile of the pad.

        Sheets that were taken, or came in, without a number explain what differs as
        far as they reach; the pile moves by the rest.
        """
        pad = self._supplies[paper].pad
        change = found - self._of[paper]
        unnamed = self._unnamed[pad]
        explained = (
            max(change, min(unnamed, Fraction(0))) if change < 0 else min(change, max(unnamed, Fraction(0)))
        )
        before = self._total(pad)
        self._name(moment, paper, explained)
        self._change(moment, paper, change - explained)
        lacking = max(found - self._total(pad), Fraction(0))
        self._unnamed[pad] += lacking
        self._clear_if_empty(moment, pad)
        return self._total(pad) - before

    def _name(self, moment: Moment, paper: str, sheets: Fraction) -> None:
        """So many of the unnamed sheets turn out to be of one number."""
        self._unnamed[self._supplies[paper].pad] -= sheets
        self._change(moment, paper, sheets)

    def _change(self, moment: Moment, paper: str, sheets: Fraction) -> None:
        if sheets:
            self._of[paper] += sheets
            self.movements.append(PaperMovement(moment, paper, sheets, self._of[paper]))

    def _total(self, pad: str) -> Fraction:
        return sum((self._of[paper] for paper in self._papers[pad]), self._unnamed[pad])

    def _clear_if_empty(self, moment: Moment, pad: str) -> None:
        """In an empty pad there is none of any number."""
        if pad in self._papers and not self._total(pad):
            for paper in self._papers[pad]:
                self._name(moment, paper, -self._of[paper])
