"""Colours that were picked from a photo, written into the record of a supply."""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Sequence
from typing import Final

from batchleaf.measure.colours import Colour
from batchleaf.records.nodes import Mapping
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.edits import Put, edited

COLOUR: Final = "colour"


def picked_value(colours: Sequence[Colour]) -> str:
    """``about #b9c4a0 #7c8a5b``: what is picked is never exact."""
    return " ".join(["about", *map(str, colours)])


def with_colour(record: bytes, supply: str, value: str) -> bytes:
    """A sound file of the drawer, with ``value`` as the colour of one of its supplies that has none."""
    mark = BOM_UTF8 if record.startswith(BOM_UTF8) else b""
    root, _ = read_yaml(record, "")
    if not isinstance(root, Mapping):
        raise TypeError(f"{supply} stands in no file that can be read")
    text = record.removeprefix(mark).decode()
    return mark + edited(text, root, [Put(("supplies", supply), COLOUR, value)]).encode()
