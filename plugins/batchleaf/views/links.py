"""Where the names of supplies and tools lead."""

from __future__ import annotations

from batchleaf.facts import Supply, Tool
from batchleaf.views import site_map
from batchleaf.views.pages import Link


def supply_named(supply: Supply, here: str) -> str | Link:
    """A supply by its name, which leads to its page where it has one."""
    return supply_link(supply, here) if supply.named else supply.name


def supply_link(supply: Supply, here: str) -> Link:
    """The way to the page of a supply; a numbered paper leads to that of its pad."""
    return Link(supply.name, site_map.href(here, site_map.item(supply.pad or supply.slug)))


def tool_named(tool: Tool, here: str) -> str | Link:
    """A tool by its name; ``here`` is the page that names it."""
    return tool.name
