"""The short lines of the drawer, read a second time: supplies, amounts, sizes of odd pieces.

For the sum that the pages are held against. It reads what the demo has, by the README and the
page of keys, and shares no code with what makes the pages; anything else fails the test.
"""

from __future__ import annotations

import re
from fractions import Fraction
from math import ceil
from typing import Any, Final, NamedTuple

MM: Final = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000), "in": Fraction("25.4")}
LEVELS: Final = {"full": Fraction(1), "half": Fraction(1, 2), "low": Fraction(1, 4), "empty": Fraction(0)}
N: Final = r"\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
Size = tuple[Fraction, Fraction]


def matched(pattern: str, text: str) -> tuple[str, ...]:
    """The groups of a line, empty where one is left out; a line that is written otherwise fails."""
    found = re.fullmatch(pattern, text)
    assert found, f"“{text}” is no line that the sum can read"
    return tuple(group or "" for group in found.groups())


def number(text: str) -> Fraction:
    """``4 1/4``, ``1/2``, ``4.25``, ``3``."""
    matched(N, text)
    return sum(map(Fraction, text.split()), Fraction(0))


def measures(text: str, unit: str) -> Size:
    """``4 x 8 1/2`` in the unit of the record, or ``60 x 210 mm``; in mm."""
    width, height, own = matched(rf"({N}) x ({N})(?: (mm|cm|in))?", text)
    return number(width) * MM[own or unit], number(height) * MM[own or unit]


class Supply(NamedTuple):
    """``words``: how much one sheet, pack or metre is in its own unit; ``pad``: whose paper it is."""

    words: dict[str, Fraction]
    directed: bool
    sticks: str
    papers: tuple[str, ...] = ()
    pad: str = ""

    def amount(self, text: str) -> Fraction:
        """``33 m``, ``1 pack``, ``26``; of what is kept by level ``half``, ``2 and half``."""
        read = [matched(rf"({N})(?: (\w+))?|({'|'.join(LEVELS)})", one) for one in text.split(" and ")]
        each = (LEVELS[level] if level else number(n) * self.words[word] for n, word, level in read)
        return sum(each, Fraction(0))

    def piece(self, size: Size) -> Size:
        """The same either way round, unless the paper has a direction."""
        return size if self.directed else (min(size), max(size))

    def pieces(self, text: str, unit: str) -> tuple[Size, Fraction]:
        """``2 of 60 x 60``; one of them: ``60 x 60``."""
        count, size = matched(r"(?:(\d+) of )?(.+)", text)
        return self.piece(measures(size, unit)), Fraction(count or 1)

    def moved(self, text: str, unit: str) -> tuple[Size | None, Fraction]:
        """``4 sheets``, or ``scrap 4 x 9``, ``2 scraps 60 x 210``: the size of odd pieces, and how many."""
        scraps = re.fullmatch(r"(?:(\d+) )?scraps? (.+)", text)
        return self.pieces(f"{scraps[1] or 1} of {scraps[2]}", unit) if scraps else (None, self.amount(text))

    def sticking(self, part: Size) -> Fraction:
        """How much of it sticks one part: strips along both long sides, or at least so many."""
        if self.sticks == "two long sides":
            return 2 * max(part) * self.words["mm"]
        count, area, least = matched(r"(\d+) per (.+), at least (\d+)", self.sticks)
        width, height = measures(area, "mm")
        return Fraction(max(ceil(int(count) * part[0] * part[1] / (width * height)), int(least)))


def supply(said: dict[str, Any]) -> Supply:
    """A supply as the drawer describes it."""
    one, several = matched(r"(\w+)(?:, (\w+))?", said.get("unit", "sheet" if "size" in said else "piece"))
    words = {"": Fraction(1), one: Fraction(1), several or f"{one}s": Fraction(1)}
    if one in MM:
        words |= {word: length / MM[one] for word, length in MM.items()}
    if "pack" in said:
        words |= dict.fromkeys(("pack", "packs"), Fraction(said["pack"]))
    if "designs" in said:
        papers, copies = matched(r"(\d+) x (\d+)", said["designs"])
        words |= dict.fromkeys(("pad", "pads"), Fraction(papers) * Fraction(copies))
    faces = f"{said.get('front')}, {said.get('back')}".split(", ")
    return Supply(words, bool({"one-way", "two-way"} & set(faces)), said.get("sticks", ""))
