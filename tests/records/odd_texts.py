"""Short texts of every kind: as the records' grammar has them, thrown together, and hostile."""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Protocol, TypeVar

from hypothesis import strategies as st

from batchleaf.measure.lengths import FRACTION_SIGNS
from records.seeds import texts_under, words

T = TypeVar("T")


class Draw(Protocol):
    """What a composite strategy is handed."""

    def __call__(self, strategy: st.SearchStrategy[T], /) -> T: ...


SIGNS: Final = [
    *("x", "×", "by", "of", "kept", "each", "in all", "as C", "scraps of", "scrap", "worth", "unknown", "-"),
    *("B", "C 2", "mm", "cm", "in", "m", "g/m²", "h", "min", "0", "1", "2", "12", "99999", "100000", "1/8"),
    *("--", ",", ",,", ".", ":", "/", "⁄", "#", "€", "%", "(", "yes", "no", "2026-02-29", "#c3d6cf", "1:05"),
    *("1 4 7", "1-3", "½", "12½", "0.2", ".5", "5.", "3 1/2", "1/0", "0/1", "00012", "+4", "-4", "4,5"),
    *("1,000.50", "from", "in", '"', "”", "''", *FRACTION_SIGNS),
]
"""What the short lines of records are made of, beside the words of the seeds."""
HOSTILE: Final = [
    *("\u202eevil", "a\u2066b", "\u200b", "\u200d\u200d", "\ufeff", "\u0301", "e\u0301\u0301\u0301"),
    *("👩\u200d👩\u200d👧", "\U0001f3fb", "\x00", "\x07", "\x1b[31mred", "\x1c", "\x1f x", "\x7f", "\x85"),
    *("\ufffe", "\u2028", "\u2029", "a\nb", "a\r\n\r\nb", "\t", "9" * 400, "1" * 401, "a" * 399, "a" * 4001),
    *("a-" * 60, "1e999", "0x1F", "١٢", "²", "Ⅷ", "１２", "𝟏", "∞", "NaN", "[key]", "-", "~", "null"),
    *("true", "__init__", "{}", "[]", "{{ x }}", "<b>", "&amp;", "%s", "\\", "'", '"', "…", "con", "nul"),
    *("../x", "..", "/", "a/b", "C:\\x", "İ", "ß", "ǅ", "ﬁ", "\U0010ffff", "\ue000", "\u3000x\u3000", "\xa0"),
]
"""What nobody writes on purpose."""


def as_often(*strategies: st.SearchStrategy[T]) -> st.SearchStrategy[T]:
    """One of them, each as often as it is named; :func:`~hypothesis.strategies.one_of` forgets repeats."""
    return st.sampled_from(strategies).flatmap(lambda chosen: chosen)


@cache
def soup() -> st.SearchStrategy[str]:
    """Words of the records' own short lines, thrown together."""
    tokens = st.lists(st.sampled_from([*words(), *SIGNS]), min_size=1, max_size=8)
    return st.builds(str.join, st.sampled_from([" ", " ", " ", ", ", "", "\u00a0", "-"]), tokens)


@cache
def hostile() -> st.SearchStrategy[str]:
    """What nobody writes on purpose, alone and around a sound text."""
    odd = as_often(st.sampled_from(HOSTILE), st.sampled_from(HOSTILE), st.text(max_size=12))
    around = st.builds("{}{}".format, odd, soup()) | st.builds("{} {}".format, soup(), odd)
    return as_often(odd, odd, around)


@cache
def short_texts() -> st.SearchStrategy[str]:
    """Any of them."""
    return st.sampled_from(["", *texts_under()[""]]) | soup() | hostile()


FIGURES: Final = ["1/3", "1/64", "1/97", "0.5", "0.001", "12.345678", "600", "99999"]
"""Short and long, fine and coarse."""


def edited(text: str) -> st.SearchStrategy[str]:
    """A text with another number in the place of one, or another word where it has none."""
    pieces = re.split(r"([0-9]+)", text)
    others = st.integers(0, 13).map(str) | st.sampled_from(FIGURES)
    if len(pieces) == 1:
        pieces, others = re.split(r"([^\W\d]+)", text), st.sampled_from(words())
    if len(pieces) == 1:
        return soup()

    def with_another(at: int, other: str) -> str:
        at = 2 * (at % (len(pieces) // 2)) + 1
        return "".join([*pieces[:at], other, *pieces[at + 1 :]])

    return st.builds(with_another, st.integers(0, 5), others)
