"""What the page of a batch says of bench work, in both editions, and the table beside it."""

from __future__ import annotations

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures
from batchleaf.facts import Wait, Waiting, Work, WorkKind
from batchleaf.facts.works import Moment
from batchleaf.measure.lengths import Unit
from batchleaf.views.bench_words import about_minutes, waiting_in_words, work_in_words
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.pages import BatchPage, BenchView
from batchleaf.views.tables.all_tables import tables_of_batch
from batchleaf.views.tables.bench_work import bench_table
from views.test_small import page, plain, said, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``bench.archive``, worked out."""
    return worked_out("bench.archive", tmp_path_factory.mktemp("bench"))


def section(figures: Figures, slug: str) -> BenchView | None:
    """What the page of one batch says of bench work."""
    pages = {placed.address: placed.page for placed in all_pages(figures)}
    return page(pages, f"projects/{slug}/", BatchPage).bench


def rows(view: BenchView) -> list[tuple[str, ...]]:
    """Each work under its tool, as it is read."""
    return [
        (
            said(run.tool),
            run.when,
            row.work,
            row.parts,
            *row.details,
            row.pieces,
            row.at_once,
            row.strokes,
            row.wait,
        )
        for run in view.runs
        for row in run.rows
    ]


def test_works_stand_under_their_tools_in_order(figures: Figures) -> None:
    """Twelve strips, six of each paper; eleven cards; both sheets of strips are inked before the cuts."""
    view = section(figures, "slack")
    assert view is not None
    assert [tuple(plain(cell) for cell in row) for row in rows(view)] == [
        ("Kelp ink", "before cutting", "Ink B", "strip", "2 sheets", "1", "2", "dry 15 min"),
        ("Sea words", "after cutting", "Stamp B", "strip", "with kelp ink", "12", "1", "12", "dry 5 min"),
        # Six of 110 g/m² in two stacks, six of 170 in three, four corners each.
        ("The corner nip", "after cutting", "Round the corners of B", "strip", "4 strokes each", "12",
         "3 or 2", "20", ""),
        ("The board", "after cutting", "Score A at 20 mm down", "base", "11", "1", "11", "wait 5 min"),
        ("The board", "after cutting", "Score A", "base", "11", "1", "11", ""),
        ("By hand", "after cutting", "Fold A", "base", "11", "1", "11", ""),
    ]  # fmt: skip
    assert [plain(note) for note in view.notes] == [
        "Round B: 3 at once of B, reed paper and 2 at once of B, silt paper."
    ]


def test_the_estimate_stands_beside_what_the_record_says(figures: Figures) -> None:
    """Waiting is told apart, and nothing is put in the place of the time at the table."""
    view = section(figures, "slack")
    assert view is not None
    assert [plain(one) for one in view.sentences] == [
        "For the 11 cards begun, in this order.",
        # 2 x 60 + 12 x 15 + 20 x 5 + 22 x 10 + 11 x 8 = 708 s.
        "Cutting takes about 10 min, these works about 15 min, by estimate; sticking is not estimated.",
        "On top of that come 20 min of drying and 5 min of waiting.",
        "The record says 1 h 20 at the table.",
    ]


def test_a_batch_that_is_only_cut_has_no_such_section(figures: Figures) -> None:
    """Nor a table of it."""
    assert section(figures, "plain") is None
    batches = figures.batches.values()
    addresses = {table.address for batch in batches for table in tables_of_batch(batch, figures)}
    assert "projects/slack/bench.csv" in addresses
    assert "projects/plain/bench.csv" not in addresses


def test_others_see_the_same(figures: Figures) -> None:
    """All of it is what a reader does; where supplies are not told they go by their kind."""
    view = section(figures, "slack")
    public = section(public_edition(figures, Told(), PLANNER), "slack")
    unnamed = section(public_edition(figures, Told(supplies=False), PLANNER), "slack")
    assert view is not None
    assert public == view
    assert unnamed is not None
    assert said(unnamed.runs[0].tool) == "Ink"
    assert unnamed.runs[1].rows[0].details == ("with ink",)


def test_the_table_has_a_row_for_each_work_and_weight(figures: Figures) -> None:
    """Waiting stands in the first row of its work alone."""
    table = bench_table(figures.batches["slack"], figures)
    kept = [(row[1], row[2], row[3], row[6], row[8], row[9], row[10], row[11]) for row in table.rows]
    assert kept == [
        ("ink", "B", None, "reed-paper", 1, 1, 1, 15),
        ("ink", "B", None, "silt-paper", 1, 1, 1, None),
        ("stamp", "B", "sea words", "reed-paper", 6, 1, 6, 5),
        ("stamp", "B", "sea words", "silt-paper", 6, 1, 6, None),
        ("round", "B", "the corner nip", "reed-paper", 6, 3, 8, None),
        ("round", "B", "the corner nip", "silt-paper", 6, 2, 12, None),
        ("score", "A", "the board", "dune-card", 11, 1, 11, 5),
        ("score", "A", "the board", "dune-card", 11, 1, 11, None),
        ("fold", "A", None, "dune-card", 11, 1, 11, None),
    ]


@pytest.mark.parametrize(
    ("where", "words"),
    [
        ("", "Round the corners of A and B"),
        ("top", "Round the top corners of A and B"),
        ("bottom left", "Round the bottom left corner of A and B"),
    ],
)
def test_corners_are_named(where: str, words: str) -> None:
    """All of them, two, or one."""
    work = Work(WorkKind.ROUND, ("A", "B"), "", Moment.AFTER, where=where)
    assert work_in_words(work, Unit.MM) == words


def test_an_estimate_is_told_in_steps() -> None:
    """Rounded up, so that a short work takes some time as well."""
    assert [plain(about_minutes(seconds)) for seconds in (1, 300, 301, 3600)] == [
        "about 5 min",
        "about 5 min",
        "about 10 min",
        "about 1 h",
    ]
    assert plain(waiting_in_words((Wait(Waiting.DRY, 70), Wait(Waiting.DRY, 20)))) == "1 h 30 of drying"
