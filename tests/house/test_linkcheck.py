"""A built site in which a link leads nowhere is never taken for sound."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.linkcheck import BrokenLink, broken_links


def _site(root: Path, pages: dict[str, str]) -> Path:
    for name, text in pages.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return root


SOUND = {
    "index.html": '<h1 id="top-of-all">Home</h1><a href="batches/tags/">tags</a> <a href="./">here</a>',
    "batches/tags/index.html": (
        '<h2 id="für-alle">x</h2><a name="old">y</a><img src="cover.jpg" srcset="cover.jpg 1x, big.jpg 2x">'
        '<a href="../..">home</a> <a href="../../index.html#top-of-all">top</a>'
        '<a href="#f%C3%BCr-alle">x</a>'
        '<a href="#old">y</a><a href="#">up</a><a href="#top">up</a><a href="?q=1#old">find</a>'
        '<svg><use href="#old"/><use xlink:href="#für-alle"/></svg>'
    ),
    "batches/tags/cover.jpg": "",
    "batches/tags/big.jpg": "",
    "404.html": '<a href="/paper/">home</a><a href="/paper/batches/tags/">tags</a>',
}


def test_sound_site(tmp_path: Path) -> None:
    """Folders, dots, fragments, queries, srcset and links from the root are followed as a browser does."""
    assert broken_links(_site(tmp_path, SOUND), "/paper/") == ()


def test_one_broken_on_purpose(tmp_path: Path) -> None:
    """One picture taken away from a sound site is named, with each page's link to it."""
    site = _site(tmp_path, SOUND)
    (site / "batches/tags/big.jpg").unlink()
    assert broken_links(site, "/paper/") == (
        BrokenLink("batches/tags/index.html", "big.jpg", "there is no batches/tags/big.jpg in the site"),
    )


@pytest.mark.parametrize(
    ("markup", "why"),
    [
        ('<a href="gone/">x</a>', "there is no gone/index.html in the site"),
        ('<a href="Index.html">x</a>', "there is no Index.html in the site"),
        ('<a href="#gone">x</a>', "nothing on index.html is called “gone”"),
        ('<a href="two/#gone">x</a>', "nothing on two/index.html is called “gone”"),
        ('<a href="two#gone">x</a>', "nothing on two/index.html is called “gone”"),
        ('<a href="../">x</a>', "climbs above the site's first page"),
        ('<a href="/elsewhere/">x</a>', "leads out of /paper/, where the site lives"),
        ('<a href="/paperback/">x</a>', "leads out of /paper/, where the site lives"),
        ('<a href="javascript:alert(1)">x</a>', "javascript: is no kind of address for a page"),
        ('<a href="file:///etc">x</a>', "file: is no kind of address for a page"),
        ('<img src="">', "names no file"),
        ("<img srcset='two/index.html 1x, gone.webp 2x'>", "there is no gone.webp in the site"),
        ('<video poster="gone.jpg"></video>', "there is no gone.jpg in the site"),
        ("<script src=gone.js></script>", "there is no gone.js in the site"),
        ('<link href="gone.css" rel="stylesheet">', "there is no gone.css in the site"),
        ('<meta http-equiv="refresh" content="0; url=gone/">', "there is no gone/index.html in the site"),
        ('<a title="a > b" href="gone&amp;more">x</a>', "there is no gone&more in the site"),
        ("<A\n HREF = 'gone'>x</A>", "there is no gone in the site"),
        ('<svg><use href="#gone"/></svg>', "nothing on index.html is called “gone”"),
    ],
)
def test_why(tmp_path: Path, markup: str, why: str) -> None:
    """Each way to lead nowhere is found and told in words."""
    site = _site(tmp_path, {"index.html": markup, "two/index.html": ""})
    assert [link.why for link in broken_links(site, "/paper/")] == [why]


@pytest.mark.parametrize(
    "markup",
    [
        '<a href="https://example.org/gone">x</a>',
        '<a href="HTTP://example.org/gone">x</a>',
        '<a href="//example.org/gone">x</a>',
        '<a href="mailto:maker@example.org">x</a>',
        '<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=">',
        '<!-- <a href="gone">x</a> -->',
        "<script>document.write('<a href=\"gone\">')</script>",
        '<textarea><a href="gone"></textarea>',
        '<p data-src="gone">x</p>',
    ],
)
def test_no_link_of_the_site(tmp_path: Path, markup: str) -> None:
    """Other hosts are not asked; comments, scripts and text are no links."""
    assert broken_links(_site(tmp_path, {"index.html": markup})) == ()


def test_name_of_a_field_is_no_target(tmp_path: Path) -> None:
    """A fragment leads to an id or a named anchor, not to a form's field."""
    site = _site(tmp_path, {"index.html": '<input name="find"><a href="#find">x</a>'})
    assert [link.href for link in broken_links(site)] == ["#find"]


def test_served_from_the_root(tmp_path: Path) -> None:
    """Without a path of its own, a site's root links count from the host's root."""
    site = _site(tmp_path, {"index.html": '<a href="/two/">x</a>', "two/index.html": ""})
    assert broken_links(site) == broken_links(site, "") == ()
