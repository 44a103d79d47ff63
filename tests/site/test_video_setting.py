"""What the setting of the video's text does to a site and to what its maker is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.cli import main
from records.test_cases import laid_out

SETTINGS = """\
site_name: Paper
docs_dir: site_src
theme: {name: material}
plugins:
  - batchleaf:
      video_text: 550
      public_cost: no
"""
TOLD = (
    "projects/dunes/project.yml:1:1: notice: the text for its video keeps to 550 characters without the links of"
    " the supplies and the links of the tools; video_text in mkdocs.yml sets how long it may be\n"
)


def test_check_and_build_tell_what_had_no_room(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """And both editions write the same file, with the line ends of every system and no money."""
    archive = Path(__file__).parents[1] / "views" / "video.archive"
    laid_out(archive.read_text(encoding="utf-8"), tmp_path)
    (tmp_path / "site_src").mkdir()
    (tmp_path / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    assert main(["check", "--archive", str(tmp_path)]) == 0
    assert TOLD in capfd.readouterr().out
    for command in ("build", "publish"):
        assert main([command, "--archive", str(tmp_path)]) == 0
        told = capfd.readouterr()
        assert TOLD.strip() in told.out + told.err
    mine, theirs = (tmp_path / folder / "projects/dunes/video.txt" for folder in ("site", "public"))
    assert mine.read_bytes() == theirs.read_bytes()
    assert len(mine.read_bytes().decode()) <= 550
    assert b"\r" not in mine.read_bytes()
    assert "€" not in mine.read_bytes().decode()
    assert (tmp_path / "site/projects/shells/video.txt").is_file()
    assert not (tmp_path / "public/projects/shells").exists()
