"""A batch is found by the words of its page; figures, measures and the labels of drawings are not."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any, Final

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Page, expect

from browsing import SVG, Served, parsed
from records.test_cases import laid_out

MOST_BYTES: Final = 2000
"""What a batch may add to the index that every search fetches."""
SETTINGS: Final = """
site_name: Bench
docs_dir: site_src
theme: {name: material}
plugins: [search, batchleaf: {other_sheets: A4}]
"""
FOUND: Final = (
    "<p>1 February 2026 · first of Twelve Tides</p> "
    "<p>3 cards from 3 sheets of dune card and 1 sheet of tide paper; these sheets could have given 6. "
    "0.62 € each.</p> "
    "<p>Lit from behind, they glimmer.</p>"
    "<p>Made to the design Oriel card. Tools: the rocker blade and sea words. "
    "Techniques: gate fold, score, stamp, punch, weave.</p> "
    "base dune card; oriel tide paper shows the back: small shells; "
    "sill dune card stamped with slack water; "
    "dune card; tide paper; kelp ink; "
    "<ol> <li><p>Punch the lattice, then weave the cord. </p> </li> </ol>"
)


def index(site_dir: Path) -> list[Any]:
    """The entries of a site's search index."""
    text = (site_dir / "search" / "search_index.json").read_text(encoding="utf-8")
    entries: list[Any] = json.loads(text)["docs"]
    return entries


