"""What pages say of pads, packs, gifts, guesses and tools; worked out by hand beside each check."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.figures import Figures
from batchleaf.facts import ImageUse, Part
from batchleaf.measure.lengths import Size
from batchleaf.render.html import render
from batchleaf.views.bench import bench_page
from batchleaf.views.pages import BenchPage, DrawerPage, ItemPage
from batchleaf.views.site import sections_of
from views.test_small import Pages, page, plain, said, worked_out
from whole_site import all_pages

ONE_MM = Size(Fraction(1), Fraction(1))


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``pads.archive``, worked out."""
    return worked_out("pads.archive", tmp_path_factory.mktemp("pads"))


@pytest.fixture(scope="module")
def pages(figures: Figures) -> Pages:
    """Its pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


def moved(item: ItemPage) -> list[tuple[str, str, str, str]]:
    """The rows of an item's movements."""
    return [(said(one.what), plain(one.quantity), one.on_hand, plain(one.value)) for one in item.movements]


def test_a_pad_stands_once_in_the_drawer(pages: Pages) -> None:
    """Twelve sheets less four; one of its papers has a kept piece. Twelve for 6.00: 8 are 4.00."""
    drawer = page(pages, "drawer/", DrawerPage)
    rows = [(row.supply.text, plain(row.about), plain(row.on_hand), row.worth, len(row.used_in))
            for shelf in drawer.shelves for row in shelf.rows]  # fmt: skip
    # A piece of 50 x 60 keeps an eighth of 0.50, which is 6.25 cents; two stars of 29 for 0.40 leave 0.37.
    assert rows == [
        ("shoal pad", "3 papers, 150 × 160 mm, 80 lb text", "8 sheets and 1 piece", "4.06", 2),
        ("star", "", "27", "0.37", 1),
    ]
    worth = "Two supplies and 1 kept piece, worth 4.43 € together, as of 1 March 2026."
    assert said(drawer.sentence) == worth


def test_a_pad_tells_of_its_papers(pages: Pages) -> None:
    """Of four of each one was taken of 2 and of 3, and the count found two of 1.

    Those two are the ones that the second batch took without a number, so that the
    pad has its eight, and nothing is left open.
    """
    pad = page(pages, "drawer/shoal-pad/", ItemPage)
    assert said(pad.sentence) == "8 sheets on hand and 1 kept piece, worth 4.06 € together."
    papers = [
        (row.paper.text, row.paper.href, row.on_hand, [b.text for b in row.used_in]) for row in pad.papers
    ]
    assert [(text, href, plain(there), used) for text, href, there, used in papers] == [
        ("shoal pad 1", "../shoal-pad-1/", "2 sheets", []),
        ("shoal pad 2", "../shoal-pad-2/", "3 sheets and 1 piece", ["First"]),
        ("shoal pad 3", "../shoal-pad-3/", "3 sheets", ["First"]),
    ]
    assert pad.papers_note == ""
    assert [entry.title for entry in pad.used_in] == ["Second", "First"]


def test_a_pad_tells_what_it_is(pages: Pages) -> None:
    """As bought and usable, sides, core, weight in pounds and grams, terms."""
    pad = page(pages, "drawer/shoal-pad/", ItemPage)
    assert pad.swatches == ("#c3d6cf", "#2f4858")
    assert [(label, plain(text)) for label, text in pad.facts] == [
        ("As bought", "150 × 160 mm, about 5 7/8 × 6 5/16 in"),
        ("Usable", "150 × 150 mm, after 10 off the bottom"),
        ("A pad holds", "3 papers, 2 sheets of each"),
        ("Front", "small fish; one-way: it has an up, so parts are not turned on it"),
        ("Back", "dots"),
        ("Core", "white"),
        # 80 lb text: 80 x 453.59237 g / (500 x 25 x 38 sq in) = 118.4 g/m².
        ("Weight", "80 lb text, 118 g/m²"),
        ("Selling what is made", "handmade only (printed on the cover, 12 January 2026)"),
    ]


def test_every_movement_of_a_pad_says_which_papers(pages: Pages) -> None:
    """A gift has no price; each batch one row; seven is within a fifth of eight, or at least within one."""
    assert moved(page(pages, "drawer/shoal-pad/", ItemPage)) == [
        ("at the start 1 scrap 40 × 50, a gift", "", "0", "0.00"),
        ("bought a stall", "+ 12", "12", "6.00"),
        (
            "First papers 2 and 3, 1 scrap of 40 × 50, 1 piece of 50 × 60 of paper 2 kept",
            "− 2",
            "10",
            "− 0.94",
        ),
        ("Second", "− 2", "8", "− 1.00"),
        ("counted paper 1, 2 found, 4 expected; 2 were taken without a number", "0", "8", "0.00"),
        ("counted about 7 sheets, as expected", "0", "8", "0.00"),
    ]


