"""Where a part comes from, as written.

``shoal-pad 1 4 7, chalk-card`` · ``any 6 of shoal-pad`` · ``scraps of water``
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.measure.errors import MeasureError

_ANY: Final = re.compile(r"any\s+(?P<count>[0-9]{1,3})\s+(?:of|from)\s+(?P<name>\S.*)")
_BY_HAND: Final = re.compile(r"scraps? of\s+")
_NUMBER: Final = re.compile(r"[0-9]{1,4}")


@dataclass(frozen=True, slots=True)
class NamedPapers:
    """A supply, and the numbers that are picked of it where it is a set of several."""

    name: str
    numbers: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class SourceLine:
    """What a text says of papers: names between commas, each a role or what :func:`read_named` takes."""

    names: tuple[str, ...]
    any_of: int = 0
    by_hand: bool = False


def read_source(text: str) -> SourceLine:
    """The names in ``text``, and what stands before them. Raises :class:`MeasureError`."""
    by_hand = _BY_HAND.match(text)
    rest = text[by_hand.end() :] if by_hand else text
    if found := _ANY.fullmatch(rest):
        any_of, rest = int(found["count"]), found["name"]
        if not any_of or "," in rest:
            raise _no_choice(text)
    elif re.match(r"any\s", rest):
        raise _no_choice(text)
    else:
        any_of = 0
    names = tuple(_between_commas(rest))
    if not names or re.fullmatch(r"scraps? of", rest):
        raise MeasureError(f"“{text}” names no paper; write a supply, like oat-card")
    if backwards := next((name for name in names if re.match(r"[0-9]+\s", name)), ""):
        raise MeasureError(f"“{backwards}” begins with a number; name the paper first, like shoal-pad 4")
    return SourceLine(names, any_of, by_hand=bool(by_hand))


def _no_choice(text: str) -> MeasureError:
    return MeasureError(
        f"“{text}” does not say how many papers of which pad; write for example any 6 of shoal-pad"
    )


def _between_commas(text: str) -> Iterator[str]:
    """The pieces between commas; numbers alone belong to the piece before: ``shoal-pad 1, 4``."""
    pieces: list[str] = []
    for piece in (piece.strip() for piece in text.split(",")):
        if pieces and piece and all(_NUMBER.fullmatch(word) for word in piece.split()):
            pieces[-1] += f" {piece}"
        elif piece:
            pieces.append(piece)
    yield from pieces


def read_named(text: str) -> tuple[NamedPapers, ...]:
    """``shoal-pad 1 4 chalk-card``: each name with the numbers behind it."""
    named: list[NamedPapers] = []
    for word in text.split():
        if named and _NUMBER.fullmatch(word):
            last = named.pop()
            named.append(NamedPapers(last.name, (*last.numbers, int(word))))
        else:
            named.append(NamedPapers(word))
    return tuple(named)
