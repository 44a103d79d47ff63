"""The usual cautions for what a batch uses; the label and local rules come first.

Common practice of the trade, said once a page.
"""

from __future__ import annotations

from collections.abc import Mapping

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
    planned = batch.cutting is not None and batch.cutting.plans
    if project.cut or planned or any("trimmer" in tools[slug].kind for slug in project.tools):
        found.append(
            "A trimmer’s blade is sharp: guard it, cut away from yourself, and keep it from children."
        )
    if any(word in kind for kind in kinds for word in ("ink", "adhesive", "paint", "spray")):
        found.append("Read what the label says of inks and adhesives, and follow it.")
    return tuple(found)
