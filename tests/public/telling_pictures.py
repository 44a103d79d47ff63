"""Pictures whose files say :data:`MARK` in every place that a camera, a phone or a program writes to."""

from __future__ import annotations

import base64
import io
import struct
import zlib
from collections.abc import Iterator
from typing import Final

from PIL import Image, PngImagePlugin

MARK: Final = "52 Ropewalk Qevrax"
SIZE: Final = (300, 200)
TURNED: Final = 6
_ORIENTATION, _MAKE, _ARTIST, _COPYRIGHT, _XP_AUTHOR = 0x0112, 0x010F, 0x013B, 0x8298, 0x9C9D
_EXIF_IFD, _GPS_IFD, _MAKER_NOTE, _USER_COMMENT = 0x8769, 0x8825, 0x927C, 0x9286
_GPS_AREA: Final = 0x001C
_XMP: Final = f'<x:xmpmeta xmlns:x="adobe:ns:meta/"><a b="{MARK}"/></x:xmpmeta>'.encode()


def spellings(mark: str = MARK) -> Iterator[bytes]:
    """The mark as it may stand in bytes: as text, in two bytes a letter, in base64 at any place, in hex."""
    for text in (mark.encode(), mark.encode("utf-16-le"), mark.encode("utf-16-be")):
        yield text
        yield text.hex().encode()
        yield text.hex().upper().encode()
        for shift in range(3):
            # What stands before and behind changes the first and last signs.
            yield base64.b64encode(b"\0" * shift + text)[4:-4]


def told_in(data: bytes) -> list[bytes]:
    """How the mark stands in a file."""
    return [spelt for spelt in spellings() if spelt in data]


def picture() -> Image.Image:
    """Colours that run across, so that no two pixels beside each other are alike."""
    image = Image.new("RGB", SIZE)
    image.putdata([(x % 256, y, (x * y) % 256) for y in range(SIZE[1]) for x in range(SIZE[0])])
    return image


def exif(turned: int = TURNED) -> Image.Exif:
    """Camera, artist, place, notes of the maker of the camera, remarks in two encodings."""
    made = Image.Exif()
    made[_ORIENTATION] = turned
    made[_MAKE] = made[_ARTIST] = made[_COPYRIGHT] = MARK
    made[_XP_AUTHOR] = MARK.encode("utf-16-le")
    made.get_ifd(_EXIF_IFD)[_MAKER_NOTE] = base64.b64encode(MARK.encode())
    made.get_ifd(_EXIF_IFD)[_USER_COMMENT] = b"UNICODE\0" + MARK.encode("utf-16-be")
    made.get_ifd(_GPS_IFD)[_GPS_AREA] = b"ASCII\0\0\0" + MARK.encode()
    return made


def jpeg(*, progressive: bool = False, mode: str = "RGB", profile: bytes = b"") -> bytes:
    """Exif, XMP in parts, IPTC, small pictures, a second picture, remarks, and more behind the end."""
    out = io.BytesIO()
    image = picture().convert(mode)
    image.save(out, "JPEG", exif=exif(), progressive=progressive, quality=90, icc_profile=profile or None)
    data = out.getvalue()
    mark = MARK.encode()
    iptc = b"\x1c\x02\x5a" + struct.pack(">H", len(mark)) + mark
    segments = (
        (0xE0, b"JFXX\0\x10" + mark),
        (0xE1, b"http://ns.adobe.com/xap/1.0/\0" + _XMP),
        (0xE1, b"http://ns.adobe.com/xmp/extension/\0" + _XMP),
        (0xE2, b"MPF\0" + mark),
        (0xE2, b"FPXR\0" + mark),
        (0xED, b"Photoshop 3.0\0" + b"8BIM\x04\x04\0\0" + struct.pack(">I", len(iptc)) + iptc),
        *((0xE0 + number, mark.hex().encode()) for number in (3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15)),
        (0xFE, mark),
    )
    told = b"".join(struct.pack(">BBH", 0xFF, name, len(body) + 2) + body for name, body in segments)
    return data[:2] + told + data[2:] + mark + data


def png(*, mode: str = "RGB", profile: bytes = b"", animated: bool = False) -> bytes:
    """Texts of all three kinds, Exif, a time, a chunk of a program's own, and more behind the end."""
    told = PngImagePlugin.PngInfo()
    told.add_text("Author", MARK)
    told.add_text("Comment", MARK, zip=True)
    told.add_itxt("XML:com.adobe.xmp", _XMP.decode(), zip=False)
    told.add_itxt("Title", MARK, zip=True)
    told.add(b"vpAg", MARK.encode(), after_idat=True)
    out = io.BytesIO()
    image = picture().convert(mode)
    more = {"save_all": True, "append_images": [image.rotate(180)], "duration": 100} if animated else {}
    image.save(out, "PNG", exif=exif(), pnginfo=told, icc_profile=profile or None, **more)
    return out.getvalue() + MARK.encode()


def webp(*, profile: bytes = b"", animated: bool = False) -> bytes:
    """Exif, XMP, a chunk of a program's own, and more behind the end."""
    out = io.BytesIO()
    image = picture()
    more = {"save_all": True, "append_images": [image.rotate(180)], "duration": 100} if animated else {}
    image.save(out, "WEBP", exif=exif(), xmp=_XMP, lossless=True, icc_profile=profile or None, **more)
    mark = MARK.encode()
    data = out.getvalue() + b"MARK" + struct.pack("<I", len(mark)) + mark + b"\0" * (len(mark) % 2)
    return data[:4] + struct.pack("<I", len(data) - 8) + data[8:] + mark


def gif(*, animated: bool = False) -> bytes:
    """A remark, a block of a program's own, and more behind the end."""
    out = io.BytesIO()
    image = picture().quantize(64)
    more = {"save_all": True, "append_images": [image.rotate(180)], "duration": 100, "loop": 0}
    image.save(out, "GIF", comment=MARK.encode(), **(more if animated else {}))
    mark = MARK.encode()
    xmp = b"\x21\xff\x0bXMP DataXMP" + bytes([len(mark)]) + mark + b"\0"
    data = out.getvalue()
    return data[:-1] + xmp + data[-1:] + mark


def tiff() -> bytes:
    """Tags of the file itself."""
    out = io.BytesIO()
    picture().save(out, "TIFF", exif=exif())
    return out.getvalue()


def chunks(data: bytes) -> list[tuple[bytes, bytes]]:
    """The chunks of a PNG, each with a sum that holds."""
    at, found = 8, []
    while at < len(data):
        length, name = struct.unpack_from(">I4s", data, at)
        body = data[at + 8 : at + 8 + length]
        assert data[at + 8 + length : at + 12 + length] == struct.pack(">I", zlib.crc32(name + body))
        found.append((name, body))
        at += 12 + length
    return found
