"""Which images of stamps and dies a part gets: ``tide-words 1 2 3``."""

from __future__ import annotations

import re

from batchleaf.facts import ImageUse, Place, Tool
from batchleaf.measure.errors import MeasureError
from batchleaf.records.known import KnownTools
from batchleaf.records.report import Report


def read_images(text: str) -> tuple[ImageUse, ...]:
    """``tide-words 1 2 3``, several sets between commas. Raises :class:`MeasureError`."""
    return tuple(_read_set(piece.strip()) for piece in text.split(","))


def _read_set(text: str) -> ImageUse:
    found = re.fullmatch(r"(?P<set>[^\s0-9]\S*)(?P<numbers>(?:\s+[0-9]{1,4})*)", text)
    if found is None:
        raise MeasureError(
            f"“{text}” does not name a set and its images by number; write for example tide-words 1 2 3"
        )
    numbers = tuple(int(number) for number in found["numbers"].split())
    if len(set(numbers)) < len(numbers):
        raise MeasureError(f"“{text}” names an image twice; once is enough")
    return ImageUse(found["set"], numbers)


def images_of(text: str | None, place: Place, tools: KnownTools, report: Report) -> tuple[ImageUse, ...]:
    """The images that a text names, as far as there are such."""
    uses = report.read(place, read_images, text) if text else None
    return tuple(use for use in uses or () if _is_there(use, place, tools, report))


def _is_there(use: ImageUse, place: Place, tools: KnownTools, report: Report) -> bool:
    tool = tools.find(use.tool, place, report)
    if tool is None:
        return False
    missing = [number for number in use.numbers if not 1 <= number <= len(tool.images)]
    if missing:
        report.error(place, _no_such_image(tool, missing[0]))
    return not missing


def _no_such_image(tool: Tool, number: int) -> str:
    match len(tool.images):
        case 0:
            return f"“{tool.slug}” lists no images on the bench, so it has no {number}; leave the number out"
        case 1:
            return f"“{tool.slug}” has 1 image; there is no {number}"
        case several:
            return f"“{tool.slug}” has images 1 to {several}; there is no {number}"
