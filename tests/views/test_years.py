"""The year at the table of two small archives, worked out by hand beside each check."""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures, work_out
from batchleaf.facts import Basis, Project, Settings, Status
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.pages import HomePage, HowPage, MoneyRow, YearsPage, YearView
from core.drawers import archive, batch, bought, counted, cut, day, part, supply
from views.test_small import Pages, page, plain, said, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The small archive, worked out."""
    return worked_out("small.archive", tmp_path_factory.mktemp("small"))


def pages_of(figures: Figures) -> Pages:
    """All pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


@pytest.fixture(scope="module")
def years(figures: Figures) -> YearsPage:
    """Its page."""
    return page(pages_of(figures), "year/", YearsPage)


@pytest.fixture(scope="module")
def year(years: YearsPage) -> YearView:
    """Its only year."""
    (only,) = years.years
    return only


def rows_of(rows: tuple[MoneyRow, ...]) -> list[tuple[str, str]]:
    """Label and value of each line of an account."""
    return [(row.label, plain(row.value)) for row in rows]


def test_a_year_in_one_sentence(years: YearsPage) -> None:
    """10, 4 and 6 of 12, 4 and 6; time told of one batch in three; 202,320 of 450,000 mm² in makes.

    Spent 5.00 + 2.00 + 2.00 + 1.00; used 1.84 + 1.00 + 0.12; left 7.54, as the drawer says.
    """
    assert said(years.sentence) == (
        "In 2026: 3 batches, 20 makes of 22 begun, 1 h 10 at the table (without 2 batches); 45 % of the paper"
        " cut is in finished makes. 10.00 € was spent and at least 2.96 € used; on 1 May the drawer was worth"
        " 7.54 €."
    )


def test_the_batches_of_a_year_sum_up(year: YearView) -> None:
    """In order of date, each with the letter of its pile; the batch that is planned is not among them."""
    made = year.made
    assert made is not None
    assert [
        (row.letter, plain(row.date), row.batch.text, row.makes, row.spoiled, plain(row.time))
        for row in made.rows
    ] == [
        ("a", "1 Feb", "First", "10", "2", "1 h 10"),
        ("b", "1 Mar", "Second", "4", "", ""),
        ("c", "1 Apr", "Third", "6", "", ""),
    ]
    total = (made.total_label, made.total_makes, made.total_spoiled, plain(made.total_time))
    assert total == ("3 batches", "20", "2", "1 h 10")
    assert made.notes == ("The time at the table is not told of 2 batches.",)
    assert made.chart.description == "February: a, 10 of 12; March: b, 4; April: c, 6."


def test_paper_adds_up_in_square_metres(year: YearView) -> None:
    """Cut 0.45 m²: 0.20232 in makes, 0.02 kept, 0.22768 waste; the column adds up as it is shown."""
    paper = year.paper
    assert paper is not None
    rows = [(row.label, row.area, plain(row.share)) for row in (*paper.rows, paper.total)]
    assert (paper.unit, rows) == (
        "m²",
        [
            ("In finished makes", "0.20", "45 %"),
            ("Kept", "0.02", "4 %"),
            ("Waste", "0.23", "51 %"),
            ("Cut", "0.45", "100 %"),
        ],
    )


def test_the_account_of_the_drawer_adds_up(year: YearView) -> None:
    """1.00 + 10.00 + 0.00 − 2.96 − 0.50 = 7.54; by month 11.00, 9.16, 8.16, 8.04, 7.54.

    Until February the two scraps of moss card, whose price nobody knows, may be worth something.
    """
    drawer = year.drawer
    assert drawer is not None
    assert rows_of((*drawer.rows, drawer.total)) == [
        ("There before the records", "1.00"),
        ("Bought", "10.00"),
        ("Found at counts", "0.00"),
        ("Used by batches", "− 2.96"),
        ("Missing at counts", "− 0.50"),
        ("On 1 May 2026", "7.54"),
    ]
    assert plain(drawer.worth.description) == (
        "At the end of January at least 11.00 €; February 9.16 €; March 8.16 €; April 8.04 €; May 7.54 €."
    )
    assert "at least" in drawer.worth_caption
    assert drawer.spent is not None
    assert plain(drawer.spent.description) == "January 10.00 €."


