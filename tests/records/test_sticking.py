"""What parts are stuck with, and how much that takes."""

from __future__ import annotations

import string
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.used import Taken, Used, used_by
from batchleaf.facts import (
    Coat,
    Dots,
    Part,
    Problem,
    Project,
    Purpose,
    Sides,
    Sticks,
    Strips,
    Stuck,
    Use,
    Weight,
)
from batchleaf.measure.amounts import mm_in
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.archive import Reading, read_archive
from batchleaf.records.sticking import sticking_uses
from batchleaf.records.sticks import read_sticks
from batchleaf.telling import told
from core.drawers import part
from records.test_cases import SETTINGS, laid_out

SUPPLIES = """\
supplies:
  paper-tape: {name: double-sided tape, kind: adhesive, unit: m, sticks: two long sides}
  foam-square:
    name: foam square
    kind: adhesive
    sticks: 1 per 20 x 30 mm, at least 4
  bench-glue: {name: bench glue, kind: adhesive, unit: ml, sticks: 1 ml per 100 x 100 mm}
  paste: {name: paste, kind: adhesive, unit: pot}
  star-sticker: {name: star, kind: stickers, size: 18 x 18}
"""
HEAD = "title: A\ndate: 2026-03-14\nmakes: 10 of 12\nbase: card A6, side fold\npapers:\n  base: chalk-card\n"


def read(folder: Path) -> Reading:
    """The archive in a folder, without its figures."""
    return read_archive(folder / "projects", SETTINGS)


def errors_of(reading: Reading) -> list[Problem]:
    """What stops the records from being read as they are meant."""
    return [one for one in reading.problems if one.weight is Weight.ERROR]


def mm(width: str, height: str) -> Size:
    """A size in mm."""
    return Size(Fraction(width), Fraction(height))


def project(record: str, folder: Path, drawer: str = "", head: str = HEAD, design: str = "") -> Project:
    """The one batch of an archive; ``drawer`` is what stands above its supplies."""
    laid_out(
        f"=== projects/a/project.yml\n{head}{record}=== projects/inventory/stick.yml\n{drawer}{SUPPLIES}"
        f"{design and f'=== projects/designs/stuck.yml{chr(10)}{design}'}=== told\n",
        folder,
    )
    reading = read(folder)
    assert [told(one) for one in errors_of(reading)] == []
    return reading.archive.projects[0]


def stuck(project: Project) -> dict[str, Stuck | None]:
    """What each part is stuck with."""
    return {part.letter: part.stuck for part in project.parts}


def sticking(project: Project) -> list[tuple[str, Fraction | None, Fraction | None]]:
    """What is used to stick with: in all, and for one make."""
    uses = (use for use in project.uses if use.purpose is Purpose.STICKING)
    return [(use.supply, use.quantity, use.per_make) for use in uses]


# --- worked out by hand --------------------------------------------------------


@pytest.mark.parametrize(
    ("written", "unit", "size", "needed"),
    [
        # A strip along each of the two long sides is common practice for a mat: 2 x 70 mm.
        ("two long sides", "m", mm("44", "70"), "0.14"),
        ("one long side", "m", mm("44", "70"), "0.07"),
        ("two short sides", "m", mm("44", "70"), "0.088"),
        ("one short side", "cm", mm("44", "70"), "4.4"),
        # All round, as vellum is held: 2 x (44 + 70) mm.
        ("all sides", "mm", mm("44", "70"), "228"),
        # A mat of 4 x 5 1/4 in takes 10 1/2 in; a foot has twelve.
        ("two long sides", "ft", mm("101.6", "133.35"), "7/8"),
        ("two long sides", "in", mm("101.6", "133.35"), "21/2"),
        # 1 for each 600 mm²: 30 x 12 are 360 mm² and would do with one; four is common practice,
        # one under each corner.
        ("1 per 20 x 30 mm, at least 4", "piece", mm("30", "12"), "4"),
        ("1 per 20 x 30 mm", "piece", mm("30", "12"), "1"),
        # 95 x 70 are 6,650 mm², 11.08 times 600: twelve.
        ("1 per 20 x 30 mm, at least 4", "piece", mm("95", "70"), "12"),
        ("1 per 20 x 30", "piece", mm("60", "100"), "10"),
        ("2 dots per 1 x 1 in at least 3", "dot", mm("50.8", "50.8"), "8"),
        ("1 ml per 100 x 100 mm", "ml", mm("44", "70"), "0.308"),
        ("1 ml per 100 x 100 mm", "l", mm("44", "70"), "0.000308"),
        ("1/2 g per 10 x 10 cm", "g", mm("50", "50"), "1/8"),
    ],
)
def test_how_much_sticks_one_part(written: str, unit: str, size: Size, needed: str) -> None:
    """By its sides, by its area rounded up, or by its area exactly; each worked out by hand."""
    assert read_sticks(written, unit, f"{unit}s", Unit.MM).for_one(size) == Fraction(needed)


