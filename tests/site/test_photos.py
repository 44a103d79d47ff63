"""Photos made ready for the web."""

from __future__ import annotations

import io
import struct
import zlib
from pathlib import Path
from random import Random
from typing import Final

import pytest
from PIL import Image, ImageOps

from batchleaf.facts import Photo, Place
from batchleaf.render.photos import ReadyPhotos, Recipe, prepare
from batchleaf.store import Store
from public.telling_pictures import gif, jpeg, png, tiff, told_in, webp

ORIENTATION, MAKER, GPS = 0x0112, 0x010F, 0x8825
CORNERS = {(0, 0): (200, 30, 30), (1, 0): (30, 200, 30), (0, 1): (30, 30, 200), (1, 1): (200, 200, 30)}
SECRET = b"52 Ropewalk"


def corner_picture(width: int = 300, height: int = 200) -> Image.Image:
    """A picture whose four corners have four colours."""
    image = Image.new("RGB", (width, height))
    for (right, low), colour in CORNERS.items():
        image.paste(
            colour, (right * width // 2, low * height // 2, (right + 1) * width // 2, (low + 1) * height // 2)
        )
    return image


def saved(image: Image.Image, folder: Path, name: str = "cover.jpg", **options: object) -> Photo:
    """The picture as a photo of a project."""
    path = folder / name
    image.save(path, **options)  # type: ignore[arg-type]
    return Photo(str(path), 0, cover=True, alt="", place=Place(f"projects/wren/{name}", 1, 1))


def made(photo: Photo, folder: Path, recipe: Recipe | None = None) -> ReadyPhotos:
    """The photo's files, made with a store of its own."""
    return prepare([photo], Store(folder / "cache"), recipe or Recipe())


def sizes(ready: ReadyPhotos) -> list[tuple[str, tuple[int, int]]]:
    """Format and size of each file."""
    found = []
    for file in ready.files:
        with Image.open(file.path) as image:
            found.append((str(image.format), image.size))
    return sorted(found)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_photo_stands_upright(orientation: int, tmp_path: Path) -> None:
    """All eight EXIF orientations show the same picture (Exif 2.3, tag 0x0112)."""
    undo = {1: None, 2: 0, 3: 3, 4: 1, 5: 5, 6: 2, 7: 6, 8: 4}[orientation]
    lying = corner_picture() if undo is None else corner_picture().transpose(Image.Transpose(undo))
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    assert ImageOps.exif_transpose(_with(lying, exif)).size == (300, 200)
    ready = made(saved(lying, tmp_path, exif=exif, quality=95), tmp_path)
    with Image.open(ready.files[0].path) as image:
        for (right, low), colour in CORNERS.items():
            seen = image.convert("RGB").getpixel((75 + 150 * right, 50 + 100 * low))
            assert isinstance(seen, tuple)
            assert all(abs(a - b) < 12 for a, b in zip(seen, colour, strict=True))


def _with(image: Image.Image, exif: Image.Exif) -> Image.Image:
    out = io.BytesIO()
    image.save(out, "JPEG", exif=exif)
    return Image.open(out)


def test_one_photo_under_two_names_is_handed_over_once(tmp_path: Path) -> None:
    """Both are shown, from the same files."""
    photos = [saved(corner_picture(), tmp_path, name) for name in ("01-cut.jpg", "cover.jpg")]
    ready = prepare(photos, Store(tmp_path / "cache"))
    names = [file.name for file in ready.files]
    assert len(names) == len(set(names)) == 2
    first, second = (ready.prepared[photo.path] for photo in photos)
    assert first == second


def test_nothing_personal_is_left_in_a_photo(tmp_path: Path) -> None:
    """Camera, position, comment and description are in no published byte."""
    exif = Image.Exif()
    exif[MAKER] = SECRET.decode()
    exif.get_ifd(GPS)[1] = "N"
    photo = saved(corner_picture(1700, 1200), tmp_path, exif=exif, comment=SECRET, quality=90)
    assert SECRET in Path(photo.path).read_bytes()
    ready = made(photo, tmp_path)
    assert len(ready.files) == 6
    for file in ready.files:
        data = file.path.read_bytes()
        assert SECRET not in data
        with Image.open(io.BytesIO(data)) as image:
            assert not image.getexif()
            assert not {"comment", "xmp", "icc_profile", "exif"} & set(image.info)


TELLING: Final = {
    "a.jpg": jpeg(),
    "b.jpg": jpeg(progressive=True, mode="CMYK"),
    "c.png": png(),
    "d.png": png(animated=True),
    "e.webp": webp(),
    "f.webp": webp(animated=True),
    "g.gif": gif(animated=True),
    "h.tif": tiff(),
}


@pytest.mark.parametrize("name", TELLING)
def test_no_place_of_a_file_is_published(name: str, tmp_path: Path) -> None:
    """Exif, XMP, IPTC, texts, small pictures, blocks of programs, and what follows the end."""
    path = tmp_path / name
    path.write_bytes(TELLING[name])
    assert told_in(TELLING[name])
    ready = made(Photo(str(path), 0, cover=True, alt="", place=Place(name, 1, 1)), tmp_path)
    assert ready.problems == ()
    for file in ready.files:
        data = file.path.read_bytes()
        assert told_in(data) == []
        with Image.open(io.BytesIO(data)) as image:
            assert not {"comment", "xmp", "icc_profile", "exif", "photoshop", "mp"} & set(image.info)


@pytest.mark.parametrize("kind", ["PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("orientation", range(1, 9))
def test_photos_of_every_format_stand_upright(kind: str, orientation: int, tmp_path: Path) -> None:
    """Not JPEG alone says in Exif how it is turned."""
    undo = {1: None, 2: 0, 3: 3, 4: 1, 5: 5, 6: 2, 7: 6, 8: 4}[orientation]
    lying = corner_picture() if undo is None else corner_picture().transpose(Image.Transpose(undo))
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    ready = made(saved(lying, tmp_path, f"cover.{kind.lower()}", exif=exif), tmp_path)
    with Image.open(ready.files[0].path) as image:
        assert image.size == (300, 200)
        for (right, low), colour in CORNERS.items():
            seen = image.convert("RGB").getpixel((75 + 150 * right, 50 + 100 * low))
            assert isinstance(seen, tuple)
            assert all(abs(a - b) < 12 for a, b in zip(seen, colour, strict=True))


@pytest.mark.parametrize(
    ("mode", "colour", "expected"),
    [("CMYK", (255, 0, 0, 0), (0, 255, 255)), ("L", 90, (90, 90, 90)), ("1", 1, (255, 255, 255))],
)
def test_other_modes_keep_their_colours(
    mode: str, colour: int | tuple[int, ...], expected: tuple[int, ...], tmp_path: Path
) -> None:
    """Inks, grey, black and white: as Pillow reads them without a profile."""
    photo = saved(Image.new(mode, (500, 400), colour), tmp_path, "a.tif")
    assert all(abs(a - b) <= 2 for a, b in zip(pixel(made(photo, tmp_path, LOSSLESS)), expected, strict=True))


def test_a_palette_may_have_clear_colours(tmp_path: Path) -> None:
    """What shows through is white paper."""
    image = Image.new("P", (500, 400), 1)
    image.putpalette([10, 20, 30, 200, 40, 40])
    ready = made(saved(image, tmp_path, "a.png", transparency=1), tmp_path, LOSSLESS)
    assert pixel(ready) == (255, 255, 255)


@pytest.mark.parametrize(("name", "options"), [("a.gif", {}), ("a.webp", {"lossless": True}), ("a.png", {})])
def test_of_what_moves_the_first_picture_is_shown(
    name: str, options: dict[str, object], tmp_path: Path
) -> None:
    """Still, as a photo is."""
    others = [Image.new("RGB", (500, 400), colour) for colour in ((0, 200, 0), (0, 0, 200))]
    first = Image.new("RGB", (500, 400), (200, 0, 0))
    photo = saved(first, tmp_path, name, save_all=True, append_images=others, duration=100, **options)
    ready = made(photo, tmp_path, LOSSLESS)
    assert all(abs(a - b) <= 3 for a, b in zip(pixel(ready), (200, 0, 0), strict=True))
    for file in ready.files:
        with Image.open(file.path) as image:
            assert getattr(image, "n_frames", 1) == 1


@pytest.mark.parametrize("name", TELLING)
def test_a_picture_is_whole_or_told(name: str, tmp_path: Path) -> None:
    """Cut off anywhere before its pixels end, it is never shown as a part."""
    sound, path = TELLING[name], tmp_path / name
    photo = Photo(str(path), 0, cover=True, alt="", place=Place(name, 1, 1))
    for end in range(0, len(sound), len(sound) // 12):
        path.write_bytes(sound[:end])
        ready = made(photo, tmp_path, Recipe(widths=(20,)))
        assert len(ready.problems) + len(ready.prepared) == 1
        assert ready.problems or end > len(sound) // 4


def bomb(width: int, height: int) -> bytes:
    """A PNG that says it is as large, and holds nothing of it."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    pieces = ((b"IHDR", head), (b"IDAT", zlib.compress(b"\0" * 1000)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
        for name, body in pieces
    )


@pytest.mark.parametrize(("width", "height"), [(65_000, 65_000), (2**31 - 1, 1), (1, 2**31 - 1), (90_000, 9_000)])
def test_a_picture_that_says_it_is_huge_is_refused(width: int, height: int, tmp_path: Path) -> None:
    """By what it says, before room is made for it."""
    path = tmp_path / "bomb.png"
    path.write_bytes(bomb(width, height))
    [problem] = made(Photo(str(path), 0, cover=True, alt="", place=Place("b", 1, 1)), tmp_path).problems
    assert problem.sentence.startswith("this picture ")


def test_three_widths_in_two_formats(tmp_path: Path) -> None:
    """A large photo gives 480, 960 and 1600 px; it is never enlarged."""
    ready = made(saved(corner_picture(2400, 1600), tmp_path), tmp_path)
    expected = [(480, 320), (960, 640), (1600, 1067)]
    assert sizes(ready) == [("JPEG", size) for size in expected] + [("WEBP", size) for size in expected]
    [prepared] = ready.prepared.values()
    assert (prepared.width, prepared.height) == (1600, 1067)
    assert [width for _, width in prepared.webp] == [480, 960, 1600]


def test_a_small_photo_keeps_its_size(tmp_path: Path) -> None:
    """A picture narrower than a width has no file of that width."""
    ready = made(saved(corner_picture(600, 400), tmp_path), tmp_path)
    assert {size for _, size in sizes(ready)} == {(480, 320), (600, 400)}


def test_colours_are_those_of_srgb(tmp_path: Path) -> None:
    """A profile is applied, not dropped: (128, 200, 100) of Adobe RGB (1998) is (77, 201, 92) in sRGB, ±1."""
    image = Image.new("RGB", (500, 400), (128, 200, 100))
    ready = made(saved(image, tmp_path, "a.png", icc_profile=adobe_rgb()), tmp_path, LOSSLESS)
    seen = pixel(ready)
    assert all(abs(a - b) <= 1 for a, b in zip(seen, (77, 201, 92), strict=True))


def test_a_profile_that_is_none_is_ignored(tmp_path: Path) -> None:
    """As browsers do: the colours stay as they are."""
    image = Image.new("RGB", (500, 400), (128, 200, 100))
    ready = made(saved(image, tmp_path, "a.png", icc_profile=b"no profile at all"), tmp_path, LOSSLESS)
    assert all(abs(a - b) <= 1 for a, b in zip(pixel(ready), (128, 200, 100), strict=True))


LOSSLESS = Recipe(widths=(500,), webp_quality=100, jpeg_quality=100)


def pixel(ready: ReadyPhotos) -> tuple[int, ...]:
    """The colour in the middle of the largest JPEG."""
    path = next(file.path for file in reversed(ready.files) if file.name.endswith("jpg"))
    with Image.open(path) as image:
        colour = image.convert("RGB").getpixel((200, 200))
    assert isinstance(colour, tuple)
    return tuple(int(band) for band in colour)


def adobe_rgb() -> bytes:
    """An ICC profile (ICC.1, version 2) with the colorants and the gamma of Adobe RGB (1998).

    Colorants adapted to D50 and the gamma of 563/256 are those of the Adobe RGB (1998) encoding.
    """

    def xyz(*values: float) -> bytes:
        return b"XYZ " + bytes(4) + b"".join(struct.pack(">i", round(v * 65536)) for v in values)

    def text(kind: bytes, words: bytes) -> bytes:
        if kind == b"text":
            return b"text" + bytes(4) + words + b"\0"
        return b"desc" + bytes(4) + struct.pack(">I", len(words) + 1) + words + bytes(1 + 4 + 4 + 2 + 1 + 67)

    curve = b"curv" + bytes(4) + struct.pack(">IH", 1, 563)
    tags = {
        b"desc": text(b"desc", b"wide"),
        b"cprt": text(b"text", b"none"),
        b"wtpt": xyz(0.9642, 1.0, 0.8249),
        b"rXYZ": xyz(0.60974, 0.31111, 0.01947),
        b"gXYZ": xyz(0.20528, 0.62567, 0.06087),
        b"bXYZ": xyz(0.14919, 0.06322, 0.74457),
        b"rTRC": curve,
        b"gTRC": curve,
        b"bTRC": curve,
    }
    table, body, start = b"", b"", 128 + 4 + 12 * len(tags)
    for name, data in tags.items():
        padded = data + bytes(-len(data) % 4)
        table += name + struct.pack(">II", start + len(body), len(data))
        body += padded
    header = struct.pack(
        ">I4sI4s4s4s12x4s28x", start + len(body), b"none", 0x02100000, b"mntr", b"RGB ", b"XYZ ", b"acsp"
    )
    header += struct.pack(">iii", round(0.9642 * 65536), 65536, round(0.8249 * 65536)) + bytes(48)
    return header[:128] + struct.pack(">I", len(tags)) + table + body


def test_transparent_pictures_lie_on_white_paper(tmp_path: Path) -> None:
    """What shows through is white."""
    ready = made(saved(Image.new("RGBA", (500, 400), (255, 0, 0, 0)), tmp_path, "a.png"), tmp_path)
    with Image.open(ready.files[0].path) as image:
        assert image.convert("RGB").getpixel((200, 200)) == (255, 255, 255)


@pytest.mark.parametrize("content", [b"", b"no picture", b"\xff\xd8\xff\xe0broken"])
def test_a_broken_picture_is_a_located_problem(content: bytes, tmp_path: Path) -> None:
    """The file is named, the sentence says what to do, nothing is raised."""
    path = tmp_path / "cover.jpg"
    path.write_bytes(content)
    photo = Photo(str(path), 0, cover=True, alt="", place=Place("projects/wren/cover.jpg", 1, 1))
    [problem] = made(photo, tmp_path).problems
    assert problem.place.file == "projects/wren/cover.jpg"
    assert problem.sentence == "this picture cannot be read; save it again as JPEG or PNG"


@pytest.mark.parametrize("name", ["grey.png", "grey.tif"])
def test_a_picture_with_sixteen_bits_keeps_its_greys(name: str, tmp_path: Path) -> None:
    """20,000 of 65,535 is 78 of 255, not white."""
    grey = Image.new("I;16", (500, 400), 20_000)
    ready = made(saved(grey, tmp_path, name), tmp_path, LOSSLESS)
    assert all(abs(band - 78) <= 1 for band in pixel(ready))


def test_damaged_metadata_is_a_located_problem_or_ignored(tmp_path: Path) -> None:
    """A picture whose EXIF block is garbage never ends in a traceback."""
    exif = Image.Exif()
    exif[ORIENTATION] = 6
    photo = saved(corner_picture(), tmp_path, exif=exif, quality=90)
    path = Path(photo.path)
    sound = path.read_bytes()
    at = sound.index(b"Exif\0\0") + 6
    for garbage in (b"II*\0\xff\xff\xff\xff", b"MM\0*\0\0\0\x08\xff\xff", b"\0" * 12):
        path.write_bytes(sound[:at] + garbage + sound[at + len(garbage) :])
        ready = made(photo, tmp_path)
        assert len(ready.problems) + len(ready.prepared) == 1


def test_a_picture_that_is_gone_is_a_located_problem(tmp_path: Path) -> None:
    """It may be deleted while somebody watches."""
    photo = saved(corner_picture(), tmp_path)
    Path(photo.path).unlink()
    [problem] = made(photo, tmp_path).problems
    assert problem.sentence == "this picture is gone, or may not be read"


def test_a_cut_off_picture_is_a_located_problem(tmp_path: Path) -> None:
    """Half a download is not shown as half a picture."""
    photo = saved(corner_picture(1200, 900), tmp_path, quality=95)
    path = Path(photo.path)
    path.write_bytes(path.read_bytes()[:3000])
    assert len(made(photo, tmp_path).problems) == 1


def test_a_huge_picture_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    """Thirteen thousand pixels square are told by their number."""
    photo = saved(Image.new("1", (13_000, 13_000)), tmp_path, "huge.png")
    [problem] = made(photo, tmp_path).problems
    assert problem.sentence == "this picture has 13000 × 13000 pixels; make it smaller"


def test_a_photo_is_made_once(tmp_path: Path) -> None:
    """The second run takes every file from the store, and a changed recipe makes new ones."""
    photo = saved(corner_picture(1200, 800), tmp_path)
    first = made(photo, tmp_path)
    stamps = [file.path.stat().st_mtime_ns for file in first.files]
    again = made(photo, tmp_path)
    assert [file.path.stat().st_mtime_ns for file in again.files] == stamps
    other = made(photo, tmp_path, Recipe(jpeg_quality=60))
    assert not {file.path for file in other.files} & {file.path for file in first.files}


def test_a_damaged_file_in_the_store_is_made_again(tmp_path: Path) -> None:
    """A file that does not agree with its checksum is never published."""
    photo = saved(corner_picture(1200, 800), tmp_path)
    victim = made(photo, tmp_path).files[0].path
    sound = victim.read_bytes()
    victim.write_bytes(sound[:-10])
    assert made(photo, tmp_path).files[0].path.read_bytes() == sound


def test_a_thread_of_a_picture_is_told(tmp_path: Path) -> None:
    """No WebP file is longer than 16,383 px (RFC 9649, section 2.7)."""
    [problem] = made(saved(Image.new("RGB", (4, 17_000)), tmp_path, "a.png"), tmp_path).problems
    assert problem.sentence == "this picture is too long for its width; cut it shorter"


def test_grey_of_either_order_of_bytes_and_with_a_clear_colour(tmp_path: Path) -> None:
    """TIFF writes the high byte first or last; a PNG may name one grey as clear."""
    for grey, name, options in (
        (Image.new("I;16B", (500, 400), 20_000), "b.tif", {}),
        (Image.new("I;16", (500, 400), 20_000), "c.png", {"transparency": 78}),
    ):
        ready = made(saved(grey, tmp_path, name, **options), tmp_path, LOSSLESS)
        assert all(abs(band - 78) <= 1 for band in pixel(ready))


@pytest.mark.parametrize("kind", ["TIFF", "PNG", "JPEG", "WEBP", "GIF"])
def test_no_damage_makes_the_reader_fall(kind: str, tmp_path: Path) -> None:
    """Any changed byte gives a picture or a located sentence."""
    out = io.BytesIO()
    exif = Image.Exif()
    exif[ORIENTATION], exif[MAKER] = 6, "x"
    corner_picture(40, 30).save(out, kind, **({} if kind == "GIF" else {"exif": exif}))
    random, sound = Random(1), out.getvalue()
    path = tmp_path / "cover.bin"
    photo = Photo(str(path), 0, cover=True, alt="", place=Place("cover", 1, 1))
    for _ in range(120):
        data = bytearray(sound)
        for _ in range(random.randint(1, 4)):
            data[random.randrange(min(len(data), 300))] = random.randrange(256)
        path.write_bytes(data)
        ready = made(photo, tmp_path, Recipe(widths=(20,)))
        assert len(ready.problems) + len(ready.prepared) == 1
