"""How long sites of many batches take: invented archives, the same at every run, beside plain MkDocs.

For each number of batches, in one run and one after the other:

first   everything is new: plans are worked out, pictures made
cold    plans and pictures are there, no page is
warm    all is there
edited  one record has changed since
plain   MkDocs alone, with the same theme, makes the same pages of Markdown files that hold their bodies

The table says seconds on the clock and of all processors, the memory of the largest process, and how each
relates to the plain build of the same run.

    python run.py bench [--sizes 100,1000,5000] [--folder FOLDER]
"""

from __future__ import annotations

import argparse
import filecmp
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from invented_archive import write_archive

SIZES: Final = (100, 1000, 5000)
COMPARED: Final = 1000
"""Up to so many batches a warm site is held to one that was made cold, byte for byte."""
STAMP: Final = {"SOURCE_DATE_EPOCH": "1790000000", "NO_MKDOCS_2_WARNING": "1"}
PLAIN: Final = """site_name: plain
site_url: https://example.org/many/
theme:
  name: material
  font: false
not_in_nav: |
  *
nav:
  - index.md
"""


@dataclass(frozen=True)
class Spent:
    """What a build took: seconds on the clock, of processors, and the most memory of a process, in MB."""

    clock: float
    processors: float
    memory: float


@dataclass(frozen=True)
class Row:
    """One line of the table."""

    batches: int
    what: str
    spent: Spent
    plain: float
    more: str = ""

    def __str__(self) -> str:
        ratio = f"{self.spent.clock / self.plain:.2f}" if self.plain else ""
        cells = (
            str(self.batches),
            self.what,
            f"{self.spent.clock:.1f}",
            f"{self.spent.processors:.1f}",
            f"{self.spent.memory:.0f}",
            ratio,
            self.more,
        )
        return f"| {' | '.join(cells)} |"


HEAD: Final = (
    "| batches | build | s on the clock | s of processors | MB | to plain | |\n"
    "| ---: | --- | ---: | ---: | ---: | ---: | --- |"
)


def built(archive: Path, site: Path) -> Spent:
    """``mkdocs build`` in a process of its own, waited for with all that it started."""
    named = ["--site-dir", str(site), "--config-file", str(archive / "mkdocs.yml")]
    command = [sys.executable, "-m", "mkdocs", "build", "-q", *named]
    began = time.monotonic()
    process = subprocess.Popen(command, env={**os.environ, **STAMP})
    _, code, used = os.wait4(process.pid, 0)
    process.returncode = code
    if code:
        raise SystemExit(f"{archive} could not be built.")
    return Spent(time.monotonic() - began, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def measured(batches: int, folder: Path) -> Iterator[Row]:
    """All builds of an archive of so many batches."""
    archive, site = folder / f"archive-{batches}", folder / f"site-{batches}"
    cache = archive / ".cache" / "batchleaf"
    if not archive.exists():
        write_archive(archive, batches)
    first = built(archive, site)
    plans = sum(1 for path in (cache / "plans").rglob("*") if path.suffix != ".sha256" and path.is_file())
    for part in ("pages", "found"):
        shutil.rmtree(cache / part)
    cold = built(archive, site)
    warm = built(archive, site)
    record = archive / "projects" / f"batch-{batches // 2:05}" / "project.yml"
    before = record.read_text(encoding="utf-8")
    record.write_text(before.replace("Lay them under a board", "Lay them under two boards"), encoding="utf-8")
    edited = built(archive, site)
    same = _same_as_cold(archive, site, cache) if batches <= COMPARED else ""
    record.write_text(before, encoding="utf-8")
    bodies, pages = _as_markdown(site, folder / f"plain-{batches}")
    plain = built(folder / f"plain-{batches}", folder / f"plain-site-{batches}")
    size = sum(path.stat().st_size for path in site.rglob("*") if path.is_file()) / 1e6
    search = (site / "search" / "search_index.json").stat().st_size / batches
    yield Row(batches, "first", first, plain.clock, f"{plans} plans and counts in the cache")
    yield Row(batches, "cold", cold, plain.clock, f"{cold.clock / pages * 1000:.0f} ms a page")
    yield Row(batches, "warm", warm, plain.clock, f"{size:.0f} MB, {search:.0f} B of search a batch")
    edited_to_cold = f"{edited.clock / cold.clock:.2f} of cold"
    yield Row(batches, "edited", edited, plain.clock, f"{edited_to_cold}{same}")
    yield Row(batches, "plain", plain, plain.clock, f"{pages} pages, {bodies / 1e6:.0f} MB of bodies")


def _same_as_cold(archive: Path, site: Path, cache: Path) -> str:
    """Whether the site is byte for byte the one that is made with no page in the cache."""
    again = site.with_name(f"{site.name}-again")
    for part in ("pages", "found"):
        shutil.rmtree(cache / part)
    built(archive, again)
    names = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    others = sorted(path.relative_to(again).as_posix() for path in again.rglob("*") if path.is_file())
    _, differ, lost = filecmp.cmpfiles(site, again, names, shallow=False)
    equal = names == others and not differ and not lost
    return ", equal to cold" if equal else f", {len(differ) + len(lost)} files differ from cold"


def _as_markdown(site: Path, plain: Path) -> tuple[int, int]:
    """The bodies of all pages as Markdown files; how many bytes, how many pages."""
    shutil.rmtree(plain, ignore_errors=True)
    length = pages = 0
    for page in site.rglob("index.html"):
        text = page.read_text(encoding="utf-8")
        body = re.search(r"<article[^>]*>(.*)</article>", text, re.DOTALL) or re.search(
            r"<body[^>]*>(.*)</body>", text, re.DOTALL
        )
        file = (plain / "docs" / page.relative_to(site)).with_suffix(".md")
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(body[1] if body else "", encoding="utf-8")
        length, pages = length + len(body[1] if body else ""), pages + 1
    (plain / "mkdocs.yml").write_text(PLAIN, encoding="utf-8")
    return length, pages


def main() -> None:
    """Print the table, a line at a time."""
    parser = argparse.ArgumentParser(prog="run.py bench", description=__doc__)
    parser.add_argument("--sizes", default=",".join(map(str, SIZES)), help="numbers of batches, with commas")
    parser.add_argument("--folder", type=Path, help="where archives are laid out and stay")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as passing:
        folder = asked.folder or Path(passing)
        folder.mkdir(parents=True, exist_ok=True)
        print(HEAD, flush=True)
        for size in asked.sizes.split(","):
            for row in measured(int(size), folder):
                print(row, flush=True)


if __name__ == "__main__":
    main()
