"""A design that stands alone, and batches that use it."""

from __future__ import annotations

import datetime as dt
from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.facts import Credit, Design, Origin, Sale, Step, Terms, Use, Went, Whereabouts
from batchleaf.measure.lengths import Size
from batchleaf.measure.money import Currency
from batchleaf.records.credit import read_credit
from batchleaf.records.went import read_went
from records.test_cases import laid_out, read

INCH = Fraction("25.4")
DESIGN = """\
=== projects/designs/strip.yml
title: Strip bookmark
unit: in
base: bookmark 2 x 7
roles:
  Water: a calm pattern
parts:
  water: 1 3/4 x 3
  label: border 1/8, chalk-card
  edge: 1 x 1, scraps of moss
supplies:
  - jute-cord 140 mm
  - sea-ink
steps:
  - 1:05 Cut.
credit: a friend, https://example.org/fold
sale: handmade only, the friend, 2026-01-12
about: Takes small rests.
"""
BATCH = """\
=== projects/{slug}/project.yml
title: {slug}
date: 2026-03-14
makes: 10
design: strip
papers:
  base: chalk-card
  water: {water}
  moss: ripple-green
"""
PLAIN = BATCH.format(slug="plain", water="ripple-green")
OTHER = (
    BATCH.format(slug="varied", water="dusk-rose")
    + """\
thing: slip
parts:
  B band: 30 x 40, chalk-card
  Label: 10 x 10, dusk-rose
  dot: 5 x 5, dusk-rose
supplies:
  - jute-cord 2 m in all
steps:
  - Cut twice.
credit: nobody
"""
)


def inches(width: str, height: str) -> Size:
    """A size in inches."""
    return Size(Fraction(width) * INCH, Fraction(height) * INCH)


def test_a_design_asks_for_what_its_parts_name(tmp_path: Path) -> None:
    """Roles that are written come first, with their words; a design that nobody uses is read too."""
    laid_out(f"{DESIGN}=== told\n", tmp_path)
    worked = read(tmp_path)
    assert worked.errors == ()
    assert worked.archive.designs == (
        Design(
            slug="strip",
            title="Strip bookmark",
            roles=(("Water", "a calm pattern"), ("base", ""), ("chalk-card", ""), ("moss", "")),
            about="Takes small rests.",
            credit=Credit("a friend", "https://example.org/fold"),
            terms=Terms(Sale.HANDMADE, "the friend", dt.date(2026, 1, 12)),
        ),
    )


def test_a_batch_takes_all_from_its_design(tmp_path: Path) -> None:
    """Lengths are in the design's unit, roles are the batch's, and each part is told of in the batch."""
    laid_out(f"{DESIGN}{PLAIN}=== told\n", tmp_path)
    worked = read(tmp_path)
    assert worked.errors == ()
    [plain] = worked.archive.projects
    assert (plain.design, plain.thing, plain.finished_size) == ("strip", "bookmark", inches("2", "7"))
    assert [(one.letter, one.size, one.papers, one.origin) for one in plain.parts] == [
        ("A", inches("2", "7"), ("chalk-card",), Origin.CUT),
        ("B", inches("7/4", "3"), ("ripple-green",), Origin.CUT),
        ("C", inches("3/2", "11/4"), ("chalk-card",), Origin.CUT),
        ("D", inches("1", "1"), ("ripple-green",), Origin.BY_HAND),
    ]
    assert plain.uses == (Use("jute-cord", Fraction("1.4"), Fraction("0.14")), Use("sea-ink", None))
    assert plain.steps == (Step("Cut.", 65),)
    assert plain.credit == Credit("a friend", "https://example.org/fold")
    places = [*(part.place for part in plain.parts), *(use.place for use in plain.uses)]
    assert {place.file for place in places} == {"projects/plain/project.yml"}


def test_a_batch_may_say_more_or_otherwise(tmp_path: Path) -> None:
    """A part of the same letter or name takes the other's place; further ones come after."""
    laid_out(f"{DESIGN}{OTHER}=== told\n", tmp_path)
    worked = read(tmp_path)
    assert worked.errors == ()
    [varied] = worked.archive.projects
    assert [(one.letter, one.name, one.papers) for one in varied.parts] == [
        ("A", "base", ("chalk-card",)),
        ("B", "band", ("chalk-card",)),
        ("C", "Label", ("dusk-rose",)),
        ("D", "edge", ("ripple-green",)),
        ("E", "dot", ("dusk-rose",)),
    ]
    assert [one.supply for one in varied.uses] == ["sea-ink", "jute-cord"]
    assert (varied.thing, varied.credit) == ("slip", Credit("nobody"))
    assert varied.steps == (Step("Cut twice."),)


def test_a_faulty_design_is_told_once_for_all_its_batches(tmp_path: Path) -> None:
    """Three batches use it; its one slip has one sentence, in its own file."""
    batches = "".join(BATCH.format(slug=slug, water="dusk-rose") for slug in ("a", "b", "c"))
    laid_out(f"{DESIGN.replace('1 3/4 x 3', '1 3/4')}{batches}=== told\n", tmp_path)
    worked = read(tmp_path)
    assert [(one.place.file, one.place.line) for one in worked.errors] == [("projects/designs/strip.yml", 7)]
    assert worked.archive.projects == ()


EUR = Currency.of("EUR")


@pytest.mark.parametrize(
    ("text", "went"),
    [
        ("2 kept", Went(2, Whereabouts.KEPT)),
        ("3 given, the school, 2026-12-05",
         Went(3, Whereabouts.GIVEN, None, dt.date(2026, 12, 5), "the school")),
        ("1 sample", Went(1, Whereabouts.SAMPLE)),
        ("4 class, spring", Went(4, Whereabouts.CLASS, words="spring")),
        ("12 sold, 3.50 each, winter market, 2026-12-05",
         Went(12, Whereabouts.SOLD, 4200, dt.date(2026, 12, 5), "winter market")),
        ("12 sold, 2026-12-05, 42 EUR", Went(12, Whereabouts.SOLD, 4200, dt.date(2026, 12, 5))),
        ("12 sold, €3.50 each", Went(12, Whereabouts.SOLD, 4200)),
        ("12 sold,3 friends", Went(12, Whereabouts.SOLD, words="3 friends")),
    ],
)  # fmt: skip
def test_where_makes_went_is_one_line(text: str, went: Went) -> None:
    """An amount alone is for all of them; with “each” it is that of one."""
    assert read_went(text, EUR) == went


@pytest.mark.parametrize(
    ("text", "credit"),
    [
        ("my own", Credit("my own")),
        ("after a fold, by a friend", Credit("after a fold, by a friend")),
        ("a friend, mailto:friend@example.org", Credit("a friend", "mailto:friend@example.org")),
    ],
)
def test_a_credit_ends_in_its_link(text: str, credit: Credit) -> None:
    """Words may have commas of their own."""
    assert read_credit(text) == credit
