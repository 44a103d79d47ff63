"""While somebody watches, a faulty record is shown and never raised."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

ROOT = Path(__file__).parents[2]
Rebuild = Callable[[], str]


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A copy of the demo's records, without its photos."""
    shutil.copytree(ROOT / "projects", tmp_path / "projects", ignore=shutil.ignore_patterns("*.jpg"))
    shutil.copytree(ROOT / "site_src", tmp_path / "site_src")
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    return tmp_path


@pytest.fixture
def watched(archive: Path) -> Rebuild:
    """Builds as the live server does; returns the first page."""

    def rebuild() -> str:
        config = load_config(str(archive / "mkdocs.yml"), site_dir=str(archive / "site"))
        config.plugins.on_startup(command="serve", dirty=False)
        build(config)
        return (archive / "site" / "index.html").read_text(encoding="utf-8")

    return rebuild


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


def test_a_build_that_nobody_watches_raises_instead(archive: Path) -> None:
    """A faulty record stops a build before anything is written."""
    (archive / "projects" / "series.yml").write_text("series: none", encoding="utf-8")
    config = load_config(str(archive / "mkdocs.yml"), site_dir=str(archive / "site"))
    config.plugins.on_startup(command="build", dirty=False)
    with pytest.raises(Abort):
        build(config)
    assert not (archive / "site").exists()