def test_the_supplies_most_used_come_first(year: YearView) -> None:
    """2.00 of chalk card, 0.37 each of fern and plum, 22 beads; what has no price and no measure last."""
    used = year.used
    assert used is not None
    assert [(said(row.supply), plain(row.quantity), row.value) for row in used.rows] == [
        ("chalk card", "4 sheets", "2.00"),
        ("fern paper", "1 sheet", "0.37"),
        ("plum paper", "1 sheet", "0.37"),
        ("beads", "22 beads", "0.22"),
        ("moss card", "2 scraps", "not known"),
        ("ink", "not measured", ""),
    ]
    assert used.total == "at least 2.96"


def test_the_first_page_leads_to_the_year(figures: Figures) -> None:
    """Below its sentence, with the other pages that the header has no word for."""
    home = page(pages_of(figures), "", HomePage)
    assert ("The year at the table", "year/") in [(link.text, link.href) for link in home.more]


# --- several years -------------------------------------------------------------------------


def long_ago(*records: Project, many: int = 1) -> Figures:
    """A purchase in each of ``many`` years after 2026, and ``records``."""
    bare = [bought(366 * after, 4, 1_00) for after in range(many)]
    return work_out(archive(*records, *bare), Settings(Unit.INCH, Currency.of("EUR")))


def test_the_newest_year_comes_first_and_each_starts_where_the_last_one_ended() -> None:
    """2026: ten sheets for 5.00, four used; 2027: one was found missing, and six bought as a gift."""
    records = archive(
        bought(10, 10, 5_00),
        batch(20, cut=(cut(4),), finished=8),
        bought(370, 6, 0, basis=Basis.GIFT),
        bought(371, 1, None, basis=Basis.UNKNOWN),
        counted(380, 5),
    )
    shown = page(pages_of(work_out(records, Settings(Unit.MM, Currency.of("EUR")))), "year/", YearsPage)
    later, earlier = shown.years
    assert (later.heading, earlier.heading, later.made, later.used, later.paper) == (
        "2027",
        "2026",
        None,
        None,
        None,
    )
    assert (later.drawer, earlier.drawer) != (None, None)
    assert said(shown.sentence) == (
        "In 2027: nothing was made. On 16 January the drawer was worth at least 1.15 €."
    )
    assert said(earlier.sentence) == (
        "1 batch, 8 makes; 0 % of the paper cut is in finished makes. 5.00 € was spent and 2.00 € used; on"
        " 31 December the drawer was worth 3.00 €."
    )
    assert earlier.drawer is not None
    assert rows_of((*earlier.drawer.rows, earlier.drawer.total)) == [
        ("Bought", "5.00"),
        ("Used by batches", "− 2.00"),
        ("At the end of 2026", "3.00"),
    ]
    assert later.drawer is not None
    assert rows_of((*later.drawer.rows, later.drawer.total)) == [
        ("At the start of 2027", "3.00"),
        ("Bought", "not known"),
        ("Missing at counts", "− 1.85"),
        ("On 16 January 2027", "at least 1.15"),
    ]
    assert later.drawer.notes == (
        "What has no known price is in no sum, so the drawer is worth at least so much.",
        "The price of one purchase is not known.",
        "One purchase was a gift.",
    )
    assert "question mark" in later.drawer.spent_caption


