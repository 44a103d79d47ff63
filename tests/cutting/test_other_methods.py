"""The fewest sheets against two methods that share nothing with the search."""

from __future__ import annotations

import random
from fractions import Fraction
from typing import Any

import pytest

from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.verify import cost_faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.jobs import mm
from cutting.subsets import Piece, fewest_by_subsets

WIDTH, HEIGHT = 40, 30


def ten_pieces(seed: int) -> tuple[Piece, ...]:
    """Ten parts of ten kinds, up to half a sheet each."""
    dice = random.Random(seed)
    return tuple(Piece(dice.randint(5, 24), dice.randint(5, 20), dice.random() < 0.5) for _ in range(10))


def fewest(pieces: tuple[Piece, ...]) -> int:
    """The sheets of the plan, which is sound and proved."""
    parts = tuple(
        PartKind(f"p{at}", mm(piece.width, piece.height), turns=piece.turns)
        for at, piece in enumerate(pieces)
    )
    job = Job((Stock("card", mm(WIDTH, HEIGHT)),), parts)
    plan = least_cost(job, 1)
    assert cost_faults(job, plan) == ()
    assert plan.proved
    return int(plan.cost or Fraction(0))


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(40))
def test_ten_parts_take_as_many_sheets_as_by_subsets(seed: int) -> None:
    """All ways of joining parts two and two, to the last."""
    pieces = ten_pieces(seed)
    assert fewest(pieces) == fewest_by_subsets(pieces, WIDTH, HEIGHT)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(25))
def test_no_free_placement_takes_more_sheets(seed: int) -> None:
    """A constraint solver, which knows nothing of cuts, finds at most as many sheets wherever it is done."""
    solver = pytest.importorskip("ortools.sat.python.cp_model", reason="OR-Tools is not installed")
    pieces = ten_pieces(seed)
    ours = fewest(pieces)
    model = solver.CpModel()
    _lay_freely(model, pieces, ours)
    runs = solver.CpSolver()
    runs.parameters.num_workers = 1
    runs.parameters.max_deterministic_time = 20
    ending = runs.solve(model)
    assert ending != solver.INFEASIBLE
    if ending == solver.OPTIMAL:
        assert runs.objective_value <= ours


def test_subsets_know_the_hole_between_four_strips() -> None:
    """5 x 5, four 3 x 2 and one 1 x 1: two sheets by through cuts (by definition)."""
    pieces = [Piece(3, 2, turns=True)] * 4 + [Piece(1, 1, turns=False)]
    assert [fewest_by_subsets(pieces, 5, 5), fewest_by_subsets(pieces, 6, 5)] == [2, 1]


def _lay_freely(model: Any, pieces: tuple[Piece, ...], most: int) -> None:
    """Any places on at most so many sheets, which lie beside one another; as few as there can be."""
    across, down = [], []
    used = model.new_int_var(1, most, "used")
    for at, piece in enumerate(pieces):
        turned = model.new_bool_var(f"turned {at}")
        if not piece.turns:
            model.add(turned == 0)
        width = piece.width + (piece.height - piece.width) * turned
        height = piece.height + (piece.width - piece.height) * turned
        sheet = model.new_int_var(0, most - 1, f"sheet {at}")
        x, y = model.new_int_var(0, WIDTH, f"x {at}"), model.new_int_var(0, HEIGHT, f"y {at}")
        ends = model.new_int_var(0, WIDTH * most, f"right {at}"), model.new_int_var(0, HEIGHT, f"low {at}")
        model.add(x + width <= WIDTH)
        model.add(sheet < used)
        left = model.new_int_var(0, WIDTH * most, f"left {at}")
        model.add(left == sheet * WIDTH + x)
        across.append(model.new_interval_var(left, width, ends[0], f"across {at}"))
        down.append(model.new_interval_var(y, height, ends[1], f"down {at}"))
    model.add_no_overlap_2d(across, down)
    model.minimize(used)
