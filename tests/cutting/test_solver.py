"""The solver keeps quiet and small programs come out right."""

from __future__ import annotations

import random
import subprocess
import sys

import pytest

from batchleaf.core.cutting.solver import Ending, Model, solve
from cutting.work_clock import CALLS_A_SECOND, by_work

ASK = """
from fractions import Fraction
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.measure.lengths import Size
size = lambda w, h: Size(Fraction(w), Fraction(h))
most_makes(Job((Stock("a", size(9, 9), 2),), (PartKind("A", size(4, 3)), PartKind("B", size(2, 2)))))
"""


def knapsack() -> Model:
    """Most of 3x + 4y under 2x + 3y <= 7, both at most 2."""
    model = Model()
    x = model.column(cost=-3, upper=2, whole=True)
    y = model.column(cost=-4, upper=2, whole=True)
    model.row({x: 2, y: 3}, upper=7)
    return model


def split_in_halves() -> Model:
    """Thirty things, each of four weights, in two heaps that are equal in all four: hardly ever settled.

    After Cornuéjols and Dawande, "A class of hard small 0-1 programs", INFORMS J. Comput. 11 (1999) 205-210.
    """
    dice = random.Random(3)
    model = Model()
    things = [model.column(upper=1, whole=True) for _ in range(30)]
    for _ in range(4):
        weights = [dice.randint(1, 99) for _ in things]
        over, under = model.column(cost=1), model.column(cost=1)
        half = sum(weights) // 2
        model.row({**dict(zip(things, weights, strict=True)), over: -1, under: 1}, lower=half, upper=half)
    return model


def test_nothing_is_written_to_standard_output() -> None:
    """A plan asked for in a fresh process leaves standard output to its caller."""
    done = subprocess.run([sys.executable, "-c", ASK], capture_output=True, text=True, check=True)
    assert (done.stdout, done.stderr) == ("", "")


def test_whole_numbers_are_chosen() -> None:
    """Two of the first and one of the second: 10."""
    answer = solve(knapsack())
    assert (answer.ending, [round(value) for value in answer.values]) == (Ending.BEST, [2, 1])
    assert answer.bound == pytest.approx(-10)


def test_what_cannot_be_is_said_to_be_impossible() -> None:
    """X at most 2 and at least 3."""
    model = Model()
    x = model.column(upper=2, whole=True)
    model.row({x: 1}, lower=3)
    assert solve(model).ending is Ending.IMPOSSIBLE


def test_prices_belong_to_rows() -> None:
    """Least x with x >= 3: one more wanted costs one more."""
    model = Model()
    x = model.column(cost=1)
    row = model.row({x: 1}, lower=3)
    assert solve(model).prices[row] == pytest.approx(1)


def test_seconds_hold_for_whole_numbers_however_long_the_solver_was_at_work() -> None:
    """By a clock of work: after a second of other work, a run of a fifth of one is over after a fifth."""
    with by_work() as clock:
        clock.calls = CALLS_A_SECOND
        answer = solve(split_in_halves(), nodes=10**6, seconds=0.2)
        assert clock() < 1.3
    assert answer.ending is Ending.STOPPED


@pytest.mark.slow
def test_the_solver_counts_the_seconds_for_whole_numbers_anew() -> None:
    """What takes a thousandth of a second is settled within one, though the solver was at work for longer."""
    assert solve(split_in_halves(), nodes=10**6, seconds=1).ending is Ending.STOPPED
    assert solve(knapsack(), seconds=1).ending is Ending.BEST