def test_more_batches_than_letters_have_none() -> None:
    """Their months and numbers are told without them."""
    many = [batch(on, slug=f"b{on}", finished=2) for on in range(27)]
    (year,) = page(
        pages_of(work_out(archive(*many), Settings(Unit.MM, Currency.of("EUR")))), "year/", YearsPage
    ).years
    assert year.made is not None
    assert {row.letter for row in year.made.rows} == {""}
    assert year.made.chart.description == "January: 27 batches, 54."
    assert "letter" not in year.made.caption


def test_little_paper_is_told_in_small_units() -> None:
    """A sheet of 100 x 100 mm is 100 cm², and 15.5 square inches: no hundredth of a square metre."""
    one = replace(batch(1, cut=(cut(1),), finished=1), parts=(part("A", 50, 50, "card"),))
    shown = {}
    for unit in (Unit.MM, Unit.INCH):
        pages = pages_of(work_out(archive(one), Settings(unit, Currency.of("EUR"))))
        (year,) = page(pages, "year/", YearsPage).years
        assert year.paper is not None
        shown[year.paper.unit] = [row.area for row in (*year.paper.rows, year.paper.total)]
    assert shown == {"cm²": ["25", "0", "75", "100"], "in²": ["4", "0", "12", "16"]}


def test_the_others_stand_in_one_row() -> None:
    """Of nine supplies six by name; the column still adds up to the last cent."""
    slugs = [f"s{i}" for i in range(9)]
    orders = [bought(0, 10, 100 * (i + 1), slug=slug) for i, slug in enumerate(slugs)]
    one = batch(5, uses=tuple((slug, 5) for slug in slugs))
    records = archive(*orders, one, supplies=tuple(supply(slug) for slug in slugs))
    (year,) = page(
        pages_of(work_out(records, Settings(Unit.MM, Currency.of("EUR")))), "year/", YearsPage
    ).years
    assert year.used is not None
    assert [(said(row.supply), row.value) for row in year.used.rows] == [
        ("s8", "4.50"), ("s7", "4.00"), ("s6", "3.50"), ("s5", "3.00"), ("s4", "2.50"), ("s3", "2.00"),
        ("3 other supplies", "3.00"),
    ]  # fmt: skip
    assert year.used.total == "22.50"


# --- for others --------------------------------------------------------------------------------


def test_the_public_edition_tells_what_was_made_and_nothing_of_money(figures: Figures) -> None:
    """Of the published batch alone; where none is, there is no such page."""
    published = replace(figures.archive.projects[0], status=Status.PUBLISHED)
    some = replace(
        figures, archive=replace(figures.archive, projects=(published, *figures.archive.projects[1:]))
    )
    pages = pages_of(public_edition(some, Told(), PLANNER))
    (year,) = page(pages, "year/", YearsPage).years
    assert said(page(pages, "year/", YearsPage).sentence) == (
        "In 2026: 1 batch, 10 makes of 12 begun, 1 h 10 at the table; 29 % of the paper cut is in finished"
        " makes."
    )
    assert year.made is not None
    assert year.paper is not None
    assert (year.drawer, year.used) == (None, None)
    assert [link.href for link in page(pages, "", HomePage).more] == ["table/", "year/"]
    (how,) = [one for one in page(pages, "how/", HowPage).sections if one.anchor == "years"]
    assert not any(word in " ".join(how.paragraphs).lower() for word in ("spent", "worth", "drawer"))
    none = pages_of(public_edition(figures, Told(), PLANNER))
    assert "year/" not in none
    assert [link.href for link in page(none, "", HomePage).more] == ["table/"]


def test_nothing_depends_on_the_day() -> None:
    """Records of a far future end with their own last day."""
    far = replace(batch(0), date=day(0).replace(year=2999), slug="far")
    (year,) = page(pages_of(long_ago(far, many=0)), "year/", YearsPage).years
    assert year.heading == "2999"


def test_how_it_is_worked_out_is_told(figures: Figures) -> None:
    """The page's links to it find their place."""
    how = page(pages_of(figures), "how/", HowPage)
    assert {"years", "paper", "price"} <= {section.anchor for section in how.sections}
