"""Problems found while reading; one bad value does not stop the rest from being read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Set
from dataclasses import replace
from typing import ParamSpec, TypeVar

from batchleaf.facts import Place, Problem, Weight
from batchleaf.measure.errors import MeasureError

P = ParamSpec("P")
T = TypeVar("T")


class Report:
    """Collects problems in the order they are met."""

    def __init__(self) -> None:
        self.found: list[Problem] = []

    def error(self, place: Place, sentence: str) -> None:
        """A reason why the record cannot be read as meant."""
        self.take([Problem(place, sentence)])

    def notice(self, place: Place, sentence: str, paste: str = "") -> None:
        """Something the maker may want to know, with lines that would mend it."""
        self.take([Problem(place, sentence, Weight.NOTICE, paste=paste)])

    def take(self, problems: Iterable[Problem]) -> None:
        """Problems as they are told, each on one line."""
        self.found += (replace(one, sentence=_on_one_line(one.sentence)) for one in problems)

    def read(self, place: Place, reader: Callable[P, T], *args: P.args, **named: P.kwargs) -> T | None:
        """What ``reader`` returns, or ``None`` and a problem at ``place``."""
        try:
            return reader(*args, **named)
        except MeasureError as error:
            self.error(place, str(error))
            return None

    def forget_repeats(self, mark: int, told: Set[Place]) -> None:
        """Drop what was found after ``mark`` at places of which something was told already."""
        self.found[mark:] = [problem for problem in self.found[mark:] if problem.place not in told]

    def reword(self, mark: int, told: Callable[[str], str]) -> None:
        """Say what was found after ``mark`` in other words."""
        self.found[mark:] = [replace(one, sentence=told(one.sentence)) for one in self.found[mark:]]

    def mark(self) -> int:
        """A point in the reading, for :meth:`errors_since`."""
        return len(self.found)

    def errors_since(self, mark: int) -> bool:
        """True if anything that weighs as an error was found after ``mark``."""
        return any(problem.weight is Weight.ERROR for problem in self.found[mark:])


def _on_one_line(sentence: str) -> str:
    """A quoted value may run over several lines, a sentence does not; spaces that do not break stay."""
    return re.sub(r"(?:[^\S\u00a0\u202f]|[\x00-\x1f\x7f-\x9f])+", " ", sentence)
