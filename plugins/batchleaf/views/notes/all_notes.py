"""The companion notes of all batches, at their addresses."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.figures import Figures
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Companion
from batchleaf.views.masthead import Masthead
from batchleaf.views.notes.sheet import hand_out_sheets, has_notes, notes_sheets
from batchleaf.views.pages import NotesSheet


def all_notes(
    figures: Figures, hand_outs: Figures | None, masthead: Masthead, remembered: Remembering = afresh
) -> Iterator[tuple[str, NotesSheet]]:
    """Those that are for everybody, beside the pages of their batches; then those that are handed out.

    Each in the unit of its record and in the other one.
    """
    for batch in figures.batches.values():
        if batch.project.companion is Companion.PUBLIC and has_notes(batch.project):
            yield from notes_sheets(batch, figures, masthead, remembered)
    if hand_outs is None:
        return
    for batch in hand_outs.batches.values():
        if has_notes(batch.project):
            yield from hand_out_sheets(batch, hand_outs, masthead, remembered)
