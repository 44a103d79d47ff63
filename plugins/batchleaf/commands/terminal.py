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


def ask(question: str) -> str:
    """What is typed; nothing where nobody types."""
    try:
        return input(question).strip()
    except EOFError:
        return ""


def somebody_types() -> bool:
    """Is there anyone to be asked?"""
    return sys.stdin.isatty()


def agrees(question: str) -> bool:
    """Only a yes is a yes."""
    return ask(f"{question} (yes or no) ").lower() in ("y", "yes")