def test_a_batch_takes_what_its_parts_take(tmp_path: Path) -> None:
    """Worked out by hand, for ten finished of twelve: each part as often as a make has it, no extras."""
    found = project(
        "parts:\n"
        # 2 x 138 mm.
        "  B mat: border 5, base\n"
        # Three times 2 x 70 mm, whichever measure comes first.
        "  C strip: {size: 70 x 44, paper: base, each: 3, extra: 5}\n"
        # Cut by hand from scraps: 2 x 30 mm.
        "  D leaf: 20 x 30, scraps of chalk-card\n"
        # 600 mm², two of them, four under each: common practice, one under each corner.
        "  E label: {size: 20 x 30, paper: base, each: 2, stick: foam-square}\n"
        "  F star: ready star-sticker\n"
        "cut: [chalk-card 9 sheets]\n",
        tmp_path,
        "stick: paper-tape\n",
    )
    assert stuck(found) == {
        "A": None,
        "B": Stuck("paper-tape", Fraction("0.276")),
        "C": Stuck("paper-tape", Fraction("0.14")),
        "D": Stuck("paper-tape", Fraction("0.06")),
        "E": Stuck("foam-square", Fraction(4)),
        "F": None,
    }
    # 276 + 3 x 140 + 60 = 756 mm.
    assert sticking(found) == [
        ("paper-tape", Fraction("7.56"), Fraction("0.756")),
        ("foam-square", Fraction(80), Fraction(8)),
    ]


# --- laws ----------------------------------------------------------------------

LENGTHS = st.fractions(Fraction(1, 5), 2000, max_denominator=64)
SIZES = st.builds(Size, LENGTHS, LENGTHS)
UNITS = st.sampled_from(["mm", "cm", "m", "in", "ft", "yd"])
STRIPS = st.builds(Strips, st.sampled_from(Sides), UNITS.map(mm_in))
DOTS = st.builds(Dots, st.integers(1, 9), SIZES, st.integers(1, 9))
COATS = st.builds(Coat, st.fractions(Fraction(1, 100), 100, max_denominator=100), SIZES)
PATTERNS: st.SearchStrategy[Sticks] = STRIPS | DOTS | COATS


@given(PATTERNS, SIZES)
def test_a_part_takes_as_much_however_it_is_turned(pattern: Sticks, size: Size) -> None:
    """The two long sides are the same two."""
    assert pattern.for_one(size.turned) == pattern.for_one(size)


@given(SIZES, UNITS.map(mm_in))
def test_strips_are_the_sides_and_nothing_is_rounded(size: Size, in_mm: Fraction) -> None:
    """Long and short sides together are all sides, which are the outline of the part."""
    along = {sides: Strips(sides, in_mm).for_one(size) * in_mm for sides in Sides}
    assert along[Sides.TWO_LONG] == 2 * along[Sides.ONE_LONG] >= along[Sides.TWO_SHORT]
    assert along[Sides.TWO_SHORT] == 2 * along[Sides.ONE_SHORT]
    assert along[Sides.ALL] == along[Sides.TWO_LONG] + along[Sides.TWO_SHORT]
    assert along[Sides.ALL] == size.width + size.width + size.height + size.height


@given(DOTS, SIZES)
def test_dots_are_the_fewest_that_are_enough(dots: Dots, size: Size) -> None:
    """Whole ones, as many as the area asks for or the least; one fewer would be too few."""
    number = dots.for_one(size)
    needed = size.area * dots.count
    assert number.denominator == 1
    assert number >= dots.least
    assert number * dots.area.area >= needed
    assert number == dots.least or (number - 1) * dots.area.area < needed


