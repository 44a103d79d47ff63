"""Sheets filled one after another, with no more than is wanted."""

from __future__ import annotations

from itertools import islice, product

import numpy as np
import pytest

from batchleaf.core.cutting.choose import Terms, makes_of
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.fullest import filled
from batchleaf.core.cutting.in_turn import in_turn
from batchleaf.core.cutting.integers import in_whole_numbers
from batchleaf.core.cutting.packed import Packing
from batchleaf.core.cutting.patterns import Pool
from batchleaf.core.cutting.question import asked
from batchleaf.core.cutting.strips import parts_of
from batchleaf.core.cutting.values import best_values
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.brute import brute_patterns, tiny_job
from cutting.jobs import mm


@pytest.mark.parametrize("limits", [(3, 0, 1, 4), (1,) * 40, (120, 5_000, 1, 77, 1 << 50)])
def test_sums_above_a_limit_are_seen_in_the_bits(limits: tuple[int, ...]) -> None:
    """Every part reaches its limit and not one more, also where the fields need several words."""
    packing = Packing(limits)
    for part, limit in enumerate(limits):
        if not limit or limit > 200:
            continue
        total = [0] * packing.words
        for many in range(1, limit + 2):
            total = [word + bits for word, bits in zip(total, packing.one(part), strict=True)]
            over = any(packing.over(at, np.array([word]))[0] for at, word in enumerate(total))
            assert over == (many > limit)


@pytest.mark.parametrize("seed", range(120))
def test_a_filled_sheet_is_one_of_all_ways_and_keeps_the_limits(seed: int) -> None:
    """Worth no more than the best way tried, and nothing comes too often."""
    job = tiny_job(7000 + seed)
    limits = [1 + (seed + at) % 3 for at in range(len(job.parts))]
    values = [3 + (7 * seed + 5 * at) % 11 for at in range(len(job.parts))]
    sheet = in_whole_numbers(job).sheets[0]
    piece = filled(sheet, limits, values, Effort())
    counts = parts_of(piece)
    ways = [
        way
        for way in brute_patterns(job, job.stocks[0])
        if all(n <= most for n, most in zip(way, limits, strict=True))
    ]
    assert tuple(counts[at] for at in range(len(limits))) in ways
    worth = sum(values[at] * many for at, many in counts.items())
    assert worth <= max(sum(v * n for v, n in zip(values, way, strict=True)) for way in ways)


@pytest.mark.parametrize("seed", range(40))
def test_without_limits_a_sheet_is_filled_as_well_as_can_be(seed: int) -> None:
    """Where there is as much of everything as finds room, it is the best value."""
    job = tiny_job(8000 + seed)
    sheet = in_whole_numbers(job).sheets[0]
    values = [3 + (7 * seed + 5 * at) % 11 for at in range(len(job.parts))]
    piece = filled(sheet, [99] * len(values), values, Effort())
    worth = sum(values[at] * many for at, many in parts_of(piece).items())
    assert worth == (best_values(sheet, values).whole_sheet if sheet.shapes else 0)


def many_kinds() -> Job:
    """Twelve kinds, each wanted a few times, on sheets of one size."""
    sizes = list(product((13, 22, 31, 44), (17, 26, 38)))
    parts = tuple(PartKind(f"p{at}", mm(*size), 1 + at % 3, at % 2 == 0) for at, size in enumerate(sizes))
    return Job((Stock("card", mm(100, 80)),), parts)


def terms_of(job: Job) -> Terms:
    """The one group of ``job``."""
    (terms,) = asked(job).groups
    return terms


def test_each_pass_gives_all_that_is_wanted_and_no_part_more() -> None:
    """What it cuts is exactly the demand, so there are no spares."""
    job = many_kinds()
    terms, pool = terms_of(job), Pool(len(job.parts))
    sheets = in_whole_numbers(job).sheets
    for chosen in islice(in_turn(sheets, terms, pool, Effort()), 5):
        assert chosen is not None
        assert makes_of(chosen, terms) == 1
        cut = [sum(pattern.counts[part] * times for pattern, times in chosen) for part in terms.parts]
        assert cut == [terms.each[part] for part in terms.parts]
    assert len(pool) > 5


def test_a_pass_that_runs_out_of_sheets_gives_nothing() -> None:
    """One sheet is not enough; its filling is kept all the same."""
    job = Job((Stock("card", mm(100, 80), 1),), many_kinds().parts)
    pool = Pool(len(job.parts))
    found = next(in_turn(in_whole_numbers(job).sheets, terms_of(job), pool, Effort()))
    assert (found, len(pool)) == (None, 1)


def test_an_effort_that_is_over_ends_it() -> None:
    """No pass is begun."""
    job = many_kinds()
    passes = in_turn(
        in_whole_numbers(job).sheets, terms_of(job), Pool(len(job.parts)), Effort(lambda _: True)
    )
    assert list(passes) == []
