"""Texts that mean harm stay texts, in whichever field of a record they stand."""

from __future__ import annotations

import csv
import html
import io
import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import html5lib
import pytest

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import with_the_drawer
from batchleaf.made_batch import said
from batchleaf.made_site import MadeSite, made_site
from batchleaf.render.look import STANDARD
from batchleaf.store import Store
from batchleaf.views.edition import as_told, handed_out
from batchleaf.views.video_text import video_texts
from browsing import SVG
from public.hostile import PLAIN, SHEET, SHORT, TAGS, TEMPLATES, Words, harmful, lay_out_with, words_of
from records.test_cases import read
from serving import build

Texts = Mapping[str, str]
"""Address → what stands there."""
ADDRESSES: Final = {
    "href",
    "src",
    "action",
    "formaction",
    "poster",
    "data",
    "srcset",
    "{http://www.w3.org/1999/xlink}href",
}


@dataclass(frozen=True, slots=True)
class Document:
    """What a page is made of, and all that it says."""

    elements: frozenset[tuple[str, tuple[str, ...]]]
    """Each with the names of its attributes."""
    schemes: frozenset[str]
    scripts: tuple[str, ...]
    data: tuple[str, ...]
    """What stands in scripts that are not run."""
    text: str


def document(written: str) -> Document:
    """A page as a browser takes it apart."""
    root: Any = html5lib.parse(written, namespaceHTMLElements=False)
    elements = [element for element in root.iter() if isinstance(element.tag, str)]
    scripts = [element for element in elements if element.tag == "script"]
    return Document(
        frozenset((element.tag, tuple(sorted(map(str, element.attrib)))) for element in elements),
        frozenset(
            scheme
            for element in elements
            for name, value in element.attrib.items()
            if name in ADDRESSES and (scheme := _scheme(value))
        ),
        tuple(element.text or "" for element in scripts if "json" not in element.get("type", "")),
        tuple(element.text or "" for element in scripts if "json" in element.get("type", "")),
        _spaced(" ".join(_said(root))),
    )


def _scheme(address: str) -> str:
    """What a browser takes for the scheme: it passes over blanks and control characters before it."""
    found = re.match(r"[\x00-\x20]*([a-z][a-z0-9+.\s-]*):", address, re.IGNORECASE)
    return "".join(found[1].split()).lower() if found else ""


def _said(element: Any) -> Iterator[str]:
    """Texts, and attributes that are read to somebody; a drawing cuts its words where they do not fit."""
    if element.tag in (f"{SVG}svg", "script", "style"):
        return
    yield element.text or ""
    for name in ("alt", "title", "aria-label", "content"):
        yield element.get(name, "")
    for child in element:
        yield from _said(child)
        yield child.tail or ""


def _spaced(text: str) -> str:
    return " ".join(text.split())


def made(words: Words, root: Path) -> Texts:
    """All texts of the private edition, without the frame that MkDocs puts around its pages."""
    archive = open_archive(lay_out_with(words, root, ("planned", "made")))
    worked, planner = archive.worked(), archive.planner()
    assert worked.figures is not None, worked.problems
    videos = video_texts(as_told(worked.figures, archive.told, planner), archive.masthead)
    hand_outs = handed_out(worked.figures, archive.told, planner)
    figures = with_the_drawer(worked.figures, planner)
    site, problems = made_site(figures, archive.masthead, STANDARD, Store(archive.cache), hand_outs, videos)
    assert problems == ()
    return dict(_texts(site))


def _texts(site: MadeSite) -> Iterator[tuple[str, str]]:
    for page in site.pages:
        yield f"{page.address}index.html", said(page.body)
    for file in site.data:
        if not file.address.endswith(".png"):
            yield file.address, said(file.text)


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Texts:
    """The archive with plain words."""
    return made(PLAIN, tmp_path_factory.mktemp("plain") / "archive")


@pytest.fixture(scope="module")
def harm(tmp_path_factory: pytest.TempPathFactory) -> Texts:
    """The same with texts that mean harm before its words."""
    return made(harmful(TAGS, TEMPLATES), tmp_path_factory.mktemp("harm") / "archive")


def assert_nothing_more(plain: str, harm: str, name: str) -> None:
    """It is made of what plain words make it of, and each word of it is there whole."""
    before, after = document(plain), document(harm)
    assert after.elements <= before.elements, name
    assert after.schemes <= before.schemes <= {"http", "https", "mailto"}, name
    assert after.scripts == before.scripts, name
    assert len(after.data) == len(before.data), name
    for data in after.data:
        json.loads(data)
    for word in words_of(before.text):
        assert re.search(f"{re.escape(_spaced(TAGS.lower()))}[^<]*{word}", after.text.lower()) or (
            f"{SHORT}{word}" in after.text.lower()
        ), f"{name}: {word}"


@pytest.mark.slow
def test_every_page_is_made_of_what_it_is_made_of_anyway(plain: Texts, harm: Texts) -> None:
    """Titles, names, remarks, steps, notes: each stands there as it was written, and does nothing."""
    assert set(harm) == set(plain)
    pages = [name for name in plain if name.endswith(".html")]
    assert len(pages) > 40
    for name in pages:
        assert_nothing_more(plain[name], harm[name], name)


