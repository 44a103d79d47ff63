"""No byte of the public edition says what the maker's pictures say besides what they show."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Final

import pytest
from PIL import Image

from public.telling_pictures import MARK, gif, jpeg, png, tiff, told_in, webp

RECORD: Final = """\
title: Fern tags
date: 2026-03-14
status: published
makes: 2
base: tag 50 x 90
papers:
  base: fern
cut:
  - fern 1 sheet
steps:
  - Cut.
  - Punch.
"""
DRAWER: Final = "supplies:\n  fern:\n    name: fern\n    kind: card\n    size: 210 x 297 mm\n"
PHOTOS: Final = {
    "cover.jpg": jpeg(),
    "01-cut.png": png(),
    "02-punch.webp": webp(),
    "more.tif": tiff(),
    "moving.gif": gif(animated=True),
    "moving.png": png(animated=True),
    "moving.webp": webp(animated=True),
}
OWN: Final = {
    "bench.jpg": jpeg(progressive=True),
    "pictures/shelf.png": png(),
    "pictures/lamp.webp": webp(),
    "pictures/door.gif": gif(),
    "pictures/no-ending": jpeg(),
}
SETTINGS: Final = """\
site_name: A bench
site_url: https://example.org/bench/
docs_dir: site_src
theme:
  name: material
exclude_docs: |
  drafts/
plugins:
  - search
  - batchleaf
"""
# The second picture that the JPEGs speak of is none; a browser does not look for it either.
pytestmark = pytest.mark.filterwarnings("ignore:Image appears to be a malformed MPO file")
needs_links = pytest.mark.skipif(os.name == "nt", reason="links need a right on Windows")


def laid_out(root: Path, own: Mapping[str, bytes]) -> Path:
    """An archive of one batch with its photos, and these files beside the maker's own page."""
    files = {
        "mkdocs.yml": SETTINGS.encode(),
        "projects/inventory/drawer.yml": DRAWER.encode(),
        "projects/fern-tags/project.yml": RECORD.encode(),
        "site_src/about.md": b"# About\n\n![The bench](bench.jpg)\n",
        "site_src/drafts/later.jpg": jpeg(),
        **{f"projects/fern-tags/{name}": data for name, data in PHOTOS.items()},
        **{f"site_src/{name}": data for name, data in own.items()},
    }
    for name, data in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    return root


def run(command: str, root: Path) -> subprocess.CompletedProcess[str]:
    """A command, with all that it says."""
    return subprocess.run(
        [sys.executable, "-m", "batchleaf", command, "--archive", str(root)],
        capture_output=True,
        check=False,
        text=True,
        encoding="utf-8",
    )


def test_no_byte_tells(tmp_path: Path) -> None:
    """Photos, the pictures that are passed on, the maker's own: read for the mark in all its spellings."""
    assert all(told_in(data) for data in (*PHOTOS.values(), *OWN.values()))
    root = laid_out(tmp_path / "archive", OWN)
    ran = run("publish", root)
    assert ran.returncode == 0, ran.stderr
    files = {path.relative_to(root / "public"): path.read_bytes() for path in (root / "public").rglob("*.*")}
    files |= {Path(name): (root / "public" / name).read_bytes() for name in OWN}
    assert {path.as_posix() for path, data in files.items() if told_in(data)} == set()
    assert len([path for path in files if path.parts[0] == "photos"]) > 2 * len(PHOTOS)
    assert Path("drafts/later.jpg") not in files
    for name, data in OWN.items():
        with Image.open(io.BytesIO(data)) as before, Image.open(root / "public" / name) as after:
            assert after.tobytes() == before.tobytes()
    assert (root / "site_src" / "bench.jpg").read_bytes() == OWN["bench.jpg"]


