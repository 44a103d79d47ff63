"""The answer to a cutting job for programs.

Lengths are exact fractions in the job's unit as text (``"17/2"``), from the top left of the
sheet; x runs along the first measure of its size. Costs, values and bounds are decimal text.
A cut is ``along`` the measure that its setting is read on: along x the blade runs down the
sheet. ``at`` is its place on the sheet, ``setting`` its distance from the left or top of the
piece in hand, and ``keep`` says which of the two pieces holds parts: first, second or both.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from typing import Any, Final

from batchleaf.core.cutting.answer import Answer, AnsweredPlan
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.facts.jobs import AskedJob, CostQuestion, FillQuestion, JobQuestion
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect

Json = dict[str, Any]
PLACES: Final = 6
"""Decimals of a cost or a value that has no end; a bound is then cut off on its safe side."""


def job_json(asked: AskedJob, answer: Answer, seconds: float) -> Json:
    """The whole answer; ``seconds`` it took to plan."""
    lower = isinstance(asked.question, CostQuestion)
    return {
        "question": _word_of(asked.question),
        "makes": answer.makes,
        "cost": _decimal(answer.cost, down=False),
        "value": _decimal(answer.value, down=True),
        "bound": _decimal(answer.bound, down=lower),
        "proved": answer.proved,
        "reason": answer.reason,
        "seconds": round(seconds, 3),
        "spares": dict(answer.spares),
        "plans": [_plan(one, asked.unit) for one in answer.plans],
    }


def _word_of(question: JobQuestion) -> str:
    if isinstance(question, FillQuestion):
        return "fill"
    return "cost" if isinstance(question, CostQuestion) else "makes"


def _decimal(number: Fraction | None, *, down: bool) -> str | None:
    if number is None:
        return None
    steps = number * 10**PLACES
    whole, rest = divmod(floor(steps) if down else ceil(steps), 10**PLACES)
    return f"{whole}.{rest:0{PLACES}d}".rstrip("0").rstrip(".")


def _plan(one: AnsweredPlan, unit: Unit) -> Json:
    laid = one.laid
    return {
        "sheet": one.plan.stock,
        "times": one.plan.times,
        "parts": [{"part": placed.part, **_rect(placed.rect, unit)} for placed in laid.parts],
        "left": [_rect(rect, unit) for rect in laid.leftovers],
        "cuts": [_cut(cut, laid, unit) for cut in laid.cuts],
    }


def _cut(cut: CutStep, laid: LaidOut, unit: Unit) -> Json:
    start = cut.piece.x if cut.axis is Axis.X else cut.piece.y
    return {
        "n": cut.n,
        "piece": list(_rect(cut.piece, unit).values()),
        "along": cut.axis.value,
        "at": _length(start + cut.setting, unit),
        "setting": _length(cut.setting, unit),
        "keep": _kept(cut, laid),
    }


def _kept(cut: CutStep, laid: LaidOut) -> str:
    holds = [any(_lies_in(placed.rect, half) for placed in laid.parts) for half in (cut.first, cut.second)]
    return "both" if all(holds) else "first" if holds[0] else "second"


def _lies_in(rect: Rect, piece: Rect) -> bool:
    return (
        piece.x <= rect.x
        and piece.y <= rect.y
        and rect.x + rect.width <= piece.x + piece.width
        and rect.y + rect.height <= piece.y + piece.height
    )


def _rect(rect: Rect, unit: Unit) -> dict[str, str]:
    measures = zip("xywh", (rect.x, rect.y, rect.width, rect.height), strict=True)
    return {name: _length(length, unit) for name, length in measures}


def _length(length: Fraction, unit: Unit) -> str:
    return str(length / unit.in_mm)
