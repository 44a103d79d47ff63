"""How long works take with hands on them: an estimate, from figures of the house.

Nothing here is measured at anybody's bench. A tool may say how long one stroke with it takes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.bench_limits import Tools
from batchleaf.core.cutting.layout import lay_out, settings_of
from batchleaf.core.dealing import Supplies
from batchleaf.facts import Project, Tool, WorkKind

STROKE_SECONDS: Final[Mapping[WorkKind, int]] = {
    WorkKind.DIE_CUT: 45,
    WorkKind.INK: 60,
    WorkKind.STAMP: 15,
    WorkKind.EMBOSS: 40,
    WorkKind.PUNCH: 5,
    WorkKind.ROUND: 5,
    WorkKind.SCORE: 10,
    WorkKind.FOLD: 8,
}
"""Seconds for one stroke, from taking up a piece to laying it down: figures of the house."""
CUT_SECONDS: Final = 8
"""For one cut through what the trimmer takes at once: a figure of the house."""
SETTING_SECONDS: Final = 15
"""For setting the stop: a figure of the house."""


def seconds_of(kind: WorkKind, tool: Tool | None, strokes: int) -> int:
    """Strokes times what one takes."""
    own = tool.stroke if tool else None
    return strokes * (own or STROKE_SECONDS[kind])


@dataclass(frozen=True, slots=True)
class CuttingTime:
    """``cuts``: with as many sheets at once as the trimmer takes; ``settings``: how often its stop is set."""

    cuts: int
    settings: int
    seconds: int


def cutting_time(
    project: Project, cutting: Cutting | None, supplies: Supplies, tools: Tools
) -> CuttingTime | None:
    """By the cuts and the settings of the plans; ``None`` where there are none."""
    if cutting is None or not cutting.plans:
        return None
    trimmers = [tools[slug] for slug in project.tools if "trimmer" in tools[slug].kind]
    cuts = settings = 0
    for plan in cutting.plans:
        laid = lay_out(plan, cutting.job)
        grammage = supplies[cutting.sheets[plan.stock].supply].grammage
        at_once = max((tool.takes_at_once(grammage) for tool in trimmers), default=1)
        cuts += len(laid.cuts) * -(-plan.times // at_once)
        settings += settings_of(laid)
    one = _own_stroke(trimmers) or CUT_SECONDS
    return CuttingTime(cuts, settings, cuts * one + settings * SETTING_SECONDS)


def _own_stroke(trimmers: Sequence[Tool]) -> int | None:
    return trimmers[0].stroke if len(trimmers) == 1 else None
