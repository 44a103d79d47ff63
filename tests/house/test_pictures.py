"""The demo's pictures are painted from its records, and stay small."""

from __future__ import annotations

import shutil
from itertools import combinations
from pathlib import Path
from typing import Final

import pytest
from makes import Batch
from PIL import ImageChops
from recorded import Recorded, read
from render import batches_of, photograph
from scene import COVER, Scene
from scenes import SCENES

from batchleaf.facts import Status
from kept_demo import lay_plans_beside

ROOT: Final = Path(__file__).parents[2]
MOST_BYTES: Final = 3_000_000
SMALL: Final = (180, 120)


@pytest.fixture(scope="module")
def records() -> dict[str, Recorded]:
    """The demo's batches."""
    return read(ROOT)


@pytest.fixture(scope="module")
def batches(records: dict[str, Recorded]) -> dict[str, Batch]:
    """The same with how they lie."""
    return batches_of(records)


def scene(slug: str, file: str = COVER) -> Scene:
    """The scene of one picture."""
    return next(one for one in SCENES if (one.slug, one.file) == (slug, file))


@pytest.mark.parametrize("slug", ["wren-note-bookmarks", "puddle-ice-cards", "hawthorn-boxes"])
def test_a_scene_gives_the_same_picture_again(slug: str, batches: dict[str, Batch]) -> None:
    """Nothing in a picture depends on the clock or on what was painted before it."""
    first, again = (photograph(scene(slug), batches[slug], SMALL).tobytes() for _ in range(2))
    assert first == again


def test_a_papers_colour_in_the_record_is_its_colour_on_the_picture(
    batches: dict[str, Batch], tmp_path: Path
) -> None:
    """Papers recorded in other colours change the pictures they are on, and no other."""
    for name in ("projects", "site_src"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("*.jpg"))
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    lay_plans_beside(tmp_path)
    for file, old, new in (
        ("card", "#6c7257", "#6c5772"),
        ("patterned", "#5d7156 #d9d7c4", "#71565d #d9d7c4"),
        ("patterned", "#c1d0d9", "#d9c1c4"),
    ):
        path = tmp_path / "projects" / "inventory" / f"{file}.yml"
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")
    changed = batches_of(read(tmp_path))
    for slug in ("sloe-lane-cards", "ivy-gate-cards", "first-frost-tags"):
        before, after = (photograph(scene(slug), made[slug], SMALL) for made in (batches, changed))
        assert ImageChops.difference(before, after).getbbox() is not None
    slug = "wren-note-bookmarks"
    before, after = (photograph(scene(slug), made[slug], SMALL) for made in (batches, changed))
    assert ImageChops.difference(before, after).getbbox() is None


def test_what_is_made_has_a_cover(records: dict[str, Recorded]) -> None:
    """Every batch of the demo that is made or published is seen."""
    made = [one.project for one in records.values() if one.project.status in (Status.MADE, Status.PUBLISHED)]
    assert made
    assert [project.slug for project in made if not any(photo.cover for photo in project.photos)] == []


def test_pictures_and_scenes_are_the_same() -> None:
    """No picture is left over from a scene that is gone, and each scene has been painted."""
    painted = {(path.parent.name, path.name) for path in ROOT.glob("projects/**/*.jpg")}
    assert painted == {(one.slug, one.file) for one in SCENES}


def test_the_pictures_are_small_together() -> None:
    """Who fetches the project does not wait for its pictures."""
    assert sum(path.stat().st_size for path in ROOT.glob("projects/**/*.jpg")) < MOST_BYTES


def test_a_paper_that_comes_twice_lies_on_a_corner_and_its_opposite(batches: dict[str, Batch]) -> None:
    """On every orchard card, as its note says; none of its squares has a neighbour of its own paper."""
    batch = batches["orchard-square-cards"]
    for number in range(batch.count):
        squares = [layer for layer in batch.layers(number) if layer.letter == "C"]
        twice = [(a, b) for a, b in combinations(squares, 2) if a.paper == b.paper]
        assert len(twice) == 1
        ((a, b),) = twice
        assert a.area.x != b.area.x
        assert a.area.y != b.area.y


@pytest.mark.parametrize(("slug", "letter"), [("wren-note-bookmarks", "C"), ("sloe-lane-cards", "E")])
def test_a_stamped_label_shows_what_its_record_names(
    slug: str, letter: str, batches: dict[str, Batch]
) -> None:
    """The image of the set, no larger than the set says it is."""
    batch = batches[slug]
    image = batch.recorded.image(batch.recorded.part(letter), 0)
    assert image is not None
    assert image.size is not None
    (stamp,) = batch.loose(letter).stamps
    high, wide = (cells / stamp.cells_per_mm for cells in stamp.cover.shape)
    assert wide <= float(image.size.width) + 0.01
    assert high <= float(image.size.height) + 0.01


def test_no_picture_shows_more_than_there_is(batches: dict[str, Batch]) -> None:
    """A scene cannot put a make on the table that was never begun."""
    batch = batches["hazel-square-cards"]
    assert len(batch.layers(batch.recorded.project.begun - 1)) == 5
    with pytest.raises(ValueError, match="no make 9"):
        batch.layers(batch.recorded.project.begun)
