"""Signs that nobody sees."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.signs import on_one_line, unclosed_turn, with_turns_shown, without_turns

TURNS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("plain", ""),
        ("abc \u202e def", "\u202e"),
        ("abc \u202d def\u202c ghi", ""),
        ("\u2068A name\u2069 from a phone", ""),
        ("\u2067\u202eboth\u202c\u2069", ""),
        ("\u2067\u202ecrossed\u2069\u202c", "\u2069"),
        ("ends \u2069 what began elsewhere", "\u2069"),
        ("marks \u200e\u200f, joiners \u200d\u200c and letters שלום", ""),
    ],
)
def test_a_turn_ends_where_its_text_does(text: str, sign: str) -> None:
    """Unicode UAX #9: an embedding or override ends at U+202C, an isolate at U+2069."""
    assert unclosed_turn(text) == sign


@given(st.text(alphabet=st.one_of(st.sampled_from(TURNS), st.characters())))
def test_what_is_shown_turns_nothing(text: str) -> None:
    """As long as it was, on one line, without a control or a turn; and there is none to close any more."""
    shown = on_one_line(text)
    assert len(shown) == len(text) == len(with_turns_shown(text))
    assert shown.splitlines() in ([], [shown])
    assert not {unicodedata.category(sign) for sign in shown} & {"Cc", "Cs", "Zl", "Zp"}
    for cleaned in (shown, with_turns_shown(text), without_turns(text)):
        assert unclosed_turn(cleaned) == ""
        assert not set(cleaned) & set(TURNS)


def test_turns_are_those_of_unicode() -> None:
    """Its own table of bidirectional classes names the same nine."""
    explicit = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    assert {chr(n) for n in range(0x110000) if unicodedata.bidirectional(chr(n)) in explicit} == set(TURNS)
