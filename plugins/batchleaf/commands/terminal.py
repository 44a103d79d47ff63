"""What is asked and refused at the terminal."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
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


class GaveUpError(Exception):
    """Nobody answers any more."""


class WrongAnswersError(ValueError):
    """What is wrong with the answers that came with a command."""

    def __init__(self, sentences: Sequence[str]) -> None:
        super().__init__("\n".join(sentences))


Said = Mapping[str, str]
"""Question → answer."""


@dataclass(frozen=True, slots=True)
class Question:
    """Something to be asked; ``given``: what was answered with the command already.

    ``wrong`` looks at this answer and those before it, and says in sentences why it cannot be taken.
    ``usual``: what an empty answer means; an answer is needed where that is nothing.
    """

    name: str
    text: str
    given: str | None
    wrong: Callable[[Said], Sequence[str]]
    usual: str | None = None

    def meant(self, answer: str | None) -> str:
        """What an answer means; empty where it means nothing."""
        return (answer or "").strip() or self.usual or ""

    def told(self, answer: str | None, before: Said) -> Sequence[str]:
        """What is wrong with an answer."""
        text = self.meant(answer)
        if text:
            return self.wrong({**before, self.name: text})
        if self.usual is not None:
            return ()
        return ("an answer is needed here" if at_terminal() else f"--{self.name} is missing",)


def at_terminal() -> bool:
    """Whether somebody is there to be asked."""
    return sys.stdin.isatty()


def answers(questions: Iterable[Question], before: Said) -> dict[str, str]:
    """All answers: at a terminal each is asked for until it can be taken.

    Raises :class:`WrongAnswersError` with everything that is wrong where nobody can be asked,
    and :class:`GaveUpError`.
    """
    said, wrong = dict(before), list[str]()
    for question in questions:
        answer = ask(question.text) if question.given is None and at_terminal() else question.given
        sentences = question.told(answer, said)
        while sentences and at_terminal():
            print(*sentences, sep="\n")
            answer = ask(question.text)
            sentences = question.told(answer, said)
        wrong += sentences
        if not sentences:
            said[question.name] = question.meant(answer)
    if wrong:
        raise WrongAnswersError(wrong)
    return said


def ask(question: str) -> str:
    """What is typed. Raises :class:`GaveUpError` where nobody types, or breaks it off."""
    try:
        return input(f"{question} ").strip()
    except (EOFError, KeyboardInterrupt):
        print()
        raise GaveUpError from None


def agrees(question: str) -> bool:
    """Only a yes is a yes."""
    try:
        return ask(f"{question} (yes or no)").lower() in ("y", "yes")
    except GaveUpError:
        return False
