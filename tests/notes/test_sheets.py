"""What the companion notes say, who gets them, and where they lie."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Page

from batchleaf.core.figures import BatchFigures, Figures, work_out
from batchleaf.facts import Companion, Project, Settings, Status, Tie
from batchleaf.made_batch import said
from batchleaf.made_site import made_site
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.render.look import STANDARD
from batchleaf.store import Store
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke
from batchleaf.views.edition import Told, handed_out, public_edition
from batchleaf.views.masthead import Masthead
from batchleaf.views.notes.on_paper import HEIGHT, LETTERING, WIDTH, smallest
from batchleaf.views.notes.sheet import hand_out_sheets, notes_sheets
from batchleaf.views.notes.templates import turned
from batchleaf.views.pages import NotesSheet, PrintedDrawing
from batchleaf.views.words import spelt
from batchleaf.workflow import read_and_work_out
from browsing import SVG, AxeFaults, Served, is_sheet, parsed
from kept_demo import planner

ROOT: Final = Path(__file__).parents[2]
MASTHEAD: Final = Masthead("A paper bench")
MEMORY: Final = planner()


@pytest.fixture(scope="module")
def figures() -> Figures:
    """The demo's figures."""
    worked = read_and_work_out(ROOT / "projects", Settings(Unit.MM, Currency.of("EUR")), MEMORY)
    assert worked.figures is not None
    return worked.figures


def notes_of(batch: BatchFigures, figures: Figures) -> NotesSheet:
    """The sheet in the unit of the record."""
    _, sheet = next(notes_sheets(batch, figures, MASTHEAD))
    return sheet


@pytest.fixture(scope="module")
def sheets(figures: Figures) -> dict[str, NotesSheet]:
    """The sheet of each batch of the demo."""
    return {slug: notes_of(batch, figures) for slug, batch in figures.batches.items()}


# --- what they say -------------------------------------------------------------


def test_a_cut_list_reads_as_makers_write_it(sheets: dict[str, NotesSheet]) -> None:
    """By paper: the measures, where to score, how many in words."""
    said = {
        group.paper: [f"{line.letter} {line.words}, {line.count}" for line in group.lines]
        for group in sheets["sloe-lane-cards"].cut
    }
    plain = {paper: [text.replace("\u00a0", " ") for text in lines] for paper, lines in said.items()}
    assert plain == {
        "Oat card": ["A base, 8 1/2 × 5 1/2, score at 4 1/4, fourteen", "E label, 2 × 3/4, fourteen"],
        "Moss card": ["B mat, 3 3/4 × 5, fourteen"],
        "Bramble paper": ["C panel, 3 1/2 × 3, fourteen"],
        "Ember card": ["D strip, 3 1/2 × 3/4, fourteen"],
    }


def test_in_the_other_unit_nothing_is_longer(figures: Figures) -> None:
    """Millimetres by the rule: half of one at the least, rounded down, and told so."""
    _, (where, sheet) = notes_sheets(figures.batches["sloe-lane-cards"], figures, MASTHEAD)
    said = [line.words.replace("\u00a0", " ") for group in sheet.cut for line in group.lines]
    # 5 1/2 in is 139.7 mm, 8 1/2 is 215.9, 4 1/4 is 107.95, 3 3/4 is 95.25, 3/4 is 19.05.
    assert said == [
        "base, 215.5 × 139.5, score at 107.5",
        "label, 50.5 × 19",
        "mat, 95 × 127",
        "panel, 88.5 × 76",
        "strip, 88.5 × 19",
    ]
    assert (where, sheet.cut_unit) == ("projects/sloe-lane-cards/notes/mm/", "millimetres")
    assert sheet.rounded.startswith("Rounded from inches")
    assert sheet.gather[0].what.replace("\u00a0", " ").endswith("215.9 × 279.4 mm")


def test_what_is_extra_and_what_is_cut_by_hand_is_said(sheets: dict[str, NotesSheet]) -> None:
    """Two pennants more than the makes need; gulls from scraps that nobody measures."""
    sheet = sheets["harbour-square-cards"]
    counts = {line.letter: line.count for group in sheet.cut for line in group.lines}
    papers = {line.letter: group.paper for group in sheet.cut for line in group.lines}
    assert counts["D"] == "eight, two of them extra"
    assert papers["E"] == "Scraps of frost paper"
    assert "F" not in counts  # a bought anchor is gathered, not cut