@pytest.mark.slow
def test_what_cannot_be_stripped_is_told(tmp_path: Path) -> None:
    """A damaged picture is not published; of a file that is not taken apart a notice tells, at its place."""
    own = {"bench.jpg": jpeg(), "film.mp4": MARK.encode(), "half.jpg": jpeg()[:3000]}
    root = laid_out(tmp_path / "archive", own)
    ran = run("publish", root)
    assert ran.returncode != 0
    assert "site_src/film.mp4:1:1: notice: this file is published as it is" in ran.stderr
    assert "site_src/half.jpg:1:1: this picture breaks off" in ran.stderr
    assert "Traceback" not in ran.stderr
    assert not (root / "public").exists()


@pytest.mark.slow
@needs_links
def test_no_file_from_elsewhere_is_built_in(tmp_path: Path) -> None:
    """A link among a stranger's pages would publish what lies on the machine of whoever builds them."""
    root = laid_out(tmp_path / "archive", {"bench.jpg": jpeg()})
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "keys.txt").write_text(MARK, "utf-8")
    (elsewhere / "diary.md").write_text(f"# {MARK}\n", "utf-8")
    pages = root / "site_src"
    (pages / "keys.txt").symlink_to(elsewhere / "keys.txt")
    (pages / "diary.md").symlink_to(elsewhere / "diary.md")
    (pages / "folder").symlink_to(elsewhere, target_is_directory=True)
    (pages / "inside.jpg").symlink_to(pages / "bench.jpg")
    (pages / "nowhere.txt").symlink_to(pages / "nowhere.txt")
    os.mkfifo(pages / "pipe.jpg")
    ran = run("publish", root)
    assert ran.returncode == 0, ran.stderr
    for name in ("nowhere.txt", "pipe.jpg"):
        assert f"site_src/{name}:1:1: notice: this is no file that can be read" in ran.stderr
    for name in ("keys.txt", "diary.md", "folder/keys.txt", "folder/diary.md"):
        assert f"site_src/{name}:1:1: notice: this is a link that leads out of the archive" in ran.stderr
    everything = [path.read_bytes() for path in (root / "public").rglob("*.*") if path.is_file()]
    assert not any(told_in(data) for data in everything)
    assert (root / "public" / "inside.jpg").exists()


@pytest.mark.slow
@needs_links
def test_links_that_lead_round_and_round_are_refused(tmp_path: Path) -> None:
    """MkDocs follows links to folders; two that lead back would keep it for ever."""
    root = laid_out(tmp_path / "archive", {"deep/bench.jpg": jpeg()})
    pages = root / "site_src"
    (pages / "deep" / "up").symlink_to(pages, target_is_directory=True)
    (pages / "deep" / "same").symlink_to(pages / "deep", target_is_directory=True)
    (pages / "other").symlink_to(pages / "deep", target_is_directory=True)
    ran = run("publish", root)
    assert ran.returncode != 0
    for name in ("deep/same", "deep/up"):
        assert f"site_src/{name}:1:1: this link leads back to a folder that it lies in" in ran.stderr
    assert "Traceback" not in ran.stderr


@pytest.mark.slow
@pytest.mark.skipif(sys.platform != "linux", reason="other systems refuse such names")
def test_photos_of_any_name_are_shown(tmp_path: Path) -> None:
    """Half a letter, a colour for terminals, a turn: no page has the name, and no terminal obeys it."""
    root = laid_out(tmp_path / "archive", {"bench.jpg": jpeg()})
    for name in (b"caf\xe9.jpg", b"99-\x1b[31m\n.jpg", "evil\u202egpj.png".encode()):
        Path(os.fsdecode(bytes(root / "projects" / "fern-tags") + b"/" + name)).write_bytes(jpeg())
    ran = run("publish", root)
    assert ran.returncode == 0, ran.stderr
    assert not {"\x1b", "\u202e"} & set(ran.stderr)
    assert "\ufffd[31m\ufffd.jpg:1:1: notice: this picture belongs to step 99" in ran.stderr
