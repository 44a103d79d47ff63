"""The drawer's pages about one small drawer: what to buy next, and the kept pieces laid out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.figures import Figures
from batchleaf.measure.lengths import Size
from batchleaf.views.drawing.pieces import MOST_IN_A_PILE, draw_pile, scale_for
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.offcuts import COLUMN_PX, HIGHEST_PX, PIXELS_PER_MM, WIDEST_PX
from batchleaf.views.pages import BuyRow, DrawerPage, HowPage, ItemPage, LaidPile, Link, OffcutsPage
from records.test_cases import laid_out, read
from views.test_small import Pages, page, plain, said
from whole_site import all_pages

ARCHIVE: Final = """\
=== projects/inventory/drawer.yml
supplies:
  dune-card:
    name: dune card
    kind: card
    size: 12 x 12 in
    colour: "#e9dfc7"
    mark: 5
    link: https://example.org/papers/dune
    opening:
      date: 2026-01-01
      scraps: [2 of 4 x 6 in, 12 x 5 in]
  kelp-paper:
    name: kelp paper
    kind: patterned paper
    size: 200 x 200
    front: weed, one-way
    mark: 1 sheet
  tide-pad:
    name: tide pad
    kind: patterned paper
    size: 150 x 150
    designs: 4 x 2
    mark: 1 pad
  cord:
    name: cord
    kind: cord
    unit: m
    mark: 10 m
  bead: {name: bead, kind: beads, mark: 20}
  pin: {name: pin, kind: beads, mark: 20}
purchases:
  - date: 2026-01-05
    from: a stall
    lines: ["dune-card 4 sheets, 2.00"]
  - date: 2026-02-05
    from: the spring fair
    delivery: 1.00
    lines: ["dune-card 10 sheets, 6.00", "tide-pad 1 pad, 3.00", "kelp-paper 4 sheets, 1.00"]
  - date: 2026-02-06
    lines: ["cord 4 m, about 1.00", "bead 10, gift"]
=== projects/slips/project.yml
title: Slips
date: 2026-03-01
makes: 4
base: tag 50 x 60
papers:
  base: kelp-paper
parts:
  B dot: 20 x 20, dune-card
cut:
  - kelp-paper 1 sheet, kept 200 x 80, kept 3 of 30 x 40
  - dune-card 8 sheets, kept 5 of 4 x 6 in, kept 2 B
=== projects/strips/project.yml
title: Strips
date: 2026-04-01
makes: 2
base: tag 50 x 60
papers:
  base: dune-card
cut:
  - dune-card scrap 12 x 5 in, kept 4 x 6 in
  - dune-card 2 sheets
=== projects/autumn/project.yml
title: Autumn
date: 2026-09-01
status: planned
makes: 0 of 8
base: card 200 x 150, side fold
papers:
  base: dune-card
cut:
  - dune-card 8 sheets
  - kelp-paper scrap 60 x 60
=== projects/someday/project.yml
title: Someday
date: 2026-12-01
status: idea
makes: 0 of 8
base: tag 50 x 60
papers:
  base: kelp-paper
cut:
  - kelp-paper 90 sheets
=== told
"""


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive above, worked out."""
    folder = tmp_path_factory.mktemp("kept")
    laid_out(ARCHIVE, folder)
    worked = read(folder)
    assert worked.figures is not None
    return worked.figures


