"""Pictures of the maker's own pages: the same pixels, and a file that says nothing besides."""

from __future__ import annotations

import io
from collections.abc import Callable
from random import Random
from typing import Final

import pytest
from PIL import Image, ImageCms, ImageSequence

from batchleaf.render.stripped import HEAD, NotStrippedError, is_picture, stripped
from public.telling_pictures import TURNED, chunks, exif, gif, jpeg, picture, png, told_in, webp

PROFILE: Final = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
ORIENTATION: Final = 0x0112
# The second picture that the JPEGs speak of is none; a browser does not look for it either.
pytestmark = pytest.mark.filterwarnings("ignore:Image appears to be a malformed MPO file")
PICTURES: Final[dict[str, Callable[[], bytes]]] = {
    "jpeg": jpeg,
    "progressive jpeg": lambda: jpeg(progressive=True),
    "grey jpeg": lambda: jpeg(mode="L"),
    "jpeg of four inks": lambda: jpeg(mode="CMYK"),
    "jpeg with a profile": lambda: jpeg(profile=PROFILE),
    "png": png,
    "png with a profile": lambda: png(profile=PROFILE),
    "png of few colours": lambda: png(mode="P"),
    "png with clear parts": lambda: png(mode="RGBA"),
    "grey png of sixteen bits": lambda: png(mode="I;16"),
    "animated png": lambda: png(animated=True),
    "webp": webp,
    "webp with a profile": lambda: webp(profile=PROFILE),
    "animated webp": lambda: webp(animated=True),
    "gif": gif,
    "animated gif": lambda: gif(animated=True),
}


def frames(data: bytes) -> list[tuple[bytes, object]]:
    """The pixels of each frame, and how long it is shown."""
    with Image.open(io.BytesIO(data)) as image:
        return [
            (frame.convert("RGBA").tobytes(), frame.info.get("duration"))
            for frame in ImageSequence.Iterator(image)
        ]


@pytest.mark.parametrize("name", PICTURES)
def test_pixels_stay_and_words_go(name: str) -> None:
    """Each frame bit by bit, its profile, how often it is shown and which way it is turned; nothing else."""
    told = PICTURES[name]()
    assert told_in(told)
    bare = stripped(told)
    assert told_in(bare) == []
    assert frames(bare) == frames(told)
    with Image.open(io.BytesIO(told)) as before, Image.open(io.BytesIO(bare)) as after:
        assert after.mode == before.mode
        for key in ("icc_profile", "loop", "transparency", "gamma", "dpi"):
            assert after.info.get(key) == before.info.get(key)
        turned = {} if before.format == "GIF" else {ORIENTATION: TURNED}
        assert dict(after.getexif()) == turned
        assert not {"comment", "xmp", "XML:com.adobe.xmp", "photoshop", "mp"} & set(after.info)


@pytest.mark.parametrize("name", PICTURES)
def test_it_is_stripped_once(name: str) -> None:
    """What was stripped stays as it is."""
    bare = stripped(PICTURES[name]())
    assert stripped(bare) == bare


def test_chunks_of_a_png_are_those_of_the_standard() -> None:
    """W3C PNG, third edition: none that holds text, none of a program's own, each with its sum."""
    names = {name for name, _ in chunks(stripped(png(profile=PROFILE)))}
    assert names == {b"IHDR", b"iCCP", b"eXIf", b"IDAT", b"IEND"}


@pytest.mark.parametrize("turned", range(1, 9))
@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_stays_turned(kind: str, turned: int) -> None:
    """The eight orientations (CIPA DC-008, tag 0x0112); one that stands upright needs no word of it."""
    out = io.BytesIO()
    picture().save(out, kind, exif=exif(turned))
    with Image.open(io.BytesIO(stripped(out.getvalue()))) as image:
        assert dict(image.getexif()) == ({ORIENTATION: turned} if turned > 1 else {})


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_that_breaks_off_is_refused(name: str) -> None:
    """Wherever it does: nobody knows what the rest of it would say."""
    told, bare = PICTURES[name](), stripped(PICTURES[name]())
    ends = {*range(HEAD, len(bare) - 1, max(1, len(bare) // 60)), len(bare) - 1}
    for end in ends:
        with pytest.raises(NotStrippedError):
            stripped(bare[:end])
    for end in range(HEAD, len(told) // 2, max(1, len(told) // 60)):
        with pytest.raises(NotStrippedError):
            stripped(told[:end])


@pytest.mark.parametrize("name", PICTURES)
def test_no_damage_makes_it_fall(name: str) -> None:
    """Any changed bytes give a picture, or a refusal."""
    random, sound = Random(3), PICTURES[name]()
    for _ in range(150):
        data = bytearray(sound)
        for _ in range(random.randint(1, 4)):
            data[random.randrange(HEAD, min(len(data), 700))] = random.randrange(256)
        try:
            bare = stripped(bytes(data))
        except NotStrippedError:
            continue
        assert len(bare) <= len(sound)


def test_other_files_are_no_pictures() -> None:
    """They are left as they are."""
    for head in (b"", b"%PDF-1.7", b"<svg xmlns=", b"RIFF\0\0\0\0WAVEfmt ", b"II*\0\x08\0\0\0"):
        assert not is_picture(head)
        assert stripped(head) == head
