"""Values as YAML that a maker would write: no quotes where none are needed, two spaces a level."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from batchleaf.records.nodes import Plain

_NO_TEXT: Final = ("null", "true", "false")
"""Words that an editor takes for something else than text (YAML 1.2, chapter 10.3.2)."""


def quoted(text: str) -> str:
    """The text as one YAML value, in quotes only where it would mean something else without."""
    if not text.isprintable():
        return in_quotes(text)
    plain = re.fullmatch(r"[^\W_](?:[^:#]|:(?=\S)|(?<=\S)#)*(?<!\s)", text)
    if plain and text.lower() not in _NO_TEXT:
        return text
    return "'" + text.replace("'", "''") + "'"


def in_quotes(text: str) -> str:
    """The text in double quotes, with whatever cannot be seen spelt by its number."""
    spelt = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + "".join(c if c.isprintable() else f"\\U{ord(c):08x}" for c in spelt) + '"'


def entry(key: str, value: Plain, indent: int) -> list[str]:
    """The lines of ``key: value``, indented by ``indent`` spaces."""
    head = f"{' ' * indent}{quoted(key)}:"
    if isinstance(value, str):
        return [f"{head} {quoted(value)}"]
    return [head, *_below(value, indent + 2)] if value else [f"{head} {in_braces(value)}"]


def group_item(keys: dict[str, Plain], indent: int) -> list[str]:
    """The lines of keys that are one item of a list, each on lines of its own behind one dash."""
    lines = [line for key, value in keys.items() for line in entry(key, value, indent + 2)]
    return [f"{' ' * indent}- {lines[0].strip()}", *lines[1:]]


def _below(value: Plain, indent: int) -> Iterator[str]:
    if isinstance(value, dict):
        for key, one in value.items():
            yield from entry(key, one, indent)
    elif isinstance(value, list):
        yield from (f"{' ' * indent}- {_item(one)}" for one in value)


def _item(value: Plain) -> str:
    return quoted(value) if isinstance(value, str) else in_braces(value)


def in_braces(value: Plain) -> str:
    """The value on one line, for a place inside brackets or braces."""
    if isinstance(value, str):
        return in_quotes(value)
    if isinstance(value, dict):
        return "{" + ", ".join(f"{in_braces(key)}: {in_braces(one)}" for key, one in value.items()) + "}"
    return "[" + ", ".join(in_braces(one) for one in value) + "]"
