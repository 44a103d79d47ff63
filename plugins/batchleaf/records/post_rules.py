"""The rules of post offices, as the files in ``post/`` have them: dated data that come with the program.

Each file says its edition, its source and the rules in a sentence each. A newer edition is
a change of the file, not of the code.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any, Final

from batchleaf.facts.postage import NO_LIMITS, Dearer, Limits, Post, PostKind
from batchleaf.measure.lengths import Unit, parse_length, parse_number
from batchleaf.measure.mass import parse_mass
from batchleaf.measure.thickness import parse_thickness

Table = Mapping[str, Any]
POSTS: Final = ("usps", "royal-mail", "upu-classes", "upu-formats")
"""The files in the order in which pages tell of them."""


@cache
def known_posts() -> tuple[Post, ...]:
    """All posts. A faulty file raises: it is no record of the maker."""
    folder = files("batchleaf.records").joinpath("post")
    return tuple(post_in(folder.joinpath(f"{name}.toml").read_text(encoding="utf-8")) for name in POSTS)


def post_in(text: str) -> Post:
    """The post of one file. Raises :class:`KeyError` or :class:`MeasureError` where it is faulty."""
    table = tomllib.loads(text)
    return Post(
        name=table["post"],
        title=table["title"],
        unit=Unit(table["unit"]),
        edition=table["edition"],
        source=table["source"],
        says=tuple(table["says"]),
        kinds=tuple(_kind(one) for one in table["kinds"]),
        beyond=table["beyond"],
        least=_limits(table.get("least")),
        smaller_above=_length(table["smaller_above"]) if "smaller_above" in table else None,
    )


def _kind(table: Table) -> PostKind:
    dearer = table.get("dearer")
    return PostKind(
        name=table["name"],
        told=table["told"],
        most=_limits(table["most"]),
        least=_limits(table.get("least")),
        dearer=_dearer(dearer) if dearer else None,
    )


def _dearer(table: Table) -> Dearer:
    return Dearer(
        name=table["name"],
        told=table["told"],
        least=_limits(table.get("least")),
        most=_limits(table.get("most")),
        thin=_limits(table.get("thin")),
        uneven=table["uneven"],
        unseen=table["unseen"],
    )


def _limits(table: Table | None) -> Limits:
    if table is None:
        return NO_LIMITS
    readers = {
        "length": _length,
        "height": _length,
        "thickness": parse_thickness,
        "weight": parse_mass,
        "ratio": parse_number,
    }
    return Limits(**{key: readers[key](text) for key, text in table.items()})


def _length(text: str) -> Fraction:
    return parse_length(text, Unit.MM)
