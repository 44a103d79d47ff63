"""What the templates promise for every kind of page."""

from __future__ import annotations

import dataclasses
import typing
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace

import html5lib
import pytest

from batchleaf.render.html import render, toc_tokens
from batchleaf.views.pages import BatchPage, Page
from browsing import SVG
from look.samples import pages

PAYLOAD = "\"><script>alert(1)</script>&amp;'{{ 7*7 }}"
HTML_BY_CONTRACT = {"notes_html"}


def parsed(body: str) -> typing.Any:
    """The body as a browser would read it inside ``<main>``; raises on the first fault."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    return parser.parse(
        f"<!doctype html><html><head><title>x</title></head><body><main>{body}</main></body></html>"
    )


def poisoned(value: typing.Any) -> typing.Any:
    """``value`` with every text in it replaced by markup."""
    if isinstance(value, str):
        return PAYLOAD
    if isinstance(value, tuple):
        return tuple(poisoned(one) for one in value)
    if is_dataclass(value) and not isinstance(value, type):
        changed = {
            f.name: poisoned(getattr(value, f.name)) for f in fields(value) if f.name not in HTML_BY_CONTRACT
        }
        return dataclasses.replace(value, **changed)
    return value


def bare(value: typing.Any) -> typing.Any:
    """``value`` with everything left out that may be left out."""
    kinds = typing.get_type_hints(type(value))
    changed: dict[str, object] = {}
    for field in fields(value):
        kind = kinds[field.name]
        if type(None) in typing.get_args(kind):
            changed[field.name] = None
        elif typing.get_origin(kind) is tuple and ... in typing.get_args(kind):
            changed[field.name] = ()
        elif is_dataclass(kind) and not isinstance(kind, str):
            changed[field.name] = bare(getattr(value, field.name))
    return replace(value, **changed)


def texts(value: typing.Any) -> Iterator[str]:
    """Every text in ``value``."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from texts(one)
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            yield from texts(getattr(value, field.name))


every_page = pytest.mark.parametrize("page", pages(), ids=lambda page: type(page).__name__)


@every_page
def test_is_valid_html(page: Page) -> None:
    """A strict parser finds no fault in the body."""
    assert parsed(render(page)).find(".//h1") is not None


@every_page
def test_bare_page_is_valid_html(page: Page) -> None:
    """A page with every list empty and every optional thing missing still renders."""
    assert parsed(render(bare(page))).find(".//h1") is not None


@every_page
def test_text_never_becomes_markup(page: Page) -> None:
    """Whatever stands in a record, it is shown as it is written and runs nowhere."""
    tree = parsed(render(poisoned(page)))
    assert tree.find(".//script") is None
    assert PAYLOAD in "".join(tree.itertext())
    assert {name for node in tree.iter() for name in node.attrib if name.startswith("on")} == set()


@every_page
def test_one_h1_and_no_id_twice(page: Page) -> None:
    """One main heading; every id stands once, so every anchor leads to one place."""
    tree = parsed(render(page))
    ids = [node.attrib["id"] for node in tree.iter() if "id" in node.attrib]
    assert len(tree.findall(".//h1")) == 1
    assert sorted(ids) == sorted(set(ids))


@every_page
def test_drawings_say_what_they_show(page: Page) -> None:
    """Each drawing is named and described, and its labels stay out of the search."""
    tree = parsed(render(page))
    parents = {child: parent for parent in tree.iter() for child in parent}
    for drawing in (node for node in tree.iter(f"{SVG}svg") if node.attrib.get("role") == "img"):
        named = drawing.attrib["aria-labelledby"].split()
        assert [drawing.find(SVG + tag).attrib["id"] for tag in ("title", "desc")] == named
        assert all("".join(drawing.find(SVG + tag).itertext()).strip() for tag in ("title", "desc"))
        assert "data-search-exclude" in parents[drawing].attrib


@every_page
def test_contents_follow_the_headings(page: Page) -> None:
    """The contents list starts with the title; each entry has an anchor on the page."""
    body = render(page)
    tokens = toc_tokens(body)
    assert [token["id"] for token in tokens] == ["page"]
    assert tokens[0]["name"] == page.title
    assert all(f'id="{child["id"]}"' in body for child in tokens[0]["children"])


def test_contents_nest_by_level() -> None:
    """A plan stands below the cutting plan; names are escaped text."""
    above = '<h1 id="page">A &amp; <em>B</em></h1><h2 id="plan">Plan</h2>'
    body = above + '<h3 id="p1">1</h3><h2 id="cost">Cost</h2>'
    (top,) = toc_tokens(body)
    assert top["name"] == "A &amp; B"
    assert [(token["id"], len(token["children"])) for token in top["children"]] == [("plan", 1), ("cost", 0)]


@every_page
def test_every_text_is_shown(page: Page) -> None:
    """No text of a page model is dropped by its template, apart from roles and names of formats."""
    tree = parsed(render(page))
    shown = " ".join("".join(tree.itertext()).split())
    attributes = " ".join(value for node in tree.iter() for value in node.attrib.values())
    own = replace(page, notes_html="") if isinstance(page, BatchPage) else page
    seen = shown + attributes
    unseen = [text for text in texts(own) if " ".join(text.split()) not in seen and text != "#table"]
    assert unseen == []
