"""A new site replaces the old one whole, or not at all."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from batchleaf import build

MADE = {"index.html": "<h1>new</h1>", "404.html": '<a href="/paper/">home</a>'}


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A configuration file in a folder whose name has spaces, beside a site built earlier."""
    root = tmp_path / "my paper archive"
    (root / "site").mkdir(parents=True)
    (root / "site" / "404.html").write_text("old", encoding="utf-8")
    (root / "mkdocs.yml").write_text(
        "site_name: Test\nsite_url: https://example.org/paper/\n", encoding="utf-8"
    )
    return root


def _maker(pages: dict[str, str], code: int = 0) -> build.Make:
    def make(config_file: Path, folder: Path) -> int:
        assert config_file.is_file()
        folder.mkdir()
        for name, text in pages.items():
            (folder / name).write_text(text, encoding="utf-8")
        return code

    return make


def _all_in(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def _build(archive: Path, make: build.Make) -> int:
    return build.build_with(make, archive / "mkdocs.yml", archive / "site")


def test_swapped_in(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A sound site takes the old one's place; nothing of the old one or of the work stays."""
    assert _build(archive, _maker(MADE)) == 0
    assert sorted(_all_in(archive)) == ["mkdocs.yml", "site/404.html", "site/index.html"]
    assert _all_in(archive / "site")["index.html"] == b"<h1>new</h1>"
    assert str(archive / "site" / "index.html") in capsys.readouterr().out


def test_first_build(tmp_path: Path) -> None:
    """Where there was no site yet, there is one after the first build."""
    (tmp_path / "mkdocs.yml").write_text("site_name: Test\n", encoding="utf-8")
    assert _build(tmp_path, _maker({"index.html": "", "404.html": ""})) == 0
    assert (tmp_path / "site" / "index.html").is_file()


@pytest.mark.parametrize(
    ("make", "code", "says"),
    [
        (_maker(MADE, code=3), 3, "Not built"),
        (_maker({**MADE, "index.html": '<a href="gone/">x</a>'}), 1, "One link leads nowhere"),
        (_maker({**MADE, "404.html": '<a href="/">x</a>'}), 1, "leads out of /paper/"),
    ],
    ids=["mkdocs fails", "link leads nowhere", "link leaves the site"],
)
def test_refused(
    archive: Path, make: build.Make, code: int, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A build that fails leaves the old site byte for byte, tells why and returns a code."""
    before = _all_in(archive)
    assert _build(archive, make) == code
    assert _all_in(archive) == before
    assert says in capsys.readouterr().err


def test_two_builds_at_once(archive: Path) -> None:
    """Each works in a folder of its own; the one that ends last is seen."""
    inner: list[int] = []

    def make(config_file: Path, folder: Path) -> int:
        inner.append(_build(archive, _maker({**MADE, "inner.html": ""})))
        return _maker(MADE)(config_file, folder)

    assert (_build(archive, make), inner) == (0, [0])
    assert sorted(_all_in(archive)) == ["mkdocs.yml", "site/404.html", "site/index.html"]


def test_no_old_site_is_told_of_where_there_was_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The first build may fail; then nothing is as it was."""
    (tmp_path / "mkdocs.yml").write_text("site_name: Test\n", encoding="utf-8")
    assert _build(tmp_path, _maker(MADE, code=3)) == 3
    assert capsys.readouterr().err == "Not built.\n"
    assert sorted(_all_in(tmp_path)) == ["mkdocs.yml"]


def test_interrupted(archive: Path) -> None:
    """A build that is broken off in its middle leaves the old site and no rubble."""

    def make(config_file: Path, folder: Path) -> int:
        _maker(MADE)(config_file, folder)
        raise KeyboardInterrupt

    before = _all_in(archive)
    with pytest.raises(KeyboardInterrupt):
        _build(archive, make)
    assert _all_in(archive) == before


def test_second_rename_fails(archive: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """If the new site cannot be put in place, the old one comes back."""
    before = _all_in(archive)
    rename = Path.replace

    def stubborn(self: Path, target: Path) -> Path:
        if self.parent.name.startswith(".site-new-"):
            raise PermissionError(13, "Permission denied")
        return rename(self, target)

    monkeypatch.setattr(Path, "replace", stubborn)
    assert _build(archive, _maker(MADE)) == 1
    assert _all_in(archive) == before


def test_killed_between_the_renames(archive: Path) -> None:
    """An old site that a killed swap left aside is back before the next build begins."""
    before = _all_in(archive / "site")
    (archive / "site").rename(archive / ".site-old")
    assert _build(archive, _maker(MADE, code=1)) == 1
    assert _all_in(archive / "site") == before


@pytest.mark.parametrize("folder", [".", "..", "letters"])
def test_a_folder_that_is_no_site(archive: Path, folder: str) -> None:
    """A folder that holds the archive, or anything but a site, is never replaced."""
    (archive / "letters").mkdir()
    (archive / "letters" / "dear.txt").write_text("Dear all", encoding="utf-8")
    before = _all_in(archive)
    site = Path(os.path.normpath(archive / folder))
    assert build.build_with(_maker(MADE), archive / "mkdocs.yml", site) == 1
    assert _all_in(archive) == before


def test_no_configuration(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder without mkdocs.yml is told in a sentence, not in a traceback."""
    assert build.build_aside(tmp_path / "mkdocs.yml", tmp_path / "site") == 1
    assert f"There is no mkdocs.yml in {tmp_path}" in capsys.readouterr().err


def test_configuration_is_no_yaml(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A configuration that cannot be read ends in a sentence and leaves the site."""
    (archive / "mkdocs.yml").write_text("site_name: [\n", encoding="utf-8")
    assert _build(archive, _maker(MADE)) == 1
    assert _all_in(archive / "site") == {"404.html": b"old"}
    assert "parsing the configuration" in capsys.readouterr().err


def test_with_mkdocs(tmp_path: Path) -> None:
    """MkDocs itself is run: a page arrives, and a mere warning refuses the next build."""
    settings = "site_name: Test\nsite_url: https://example.org/paper/\ntheme: mkdocs\nplugins: []\n"
    config_file = tmp_path / "mkdocs.yml"
    config_file.write_text(settings, encoding="utf-8")
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "index.md").write_text("# Paper\n", encoding="utf-8")
    assert build.build_aside(config_file, tmp_path / "site") == 0
    before = _all_in(tmp_path / "site")
    assert b"Paper" in before["index.html"]
    config_file.write_text(f"{settings}site_autor: a maker\n", encoding="utf-8")
    assert build.build_aside(config_file, tmp_path / "site") == 1
    assert _all_in(tmp_path / "site") == before


def test_what_a_stopped_build_left_is_cleared_away(archive: Path) -> None:
    """Not so the folder of one that still runs, or has only just begun."""
    left, running, begun = (archive / f".site-new-{word}" for word in ("left", "running", "begun"))
    for folder in (left, running, begun):
        folder.mkdir()
    gone = subprocess.Popen([sys.executable, "-c", ""])
    gone.wait()
    (left / "owner").write_text(str(gone.pid), encoding="ascii")
    (running / "owner").write_text(str(os.getpid()), encoding="ascii")
    assert _build(archive, _maker(MADE)) == 0
    assert [folder.exists() for folder in (left, running, begun)] == [os.name == "nt", True, True]
