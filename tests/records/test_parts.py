"""What a part means: where it comes from, on what it lies, how often it is there."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.facts import Cut, ImageUse, KeptPiece, Origin, Part, Project, ShownSide, Use
from batchleaf.measure.lengths import Size
from records.test_cases import CASES, laid_out, read

BENCH = (
    (CASES / "ready.case").read_text("utf-8").partition("=== projects/inventory")[2].partition("=== told")[0]
)
"""A pad, stickers and stamps, beside the drawer of all cases."""
HEAD = "title: A\ndate: 2026-03-14\nmakes: 10 of 12\nthing: card\n"


def project(record: str, folder: Path) -> Project:
    """The one batch of an archive, read without a problem that would stop it."""
    laid_out(f"=== projects/a/project.yml\n{HEAD}{record}=== projects/inventory{BENCH}=== told\n", folder)
    worked = read(folder)
    assert worked.errors == ()
    return worked.archive.projects[0]


def part(line: str, folder: Path, papers: str = "") -> Part:
    """The part that a line under ``parts`` means."""
    record = f"papers:\n{papers}parts:\n  {line}\n" if papers else f"parts:\n  {line}\n"
    return project(record, folder).parts[0]


def mm(width: str, height: str) -> Size:
    """A size in mm."""
    return Size(Fraction(width), Fraction(height))


@pytest.mark.parametrize(
    "size",
    [
        "107.95 x 5.5 mm",
        "4 1/4 in x 5.5 mm",
        "4-1/4 in x 5.5 mm",
        "4¼ in x 5.5 mm",
        "4.25” × 5.5 mm",
        "4 1/4\u00a0in by 5.5\u2009mm",
        "4\t1/4 in x\t5.5 mm",
        "4 1/4 in x 5 1/2 mm",
        "4 1⁄4 inches X 0.55 cm",
    ],
)
def test_a_size_has_many_spellings(size: str, tmp_path: Path) -> None:
    """A quarter and four inches are 107.95 mm (NIST SP 447: an inch is 25.4 mm), however they are typed."""
    assert part(f"B strip: {size}, chalk-card", tmp_path).size == mm("107.95", "5.5")


@pytest.mark.parametrize(
    ("source", "papers", "origin", "any_of"),
    [
        ("chalk-card", ("chalk-card",), Origin.CUT, 0),
        ("ripple-green, dusk-rose", ("ripple-green", "dusk-rose"), Origin.CUT, 0),
        ("shoal-pad 1 4 7", ("shoal-pad-1", "shoal-pad-4", "shoal-pad-7"), Origin.CUT, 0),
        ("shoal-pad 1, 4, dusk-rose", ("shoal-pad-1", "shoal-pad-4", "dusk-rose"), Origin.CUT, 0),
        ("any 6 of shoal-pad", ("shoal-pad",), Origin.CUT, 6),
        ("any 6 from shoal-pad", ("shoal-pad",), Origin.CUT, 6),
        ("shoal-pad", ("shoal-pad",), Origin.CUT, 0),
        ("scraps of chalk-card", ("chalk-card",), Origin.BY_HAND, 0),
        ("scraps of brad", ("brad",), Origin.BY_HAND, 0),
        ("ready star-sticker", ("star-sticker",), Origin.READY, 0),
        ("ready star-sticker, brad", ("star-sticker", "brad"), Origin.READY, 0),
    ],
)
def test_a_part_says_where_it_comes_from(
    source: str, papers: tuple[str, ...], origin: Origin, any_of: int, tmp_path: Path
) -> None:
    """Supplies, papers of a pad by number or at will, scraps that nobody measured, things bought ready."""
    found = part(f"B strip: 10 x 20, {source}", tmp_path)
    assert (found.papers, found.origin, found.any_of) == (papers, origin, any_of)


@pytest.mark.parametrize("source", ["sea", "scraps of sea", "any 3 of pad", "pad, chalk-card"])
def test_a_role_stands_wherever_a_paper_may(source: str, tmp_path: Path) -> None:
    """What a role says of any papers and of scraps holds for the parts that name it."""
    roles = "  sea: any 6 of shoal-pad\n  pad: shoal-pad\n"
    found = part(f"B strip: 10 x 20, {source}", tmp_path, roles)
    expected = {
        "sea": (("shoal-pad",), Origin.CUT, 6),
        "scraps of sea": (("shoal-pad",), Origin.BY_HAND, 6),
        "any 3 of pad": (("shoal-pad",), Origin.CUT, 3),
        "pad, chalk-card": (("shoal-pad", "chalk-card"), Origin.CUT, 0),
    }
    assert (found.papers, found.origin, found.any_of) == expected[source]


def test_a_part_without_a_paper_has_the_role_of_its_name(tmp_path: Path) -> None:
    """Large and small letters do not count."""
    assert part("B Water Strip: 10 x 20", tmp_path, "  water strip: dusk-rose\n").papers == ("dusk-rose",)


LAYERS = """\
base: card A6, side fold
papers:
  base: chalk-card
  water: ripple-green
  leaf: scraps of dusk-rose
parts:
  B mat: border 5, chalk-card
  C water: border 5
  D leaf:
    size: 20 x 30
    on: B
    each: 2
    extra: 3
    stamp: tide-words 1 3, one-leaf
    die: one-leaf 1
  E leaf: 10 x 10, as D
  F star:
    ready: star-sticker
    on: A
    side: back
    turn: no
