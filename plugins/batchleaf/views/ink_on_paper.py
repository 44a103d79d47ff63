"""Whether words that are stamped can be read, as the notes beside the parts tell it."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor
from typing import Final

from batchleaf.core.ink_on_paper import Print, Reading, Supplies, Tools, prints
from batchleaf.facts import Project
from batchleaf.views.links import together
from batchleaf.views.words import NBSP, listed

_READ: Final = {
    Reading.WELL: "words in it can be read",
    Reading.LARGE: f"words in it can be read where they are large, 18{NBSP}point and more",
    Reading.HARDLY: "words in it are hard to read",
}


def ink_notes(project: Project, supplies: Supplies, tools: Tools) -> Iterator[str]:
    """``D: hedge ink stands out from oat card by 6.6 to 1; words in it can be read.``"""
    alike: dict[tuple[str, Reading], list[Print]] = {}
    for one in prints(project, supplies, tools):
        alike.setdefault((one.letter, one.reading), []).append(one)
    for (letter, reading), mine in alike.items():
        papers = listed([paper.name for paper in together(one.paper for one in mine)], last="or")
        yield f"{letter}: {mine[0].ink.name} stands out from {papers} by {_contrast(mine)}; {_READ[reading]}."


def _contrast(alike: list[Print]) -> str:
    """``6.6 to 1``, never rounded up, since a limit is met or is not."""
    least = min(alike, key=lambda one: one.contrast)
    differ = any(one.at_least or one.paper.slug != least.paper.slug for one in alike)
    rough = "about " if any(one.about for one in alike) else ""
    return f"{rough}{'at least ' if differ else ''}{floor(least.contrast * 10) / 10:.1f} to 1"
