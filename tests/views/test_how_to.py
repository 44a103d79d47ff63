"""A batch for machines: well formed, of the vocabulary’s own terms, and with nothing that is not shown."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

import pytest

from batchleaf.core.figures import Figures
from batchleaf.measure.licences import Licence
from batchleaf.render.html import render
from batchleaf.views.batch import batch_page
from batchleaf.views.how_to import CONTEXT, duration
from batchleaf.views.masthead import Masthead
from batchleaf.views.outward import Outward, with_words_out
from batchleaf.views.video_text import NO_VIDEOS
from browsing import Served, parsed, texts_of
from views.test_video_text import HERE, figures

__all__ = ["figures"]

ELEMENT: Final = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.DOTALL)
MEASURED: Final = {"@type", "@context", "url", "image", "license", "totalTime", "currency"}
"""What is no text of the page, and is looked at by itself."""


def told_on(path: Path) -> Any:
    """What a page says to machines; ``None`` where it says nothing."""
    found = ELEMENT.findall(path.read_text(encoding="utf-8"))
    assert len(found) < 2
    return json.loads(found[0]) if found else None


def batches(site: Served) -> Iterator[tuple[Path, Any]]:
    """The pages of batches that say something to machines, and what they say."""
    for path in site.pages():
        if path.parent.parent.name == "projects" and (told := told_on(path)):
            yield path, told


def leaves(value: Any, key: str = "") -> Iterator[tuple[str, str]]:
    """Every text with its term."""
    if isinstance(value, dict):
        for name, one in value.items():
            yield from leaves(one, name)
    elif isinstance(value, list):
        for one in value:
            yield from leaves(one, key)
    else:
        yield key, value


@pytest.mark.parametrize("edition", ["demo_site", "public_demo"])
def test_nothing_is_told_that_is_not_on_the_page(edition: str, request: pytest.FixtureRequest) -> None:
    """In both editions: every text stands among the words of the page, and money as it is shown there."""
    site: Served = request.getfixturevalue(edition)
    seen = 0
    for path, told in batches(site):
        words = " ".join("".join(texts_of(parsed(path).find(".//main"))).split())
        for key, text in leaves(told):
            if key not in MEASURED:
                assert " ".join(text.split()) in words
                seen += 1
    assert seen > 50


def test_its_values_are_well_formed(demo_site: Served) -> None:
    """Whole addresses, a duration of ISO 8601, a decimal beside a code of ISO 4217; steps in order."""
    kinds = set[str]()
    for path, told in batches(demo_site):
        here = f"{demo_site.url}{demo_site.name(path)}"
        assert (told["@context"], told["@type"], told["url"]) == (CONTEXT, "HowTo", here)
        assert [step["url"] for step in told["step"]] == [
            f"{here}#step-{number}" for number in range(1, len(told["step"]) + 1)
        ]
        anchors = {element.get("id") for element in parsed(path).iter("li")}
        assert {step["url"].partition("#")[2] for step in told["step"]} <= anchors
        if "image" in told:
            assert demo_site.file(told["image"].removeprefix(demo_site.url)).is_file()
        assert re.fullmatch(r"PT([0-9]+H)?([0-9]+M)?", told.get("totalTime", "PT1H"))
        if cost := told.get("estimatedCost"):
            assert cost["currency"] == "EUR"
            assert Decimal(cost.get("value", cost.get("minValue"))) > 0
        assert told["license"] == "https://creativecommons.org/licenses/by/4.0/"
        kinds |= told.keys()
    assert {"image", "yield", "totalTime", "estimatedCost", "supply", "tool"} <= kinds


def test_no_text_of_the_maker_ends_the_element(figures: Figures) -> None:
    """A title and steps with ``</script>`` and ``<!--`` come back as they were written."""
    out = Outward(HERE, NO_VIDEOS)
    batch = figures.batches["dunes"]
    body = render(with_words_out(batch_page(batch, figures, {}, ""), batch, figures, out))
    (inside,) = ELEMENT.findall(body)
    assert not set("<>&") & set(inside)
    told = json.loads(inside)
    assert told["name"] == "Dune cards </script><!--"
    assert [step["text"] for step in told["step"]] == [step.sentence for step in batch.project.steps]
    assert "alert(1)" in told["step"][0]["text"]


@pytest.mark.parametrize(
    ("masthead", "here"), [(Masthead("Paper"), None), (HERE, "https://example.org/paper/projects/dunes/")]
)
def test_addresses_are_whole_or_lead_within_the_page(
    figures: Figures, masthead: Masthead, here: str | None
) -> None:
    """A site without an address names no page, and a step by its anchor alone; no licence, no word of one."""
    batch = figures.batches["dunes"]
    page = with_words_out(batch_page(batch, figures, {}, ""), batch, figures, Outward(masthead, NO_VIDEOS))
    assert page.how_to is not None
    assert page.how_to.get("url") == here
    assert page.how_to["step"][1]["url"] == f"{here or ''}#step-2"
    assert "license" not in page.how_to
    free = replace(masthead, licence=Licence.of("CC0-1.0"))
    page = with_words_out(page, batch, figures, Outward(free, NO_VIDEOS))
    assert page.how_to
    assert page.how_to["license"] == "https://creativecommons.org/publicdomain/zero/1.0/"


def test_a_batch_without_steps_tells_no_way(figures: Figures) -> None:
    """Nor does one without money tell a cost."""
    batch = figures.batches["bare"]
    page = with_words_out(batch_page(batch, figures, {}, ""), batch, figures, Outward(HERE, NO_VIDEOS))
    assert page.how_to is None
    dunes = replace(figures.batches["dunes"], one=None)
    page = with_words_out(batch_page(dunes, figures, {}, ""), dunes, figures, Outward(HERE, NO_VIDEOS))
    assert page.how_to
    assert "estimatedCost" not in page.how_to


@pytest.mark.parametrize(("minutes", "said"), [(0, ""), (50, "PT50M"), (60, "PT1H"), (190, "PT3H10M")])
def test_a_duration_is_that_of_iso_8601(minutes: int, said: str) -> None:
    """Hours and minutes; nothing for no time."""
    assert duration(minutes) == said


@pytest.mark.slow
def test_every_term_is_one_of_the_vocabulary(demo_site: Served) -> None:
    """As rdflib has schema.org’s; ``yield``, a word of Python, is missing there: https://schema.org/yield."""
    vocabulary: Any = pytest.importorskip("rdflib", reason="rdflib is not installed").SDO
    terms = set[str]()
    for _, told in batches(demo_site):
        found = list[Any]([told])
        while found:
            one = found.pop()
            if isinstance(one, dict):
                terms |= {key for key in one if not key.startswith("@")} | {one["@type"]}
                found += one.values()
            elif isinstance(one, list):
                found += one
    assert "HowToStep" in terms
    assert {term for term in terms if term not in vocabulary} - {"yield"} == set()
