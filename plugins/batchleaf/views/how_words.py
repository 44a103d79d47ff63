"""How the words of a section are kept: as one text, in paragraphs."""

from __future__ import annotations


def paragraphs(text: str) -> tuple[str, ...]:
    """Parted by blank lines; line ends within one are spaces."""
    return tuple(" ".join(part.split()) for part in text.strip().split("\n\n"))
