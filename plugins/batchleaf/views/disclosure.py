"""What ties the maker to sellers: a word beside each thing, and a sentence before the first of them.

Near the link and before it, in plain words: US 16 CFR 255.5; UK CAP Code 2.1 and 2.3.
"""

from __future__ import annotations

from collections.abc import Iterable

from batchleaf.facts import Settings, Supply, Tie, Tool


def tie_of(thing: Supply | Tool) -> str:
    """``paid`` or ``gifted``; nothing where there is no tie."""
    return "" if thing.tie is Tie.NONE else thing.tie.value


def told_by_name(thing: Supply | Tool) -> str:
    """Its name with the tie behind it: ``bramble paper (paid)``."""
    tie = tie_of(thing)
    return f"{thing.name} ({tie})" if tie else thing.name


def disclosure_for(things: Iterable[Supply | Tool], settings: Settings) -> str:
    """The sentence for a page that names these things; nothing where none has a tie."""
    return settings.disclosure if any(map(tie_of, things)) else ""