@given(COATS, LENGTHS, LENGTHS, LENGTHS)
def test_glue_goes_by_area_alone(coat: Coat, width: Fraction, left: Fraction, right: Fraction) -> None:
    """A part and its halves, however it is cut in two, take as much."""
    pieces = coat.for_one(Size(width, left)) + coat.for_one(Size(width, right))
    assert pieces == coat.for_one(Size(width, left + right))


def parts_of(ones: Sequence[tuple[Stuck | None, int, int]]) -> list[Part]:
    """Parts that are stuck so, each so often and with so many extras."""
    letters = string.ascii_uppercase
    return [
        replace(part(letter, 20, 30, "card", each=each, extra=extra), stuck=stuck)
        for letter, (stuck, each, extra) in zip(letters, ones, strict=False)
    ]


AMOUNTS = st.fractions(Fraction(1, 1000), 100, max_denominator=1000)
STUCK = st.none() | st.builds(Stuck, st.sampled_from(["tape", "foam", "glue"]), AMOUNTS | st.none())
ONES = st.lists(st.tuples(STUCK, st.integers(1, 5), st.integers(0, 5)), max_size=6)


@given(ONES, st.integers(0, 60), st.sets(st.sampled_from(["tape", "foam"])))
def test_n_makes_take_n_times_as_much_as_one(
    ones: list[tuple[Stuck | None, int, int]], makes: int, listed: set[str]
) -> None:
    """Each adhesive once, exactly the sum of its parts; none that the record lists itself; no extras."""
    parts = parts_of(ones)
    one, many = list(sticking_uses(parts, listed, 1)), list(sticking_uses(parts, listed, makes))
    assert [use.supply for use in one] == list(
        dict.fromkeys(one.stuck.supply for one in parts if one.stuck and one.stuck.supply not in listed)
    )
    for alone, together in zip(one, many, strict=True):
        assert alone.quantity == alone.per_make == together.per_make
        assert together.quantity == makes * (alone.quantity or 0)
        mine = [(one.stuck, one.each) for one in parts if one.stuck and one.stuck.supply == alone.supply]
        assert alone.per_make == sum((stuck.amount or 0) * each for stuck, each in mine)


# --- who says it ---------------------------------------------------------------

LABEL = "parts:\n  B label:\n    size: 20 x 30\n    paper: chalk-card\n"
CUT = "cut: [chalk-card 9 sheets]\n"
DESIGN = "title: Stuck\nbase: card A6, side fold\n"
OF_DESIGN = "title: A\ndate: 2026-03-14\nmakes: 10\ndesign: stuck\npapers:\n  base: chalk-card\n"
TAPE, FOAM = Stuck("paper-tape", Fraction("0.06")), Stuck("foam-square", Fraction(4))
GLUE = Stuck("bench-glue", Fraction("0.06"))


@pytest.mark.parametrize(
    ("drawer", "batch", "part", "expected"),
    [
        ("", "", "", None),
        ("paper-tape", "", "", TAPE),
        ("", "foam-square", "", FOAM),
        ("paper-tape", "foam-square", "", FOAM),
        ("paper-tape", "nothing", "", None),
        ("paper-tape", "nothing", "bench-glue", GLUE),
        ("paper-tape", "foam-square", "bench-glue", GLUE),
        ("", "", "foam-square 6", Stuck("foam-square", Fraction(6))),
        ("", "", "foam-square 6 pieces", Stuck("foam-square", Fraction(6))),
        ("paper-tape", "foam-square", "bench-glue 2 ml", Stuck("bench-glue", Fraction(2))),
        ("paper-tape", "", "paper-tape 45 mm", Stuck("paper-tape", Fraction("0.045"))),
        ("", "", "paste 1/40 pot", Stuck("paste", Fraction(1, 40))),
        ("paper-tape", "foam-square", "nothing", None),
    ],
)
def test_the_nearest_says_it(
    drawer: str, batch: str, part: str, expected: Stuck | None, tmp_path: Path
) -> None:
    """The part itself, else its batch, else the drawer; how much one takes stands at a part alone."""
    record = LABEL + (f"    stick: {part}\n" if part else "") + (f"stick: {batch}\n" if batch else "") + CUT
    found = project(record, tmp_path, f"stick: {drawer}\n" if drawer else "")
    assert stuck(found) == {"A": None, "B": expected}