@pytest.mark.slow
def test_words_of_every_kind_are_tried(plain: Texts) -> None:
    """What makes the test above worth anything: the words of nearly every field are on some page."""
    seen = {word for name, text in plain.items() if name.endswith(".html") for word in words_of(text)}
    assert len(seen) > 50


def as_data(name: str, text: str) -> Any:
    """A file of data as those who take it read it; raises where they cannot."""
    match Path(name).suffix:
        case ".json" | ".webmanifest":
            return json.loads(text)
        case ".xml":
            return ET.fromstring(text)
        case ".csv":
            return list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True))
        case ".js" if name.endswith("/told.js"):
            return json.loads(text[text.index("{") : text.rindex("}") + 1])
        case ".js" if name.endswith("/batches.js"):
            return json.loads(text.partition("=")[2].strip().rstrip(";"))
    return None


@pytest.mark.slow
def test_files_of_data_are_read_as_what_they_are(harm: Texts) -> None:
    """JSON, Atom, CSV; what a page runs as a script is JSON in a call, and no markup can end it."""
    read = {name: as_data(name, text) for name, text in harm.items()}
    assert {Path(name).suffix for name, value in read.items() if value is not None} >= {
        *(".json", ".xml", ".csv", ".js", ".webmanifest"),
    }
    for name, text in harm.items():
        if name.endswith(("/told.js", "/batches.js")):
            assert "<" not in text, name


@pytest.mark.slow
def test_no_cell_of_a_table_is_worked_out(harm: Texts) -> None:
    """OWASP, “CSV Injection”: no cell begins with = + - @, a tab or a line end, but for a plain number."""
    looked_at = 0
    for name, text in harm.items():
        if not name.endswith(".csv"):
            continue
        for cell in (cell for row in as_data(name, text) for cell in row):
            looked_at += any(start in cell for start in SHEET)
            if not re.fullmatch(r"-?\d+(\.\d+)?", cell):
                assert not re.match(r"\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n]", cell), f"{name}: {cell}"
    assert looked_at > 50


BOLD: Final = 'Fern <b>& co</b> &amp; "<img src=x onerror=h()>'


def drawer_with(key: str, text: str) -> str:
    """A drawer of one paper in which ``key`` says ``text``."""
    return f"supplies:\n  fern:\n    name: fern\n    kind: paper\n    {key}: {json.dumps(text)}\n"


def batch_with(key: str, text: str) -> str:
    """A batch in which ``key`` says ``text``."""
    return f"title: Fern\ndate: 2026-03-14\nthing: tag\nmakes: 2\n{key}: {json.dumps(text)}\n"


@pytest.mark.parametrize(
    ("path", "record"),
    [
        ("projects/inventory/drawer.yml", lambda link: drawer_with("link", link)),
        ("projects/fern/project.yml", lambda link: batch_with("film", link)),
        ("projects/fern/project.yml", lambda link: batch_with("credit", f"a friend, {link}")),
    ],
    ids=["link", "film", "credit"],
)
@pytest.mark.parametrize(
    "link",
    [
        *("javascript:h()", "JaVaScRiPt:h()", "javascript://example.org/%0ah()", "vbscript:h()"),
        *("data:text/html,<script>h()</script>", "blob:https://example.org/x", "file:///etc/hosts"),
        "java\tscript:h()", "view-source:https://example.org/",
    ],
)  # fmt: skip
def test_a_link_leads_to_the_web_or_is_told(
    link: str, path: str, record: Callable[[str], str], tmp_path: Path
) -> None:
    """Whatever would run, or open a file, is refused at its line, or is words and no link."""
    (tmp_path / path).parent.mkdir(parents=True)
    (tmp_path / path).write_text(record(link), "utf-8")
    worked = read(tmp_path)
    lines = len(record(link).splitlines())
    refused = [problem.place.line for problem in worked.problems if problem.place.file == path]
    links = [
        *(supply.link for supply in worked.archive.supplies),
        *(project.credit.link for project in worked.archive.projects if project.credit),
        *(project.film.address for project in worked.archive.projects if project.film),
    ]
    assert lines in refused or not any(links)


def test_the_search_gets_titles_as_html(tmp_path: Path) -> None:
    """The theme's script puts them into a page as they are; the frame of a page shows them as text."""
    files = {
        "mkdocs.yml": "site_name: Bench\ntheme: {name: material}\nplugins: [search, batchleaf]\n",
        "docs/about.md": "# About\n",
        "projects/inventory/drawer.yml": drawer_with("about", "Plain."),
        "projects/fern/project.yml": batch_with("credit", "a friend").replace("Fern", BOLD),
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, "utf-8")
    build(tmp_path, tmp_path / "site", "titles", "build")
    index = json.loads((tmp_path / "site" / "search" / "search_index.json").read_text("utf-8"))
    [title] = [one["title"] for one in index["docs"] if one["location"] == "projects/fern/"]
    assert html.unescape(title) == BOLD
    assert "<" not in title
    written = (tmp_path / "site" / "projects" / "fern" / "index.html").read_text("utf-8")
    page = html5lib.parse(written, namespaceHTMLElements=False)
    assert page.findtext(".//title") == f"{BOLD} · Bench"
