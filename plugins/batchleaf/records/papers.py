"""Which supplies are papers, and which of them fill a role."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from batchleaf.facts import Place, Supply
from batchleaf.records.grammar import read_names
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node, place_of
from batchleaf.records.report import Report
from batchleaf.records.written import ProjectWritten

Roles = Mapping[str, tuple[str, ...]]
"""Role → the supplies that fill it."""


class Papers:
    """Supplies that can be cut, found by name; what is neither one of them nor a role is told."""

    def __init__(self, known: KnownSupplies, report: Report) -> None:
        self._known, self.report = known, report

    def find(self, name: str, place: Place, roles: Collection[str] | None = None) -> Supply | None:
        """The paper called ``name``, or ``None`` and a problem; ``roles`` where one could stand instead."""
        supply = self._known.find(name, place, self.report, roles)
        if supply is not None and supply.size is None:
            self.report.error(
                place, f"“{name}” has no sheet size in the drawer, so nothing can be cut from it"
            )
        return supply

    def named_in(self, text: str, place: Place, roles: Collection[str] | None = None) -> tuple[str, ...]:
        """The papers that a text names, one or several."""
        joined = "-".join(text.split())
        if joined != text and self._known.get(joined):
            self.report.error(place, f"“{text}” is written “{joined}” here, as in the drawer")
            return ()
        names = read_names(text)
        if not names:
            self.report.error(place, f"“{text}” names no paper; write a supply, like oat-card")
        twice = [name for name in dict.fromkeys(names) if names.count(name) > 1]
        if twice:
            self.report.error(place, f"“{twice[0]}” is named twice here; once is enough")
            return ()
        found = (self.find(name, place, roles) for name in names)
        return tuple(supply.slug for supply in found if supply)

    def let_turn(self, papers: Iterable[str]) -> bool:
        """A part may be turned only if each paper it may come from allows it."""
        found = (self._known.get(slug) for slug in papers)
        return all(supply.turns for supply in found if supply)


def read_roles(node: Node, written: ProjectWritten, papers: Papers) -> Roles:
    """The papers of a project by role."""
    return {
        role: papers.named_in(text, place_of(node, ("papers", role))) for role, text in written.papers.items()
    }
