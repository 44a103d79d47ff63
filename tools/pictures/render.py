"""Draws the demo's pictures: ``python tools/pictures/render.py [words of file names] [--draft DIR]``.

What is on them comes from the records. The same records and scenes give the same
picture; a JPEG's bytes may change with Pillow's version.
"""

from __future__ import annotations

import argparse
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from typing import Final

from batches import HOW_THEY_LIE
from develop import develop, save
from makes import Batch
from picture import FINER
from PIL import Image
from recorded import Recorded, read
from scene import COVER, Scene
from scenes import SCENES

ROOT: Final = Path(__file__).resolve().parents[2]
COVER_SIZE: Final = (1920, 1280)
STEP_SIZE: Final = (1440, 960)
COVER_BYTES: Final = 150_000
STEP_BYTES: Final = 56_000


def main() -> None:
    """Reads the command line."""
    parser = argparse.ArgumentParser(description="Draw the demo's pictures.")
    parser.add_argument("words", nargs="*", help="only pictures whose folder and file name hold one of these")
    parser.add_argument("--draft", type=Path, help="draw small pictures into this folder instead")
    chosen = parser.parse_args()
    batches = batches_of(read(ROOT))
    wanted = [scene for scene in SCENES if _wanted(scene, chosen.words)]
    with ProcessPoolExecutor() as pool:
        for told in pool.map(partial(_draw, batches, chosen.draft), wanted):
            print(told)


def batches_of(records: dict[str, Recorded]) -> dict[str, Batch]:
    """The batches that are on pictures, with how they lie."""
    return {slug: Batch(records[slug], lies) for slug, lies in HOW_THEY_LIE.items()}


def photograph(scene: Scene, batch: Batch, size: tuple[int, int]) -> Image.Image:
    """A scene, developed; ``size`` in pixels."""
    picture = scene.shoot(batch, (size[0] * FINER, size[1] * FINER))
    return develop(picture.pixels, scene.exposure)


def _wanted(scene: Scene, words: list[str]) -> bool:
    name = f"{scene.slug}/{scene.file}"
    return not words or any(word in name for word in words)


def _draw(batches: dict[str, Batch], draft: Path | None, scene: Scene) -> str:
    """Writes one picture; what was written."""
    wide, high = COVER_SIZE if scene.file == COVER else STEP_SIZE
    path = ROOT / "projects" / scene.slug / scene.file
    if draft is not None:
        wide, high = wide // 2, high // 2
        path = draft / f"{scene.slug}-{scene.file}"
    image = photograph(scene, batches[scene.slug], (wide, high))
    size = save(image, path, COVER_BYTES if scene.file == COVER else STEP_BYTES)
    return f"{path.parent.name}/{path.name}: {wide} × {high}, {size / 1000:.0f} kB"


if __name__ == "__main__":
    main()
