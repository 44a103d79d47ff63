"""While somebody watches, a faulty record is shown and never raised."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from batchleaf.edition import VARIABLE, Edition
from small_demo import lay_out_small_demo

ROOT = Path(__file__).parents[2]
Rebuild = Callable[[], str]


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A part of the demo's records, without photos."""
    lay_out_small_demo(tmp_path, leave_out=("*.jpg",))
    return tmp_path


@pytest.fixture
def watched(archive: Path) -> Rebuild:
    """Builds again and again as the live server does, after one start; returns the first page."""
    load_config(str(archive / "mkdocs.yml")).plugins.on_startup(command="serve", dirty=False)

    def rebuild() -> str:
        config = load_config(str(archive / "mkdocs.yml"), site_dir=str(archive / "site"))
        build(config)
        return (archive / "site" / "index.html").read_text(encoding="utf-8")

    return rebuild


@pytest.mark.slow
def test_a_mistake_shows_as_a_page_and_goes_away_with_the_repair(archive: Path, watched: Rebuild) -> None:
    """From the very first build on: the located sentence, its line, and then the gallery again."""
    record = archive / "projects" / "wren-note-bookmarks" / "project.yml"
    sound = record.read_text(encoding="utf-8")
    record.write_text(sound.replace("makes: 22 of 24", "makes: 25 of 24 <b>"), encoding="utf-8")
    faulty = watched()
    assert "projects/wren-note-bookmarks/project.yml, line" in faulty
    assert "“25 of 24 &lt;b&gt;” says no number of makes up to 99999; write for example 22 of 24" in faulty
    assert "Wren note bookmarks" not in faulty
    record.write_text(sound, encoding="utf-8")
    assert "Wren note bookmarks" in watched()


def test_every_word_of_the_header_leads_somewhere_meanwhile(archive: Path, watched: Rebuild) -> None:
    """The sentences stand at the address of each section."""
    (archive / "projects" / "series.yml").write_text("series: none", encoding="utf-8")
    watched()
    for section in ("", "drawer", "series", "how"):
        page = (archive / "site" / section / "index.html").read_text(encoding="utf-8")
        assert "projects/series.yml, line 1" in page


@pytest.mark.slow
def test_whoever_looks_at_a_page_is_shown_the_mistake_there_and_then_the_page(
    archive: Path, watched: Rebuild
) -> None:
    """At every address of the last sound build, since a browser that waits at one is shown that one again."""
    watched()
    site = archive / "site"
    addresses = {page.parent for page in (site / "projects").glob("*/index.html")}
    addresses |= {page.parent for page in (site / "drawer").glob("*/index.html")}
    addresses |= {page.parent for page in (site / "series").glob("*/index.html")}
    assert {"wren-note-bookmarks", "chalk-card", "house-post"} <= {address.name for address in addresses}
    series = archive / "projects" / "series.yml"
    sound = series.read_text(encoding="utf-8")
    series.write_text("series: none", encoding="utf-8")
    watched()
    for address in addresses:
        assert "projects/series.yml, line 1" in (address / "index.html").read_text(encoding="utf-8")
    series.write_text(sound, encoding="utf-8")
    watched()
    page = (site / "projects" / "wren-note-bookmarks" / "index.html").read_text(encoding="utf-8")
    assert "Wren note bookmarks</h1>" in page


def test_a_batch_that_was_never_read_shows_its_mistake_at_its_own_address(
    archive: Path, watched: Rebuild
) -> None:
    """In the very first build too, whatever else lies in the folder of records."""
    new = archive / "projects" / "moth-tags"
    new.mkdir()
    (new / "project.yml").write_text("title: Moth tags\n", encoding="utf-8")
    watched()
    page = (archive / "site" / "projects" / "moth-tags" / "index.html").read_text(encoding="utf-8")
    assert "projects/moth-tags/project.yml, line 1" in page
    assert not (archive / "site" / "projects" / "inventory").exists()


@pytest.mark.parametrize("edition", list(Edition))
def test_a_build_that_nobody_watches_raises_instead(
    archive: Path, edition: Edition, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A faulty record stops a build of either edition before anything is written."""
    monkeypatch.setenv(VARIABLE, edition.value)
    (archive / "projects" / "series.yml").write_text("series: none", encoding="utf-8")
    config = load_config(str(archive / "mkdocs.yml"), site_dir=str(archive / "site"))
    config.plugins.on_startup(command="build", dirty=False)
    with pytest.raises(Abort):
        build(config)
    assert not (archive / "site").exists()
