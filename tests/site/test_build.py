"""A faulty record and the built site, through the command a maker types."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from small_demo import lay_out_small_demo

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A part of the demo archive, built once."""
    folder = tmp_path_factory.mktemp("my archive") / "demo"
    folder.mkdir()
    lay_out_small_demo(folder)
    done = batchleaf("build", folder)
    assert done.returncode == 0, done.stderr
    return folder


def batchleaf(command: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run one command on an archive."""
    return subprocess.run(
        [sys.executable, "-m", "batchleaf", command, "--archive", str(folder)],
        capture_output=True,
        text=True,
        check=False,
        encoding="utf-8",
    )


def every_byte(folder: Path) -> dict[str, bytes]:
    """Each file of a folder."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


FIVE_MISTAKES = """\
titel: Wren notes
date: 14.03.2026
makes: 25 of 24
base: bookmark 50 x 180
papers:
  base: chalk-crad
parts:
  B strip:
    size: 44 by
    paper: base
"""


FIVE_SENTENCES = """\
projects/faulty/project.yml:1:1: “titel” is not a key of this record; did you mean “title”?
projects/faulty/project.yml:2:7: “14.03.2026” is not a date; write the year first, like 2026-03-14
projects/faulty/project.yml:3:8: 25 of 24 cannot be: more were finished than were begun
projects/faulty/project.yml:6:9: “chalk-crad” is not in the drawer; did you mean “chalk-card”?
projects/faulty/project.yml:9:11: “44 by” is not a size; write two lengths with x between, like 44 x 70
""".splitlines()


def test_five_mistakes_five_sentences_and_the_old_site_untouched(archive: Path) -> None:
    """One run of check names all five, each at its line, and ends with 1; a build is refused as a whole."""
    before = every_byte(archive / "site")
    record = archive / "projects" / "faulty" / "project.yml"
    record.parent.mkdir()
    record.write_text(FIVE_MISTAKES, encoding="utf-8")
    try:
        checked, built = batchleaf("check", archive), batchleaf("build", archive)
    finally:
        shutil.rmtree(record.parent)
    heads = [line for line in checked.stdout.splitlines() if line.startswith("projects/faulty/")]
    assert heads == FIVE_SENTENCES
    assert checked.returncode == 1
    assert built.returncode != 0
    assert "Traceback" not in checked.stderr + built.stderr
    for head in heads:
        assert head in built.stderr
    assert every_byte(archive / "site") == before


def test_a_broken_picture_stops_the_build_and_leaves_the_old_site(archive: Path) -> None:
    """The picture is named, and nothing of the site changes."""
    before = every_byte(archive / "site")
    picture = archive / "projects" / "sloe-lane-cards" / "09-torn.jpg"
    picture.write_bytes(b"\xff\xd8\xff torn")
    try:
        built = batchleaf("build", archive)
    finally:
        picture.unlink()
    assert built.returncode != 0
    assert "projects/sloe-lane-cards/09-torn.jpg:1:1: this picture cannot be read" in built.stderr
    assert every_byte(archive / "site") == before


def test_check_says_in_one_line_what_was_read(archive: Path) -> None:
    """A sound archive is one line, after one for each remark, and 0."""
    checked = batchleaf("check", archive)
    assert checked.returncode == 0
    *remarks, last = checked.stdout.splitlines()
    assert [line for line in remarks if ": remark: " not in line] == []
    assert last.startswith("Read ")


@pytest.mark.slow
def test_building_twice_gives_the_same_bytes(archive: Path) -> None:
    """The site depends on the records alone: not on the clock, nor on what is cached."""

    def without_dates(files: dict[str, bytes]) -> dict[str, bytes]:
        # MkDocs writes the day of the build into the map of the site.
        return {name: data for name, data in files.items() if not name.startswith("sitemap.xml")}

    before = every_byte(archive / "site")
    shutil.rmtree(archive / ".cache")
    assert batchleaf("build", archive).returncode == 0
    assert without_dates(every_byte(archive / "site")) == without_dates(before)


def test_no_original_photo_is_published(archive: Path) -> None:
    """Only the pictures made for the web are in the site."""
    originals = {p.read_bytes() for p in (archive / "projects").rglob("*.jpg")}
    published = set(every_byte(archive / "site").values())
    assert not originals & published
    assert not any(name.endswith((".yml", "notes.md")) for name in every_byte(archive / "site"))


def test_an_unknown_currency_is_told_in_a_sentence(archive: Path, tmp_path: Path) -> None:
    """A slip in mkdocs.yml is no traceback."""
    text = (archive / "mkdocs.yml").read_text(encoding="utf-8")
    shutil.copytree(archive / "projects", tmp_path / "projects")
    shutil.copytree(archive / "site_src", tmp_path / "site_src")
    wrong = text.replace("- batchleaf:\n", "- batchleaf:\n      currency: GOLD\n")
    assert wrong != text
    (tmp_path / "mkdocs.yml").write_text(wrong, encoding="utf-8")
    for command in ("check", "build"):
        done = batchleaf(command, tmp_path)
        assert done.returncode != 0
        assert "“GOLD” is no currency; write a code of ISO 4217 such as EUR or USD" in done.stderr
        assert "Traceback" not in done.stderr
