"""The frame around every page, in a real build of a small site."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import html5lib
import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page as SitePage

from batchleaf.render.html import THEME, render
from look.samples import HOW

NAV = [
    {"title": "Batches", "url": "./", "section": "batches"},
    {"title": "How", "url": "how/", "section": "how"},
]
SETTINGS = """
site_name: Salt & <Vinegar>
site_url: https://example.org/
theme:
  name: material
  font: false
  palette:
    - {media: "(prefers-color-scheme: light)", scheme: default, toggle: {icon: material/square, name: Dark}}
    - {media: "(prefers-color-scheme: dark)", scheme: slate, toggle: {icon: material/square, name: Light}}
plugins: [search]
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of one page by hand and one from a page model."""
    root = tmp_path_factory.mktemp("site")
    (root / "docs").mkdir()
    (root / "docs" / "index.md").write_text(
        "---\nsection: batches\n---\n# By hand\n\nWords.\n", encoding="utf-8"
    )
    (root / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    config = load_config(str(root / "mkdocs.yml"))
    config.theme.dirs.insert(0, str(THEME))
    config.extra["batchleaf"] = {"nav": NAV}

    def add(files: Files, **_: Any) -> Files:
        front = '---\ntitle: "How & <why>"\nsection: how\ndescription: \'a "quoted" <b>\'\n---\n'
        files.append(File.generated(config, "how/index.md", content=front))
        return files

    def body(html: str, page: SitePage, **_: Any) -> str:
        return render(HOW) if page.file.src_uri == "how/index.md" else html

    config.plugins.events["files"].append(add)
    config.plugins.events["page_content"].append(body)
    build(config)
    return Path(config.site_dir)


def tree(site: Path, name: str) -> Any:
    """A page of the site, as a browser reads it."""
    parser = html5lib.HTMLParser(namespaceHTMLElements=False)
    return parser.parse((site / name).read_text(encoding="utf-8"))


every_page = pytest.mark.parametrize("name", ["index.html", "how/index.html", "404.html"])


@every_page
def test_landmarks(site: Path, name: str) -> None:
    """One header, main, footer and main heading; the skip link leads into the page."""
    page = tree(site, name)
    assert [len(page.findall(f".//{tag}")) for tag in ("header", "main", "footer", "h1")] == [1, 1, 1, 1]
    skip = next(link for link in page.iter("a") if link.attrib.get("class") == "skip")
    assert page.find(f".//*[@id='{skip.attrib['href'].removeprefix('#')}']") is not None


@every_page
def test_asks_no_other_host(site: Path, name: str) -> None:
    """No script, style, font or picture comes from elsewhere."""
    page = tree(site, name)
    asked = [node.attrib["src"] for node in page.iter() if "src" in node.attrib]
    asked += [node.attrib["href"] for node in page.iter("link") if node.attrib.get("rel") != "canonical"]
    assert asked
    assert [one for one in asked if re.match(r"(https?:)?//", one)] == []


@pytest.mark.parametrize(("name", "current"), [("index.html", "Batches"), ("how/index.html", "How")])
def test_the_current_section_is_marked(site: Path, name: str, current: str) -> None:
    """The word of the section that a page belongs to says so, and no other."""
    links = list(tree(site, name).find(".//header").iter("a"))
    assert [link.text for link in links if "aria-current" in link.attrib] == [current]


def test_titles_are_text(site: Path) -> None:
    """The site's name and a page's title and description are shown as they are written."""
    page = tree(site, "how/index.html")
    assert page.find(".//title").text == "How & <why> · Salt & <Vinegar>"
    assert page.find(".//meta[@name='description']").attrib["content"] == 'a "quoted" <b>'
    assert page.find(".//header//a[@class='name']").text == "Salt & <Vinegar>"


def test_pages_by_hand_stand_in_the_text_column(site: Path) -> None:
    """Markdown is set in the text column; a page from records brings its own columns."""
    assert tree(site, "index.html").find(".//article[@class='text']/h1") is not None
    assert tree(site, "how/index.html").find(".//article[@class='text']") is None


def test_light_and_dark_have_words(site: Path) -> None:
    """The switch is a word, and each of its settings is named by the word that leads to it."""
    switch = tree(site, "index.html").find(".//form[@class='palette']")
    assert [label.text for label in switch.iter("label")] == ["Dark", "Light"]
    assert [choice.attrib["aria-label"] for choice in switch.iter("input")] == ["Light", "Dark"]
