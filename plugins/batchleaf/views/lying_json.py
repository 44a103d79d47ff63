"""Where each part of a make lies, for programs."""

from __future__ import annotations

from typing import Any

from batchleaf.core.geometry.lying import Lying, MadeUp, put_together
from batchleaf.facts import Project


def lying_json(project: Project) -> list[dict[str, Any]]:
    """One for each copy of each part, the lowest first; ``left`` and ``top`` are those of its face."""
    made = put_together(project)
    return [_one(made, made.lying[index], project) for index in made.order] if made else []


def _one(made: MadeUp, one: Lying, project: Project) -> dict[str, Any]:
    unit, rect = project.unit.in_mm, one.rect
    return {
        "part": one.part.letter,
        "on": made.lying[one.on].part.letter if one.on is not None else one.panel.base,
        "face": one.panel.name,
        "left": str(rect.x / unit),
        "top": str(rect.y / unit),
        "width": str(rect.width / unit),
        "height": str(rect.height / unit),
    }
