"""The sheets that a plan needs, written into the record as if they had been cut.

Only whole lines are added; everything that stands in the record stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from batchleaf.facts import Cut, Supply

AFTER = ("time", "steps", "photos", "was")
"""Keys that usually come after ``cut``."""


class CannotTakeError(ValueError):
    """Why nothing is written, as a sentence."""


def cut_lines(cuts: Iterable[Cut], supplies: dict[str, Supply]) -> tuple[str, ...]:
    """One line under ``cut`` for each supply: ``chalk-card 15 sheets``."""
    return tuple(f"{cut.supply} {_sheets(cut, supplies[cut.supply])}" for cut in cuts)


def _sheets(cut: Cut, supply: Supply) -> str:
    return f"{cut.count} {supply.unit if cut.count == 1 else supply.units}"


def with_cut(record: str, lines: Iterable[str]) -> str:
    """The record with ``lines`` under ``cut``, before the first key that usually follows.

    Raises :class:`CannotTakeError` where the record says already what was cut.
    """
    rows = record.splitlines(keepends=True)
    if any(re.match(r"cut\s*:", row) for row in rows):
        raise CannotTakeError("the record says already what was cut; change it there")
    if rows and not rows[-1].endswith("\n"):
        rows[-1] += "\n"
    end = "\r\n" if rows and rows[0].endswith("\r\n") else "\n"
    at = next((i for i, row in enumerate(rows) if re.match(rf"({'|'.join(AFTER)})\s*:", row)), len(rows))
    block = [f"cut:{end}", *(f"  - {line}{end}" for line in lines)]
    return "".join([*rows[:at], *block, *rows[at:]])
