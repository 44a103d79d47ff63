"""A part of the demo archive, for tests that build it anew: three of its batches, with all of its drawer."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

from kept_demo import lay_plans_beside

ROOT: Final = Path(__file__).parents[1]
BATCHES: Final = ("sloe-lane-cards", "wren-note-bookmarks", "ropewalk-place-cards")


def lay_out_small_demo(folder: Path, *, leave_out: tuple[str, ...] = ()) -> None:
    """Copy it into ``folder``, without the files whose names match ``leave_out``."""
    ignored = shutil.ignore_patterns(*leave_out)
    for name in ("inventory", "designs", *BATCHES):
        shutil.copytree(ROOT / "projects" / name, folder / "projects" / name, ignore=ignored)
    shutil.copy(ROOT / "projects" / "series.yml", folder / "projects")
    shutil.copytree(ROOT / "site_src", folder / "site_src")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    lay_plans_beside(folder)
