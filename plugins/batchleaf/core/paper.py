"""Where the paper of a batch went: into finished makes, back into the drawer, or to waste.

used + kept + waste = all that was cut. Sheets count as bought: what is trimmed off is
waste, and so is what is cut off a part to give it its shape. What is cut by hand from
scraps, or bought ready-made, stands in neither account.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.facts import Project, Supply


@dataclass(frozen=True, slots=True)
class PaperUse:
    """Areas in mm². ``waste`` below nothing means that the record cannot be."""

    cut: Fraction
    used: Fraction
    kept: Fraction

    @property
    def waste(self) -> Fraction:
        """Trimmings, and all that was spoiled."""
        return self.cut - self.used - self.kept


def paper_use(project: Project, supplies: Mapping[str, Supply]) -> PaperUse:
    """Add up the areas of what was cut, of the parts of finished makes and of what was kept."""
    cut = used = kept = Fraction(0)
    for line in project.cut:
        sheet = line.scrap or supplies[line.supply].sheet
        cut += sheet.area * line.count
        kept += sum((piece.size.area * piece.count for piece in line.kept), Fraction(0))
    for part in project.cut_parts:
        used += part.area * part.each * project.finished
    return PaperUse(cut, used, kept)
