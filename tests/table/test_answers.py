"""What the page answers is what the planner answers; where it cannot know, it says so truly."""

from __future__ import annotations

import random
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, Final

import pytest
from playwright.sync_api import Browser, Page

from batchleaf.core.cutting.from_one_sheet import from_one_sheet, through_cuts_give
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size, Unit, parse_size
from cutting.test_from_one_sheet import NUMBERS_OUT
from table.laid_out import Asked, asked, lay_out_table, plan_of, unit_of
from waiting import soon

ONE: Final = Fraction(1)
STEPS: Final = 400
"""Of the planner: enough to prove most of these, and a few seconds for all."""


@pytest.fixture(scope="module")
def planner(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """The page, opened from a folder, whose scripts are asked."""
    context = browser.new_context()
    opened = context.new_page()
    opened.goto(lay_out_table(tmp_path_factory.mktemp("table")).as_uri())
    yield opened
    context.close()


# --- random jobs ----------------------------------------------------------------


def _length(draw: random.Random, unit: str, least: int, most: int) -> str:
    """A measure as makers write it: sixteenths and thirds, or millimetres and tenths."""
    if unit == "mm":
        tenths = draw.choice(["", "", ".5", f".{draw.randint(1, 9)}"])
        return f"{round(draw.randint(least, most) * 25.4)}{tenths}"
    part = draw.choice(["", "", " 1/2", " 1/4", " 3/8", " 5/16", " 1/3", ".4"])
    return f"{draw.randint(least, most)}{part}"


def _size(draw: random.Random, unit: str, least: int, most: int) -> str:
    return " x ".join(_length(draw, unit, least, most) for _ in range(2))


def _job(draw: random.Random, *, sizes: int, counted: bool = False) -> Asked:
    unit = draw.choice(["in", "mm"])
    pieces = [[_size(draw, unit, 3, 17), draw.randint(1, 3)] for _ in range(draw.randint(1, 4))]
    kinds = [[_size(draw, unit, 1, 6), draw.randint(1, 6) if counted else None] for _ in range(sizes)]
    return {"pieces": pieces, "kinds": kinds, "turns": draw.random() < 0.7, "unit": unit}


def _sizes(job: Asked, name: str) -> list[tuple[Size, Any]]:
    return [(parse_size(text, Unit(job["unit"])), count) for text, count in job[name]]


def _as_facts(job: Asked, each: list[int]) -> Job:
    stocks = tuple(
        Stock(f"piece {at}", size, count, ONE) for at, (size, count) in enumerate(_sizes(job, "pieces"))
    )
    parts = tuple(
        PartKind(f"part {at}", size, each[at], job["turns"])
        for at, (size, _) in enumerate(_sizes(job, "kinds"))
    )
    return Job(stocks, parts)


def _plan_faults(job: Asked, answer: dict[str, Any], spares: dict[str, int]) -> tuple[str, ...]:
    facts = _as_facts(job, answer["each"])
    ids, stocks = [part.id for part in facts.parts], [stock.id for stock in facts.stocks]
    return faults(facts, plan_of(answer, ids, stocks, spares))


# --- one size ---------------------------------------------------------------------


@pytest.mark.parametrize("seed", [1, *(pytest.param(seed, marks=pytest.mark.slow) for seed in (2, 3, 4))])
def test_one_size_is_the_planners_count(planner: Page, seed: int) -> None:
    """As many as the planner says these pieces give, proved; and a plan that its checker passes."""
    draw = random.Random(seed)
    jobs = [_job(draw, sizes=1) for _ in range(200)]
    for job, answer in zip(jobs, asked(planner, jobs), strict=True):
        ((part, _),) = _sizes(job, "kinds")
        gives = sum(
            count * through_cuts_give(sheet, part, turns=job["turns"])
            for sheet, count in _sizes(job, "pieces")
        )
        assert (answer["found"], answer["atMost"]) == (gives, gives), job
        assert _plan_faults(job, answer, {}) == (), job


def test_the_pages_own_example(planner: Page) -> None:
    """Two scraps and a sheet of twelve inches: 2, 2 and 6 of 3 3/4 x 5."""
    sheets = ("8 x 6", "5 1/2 x 9", "12 x 12")
    pieces = [[text, 1] for text in sheets]
    (answer,) = asked(
        planner, [{"pieces": pieces, "kinds": [["3 3/4 x 5", None]], "turns": True, "unit": "in"}]
    )
    part = parse_size("3 3/4 x 5", Unit.INCH)
    each = [from_one_sheet(parse_size(text, Unit.INCH), part, turns=True).through for text in sheets]
    assert [plan["gives"] for plan in answer["plans"]] == each == [2, 2, 6]


def test_published_counts_are_met(planner: Page) -> None:
    """The printers' tables that the planner is held to; 5 x 7 from 12 x 12 is 3 by cuts through, not 4."""
    jobs = [
        {"pieces": [[sheet, 1]], "kinds": [[part, None]], "turns": True, "unit": "in"}
        for sheet, part, _grid, _through, _stopped in NUMBERS_OUT
    ]
    published = [through for _sheet, _part, _grid, through, _stopped in NUMBERS_OUT]
    assert [answer["found"] for answer in asked(planner, jobs)] == published


def test_so_many_as_wanted_and_no_more(planner: Page) -> None:
    """Where fewer are wanted than the pieces give, no part is cut that nobody asked for, or it is a spare."""
    draw = random.Random(3)
    jobs = [_job(draw, sizes=1, counted=True) for _ in range(200)]
    enough = 0
    for job, answer in zip(jobs, asked(planner, jobs), strict=True):
        wanted = job["kinds"][0][1]
        cut = sum(plan["times"] * plan["gives"] for plan in answer["plans"])
        if answer["found"] < wanted:
            assert cut == answer["found"]
            continue
        enough += 1
        assert cut >= wanted
        held = {**answer, "found": wanted, "atMost": max(wanted, answer["atMost"])}
        assert _plan_faults(job, held, {"part 0": cut - wanted} if cut > wanted else {}) == (), job
    assert enough > 50


@pytest.mark.parametrize("sizes", [1, pytest.param(3, marks=pytest.mark.slow)])
def test_the_settings_are_in_the_planners_order(planner: Page, sizes: int) -> None:
    """A tree is cut as the house lays it out for a person at a trimmer; each cut has its number."""
    draw = random.Random(17)
    jobs = [_job(draw, sizes=sizes) for _ in range(60)]
    seen = 0
    for job, answer in zip(jobs, asked(planner, jobs), strict=True):
        facts, unit = _as_facts(job, answer["each"]), unit_of(answer)
        ids, stocks = [part.id for part in facts.parts], [stock.id for stock in facts.stocks]
        for plan, told in zip(plan_of(answer, ids, stocks, {}).plans, answer["plans"], strict=True):
            laid = lay_out(plan, facts)
            settings = [(cut.axis.value, cut.setting) for cut in laid.cuts]
            assert settings == [
                (axis, at * unit) for axis, at, many, *_ in told["settings"] for _ in range(many)
            ]
            numbers = [n for *_, first, last in told["settings"] for n in range(first, last + 1)]
            assert numbers == [cut.n for cut in laid.cuts]
            seen += len(numbers)
    assert seen > 300


FINE: Final = [
    # (sheet, part): so many parts, or measures so odd, that the table over all cuts would be too large.
    ("100000 x 100000 mm", "0.2 x 0.3 mm"),
    ("1000.001 x 999.999 mm", "3.1415 x 2.71828 mm"),
    ("999.999999 x 888.888888 in", "1.000001 x 1.000003 in"),
    ("600 x 900 mm", "7.13 x 11.17 mm"),
    ("36 x 36 in", "1 1/7 x 2 3/11 in"),
]


@pytest.mark.parametrize("cases", [FINE[1:], pytest.param(FINE[:1], marks=pytest.mark.slow)])
def test_what_is_too_much_is_bounded_and_told(planner: Page, cases: list[tuple[str, str]]) -> None:
    """At least and at most, with the planner's own answer between them; nothing runs without an end."""
    jobs = [
        {"pieces": [[sheet, 2]], "kinds": [[part, None]], "turns": True, "unit": "mm"}
        for sheet, part in cases
    ]
    with soon():
        answers = asked(planner, jobs)
    for job, answer in zip(jobs, answers, strict=True):
        ((sheet, many),), ((part, _),) = _sizes(job, "pieces"), _sizes(job, "kinds")
        known = from_one_sheet(sheet, part, turns=True)
        assert many * known.grid <= answer["found"] <= many * known.at_most, job
        assert answer["atMost"] >= many * known.through, job
        if all(plan["tree"] for plan in answer["plans"]):
            assert _plan_faults(job, answer, {}) == (), job


def test_measures_too_unlike_are_told(planner: Page) -> None:
    """Fractions whose common unit no number holds are told in a sentence."""
    size = "1 1/999983 x 1 1/999979"
    told = planner.evaluate(
        """([sheet, part]) => {
          const read = (text) => ({...lengths.readSize(text, "in"), count: 1});
          try { question.answered({pieces: [read(sheet)], kinds: [read(part)], turns: true}); }
          catch (error) { return [error instanceof NoMeasure, error.message]; }
        }""",
        ["9 1/999961 x 9 1/999959", size],
    )
    assert told == [
        True,
        "these fractions are too unlike to be measured together; write them in sixteenths or as decimals",
    ]


# --- several sizes -------------------------------------------------------------------


@pytest.mark.parametrize("jobs_asked", [12, pytest.param(300, marks=pytest.mark.slow)])
def test_several_sizes_are_honest(planner: Page, jobs_asked: int) -> None:
    """What is found can be cut, and never exceeds what is proved; the bound never lies below it."""
    draw = random.Random(5)
    jobs = [_job(draw, sizes=draw.randint(2, 3), counted=True) for _ in range(jobs_asked)]
    for job in jobs[::2]:
        job["kinds"] = [[size, None] for size, _ in job["kinds"]]
    met = 0
    for job, answer in zip(jobs, asked(planner, jobs), strict=True):
        best = most_makes(_as_facts(job, answer["each"]), stop=lambda steps: steps > STEPS)
        wanted = answer["wanted"]
        assert answer["found"] <= best.bound, job
        assert answer["atMost"] >= best.makes, job
        assert wanted is None or answer["found"] <= wanted
        assert _plan_faults(job, answer, {}) == (), job
        met += answer["found"] >= (best.makes if wanted is None else min(wanted, best.makes))
    assert met >= 0.8 * len(jobs)
