"""Draws the demo's pictures: ``python tools/pictures/render.py [words of file names] [--draft DIR]``.

The same scene gives the same picture; a JPEG's bytes may change with Pillow's version.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Final

from covers import COVERS
from develop import develop, save
from papers import PAPERS, average
from picture import FINER
from scene import COVER, Scene
from steps import STEPS

PROJECTS: Final = Path(__file__).resolve().parents[2] / "projects"
COVER_SIZE: Final = (2000, 1333)
STEP_SIZE: Final = (1600, 1067)
COVER_BYTES: Final = 190_000
STEP_BYTES: Final = 72_000


def main() -> None:
    """Reads the command line."""
    parser = argparse.ArgumentParser(description="Draw the demo's pictures.")
    parser.add_argument("words", nargs="*", help="only pictures whose folder and file name hold one of these")
    parser.add_argument("--draft", type=Path, help="draw small pictures into this folder instead")
    parser.add_argument("--colours", action="store_true", help="print each paper's average colour and stop")
    chosen = parser.parse_args()
    if chosen.colours:
        for name in PAPERS:
            print(f"{name:14} {average(name)}")
        return
    for scene in (*COVERS, *STEPS):
        if _wanted(scene, chosen.words):
            _draw(scene, chosen.draft)


def _wanted(scene: Scene, words: list[str]) -> bool:
    name = f"{scene.batch.slug}/{scene.file}"
    return not words or any(word in name for word in words)


def _draw(scene: Scene, draft: Path | None) -> None:
    wide, high = COVER_SIZE if scene.file == COVER else STEP_SIZE
    path = PROJECTS / scene.batch.slug / scene.file
    if draft is not None:
        wide, high = wide // 2, high // 2
        path = draft / f"{scene.batch.slug}-{scene.file}"
    limit = COVER_BYTES if scene.file == COVER else STEP_BYTES
    picture = scene.shoot((wide * FINER, high * FINER))
    size = save(develop(picture.pixels, scene.exposure), path, limit)
    print(f"{path.parent.name}/{path.name}: {wide} × {high}, {size / 1000:.0f} kB")


if __name__ == "__main__":
    main()