def test_a_numbered_paper_leads_to_its_pad(pages: Pages) -> None:
    """It has a page without prices; its sheets are priced with the pad, its kept piece is not."""
    second = page(pages, "drawer/shoal-pad-2/", ItemPage)
    assert (second.title, second.pad and (second.pad.text, second.pad.href)) == (
        "Shoal pad 2",
        ("shoal pad", "../shoal-pad/"),
    )
    assert said(second.sentence) == (
        "3 sheets on hand in the shoal pad and 1 kept piece, which is worth 0.06 €."
    )
    assert moved(second) == [
        ("came in with the pad", "+ 4", "4", ""),
        ("First 1 piece of 50 × 60 kept", "− 1", "3", ""),
    ]
    assert (second.currency, second.total_on_hand, second.total_value) == ("", "3", "")
    assert '<th scope="col" class="r"></th>' not in render(second)
    first = page(pages, "drawer/shoal-pad-1/", ItemPage)
    assert said(first.sentence) == "2 sheets on hand in the shoal pad."
    assert moved(first) == [
        ("came in with the pad", "+ 4", "4", ""),
        ("counted 2 found, 4 expected; 2 were taken without a number", "− 2", "2", ""),
    ]


def test_what_rests_on_a_guess_or_a_gift_is_told(pages: Pages) -> None:
    """Four stars for about 0.40 and twenty-five for nothing: two cost 2.8 cents, so 3."""
    star = page(pages, "drawer/star-sticker/", ItemPage)
    assert moved(star) == [
        ("at the start a guess", "+ 4", "4", "0.40"),
        ("came in a stall, a gift", "+ 25", "29", "0.00"),
        ("First", "− 2", "27", "− 0.03"),
        ("counted about 25, as expected", "0", "27", "0.00"),
    ]
    assert star.notes == (
        "What some of it cost is a guess, and so is what it is worth.",
        "Some of it was a gift and cost nothing; a batch that uses it costs so much less.",
    )
    assert star.facts == (("A pack holds", "25 pieces"), ("Selling what is made", "no"))


def test_a_bench_has_every_tool_with_its_limits(pages: Pages, figures: Figures) -> None:
    """By kind, each at its own anchor; images are numbered."""
    bench = page(pages, "bench/", BenchPage)
    assert said(bench.sentence) == "Three tools, with 2 images to stamp or cut."
    rows = [row for shelf in bench.shelves for row in shelf.rows]
    assert [shelf.heading for shelf in bench.shelves] == ["Score board", "Stamps", "Trimmer"]
    assert [(row.anchor, row.name, row.about) for row in rows] == [
        ("tool-score-board", "the score board", ""),
        ("tool-sea-words", "sea words", ""),
        ("tool-long-trimmer", "the long trimmer", "Drifts a little."),
    ]
    assert [[(label, plain(text)) for label, text in row.facts] for row in rows] == [
        [("From groove to groove", "1/8 in or 1 cm")],
        [("Selling what is made", "handmade only (printed on the packet, 12 January 2026)")],
        [
            ("Longest cut", "310 mm"),
            ("Narrowest strip", "6 mm"),
            ("At once", "4 sheets of up to 120 g/m² and 1 sheet of up to 300 g/m²"),
        ],
    ]
    assert [(one.number, one.words, plain(one.size)) for one in rows[1].images] == [
        ("1", "high water", "30 × 8 mm"),
        ("2", "slack tide", ""),
    ]
    assert rows[1].link is not None
    assert ("Bench", "bench/", "bench") in sections_of(figures)


def test_a_tool_leads_to_the_batches_that_need_it(figures: Figures) -> None:
    """Whether the batch names it, or a part is stamped with it."""
    stamped = Part("A", "label", ONE_MM, 1, (), turns=True, stamps=(ImageUse("sea-words", (2,)),))
    batch = figures.batches["first"]
    project = replace(batch.project, tools=("long-trimmer",), parts=(stamped,))
    needing = replace(figures, batches={**figures.batches, "first": replace(batch, project=project)})
    rows = {row.anchor: row for shelf in bench_page(needing).shelves for row in shelf.rows}
    assert [(link.text, link.href) for link in rows["tool-sea-words"].used_in] == [
        ("First", "../projects/first/")
    ]
    assert [link.text for link in rows["tool-long-trimmer"].used_in] == ["First"]
    assert rows["tool-score-board"].used_in == ()


def test_without_tools_there_is_no_bench(figures: Figures) -> None:
    """Neither a page nor a word in the header."""
    bare = replace(figures, archive=replace(figures.archive, tools=()))
    assert "bench/" not in {placed.address for placed in all_pages(bare)}
    assert [title for title, _, _ in sections_of(bare)] == ["Batches", "Drawer", "Series", "How"]
