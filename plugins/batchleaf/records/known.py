"""The supplies that other records may name."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Set

from batchleaf.facts import Place, Supply
from batchleaf.measure.amounts import plural
from batchleaf.measure.lengths import Unit
from batchleaf.records.addresses import why_no_address
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean


class KnownSupplies:
    """Supplies by slug; ``lost`` are those whose own record could not be read.

    Naming a lost one is no second problem. ``all_lost``: a whole file of the
    drawer is unreadable, so nobody can say what was in it.
    """

    def __init__(self, supplies: Mapping[str, Supply], lost: Set[str], *, all_lost: bool) -> None:
        self._supplies, self._lost, self._all_lost = dict(supplies), lost, all_lost

    def all(self) -> tuple[Supply, ...]:
        """Every supply by slug, those that were taken as new with them."""
        return tuple(self._supplies[slug] for slug in sorted(self._supplies))

    def get(self, slug: str) -> Supply | None:
        """The supply called ``slug``, if it could be read."""
        return self._supplies.get(slug)

    def named(self, slug: str) -> Supply:
        """The supply called ``slug``, which :meth:`find` has found before."""
        return self._supplies[slug]

    def find_or_suppose(self, slug: str, unit: str, place: Place, report: Report) -> Supply | None:
        """As :meth:`find`, but what nothing in the drawer resembles is taken as new.

        It is told once, with the lines to paste into the drawer, and counted in ``unit``.
        """
        unknown = slug not in self._supplies and slug not in self._lost and not self._all_lost
        if not unknown or why_no_address(slug) or did_you_mean(slug, self._supplies):
            return self.find(slug, place, report)
        supply = _supposed(slug, unit, place)
        report.notice(
            place,
            f"“{slug}” is not in the drawer; it is taken as new, at no known price. To keep it there, add:",
            paste=f"supplies:\n  {slug}:\n    name: {supply.name}\n    kind: other\n    unit: {unit}",
        )
        self._supplies[slug] = supply
        return supply

    def find(
        self, slug: str, place: Place, report: Report, roles: Collection[str] | None = None
    ) -> Supply | None:
        """The supply called ``slug``, or ``None`` and (unless it is lost) a problem.

        ``roles``: the names that would have done as well, where a role could stand.
        """
        supply = self._supplies.get(slug)
        if supply is None and slug not in self._lost and not self._all_lost:
            hint = did_you_mean(slug, (*self._supplies, *(roles or ())))
            where = "not in the drawer" if roles is None else "neither a role under papers nor in the drawer"
            report.error(place, f"“{slug}” is {where}{hint}")
        return supply


def _supposed(slug: str, unit: str, place: Place) -> Supply:
    return Supply(
        slug=slug,
        name=slug.replace("-", " "),
        kind="not in the drawer yet",
        unit=unit,
        units=plural(unit),
        length_unit=Unit.MM,
        size=None,
        place=place,
    )
