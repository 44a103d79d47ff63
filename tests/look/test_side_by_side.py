"""Batches side by side: on the page of a design, and as a reader lays them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Page, expect

from batchleaf.views.compare.compared import in_one_order
from browsing import AxeFaults, Served, Watch

OF_ONE_DESIGN = ("hazel-square-cards", "orchard-square-cards", "harbour-square-cards")
CELLS = "row => Array.from(row.cells, cell => cell.innerText)"
TEXTS = f"Array.from(document.querySelectorAll('.beside tr'), {CELLS})"
PANEL = ["B panel", "125 × 125 mm, hazel kraft", "125 × 125 mm, hazel kraft", "125 × 125 mm, slate card"]


@given(st.lists(st.lists(st.sampled_from("abcdefgh"), unique=True), max_size=4))
def test_every_head_stands_once_and_each_list_begins_in_its_order(lists: list[list[str]]) -> None:
    """All of the first list in its own order; of the others nothing is lost."""
    order = in_one_order(lists)
    assert sorted(order) == sorted({head for heads in lists for head in heads})
    if lists:
        assert [head for head in order if head in lists[0]] == lists[0]


def test_what_one_has_besides_stands_where_it_stands_there() -> None:
    """Between its neighbours, after what earlier lists have there."""
    assert in_one_order(["acd", "abd"]) == tuple("acbd")
    assert in_one_order(["ad", "abd", "acd"]) == tuple("abcd")


def test_a_reader_lays_them_as_the_page_of_their_design_does(
    demo_site: Served, page: Page, axe_faults: AxeFaults, watch: Watch
) -> None:
    """The same rows, the same words, from the address alone; also where the page is opened as a file."""
    demo_site.visit(page, "designs/four-squares/")
    static = page.evaluate(TEXTS)
    assert PANEL in [[text.replace("\u00a0", " ") for text in row] for row in static]
    query = "&".join(f"batch={slug}" for slug in OF_ONE_DESIGN)
    page.goto(f"{demo_site.url}side-by-side/?{query}")
    expect(page.locator(".beside tbody")).to_have_count(2)
    assert page.evaluate(TEXTS) == static
    assert axe_faults(page) == ()
    assert watch.errors == []
    page.goto(f"{(demo_site.folder / 'side-by-side' / 'index.html').as_uri()}?{query}")
    expect(page.locator(".beside tbody")).to_have_count(2)
    assert page.evaluate(TEXTS) == static


def test_batches_that_were_found_are_laid_side_by_side(demo_site: Served, page: Page) -> None:
    """Two are ticked, and the way leads there; one that is not in the archive is told."""
    demo_site.visit(page, "find/")
    page.get_by_label("Compare First frost tags").check()
    expect(page.locator(".find .beside")).to_be_hidden()
    page.get_by_label("Compare Hawthorn boxes").check()
    page.get_by_role("link", name="Lay these two side by side").click()
    expect(page.locator(".beside thead a")).to_have_text(["First frost tags", "Hawthorn boxes"])
    page.goto(f"{demo_site.url}side-by-side/?batch=hawthorn-boxes&batch=nobody-knows")
    expect(page.locator(".compare .told")).to_have_text("One of them is not in this archive.")
    expect(page.locator(".beside thead a")).to_have_text(["Hawthorn boxes"])