def test_what_to_gather_is_for_the_makes_that_are_begun(sheets: dict[str, NotesSheet]) -> None:
    """24 bookmarks were begun, of which 22 were finished: cord for 24, 24 × 140 mm."""
    sheet = sheets["wren-note-bookmarks"]
    rows = [f"{row.quantity} {row.what}".strip().replace("\u00a0", " ") for row in sheet.gather]
    assert sheet.gather_head == "What to gather for 24 bookmarks"
    assert rows[:3] == [
        "3 sheets of chalk card, 305 × 305 mm",
        "1 sheet each of ripple green, dusk rose and night blue, 200 × 200 mm",
        "Hedge ink",
    ]
    assert "3.36 m of jute cord" in rows


def test_what_ties_the_maker_to_sellers_is_told(figures: Figures) -> None:
    """A sentence before the first thing that is named, and a word beside it; nothing where none is tied."""
    archive = figures.archive
    tied = tuple(
        replace(one, tie=Tie.GIFTED if one.slug == "jute-cord" else Tie.NONE) for one in archive.supplies
    )
    told = replace(figures, archive=replace(archive, supplies=tied, tools=()))
    project = replace(figures.batches["wren-note-bookmarks"].project, tools=())
    plain = replace(figures.batches["wren-note-bookmarks"], project=_unstamped(project))
    sheet = notes_of(plain, told)
    assert sheet.disclosure == figures.settings.disclosure
    assert [row.what for row in sheet.gather if "(" in row.what] == ["of jute cord (gifted)"]
    free = tuple(replace(one, tie=Tie.NONE) for one in archive.supplies)
    untied = replace(figures, archive=replace(archive, supplies=free, tools=()))
    assert notes_of(plain, untied).disclosure == ""


def _unstamped(project: Project) -> Project:
    return replace(project, parts=tuple(replace(part, stamps=()) for part in project.parts))


@given(st.integers(1, 99))
def test_numbers_are_spelt_as_they_are_said(count: int) -> None:
    """Each number below a hundred reads back as itself."""
    ones = "no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
    small = [*ones.split(), "sixteen", "seventeen", "eighteen", "nineteen"]
    names = "twenty thirty forty fifty sixty seventy eighty ninety"
    tens = {name: n for n, name in enumerate(names.split(), 2)}
    first, _, second = spelt(count).partition("-")
    read = 10 * tens[first] + (small.index(second) if second else 0) if first in tens else small.index(first)
    assert read == count


# --- drawings ------------------------------------------------------------------


def drawings_of(sheet: NotesSheet) -> list[PrintedDrawing]:
    """All drawings of a sheet but the rule."""
    blocks = [block.printed for shelf in sheet.shelves for block in shelf]
    return [*([sheet.front] if sheet.front else []), *blocks, *(one.printed for one in sheet.templates)]


def test_drawings_fit_their_side_and_have_room_for_their_figures(sheets: dict[str, NotesSheet]) -> None:
    """None is wider or higher than a side, or so small that 9 points would run into one another."""
    for sheet in sheets.values():
        drawings = drawings_of(sheet)
        assert drawings
        for one in drawings:
            assert one.width <= WIDTH
            assert one.height <= HEIGHT
            assert one.scale >= smallest(one.drawing) - 1e-9
            assert one.lettering == LETTERING


def test_every_drawing_is_told_in_words(demo_site: Served) -> None:
    """A title of its own in its document, and a description."""
    for path in demo_site.sheets():
        drawings = list(parsed(path).iter(f"{SVG}svg"))
        ids = [e.get("id") for e in parsed(path).iter() if e.get("id")]
        assert len(ids) == len(set(ids))
        for drawing in drawings:
            words = [" ".join(drawing.find(SVG + tag).itertext()).split() for tag in ("title", "desc")]
            assert all(len(said) >= 3 for said in words)
        assert len(drawings) >= 3


# --- templates -----------------------------------------------------------------


