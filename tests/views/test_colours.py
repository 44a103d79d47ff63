"""Colours on the pages: laid by hue, what goes with a supply, how stamps stand out from their papers.

Contrasts are those of WCAG 2.2, worked out apart from the house beside the checks.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures, work_out
from batchleaf.facts import Archive, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.colour_words import colour_in_words, nearness_in_words
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.pages import BatchPage, ColourGroup, ColoursPage, DrawerPage, HowPage, ItemPage
from core.drawers import supply
from views.test_small import Pages, page, plain, said, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``colours.archive``, worked out."""
    return worked_out("colours.archive", tmp_path_factory.mktemp("colours"))


def pages_of(figures: Figures) -> Pages:
    """All pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


@pytest.fixture(scope="module")
def pages(figures: Figures) -> Pages:
    """Those of the private edition."""
    return pages_of(figures)


def told(groups: tuple[ColourGroup, ...]) -> dict[str, list[tuple[str, ...]]]:
    """Each group with its labels as they are read."""
    return {
        group.heading: [(one.supply.text, one.words, plain(one.on_hand)) for one in group.labels]
        for group in groups
    }


# --- words ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("colour", "words"),
    [
        ("#bdc8af", "pale green"),
        ("#6c7257", "green"),
        ("#3c4a2e", "dark green"),
        ("#ffd700", "yellow"),
        ("#d3d3d3", "pale grey"),
        ("#404040", "dark grey"),
        ("#f0ece2", "white"),
        ("#0b0b0b", "black"),
    ],
)
def test_pale_and_dark(colour: str, words: str) -> None:
    """Pale is light and faint; black and white are nothing besides."""
    assert colour_in_words(colour) == words


@pytest.mark.parametrize(
    ("difference", "words"),
    [
        (0.0, "the same colour"),
        (0.0001, "hardly told apart"),
        (2.0, "hardly told apart"),
        (2.0001, "very close"),
        (5.0, "very close"),
        (5.0001, "close"),
        (10.0, "close"),
    ],
)
def test_nearness(difference: float, words: str) -> None:
    """Each limit belongs to the nearer word."""
    assert nearness_in_words(difference) == words


# --- all colours ------------------------------------------------------------------


def test_colours_lie_by_hue(pages: Pages) -> None:
    """Family by family, light before dark; what has no hue comes last, and a pad lies there once."""
    colours = page(pages, "colours/", ColoursPage)
    assert told(colours.families) == {
        "Yellow": [
            ("flax cord", "about pale yellow", "none on hand"),
            ("dune card", "pale yellow", "9 sheets"),
        ],
        "Green": [
            ("wrack pad", "pale green and brown", "not counted"),
            ("reed card", "green", "4 sheets and 2 pieces"),
            ("kelp ink", "dark green", "a pad, half full"),
        ],
        "Violet": [("plum ink", "about dark violet", "not counted")],
        "Grey": [("pebble card", "pale grey", "not counted"), ("slate card", "grey", "1 sheet")],
        "White": [
            ("white powder", "white", "not counted"),
            ("salt card", "white", "9 sheets"),
            ("shell paper", "white and green", "not counted"),
            ("clear film", "white", "not counted"),
        ],
    }
    assert colours.families[0].labels[0].supply.href == "../drawer/flax-cord/"
    assert said(colours.sentence) == (
        "Twelve supplies laid by hue, each family from light to dark; what has no hue lies apart."
    )


def test_the_drawer_leads_to_the_colours(pages: Pages) -> None:
    """And tells the colours of each row, for who looks for green or does not see it."""
    drawer = page(pages, "drawer/", DrawerPage)
    assert drawer.by_hue is not None
    assert drawer.by_hue.href == "../colours/"
    rows = {row.supply.text: row.colours for shelf in drawer.shelves for row in shelf.rows}
    assert (rows["wrack pad"], rows["flax cord"], rows["tape"]) == (
        "pale green and brown",
        "about pale yellow",
        "",
    )


def test_one_colour_is_not_laid_out() -> None:
    """Then there is no such page, and nothing leads to it."""
    cards = (replace(supply("green"), colours=("#6c7257",)), supply("bare"))
    figures = work_out(Archive((), cards, (), (), (), ()), Settings(Unit.MM, Currency.of("EUR")))
    pages = pages_of(figures)
    assert "colours/" not in pages
    assert page(pages, "drawer/", DrawerPage).by_hue is None
    assert page(pages, "drawer/green/", ItemPage).goes_with is None
    assert "colours" not in [section.anchor for section in page(pages, "how/", HowPage).sections]


# --- what goes with a supply ------------------------------------------------------


def test_what_goes_with_a_card(pages: Pages) -> None:
    """Its collection however far, then what is near, then other shades; a picked colour is perhaps near."""
    item = page(pages, "drawer/dune-card/", ItemPage)
    assert ("Collection", "Shore") in item.facts
    assert item.goes_with is not None
    assert told(item.goes_with.groups) == {
        "Same collection": [("reed card", "green", "4 sheets and 2 pieces")],
        "Near it": [
            ("flax cord", "perhaps hardly told apart", "none on hand"),
            ("salt card", "close", "9 sheets"),
            ("shell paper", "white: close", "not counted"),
        ],
    }
    assert said(item.goes_with.note) == "How this is found. All colours, by hue."


def test_what_goes_with_several_colours(pages: Pages) -> None:
    """Of each it is told which of its own colours is near."""
    item = page(pages, "drawer/shell-paper/", ItemPage)
    assert item.colours == "white and green"
    assert item.goes_with is not None
    near = told(item.goes_with.groups)["Near it"]
    assert ("salt card", "white: the same colour", "9 sheets") in near


def test_a_paper_of_a_pad_leads_to_its_pad(pages: Pages) -> None:
    """Its own colours are told by nobody."""
    paper = page(pages, "drawer/wrack-pad-2/", ItemPage)
    assert paper.goes_with is not None
    assert paper.goes_with.groups == ()
    assert said(paper.goes_with.note) == (
        "What goes with the pad; its colours are told of the pad as a whole."
    )


def test_what_has_no_colour_goes_with_nothing(pages: Pages) -> None:
    """Nor is a colour told of it."""
    tape = page(pages, "drawer/tape/", ItemPage)
    assert (tape.goes_with, tape.colours) == (None, "")


# --- the public edition -----------------------------------------------------------


def test_others_are_not_told_what_is_on_hand(figures: Figures) -> None:
    """They see the colours of what belongs to published batches, and nothing of the drawer."""
    pages = pages_of(public_edition(figures, Told(), PLANNER))
    laid = told(page(pages, "colours/", ColoursPage).families)
    assert {on_hand for labels in laid.values() for *_, on_hand in labels} == {""}
    assert ("flax cord", "about pale yellow", "") in laid["Yellow"]
    assert "plum ink" not in [name for labels in laid.values() for name, *_ in labels]
    item = page(pages, "drawer/dune-card/", ItemPage)
    assert item.goes_with is not None
    assert told(item.goes_with.groups)["Same collection"] == [("reed card", "green", "")]


def test_supplies_that_are_not_named_have_no_colour(figures: Figures) -> None:
    """Where the edition names none, it lays out none."""
    pages = pages_of(public_edition(figures, Told(supplies=False), PLANNER))
    assert "colours/" not in pages
    assert "kelp" not in " ".join(page(pages, "projects/cards/", BatchPage).parts_notes)


# --- ink on paper -----------------------------------------------------------------


def ink_notes(pages: Pages, slug: str) -> dict[str, str]:
    """What the notes beside the parts say of stamps: letter → words."""
    notes = page(pages, f"projects/{slug}/", BatchPage).parts_notes
    pairs = (plain(note).split(": ", 1) for note in notes if "stands out" in note)
    return {letter: words for letter, words in pairs if letter != "J"}


def test_how_stamps_stand_out(pages: Pages) -> None:
    """By luminance: kelp 0.061, dune 0.680, salt 0.840, reed 0.159, pebble 0.437, shell 0.303, white 0.955.

    Contrast is (lighter + 0.05) / (darker + 0.05), and nothing is rounded up. The image of 5 mm is lower
    than 18 point, 6.35 mm. On film, and on a ground that is inked, nothing is told.
    """
    assert ink_notes(pages, "cards") == {
        "B": "kelp ink stands out from dune card by 6.6 to 1; words in it can be read.",
        "C": "kelp ink stands out from reed card by 1.8 to 1; words in it are hard to read.",
        "D": "kelp ink stands out from pebble card by 4.4 to 1; words in it can be read where they are large,"
        " 18 point and more.",
        "E": "kelp ink stands out from pebble card by 4.4 to 1; words in it are hard to read.",
        "F": "kelp ink stands out from pebble card by 4.4 to 1; words in it can be read where they are large,"
        " 18 point and more.",
        "H": "kelp ink stands out from shell paper by at least 3.1 to 1; words in it can be read where they"
        " are large, 18 point and more.",
        "I": "kelp ink stands out from shell paper by 8.0 to 1; words in it can be read.",
        "K": "white powder stands out from reed card by 4.8 to 1; words in it can be read.",
        "L": "kelp ink stands out from dune card by 6.6 to 1; words in it can be read.",
    }


def test_papers_that_read_alike_are_told_together(pages: Pages) -> None:
    """The others stand apart, each with the least contrast of its own."""
    notes = page(pages, "projects/cards/", BatchPage).parts_notes
    assert [plain(note) for note in notes if note.startswith("J: ")] == [
        "J: kelp ink stands out from dune card or salt card by at least 6.6 to 1; words in it can be read.",
        "J: kelp ink stands out from reed card by 1.8 to 1; words in it are hard to read.",
    ]


def test_which_of_two_inks(pages: Pages) -> None:
    """Where no line at the bench says it, nothing is told; a picked colour makes the contrast rough."""
    assert ink_notes(pages, "two-inks") == {
        "C": "plum ink stands out from dune card by about 7.4 to 1; words in it can be read."
    }
