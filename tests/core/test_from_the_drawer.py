"""What the drawer gives today, against brute force and by hand."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Final

import pytest

from batchleaf.core.batch_cutting import PLANNER, Planner, remembering
from batchleaf.core.cutting.plan import CuttingPlan
from batchleaf.core.figures import Figures, with_the_drawer, work_out
from batchleaf.core.from_the_drawer import Lying, OnHand, ToGet, from_the_drawer, job_of, on_hand
from batchleaf.facts import Opening, Project, Scrap, Settings, Supply, Use
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.money import Currency
from batchleaf.workflow import read_and_work_out
from core.drawers import archive, batch_of, day, pad, part, size, supply
from cutting.brute import brute_most_makes
from kept_demo import planner

SETTINGS: Final = Settings(Unit.MM, Currency.of("EUR"))
ROOT: Final = Path(__file__).parents[2]


def drawer(lying: list[Lying], **amounts: int) -> OnHand:
    """These pieces, and so much of everything else."""
    return OnHand(tuple(lying), {slug: Fraction(amount) for slug, amount in amounts.items()})


# --- against brute force -----------------------------------------------------------

PAPERS: Final = ("card", "fern", "plum")


def random_batch(dice: random.Random) -> tuple[Project, OnHand, dict[str, Supply]]:
    """Up to three parts from up to three papers, of which sheets and odd pieces lie in the drawer."""
    supplies = {slug: supply(slug, size=size(dice.randint(3, 6), dice.randint(3, 6))) for slug in PAPERS} | {
        "ribbon": replace(supply("ribbon"), size=None)
    }
    parts = [
        replace(
            part(letter, dice.randint(1, 4), dice.randint(1, 4), *dice.sample(PAPERS, dice.randint(1, 2))),
            each=dice.randint(1, 2),
            turns=dice.random() < 0.6,
        )
        for letter in "ABC"[: dice.randint(1, 3)]
    ]
    lying = [Lying(slug, None, 1) for slug in PAPERS if dice.random() < 0.7]
    lying += [
        Lying(dice.choice(PAPERS), size(dice.randint(1, 4), dice.randint(1, 4)), dice.randint(1, 2))
        for _ in range(dice.randint(0, 2))
    ]
    ribbon = Use("ribbon", Fraction(4), Fraction(1, 2)) if dice.random() < 0.3 else None
    one = replace(batch_of(*parts, makes=dice.randint(1, 3)), uses=(ribbon,) if ribbon else ())
    return one, drawer(lying, ribbon=dice.randint(0, 3)), supplies


def by_brute_force(one: Project, there: OnHand, supplies: dict[str, Supply]) -> int:
    """Every way of cutting every piece that lies there, and the ribbon."""
    stocks = [
        Stock(f"{at}", lying.piece or supplies[lying.supply].sheet, lying.count)
        for at, lying in enumerate(there.lying)
    ]
    kinds = []
    for each in one.parts:
        mine = [str(at) for at, lying in enumerate(there.lying) if lying.supply in each.papers]
        kinds.append(PartKind(each.letter, each.size, each.each, each.turns, tuple(mine) or ("none",)))
    makes = brute_most_makes(Job(tuple(stocks), tuple(kinds)))
    return min(makes, *(int(there.amounts["ribbon"] / (use.per_make or 1)) for use in one.uses), makes)


@pytest.mark.parametrize(
    "seed", [*range(40), *(pytest.param(seed, marks=pytest.mark.slow) for seed in range(40, 200))]
)
def test_it_is_what_brute_force_finds(seed: int) -> None:
    """The most makes, and what brings as many as were begun: with that there, it is enough."""
    one, there, supplies = random_batch(random.Random(seed))
    found = from_the_drawer(one, there, supplies, PLANNER)
    assert found is not None
    assert found.proved
    assert found.makes == by_brute_force(one, there, supplies)
    if found.again is not None:
        sheets = [one for one in found.again if one.supply in PAPERS]
        got = [Lying(one.supply, None, int(one.quantity)) for one in sheets]
        more = {one.supply: one.quantity for one in found.again if one not in sheets}
        amounts = {slug: amount + more.get(slug, 0) for slug, amount in there.amounts.items()}
        assert by_brute_force(one, OnHand((*there.lying, *got), amounts), supplies) >= one.begun
        assert bool(found.again) is (found.makes < one.begun)


# --- by hand -----------------------------------------------------------------------

SQUARES: Final = replace(
    batch_of(part("A", 50, 50, "card"), makes=6), uses=(Use("bag", Fraction(6), Fraction(1)),)
)
BAG: Final = replace(supply("bag"), unit="piece", units="pieces", size=None)
CARDS: Final = {"card": supply(), "bag": BAG}


def test_what_runs_out_first_is_named() -> None:
    """Four squares to a sheet: with three bags the bags; with many the card, of which one more would do."""
    lying = [Lying("card", None, 1), Lying("card", size(50, 60), 1)]
    few = from_the_drawer(SQUARES, drawer(lying, bag=3), CARDS, PLANNER)
    many = from_the_drawer(SQUARES, drawer(lying, bag=30), CARDS, PLANNER)
    assert few
    assert many
    assert (few.makes, few.first_out, few.again) == (
        3,
        ("bag",),
        (ToGet("card", Fraction(1)), ToGet("bag", Fraction(3))),
    )
    assert (many.makes, many.first_out, many.again) == (5, ("card",), (ToGet("card", Fraction(1)),))


def test_a_sheet_of_a_pad_is_not_counted_under_its_number_and_under_its_pad() -> None:
    """Of two sheets, one known to be number 1: parts of any paper and of number 1 share them."""
    papers = pad(opening=Opening(day(0), Fraction(2), None))
    supplies = {one.slug: one for one in papers}
    one = batch_of(replace(part("A", 100, 100, "pad"), any_of=1), part("B", 100, 100, "pad-1"), makes=1)
    lying = [Lying("pad-1", None, 1), Lying("pad", None, 1)]
    found = from_the_drawer(one, drawer(lying), supplies, PLANNER)
    assert found
    assert found.makes == 1
    job = job_of(one, lying, supplies)
    assert job
    assert sum(stock.have or 0 for stock in job.stocks) == 2


def test_the_drawer_is_taken_as_the_ledger_has_it() -> None:
    """Sheets of a pad by number and without one, odd pieces, amounts; half a sheet is none."""
    papers = pad(opening=Opening(day(0), Fraction(6), None))
    card = supply(
        opening=Opening(day(0), Fraction(5, 2), None), scraps=(Scrap(size(30, 40), 2, None, day(0)),)
    )
    figures = work_out(archive(supplies=(*papers, card)), SETTINGS)
    assert figures.ledger
    there = on_hand(figures.ledger, {one.slug: one for one in (*papers, card)})
    assert set(there.lying) == {
        Lying("card", None, 2),
        Lying("card", Size(Fraction(30), Fraction(40)), 2),
        *(Lying(f"pad-{number}", None, 2) for number in (1, 2, 3)),
    }
    assert there.amounts["card"] == Fraction(5, 2)


def test_of_what_nothing_is_told_nothing_is_said() -> None:
    """No part and no measured supply: no number."""
    assert from_the_drawer(batch_of(makes=4), drawer([]), CARDS, PLANNER) is None


# --- the demo ----------------------------------------------------------------------


class Asked:
    """A planner that notes each job it has to solve for the most makes."""

    def __init__(self) -> None:
        self.jobs: list[tuple[Job, CuttingPlan]] = []
        self.planner = remembering(Planner(self._most, PLANNER.cheapest))

    def _most(self, job: Job) -> CuttingPlan:
        plan = PLANNER.most(job)
        self.jobs.append((job, plan))
        return plan


@pytest.fixture(scope="module")
def demo() -> Figures:
    """The demo's figures."""
    worked = read_and_work_out(ROOT / "projects", SETTINGS, planner())
    assert worked.figures is not None
    return worked.figures


