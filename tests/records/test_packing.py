"""What finished makes are packed with."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.used import used_by
from batchleaf.facts import NOWHERE, Project, Purpose, Supply, Use
from batchleaf.measure.lengths import Unit
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import Line
from batchleaf.records.packing import read_packing
from batchleaf.records.report import Report
from batchleaf.telling import told
from records.test_cases import laid_out
from records.test_sticking import errors_of, read

SUPPLIES = """\
supplies:
  envelope: {name: envelope, kind: envelopes, pack: 25}
  clear-bag: {name: clear bag, kind: bags, unit: bag}
  label: {name: label, kind: labels}
  paper-band: {name: paper band, kind: bands, unit: m}
  tissue: {name: tissue, kind: tissue, size: 500 x 700}
"""
RECORD = """\
title: A
date: 2026-03-14
status: {status}
makes: {makes}
base: card A6, side fold
papers: {{base: chalk-card}}
packing: [{packing}]
"""


def project(packing: str, folder: Path, makes: str = "22 of 24", status: str = "made") -> Project:
    """The one batch of an archive, read without a problem that would stop it."""
    record = RECORD.format(packing=packing, makes=makes, status=status)
    laid_out(
        f"=== projects/inventory/packing.yml\n{SUPPLIES}=== projects/a/project.yml\n{record}=== told\n",
        folder,
    )
    reading = read(folder)
    assert [told(one) for one in errors_of(reading)] == []
    return reading.archive.projects[0]


@pytest.mark.parametrize(
    ("line", "quantity", "per_make"),
    [
        # One for each of the twenty-two that were finished.
        ("envelope", "22", "1"),
        ("envelope 2", "44", "2"),
        # Twenty-two are four fives and two more: five bags, common practice for a set of cards.
        ("clear-bag per 5", "5", None),
        ("clear-bag per 11", "2", None),
        ("clear-bag per 22", "1", None),
        ("clear-bag per 1", "22", "1"),
        ("label 2 per 5", "10", None),
        ("clear-bag 2 bags per 5", "10", None),
        # 22 x 220 mm.
        ("paper-band 220 mm", "4.84", "0.22"),
        ("paper-band 1 m per 4", "6", None),
        ("tissue 1/4 sheet", "11/2", "1/4"),
        ("tissue 1/2 per 5", "5/2", None),
        ("label 3 in all", "3", None),
    ],
)
def test_packing_is_for_the_finished_ones(
    line: str, quantity: str, per_make: str | None, tmp_path: Path
) -> None:
    """Worked out by hand for twenty-two of twenty-four."""
    each = None if per_make is None else Fraction(per_make)
    expected = Use(line.split()[0], Fraction(quantity), each, purpose=Purpose.PACKING)
    assert project(line, tmp_path).uses == (expected,)


@pytest.mark.parametrize(("status", "makes"), [("cut", "0 of 24"), ("made", "0 of 24")])
def test_nothing_is_packed_before_the_first_is_finished(status: str, makes: str, tmp_path: Path) -> None:
    """Not even what is taken for the batch as a whole."""
    assert project("envelope, clear-bag per 5, label 3 in all", tmp_path, makes, status).uses == ()


def test_a_plan_says_what_it_will_be_packed_with(tmp_path: Path) -> None:
    """For all that are begun; it moves nothing in the drawer."""
    found = project("envelope, clear-bag per 5", tmp_path, "0 of 24", "planned")
    assert {use.supply: use.quantity for use in found.uses} == {"envelope": 24, "clear-bag": 5}
    assert used_by(found) == ()


def test_a_batch_packs_otherwise_than_its_design(tmp_path: Path) -> None:
    """Its own line stands instead of the design's of the same supply; the others are taken over."""
    laid_out(
        f"=== projects/inventory/packing.yml\n{SUPPLIES}"
        "=== projects/designs/packed.yml\ntitle: Packed\nbase: card A6, side fold\n"
        "packing: [envelope, clear-bag per 5]\n"
        "=== projects/a/project.yml\ntitle: A\ndate: 2026-03-14\nmakes: 10\ndesign: packed\n"
        "papers: {base: chalk-card}\npacking: [clear-bag per 10, label]\n=== told\n",
        tmp_path,
    )
    reading = read(tmp_path)
    assert errors_of(reading) == []
    uses = reading.archive.projects[0].uses
    assert {use.supply: use.quantity for use in uses} == {"envelope": 10, "clear-bag": 1, "label": 10}


BAGS = Supply("bag", "bag", "bags", "bag", "bags", Unit.MM, None)


def taken(text: str, makes: int) -> Fraction:
    """What one line of packing takes for so many makes."""
    report = Report()
    known = KnownSupplies({"bag": BAGS}, frozenset(), all_lost=False)
    uses = list(read_packing([Line(text, NOWHERE, Unit.MM)], makes, known, report))
    assert report.found == []
    return sum((use.quantity or Fraction(0) for use in uses), Fraction(0))


@given(st.integers(0, 400), st.integers(1, 60), st.integers(1, 9))
def test_sets_are_the_fewest_that_hold_all(makes: int, together: int, amount: int) -> None:
    """One set fewer would leave a make out; one make together is one for each."""
    sets = taken(f"bag {amount} per {together}", makes) / amount
    assert sets.denominator == 1
    assert sets * together >= makes
    assert sets == 0 or (sets - 1) * together < makes
    assert taken(f"bag {amount}", makes) == taken(f"bag {amount} per 1", makes) == amount * makes
