"""The feed of a site that has an address, read as RFC 4287 says."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from kept_demo import planner
from batchleaf.cli import main
from batchleaf.facts import Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.feed import NEWEST, feed
from batchleaf.views.masthead import Masthead
from batchleaf.workflow import read_and_work_out
from batchleaf.writing.archive import start_archive
from browsing import Served, parsed
from pathlib import Path

ROOT = Path(__file__).parents[2]
ATOM = "{http://www.w3.org/2005/Atom}"
MOMENT = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T00:00:00Z")


def read(site: Served, page: str = "") -> ET.Element:
    """The feed of a site, or of one of its pages."""
    return ET.parse(site.folder / page / "feed.xml").getroot()


def text(element: ET.Element, name: str) -> str:
    """What stands in the one element of that name."""
    (found,) = element.findall(f"{ATOM}{name}")
    return "".join(found.itertext())


def links(element: ET.Element) -> dict[str, str]:
    """Relation → address."""
    return {one.attrib["rel"]: one.attrib["href"] for one in element.findall(f"{ATOM}link")}


def test_it_has_what_a_feed_must_have(demo_site: Served) -> None:
    """One id, title, author and moment of change for all, and each entry its own (section 4.1)."""
    root = read(demo_site)
    assert text(root, "id") == links(root)["alternate"] == demo_site.url
    assert links(root)["self"] == f"{demo_site.url}feed.xml"
    assert text(root, "title") == text(root, "author") == "Fernhollow Paper Bench"
    entries = root.findall(f"{ATOM}entry")
    assert len({text(entry, "id") for entry in entries}) == len(entries) > 3
    for element in (root, *entries):
        assert MOMENT.fullmatch(text(element, "updated"))
    for entry in entries:
        assert text(entry, "title")
        assert text(entry, "summary").endswith(".")


def test_its_entries_are_the_batches_newest_first(demo_site: Served) -> None:
    """Each leads to the page whose title it bears."""
    entries = read(demo_site).findall(f"{ATOM}entry")
    days = [text(entry, "updated") for entry in entries]
    assert days == sorted(days, reverse=True)
    assert text(read(demo_site), "updated") == days[0]
    for entry in entries:
        page = parsed(demo_site.file(links(entry)["alternate"].removeprefix(demo_site.url)))
        assert page.find(".//h1").text == text(entry, "title")


def test_the_public_edition_tells_of_what_is_published(demo_site: Served, public_demo: Served) -> None:
    """And of nothing else: fewer than the maker sees, each with a page there."""
    shown = {links(entry)["alternate"] for entry in read(public_demo).findall(f"{ATOM}entry")}
    assert 0 < len(shown) < len(read(demo_site).findall(f"{ATOM}entry"))
    for address in shown:
        assert public_demo.file(address.removeprefix(public_demo.url)).is_file()


def test_every_page_leads_to_it(demo_site: Served) -> None:
    """As a reader of feeds looks for it; the page of a series to that of the series besides."""
    for path in demo_site.pages():
        found = [one for one in parsed(path).iter("link") if one.get("type") == "application/atom+xml"]
        own = [path.parent / "feed.xml"] if path.parent.parent.name == "series" else []
        there = [demo_site.folder / "feed.xml", *own]
        assert len({one.get("title") for one in found}) == len(found) == len(there)
        hrefs = [str(one.get("href")) for one in found]
        assert path.name == "404.html" or [(path.parent / href).resolve() for href in hrefs] == [
            file.resolve() for file in there
        ]


@pytest.mark.parametrize("edition", ["demo_site", "public_demo"])
def test_each_series_has_a_feed_of_its_own(edition: str, request: pytest.FixtureRequest) -> None:
    """With all that section 4.1 asks for: one id, title and moment, an author, a link to itself; its batches alone."""
    site: Served = request.getfixturevalue(edition)
    pages = [path for path in site.pages() if path.parent.parent.name == "series"]
    assert pages
    everywhere = {text(one, "id"): text(one, "summary") for one in read(site).findall(f"{ATOM}entry")}
    for path in pages:
        page = site.name(path)
        root = read(site, page)
        assert root.tag == f"{ATOM}feed"
        assert text(root, "id") == links(root)["alternate"] == f"{site.url}{page}"
        assert links(root)["self"] == f"{site.url}{page}feed.xml"
        assert text(root, "title") == f"{parsed(path).find('.//h1').text} · Fernhollow Paper Bench"
        assert text(root.find(f"{ATOM}author") or root, "name") == "Fernhollow Paper Bench"
        entries = root.findall(f"{ATOM}entry")
        days = [text(entry, "updated") for entry in entries]
        assert days == sorted(days, reverse=True)
        assert text(root, "updated") == days[0]
        assert all(MOMENT.fullmatch(day) for day in days)
        assert {text(entry, "id"): text(entry, "summary") for entry in entries}.items() <= everywhere.items()
        assert {text(entry, "title") for entry in entries} <= {
            str(one.text) for one in parsed(path).iter("h2")
        }


def test_feeds_say_what_others_may_do_with_it(demo_site: Served) -> None:
    """The licence that the site sets, with its deed (section 4.2.10)."""
    for page in ("", "series/hedgerow-year/"):
        rights = text(read(demo_site, page), "rights")
        assert rights == "CC BY 4.0, https://creativecommons.org/licenses/by/4.0/"


def test_a_site_without_an_address_has_none(tmp_path: Path) -> None:
    """Nor does any page speak of one, or of a picture to be passed on."""
    root = tmp_path / "paper"
    start_archive(root)
    assert main(["build", "--archive", str(root)]) == 0
    assert not (root / "site" / "feed.xml").exists()
    for path in (root / "site").rglob("*.html"):
        words = path.read_text(encoding="utf-8")
        assert "atom+xml" not in words
        assert "og:" not in words
        assert "license" not in words


def test_every_page_tells_the_licence(demo_site: Served) -> None:
    """To readers in its foot, and to machines in its head."""
    for path in demo_site.pages():
        page = parsed(path)
        (link,) = [one for one in page.iter("link") if one.get("rel") == "license"]
        (shown,) = [one for one in page.iter("a") if "license" in (one.get("rel") or "").split()]
        assert link.get("href") == shown.get("href") == "https://creativecommons.org/licenses/by/4.0/"
        assert shown.text == "CC BY 4.0"


def test_it_ends_after_the_newest() -> None:
    """A reader has seen the others; an archive that made nothing has no feed, nor has one without address."""
    worked = read_and_work_out(ROOT / "projects", Settings(Unit.MM, Currency.of("EUR")), planner())
    assert worked.figures is not None
    masthead = Masthead("Paper", "https://example.org/paper/")
    batch = next(one for one in worked.figures.batches.values() if one.made)
    many = replace(worked.figures, batches={f"b{n:02}": batch for n in range(NEWEST + 5)})
    made = feed(many, masthead)
    assert made is not None
    assert len(made.entries) == NEWEST
    assert feed(replace(many, batches={}), masthead) is None
    assert feed(many, Masthead("Paper")) is None
