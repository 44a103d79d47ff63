"""What a batch page says of bench work: works in order, under the tool that is taken in hand."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class WorkRow:
    """One work on its parts. ``at_once``: how many under the tool; ``wait``: what is waited for then."""

    work: str
    parts: str
    details: tuple[str, ...]
    pieces: str
    at_once: str
    strokes: str
    wait: str


@dataclass(frozen=True, slots=True)
class ToolInHand:
    """Works that follow one another with one tool; ``when``: before, between or after the cuts."""

    tool: Line
    when: str
    rows: tuple[WorkRow, ...]


@dataclass(frozen=True, slots=True)
class BenchView:
    """Sentences above, the works, and what is said beside them; ``waits``: whether any work is waited for."""

    sentences: tuple[str, ...]
    runs: tuple[ToolInHand, ...]
    waits: bool
    notes: tuple[str, ...]
    csv: Link | None
