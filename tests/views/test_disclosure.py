"""What readers are told of ties to sellers: on which pages, and before what."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from browsing import Served

LINK = re.compile(
    r'<a href="(https?://[^"]+)" rel="([^"]+)">[^<]*(?:<span[^<]*</span>)?</a>'
    r'(?: <span class="tie">(\w+)</span>)?'
)
SAID = "Some of what is named here is marked"


def page(site: Served, address: str) -> str:
    """A page as it was written."""
    return Path(site.folder, address, "index.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("address", ["drawer/hedgebank-pad/", "bench/"])
def test_a_link_that_is_paid_for_says_so_and_the_sentence_comes_before_it(
    demo_site: Served, address: str
) -> None:
    """With the word beside it, and the relation that search engines ask for."""
    html = page(demo_site, address)
    (marked,) = (found for found in LINK.finditer(html) if found[3])
    assert marked[2] == "sponsored noopener"
    assert marked[3] in ("paid", "gifted")
    assert 0 < html.index(SAID) < marked.start()


def test_a_batch_that_names_something_paid_or_gifted_says_so(demo_site: Served) -> None:
    """Before its supplies, where the word stands; stamps that were a gift count too."""
    html = page(demo_site, "projects/orchard-square-cards/")
    assert 0 < html.index(SAID) < html.index("paid</")
    assert SAID in page(demo_site, "projects/fieldfare-slim-cards/")


@pytest.mark.parametrize("address", ["drawer/hazel-kraft/", "projects/towpath-accordions/"])
def test_where_there_is_no_tie_nothing_is_said(demo_site: Served, address: str) -> None:
    """A link of one’s own choice has no mark."""
    html = page(demo_site, address)
    assert SAID not in html
    assert not any(found[3] or "sponsored" in found[2] for found in LINK.finditer(html))
