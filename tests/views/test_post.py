"""What pages say of how one make goes by post, in both editions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures
from batchleaf.render.html import render
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.figures_json import figures_json
from batchleaf.views.pages import BatchPage, HowPage, ItemPage
from views.test_small import page, plain, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``post.archive``, worked out."""
    return worked_out("post.archive", tmp_path_factory.mktemp("post"))


@pytest.fixture(scope="module")
def public(figures: Figures) -> Figures:
    """The same for others."""
    return public_edition(figures, Told(), PLANNER)


def batch_page(figures: Figures, slug: str) -> BatchPage:
    """The page of one batch."""
    return page({one.address: one.page for one in all_pages(figures)}, f"projects/{slug}/", BatchPage)


def rows(figures: Figures, slug: str) -> dict[str, list[str]]:
    """What stands under "By post": head, text, the other unit, details."""
    shown = batch_page(figures, slug).post
    assert shown is not None
    return {row.head: [plain(one) for one in (row.text, row.other, *row.details)] for row in shown.rows}


def notes(figures: Figures, slug: str) -> list[str]:
    """What stands beside it."""
    shown = batch_page(figures, slug).post
    assert shown is not None
    return [plain(note) for note in shown.notes]


RAISED = {
    "Weight": ["about 0.25 oz", "7 g", "about 0.42 oz in its envelope"],
    "Thickness": [
        "about 0.115 in", "3 mm",
        "at its thickest; half of it is no thicker than 0.024 in, so it is uneven",
    ],
    "Envelope": ["A2 envelope, 4 3/8 × 5 3/4 in", "", "in which it is packed"],
    "USPS": ["a nonmachinable letter", "", "it is uneven"],
    "Royal Mail": ["a letter", ""],
    "Abroad, older classes": [
        "a letter that is not standardized", "",
        "1.314 times as long as high, and a standardized letter has at least 1.4 times",
    ],
    "Abroad, formats": ["format P", ""],
}  # fmt: skip
"""Worked by hand: 8 1/2 x 5 1/2 in and 2 x 1 in of 216.33 g/m² are 6.804 g, and three foam squares
0.15 g, since 2 x 1 in are 1290 mm². Two sheets of 12 points, foam, and one of 12 points: 0.024 in, 2 mm
and 0.012 in."""


def test_a_card_on_foam_in_its_envelope(figures: Figures) -> None:
    """Inches and ounces first, as the record is written; at the maker's rates."""
    told = rows(figures, "raised")
    postage = told.pop("Postage")
    assert told == RAISED
    assert postage == ["1.65 €", "", "Royal Mail letter up to 100 g, by the rates of 1 January 2026"]


def test_others_are_told_the_same_but_for_the_rates(figures: Figures, public: Figures) -> None:
    """Neither on the page, nor in the numbers, nor in how they are worked out."""
    assert rows(public, "raised") == RAISED
    assert "postage" in numbers(figures, "raised")
    assert "postage" not in numbers(public, "raised")
    assert public.archive.postage.rates == ()
    assert [any("own rate" in text for text in how(one)) for one in (figures, public)] == [True, False]


def test_an_envelope_that_no_published_batch_uses_is_not_told(figures: Figures, public: Figures) -> None:
    """The drawer's own takes an A6 card best; others are told of the shop's."""
    assert rows(figures, "tight")["Envelope"][0] == "hidden envelope, 111 × 152 mm"
    assert rows(public, "tight")["Envelope"][0] == "C6, 114 × 162 mm"


def test_without_supplies_an_envelope_goes_by_its_size(figures: Figures) -> None:
    """And papers by their kind."""
    unnamed = public_edition(figures, Told(supplies=False), PLANNER)
    assert rows(unnamed, "raised")["Envelope"][0] == "4 3/8 × 5 3/4 in"
    assert rows(unnamed, "raised")["Weight"] == RAISED["Weight"]
    assert "without the paper 2" in rows(unnamed, "partly")["Weight"][2]


def test_one_that_is_too_small_is_told(figures: Figures) -> None:
    """The batch is packed in it all the same."""
    assert rows(figures, "tight")["Envelope"][2:] == [
        "the smallest that takes it",
        "the narrow envelope that it is packed in, 106 × 149 mm, is too small for it",
    ]


def test_what_is_estimated_and_what_is_not_counted_stand_beside_it(figures: Figures) -> None:
    """Weight is always an estimate."""
    always = "An estimate: papers differ by some per cent, and what is punched or torn counts as a rectangle."
    assert notes(figures, "raised") == [always, "Used without a measure, and not counted: sea ink."]
    assert notes(figures, "partly") == [
        always,
        "Estimated from weight, so that it errs thick: the thickness of plain card.",
    ]


