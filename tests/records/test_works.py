"""Bench work as records say it: lines, what follows without a line, and the long form of both."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts import CORNERS, Moment, Project, Wait, Waiting, Work, WorkKind
from batchleaf.measure.lengths import WRITTEN, Unit
from batchleaf.records.bench_lines import read_bench, spell_work
from records.test_cases import laid_out, read

ARCHIVE = """\
=== projects/inventory/bench.yml
tools:
  board: {name: the board, kind: score board}
  round-corner: {name: the corner punch, kind: corner punch}
  hole: {name: the hole punch, kind: punch, narrowest: 8}
  hot: {name: the heat tool, kind: heat tool}
  words: {name: words, kind: stamps, images: [10 x 5 low, 10 x 5 high]}
  leaves: {name: leaves, kind: dies, images: [10 x 10 leaf]}
  big-press: {name: the press, kind: die press, plate: 150 x 200}
supplies:
  ink: {name: ink, kind: ink, unit: pad}
=== projects/designs/boxed.yml
title: Boxed
base: box 60 x 60 x 30, lid 15
parts:
  B label: {size: 30 x 12, paper: strip, stamp: words 1 2}
bench:
  - stamp B, ink, dry 10 min
  - round B, round-corner
=== projects/a/project.yml
title: A
date: 2026-03-14
makes: 2
design: boxed
papers: {base: chalk-card, strip: ripple-green}
supplies: [ink]
BENCH
cut: [chalk-card 4 sheets, ripple-green 1 sheet]
=== told
"""


def works(tmp_path: Path, *more: str, tools: str = "") -> tuple[Work, ...]:
    """The bench work of a batch with these lines."""
    lines = [f"tools: [{tools}]"] if tools else []
    lines += ["bench:", *(f"  - {line}" for line in more)] if more else []
    laid_out(ARCHIVE.replace("BENCH\n", "".join(f"{line}\n" for line in lines)), tmp_path)
    return project(tmp_path).works


def project(tmp_path: Path) -> Project:
    """The only batch, which has no problem."""
    worked = read(tmp_path)
    assert not worked.errors
    return worked.archive.projects[0]


def in_full(works: tuple[Work, ...]) -> list[str]:
    """Each as a line."""
    return [spell_work(work, Unit.MM) for work in works]


def test_what_follows_from_scores_and_stamps_needs_no_line(tmp_path: Path) -> None:
    """Box and lid are scored and folded; of the design's lines the tool is the set; nobody names a board."""
    assert in_full(works(tmp_path)) == [
        "stamp B, words, ink, after cutting, dry 10 min",
        "round B, round-corner, after cutting",
        "score A and L, by hand, after cutting",
        "fold A and L, by hand, after cutting",
    ]


def test_the_only_tool_for_a_work_is_taken(tmp_path: Path) -> None:
    """The board for scoring alone: it is not made for folding."""
    assert in_full(works(tmp_path, tools="board, hole"))[2:] == [
        "score A and L, board, after cutting",
        "fold A and L, by hand, after cutting",
    ]


def test_a_line_of_the_batch_stands_instead_of_the_designs(tmp_path: Path) -> None:
    """For the same work on the same part; a line for one part leaves the others to follow."""
    assert in_full(works(tmp_path, "stamp B, by hand, times 2", "score A, board, wait 5 min")) == [
        "round B, round-corner, after cutting",
        "stamp B, by hand, after cutting, times 2",
        "score A, board, after cutting, wait 5 min",
        "score L, board, after cutting",
        "fold A and L, by hand, after cutting",
    ]


def test_a_line_that_says_where_comes_on_top(tmp_path: Path) -> None:
    """A further score, which the part does not have, leaves its own to be scored."""
    assert in_full(works(tmp_path, "score A at 20 down, by hand"))[2:] == [
        "score A at 20 mm down, by hand, after cutting",
        "score A and L, by hand, after cutting",
        "fold A and L, by hand, after cutting",
    ]