def test_templates_are_for_what_is_more_than_a_card_folded_once(sheets: dict[str, NotesSheet]) -> None:
    """A box has them, and a gate fold; what is larger than a side is told in a sentence."""
    titles = {slug: [one.title for one in sheet.templates] for slug, sheet in sheets.items()}
    assert {slug: found for slug, found in titles.items() if found} == {
        "first-frost-tags": ["A base", "C moon"],
        "harbour-square-cards": ["D pennant"],
        "hawthorn-boxes": ["A base", "L lid"],
        "ivy-gate-cards": ["A base"],
        "towpath-accordions": ["C reed"],
        "wren-sleeves": ["A base"],
    }
    accordion = [sentence.replace("\u00a0", " ") for sentence in sheets["towpath-accordions"].larger]
    assert " ".join(accordion) == (
        "A base is 16 × 5 in flat, larger than a side of this sheet: mark it by its measures."
        " Score every A at 4, 8 and 12 in along its long side, and fold it to and fro."
    )


@given(st.integers(30, 300), st.integers(30, 300), st.integers(1, 29), st.integers(1, 29))
def test_four_quarter_turns_bring_a_template_back(width: int, height: int, x: int, y: int) -> None:
    """And each shape stays in its frame on the way, as far from its edges as before."""
    shapes = (
        Box("part", 0.0, 0.0, float(width), float(height)),
        Stroke("fold", ((float(x), 0.0, float(x), float(height)),)),
        Label("quiet", float(x), float(y), "left"),
    )
    words = ("template", "A template", "Of a part.")
    drawing = Drawing(*words, 0.0, 0.0, float(width), float(height), 1.0, "narrow", shapes)
    once = turned(drawing)
    box, fold, label = once.shapes
    assert isinstance(box, Box)
    assert isinstance(fold, Stroke)
    assert isinstance(label, Label)
    assert (box.x, box.y, box.width, box.height) == (once.x, once.y, float(height), float(width))
    assert fold.lines == ((0.0, -float(x), float(height), -float(x)),)
    assert (label.x - once.x, once.y + once.height - label.y) == (y, x)
    assert not label.upright
    assert turned(turned(turned(once))) == drawing


# --- who gets them -------------------------------------------------------------


def addresses(figures: Figures, hand_outs: Figures | None, tmp_path: Path) -> dict[str, str]:
    """The documents of notes in a site made of ``figures``, by their address."""
    site, problems = made_site(figures, MASTHEAD, STANDARD, Store(tmp_path), hand_outs)
    assert problems == ()
    return {one.address: said(one.text) for one in site.data if is_sheet(Path(one.address))}


@pytest.fixture(scope="module")
def with_hand_outs(figures: Figures) -> Figures:
    """Three batches of the demo: one that is published and one that is only cut are handed out."""
    handed, public = ("wren-note-bookmarks", "fieldfare-slim-cards"), ("first-frost-tags",)
    projects = tuple(
        replace(one, companion=Companion.HAND_OUT if one.slug in handed else Companion.PUBLIC, photos=())
        for one in figures.archive.projects
        if one.slug in (*handed, *public)
    )
    return work_out(replace(figures.archive, projects=projects), figures.settings, MEMORY)


def test_a_hand_out_is_a_file_that_no_page_of_the_site_leads_to(
    with_hand_outs: Figures, tmp_path: Path
) -> None:
    """It lies in a folder of its own, leads nowhere, and asks search engines to leave it out."""
    told = Told()
    hand_outs = handed_out(with_hand_outs, told, MEMORY)
    site, _ = made_site(with_hand_outs, MASTHEAD, STANDARD, Store(tmp_path), hand_outs)
    sheets = {one.address: said(one.text) for one in site.data if is_sheet(Path(one.address))}
    lying = {address for address in sheets if address.startswith("hand-outs/")}
    assert lying == {
        "hand-outs/wren-note-bookmarks/index.html",
        "hand-outs/wren-note-bookmarks/in/index.html",
        "hand-outs/fieldfare-slim-cards/index.html",
        "hand-outs/fieldfare-slim-cards/mm/index.html",
    }
    assert "projects/wren-note-bookmarks/notes/index.html" not in sheets
    for address, text in sheets.items():
        assert ('content="noindex, nofollow"' in text) == (address in lying)
        assert ("href=" in text.partition("<body>")[2]) != (address in lying)
    everything = [*(said(one.body) for one in site.pages), *(said(one.text) for one in site.data)]
    assert not [text for text in everything if re.search(r'href="[^"]*hand-outs', text)]


