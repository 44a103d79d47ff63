"""What the public edition is made of, without a site around it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from fractions import Fraction
from typing import Any, Final

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures, all_in_full, work_out
from batchleaf.core.sheets_needed import count_sheets
from batchleaf.edition import VARIABLE, Edition, edition_in
from batchleaf.facts import Asked, Moment, Status, Use, Work, WorkKind
from batchleaf.facts.postage import Postage, Rate
from batchleaf.records.post_rules import known_posts
from batchleaf.views.batch import batch_page
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.figures_json import figures_json
from batchleaf.views.pages import BatchPage, DrawerPage, HomePage, HowPage, ItemPage
from batchleaf.views.site import sections_of
from core.drawers import cut, part
from views.test_batch_page import BASE, FULL, OTHERS, SETTINGS, figures
from views.test_small import said
from whole_site import all_data, all_pages

PUBLISHED: Final = replace(
    FULL,
    status=Status.PUBLISHED,
    asks=Asked(3_50),
    parts=(FULL.parts[0], *(replace(part, below="A") for part in FULL.parts[1:])),
    works=(Work(WorkKind.INK, ("A",), "", Moment.AFTER, supply="sea-card"),),
)
NAMES: Final = ("sea card", "sea-card", "shoal pad", "shoal-pad", "star sticker", "dots")

POSTAGE: Final = Postage(
    known_posts(), (Rate(dt.date(2026, 1, 1), "Royal Mail letter", Fraction(100), "100 g", 1_65),)
)
ALLOWED: Final[dict[str, str]] = {
    "": "format title date status unit makes parts from_one_sheet could_have_given paper supplies cost_of_one"
    " minutes lies room_to_write room_to_stamp weight thickness envelope post design extras collated bench"
    " for_makes",
    "makes": "finished begun thing",
    "parts": "letter name size each papers cut stuck_with",
    "stuck_with": "supply amount",
    "from_one_sheet": "part supply grid through stopped proved",
    "could_have_given": "makes bound proved reason",
    "paper": "cut used kept waste",
    "supplies": "supply used unit scraps amount scales",
    "for_makes": "makes sheets proved supplies",
    "sheets": "supply sheets",
    "cost_of_one": "amount complete",
    "lies": "part on face left top width height",
    "room_to_write": "on face left top width height",
    "room_to_stamp": "part face left top width height",
    "weight": "grams complete without not_counted posted",
    "thickness": "mm usual uneven complete without estimated posted",
    "envelope": "name mm supply packed",
    "post": "rules edition as reasons",
    "design": "slug title",
    "extras": "part extra planned",
    "collated": "sets possible rule missing",
    "missing": "part more papers",
    "bench": "works cuts settings seconds waits",
    "works": "work on tool with when pieces sheets at_once strokes seconds waits",
}
"""Every key that a public ``figures.json`` may have, below the key that holds it."""


@pytest.fixture(scope="module")
def private() -> Figures:
    """One batch that is published, two of the same design that are only made; all papers weigh as much."""
    archive = figures(PUBLISHED, *OTHERS).archive
    weighed = tuple(replace(one, grammage=Fraction(200)) for one in archive.supplies)
    worked = work_out(replace(archive, supplies=weighed, postage=POSTAGE), SETTINGS)
    return all_in_full(worked, PLANNER, count_sheets)


@pytest.fixture(scope="module")
def public(private: Figures) -> Figures:
    """The same for others."""
    return all_in_full(public_edition(private, Told(), PLANNER), PLANNER, count_sheets)


def numbers_of(figures: Figures) -> dict[str, Any]:
    """The ``figures.json`` of the published batch."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    designs = {one.slug: one for one in figures.archive.designs}
    return figures_json(figures.batches["cards"], supplies, designs, SETTINGS)