def test_what_is_not_known_is_named(figures: Figures) -> None:
    """It weighs at least so much, rounded down, and goes as that as far as is known."""
    told = rows(figures, "partly")
    assert told["Weight"] == [
        "at least 7.5 g", "0.26 oz", "without the found paper", "at least 8.5 g in its envelope",
    ]  # fmt: skip
    assert told["Thickness"][0] == "at least 0.8 mm"
    assert told["Thickness"][2] == "without the found paper"
    assert told["Royal Mail"] == ["a letter, as far as is known", ""]
    assert told["Postage"][0] == "at least 1.65 €"


def test_a_box_has_a_height_and_goes_in_no_envelope(figures: Figures) -> None:
    """What is too small to be sent says what would do."""
    told = rows(figures, "boxes")
    assert told["Height"] == ["about 30.8 mm", "1.212 in", "closed, from below to the top"]
    assert told["Envelope"] == ["a box goes in none", ""]
    assert told["USPS"] == ["a parcel", "", "1.211 in thick, and a letter has at most 1/4"]
    why = "61.5 mm long, and what is sent has at least 140; 61.5 mm high, at least 90"
    assert told["Abroad, formats"] == ["not taken", "", f"{why}; a larger wrapping would do"]


def test_where_nothing_is_known_nothing_is_said(figures: Figures) -> None:
    """No section, and no keys; the usual envelope of the base is told as ever."""
    shown = batch_page(figures, "nothing")
    assert shown.post is None
    assert "By post" not in render(shown)
    assert numbers(figures, "nothing").keys().isdisjoint({"weight", "thickness", "envelope", "post"})
    usual = "One goes into the usual C6 envelope, 114 × 162 mm."
    assert usual in [plain(note) for note in shown.parts_notes]
    assert usual not in [plain(note) for note in batch_page(figures, "partly").parts_notes]


def numbers(figures: Figures, slug: str) -> dict[str, Any]:
    """The ``figures.json`` of a batch."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    return figures_json(figures.batches[slug], supplies, {}, figures.settings)


def test_the_numbers_for_programs(figures: Figures) -> None:
    """Exact: 7.4592 g of card and 0.06 of tape, 0.768 mm of card and 0.1 of tape."""
    found = numbers(figures, "partly")
    assert found["weight"] == {
        "grams": "9399/1250", "complete": False, "without": ["found-paper"], "not_counted": [],
        "posted": "10649/1250",
    }  # fmt: skip
    assert found["thickness"]["mm"] == "217/250"
    assert found["thickness"]["estimated"] == ["plain-card"]
    assert found["envelope"] == {
        "name": "hidden envelope", "mm": ["111", "152"], "supply": "hidden", "packed": False,
    }  # fmt: skip
    assert [one["as"] for one in found["post"]] == [
        "a letter",
        "a letter",
        "a letter that is not standardized",
        "format P",
    ]
    assert found["postage"] == [
        {"rate": "Royal Mail letter up to 100 g", "date": "2026-01-01", "amount": "1.65"}
    ]
    assert numbers(figures, "boxes")["envelope"] is None
    assert numbers(figures, "boxes")["post"][2]["as"] is None


def how(figures: Figures) -> Iterator[str]:
    """The paragraphs of how sending is worked out."""
    found = next(one.page for one in all_pages(figures) if isinstance(one.page, HowPage))
    return iter(next(section for section in found.sections if section.anchor == "post").paragraphs)


def test_how_it_is_worked_out_names_the_rules_their_editions_and_sources(public: Figures) -> None:
    """Each post in a paragraph of its own; the estimate and what it rests on."""
    told = "\n".join(how(public))
    for post in public.archive.postage.posts:
        assert f"{post.title}: " in told
        assert f"Edition: {post.edition}." in told
        assert f"Source: {post.source}." in told
        assert all(one in told for one in post.says)
    for words in ("1.6 cm³ a gram", "80 lb 9.5", "1/8 in (3.175 mm)", "ask at your post office"):
        assert words in told


def test_the_page_of_a_supply_says_how_thick_and_how_heavy_it_is(figures: Figures) -> None:
    """Points beside millimetres, as papers are sold; the envelope in both units."""
    pages = {one.address: one.page for one in all_pages(figures)}
    oat = dict(page(pages, "drawer/oat-card/", ItemPage).facts)
    assert oat["Thickness"] == "0.305 mm, 12 pt"
    envelope = dict(page(pages, "drawer/envelope-a2/", ItemPage).facts)
    assert plain(envelope["An envelope of"]) == "4 3/8 × 5 3/4 in, about 111.1 × 146.1 mm"
    assert envelope["One piece weighs"] == "5 g"
    assert dict(page(pages, "drawer/paper-tape/", ItemPage).facts)["One m weighs"] == "0.6 g"


def test_the_page_asks_the_maker_to_ask(figures: Figures) -> None:
    """With a link to the rules."""
    html = render(batch_page(figures, "raised"))
    assert "Ask at your post office" in html
    assert 'href="../../how/#post"' in html
