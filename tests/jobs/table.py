"""Cuts an answer again from its JSON alone, as somebody at a table would: no code of the planner."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

Rect = tuple[Fraction, Fraction, Fraction, Fraction]
Json = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Rules:
    """Sizes in the job's unit: sheet id → size, part id → size; ``fixed`` parts may not be turned."""

    sheets: Mapping[str, tuple[Fraction, Fraction]]
    parts: Mapping[str, tuple[Fraction, Fraction]]
    fixed: frozenset[str] = frozenset()
    kerf: Fraction = Fraction(0)


def rect(given: Mapping[str, str]) -> Rect:
    """A rectangle as the JSON spells it."""
    x, y, w, h = (Fraction(given[side]) for side in "xywh")
    return x, y, w, h


def cut_again(plan: Json, rules: Rules) -> Counter[str]:
    """Make every cut of one sheet plan; the parts that lie there in the end, counted.

    Asserts that each cut goes through a piece in hand from edge to edge, and that all that is
    left on the table is the parts and the leftovers, each of its size.
    """
    width, height = rules.sheets[plan["sheet"]]
    table = Counter({(Fraction(0), Fraction(0), width, height): 1})
    assert [cut["n"] for cut in plan["cuts"]] == list(range(1, len(plan["cuts"]) + 1))
    parts = Counter(rect(part) for part in plan["parts"])
    for cut in plan["cuts"]:
        piece = x, y, w, h = rect(dict(zip("xywh", cut["piece"], strict=True)))
        assert table[piece] == 1, "a piece in hand"
        table[piece] -= 1
        at, setting = Fraction(cut["at"]), Fraction(cut["setting"])
        if cut["along"] == "x":
            assert 0 < setting < w
            assert at == x + setting
            rest = max(Fraction(0), w - setting - rules.kerf)
            halves = ((x, y, setting, h), (x + w - rest, y, rest, h))
        else:
            assert 0 < setting < h
            assert at == y + setting
            rest = max(Fraction(0), h - setting - rules.kerf)
            halves = ((x, y, w, setting), (x, y + h - rest, w, rest))
        table.update(half for half in halves if half[2] and half[3])
        first, second = (any(_inside(part, half) for part in parts) for half in halves)
        assert first or second
        assert cut["keep"] == ("both" if first and second else "first" if first else "second")
    assert +table == parts + Counter(rect(left) for left in plan["left"])
    for part in plan["parts"]:
        _, _, w, h = rect(part)
        size = rules.parts[part["part"]]
        assert (w, h) == size or ((h, w) == size and part["part"] not in rules.fixed)
    return Counter(part["part"] for part in plan["parts"])


def _inside(part: Rect, piece: Rect) -> bool:
    return (
        piece[0] <= part[0]
        and piece[1] <= part[1]
        and part[0] + part[2] <= piece[0] + piece[2]
        and part[1] + part[3] <= piece[1] + piece[3]
    )
