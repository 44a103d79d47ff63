"""A maker's notes as HTML."""

from __future__ import annotations

import pytest

from batchleaf.render.prose import prose_html


def test_plain_markdown_is_set() -> None:
    """Emphasis, lists and safe links work; a heading stays below the page's own."""
    html = prose_html("# Sloes\n\nA *dark* fruit, [seen](https://example.org/hedge).\n\n- one\n- two\n")
    assert html == (
        "<h3>Sloes</h3>\n<p>A <em>dark</em> fruit, "
        '<a href="https://example.org/hedge">seen</a>.</p>\n<ul>\n<li>one</li>\n<li>two</li>\n</ul>'
    )


def test_an_address_of_mail_stays_a_link() -> None:
    """Though Markdown spells it in character references."""
    assert "<a href=" in prose_html("Write to <bench@example.org>.")
    assert "<a href=" in prose_html("[Write](mailto:bench@example.org).")


@pytest.mark.parametrize(
    "payload",
    [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "text <b onclick=alert(1)>bold</b>",
        "[a](javascript:alert(1))",
        "[a](JaVaScRiPt:alert(1))",
        "[a](data:text/html,<script>alert(1)</script>)",
        "![a](https://example.org/pixel.gif)",
        "<javascript:alert(1)>",
        "[a]: javascript:alert(1)\n\n[a]",
        "<div>\n<script>alert(1)</script>\n</div>",
        "[a](&#106;avascript:alert(1))",
        "[a](\tjavascript:alert(1))",
    ],
)
def test_notes_carry_no_markup_of_their_own(payload: str) -> None:
    """No tag but those of Markdown, no address but https, http and mailto, no picture from elsewhere."""
    html = prose_html(payload).lower()
    for never in ("<script", "<img", "<b ", "<div", 'href="javascript', 'href="data', 'href="\t', 'href="&#'):
        assert never not in html
