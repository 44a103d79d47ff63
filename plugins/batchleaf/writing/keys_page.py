"""The reference of keys as a page of Markdown, for an archive and for a site alike."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, Final

from batchleaf.records.reference import KeyRow, KeyTable, KindOfRecord, reference
from batchleaf.writing.block import quoted

_OPENING: Final = """\
# Every key

A record is a few lines of `key: value`. Here stands every key that one may have, what it means,
and how it is written. A key that is not needed is left out, never left empty, and the order of
keys is yours. What a word in capitals stands for, like `NAME`, you choose yourself: small letters,
figures and hyphens.

This page is made from what reads your records, so it holds for the Batchleaf that wrote it.
"""
_BELOW: Final = ", and below it "
"""A cell has one line; what is typed on several is told so."""
_HEAD: Final = "| key | means | example |\n| --- | --- | --- |"


def keys_page() -> str:
    """The whole page: the kinds of records, and a table for each thing that has keys."""
    kinds = reference()
    titles = {table.title: _heading(table) for kind in kinds for table in kind.tables}
    found = "\n".join(f"- {_link(kind.tables[0].title, titles)}: `{kind.file}`" for kind in kinds)
    tables = "\n\n".join(_kind(kind, titles) for kind in kinds)
    return f"{_OPENING}\n{found}\n\n{tables}\n"


def _kind(kind: KindOfRecord, titles: dict[str, str]) -> str:
    return "\n\n".join(_table(table, titles, kind.file) for table in kind.tables)


def _table(table: KeyTable, titles: dict[str, str], file: str) -> str:
    level = "###" if table.under else "##"
    lies = "" if table.under else f" It stands in `{file}`."
    lines = [f"{level} {_heading(table)}", f"{table.about}{lies}", *_one_line(table)]
    rows = "\n".join(_row(row, titles) for row in table.rows)
    return "\n\n".join([*lines, f"{_HEAD}\n{rows}"])


def _heading(table: KeyTable) -> str:
    return f"{table.title}, under `{table.under}`" if table.under else table.title


def _one_line(table: KeyTable) -> Iterator[str]:
    if table.one_line:
        yield f"It may be written as one line instead: {_or([_code(one) for one in table.one_line])}."


def _row(row: KeyRow, titles: dict[str, str]) -> str:
    return f"| `{row.key}` | {_meaning(row, titles)} | {_examples(row)} |"


def _meaning(row: KeyRow, titles: dict[str, str]) -> str:
    said = [_escaped(row.meaning)]
    if len(row.choices) > 1:
        said.append(f"It is {_or([_code(choice) for choice in row.choices])}.")
    if row.needed:
        said.append("It must be there.")
    if row.usual:
        said.append(f"If left out, {_code(row.usual)}.")
    if row.below:
        said.append(f"See {_link(row.below, titles)}.")
    return " ".join(said)


def _examples(row: KeyRow) -> str:
    """Each example as it would be typed; what has keys of its own has examples in its own table."""
    shown = [_typed(one) for one in row.examples]
    return _or([one for one in shown if one]) or "–"


def _typed(example: Any) -> str:
    match example:
        case str():
            return _code(quoted(example))
        case list() if all(isinstance(item, str) for item in example):
            return _BELOW.join(_code(f"- {quoted(item)}") for item in example)
        case dict() if all(isinstance(value, str) for value in example.values()):
            return _BELOW.join(_code(f"{quoted(key)}: {quoted(value)}") for key, value in example.items())
    return ""


def _or(said: list[str]) -> str:
    return " or ".join([", ".join(said[:-1]), said[-1]] if len(said) > 1 else said)


def _code(text: str) -> str:
    """Text as it is typed. Readers of Markdown differ about signs that end a cell, so those stand plain."""
    return _escaped(text) if re.search(r"[`|]", text) else f"`{text}`"


def _escaped(text: str) -> str:
    """Plain words, with nothing in them that Markdown or its tables would take for a sign of their own."""
    return re.sub(r"([\\`*_\[\]<>|#])", r"\\\1", " ".join(text.split()))


def _link(title: str, titles: dict[str, str]) -> str:
    """A link to a table, by the anchor that Markdown gives to its heading."""
    anchor = re.sub(r"\s+", "-", re.sub(r"[^\w\s-]", "", titles[title]).strip().lower())
    return f"[{title}](#{anchor})"
