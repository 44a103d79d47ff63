"""The usual cautions for what a batch uses; the label and local rules come first.

Common practice of the trade, said once a page.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Origin, Supply, Tool


def cautions_for(
    batch: BatchFigures, supplies: Mapping[str, Supply], tools: Mapping[str, Tool]
) -> tuple[str, ...]:
    """One sentence for each hazard that the record shows, the most serious first."""
    found = []
    project = batch.project
    ready = {slug for part in project.parts if part.origin is Origin.READY for slug in part.papers}
    kinds = {supplies[slug].kind for slug in ready.union(use.supply for use in project.uses)}
    if any(word in kind for kind in kinds for word in ("bead", "brad", "gem", "eyelet", "charm")):
        found.append("Small parts: not for children under three.")
    bench = [tools[slug].kind for slug in project.tools]
    if blades := _blades(batch, bench):
        found.append(blades)
    if any(word in kind for kind in bench for word in ("heat", "iron", "glue gun")):
        found.append(
            "A heat tool burns, and stays hot when it is off: keep fingers and film away,"
            " and let it cool where nothing catches fire."
        )
    if any(word in kind for kind in kinds for word in ("ink", "adhesive", "paint", "spray")):
        found.append("Read what the label says of inks and adhesives, and follow it.")
    return tuple(found)


def _blades(batch: BatchFigures, bench: Sequence[str]) -> str:
    """The blades there are to guard, by the sheets and the kinds of tools; nothing where nobody cuts."""
    knife = any("knife" in kind or "scalpel" in kind for kind in bench)
    planned = batch.cutting is not None and batch.cutting.plans
    trimmer = batch.project.cut or planned or any("trimmer" in kind for kind in bench)
    if knife and trimmer:
        return (
            "Blades are sharp: guard trimmer and knife, cut away from yourself, and keep both from children."
        )
    if not (knife or trimmer):
        return ""
    whose = "knife" if knife else "trimmer"
    return f"A {whose}’s blade is sharp: guard it, cut away from yourself, and keep it from children."
