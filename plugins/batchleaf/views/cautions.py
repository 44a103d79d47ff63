"""The usual cautions for what a batch uses; the label and local rules come first.

Said once a page, the most serious first. What is common practice of the trade is marked so; small
parts: US 16 CFR 1501 and EN 71-1; button cells: 16 CFR 1263; magnets: 16 CFR 1262; what is flammable,
and the statement on the label of art materials: 16 CFR 1500.14.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Origin, Supply, Tool

SMALL: Final = ("bead", "brad", "gem", "eyelet", "charm", "button", "sequin")
THREE_YEARS: Final = 36
"""In months: below it small parts are told of with the age."""
_SWALLOWED: Final = (
    (("button cell", "coin cell", "battery"),
     ("A button cell that is swallowed does harm within hours: only in a compartment that a child cannot"
      " open, and spare ones out of reach.")),
    (("magnet",), "Loose magnets are dangerous to swallow: keep them out of the reach of children."),
)  # fmt: skip
_FLAMES: Final = (
    (("candle", "tea light", "tealight", "lantern"),
     "Keep paper away from a flame, and put a small electric light into what is to shine."),
    (("spray", "solvent", "alcohol"),
     "Sprays, solvents and alcohol inks catch fire: out of doors or well aired, and no flame near."),
)  # fmt: skip
"""Words of the kinds of supplies, and what is said of them. Flames: common practice."""
_HEAT: Final = (
    "A heat tool burns, and stays hot when it is off: keep fingers and film away, work on what takes heat,"
    " with no scraps about and the room aired, and let it cool where nothing catches fire."
)
"""Common practice."""
_LABEL: Final = "Read what the label says of inks and adhesives, and follow it; local rules come first."


def cautions_for(
    batch: BatchFigures, supplies: Mapping[str, Supply], tools: Mapping[str, Tool]
) -> tuple[str, ...]:
    """One sentence for each hazard that the record shows."""
    project = batch.project
    ready = {slug for part in project.parts if part.origin is Origin.READY for slug in part.papers}
    kinds = {supplies[slug].kind for slug in ready.union(use.supply for use in project.uses)}
    bench = [tools[slug].kind for slug in project.tools]
    found = [
        *_of_kinds(_SWALLOWED, kinds),
        _for_the_youngest(project.youngest, small=_any_of(SMALL, kinds)),
        *_of_kinds(_FLAMES, kinds),
        _blades(batch, bench),
        _HEAT if _any_of(("heat", "iron", "glue gun", "laminator"), bench) else "",
        _LABEL if _any_of(("ink", "adhesive", "paint", "spray"), kinds) else "",
    ]
    return tuple(filter(None, found))


def _of_kinds(hazards: Sequence[tuple[Sequence[str], str]], kinds: Iterable[str]) -> Iterator[str]:
    yield from (sentence for words, sentence in hazards if _any_of(words, kinds))


def _any_of(words: Sequence[str], kinds: Iterable[str]) -> bool:
    return any(word in kind for kind in kinds for word in words)


def _for_the_youngest(months: int | None, *, small: bool) -> str:
    """Small parts; for whom is too young even what may come loose, or go round the neck (common practice)."""
    young = months is not None and months < THREE_YEARS
    if small:
        whose = "It is for somebody under three, and it has small parts:" if young else "Small parts:"
        return f"{whose} not for children under three."
    if young:
        return (
            "It is for somebody under three: nothing small may come loose, and no cord or ribbon be long"
            " enough to go round a neck."
        )
    return ""


def _blades(batch: BatchFigures, bench: Sequence[str]) -> str:
    """The blades there are to guard, by the sheets and the kinds of tools; nothing where nobody cuts."""
    knife = _any_of(("knife", "scalpel", "rotary"), bench)
    planned = batch.cutting is not None and batch.cutting.plans
    trimmer = batch.project.cut or planned or _any_of(("trimmer", "guillotine"), bench)
    if knife and trimmer:
        return (
            "Blades are sharp: guard trimmer and knife, cut away from yourself, and keep both from children."
        )
    if not (knife or trimmer):
        return ""
    whose = "knife" if knife else "trimmer"
    return f"A {whose}’s blade is sharp: guard it, cut away from yourself, and keep it from children."
