"""How supplies and tools are named, and where their names lead."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from urllib.parse import urlsplit

from batchleaf.facts import Supply, Tool
from batchleaf.views import site_map
from batchleaf.views.disclosure import tie_of
from batchleaf.views.pages import Link
from batchleaf.views.words import listed


def supply_named(supply: Supply, here: str) -> str | Link:
    """A supply by its name, which leads to its page where it has one."""
    return supply_link(supply, here) if supply.named else supply.name


def supply_link(supply: Supply, here: str) -> Link:
    """The way to the page of a supply; a numbered paper leads to that of its pad."""
    return Link(supply.name, site_map.href(here, site_map.item(supply.pad or supply.slug)))


def elsewhere(thing: Supply | Tool) -> Link | None:
    """Where a thing is found, under the name of the host that it leads to; nothing where nobody says."""
    if not thing.link:
        return None
    return Link(urlsplit(thing.link).netloc or thing.link, thing.link, tie_of(thing))


def together(papers: Iterable[Supply], last: str = "and") -> tuple[Supply, ...]:
    """Supplies to be named in a row; the numbered papers of one pad as one, ``shoal pad 1, 4 and 7``.

    These stand last, so that the row does not go on after an "and". Papers that go by
    their kind have a number of that kind, and stay apart.
    """
    groups: dict[tuple[str, str], list[Supply]] = {}
    for paper in papers:
        groups.setdefault((paper.pad, "" if paper.pad and paper.named else paper.slug), []).append(paper)
    in_a_row = sorted(groups.values(), key=lambda group: len(group) > 1)
    return tuple(_as_one(group, last) for group in in_a_row)


def _as_one(papers: list[Supply], last: str) -> Supply:
    first = papers[0]
    numbers = [str(number) for number in sorted({paper.number for paper in papers})]
    pad = first.name.removesuffix(f" {first.number}")
    return replace(first, name=f"{pad} {listed(numbers, last)}") if len(numbers) > 1 else first


def tool_named(tool: Tool, here: str) -> str | Link:
    """A tool by its name; ``here`` is the page that names it."""
    return tool.name