def test_no_byte_of_a_hand_out_is_in_the_public_edition(with_hand_outs: Figures, tmp_path: Path) -> None:
    """Its address could be guessed there; the notes of other published batches are there."""
    public = public_edition(with_hand_outs, Told(), MEMORY)
    sheets = addresses(public, None, tmp_path)
    published = {one.slug for one in public.archive.projects}
    units = {one.slug: one.unit.for_readers.word for one in public.archive.projects}
    assert set(sheets) == {
        f"projects/{slug}/notes/{unit}index.html"
        for slug in published - {"wren-note-bookmarks"}
        for unit in ("", f"{units[slug]}/")
    }
    site, _ = made_site(public, MASTHEAD, STANDARD, Store(tmp_path))
    everything = [*(said(one.body) for one in site.pages), *(said(one.text) for one in site.data)]
    assert not [text for text in everything if "hand-out" in text.lower()]


def test_a_hand_out_tells_what_the_public_edition_tells(with_hand_outs: Figures) -> None:
    """Where supplies are not to be named, a hand-out does not name them either."""
    hand_outs = handed_out(with_hand_outs, Told(supplies=False), MEMORY)
    for batch in hand_outs.batches.values():
        _, sheet = next(hand_out_sheets(batch, hand_outs, MASTHEAD))
        assert all(" of card" in f" {row.what}" or " paper" in row.what for row in sheet.gather)
        text = str(sheet)
        names = [one.name for one in with_hand_outs.archive.supplies]
        assert not [name for name in names if name in text and name != "white card"]
    statuses = {batch.project.status for batch in hand_outs.batches.values()}
    assert statuses == {Status.PUBLISHED, Status.CUT}


# --- in the site ---------------------------------------------------------------


def _leads(path: Path) -> list[Any]:
    return [a for a in parsed(path).iter("a") if "Companion notes" in "".join(a.itertext())]


@pytest.mark.parametrize("edition", ["demo_site", "public_demo"])
def test_the_page_of_a_batch_leads_to_its_notes(edition: str, request: pytest.FixtureRequest) -> None:
    """In both editions, and back; the site's own search and map know nothing of them."""
    site: Served = request.getfixturevalue(edition)
    sheets = [path for path in site.sheets() if path.parent.name == "notes"]
    pages = [path for path in (site.folder / "projects").glob("*/index.html") if _leads(path)]
    assert sorted(path.parent / "notes" / "index.html" for path in pages) == sheets
    assert all(link.get("href") == "notes/" for path in pages for link in _leads(path))
    for path in sheets:
        backs = [e.get("href") for e in parsed(path).iter("a") if (e.get("href") or "").startswith(".")]
        assert backs == ["../index.html"]
    known = (site.folder / "search" / "search_index.json").read_text("utf-8")
    known += (site.folder / "sitemap.xml").read_text("utf-8")
    assert "/notes/" not in known
    assert "hand-outs" not in known


def test_only_the_maker_is_told_where_a_hand_out_lies(demo_site: Served, public_demo: Served) -> None:
    """The private page of the batch says it, in words; nothing leads there."""
    slug = "swift-slim-cards"
    assert [path for path in demo_site.sheets() if slug in path.parts] == [
        demo_site.folder / "hand-outs" / slug / name for name in ("index.html", "mm/index.html")
    ]
    text = (demo_site.folder / "projects" / slug / "index.html").read_text("utf-8")
    assert f"they lie in hand-outs/{slug}, in the folder of this site" in text
    assert not (public_demo.folder / "hand-outs").exists()


@pytest.mark.parametrize("width", [320, 1400])
def test_sheets_are_plain_to_all(demo_site: Served, page: Page, axe_faults: AxeFaults, width: int) -> None:
    """On a screen none of axe-core's rules is broken, and nothing runs over the edge."""
    page.set_viewport_size({"width": width, "height": 900})
    for name in ("projects/hawthorn-boxes/notes/", "hand-outs/swift-slim-cards/"):
        page.goto(demo_site.url + name)
        assert (name, axe_faults(page)) == (name, ())
        assert page.evaluate("document.documentElement.scrollWidth") <= width
