"""The companion notes to HTML: a document of its own that needs no other file."""

from __future__ import annotations

from batchleaf.render.html import ENVIRONMENT
from batchleaf.views.pages import NotesSheet


def notes_html(sheet: NotesSheet) -> str:
    """The whole document, with its style sheet in it, so that it can be handed on as one file."""
    return ENVIRONMENT.get_template("notes/sheet.html").render(sheet=sheet)
