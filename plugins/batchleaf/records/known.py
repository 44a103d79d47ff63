"""The supplies and tools that other records may name."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Set

from batchleaf.facts import Place, Supply, Tool
from batchleaf.measure.amounts import plural
from batchleaf.measure.lengths import Unit
from batchleaf.records.addresses import why_no_address
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean


def bare(name: str) -> str:
    """What is left of a name where large letters, hyphens, spaces and an s for several do not count.

    >>> bare("Chalk_Cards") == bare("chalk-card")
    True
    """
    letters = "".join(letter for letter in name.casefold() if letter.isalnum())
    several = re.sub(r"(?<=[sxz])es$|(?<=[cs]h)es$|(?<!s)s$", "", letters)
    return several or letters


def respelt(name: str, known: Iterable[str]) -> str:
    """The known name that ``name`` is another spelling of, else nothing."""
    wanted = bare(name)
    return next((one for one in sorted(known) if one != name and bare(one) == wanted), "")


class KnownTools:
    """Tools by slug; ``lost`` and ``all_lost`` as with :class:`KnownSupplies`.

    ``supplies``: the names of supplies, to tell that one of them is no tool.
    """

    def __init__(
        self, tools: Mapping[str, Tool], lost: Set[str], *, all_lost: bool, supplies: Collection[str] = ()
    ) -> None:
        self._tools, self._lost, self._all_lost = dict(tools), lost, all_lost
        self._supplies = supplies

    def all(self) -> tuple[Tool, ...]:
        """Every tool by slug."""
        return tuple(self._tools[slug] for slug in sorted(self._tools))

    def get(self, slug: str) -> Tool | None:
        """The tool called ``slug``, if it could be read."""
        return self._tools.get(slug)

    def find(self, slug: str, place: Place, report: Report) -> Tool | None:
        """The tool called ``slug``, or ``None`` and (unless it is lost) a problem."""
        tool = self._tools.get(slug)
        if tool is not None or self._all_lost or _is_lost(slug, self._lost):
            return tool
        if slug in self._supplies:
            report.error(place, f"“{slug}” is used up, so it is no tool; write it under supplies")
        elif own := respelt(slug, self._tools):
            report.error(place, f"“{slug}” is “{own}” on the bench; write it so")
        else:
            report.error(place, f"“{slug}” is not on the bench{did_you_mean(slug, self._tools)}")
        return None


class KnownSupplies:
    """Supplies by slug; ``lost`` are those whose own record could not be read.

    Naming a lost one is no second problem. ``all_lost``: a whole file of the
    drawer is unreadable, so nobody can say what was in it. ``tools``: the names
    of tools, to tell that one of them is no supply.
    """

    def __init__(
        self, supplies: Mapping[str, Supply], lost: Set[str], *, all_lost: bool, tools: Collection[str] = ()
    ) -> None:
        self._supplies, self._lost, self._all_lost = dict(supplies), lost, all_lost
        self._tools = tools

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
        if self._all_lost or self._resembles(slug) or why_no_address(slug):
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
        if supply is not None or self._all_lost or _is_lost(slug, self._lost):
            return supply
        report.error(place, self._why_not(slug, roles))
        return None

    def find_kept(self, slug: str, place: Place, report: Report) -> Supply | None:
        """As :meth:`find`, where something is bought or counted: nobody keeps an account of tools."""
        if slug in self._tools:
            report.error(
                place,
                f"“{slug}” is a tool of the bench, and only what is used up is bought and counted here;"
                " leave this line out",
            )
            return None
        return self.find(slug, place, report)

    def spelt_out(self, text: str) -> str:
        """A sentence where ``text`` begins with the name of a supply in words, else nothing."""
        words = text.split()
        for count in range(len(words), 1, -1):
            phrase = " ".join(words[:count])
            wanted = bare(phrase)
            for slug, supply in sorted(self._supplies.items()):
                if wanted in (bare(slug), bare(supply.name)):
                    return f"“{phrase}” is “{slug}” in the drawer; write it so"
        return ""

    def _why_not(self, slug: str, roles: Collection[str] | None) -> str:
        pad = self._supplies.get(re.sub(r"-[0-9]+$", "", slug))
        if pad and pad.designs:
            return f"“{pad.slug}” has papers 1 to {pad.designs}, so there is no “{slug}”"
        by_name = (one.slug for one in self._supplies.values() if bare(one.name) == bare(slug))
        if own := respelt(slug, self._supplies) or next(by_name, ""):
            return f"“{slug}” is “{own}” in the drawer; write it so"
        if tool := slug if slug in self._tools else respelt(slug, self._tools):
            return f"“{tool}” is a tool of the bench, so it is not used up; write it under tools"
        hint = did_you_mean(slug, (*self._supplies, *(roles or ())))
        where = "not in the drawer" if roles is None else "neither a role under papers nor in the drawer"
        return f"“{slug}” is {where}{hint}"

    def _resembles(self, slug: str) -> bool:
        """Whether the drawer or the bench holds it, or something that it may be a slip for."""
        if slug in self._supplies or slug in self._tools or _is_lost(slug, self._lost):
            return True
        known = (*self._supplies, *self._tools)
        return bool(respelt(slug, known) or did_you_mean(slug, self._supplies))


def _is_lost(slug: str, lost: Set[str]) -> bool:
    """Whether it, or the pad whose numbered paper it may be, could not be read."""
    pad = re.sub(r"-[0-9]+$", "", slug)
    return slug in lost or pad in lost or bool(respelt(slug, lost))


def _supposed(slug: str, unit: str, place: Place) -> Supply:
    return Supply(
        slug=slug,
        name=slug.replace("-", " "),
        kind="not in the drawer yet",
        unit=unit,
        units=plural(unit),
        length_unit=Unit.MM,
        size=None,
        supposed=True,
        place=place,
    )
