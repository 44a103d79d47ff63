"""A text as a value of a record."""

from __future__ import annotations

import re
from typing import Final

_MEANS_MORE: Final = re.compile(r"^[\W_]|:( |$)| #")
"""A sign at the start, a colon before a space or the end, a remark."""
_NO_TEXT: Final = ("null", "true", "false")
"""Words that an editor takes for something else than text."""


def quoted(text: str) -> str:
    """The text as one YAML value, in quotes only where it would mean something else without."""
    line = " ".join(text.split())
    if line and line == text and not _MEANS_MORE.search(line) and line.lower() not in _NO_TEXT:
        return line
    return "'" + line.replace("'", "''") + "'"
