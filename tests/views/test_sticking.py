"""What pages say of how parts are stuck and makes are packed, in both editions."""

from __future__ import annotations

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.figures_json import figures_json
from batchleaf.views.pages import BatchPage
from views.test_small import page, plain, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``sticking.archive``, worked out."""
    return worked_out("sticking.archive", tmp_path_factory.mktemp("sticking"))


def batch_page(figures: Figures, slug: str) -> BatchPage:
    """The page of one batch."""
    pages = {placed.address: placed.page for placed in all_pages(figures)}
    return page(pages, f"projects/{slug}/", BatchPage)


def details(shown: BatchPage) -> dict[str, str]:
    """What stands beside each part."""
    return {row.letter: plain("; ".join(row.details)) for row in shown.parts}


STUCK = {
    "A": "",
    "B": "stuck with double-sided tape",
    "C": "on foam squares, 4 each",
    "D": "ready-made; on glue dots, 2 each",
    "E": "stuck with paste",
    "F": "stuck with bench glue",
    "G": "",
}


def test_the_parts_say_what_they_are_stuck_with(figures: Figures) -> None:
    """Set on pieces with their number, or stuck with what has none; nothing of what is not stuck."""
    assert details(batch_page(figures, "many")) == STUCK
    assert details(batch_page(public_edition(figures, Told(), PLANNER), "many")) == STUCK


def test_what_the_record_lists_has_no_number_at_its_part(figures: Figures) -> None:
    """Two squares for one make are listed, and nobody knows which part has how many."""
    assert details(batch_page(figures, "listed"))["B"] == "on foam squares"


def test_an_edition_without_supplies_names_the_kind(figures: Figures) -> None:
    """Neither what it is called nor that it comes in pieces."""
    told = details(batch_page(public_edition(figures, Told(supplies=False), PLANNER), "many"))
    assert {letter: said for letter, said in told.items() if said} == {
        "B": "stuck with adhesive 3",
        "C": "stuck with adhesive 1",
        "D": "ready-made; stuck with adhesive 2",
        "E": "stuck with adhesive 4",
        "F": "stuck with glue",
    }


def notes(shown: BatchPage) -> dict[str, tuple[str, str]]:
    """Each supply that has a note, and how much of it there is."""
    return {row.supply.text: (row.note, plain(row.used)) for row in shown.cost.rows if row.note}


def test_the_list_of_supplies_says_what_is_packing(figures: Figures) -> None:
    """Ten of twelve are finished: ten envelopes, three bags for sets of four, a quarter sheet each."""
    packed = {
        "envelope": ("packing", "10"),
        "clear bag": ("some of it packing", "1 bag and 3 bags"),
        "tissue": ("packing", "2.5 sheets"),
    }
    mine = notes(batch_page(figures, "many"))
    assert mine.pop("chalk card") == ("some of it packing", "3 sheets and 5 sheets")
    assert {name: (note, used.removesuffix(" pieces")) for name, (note, used) in mine.items()} == packed
    theirs = notes(batch_page(public_edition(figures, Told(), PLANNER), "many"))
    assert theirs.keys() == notes(batch_page(figures, "many")).keys()


def test_a_plan_says_what_it_needs_for_sticking_and_packing(figures: Figures) -> None:
    """For all six that are begun: six times 2 x 40 mm of tape, two bags for four each."""
    shown = batch_page(figures, "planned")
    rows = [(row.supply.text, plain(row.used), row.note) for row in shown.cost.rows]
    assert rows[1:] == [
        ("double-sided tape", "0.48 m", ""),
        ("envelope", "6 pieces", "packing"),
        ("clear bag", "2 bags", "packing"),
    ]


def test_the_numbers_alone_say_what_each_part_takes(figures: Figures) -> None:
    """For one part, in the unit of the supply; none where the record lists it."""
    supplies = {one.slug: one for one in figures.archive.supplies}

    def stuck(slug: str) -> dict[str, object]:
        data = figures_json(figures.batches[slug], supplies, {}, figures.settings)
        return {part["letter"]: part.get("stuck_with") for part in data["parts"]}

    assert stuck("many") == {
        "A": None,
        "B": {"supply": "paper-tape", "amount": "2/25"},
        "C": {"supply": "foam-square", "amount": "4"},
        "D": {"supply": "glue-dot", "amount": "2"},
        "E": {"supply": "paste", "amount": None},
        "F": {"supply": "bench-glue", "amount": "1/2"},
        "G": None,
    }
    assert stuck("listed")["B"] == {"supply": "foam-square", "amount": None}
