"""What may be sold, in words."""

from __future__ import annotations

from batchleaf.facts import NO_TERMS, Sale, Terms
from batchleaf.views.words import long_date


def terms_in_words(terms: Terms) -> str:
    """``handmade only (printed on the packet, 12 January 2026)``; nothing where nothing is said."""
    if terms == NO_TERMS:
        return ""
    source = [terms.source, *([long_date(terms.date)] if terms.date else [])]
    said = ", ".join(filter(None, source))
    return f"{_SALE[terms.sale]} ({said})" if said else _SALE[terms.sale]


_SALE = {
    Sale.YES: "yes",
    Sale.HANDMADE: "handmade only",
    Sale.NO: "no",
    Sale.UNKNOWN: "not known",
}
