"""What pages say of one small archive, worked out by hand beside each check.

The archive (``small.archive``) has a batch with spoiled makes, scraps without a
known price, two papers of which one has an up, a piece kept of each and a count;
a plain one; one whose record does not say what was cut; and one that is planned.
"""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

import pytest

from batchleaf.core.figures import Figures, all_in_full
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.pages import (
    BatchPage,
    DrawerPage,
    HomePage,
    HowPage,
    ItemPage,
    Line,
    Page,
    SeriesIndexPage,
    SeriesPage,
)
from core.test_for_makes import COUNT, REMEMBERED
from records.test_cases import laid_out, read
from whole_site import all_pages

Pages = dict[str, Page]
P = TypeVar("P")
NBSP = "\u00a0"


def plain(text: str) -> str:
    """With ordinary spaces."""
    return text.replace(NBSP, " ")


def said(line: Line) -> str:
    """A line as a reader hears it."""
    return plain("".join(piece if isinstance(piece, str) else piece.text for piece in line))


def worked_out(archive: str, folder: Path) -> Figures:
    """The figures of an archive that lies beside the tests as one text."""
    laid_out((Path(__file__).parent / archive).read_text(encoding="utf-8"), folder)
    worked = read(folder)
    assert worked.figures is not None
    return worked.figures


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The small archive, worked out, with all that only its pages ask for."""
    figures = worked_out("small.archive", tmp_path_factory.mktemp("small"))
    return all_in_full(figures, REMEMBERED, COUNT)


@pytest.fixture(scope="module")
def pages(figures: Figures) -> Pages:
    """Its pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


def page(pages: Pages, address: str, kind: type[P]) -> P:
    """The page at an address, of the kind it should be."""
    found = pages[address]
    assert isinstance(found, kind)
    return found


def test_a_batch_with_an_unknown_price_says_at_least(pages: Pages) -> None:
    """Chalk 2 x 0.50; fern and plum 0.50 each less a quarter kept (12.5 cents, so 13); ten beads 0.10: 1.84.

    Ten tags: 0.184 each. The two scraps of moss card have no known price.
    """
    first = page(pages, "projects/first/", BatchPage)
    assert said(first.sentence) == (
        "10 tags from 2 sheets of chalk card, 1 sheet each of fern paper and plum paper and 2 scraps of moss"
        " card. At least 0.18 € each (without the moss card), 1 h 10 at the table."
    )
    rows = [(row.supply.text, plain(row.used), row.batch, row.one) for row in first.cost.rows]
    assert rows == [
        ("chalk card", "2 sheets", "1.00", "0.10"),
        ("fern paper", "1 sheet", "0.37", "0.04"),
        ("plum paper", "1 sheet", "0.37", "0.03"),
        ("beads", "10 beads", "0.10", "0.01"),
        ("moss card", "2 scraps 50 × 100", "not known", "not known"),
        ("ink", "not measured", "", ""),
    ]
    assert (first.cost.total_batch, first.cost.total_one) == ("at least 1.84", "at least 0.18")
    assert first.cost.notes == (
        "2 tags were spoiled; the paper is shared out among the finished ones.",
        "Not in the sum, since the price is not known: the moss card.",
        "Used without a measure, and not in the sum: ink.",
        "At the prices last paid, one would cost at least 0.19\u00a0€ (without moss card).",
    )


def test_shares_that_were_fitted_to_their_sum_are_explained(pages: Pages) -> None:
    """Fern and plum cost the same, and of one tag 4 cents and 3, since 18.4 cents are 10 + 4 + 3 + 1."""
    first = page(pages, "projects/first/", BatchPage)
    shares = {row.supply.text: row.one for row in first.cost.rows}
    assert (shares["fern paper"], shares["plum paper"]) == ("0.04", "0.03")
    (cost,) = [one for one in page(pages, "how/", HowPage).sections if one.anchor == "cost"]
    assert any(
        "so that the column adds up" in text and "a cent more or less" in text for text in cost.paragraphs
    )


def test_its_paper_is_accounted_for_to_a_hundred_per_cent(pages: Pages) -> None:
    """Cut 2 x 90,000 + 2 x 40,000 + 2 x 5,000; in ten tags 10 x (5,400 + 1,500 + 900); kept 2 x 10,000."""
    first = page(pages, "projects/first/", BatchPage)
    assert plain(first.paper) == (
        "Of all that was cut, 29 % is in the 10 tags, 7 % was kept and 64 % is waste, the 2 spoiled tags with"
        " it. 10 is the most these sheets can give: each scrap of moss card gives at most 5 of label C."
    )


def test_a_kept_piece_lies_as_its_pattern_wants(pages: Pages) -> None:
    """Fern has an up, so its piece stays 200 across; plum has none, so the shorter side comes first."""
    first = page(pages, "projects/first/", BatchPage)
    assert [plain(note) for note in first.paper_notes] == [
        "Kept: 1 of 200 × 50 mm (fern paper) and 1 of 50 × 200 mm (plum paper)."
    ]


