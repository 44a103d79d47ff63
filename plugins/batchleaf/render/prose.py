"""Prose of a maker's notes to HTML: Markdown without raw HTML, and only safe links."""

from __future__ import annotations

import html
import xml.etree.ElementTree as ET

import markdown
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor
from markdown.util import AMP_SUBSTITUTE

_SAFE = ("https://", "http://", "mailto:")


class _Tame(Treeprocessor):
    """Only safe links stay links; headings stay below the page's own; a picture goes by its words."""

    def run(self, root: ET.Element) -> None:
        for element in root.iter():
            # Markdown spells an address of mail in character references.
            if element.tag == "a" and not _plain(element.get("href", "")).startswith(_SAFE):
                element.tag = "span"
                element.attrib.clear()
            elif element.tag in ("h1", "h2"):
                element.tag = "h3"
            elif element.tag == "img":
                element.tag, element.text = "span", element.get("alt", "")
                element.attrib.clear()


def _plain(href: str) -> str:
    return html.unescape(href.replace(AMP_SUBSTITUTE, "&")).lower()


class _MakersProse(Extension):
    """Markdown as a maker's notes may use it."""

    def extendMarkdown(self, md: markdown.Markdown) -> None:  # noqa: N802 - the library's name
        """Take raw HTML out, put the taming in."""
        md.preprocessors.deregister("html_block")
        md.inlinePatterns.deregister("html")
        md.treeprocessors.register(_Tame(md), "tame", 5)


def prose_html(text: str) -> str:
    """The notes as HTML that cannot carry markup or scripts of its own."""
    return markdown.markdown(text, extensions=[_MakersProse()]) if text.strip() else ""
