"""Signs that nobody sees: those that a terminal obeys, and those that turn the direction of a text."""

from __future__ import annotations

import re
from typing import Final

_UNSEEN: Final = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
"""Controls, ends of lines, turns, and halves of letters, which names of files may hold."""
_CLOSED_BY: Final = {
    **dict.fromkeys("\u202a\u202b\u202d\u202e", "\u202c"),
    **dict.fromkeys("\u2066\u2067\u2068", "\u2069"),
}
"""Unicode UAX #9, sections 2.1 to 2.5: each reaches as far as its end, or that of the paragraph."""
_TURNS: Final = re.compile("[\u202a-\u202e\u2066-\u2069]")


def on_one_line(text: str) -> str:
    """The text as it may be shown anywhere, on a line of its own."""
    return _UNSEEN.sub("\ufffd", text)


def unclosed_turn(text: str) -> str:
    """The first sign that turns what follows the text as well, or closes what it did not open."""
    open_ones: list[str] = []
    for sign in _TURNS.findall(text):
        if sign in _CLOSED_BY:
            open_ones.append(sign)
        elif open_ones and _CLOSED_BY[open_ones[-1]] == sign:
            open_ones.pop()
        else:
            return str(sign)
    return open_ones[0] if open_ones else ""


def without_turns(text: str) -> str:
    """The text without signs that turn its direction."""
    return _TURNS.sub("", text)


def with_turns_shown(text: str) -> str:
    """The text with a mark for each sign that turns its direction: a caret below it points aright."""
    return _TURNS.sub("\ufffd", text)
