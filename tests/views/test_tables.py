"""Tables as files: what a spreadsheet gets is exact, harmless, and adds up to what the pages show."""

from __future__ import annotations

import csv
import datetime as dt
import io
from collections import Counter
from fractions import Fraction
from typing import Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.costing import BatchCost
from batchleaf.core.figures import Figures
from batchleaf.facts import Whereabouts
from batchleaf.measure.display import NBSP
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.finished import finished_page
from batchleaf.views.pages import (
    BatchPage,
    DrawerPage,
    HomePage,
    ItemPage,
    Link,
    OffcutsPage,
    Page,
    SeriesPage,
)
from batchleaf.views.prices import prices_page
from batchleaf.views.tables.finished import finished_table, prices_table, sold_table, went_table
from batchleaf.views.tables.table import Cell, Money, Table, csv_text, how_far_known, money_known
from batchleaf.views.went import went_view
from records.test_cases import laid_out
from records.test_cases import read as read_records
from views.test_small import Pages, page, said, worked_out
from whole_site import all_data, all_pages

EURO: Final = Currency.of("EUR")
Rows = list[dict[str, str]]
Files = dict[str, Rows]


def read(text: str) -> list[list[str]]:
    """A file as a program reads it that follows RFC 4180, without the mark of UTF-8."""
    return list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True))


def cell(value: Cell) -> str:
    """One value as it is written."""
    (_, (written,)) = read(csv_text(Table("t.csv", "T", ("value",), ((value,),))))
    return written


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (dt.date(2026, 3, 4), "2026-03-04"),
        (Money(125_000, EURO), "1250.00"),
        (Money(-40, EURO), "-0.40"),
        (Money(1250, Currency.of("JPY")), "1250"),
        (1_250_000, "1250000"),
        (-7, "-7"),
        (Fraction(1219, 4), "304.75"),
        (Fraction(-1, 8), "-0.125"),
        (Fraction(127, 15), "8.466667"),
        (Fraction(-1, 10**8), "-0.00000001"),
        (Fraction(0), "0"),
        (None, ""),
        (f"4{NBSP}× 9", "4 × 9"),
        ("wren’s ½", "wren’s ½"),
    ],
)
def test_values_are_plain_and_exact(value: Cell, written: str) -> None:
    """Dates by ISO 8601, no commas, no signs of money; only what no decimal can say is rounded."""
    assert cell(value) == written


@pytest.mark.parametrize("text", ["=1+1", "+49", "-2 cards", "@here", "\tcards", " =1", "\r=1", "\n", "＝1"])
def test_text_is_no_formula(text: str) -> None:
    """What a spreadsheet would work out, or take for the end of a cell, is marked as text."""
    assert cell(text) == f"'{text}"


@pytest.mark.parametrize("text", ["4 = 2 + 2", "a-b", "mail@example.org", "", "'quoted", "½"])
def test_other_text_stays_as_it_is(text: str) -> None:
    """Signs within it do no harm."""
    assert cell(text) == text


texts = st.text(st.characters(codec="utf-8"), max_size=12)


@given(st.lists(st.lists(texts, min_size=2, max_size=2), max_size=5))
def test_whatever_is_written_is_read_again(rows: list[list[str]]) -> None:
    """Commas, quotes, line ends: a reader gets the same cells, but for what makes them harmless."""
    table = Table("t.csv", "T", ("one, and", 'tw"o'), tuple(tuple(row) for row in rows))
    head, *found = read(csv_text(table))
    assert head == ["one, and", 'tw"o']
    plain = [[text.replace(NBSP, " ") for text in row] for row in rows]
    assert [[text.removeprefix("'") for text in row] for row in found] == [
        [text.removeprefix("'") for text in row] for row in plain
    ]
    assert all(not text.startswith(("=", "+", "-", "@", "\t", "\r", "\n")) for row in found for text in row)


def test_lines_end_as_the_standard_has_it() -> None:
    """CR LF after each record, the last one too; the mark of UTF-8 once, before the heading row."""
    assert csv_text(Table("t.csv", "T", ("a", "b"), ((1, "x"),))) == "\ufeffa,b\r\n1,x\r\n"


