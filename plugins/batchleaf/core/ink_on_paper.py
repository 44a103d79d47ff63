"""How well what is stamped stands out from its paper: the contrast of WCAG 2.2, success criterion 1.4.3.

What is seen of a stamp is its ink, or the powder that is embossed over it. Nothing is told where the
ink, a colour or what lies behind is not known.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum, auto
from fractions import Fraction
from typing import Final

from batchleaf.facts import Part, Project, Supply, Tool, Work, WorkKind
from batchleaf.measure.colours import READABLE, READABLE_LARGE, Colour

Supplies = Mapping[str, Supply]
Tools = Mapping[str, Tool]
LARGE: Final = Fraction("25.4") * 18 / 72
"""18 point, in mm: a lower image has no large letters."""
_INK: Final = re.compile(r"\bink", re.IGNORECASE)
"""How the kind of an ink begins (common practice)."""


class Reading(Enum):
    """Whether words can be read."""

    WELL = auto()
    LARGE = auto()
    """Large ones can."""
    HARDLY = auto()


@dataclass(frozen=True, slots=True)
class Print:
    """The stamp on one part. ``at_least``: of a paper with several colours, from the nearest of them."""

    letter: str
    ink: Supply
    paper: Supply
    contrast: float
    reading: Reading
    at_least: bool

    @property
    def about(self) -> bool:
        """Whether a colour was picked, not given."""
        return self.ink.colours_are_about or self.paper.colours_are_about


def prints(project: Project, supplies: Supplies, tools: Tools) -> Iterator[Print]:
    """Each stamped part on each of its papers."""
    for part in project.parts:
        ink = _ink_on(part, project, supplies) if part.stamps else None
        if ink and ink.colours:
            yield from _prints(part, ink, [supplies[slug] for slug in dict.fromkeys(part.papers)], tools)


def _prints(part: Part, ink: Supply, papers: Iterable[Supply], tools: Tools) -> Iterator[Print]:
    for paper in papers:
        seen = paper.colours if paper.has_pattern(part.side) else paper.colours[:1]
        if seen and not paper.see_through:
            contrast = min(Colour.of(ink.colours[0]).contrast(Colour.of(colour)) for colour in seen)
            reading = _reading(contrast, may_be_large=_may_be_large(part, tools))
            yield Print(part.letter, ink, paper, contrast, reading, at_least=len(seen) > 1)


def _reading(contrast: float, *, may_be_large: bool) -> Reading:
    if contrast >= READABLE:
        return Reading.WELL
    return Reading.LARGE if contrast >= READABLE_LARGE and may_be_large else Reading.HARDLY


def _may_be_large(part: Part, tools: Tools) -> bool:
    """Whether an image of the part is high enough for large letters, or of a size that nobody tells."""
    images = [
        image
        for use in part.stamps
        for image in tools[use.tool].images
        if image.number in use.numbers or not use.numbers
    ]
    sizes = [image.size for image in images]
    return any(size is None or size.upright.width >= LARGE for size in sizes) or not sizes


def _ink_on(part: Part, project: Project, supplies: Supplies) -> Supply | None:
    """What is seen of its stamps; ``None`` where it is not known, or its ground is inked as well."""
    works = [work for work in project.works if part.letter in work.letters]
    if any(work.kind is WorkKind.INK for work in works):
        return None
    for kind in (WorkKind.EMBOSS, WorkKind.STAMP):
        if named := _worked_in(kind, works, supplies):
            return named[0] if len(named) == 1 else None
    inks = [supplies[slug] for slug in dict.fromkeys(use.supply for use in project.uses)]
    inks = [one for one in inks if _INK.search(one.kind)]
    return inks[0] if len(inks) == 1 else None


def _worked_in(kind: WorkKind, works: Iterable[Work], supplies: Supplies) -> list[Supply]:
    """The supplies with a colour that works of one kind name; a clear powder has none."""
    slugs = dict.fromkeys(work.supply for work in works if work.kind is kind and work.supply)
    return [supplies[slug] for slug in slugs if supplies[slug].colours or kind is WorkKind.STAMP]
