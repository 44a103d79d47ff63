"""Which names can be an address, on the web and as a folder on every system."""

from __future__ import annotations

import re
from typing import Final

SLUG: Final = r"^[a-z0-9]+(-[a-z0-9]+)*$"
"""Small letters, figures and single hyphens."""
DEVICES: Final = frozenset(
    {"con", "prn", "aux", "nul"} | {f"{port}{number}" for port in ("com", "lpt") for number in range(1, 10)}
)
"""Names that Windows keeps for devices, whatever their ending."""
DESIGNS: Final = "designs"
OWN_FOLDERS: Final = frozenset({"inventory", DESIGNS})
"""Folders below ``projects/`` that hold no batch."""


def why_no_address(name: str) -> str:
    """A sentence where ``name`` cannot be an address, else nothing."""
    if not re.fullmatch(SLUG, name):
        return f"“{name}” cannot be an address; small letters, figures and single hyphens can"
    if name in DEVICES:
        return f"“{name}” is a name that Windows keeps for a device; choose another"
    return ""
