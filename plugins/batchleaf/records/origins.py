"""Where each part comes from: sheets, scraps that nobody measured, or bought as it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from batchleaf.facts import Origin, Part, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size
from batchleaf.records.made_of import PartLine
from batchleaf.records.papers import NOTHING, Papers, Source
from batchleaf.records.report import Report


class Origins:
    """Remembers what the parts before came from, for those that say ``as C``."""

    def __init__(self, report: Report) -> None:
        self._report = report
        self._sources: dict[str, tuple[Source, Origin]] = {}

    def remember(self, part: Part, source: Source) -> None:
        """Keep what ``part`` came from."""
        self._sources[part.letter] = source, part.origin

    def of(self, line: PartLine, papers: Papers, may_be: Callable[[str], bool]) -> tuple[Source, Origin]:
        """The supplies of a part, and how it comes from them; ``may_be``: is a letter there before it?"""
        written = line.written
        if written.paper and written.ready:
            sentence = "both paper and ready are given; write ready alone for what is bought as it is"
            self._report.error(line.at("ready"), sentence)
            return NOTHING, Origin.CUT
        if written.ready:
            return self._ready(written.ready, line, papers), Origin.READY
        if written.paper and written.paper.startswith("as "):
            return self._as_before(written.paper.removeprefix("as ").strip(), line, may_be)
        if written.paper:
            source = papers.source(written.paper, line.at("paper")) or NOTHING
        else:
            source = self._named_like(line, papers)
        return source, origin_of(source, papers)

    def _named_like(self, line: PartLine, papers: Papers) -> Source:
        source = None if line.mended else papers.role(line.name)
        if source is None and not line.mended:
            name = line.name
            self._report.error(
                line.place, f"no paper is named for this part; write paper, or “{name}” under papers"
            )
        return source or NOTHING

    def _as_before(self, letter: str, line: PartLine, may_be: Callable[[str], bool]) -> tuple[Source, Origin]:
        if letter not in self._sources and not may_be(letter):
            self._report.error(
                line.at("paper"), f"there is no part {letter} before this one to share a paper with"
            )
        return self._sources.get(letter, (NOTHING, Origin.CUT))

    def _ready(self, text: str, line: PartLine, papers: Papers) -> Source:
        place = line.at("ready")
        source = papers.source(text, place) or NOTHING
        if source.by_hand:
            self._report.error(place, f"what is ready is not cut by hand; write “{text}” under paper")
        for supply in papers.supplies(source):
            if is_measured(supply.unit):
                self._report.error(
                    place, f"“{supply.slug}” is kept in {supply.units}, and what is ready is counted"
                )
        return replace(source, by_hand=False)


def origin_of(source: Source, papers: Papers) -> Origin:
    """How a part comes from its papers; what is cut needs sheets."""
    if source.by_hand:
        return Origin.BY_HAND
    papers.can_be_cut(source.papers, source.place)
    return Origin.CUT


def own_size(supplies: tuple[Supply, ...]) -> Size | None:
    """The size of a ready-made part whose record says none."""
    sizes = {supply.size for supply in supplies}
    if not supplies:
        return None
    if len(sizes) > 1:
        names = " and ".join(supply.slug for supply in supplies)
        raise MeasureError(f"{names} differ in size; write the size of this part")
    size = sizes.pop()
    if size is None:
        raise MeasureError(f"“{supplies[0].slug}” has no size in the drawer; write the size of this part")
    return size
