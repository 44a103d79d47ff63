"""The long form of a record means exactly what the short one means."""

from __future__ import annotations

import shutil
from pathlib import Path

from batchleaf.facts import Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.records.archive import Reading, read_archive
from batchleaf.records.explaining.archive import explained
from batchleaf.writing.write_out import written_out

DEMO = Path(__file__).parents[2] / "projects"
SETTINGS = Settings(Unit.MM, Currency.of("EUR"))


def _write_out(root: Path) -> Reading:
    reading = read_archive(root / "projects", SETTINGS)
    assert not [problem for problem in reading.problems if problem.weight == "error"]
    for one in explained(reading, SETTINGS):
        file = root / one.file
        long = written_out(file.read_text(encoding="utf-8"), one.node, one.understood)
        file.write_text(long, encoding="utf-8")
    return reading


def test_the_demo_written_out_means_the_same(tmp_path: Path) -> None:
    """Every record of the demo with all its defaults written out gives the same facts, and leaves nothing."""
    shutil.copytree(DEMO, tmp_path / "projects")
    short = _write_out(tmp_path)
    long = read_archive(tmp_path / "projects", SETTINGS)
    assert long.archive == short.archive
    assert long.problems == () or [p.sentence for p in long.problems] == [p.sentence for p in short.problems]
    left = {one.file: one.understood for one in explained(long, SETTINGS) if one.understood}
    assert left == {}