@pytest.fixture(scope="module")
def pages(figures: Figures) -> Pages:
    """Its pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


def told(row: BuyRow) -> tuple[str, ...]:
    """A row as it is read."""
    return tuple(plain(one) for one in (
        row.supply.text, row.about, said(row.needed), row.on_hand, row.mark, said(row.last), row.each,
    ))  # fmt: skip


# --- what to buy next --------------------------------------------------------------


def test_what_to_buy_next_by_hand(pages: Pages) -> None:
    """By shelf. Of 14 sheets of dune card 10 were cut. 10.00 were paid at the fair, and 1.00 of delivery:

    dune card bears 0.60 of it, so 6.60 for 10. What is only an idea asks for nothing.
    """
    next_ = page(pages, "drawer/", DrawerPage).buy_next
    assert next_ is not None
    assert next_.sentence == "Four supplies are below their mark, and one planned batch lacks paper."
    assert [told(row) for row in next_.rows] == [
        ("bead", "", "", "10", "20", "10 pieces 6 Feb 2026", "gift"),
        ("pin", "", "", "not counted", "20", "", ""),
        ("dune card", "", "8 sheets for Autumn", "4 sheets", "5 sheets",
         "10 sheets from the spring fair, 5 Feb 2026", "0.66"),
        ("cord", "", "", "4 m", "10 m", "4 m 6 Feb 2026", "about 0.25"),
        ("kelp paper", "a scrap of 60 × 60 mm", "1 scrap for Autumn", "0", "",
         "4 sheets from the spring fair, 5 Feb 2026", "0.28"),
    ]  # fmt: skip
    links = {row.supply.text: row.link and row.link.text for row in next_.rows}
    assert {name for name, link in links.items() if link} == {"dune card"}
    assert links["dune card"] == "example.org"


def test_an_item_says_its_mark(pages: Pages) -> None:
    """Among its facts, in its own unit; a pad in sheets, its papers not at all."""
    marks = {
        slug: plain(dict(page(pages, f"drawer/{slug}/", ItemPage).facts).get("Mark", ""))
        for slug in ("dune-card", "tide-pad", "tide-pad-1", "cord", "bead")
    }
    after = "; with less on hand, to be bought again"
    assert marks == {
        "dune-card": f"5 sheets{after}",
        "tide-pad": f"8 sheets{after}",
        "tide-pad-1": "",
        "cord": f"10 m{after}",
        "bead": f"20{after}",
    }


def test_where_nothing_is_wanted_nothing_is_said(figures: Figures) -> None:
    """The section is away."""
    unmarked = tuple(replace(one, mark=None) for one in figures.archive.supplies)
    made = tuple(one for one in figures.archive.projects if one.status.moves_the_drawer)
    archive = replace(figures.archive, supplies=unmarked, projects=made)
    batches = {slug: one for slug, one in figures.batches.items() if one.taken}
    quiet = replace(figures, archive=archive, batches=batches)
    shown = {placed.address: placed.page for placed in all_pages(quiet)}
    assert page(shown, "drawer/", DrawerPage).buy_next is None


# --- kept pieces -------------------------------------------------------------------


def words(pile: LaidPile) -> tuple[str, str, str]:
    """What stands below a pile."""
    return plain(pile.size), said(pile.sources), plain(pile.worth)


def test_kept_pieces_by_hand(pages: Pages) -> None:
    """Two pieces of 4 × 6 were there, five were kept of eight sheets of 144 square inches, one of a scrap.

    8 of 14 sheets that cost 8.60 together are 4.91; 120 of their 1152 square inches are 0.51, and the
    cent that rounding leaves goes to the spare parts. A quarter of 1.10 is 0.28, of which 40 % are 0.11
    and 9 % are 0.03. Where a price is not known, the sum is at least that of the others. A pattern that
    has an up is not turned, and 20 mm are cut off at a mark of an inch rule.
    """
    laid = page(pages, "offcuts/", OffcutsPage)
    assert said(laid.sentence) == "14 pieces of 2 papers, worth at least 0.66 €, as of 1 April 2026."
    assert {one.paper.text: [words(pile) for pile in one.piles] for one in laid.papers} == {
        "dune card": [
            (
                "4 × 6 in, 8 pieces",
                "kept from Strips, 1 Apr 2026; kept from Slips, 1 Mar 2026; there at the start, 1 Jan 2026",
                "worth at least 0.51 € together",
            ),
            ("3/4 × 3/4 in, 2 pieces", "spare B of Slips, 1 Mar 2026", "worth 0.01 € together"),
        ],
        "kelp paper": [
            ("200 × 80 mm, 1 piece", "kept from Slips, 1 Mar 2026", "worth 0.11 €"),
            ("30 × 40 mm, 3 pieces", "kept from Slips, 1 Mar 2026", "worth 0.03 € together"),
        ],
    }
    links = [one.paper.href for one in laid.papers]
    assert sorted(links) == ["../drawer/dune-card/", "../drawer/kelp-paper/"]


def test_kept_pieces_are_told_in_words(pages: Pages) -> None:
    """Each drawing has a title of its own, and says how much of a sheet a piece is."""
    laid = page(pages, "offcuts/", OffcutsPage)
    drawings = [pile.drawing for one in laid.papers for pile in one.piles]
    assert sorted(plain(drawing.title) for drawing in drawings) == [
        "Dune card, 2 pieces of 3/4 × 3/4 in",
        "Dune card, 8 pieces of 4 × 6 in",
        "Kelp paper, 1 piece of 200 × 80 mm",
        "Kelp paper, 3 pieces of 30 × 40 mm",
    ]
    said_of = {plain(drawing.title): plain(drawing.description) for drawing in drawings}
    assert said_of["Kelp paper, 1 piece of 200 × 80 mm"] == "In true proportion, 40 % of a whole sheet."
    assert said_of["Dune card, 8 pieces of 4 × 6 in"] == "In true proportion, 17 % of a whole sheet each."


def test_all_pieces_have_one_scale_and_the_colour_of_their_paper(pages: Pages) -> None:
    """A millimetre is as long in each drawing, and in the rule; what has no colour is not given one."""
    laid = page(pages, "offcuts/", OffcutsPage)
    drawings = [pile.drawing for one in laid.papers for pile in one.piles]
    assert {drawing.scale for drawing in drawings} == {laid.rule.scale}
    fills = {one.paper.text: {box.fill for pile in one.piles for box in boxes(pile)} for one in laid.papers}
    assert fills == {"dune card": {"#e9dfc7"}, "kelp paper": {""}}
    assert plain(laid.rule_caption) == "100 mm. All pieces are drawn to the scale of this rule."
    assert abs(laid.rule.width - 100) < 4


def boxes(pile: LaidPile) -> list[Box]:
    """The pieces of a pile."""
    return [shape for shape in pile.drawing.shapes if isinstance(shape, Box)]


def test_the_drawer_leads_to_its_pieces(figures: Figures, pages: Pages) -> None:
    """From the number in its sentence; where there are none, there is no page either."""
    sentence = page(pages, "drawer/", DrawerPage).sentence
    assert [one.href for one in sentence if isinstance(one, Link)] == ["../offcuts/"]
    assert figures.ledger is not None
    whole = tuple(one for one in figures.ledger.balances if one.holding.piece is None)
    none = replace(figures, ledger=replace(figures.ledger, balances=whole))
    shown = {placed.address: placed.page for placed in all_pages(none)}
    assert "offcuts/" not in shown
    assert said(page(shown, "drawer/", DrawerPage).sentence).startswith("Six supplies, worth ")


def test_how_it_is_worked_out_says_it(pages: Pages) -> None:
    """The mark, what each cost, where a piece came from, and what the files hold."""
    sections = {section.anchor: section for section in page(pages, "how/", HowPage).sections}
    assert "kept pieces do not count towards it" in " ".join(sections["on-hand"].paragraphs)
    assert "all that brought one since there were none" in " ".join(sections["on-hand"].paragraphs)
    assert "CSV for spreadsheets" in " ".join(sections["figures"].paragraphs)


lengths = st.integers(5, 900).map(Fraction)
piles = st.lists(st.tuples(st.builds(Size, lengths, lengths), st.integers(1, 20)), min_size=1, max_size=6)


@given(piles)
def test_piles_are_in_proportion_and_in_their_room(found: list[tuple[Size, int]]) -> None:
    """One scale for all; each piece in its size, up to six, the topmost seen whole; no pile too large."""
    scale = scale_for(found, WIDEST_PX, HIGHEST_PX, PIXELS_PER_MM)
    assert 0 < scale <= PIXELS_PER_MM
    for size, count in found:
        drawing = draw_pile(size, count, id="p", title="t", description="d", fill="#c3d6cf", scale=scale)
        shown = [shape for shape in drawing.shapes if isinstance(shape, Box)]
        assert [(box.width, box.height) for box in shown] == [(float(size.width), float(size.height))] * min(
            count, MOST_IN_A_PILE
        )
        assert (shown[-1].x, shown[-1].y) == (0.0, 0.0)
        assert drawing.width * scale <= COLUMN_PX
        assert drawing.height * scale <= HIGHEST_PX + 3
