"""Formats of records: which one is the newest, and which keys earlier ones had.

A record that names no format is in the first.
"""

from __future__ import annotations

import re
from typing import Final

from batchleaf.records.nodes import Node, Path, Scalar, child

FIRST: Final = 1
LATEST: Final = 1
_RETIRED: Final = {("supplies", "turn")}
"""Keys that a later format has no more: the group of a record, and the key below a name in it."""


def format_of(record: Node) -> int | None:
    """The format that a record says it is in; ``None`` where what it says is no number."""
    said = child(record, "format")
    if said is None:
        return FIRST
    number = said.text.strip() if isinstance(said, Scalar) else ""
    return int(number) if re.fullmatch(r"[1-9][0-9]{0,3}", number) else None


def wrong_format(said: str) -> str:
    """What is told of a format that is not the one that is read."""
    if re.fullmatch(r"[1-9][0-9]{0,3}", said) and int(said) > LATEST:
        return (
            f"this record is in format {said}, so it was written for a later Batchleaf; this one reads"
            f" format {LATEST}, and a newer one will read both"
        )
    return f"“{said or '?'}” is no format of a record; write {LATEST}, or leave the line out"


def is_retired(path: Path) -> bool:
    """Whether an earlier format had the key at ``path``."""
    return len(path) == 3 and (path[0], path[2]) in _RETIRED