def test_what_one_sheet_gives(pages: Pages) -> None:
    """60 x 90 on 300 x 300: 5 x 3 in a grid; 3 rows of 5 and 3 turned below hold more.

    50 x 30 may not be turned, since fern has an up: 4 x 6 on 200 x 200, on plum as well.
    """
    first = page(pages, "projects/first/", BatchPage)
    assert first.parts_notes[:2] == (
        "One sheet of chalk card gives 16 of A, 15 in a plain grid.",
        "One sheet of fern paper or plum paper gives 24 of B.",
    )


def test_the_plans_say_how_far_they_reach_and_what_they_do_without(pages: Pages) -> None:
    """Ten labels are all that the scraps give; ten bases need one sheet, and the papers are dealt round."""
    first = page(pages, "projects/first/", BatchPage)
    assert first.plan_intro.startswith("3 sheets and 2 scraps, 3 plans.")
    assert first.plan_notes == (
        "These plans give 10 tags, and take the scraps first.",
        "They do without 1 sheet of the chalk card.",
    )
    assert "Cut 1 sheet each of fern paper and plum paper like this, 200 × 200 mm." in [
        said(plan.instruction) for plan in first.plans
    ]


def test_cautions_come_once_and_the_most_serious_first(pages: Pages) -> None:
    """Beads, then the blade, then what labels say."""
    cautions = page(pages, "projects/first/", BatchPage).cautions
    assert [caution.split()[0] for caution in cautions] == ["Small", "A", "Read"]


def test_whoever_is_shown_a_plan_is_told_of_the_blade(pages: Pages) -> None:
    """Before anything is cut as well; where nobody knows of any cutting, there is no such caution."""
    assert any("blade" in one for one in page(pages, "projects/fourth/", BatchPage).cautions)
    assert not any("blade" in one for one in page(pages, "projects/third/", BatchPage).cautions)


def test_paper_that_the_record_does_not_state_is_not_free(figures: Figures, pages: Pages) -> None:
    """Twelve beads of a cent; what the paper cost is not known."""
    third = page(pages, "projects/third/", BatchPage)
    assert said(third.sentence) == "6 tags. At least 0.02 € each (without the paper)."
    assert [problem.sentence for problem in figures.problems] == [
        "the record does not say what was cut, so the paper is not in the cost"
    ]


def test_a_planned_batch_says_what_it_needs_and_counts_nowhere(pages: Pages) -> None:
    """Two A6 blanks from a sheet: 15 sheets for 30; fifteen strips from each of two papers."""
    fourth = page(pages, "projects/fourth/", BatchPage)
    assert said(fourth.sentence) == (
        "30 cards planned; they need 15 sheets of chalk card and 1 sheet each of fern paper and plum paper."
    )
    assert [(row.supply.text, plain(row.used)) for row in fourth.cost.rows] == [
        ("chalk card", "15 sheets"),
        ("fern paper", "1 sheet"),
        ("plum paper", "1 sheet"),
        ("beads", "30 beads"),
    ]
    assert fourth.cost.used_label == "Needed"
    assert fourth.paper == ""
    assert [(one.title, one.sentence) for one in fourth.scoring] == [
        ("Score A", "Score every A at 105\u00a0mm along its long side before it is folded.")
    ]
    home = page(pages, "", HomePage)
    assert home.title == "Three batches"
    # Used 78,000 + 124,320 of 270,000 + 180,000 mm².
    assert said(home.sentence) == (
        "20 pieces since February 2026 from 6 sheets and 2 scraps. Of all the paper cut, 45 % is in finished"
        " pieces."
    )


def test_a_planned_batch_says_what_the_drawer_lacks(pages: Pages) -> None:
    """Five sheets of chalk card were counted; of the patterned papers three are left, and one is enough."""
    fourth = page(pages, "projects/fourth/", BatchPage)
    assert fourth.plan_notes[1:] == ("The drawer has 5 of the 15 sheets of chalk card.",)
    for made in ("first", "second"):
        assert "The drawer" not in " ".join(page(pages, f"projects/{made}/", BatchPage).plan_notes)


def test_what_is_planned_stands_after_the_gallery(pages: Pages) -> None:
    """On the first page and in its series: never among what was made, however late its date."""
    for address in ("", "series/tides/"):
        shown = pages[address]
        assert isinstance(shown, HomePage | SeriesPage)
        assert "Fourth" not in [entry.title for entry in shown.entries]
        (coming,) = shown.to_come
        assert (coming.batch.text, coming.date) == ("Fourth", "1 June 2026")
        assert plain(coming.line) == (
            "30 cards planned; they need 15 sheets of chalk card and 1 sheet each of fern paper and plum"
            " paper."
        )
    assert [entry.title for entry in page(pages, "", HomePage).entries] == ["Third", "Second", "First"]