@pytest.mark.parametrize(
    ("line", "moment"),
    [
        ("ink A, ink", Moment.BEFORE),
        ("punch B, hole", Moment.AFTER),  # 12 mm, and the punch holds 8
        ("punch B, round-corner", Moment.BETWEEN),  # nothing is said of it, and 12 mm are below 20
        ("punch B, hole, between cuts", Moment.BETWEEN),
        ("emboss B, hot", Moment.AFTER),
        ("die-cut B, big-press", Moment.AFTER),
    ],
)
def test_each_work_has_its_usual_moment(line: str, moment: Moment, tmp_path: Path) -> None:
    """Unless the line names one."""
    kind = read_bench(line, Unit.MM).kind
    found = [work.moment for work in works(tmp_path, line) if work.kind is kind]
    assert found == [moment]


def test_what_is_trimmed_later_is_embossed_before_that(tmp_path: Path) -> None:
    """It is cut larger; where it is stamped, stamps come first, and those after the cuts."""
    case = ARCHIVE.replace("stamp: words 1 2}", "oversize: 3}").replace("  - stamp B, ink, dry 10 min\n", "")
    laid_out(case.replace("BENCH", "bench: [emboss B]"), tmp_path)
    assert in_full(project(tmp_path).works)[1] == "emboss B, by hand, between cuts"


def test_tools_and_supplies_of_lines_belong_to_the_batch(tmp_path: Path) -> None:
    """The tools that a line names need not be listed once more."""
    works(tmp_path, "punch A, hole", tools="board")
    assert project(tmp_path).tools == ("board", "words", "round-corner", "hole")


def test_what_is_written_out_means_the_same(tmp_path: Path) -> None:
    """All lines with all that they mean, and no other."""
    short = works(tmp_path, "punch A top, hole, wait 90 min", "emboss B", tools="board, hot")
    again = works(tmp_path / "long", *in_full(short), tools=", ".join(project(tmp_path).tools))
    assert again == short


KINDS = st.sampled_from(list(WorkKind))


@st.composite
def a_work(draw: st.DrawFn) -> Work:
    """Any work that a line can say."""
    kind = draw(KINDS)
    letters = tuple(sorted(draw(st.sets(st.sampled_from("ABCDEZ"), min_size=1))))
    one = Work(
        kind=kind,
        letters=letters,
        tool=draw(st.sampled_from(["", "hole-punch", "words-2"])),
        moment=draw(st.sampled_from(list(Moment))),
        supply=draw(st.sampled_from(["", "sea-ink"])),
        times=draw(st.integers(0, 99)),
        wait=draw(st.none() | st.builds(Wait, st.sampled_from(list(Waiting)), st.integers(1, 5999))),
    )
    if kind is WorkKind.SCORE:
        at = st.integers(1, 4000).map(lambda n: Fraction(n, 4))
        places = tuple(draw(st.lists(at, max_size=3)))
        return replace(one, at=places, runs_down=bool(places) and draw(st.booleans()))
    if kind in (WorkKind.ROUND, WorkKind.PUNCH):
        return replace(one, where=draw(st.sampled_from(list(CORNERS))))
    return one


@given(a_work(), st.sampled_from(WRITTEN))
def test_a_work_is_read_back_from_its_line(work: Work, unit: Unit) -> None:
    """In any unit of the record, with nothing left to be supposed."""
    line = read_bench(spell_work(work, unit), unit)
    assert (line.kind, line.letters, line.where, line.at, line.runs_down, line.moment, line.wait) == (
        work.kind, work.letters, work.where, work.at, work.runs_down, work.moment, work.wait,
    )  # fmt: skip
    assert (line.times, line.by_hand) == (work.times, not work.tool)
    assert line.named == tuple(one for one in (work.tool, work.supply) if one)


@pytest.mark.parametrize(
    ("text", "same"),
    [
        ("die cut B", "die-cut B"),
        ("round the corners of A and B", "round A and B"),
        ("round corners A top", "round A top"),
        ("punch A, B and C,  hole ,between cuts", "punch A and B and C, between cuts, hole"),
        ("ink A, dry 1 h 30", "ink A, dry 90 min"),
    ],
)
def test_a_line_may_be_written_in_other_ways(text: str, same: str) -> None:
    """Longer words, spaces, and the pieces in any order."""
    assert read_bench(text, Unit.MM) == read_bench(same, Unit.MM)
