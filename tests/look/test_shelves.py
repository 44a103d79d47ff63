"""The shelves of the drawer in a browser: their rows by their words, and in another order."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from typing import Final, Literal

import pytest
from playwright.sync_api import Browser, Locator, Page, Route, expect

from browsing import AxeFaults, Served, Watch
from look.test_steady import PAINTED, WATCH

SHOWN: Final = "[data-shelf]:not([hidden])"
Row = dict[str, str]


@pytest.fixture
def drawer(demo_site: Served, page: Page) -> Page:
    """The drawer of the demo, with its controls."""
    page.goto(f"{demo_site.url}drawer/")
    expect(page.get_by_label("Show only")).to_be_visible()
    return page


@pytest.fixture(scope="module")
def table(demo_site: Served) -> list[Row]:
    """The same as a table for spreadsheets."""
    with (demo_site.folder / "drawer" / "drawer.csv").open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def names(page: Page) -> list[str]:
    """The supplies that are shown, from the top."""
    return page.locator(f"{SHOWN} tbody th a").all_inner_texts()


def headings(page: Page) -> list[str]:
    """The shelves that are shown."""
    return page.locator(f"{SHOWN} h2").all_inner_texts()


def status(page: Page) -> Locator:
    """How many are shown, for those who cannot see them."""
    return page.locator(".sift [role='status']")


def test_words_show_the_rows_that_have_them(drawer: Page, table: list[Row]) -> None:
    """Every word, in any column, in any letters; shelves without rows are away, and the number is said."""
    many = len(table)
    assert len(names(drawer)) == many
    expect(status(drawer)).to_be_empty()
    field = drawer.get_by_label("Show only")
    field.fill("KRAFT hazel")
    assert (names(drawer), headings(drawer)) == (["hazel kraft"], ["Patterned paper"])
    expect(status(drawer)).to_have_text(f"1 of {many} is shown.")
    field.fill("wren note")
    assert headings(drawer) == ["Card", "Cord and thread", "Ink", "Patterned paper"]
    expect(status(drawer)).to_have_text(f"{len(names(drawer))} of {many} are shown.")
    field.fill("ribbon")
    assert names(drawer) == ["linen ribbon"], "a shelf is found by its name"
    field.fill("no such thing")
    assert (names(drawer), headings(drawer)) == ([], [])
    expect(status(drawer)).to_have_text(f"None of {many} are shown.")
    field.fill(" ")
    assert len(names(drawer)) == many
    expect(status(drawer)).to_be_empty()


def by_name(row: Row) -> tuple[str, str]:
    """Those that are alike stand by name."""
    return row["name"].casefold(), row["supply"]


def by_worth(row: Row) -> tuple[float, str, str]:
    """The dearest first."""
    return (-float(row["worth in EUR"] or 0), *by_name(row))


def test_other_orders_are_those_of_the_figures(drawer: Page, table: list[Row]) -> None:
    """All rows in one table: by name, dearest first, most first, last used first; then as they were."""
    before = drawer.locator(SHOWN).all_inner_texts()
    by_hand = sorted(
        table, key=lambda row: (-float(row["on hand"] or 0), -int(row["kept pieces"]), *by_name(row))
    )
    by_use = sorted(sorted(table, key=by_name), key=lambda row: row["last used"], reverse=True)
    orders = {
        "by name": sorted(table, key=by_name),
        "by worth": sorted(table, key=by_worth),
        "by what is on hand": by_hand,
        "by last use": by_use,
    }
    choice = drawer.get_by_label("Order")
    assert choice.locator("option").all_inner_texts() == ["by shelf", *orders]
    for order, rows in orders.items():
        choice.select_option(order)
        assert headings(drawer) == [order.capitalize()]
        assert names(drawer) == [row["name"] for row in rows]
    choice.select_option("by shelf")
    assert drawer.locator(SHOWN).all_inner_texts() == before


def test_words_and_order_go_together(drawer: Page, table: list[Row]) -> None:
    """What is shown is put in order; both are taken back one after the other."""
    drawer.get_by_label("Show only").fill("slate oat")
    drawer.get_by_label("Order").select_option("by worth")
    assert names(drawer) == []
    drawer.get_by_label("Show only").fill("sheets card")
    shown = names(drawer)
    assert shown == [row["name"] for row in sorted(table, key=by_worth) if row["name"] in shown]
    assert 1 < len(shown) < len(table)
    assert headings(drawer) == ["By worth"]
    drawer.get_by_label("Order").select_option("by shelf")
    assert sorted(names(drawer)) == sorted(shown)
    drawer.get_by_label("Show only").fill("")
    assert len(names(drawer)) > len(shown)


def test_all_of_it_goes_by_keyboard(drawer: Page) -> None:
    """One stop after the other; the letters that the search listens for are typed into the field."""
    drawer.get_by_label("Show only").focus()
    drawer.keyboard.type("fsp")
    assert drawer.get_by_label("Show only").input_value() == "fsp"
    drawer.keyboard.press("Escape")
    drawer.get_by_label("Show only").fill("slim")
    drawer.keyboard.press("Enter")
    assert "slimline envelope" in names(drawer)
    drawer.keyboard.press("Tab")
    assert drawer.evaluate("document.activeElement.tagName") == "SELECT"
    drawer.keyboard.press("ArrowDown")
    assert headings(drawer) == ["By name"]
    assert names(drawer) == sorted(names(drawer), key=str.casefold)


def test_it_works_after_instant_navigation(instant_demo: Served, page: Page, watch: Watch) -> None:
    """On a page that was exchanged, and again on the next visit."""
    page.goto(instant_demo.url)
    for words in ("kraft", "vellum"):
        page.locator(".mast nav a", has_text="Drawer").click()
        page.get_by_label("Show only").fill(words)
        expect(page.locator(f"{SHOWN} tbody th a")).to_have_count(1)
        page.get_by_label("Order").select_option("by worth")
        assert headings(page) == ["By worth"]
        page.locator(".mast nav a", has_text="Bench").click()
        expect(page.locator("h1")).to_have_text("Bench")
    assert watch.errors == []


def test_nothing_is_asked_of_anybody(drawer: Page, watch: Watch) -> None:
    """Neither for the words nor for the order."""
    asked: list[str] = []
    drawer.on("request", lambda request: asked.append(request.url))
    drawer.get_by_label("Show only").fill("card")
    drawer.get_by_label("Order").select_option("by worth")
    assert (asked, watch.other_hosts, watch.errors) == ([], [], [])


def test_the_public_edition_orders_by_what_it_shows(public_demo: Served, page: Page) -> None:
    """By shelf, by name, by last use; its rows are found by their words too."""
    page.goto(f"{public_demo.url}drawer/")
    choice = page.get_by_label("Order")
    assert choice.locator("option").all_inner_texts() == ["by shelf", "by name", "by last use"]
    choice.select_option("by name")
    assert names(page) == sorted(names(page), key=str.casefold)
    page.get_by_label("Show only").fill("kraft")
    assert names(page) == ["hazel kraft"]


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    """A page that runs none."""
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


def test_without_scripts_there_are_no_controls(
    demo_site: Served, without_scripts: Page, table: list[Row]
) -> None:
    """They leave no gap either; all shelves are there, and the table as a file."""
    page = without_scripts
    page.goto(f"{demo_site.url}drawer/")
    assert page.locator(".sift").bounding_box() is None
    assert len(names(page)) == len(table)
    expect(page.get_by_role("link", name="Supplies as CSV")).to_be_visible()


@pytest.mark.slow
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 1400])
def test_what_is_found_is_plain_to_all(
    drawer: Page, axe_faults: AxeFaults, width: int, scheme: Literal["light", "dark"]
) -> None:
    """By shelf with words, in one table, with nothing found; and nothing stands out of the window."""
    drawer.emulate_media(color_scheme=scheme)
    drawer.set_viewport_size({"width": width, "height": 900})
    for words, order in (("card", "by shelf"), ("card", "by worth"), ("no such thing", "by name")):
        drawer.get_by_label("Show only").fill(words)
        drawer.get_by_label("Order").select_option(order)
        assert axe_faults(drawer) == ()
        assert drawer.evaluate("document.documentElement.scrollWidth") == width


def top_of_shelves(page: Page) -> float:
    """Where the first shelf that is shown begins, from the top of the page."""
    top: float = page.locator(SHOWN).first.evaluate("shelf => shelf.getBoundingClientRect().top + scrollY")
    return top


@pytest.mark.parametrize("width", [320, 390, 1400])
def test_controls_have_their_room(demo_site: Served, page: Page, width: int) -> None:
    """However late the script comes, and when the number is said, nothing moves."""
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/batchleaf-shelves.js", hold)
    page.set_viewport_size({"width": width, "height": 900})
    page.add_init_script(WATCH)
    page.goto(f"{demo_site.url}drawer/", wait_until="commit")
    expect(page.locator(".foot")).to_be_attached()
    before = top_of_shelves(page)
    expect(page.get_by_label("Show only")).to_be_hidden()
    held[0].continue_()
    expect(page.get_by_label("Show only")).to_be_visible()
    page.evaluate(PAINTED)
    assert top_of_shelves(page) == before
    page.get_by_label("Show only").fill("a")
    expect(status(page)).to_have_text(re.compile(r"\d+ of \d+ are shown\."))
    assert top_of_shelves(page) == before
    assert [one for one in page.evaluate("shifts") if not all(m.startswith("<nav") for m in one[1:])] == []