tools: [old-punch]
"""


def test_parts_lie_on_one_another(tmp_path: Path) -> None:
    """Each on the one before, or on the one that is named; sets that are used are tools of the batch."""
    found = project(LAYERS, tmp_path)
    assert [(one.letter, one.below, one.size, one.origin) for one in found.parts] == [
        ("A", "", mm("210", "148"), Origin.CUT),
        ("B", "A", mm("95", "138"), Origin.CUT),
        ("C", "B", mm("85", "128"), Origin.CUT),
        ("D", "B", mm("20", "30"), Origin.BY_HAND),
        ("E", "D", mm("10", "10"), Origin.BY_HAND),
        ("F", "A", mm("18", "18"), Origin.READY),
    ]
    leaf, star = found.parts[3], found.parts[5]
    assert (leaf.each, leaf.extra) == (2, 3)
    assert leaf.stamps == (ImageUse("tide-words", (1, 3)), ImageUse("one-leaf"))
    assert leaf.dies == (ImageUse("one-leaf", (1,)),)
    assert (star.side, star.turns) == (ShownSide.BACK, False)
    assert found.tools == ("old-punch", "tide-words", "one-leaf")


def test_only_the_side_that_shows_keeps_a_part_from_turning(tmp_path: Path) -> None:
    """The pattern of the other side may lie as it likes."""
    fish = (
        "=== projects/inventory/fish.yml\nsupplies:\n  fish:\n    name: fish\n    kind: paper\n"
        "    size: 200 x 200\n    front: rows of fish, one-way\n    back: plain\n"
    )
    record = (
        "parts:\n  B front: 10 x 20, fish\n  C back:\n    size: 10 x 20\n    paper: fish\n    side: back\n"
    )
    laid_out(f"=== projects/a/project.yml\n{HEAD}{record}{fish}=== told\n", tmp_path)
    [found] = read(tmp_path).archive.projects
    assert [one.turns for one in found.parts] == [False, True]


@pytest.mark.parametrize(
    ("makes", "status", "quantities"),
    [("10 of 12", "made", (16, 15)), ("0 of 12", "planned", (19, 18))],
)
def test_what_is_ready_leaves_the_drawer_by_the_piece(
    makes: str, status: str, quantities: tuple[int, int], tmp_path: Path
) -> None:
    """Three on each of ten and one extra are 31, of two kinds 16 and 15; planned are twelve makes."""
    record = (
        f"=== projects/a/project.yml\ntitle: A\ndate: 2026-03-14\nthing: card\nmakes: {makes}\n"
        f"status: {status}\nparts:\n  B star:\n    size: 10 x 10\n    ready: star-sticker, moon-sticker\n"
        "    each: 3\n    extra: 1\n  C pin: 5 x 5, ready brad\n"
    )
    laid_out(f"{record}=== projects/inventory{BENCH}=== told\n", tmp_path)
    worked = read(tmp_path)
    assert worked.errors == ()
    [found] = worked.archive.projects
    star, moon, pin = found.uses
    assert (star.supply, moon.supply) == ("star-sticker", "moon-sticker")
    assert (star.quantity, moon.quantity) == tuple(map(Fraction, quantities))
    assert pin == Use("brad", Fraction(found.finished or found.begun), Fraction(1))


CUT = """\
papers:
  night sky: shoal-pad 1 4, dusk-rose
  sea: any 6 of shoal-pad
parts:
  B night sky: 10 x 20
  {more}
cut:
  - {line}
"""


@pytest.mark.parametrize(
    ("line", "more", "cut"),
    [
        ("night sky 2 sheets each", "", {"shoal-pad-1": 2, "shoal-pad-4": 2, "dusk-rose": 2}),
        ("shoal-pad 1 sheet each", "", {"shoal-pad-1": 1, "shoal-pad-4": 1}),
        ("shoal-pad 1 sheet each", "C sea: 10 x 20", {"shoal-pad-1": 1, "shoal-pad-4": 1}),
        ("shoal-pad-4 2 sheets", "", {"shoal-pad-4": 2}),
        ("shoal-pad-5 2 sheets", "", {"shoal-pad-5": 2}),
        ("shoal-pad 6 sheets", "C sea: 10 x 20", {"shoal-pad": 6}),
        ("sea 1 sheet each", "C sea: 10 x 20", {"shoal-pad": 6}),
        ("sea 5 sheets", "C sea: 10 x 20", {"shoal-pad": 5}),
        ("shoal-pad scrap 130 x 140", "", {"shoal-pad": 1}),
    ],
)
def test_a_line_says_which_papers_of_a_pad_were_cut(
    line: str, more: str, cut: dict[str, int], tmp_path: Path
) -> None:
    """By role, by number, each that the parts use, or so many of the pad as a whole."""
    found = project(CUT.format(line=line, more=more), tmp_path)
    assert {one.supply: one.count for one in found.cut} == cut


def test_of_any_papers_each_leaves_a_piece(tmp_path: Path) -> None:
    """One sheet of each of six papers, and of each a piece of 20 x 90: six sheets and six pieces."""
    found = project(CUT.format(line="sea 1 sheet each, kept 90 x 20", more="C sea: 10 x 20"), tmp_path)
    assert found.cut == (Cut("shoal-pad", 6, None, (KeptPiece(mm("20", "90"), 6),)),)


def test_a_batch_by_hand_needs_no_line_under_cut(tmp_path: Path) -> None:
    """Nothing measured was cut, and nothing is told."""
    record = f"=== projects/a/project.yml\n{HEAD}parts:\n  B leaf: 9 x 9, scraps of dusk-rose\n=== told\n"
    laid_out(record, tmp_path)
    worked = read(tmp_path)
    assert worked.errors == ()
    assert worked.archive.projects[0].cut_parts == ()
