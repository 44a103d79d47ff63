"""The demo's pages refer to one another as a maker expects."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import html5lib
import pytest

from kept_demo import planner
from batchleaf.facts import Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.workflow import read_and_work_out
from browsing import Served

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def figures() -> Any:
    """The demo's figures, worked out without MkDocs."""
    worked = read_and_work_out(ROOT / "projects", Settings(Unit.MM, Currency.of("EUR")), planner())
    assert worked.figures is not None
    return worked.figures


def links(page: Path) -> set[str]:
    """Where a page leads, as addresses below the site's root."""
    tree = html5lib.parse(page.read_text(encoding="utf-8"), namespaceHTMLElements=False)
    main = next(tree.iter("main"))
    hrefs = [a.get("href") or "" for a in main.iter("a")]
    return {(page.parent / href.partition("#")[0]).resolve().as_posix() for href in hrefs}


def test_every_supply_of_a_batch_leads_to_its_drawer_page_and_back(demo_site: Served, figures: Any) -> None:
    """The supply list links each item to the drawer, and the item back to every batch that uses it.

    A numbered paper leads to its pad; both lead back.
    """
    pads = {supply.slug: supply.pad for supply in figures.archive.supplies if supply.pad}
    for batch in figures.batches.values():
        page = demo_site.folder / "projects" / batch.project.slug / "index.html"
        for line in batch.cost.lines:
            item = demo_site.folder / "drawer" / line.supply / "index.html"
            led_to = demo_site.folder / "drawer" / pads.get(line.supply, line.supply) / "index.html"
            assert led_to.parent.resolve().as_posix() in links(page)
            assert page.parent.resolve().as_posix() in links(led_to)
            assert page.parent.resolve().as_posix() in links(item)


def test_figures_json_says_what_the_page_says(demo_site: Served, figures: Any) -> None:
    """The file beside the page is the same batch, and its money is on the page."""
    for batch in figures.batches.values():
        folder = demo_site.folder / "projects" / batch.project.slug
        data = json.loads((folder / "figures.json").read_text(encoding="utf-8"))
        tree = html5lib.parse((folder / "index.html").read_text("utf-8"), namespaceHTMLElements=False)
        assert data["title"] == batch.project.title
        if not batch.taken:
            assert (data["batch_cost"], [*tree.iter("tfoot")]) == (None, [])
            continue
        total = next(tree.iter("tfoot"))
        at_least = "" if data["batch_cost"]["complete"] else "at least "
        sums = [data["batch_cost"], *([data["cost_of_one"]] if data["cost_of_one"] else [])]
        shown = [cell.text for cell in total.iter("td")][-len(sums) :]
        assert shown == [f"{at_least}{one['amount']}" for one in sums]


def test_home_leads_to_every_batch(demo_site: Served, figures: Any) -> None:
    """What was made is in the gallery, the latest at the top; what is planned in a list after it."""
    tree = html5lib.parse((demo_site.folder / "index.html").read_text("utf-8"), namespaceHTMLElements=False)
    gallery = next(e for e in tree.iter("ol") if "gallery" in (e.get("class") or ""))
    coming = next(e for e in tree.iter("ul") if "coming" in (e.get("class") or ""))
    made = [f"projects/{slug}/" for slug, batch in figures.batches.items() if batch.made]
    planned = [f"projects/{slug}/" for slug, batch in figures.batches.items() if not batch.made]
    assert made
    assert planned
    assert [a.get("href") for a in gallery.iter("a")] == made[::-1]
    assert [a.get("href") for a in coming.iter("a")] == planned


def test_every_number_is_explained_in_figures_documentation(demo_site: Served, figures: Any) -> None:
    """Each key of figures.json, at every depth, stands in the documentation of the site."""
    html = (demo_site.folder / "how" / "index.html").read_text(encoding="utf-8")
    section = html.partition('id="figures"')[2].partition("Its keys:")[2].partition("</p>")[0]
    explained = set(re.findall(r"[a-z_]+", section))

    def keys(value: Any) -> set[str]:
        if isinstance(value, dict):
            return set(value) | {key for inner in value.values() for key in keys(inner)}
        if isinstance(value, list):
            return {key for inner in value for key in keys(inner)}
        return set()

    for slug in figures.batches:
        text = (demo_site.folder / "projects" / slug / "figures.json").read_text(encoding="utf-8")
        for key in keys(json.loads(text)):
            assert key in explained


def test_an_old_address_leads_to_the_batch(demo_site: Served, figures: Any) -> None:
    """A renamed batch is still found where it was, without scripts, and only once in the search."""
    moved = [(old, b.project.slug) for b in figures.batches.values() for old in b.project.was]
    assert moved
    search = (demo_site.folder / "search" / "search_index.json").read_text(encoding="utf-8")
    for old, slug in moved:
        page = demo_site.folder / "projects" / old / "index.html"
        assert f'<meta http-equiv="refresh" content="0; url=../{slug}/">' in page.read_text(encoding="utf-8")
        assert (demo_site.folder / "projects" / slug).resolve().as_posix() in links(page)
        assert f"projects/{old}/" not in search