def test_a_batch_without_a_photo_is_drawn(pages: Pages) -> None:
    """One make from the front: an A6 card, and a tag, though nobody knows from which sheets."""
    entries = {entry.title: entry for entry in page(pages, "", HomePage).entries}
    for title, width, height in (("Second", 105, 148), ("Third", 60, 90)):
        frame, base = (shape for shape in entries[title].stand_in if isinstance(shape, Box))
        assert (frame.role, base.role) == ("frame", "base")
        assert {(box.width, box.height) for box in (frame, base)} == {(width, height)}


def test_a_series_sums_what_was_made(pages: Pages) -> None:
    """At least 1.84 and 1.00; the planned batch stands in its place and adds nothing."""
    tides = page(pages, "series/tides/", SeriesPage)
    assert said(tides.sentence) == "14 pieces in 2 batches, and 1 planned; made from 6 sheets and 2 scraps."
    rows = [
        (r.batch.text, r.makes, r.sheets, r.could_have, r.cost, r.one) for r in (*tides.rows, tides.total)
    ]
    assert rows == [
        ("First", "10", "4 + 2 scraps", "10", "at least 1.84", "at least 0.18"),
        ("Second", "4", "2", "4", "1.00", "0.25"),
        ("Fourth", "planned", "", "", "", ""),
        ("Together", "14", "6 + 2 scraps", "14", "at least 2.84", ""),
    ]
    index = page(pages, "series/", SeriesIndexPage)
    assert [(row.series.text, row.line) for row in index.rows] == [
        ("Other", "6 pieces in 1 batch."),
        ("Tides", "14 pieces in 2 batches, and 1 planned."),
    ]


def test_neighbours_are_those_of_the_same_series(pages: Pages) -> None:
    """Third belongs to another series and stands between nobody."""
    second = page(pages, "projects/second/", BatchPage)
    assert [(one.word, one.link.text) for one in second.neighbours] == [
        ("earlier", "First"),
        ("later", "Fourth"),
    ]
    assert said(second.series) == "second of Tides"
    assert page(pages, "projects/third/", BatchPage).neighbours == ()


@pytest.mark.parametrize(
    ("address", "rows", "total"),
    [
        (
            "drawer/chalk-card/",
            [("bought a stall", "+ 10", "10", "5.00"), ("First", "− 2", "8", "− 1.00"),
             ("Second", "− 2", "6", "− 1.00"),
             ("counted 5 found, 6 expected; 1 missing since 10 Jan 2026", "− 1", "5", "− 0.50")],
            ("5", "2.50"),
        ),
        (
            "drawer/beads/",
            [("bought a stall", "+ 100", "100", "1.00"), ("First", "− 10", "90", "− 0.10"),
             ("Third", "− 12", "78", "− 0.12"),
             ("counted 90 found, 78 expected; 12 more since 10 Jan 2026", "+ 12", "90", "0.00")],
            ("90", "0.78"),
        ),
        (
            "drawer/fern-paper/",
            [("bought a stall", "+ 4", "4", "2.00"),
             ("First 1 piece of 200 × 50 kept", "− 1", "3", "− 0.37")],
            ("3", "1.63"),
        ),
    ],
)  # fmt: skip
def test_every_movement_of_a_supply_is_listed(
    pages: Pages, address: str, rows: list[tuple[str, str, str, str]], total: tuple[str, str]
) -> None:
    """In order of date, what was on hand after it, and money that sums to what the rest is worth."""
    item = page(pages, address, ItemPage)
    shown = [(said(m.what), plain(m.quantity), m.on_hand, plain(m.value)) for m in item.movements]
    assert shown == rows
    assert (item.total_on_hand, item.total_value) == total


def test_what_an_item_is(pages: Pages) -> None:
    """On hand with its kept pieces; a pattern with an up is told; what is not counted is not called none."""
    fern = page(pages, "drawer/fern-paper/", ItemPage)
    assert said(fern.sentence) == "3 sheets on hand and 1 kept piece, worth 1.63 € together."
    assert ("Front", "small leaves; one-way: it has an up, so parts are not turned on it") in fern.facts
    assert said(page(pages, "drawer/ink/", ItemPage).sentence) == "Nothing is counted of it."
    drawer = page(pages, "drawer/", DrawerPage)
    rows = {
        row.supply.text: (plain(row.on_hand), row.worth) for shelf in drawer.shelves for row in shelf.rows
    }
    assert rows["ink"] == ("not counted", "")
    assert rows["fern paper"] == ("3 sheets and 1 piece", "1.63")
    # 2.50 + 1.00 + 1.63 + 1.63 + 0.78.
    assert said(drawer.sentence) == "Six supplies and 2 kept pieces, worth 7.54 € together, as of 1 May 2026."