@pytest.fixture(scope="module")
def docs(tmp_path_factory: pytest.TempPathFactory) -> list[Any]:
    """The index of a small archive."""
    root = tmp_path_factory.mktemp("lantern")
    laid_out((Path(__file__).parent / "lantern.archive").read_text(encoding="utf-8"), root)
    (root / "site_src").mkdir()
    (root / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
    build(config)
    return index(root / "site")


def test_a_batch_is_one_entry_with_all_its_words(docs: list[Any]) -> None:
    """Title, date, series, sentence, notes, design, tools, techniques, parts, supplies, steps: nothing else.

    No cautions, letters, measures, counts, settings, prices of supplies, times of the film,
    whereabouts, other batches of the series.
    """
    (entry,) = [doc for doc in docs if doc["location"].startswith("projects/lantern/")]
    assert (entry["location"], entry["title"]) == ("projects/lantern/", "Lantern cards")
    assert re.sub(r"\s+", " ", entry["text"]).replace(" ;", ";") == FOUND


def test_batches_come_before_pages_that_only_name_a_thing(docs: list[Any]) -> None:
    """Their words weigh more than a title of another page."""
    weights = {doc["location"]: doc.get("boost", 1) for doc in docs}
    assert {weight > 1000 for place, weight in weights.items() if place.startswith("projects/")} == {True}
    assert {weight for place, weight in weights.items() if not place.startswith("projects/")} == {1}


def test_pages_from_records_are_found_once(docs: list[Any]) -> None:
    """But for the long pages, whose sections are found each by itself."""
    places = [doc["location"] for doc in docs if not doc["location"].startswith(("how/", "bench/"))]
    assert sorted(places) == sorted(
        ["", "projects/lantern/", "projects/later/", "drawer/", "drawer/dune-card/", "drawer/tide-paper/",
         "drawer/kelp-ink/", "finished/", "offcuts/", "series/", "series/tides/", "year/",
         "could-become/", "designs/oriel/", "find/", "side-by-side/", "today/"]
    )  # fmt: skip


def test_a_batch_adds_little_to_the_index(demo_site: Served) -> None:
    """In the demo each batch takes less than two kilobytes of what a search fetches."""
    sizes = {
        doc["location"]: len(json.dumps(doc, separators=(",", ":")))
        for doc in index(demo_site.folder)
        if doc["location"].startswith("projects/")
    }
    assert len(sizes) >= 5
    assert {place: size for place, size in sizes.items() if size > MOST_BYTES} == {}


def test_tables_as_files_are_not_found(demo_site: Served) -> None:
    """Neither the files nor the words that lead to them, nor the controls over the drawer's shelves."""
    entries = index(demo_site.folder)
    assert {doc["location"] for doc in entries if ".csv" in doc["location"]} == set()
    said = " ".join(f"{doc['title']} {doc['text']}" for doc in entries if doc["location"] != "how/#figures")
    assert [words for words in ("as CSV", "Show only", "by last use") if words in said] == []


# --- in the browser -------------------------------------------------------------------


def look_for(page: Page, site: Served, words: str) -> list[str]:
    """Type into the search of the first page; where each result leads, best first."""
    # A fresh page has no results of an earlier search; it asks at the first key, once.
    page.goto(site.url)
    field = page.locator(".md-search__input")
    field.click()
    field.fill(words)
    field.press("End")
    expect(page.locator(".md-search-result__meta")).to_have_text(re.compile(r"Found on|Nothing found"))
    found: list[str] = page.locator(".md-search-result__item > a:first-child").evaluate_all(
        "links => links.map(link => link.href)"
    )
    return found


def _batches_with(site: Served, words: str) -> set[str]:
    """Where the batches are whose page says all of the words."""
    return {
        f"{site.url}{doc['location']}"
        for doc in index(site.folder)
        if doc["location"].startswith("projects/")
        and all(word in f"{doc['title']} {doc['text']}".lower() for word in words.split())
    }


@pytest.mark.parametrize(
    "words", ["jute cord", "ember card", "score board", "top fold", "stamp", "hedgerow year", "four squares"]
)
def test_a_batch_is_the_first_result(demo_site: Served, page: Page, words: str) -> None:
    """For a supply, a paper, a tool, a fold, a technique, a series, a design: a batch that has it."""
    assert look_for(page, demo_site, words)[0] in _batches_with(demo_site, words)


@pytest.mark.parametrize(
    ("words", "batch"),
    [
        ("water strip", "wren-note-bookmarks"),  # a part
        ("wrinkled", "sloe-lane-cards"),  # the notes
        ("ropewalk", "ropewalk-place-cards"),  # a title
    ],
)
def test_words_lead_to_the_batch(demo_site: Served, page: Page, words: str, batch: str) -> None:
    """The first result is the batch, with its title and a line; it leads to the page."""
    assert look_for(page, demo_site, words)[0] == f"{demo_site.url}projects/{batch}/"
    first = page.locator(".md-search-result__item a").first
    title = first.locator("h1").inner_text()
    line = first.inner_text().removeprefix(title).strip()
    assert len(line.split()) >= 3
    first.click()
    page.wait_for_url(f"{demo_site.url}projects/{batch}/**")
    assert page.locator("h1").inner_text() == title


def test_a_technique_finds_batches_first(demo_site: Served, page: Page) -> None:
    """Those whose steps say so, before the tool that does it."""
    found = [href.removeprefix(demo_site.url) for href in look_for(page, demo_site, "punch")]
    batches = [href for href in found if href.startswith("projects/")]
    assert len(batches) >= 2
    assert found[: len(batches)] == batches


def test_pages_opened_from_a_folder_show_no_field(demo_site: Served, page: Page) -> None:
    """Browsers give a file nothing to search in: what would find nothing is not offered."""
    page.goto((demo_site.folder / "index.html").as_uri())
    expect(page.locator("h1")).to_be_visible()
    expect(page.locator(".md-search__input")).to_be_hidden()


def _labels(site: Served) -> set[str]:
    """The measures drawn on the batch pages of the demo: figures alone."""
    texts = {
        "".join(text.itertext()).strip()
        for path in (site.folder / "projects").rglob("index.html")
        for text in parsed(path).iter(f"{SVG}text")
    }
    return {text for text in texts if re.fullmatch(r"\d{3,}", text)}


def _words(doc: Any) -> list[str]:
    return re.split(r"[\s\-]+", re.sub(r"<[^>]+>", " ", doc["text"] + " " + doc["title"]))


@pytest.mark.slow
def test_a_measure_finds_no_drawing(demo_site: Served, page: Page) -> None:
    """Lengths that stand in drawings of the demo, and in no sentence of a maker, find nothing."""
    told = {word for doc in index(demo_site.folder) for word in _words(doc)}
    drawn = [label for label in sorted(_labels(demo_site)) if not any(w.startswith(label) for w in told)]
    assert len(drawn) >= 3, "most measures are in drawings alone"
    assert [label for label in drawn[:5] if look_for(page, demo_site, label)] == []


def test_letters_of_parts_are_not_found(demo_site: Served) -> None:
    """No word of a batch's entry is the letter of a part, as drawings and lists have them."""
    batches = [doc for doc in index(demo_site.folder) if doc["location"].startswith("projects/")]
    assert {word for doc in batches for word in _words(doc)} & set("BCDEFGHJKLMN") == set()