@pytest.mark.parametrize(
    ("design", "of_part", "batch", "expected"),
    [
        ("foam-square", "", "", FOAM),
        ("foam-square", "bench-glue", "", GLUE),
        ("foam-square", "", "bench-glue", GLUE),
        ("", "bench-glue", "foam-square", GLUE),
        ("nothing", "", "", None),
        ("", "nothing", "foam-square", None),
    ],
)
def test_a_design_says_it_for_its_batches(
    design: str, of_part: str, batch: str, expected: Stuck | None, tmp_path: Path
) -> None:
    """Before the drawer, and after what the batch says for all of its parts."""
    made = f"{DESIGN}{LABEL}" + (f"    stick: {of_part}\n" if of_part else "")
    made += f"stick: {design}\n" if design else ""
    record = f"stick: {batch}\n" if batch else ""
    found = project(record + CUT, tmp_path, "stick: paper-tape\n", OF_DESIGN, made)
    assert stuck(found)["B"] == expected


def test_what_carries_the_others_is_not_stuck(tmp_path: Path) -> None:
    """Neither a box nor its lid, nor a part that lies on none, whatever is said for all of them."""
    head = "title: A\ndate: 2026-03-14\nmakes: 10\n"
    papers = "papers: {base: chalk-card}\nstick: foam-square\n"
    top = "parts:\n  B top: {size: 20 x 30, paper: base, on: L}\n"
    box = project(f"base: box 60 x 60 x 30, lid 15\n{papers}{top}{CUT}", tmp_path / "box", head=head)
    assert stuck(box) == {"A": None, "L": None, "B": FOAM}
    loose = project(
        f"thing: card\n{papers}parts:\n  A one: 20 x 30, base\n  B two: 20 x 30, base\n{CUT}",
        tmp_path / "loose",
        head=head,
    )
    assert stuck(loose) == {"A": None, "B": FOAM}


def test_what_is_bought_ready_is_stuck_where_it_says_so(tmp_path: Path) -> None:
    """A sticker sticks by itself; a brass anchor says what holds it."""
    found = project(
        "stick: paper-tape\nparts:\n  B star: ready star-sticker\n"
        "  C anchor: {ready: star-sticker, stick: bench-glue 1/10 ml}\n",
        tmp_path,
        "stick: paper-tape\n",
    )
    assert stuck(found) == {"A": None, "B": None, "C": Stuck("bench-glue", Fraction(1, 10))}


# --- what the record lists itself ----------------------------------------------


@pytest.mark.parametrize(
    ("line", "use"),
    [
        ("paper-tape 90 mm", Use("paper-tape", Fraction("0.9"), Fraction("0.09"))),
        ("paper-tape 2 m in all", Use("paper-tape", Fraction(2))),
        ("paper-tape", Use("paper-tape", None)),
        ("paper-tape 0 mm", Use("paper-tape", Fraction(0), Fraction(0))),
    ],
)
@pytest.mark.parametrize("where", ["batch", "design"])
def test_a_line_of_supplies_stands_instead(line: str, use: Use, where: str, tmp_path: Path) -> None:
    """Measured, or unmeasured on purpose: nothing is counted twice, and it is for sticking all the same."""
    supplies = f"supplies: [{line}]\n"
    parts = LABEL + "  C label:\n    size: 20 x 30\n    paper: chalk-card\n    stick: foam-square\n"
    if where == "batch":
        found = project(parts + supplies + CUT, tmp_path, "stick: paper-tape\n")
    else:
        found = project(CUT, tmp_path, "stick: paper-tape\n", OF_DESIGN, DESIGN + parts + supplies)
    assert stuck(found) == {"A": None, "B": Stuck("paper-tape", None), "C": FOAM}
    assert [(one.supply, one.quantity, one.per_make, one.purpose) for one in found.uses] == [
        (use.supply, use.quantity, use.per_make, Purpose.STICKING),
        ("foam-square", Fraction(40), Fraction(4), Purpose.STICKING),
    ]


