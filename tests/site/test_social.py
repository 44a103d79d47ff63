"""The picture of a page for those who pass its address on."""

from __future__ import annotations

import re
from typing import Any

from pathlib import Path
from PIL import Image

from batchleaf.render.look import STANDARD
from batchleaf.render.photos import ReadyPhotos
from batchleaf.render.social import SIZE, social_pictures
from batchleaf.store import Store
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.shared import SharedPicture
from browsing import Served, is_moved, parsed

NOTHING = ReadyPhotos({}, (), ())
BOXES = (Box("frame", 0, 0, 100, 200), Box("part", 0, 0, 100, 100, "#3c6e5a"))


def told(site: Served, name: str) -> dict[str, str]:
    """What a page says of itself to others."""
    metas: Any = parsed(site.file(name)).iter("meta")
    return {one.get("property"): one.get("content") for one in metas if one.get("property")}


def batches(site: Served) -> list[str]:
    """The pages of all batches that are made."""
    names = (site.name(path) for path in site.pages() if not is_moved(path))
    with_entry = (site.folder / "feed.xml").read_text(encoding="utf-8")
    return [name for name in names if name.startswith("projects/") and f"{site.url}{name}<" in with_entry]


def test_every_batch_has_its_picture(demo_site: Served, public_demo: Served) -> None:
    """At a whole address that is there, 1200 by 630, of its own, and described; so has the first page."""
    for site in (demo_site, public_demo):
        seen = []
        for name in ("", *batches(site)):
            says = told(site, name)
            assert says["og:url"] == f"{site.url}{name}"
            file = site.folder / says["og:image"].removeprefix(site.url)
            with Image.open(file) as image:
                assert image.size == SIZE == (int(says["og:image:width"]), int(says["og:image:height"]))
                assert not image.getexif()
                assert "comment" not in image.info
            assert says["og:image:alt"]
            assert says["og:description"]
            seen.append(file.name)
        assert len(seen) > 3
        assert len(set(seen)) == len(seen) - 1


def test_a_list_shows_its_newest_batch(demo_site: Served) -> None:
    """The first page has the picture of the newest of all, a series that of its own newest."""
    pictures = {name: told(demo_site, name)["og:image"] for name in batches(demo_site)}
    newest = re.findall("<id>.*(projects/[a-z-]+/)</id>", (demo_site.folder / "feed.xml").read_text("utf-8"))
    assert told(demo_site, "")["og:image"] == pictures[newest[0]]
    lists = [name for name in map(demo_site.name, demo_site.pages()) if re.fullmatch("series/.+/", name)]
    assert lists
    for name in lists:
        listed = {link.get("href") for link in parsed(demo_site.file(name)).iter("a")}
        own = [batch for batch in newest if f"../../{batch}" in listed]
        assert told(demo_site, name)["og:image"] == pictures[own[0]]


def test_a_batch_without_a_photo_is_drawn(tmp_path: Path) -> None:
    """Its boxes stand in the middle of the page's ground, as large as a margin allows."""
    shared = {"projects/fern/": SharedPicture(None, BOXES, "Fern marks")}
    made = social_pictures(shared, NOTHING, STANDARD, Store(tmp_path))["projects/fern/"]
    assert made.alt == "Fern marks"
    with Image.open(made.file.path) as image:
        wide, high = image.size
        # 630 less a tenth above and below is 504 high, so 252 wide; the part is its upper half.
        assert near(image, (wide // 2, 70), (0x3C, 0x6E, 0x5A))
        assert near(image, (wide // 2, high // 2 - 10), (0x3C, 0x6E, 0x5A))
        assert near(image, (wide // 2, high // 2 + 20), (0xF2, 0xF1, 0xEA))
        assert near(image, (wide // 2 - 140, 200), (0xF2, 0xF1, 0xEA))


def near(image: Image.Image, place: tuple[int, int], colour: tuple[int, int, int]) -> bool:
    """Whether a pixel has the colour, but for what JPEG does to it."""
    pixel = image.getpixel(place)
    assert isinstance(pixel, tuple)
    return all(abs(found - meant) <= 6 for found, meant in zip(pixel, colour, strict=True))


def test_one_picture_is_one_file(tmp_path: Path) -> None:
    """Pages with the same picture share it; a second build takes it from the store."""
    shared = {name: SharedPicture(None, BOXES, name) for name in ("", "projects/fern/")}
    first = social_pictures(shared, NOTHING, STANDARD, Store(tmp_path))
    before = {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*") if path.is_file()}
    again = social_pictures(shared, NOTHING, STANDARD, Store(tmp_path))
    assert {one.file for one in first.values()} == {one.file for one in again.values()}
    assert len({one.file for one in first.values()}) == 1
    assert before == {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*") if path.is_file()}
