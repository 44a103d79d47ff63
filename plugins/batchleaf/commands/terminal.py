"""What is asked and refused at the terminal."""

from __future__ import annotations

import sys
from typing import Final

FAULTY: Final = 1
"""The exit code where a record is off."""
UNUSABLE: Final = 2
"""The exit code where a command cannot do what was asked."""


def refuse(sentence: str) -> int:
    """Say why nothing is done; returns the exit code for that."""
    print(sentence, file=sys.stderr)
    return UNUSABLE


def nothing_written(why: str) -> int:
    """:func:`refuse` to write, with the reason, which begins with a small letter."""
    return refuse(f"Nothing was written: {why}{'' if why.endswith('?') else '.'}")


def ask(question: str) -> str:
    """What is typed; nothing where nobody types."""
    try:
        return input(question).strip()
    except EOFError:
        return ""


def answer(question: str, given: str | None, usual: str) -> str:
    """What was given with the command, else what is answered to ``question``, else what is usual."""
    if given is None and sys.stdin.isatty():
        given = ask(f"{question} ")
    return (given or "").strip() or usual


def agrees(question: str) -> bool:
    """Only a yes is a yes."""
    return ask(f"{question} (yes or no) ").lower() in ("y", "yes")
