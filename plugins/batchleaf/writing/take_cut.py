"""The sheets that a plan needs, written into the record as if they had been cut.

Only whole lines are added; everything that stands in the record stays as it is.
"""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Iterable
from typing import Final

from batchleaf.facts import Cut, Supply
from batchleaf.records.kinds import KINDS, keys_of
from batchleaf.records.nodes import Plain
from batchleaf.writing.block import entry
from batchleaf.writing.record_lines import CannotPartError, RecordLines, record_lines

CUT: Final = "cut"


class CannotTakeError(ValueError):
    """Why nothing is written, as a sentence."""


def cut_lines(cuts: Iterable[Cut], supplies: dict[str, Supply]) -> tuple[str, ...]:
    """One line under ``cut`` for each supply: ``chalk-card 15 sheets``."""
    return tuple(f"{cut.supply} {_sheets(cut, supplies[cut.supply])}" for cut in cuts)


def _sheets(cut: Cut, supply: Supply) -> str:
    return f"{cut.count} {supply.unit if cut.count == 1 else supply.units}"


def with_cut(record: bytes, lines: tuple[str, ...]) -> bytes:
    """The record with ``lines`` under ``cut``, behind the last of the keys that usually come before it.

    Raises :class:`CannotTakeError` where the record says already what was cut, or cannot be added to.
    """
    try:
        old = record_lines(record)
    except CannotPartError as error:
        raise CannotTakeError(str(error)) from None
    if CUT in old.values:
        raise CannotTakeError("the record says already what was cut; change it there")
    mark = BOM_UTF8 if record.startswith(BOM_UTF8) else b""
    return _checked(mark + _added(old, lines).encode(), {**old.values, CUT: list(lines)})


def _added(old: RecordLines, lines: tuple[str, ...]) -> str:
    order = [key.name for key in keys_of(KINDS["project"].model)]
    before = order[: order.index(CUT)]
    behind = 1 + max((i for i, one in enumerate(old.keys) if one.key in before), default=-1)
    rows = [*old.head, *(row for one in old.keys[:behind] for row in (*one.above, *one.lines))]
    rest = [*(row for one in old.keys[behind:] for row in (*one.above, *one.lines)), *old.tail]
    line_end = "\r\n" if "\r\n" in old.text else "\n"
    if rows and not rows[-1].endswith(("\n", "\r")):
        rows[-1] += line_end
    return "".join([*rows, *(f"{line}{line_end}" for line in entry(CUT, list(lines), 0)), *rest])


def _checked(record: bytes, values: dict[str, Plain]) -> bytes:
    """The record, if it says what it said before and the new lines: a value may run on into them."""
    try:
        if record_lines(record).values == values:
            return record
    except CannotPartError:
        pass
    raise CannotTakeError("the lines do not fit between those that are there; write them yourself")
