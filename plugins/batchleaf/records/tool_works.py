"""Which works a tool does, by the words of its kind (common practice)."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from batchleaf.facts import Tool, WorkKind

_MADE_FOR: Final = {
    "scor": {WorkKind.SCORE},
    "bone folder": {WorkKind.SCORE, WorkKind.FOLD},
    "punch": {WorkKind.PUNCH, WorkKind.ROUND},
    "corner": {WorkKind.ROUND},
    "drill": {WorkKind.PUNCH},
    "awl": {WorkKind.PUNCH},
    "eyelet": {WorkKind.PUNCH},
    "heat": {WorkKind.EMBOSS},
    "emboss": {WorkKind.EMBOSS},
    "stamp": {WorkKind.STAMP},
    "die": {WorkKind.DIE_CUT},
    "press": {WorkKind.DIE_CUT, WorkKind.EMBOSS},
    "brush": {WorkKind.INK},
    "sponge": {WorkKind.INK},
    "brayer": {WorkKind.INK},
    "blend": {WorkKind.INK},
}
"""The beginning of a word in the kind of a tool, and what such a tool is made for."""
_ALSO: Final = {
    "trimmer": {WorkKind.SCORE},
    "knife": {WorkKind.SCORE, WorkKind.ROUND},
    "scissors": {WorkKind.ROUND},
    "die": {WorkKind.EMBOSS},
    "punch": {WorkKind.DIE_CUT},
    "score board": {WorkKind.FOLD},
    "press": {WorkKind.STAMP},
    "stylus": {WorkKind.SCORE, WorkKind.EMBOSS},
    "needle": {WorkKind.PUNCH},
}
"""What a tool does at need, so that it is believed where a record says so, and never supposed."""


def made_for(tool: Tool) -> frozenset[WorkKind]:
    """The works that the tool is there for."""
    return _named(tool.kind, _MADE_FOR)


def may_do(tool: Tool, kind: WorkKind) -> bool:
    """Whether the work may be done with it; of a kind that nobody knows anything is believed."""
    known = made_for(tool) | _named(tool.kind, _ALSO)
    return not known or kind in known


def only_one_for(kind: WorkKind, tools: Iterable[Tool]) -> str:
    """The one tool that is there for the work; nothing where there is none, or several."""
    fitting = [tool.slug for tool in tools if kind in made_for(tool)]
    return fitting[0] if len(fitting) == 1 else ""


def _named(kind: str, table: dict[str, set[WorkKind]]) -> frozenset[WorkKind]:
    words = kind.casefold()
    found = (works for word, works in table.items() if re.search(rf"\b{word}", words))
    return frozenset().union(*found)
