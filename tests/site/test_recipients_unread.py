"""No build of a site opens the file of recipients, or could read it if it did."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Final

import pytest

from batchleaf.cli import main
from batchleaf.edition import VARIABLE, Edition

WATCHED: Final = """
import os, sys
from mkdocs.__main__ import cli

def see(event, arguments):
    if event == "open" and "recipients.yml" in str(arguments[0]):
        print("opened", arguments[0], flush=True)
        os._exit(9)

sys.addaudithook(see)
cli(["build", "--quiet", "--strict"])
"""
"""Builds a site and ends at once, with 9, where the file is opened, however that is done."""
READERS: Final = ("batchleaf.records.recipients", "batchleaf.facts.recipients", "batchleaf.core.sent")


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with a recipient."""
    folder = tmp_path / "paper"
    assert main(["start", str(folder)]) == 0
    people = "people:\n  vexqu-aunt:\n    sent: [2026-05-16 first-batch]\n"
    (folder / "projects" / "recipients.yml").write_text(people, encoding="utf-8")
    return folder


def built(archive: Path, edition: Edition, monkeypatch: pytest.MonkeyPatch) -> int:
    """The exit code of a build that is watched."""
    monkeypatch.setenv(VARIABLE, edition.value)
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    ran = subprocess.run([sys.executable, "-c", WATCHED], cwd=archive, capture_output=True, check=False)
    return ran.returncode


@pytest.mark.parametrize("edition", Edition)
def test_no_build_opens_it(archive: Path, edition: Edition, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither edition; a file that is opened is seen."""
    assert built(archive, edition, monkeypatch) == 0
    assert (archive / "site" / "index.html").is_file()
    (archive / "site_src" / "recipients.yml").write_text("x", encoding="utf-8")
    assert built(archive, edition, monkeypatch) == 9


def test_what_makes_a_site_knows_nobody_who_reads_it() -> None:
    """The readers are not even loaded with the plugin."""
    asked = f"import sys, batchleaf.plugin; print([one for one in {READERS} if one in sys.modules])"
    ran = subprocess.run([sys.executable, "-c", asked], capture_output=True, check=True, text=True)
    assert ran.stdout.strip() == "[]"
    loaded = "import sys, batchleaf.cli; " + asked.partition("; ")[2]
    ran = subprocess.run([sys.executable, "-c", loaded], capture_output=True, check=True, text=True)
    assert ran.stdout.strip() == str(list(READERS))


@pytest.mark.slow
@pytest.mark.parametrize("edition", Edition)
def test_records_among_the_pages_are_not_copied(
    archive: Path, edition: Edition, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where a maker keeps the records below the folder of pages, none of them is handed out as it is."""
    (archive / "projects").rename(archive / "site_src" / "records")
    config = archive / "mkdocs.yml"
    text = config.read_text(encoding="utf-8")
    assert text.count("unit: mm") == 1
    config.write_text(text.replace("unit: mm", "projects: site_src/records\n      unit: mm"), encoding="utf-8")
    assert built(archive, edition, monkeypatch) == 0
    site = archive / "site"
    assert (site / "index.html").is_file()
    assert [path.name for path in site.rglob("*.yml")] == []
    assert not (site / "records").exists()
    assert [path for path in site.rglob("*") if path.is_file() and b"vexqu" in path.read_bytes()] == []
