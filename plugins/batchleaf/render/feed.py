"""The feed as XML."""

from __future__ import annotations

from batchleaf.render.html import ENVIRONMENT
from batchleaf.views.feed import Feed


def feed_xml(feed: Feed) -> str:
    """An Atom feed (RFC 4287)."""
    return ENVIRONMENT.get_template("feed.xml").render(feed=feed)