def texts(value: Any) -> Iterator[str]:
    """Every text in a page model or in JSON."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from (text for item in value.items() for text in texts(item))
    elif isinstance(value, tuple | list):
        yield from (text for one in value for text in texts(one))
    elif is_dataclass(value):
        yield from (text for field in fields(value) for text in texts(getattr(value, field.name)))


def all_texts(figures: Figures) -> str:
    """All that the pages, the numbers and the tables say, addresses too."""
    pages = [(placed.address, placed.page) for placed in all_pages(figures)]
    return "\n".join(texts([*pages, numbers_of(figures), *all_data(figures)]))


def test_figures_json_has_only_keys_that_are_allowed(private: Figures, public: Figures) -> None:
    """The batch has all that a record can hold, so each allowed key is there, and no other."""
    found: dict[str, set[str]] = {}
    numbers = numbers_of(public)
    stuck = [("stuck_with", part.get("stuck_with")) for part in numbers["parts"]]
    below = [("missing", numbers["collated"]["missing"]), ("works", numbers["bench"]["works"])]
    with_use = figures(replace(PUBLISHED, uses=(Use("stars", Fraction(6), Fraction(1)),)), *OTHERS)
    told = public_edition(with_use, Told(), PLANNER)
    scaled = numbers_of(all_in_full(told, PLANNER, count_sheets))["for_makes"]
    counts = [(key, one[key]) for one in scaled for key in ("sheets", "supplies")]
    for above, value in [("", numbers), *numbers.items(), *stuck, *below, *counts]:
        for one in value if isinstance(value, list) else [value]:
            if isinstance(one, dict):
                found.setdefault(above, set()).update(one)
    assert found == {above: set(keys.split()) for above, keys in ALLOWED.items()}
    assert {"batch_cost", "went", "where", "sold", "asked", "postage"} <= numbers_of(private).keys()


def test_the_documentation_names_the_allowed_keys_and_no_others(public: Figures) -> None:
    """On the page that tells how numbers are worked out."""
    how = next(one.page for one in all_pages(public) if isinstance(one.page, HowPage))
    told = how.sections[-1].paragraphs[-1].removeprefix("Its keys:")
    words = set(told.replace("Where the record says something of it", "").replace(".", " ").split())
    keys = {key for below in ALLOWED.values() for key in below.split()}
    assert {word.strip("(),;:") for word in words} - {""} == keys


def test_the_public_plans_and_cost_of_one_are_the_private_ones(private: Figures, public: Figures) -> None:
    """Worked out from less, they are the same numbers."""
    mine, theirs = private.batches["cards"], public.batches["cards"]
    assert (theirs.cutting, theirs.from_one_sheet, theirs.paper) == (
        mine.cutting,
        mine.from_one_sheet,
        mine.paper,
    )
    assert (theirs.one, theirs.used) == (mine.one, mine.used)
    assert theirs.one


def test_the_public_batch_page_reads_well(public: Figures) -> None:
    """No account, no whereabouts, no other batches of the design; the supplies with what was used."""
    page = batch_page(public.batches["cards"], public, {}, "")
    assert said(page.sentence) == ("6 cards from 1 sheet of sea card and 2 sheets of shoal pad. 0.05 € each.")
    assert said(page.about[0]) == "Made to the design Strip card."
    assert (page.went, page.cost.total_batch, page.cost.strip) == (None, "", None)
    assert [(row.supply.text, row.used, row.batch, row.one) for row in page.cost.rows] == [
        ("sea card", "1\u00a0sheet", "", ""),
        ("shoal pad", "2\u00a0sheets", "", ""),
    ]


def test_no_page_tells_where_makes_are_or_what_is_asked(private: Figures, public: Figures) -> None:
    """The private edition has both pages, and the first page leads to them."""
    addresses = {"finished/", "prices/"}
    for figures_, there in ((private, addresses), (public, set[str]())):
        pages = {one.address: one.page for one in all_pages(figures_)}
        assert addresses & pages.keys() == there
        home = pages[""]
        assert isinstance(home, HomePage)
        several = {"find/"} if len(figures_.batches) > 1 else set[str]()
        assert {link.href for link in home.more} == {*there, *several, "table/", "year/"}
        how = pages["how/"]
        assert isinstance(how, HowPage)
        assert {"finished", "prices"} & {section.anchor for section in how.sections} == {
            one.removesuffix("/") for one in there
        }


def test_supplies_are_those_that_were_used(public: Figures) -> None:
    """The drawer is an index of supplies, and a page of one says in which batches it is."""
    assert [title for title, _, _ in sections_of(public)] == ["Batches", "Supplies", "Bench", "Series", "How"]
    pages = [one.page for one in all_pages(public)]
    (index,) = [page for page in pages if isinstance(page, DrawerPage)]
    assert (index.title, said(index.sentence)) == ("Supplies", "Three supplies, used in one batch.")
    items = {page.title: page for page in pages if isinstance(page, ItemPage)}
    assert sorted(items) == ["Sea card", "Shoal pad", "Star sticker"]
    sea = items["Sea card"]
    assert said(sea.sentence) == "Used in one batch."
    assert (sea.drawer.text, sea.movements, sea.total_on_hand) == ("Supplies", (), "")


def test_without_supplies_papers_go_by_their_kind(private: Figures) -> None:
    """No list, no pages, and no name in any text or address; the plan can still be followed."""
    unnamed = public_edition(private, Told(supplies=False), PLANNER)
    assert not [name for name in NAMES if name in all_texts(unnamed).lower()]
    assert [name for name in NAMES if name in all_texts(private).lower()] == [*NAMES]
    page = batch_page(unnamed.batches["cards"], unnamed, {}, "")
    assert said(page.sentence) == "6 cards from 1 sheet of card 1 and 2 sheets of card 2. 0.05 € each."
    assert [row.papers for row in page.parts] == [
        ("card 1",),
        ("any 2 of card 2",),
        ("scraps of card 1",),
        ("gems",),
    ]
    assert page.cost.rows == ()
    assert len(page.plans) == 2
    assert "drawer/" not in {one.address for one in all_pages(unnamed)}
    assert "Supplies" not in [title for title, _, _ in sections_of(unnamed)]


def test_without_supplies_papers_of_a_pad_have_each_a_number_of_its_kind() -> None:
    """They are not named together, since the number of a paper says nothing beside that of its kind."""
    strip = replace(part("B", 44, 70, "shoal-pad-2"), papers=("shoal-pad-2", "shoal-pad-5"))
    batch = replace(PUBLISHED, parts=(BASE, strip), cut=(cut(1, slug="sea-card"),), design="")
    together = batch_page(figures(batch).batches["cards"], figures(batch), {}, "")
    assert said(together.parts[1].papers[:1]) == "shoal pad 2 and 5"
    unnamed = public_edition(figures(batch), Told(supplies=False), PLANNER)
    apart = batch_page(unnamed.batches["cards"], unnamed, {}, "")
    assert apart.parts[1].papers == ("card 3", "card 4")


def test_without_cost_no_money_is_told(private: Figures) -> None:
    """Not in a sentence, not in the numbers, and it is not explained either."""
    free = public_edition(private, Told(cost=False), PLANNER)
    assert "€" not in all_texts(free)
    assert numbers_of(free)["cost_of_one"] is None
    heads = [one.text.splitlines()[0] for one in all_data(free) if one.address.endswith(".csv")]
    assert [head for head in heads if "cost" in head or "price" in head] == []
    how = next(one.page for one in all_pages(free) if isinstance(one.page, HowPage))
    assert "cost" not in [section.anchor for section in how.sections]


def test_where_nothing_is_published_nothing_is_there() -> None:
    """The first page says so."""
    none = public_edition(figures(FULL, *OTHERS), Told(), PLANNER)
    pages = {one.address: one.page for one in all_pages(none)}
    assert sorted(pages) == ["", "how/", "series/"]
    home = pages[""]
    assert isinstance(home, HomePage)
    assert (home.title, said(home.sentence)) == ("Batches", "Nothing is published yet.")


def test_a_batch_that_was_not_counted_says_no_cost() -> None:
    """As in the private edition."""
    bare = replace(PUBLISHED, cut=(), uses=(), parts=())
    told = public_edition(figures(bare), Told(), PLANNER)
    page = batch_page(told.batches["cards"], told, {}, "")
    assert isinstance(page, BatchPage)
    assert said(page.sentence) == "6 cards."


@pytest.mark.parametrize(
    ("environment", "edition"),
    [({}, Edition.PRIVATE), ({VARIABLE: ""}, Edition.PRIVATE), ({VARIABLE: "public"}, Edition.PUBLIC)],
)
def test_the_edition_is_private_unless_it_is_said(environment: dict[str, str], edition: Edition) -> None:
    """The variable names it."""
    assert edition_in(environment) is edition


def test_a_word_that_is_no_edition_is_told() -> None:
    """So that no slip makes a private site of a public one."""
    with pytest.raises(ValueError, match="says “Public”; say private or public, or leave it out"):
        edition_in({VARIABLE: "Public"})