def test_a_row_has_as_many_cells_as_there_are_columns() -> None:
    """A table that is put together wrongly is not written."""
    with pytest.raises(ValueError, match=r"t\.csv: each row needs 2 cells"):
        Table("t.csv", "T", ("a", "b"), ((1,),))


def test_a_table_without_rows_has_no_link() -> None:
    """And one with rows leads there from anywhere."""
    table = Table("drawer/t.csv", "Supplies", ("a",), ((1,),))
    assert table.link("drawer/card/") == Link("Supplies as CSV", "../t.csv")
    assert Table("drawer/t.csv", "Supplies", ("a",), ()).link("") is None


def test_what_is_known_of_a_price() -> None:
    """Nothing is no sum; a part of it says that it is one."""
    known = {cost: (money_known(cost, EURO), how_far_known(cost)) for cost in (
        Cost(0), Cost(5), Cost(5, complete=False), Cost(0, complete=False),
    )}  # fmt: skip
    assert list(known.values()) == [
        (Money(0, EURO), "yes"),
        (Money(5, EURO), "yes"),
        (Money(5, EURO), "in part"),
        (None, "no"),
    ]


# --- the files of an archive -------------------------------------------------------


@pytest.fixture(scope="module", params=["small.archive", "pads.archive"])
def figures(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """Two archives, worked out."""
    return worked_out(request.param, tmp_path_factory.mktemp("tables"))


@pytest.fixture(scope="module")
def pages(figures: Figures) -> Pages:
    """Its pages by address."""
    return {placed.address: placed.page for placed in all_pages(figures)}


@pytest.fixture(scope="module")
def files(figures: Figures) -> Files:
    """Address of each table → its rows by the names of the columns."""
    texts_of = {one.address: one.text for one in all_data(figures) if one.address.endswith(".csv")}
    tables = {address: read(text) for address, text in texts_of.items()}
    return {
        address: [dict(zip(head, row, strict=True)) for row in rows]
        for address, (head, *rows) in tables.items()
    }


def cents(rows: Rows, column: str) -> int:
    """The sum of a column of money, in minor units."""
    return sum(int(row[column].replace(".", "")) for row in rows if row[column])


def number(rows: Rows, column: str) -> Fraction:
    """The sum of a column of numbers."""
    return sum((Fraction(row[column]) for row in rows if row[column]), Fraction(0))


def shown(amount: int) -> str:
    """Money as pages show it."""
    return EURO.show(amount)


def test_every_table_of_a_page_has_its_file(figures: Figures, pages: Pages, files: Files) -> None:
    """Each link to one leads to a file with rows, and each file is linked from one page."""
    linked = Counter[str]()
    for address, one in pages.items():
        linked.update(site_map.href(site_map.HOME, f"{address}{link.href}") for link in links_in(one))
    assert linked == Counter(list(files))
    assert all(files.values())


def links_in(one: Page) -> list[Link]:
    """The links of a page to tables."""
    names = ("csv", "parts_csv", "plan_csv", "cost_csv", "movements_csv", "sold_csv")
    holders = (
        one,
        *(getattr(one, name, None) for name in ("buy_next", "went", "bought", "collating", "bench")),
    )
    found = [getattr(holder, name, None) for holder in holders for name in names]
    return [link for link in found if isinstance(link, Link)]


def test_the_drawers_sums_are_those_of_its_page(figures: Figures, pages: Pages, files: Files) -> None:
    """What is on hand is worth as much, and as many pieces are kept."""
    there = page(pages, site_map.DRAWER, DrawerPage)
    rows = files["drawer/drawer.csv"]
    sentence = said(there.sentence)
    assert f"worth {shown(cents(rows, 'worth in EUR'))} €" in sentence.replace("at least ", "")
    kept = int(number(rows, "kept pieces"))
    assert (f"{kept} kept piece" in sentence) is bool(kept)
    assert [row["name"] for row in rows] == [r.supply.text for shelf in there.shelves for r in shelf.rows]


def test_movements_add_up_to_what_is_on_hand(figures: Figures, pages: Pages, files: Files) -> None:
    """For each supply the last line of its page, in quantity and in value."""
    looked_at = 0
    for supply in figures.archive.supplies:
        there = page(pages, site_map.item(supply.slug), ItemPage)
        rows = files.get(f"drawer/{supply.slug}/movements.csv", [])
        assert bool(rows) is bool(there.movements)
        if rows:
            looked_at += 1
            assert number(rows, "change") == Fraction(there.total_on_hand.replace(",", ""))
            assert Fraction(rows[-1]["on hand"]) == number(rows, "change")
            assert not supply.pad or "value in EUR" not in rows[0]
        if rows and not supply.pad:
            assert there.total_value in (shown(cents(rows, "value in EUR")), "not known")
    assert looked_at > 3


def account_of(figures: Figures, slug: str) -> BatchCost:
    """What a batch cost."""
    cost = figures.batches[slug].cost
    assert cost is not None
    return cost


def test_supplies_add_up_to_the_cost_of_a_batch(figures: Figures, pages: Pages, files: Files) -> None:
    """The column of the batch and that of one have the sums that stand below them on the page."""
    looked_at = 0
    for slug, batch in figures.batches.items():
        rows = files.get(f"projects/{slug}/supplies.csv", [])
        there = page(pages, site_map.batch(slug), BatchPage)
        assert [row["name"] for row in rows] == [row.supply.text for row in there.cost.rows]
        if rows and batch.taken:
            looked_at += 1
            assert cents(rows, "cost in EUR") == account_of(figures, slug).batch.known
            assert shown(cents(rows, "cost in EUR")) in there.cost.total_batch
            assert shown(cents(rows, "one in EUR")) in there.cost.total_one
    assert looked_at


def test_parts_and_cuts_are_those_of_the_page(figures: Figures, pages: Pages, files: Files) -> None:
    """Letters and numbers of parts; as many cuts as the page counts, and each part is set free by one."""
    for slug, batch in figures.batches.items():
        there = page(pages, site_map.batch(slug), BatchPage)
        parts = files.get(f"projects/{slug}/parts.csv", [])
        count = "cut" if batch.taken else "to cut"
        assert [(row["letter"], row["in one"], row[count]) for row in parts] == [
            (row.letter, row.each, row.cut) for row in there.parts
        ]
        cuts = files.get(f"projects/{slug}/cuts.csv", [])
        for number_of_plan, plan in enumerate(there.plans, 1):
            mine = [row for row in cuts if row["plan"] == str(number_of_plan)]
            last = max((cut.last for row in plan.settings for cut in row.numbers), default=0)
            assert [int(row["cut"]) for row in mine] == list(range(1, last + 1))
        assert {row["plan"] for row in cuts} == {str(n) for n, p in enumerate(there.plans, 1) if p.settings}


def test_cuts_give_the_parts(figures: Figures, pages: Pages, files: Files) -> None:
    """Times the sheets of each plan, the cuts set as many parts free as the plans have of them."""
    for slug, batch in figures.batches.items():
        given, planned = Counter[str](), Counter[str]()
        for row in files.get(f"projects/{slug}/cuts.csv", []):
            for words in filter(None, row["gives"].split(", ")):
                count, _, letter = words.partition(" ")
                given[letter] += int(count) * int(row["sheets"])
        if batch.cutting:
            planned.update({part.letter: part.each * batch.cutting.makes for part in batch.project.cut_parts})
            planned.update(dict(batch.cutting.extras))
            planned.update(dict(batch.cutting.spares))
        assert given == planned


def test_batches_are_those_of_the_archive(figures: Figures, pages: Pages, files: Files) -> None:
    """Their makes add up to what the first page says; those of a series to the sums of its table."""
    rows = files["batches.csv"]
    assert [row["slug"] for row in rows] == list(figures.batches)
    there = page(pages, site_map.HOME, HomePage)
    assert said(there.sentence).startswith(f"{number(rows, 'finished')} piece")
    for series in figures.archive.series:
        mine = files[f"series/{series.slug}/batches.csv"]
        total = page(pages, site_map.series(series.slug), SeriesPage).total
        assert number(mine, "finished") == int(total.makes)
        assert number(mine, "could have given") == int(total.could_have)
        assert shown(cents(mine, "cost in EUR")) in total.cost
    for row in rows:
        one = figures.batches[row["slug"]].one
        assert row.get("cost of one in EUR", "") == ("" if one is None else EURO.plain(one))


def test_kept_pieces_add_up_to_their_page(figures: Figures, pages: Pages, files: Files) -> None:
    """As many, worth as much, of as many papers."""
    there = page(pages, site_map.OFFCUTS, OffcutsPage)
    rows = files["offcuts/offcuts.csv"]
    sentence = said(there.sentence)
    papers = len({row["supply"] for row in rows})
    assert f"{number(rows, 'pieces')} piece" in sentence
    assert f"of {papers} paper" in sentence
    assert shown(cents(rows, "worth in EUR")) in sentence


# --- finished makes ------------------------------------------------------------------

SOLD: Final = """\
=== projects/inventory/drawer.yml
supplies:
  card: {name: card, kind: card, size: 100 x 100, opening: {date: 2026-01-01, amount: 9 sheets, worth: 9}}
=== projects/first/project.yml
title: First
date: 2026-02-01
makes: 6
base: tag 50 x 60
papers: {base: card}
cut: [card 6 sheets]
asks: 2.50
time: 1 h 00
went: ["2 sold, 3.00 each, a fair, 2026-03-01", 1 kept]
=== projects/second/project.yml
title: Second
date: 2026-02-02
makes: 3
base: tag 50 x 60
papers: {base: card}
cut: [card 3 sheets]
went: [3 sold]
=== told
"""


@pytest.fixture(scope="module")
def sold(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """Two batches of which something was sold; of one nobody knows for how much."""
    folder = tmp_path_factory.mktemp("sold")
    laid_out(SOLD, folder)
    worked = read_records(folder)
    assert worked.figures is not None, worked.problems
    return worked.figures


def test_finished_makes_add_up_to_their_page(sold: Figures) -> None:
    """All are somewhere, or it is not told where; what those sold brought in is the sum of the page."""
    rows, there = rows_of(finished_table(sold)), finished_page(sold)
    assert [row["title"] for row in rows] == [row.batch.text for row in there.rows] == ["Second", "First"]
    ways = [*(where.value for where in Whereabouts), "not told"]
    assert all(number([row], "finished") == sum(number([row], way) for way in ways) for row in rows)
    assert str(number(rows, "finished")) == there.total.finished
    assert there.total.brought == f"at least {shown(cents(rows, 'income in EUR'))}"
    assert [row["price known"] for row in rows] == ["no", "yes"]


def test_where_makes_went_adds_up_to_all_of_them(sold: Figures) -> None:
    """A line for each way, and one for those of which nothing is told."""
    rows = rows_of(went_table(sold.batches["first"], EURO))
    assert [
        (row["where"], row["words"], row["date"], row["makes"], row["income in EUR"]) for row in rows
    ] == [
        ("sold", "a fair", "2026-03-01", "2", "6.00"),
        ("kept", "", "", "1", ""),
        ("not told", "", "", "3", ""),
    ]
    view = went_view(sold.batches["first"], EURO)
    assert view is not None
    assert (str(number(rows, "makes")), shown(cents(rows, "income in EUR"))) == (
        view.total_count,
        view.total_value,
    )


def test_prices_are_those_of_their_page(sold: Figures) -> None:
    """One of the first cost 1.00, and 2.50 is asked for it; two were sold for 6.00 and cost 2.00."""
    there = prices_page(sold)
    first = next(row for row in rows_of(prices_table(sold)) if row["batch"] == "first")
    assert (first["cost in EUR"], first["asked in EUR"], first["stays in EUR"]) == ("1.00", "2.50", "1.50")
    assert (first["minutes for one"], first["stays for an hour in EUR"], first["what stays is"]) == (
        "10", "9.00", "exact",
    )  # fmt: skip
    rows = rows_of(sold_table(sold))
    assert there.total is not None
    assert str(number(rows, "sold")) == there.total.sold
    assert shown(cents(rows, "income in EUR")) in there.total.brought
    assert shown(cents(rows, "cost of those in EUR")) in there.total.cost
    assert [row["what stayed is"] for row in rows] == ["at least", "exact"]


def rows_of(table: Table) -> Rows:
    """The rows of a table as they are written."""
    head, *rows = read(csv_text(table))
    return [dict(zip(head, row, strict=True)) for row in rows]
