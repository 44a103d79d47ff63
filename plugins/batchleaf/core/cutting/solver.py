"""Linear programs with or without whole numbers, through HiGHS.

Nothing that comes back from here is trusted as it stands: whole solutions are
checked in integers, prices are rounded to integers before they bound anything.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum
from functools import cache
from math import inf
from typing import Any, Final

import numpy as np

BRANCH_WORK: Final = 40_000
"""Branches times columns after which a search in whole numbers is given up."""


SECONDS_A_COLUMN: Final = 0.002_5
"""About what a run in whole numbers takes before it first looks at the clock."""
_OPTIONS: Final = {
    "output_flag": False,
    "threads": 1,
    "random_seed": 0,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 0.0,
}
_LONG_LOOKS: Final = (
    "mip_heuristic_run_rins",
    "mip_heuristic_run_rens",
    "mip_heuristic_run_root_reduced_cost",
)
"""Searches of their own inside a search in whole numbers; they do not look at the clock."""


class Ending(Enum):
    """How a run ended."""

    BEST = "best"
    STOPPED = "stopped"
    IMPOSSIBLE = "impossible"


@dataclass(slots=True)
class Model:
    """Least Σ cost·x, with a lower and an upper end for each column and each row."""

    costs: list[float] = field(default_factory=list)
    lower: list[float] = field(default_factory=list)
    upper: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[Mapping[int, float]] = field(default_factory=list)
    row_lower: list[float] = field(default_factory=list)
    row_upper: list[float] = field(default_factory=list)

    def column(self, *, cost: float = 0, upper: float = inf, whole: bool = False) -> int:
        """Add a column from 0 to ``upper``; its number."""
        self.costs.append(cost)
        self.lower.append(0)
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.costs) - 1

    def row(self, entries: Mapping[int, float], *, lower: float = -inf, upper: float = inf) -> int:
        """Add a row Σ entry·x; its number."""
        self.rows.append(entries)
        self.row_lower.append(lower)
        self.row_upper.append(upper)
        return len(self.rows) - 1


@dataclass(frozen=True, slots=True)
class Answer:
    """``values`` by column (empty: none found), ``prices`` by row (only without whole columns).

    ``bound``: HiGHS finds no solution of less cost.
    """

    ending: Ending
    values: Sequence[float]
    prices: Sequence[float]
    bound: float


def solve(model: Model, *, nodes: int | None = None, seconds: float | None = None) -> Answer:
    """One run over ``model``, on one thread, always the same way; at most ``nodes`` branches.

    ``seconds`` ends it as well, a little late; what it has found until then is handed back.
    Where whole numbers are asked for in next to no time, it is not begun.
    """
    whole = any(model.whole)
    if whole and seconds is not None and seconds < len(model.costs) * SECONDS_A_COLUMN:
        return Answer(Ending.STOPPED, (), (), -inf)
    highs = _highs()
    highs.clearModel()
    for look in _LONG_LOOKS:
        highs.setOptionValue(look, seconds is None)
    # The solver's clock runs on from one model to the next; for whole numbers it has another, begun anew.
    before = 0.0 if whole else highs.getRunTime()
    highs.setOptionValue("time_limit", inf if seconds is None else before + seconds)
    highs.setOptionValue("mip_max_nodes", nodes or max(50, BRANCH_WORK // len(model.costs)))
    highs.passModel(_as_highs(model))
    highs.run()
    return _answer(highs, has_whole=whole)


def _answer(highs: Any, *, has_whole: bool) -> Answer:
    import highspy

    status = highs.getModelStatus()
    if status == highspy.HighsModelStatus.kOptimal:
        ending = Ending.BEST
    elif status == highspy.HighsModelStatus.kInfeasible:
        return Answer(Ending.IMPOSSIBLE, (), (), inf)
    else:
        ending = Ending.STOPPED
    info, solution = highs.getInfo(), highs.getSolution()
    found = info.primal_solution_status == 2  # a feasible point, in HiGHS's numbering
    bound = info.mip_dual_bound if has_whole else info.objective_function_value
    return Answer(
        ending,
        tuple(solution.col_value) if found else (),
        () if has_whole else tuple(solution.row_dual),
        bound,
    )


def _as_highs(model: Model) -> Any:
    import highspy

    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(model.costs), len(model.rows)
    lp.col_cost_ = np.array(model.costs, dtype=np.float64)
    lp.col_lower_ = np.array(model.lower, dtype=np.float64)
    lp.col_upper_ = np.array(model.upper, dtype=np.float64)
    lp.row_lower_ = np.array(model.row_lower, dtype=np.float64)
    lp.row_upper_ = np.array(model.row_upper, dtype=np.float64)
    starts = np.cumsum([0, *(len(row) for row in model.rows)])
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = starts.astype(np.int32)
    lp.a_matrix_.index_ = np.array([at for row in model.rows for at in row], dtype=np.int32)
    lp.a_matrix_.value_ = np.array([x for row in model.rows for x in row.values()], dtype=np.float64)
    if any(model.whole):
        kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
        lp.integrality_ = [kinds[whole] for whole in model.whole]
    return lp


@cache
def _highs() -> Any:
    """The one solver of this process; importing it takes a tenth of a second, so only when needed."""
    import highspy

    # The first one made writes two lines to standard output, whatever its options.
    sys.stdout.flush()
    kept = os.dup(1)
    nowhere = os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 1)
        highs: Any = highspy.Highs()
    finally:
        os.dup2(kept, 1)
        os.close(nowhere)
        os.close(kept)
    for option, value in _OPTIONS.items():
        highs.setOptionValue(option, value)
    return highs