def test_an_adhesive_without_a_pattern_may_be_listed(tmp_path: Path) -> None:
    """A pot of paste that nobody measures sticks the parts, and what it takes is not told."""
    found = project(f"stick: paste\n{LABEL}supplies: [paste]\n{CUT}", tmp_path)
    assert stuck(found)["B"] == Stuck("paste", None)
    assert found.uses == (Use("paste", None, purpose=Purpose.STICKING),)


def test_nothing_changes_where_nobody_speaks_of_sticking(tmp_path: Path) -> None:
    """A line of tape is what it was: worked in, and no part is stuck with it."""
    found = project(f"{LABEL}supplies: [paper-tape 90 mm, paste]\n{CUT}", tmp_path)
    assert stuck(found) == {"A": None, "B": None}
    assert found.uses == (Use("paper-tape", Fraction("0.9"), Fraction("0.09")), Use("paste", None))


# --- when it leaves the drawer -------------------------------------------------


@pytest.mark.parametrize(
    ("status", "makes", "counted", "taken"),
    [
        ("made", "10 of 12", 10, Fraction("0.6")),
        ("cut", "0 of 12", 0, None),
        ("cut", "3 of 12", 3, Fraction("0.18")),
        ("planned", "0 of 12", 12, None),
    ],
)
def test_it_is_counted_as_other_uses_are(
    status: str, makes: str, counted: int, taken: Fraction | None, tmp_path: Path
) -> None:
    """For the finished ones; of what lies in parts nothing is stuck yet; of what is planned all will be."""
    head = HEAD.replace("10 of 12", makes)
    found = project(f"status: {status}\n{LABEL}{CUT}", tmp_path, "stick: paper-tape\n", head)
    assert sticking(found) == [("paper-tape", counted * Fraction("0.06"), Fraction("0.06"))]
    used = [one for one in used_by(found) if one.supply == "paper-tape"]
    assert used == ([] if taken is None else [Used("paper-tape", (Taken(None, taken),))])


# --- what the drawer says for all ----------------------------------------------

SAYS_NOTHING = "does not say how much of it sticks a part; write sticks for it, like"


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("paper-tap", "“paper-tap” is not in the drawer; did you mean “paper-tape”?"),
        ("double-sided tape", "“double-sided tape” is “paper-tape” in the drawer; write it so"),
        ("paste", f"“paste” {SAYS_NOTHING} “1 per 20 x 30 mm, at least 4”"),
        ("jute-cord", f"“jute-cord” {SAYS_NOTHING} “two long sides”"),
        (
            "paper-tape 2 m",
            "“paper-tape 2 m” says how much one part takes, which stands at the part; write paper-tape alone",
        ),
        ("nothing", "parts are not stuck where nobody says with what; leave stick out"),
    ],
)
def test_what_the_drawer_cannot_say(line: str, sentence: str, tmp_path: Path) -> None:
    """Told once, at its line, and not again at each batch."""
    laid_out(
        f"=== projects/inventory/stick.yml\nstick: {line}\n{SUPPLIES}"
        f"=== projects/a/project.yml\n{HEAD}{LABEL}{CUT}=== told\n",
        tmp_path,
    )
    (problem,) = errors_of(read(tmp_path))
    assert (problem.place.file, problem.place.line, problem.place.column) == (
        "projects/inventory/stick.yml",
        1,
        8,
    )
    assert problem.sentence == sentence


def test_a_faulty_adhesive_is_told_once(tmp_path: Path) -> None:
    """What the drawer says of it is wrong; that parts are stuck with it is no second problem."""
    supplies = SUPPLIES.replace("two long sides", "round and round")
    record = f"{HEAD}stick: paper-tape\n{LABEL}    stick: paper-tape 2 m\n{CUT}"
    laid_out(
        f"=== projects/inventory/stick.yml\nstick: paper-tape\n{supplies}"
        f"=== projects/a/project.yml\n{record}=== told\n",
        tmp_path,
    )
    assert [problem.place.line for problem in errors_of(read(tmp_path))] == [3]
