"""The public edition of the demo as it is served: whole, sound, and plain to all."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Literal

import html5lib
import pytest
from playwright.sync_api import Page

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures
from batchleaf.facts import Settings, Status
from batchleaf.linkcheck import broken_links
from batchleaf.made_batch import said
from batchleaf.made_site import made_site
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.render.look import STANDARD
from batchleaf.store import Store
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.masthead import Masthead
from batchleaf.workflow import read_and_work_out
from browsing import SUB_PATH, AxeFaults, Served, Watch, is_moved, parsed
from kept_demo import planner

ROOT = Path(__file__).parents[2]


def test_every_link_leads_somewhere(public_demo: Served) -> None:
    """None leads to what is private, and so is not there."""
    assert broken_links(public_demo.folder, SUB_PATH) == ()


def test_every_link_within_the_site_is_relative(public_demo: Served) -> None:
    """So the folder can be put anywhere; only the page for lost addresses must know where it is."""
    for path in public_demo.pages():
        tree = html5lib.parse(path.read_text(encoding="utf-8"), namespaceHTMLElements=False)
        links = [element.get(name) or "" for element in tree.iter() for name in ("href", "src")]
        assert path.name == "404.html" or not [link for link in links if link.startswith("/")]


@pytest.fixture(scope="module")
def demo() -> Figures:
    """The figures of all the demo's batches."""
    worked = read_and_work_out(ROOT / "projects", Settings(Unit.MM, Currency.of("EUR")), planner())
    assert worked.figures is not None
    return worked.figures


@pytest.mark.slow
@pytest.mark.parametrize(
    "told",
    [
        Told(),
        *(
            pytest.param(told, marks=pytest.mark.slow)
            for told in (Told(cost=False), Told(supplies=False), Told(cost=False, supplies=False))
        ),
    ],
    ids=str,
)
def test_the_pages_made_from_records_are_sound_html(demo: Figures, told: Told, tmp_path: Path) -> None:
    """A strict parser finds no fault in any body, whatever the maker lets it tell."""
    bare = tuple(replace(project, photos=()) for project in demo.archive.projects)
    figures = replace(demo, archive=replace(demo.archive, projects=bare))
    site, _ = made_site(public_edition(figures, told, PLANNER), Masthead("Paper"), STANDARD, Store(tmp_path))
    assert len(site.pages) > 8
    for one in site.pages:
        page = f"<!doctype html><html><head><title>x</title></head><body>{said(one.body)}</body></html>"
        html5lib.HTMLParser(strict=True).parse(page)


def test_batches_are_those_that_are_published(public_demo: Served, demo: Figures) -> None:
    """The demo has some that are not; the search finds no others."""
    by_status = {one.slug: one.status for one in demo.archive.projects}
    there = {slug for slug in by_status if (public_demo.folder / "projects" / slug).exists()}
    published = {slug for slug, status in by_status.items() if status is Status.PUBLISHED}
    assert there == published != set(by_status)
    index = json.loads((public_demo.folder / "search" / "search_index.json").read_text(encoding="utf-8"))
    places = {doc["location"].partition("#")[0] for doc in index["docs"]}
    assert {place for place in places if place.startswith("projects/")} == {
        f"projects/{slug}/" for slug in published
    }


@pytest.mark.slow
def test_no_page_scrolls_sideways_on_a_phone(public_demo: Served, page: Page, watch: Watch) -> None:
    """320 px wide; and none asks another host or complains."""
    page.set_viewport_size({"width": 320, "height": 700})
    for path in public_demo.pages():
        if not is_moved(path):
            page.goto(public_demo.url + public_demo.name(path))
            assert page.evaluate("document.documentElement.scrollWidth") <= 320, path
    assert watch.other_hosts == []
    assert watch.errors == []


@pytest.mark.slow
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pages_are_plain_to_all(
    public_demo: Served, page: Page, axe_faults: AxeFaults, scheme: Literal["light", "dark"]
) -> None:
    """On the fullest page of each kind none of axe-core's rules is broken."""
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    faults: dict[str, tuple[str, ...]] = {}
    for kind, name in public_demo.kinds().items():
        public_demo.stay(page, name)
        faults[kind] = axe_faults(page)
    assert {"home", "batch made", "item", "one of series"} <= set(faults)
    assert "batch planned" not in faults
    assert {kind: found for kind, found in faults.items() if found} == {}


@pytest.mark.parametrize("edition", ["demo_site", "public_demo"])
def test_times_of_steps_lead_to_the_film(edition: str, request: pytest.FixtureRequest) -> None:
    """In both editions, in the form that the maker's address asks for; without one they are words."""
    site: Served = request.getfixturevalue(edition)
    led = {
        "ivy-gate-cards": "https://example.org/watch?film=ivy-gate-cards&at=50",
        "sloe-lane-cards": None,
    }
    for slug, first in led.items():
        page = parsed(site.file(f"projects/{slug}/"))
        times = [one for one in page.iter("small") if one.get("class") == "film"]
        links = [one.get("href") for time in times for one in time.iter("a")]
        assert len(times) > 2
        assert (links[0] if links else None) == first
        assert not first or len(links) == len(times)