def test_no_answer_takes_more_than_is_on_hand(demo: Figures) -> None:
    """Over the whole demo: of each kind of piece no plan cuts more than lie there."""
    assert demo.ledger
    supplies = {one.slug: one for one in demo.archive.supplies}
    there = on_hand(demo.ledger, supplies)
    answers = 0
    for batch in demo.batches.values():
        job = job_of(batch.project, there.lying, supplies)
        if job is None:
            continue
        answers += 1
        pieces = [one for one in there.lying if _may_serve(one, batch.project, supplies)]
        assert [(stock.size, stock.have) for stock in job.stocks] == [
            (one.piece or supplies[one.supply].usable, one.count) for one in pieces
        ]
        plan = PLANNER.most(job)
        for stock in job.stocks:
            assert sum(one.times for one in plan.plans if one.stock == stock.id) <= (stock.have or 0)
    assert answers > 10


def _may_serve(one: Lying, project: Project, supplies: dict[str, Supply]) -> bool:
    named = {slug for each in project.cut_parts for slug in each.papers}
    pads = {supplies[slug].pad for slug in named} - {""}
    return one.supply in named | pads or supplies[one.supply].pad in named


def test_after_a_change_only_plans_that_may_use_the_paper_are_solved_again(demo: Figures) -> None:
    """A sheet of slate card fewer: each new job has slate card among its stocks, and there are few."""
    asked = Asked()
    with_the_drawer(demo, asked.planner)
    first = len(asked.jobs)
    with_the_drawer(demo, asked.planner)
    assert len(asked.jobs) == first
    ledger = demo.ledger
    assert ledger
    balances = tuple(
        replace(one, quantity=one.quantity - 1)
        if one.holding.supply == "slate-card" and one.holding.piece is None
        else one
        for one in ledger.balances
    )
    assert balances != ledger.balances
    with_the_drawer(replace(demo, ledger=replace(ledger, balances=balances)), asked.planner)
    again = asked.jobs[first:]
    assert 0 < len(again) < first / 2
    assert all("slate card" in {stock.name for stock in job.stocks} for job, _ in again)
