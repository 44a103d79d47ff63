"""Tools with their limits; stamps and dies as sets of images."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.facts import NO_TERMS, Image, Settings, StackLimit, Tie, Tool
from batchleaf.measure.durations import parse_seconds
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.grammage import parse_grammage
from batchleaf.measure.lengths import FRACTION_SIGNS, Unit, parse_length, parse_size, unit_named
from batchleaf.measure.spelling import with_unit
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.report import Report
from batchleaf.records.terms import read_link, read_terms
from batchleaf.records.written import ToolWritten

_NUMBER: Final = (
    rf"(?:[0-9]+(?:[ -][0-9]+[/⁄][0-9]+|\.[0-9]+|[/⁄][0-9]+| ?[{FRACTION_SIGNS}])?|[{FRACTION_SIGNS}])"
)
_MEASURE: Final = rf"""{_NUMBER}\s*(?:mm\b|cm\b|in\b\.?|["”″]|inch(?:es)?\b)?"""
_SIZE: Final = rf"{_MEASURE}\s*(?:[x×]|by\b)\s*{_MEASURE}"
_SIZED_IMAGE: Final = re.compile(rf"(?P<size>{_SIZE})(?:\s+(?P<words>\S.*))?")
_STACK: Final = re.compile(r"(?P<sheets>[0-9]{1,3})(?:\s+sheets?)?(?:\s+up\s+to\s+(?P<weight>\S.*))?")


def tools_of(one: InventoryFile, settings: Settings, report: Report) -> Iterator[Tool]:
    """The tools that a file defines."""
    for slug, written in one.written.tools.items():
        mark = report.mark()
        tool = _tool(Entry(one, ("tools", slug), report), slug, written, settings.unit)
        if not report.errors_since(mark):
            yield tool


def _tool(entry: Entry, slug: str, written: ToolWritten, unit: Unit) -> Tool:
    measures = (written.longest, written.narrowest, written.kerf, written.grooves, written.plate)
    return Tool(
        slug=slug,
        name=written.name,
        kind=written.kind,
        length_unit=next((unit_named(text) or unit for text in measures if text), unit),
        longest_cut=entry.read("longest", parse_length, written.longest, unit),
        narrowest_strip=entry.read("narrowest", parse_length, written.narrowest, unit),
        kerf=entry.read("kerf", parse_length, written.kerf, unit) or Fraction(0),
        stack=entry.read("stack", read_stack, written.stack) or (),
        grooves=entry.read("grooves", read_grooves, written.grooves, unit) or (),
        plate=entry.read("plate", parse_size, written.plate, unit),
        stroke=entry.read("stroke", parse_seconds, written.stroke),
        images=tuple(_images(entry, written, unit)),
        terms=entry.read("sale", read_terms, written.sale) or NO_TERMS,
        link=entry.read("link", read_link, written.link) or "",
        tie=Tie(written.disclose),
        about=written.about or "",
        place=entry.name_place,
    )


def read_stack(text: str) -> tuple[StackLimit, ...]:
    """``4 up to 120 g/m², 1 up to 300 g/m²``, lightest first. Raises :class:`MeasureError`."""
    limits: list[StackLimit] = []
    for piece in (piece.strip() for piece in text.split(",")):
        found = _STACK.fullmatch(piece)
        if found is None or not int(found["sheets"]):
            raise MeasureError(
                f"“{piece}” does not say how many sheets at once; write for example 4, or 4 up to 120 g/m²"
            )
        weight = parse_grammage(found["weight"]) if found["weight"] else None
        limits.append(StackLimit(int(found["sheets"]), weight))
    limits.sort(key=lambda limit: (limit.up_to is None, limit.up_to or 0))
    for light, heavy in pairwise(limits):
        if light.up_to == heavy.up_to:
            raise MeasureError(f"“{text}” says two numbers for one weight; write one")
        if light.sheets < heavy.sheets:
            raise MeasureError(f"“{text}” takes more sheets of heavier paper at once; check the numbers")
    return tuple(limits)


def read_grooves(text: str, unit: Unit) -> tuple[Fraction, ...]:
    """``1/8 in, 1 cm``: from one groove to the next, for each set. Raises :class:`MeasureError`."""
    return tuple(parse_length(piece, unit) for piece in text.split(","))


def read_image(text: str, unit: Unit, number: int) -> Image:
    """``30 x 8 high water``: the size may be left out, the words may not. Raises :class:`MeasureError`."""
    found = _SIZED_IMAGE.fullmatch(text.strip())
    if found is None:
        if re.match(rf"{_MEASURE}\s*[x×]\s", text.strip()):
            raise MeasureError(
                f"“{text}” begins like a size and is none; write for example 30 x 8 high water"
            )
        return Image(number, None, text.strip())
    if not found["words"]:
        raise MeasureError(f"“{text}” does not say what the image shows; write for example 30 x 8 high water")
    return Image(number, parse_size(found["size"], unit), found["words"])


def image_in_full(text: str, unit: Unit) -> str:
    """The line of an image with the unit of its size: ``30 x 8 mm high water``."""
    found = _SIZED_IMAGE.fullmatch(text.strip())
    return f"{with_unit(found['size'], unit)} {found['words']}" if found else text


def _images(entry: Entry, written: ToolWritten, unit: Unit) -> Iterator[Image]:
    for i, text in enumerate(written.images):
        image = entry.report.read(entry.place("images", i), read_image, text, unit, i + 1)
        if image is not None:
            yield image
