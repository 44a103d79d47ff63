"""The supplies that other records may name."""

from __future__ import annotations

from collections.abc import Mapping, Set

from batchleaf.facts import Place, Supply
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean


class KnownSupplies:
    """Supplies by slug; ``lost`` are those whose own record could not be read.

    Naming a lost one is no second problem. ``all_lost``: a whole file of the
    drawer is unreadable, so nobody can say what was in it.
    """

    def __init__(self, supplies: Mapping[str, Supply], lost: Set[str], *, all_lost: bool) -> None:
        self._supplies, self._lost, self._all_lost = supplies, lost, all_lost

    def get(self, slug: str) -> Supply | None:
        """The supply called ``slug``, if it could be read."""
        return self._supplies.get(slug)

    def named(self, slug: str) -> Supply:
        """The supply called ``slug``, which :meth:`find` has found before."""
        return self._supplies[slug]

    def find(self, slug: str, place: Place, report: Report) -> Supply | None:
        """The supply called ``slug``, or ``None`` and (unless it is lost) a problem."""
        supply = self._supplies.get(slug)
        if supply is None and slug not in self._lost and not self._all_lost:
            hint = did_you_mean(slug, self._supplies)
            report.error(place, f"“{slug}” is not in the drawer{hint}")
        return supply
