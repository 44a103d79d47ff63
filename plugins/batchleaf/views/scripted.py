"""Data as a script writes them."""

from __future__ import annotations

import json


def as_script(data: object) -> str:
    """An expression of JavaScript; no text of it can end a script that stands in a page."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
