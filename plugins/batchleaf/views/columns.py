"""Rows for a terminal, in columns that stand below one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence


def in_columns(rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> Iterator[str]:
    """Each row as a line; the columns ``right`` end at one place, all others begin at one."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        cells = (
            cell.rjust(width) if at in right else cell.ljust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        yield "  ".join(cells).rstrip()
