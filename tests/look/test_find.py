"""Finding a batch, in a browser: what is chosen, counted, listed, and part of the address."""

from __future__ import annotations

import datetime as dt
import json
import random
import re
from collections.abc import Iterator
from typing import Any, Final
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect

from batchleaf.views.words import long_date
from browsing import AxeFaults, Served

FIND: Final = "find/"
CHOOSE: Final = """async ([words, wanted]) => {
  const form = document.querySelector('.finding');
  form.elements.q.value = words;
  for (const input of form.querySelectorAll('[data-facet] input')) {
    input.checked = wanted.some(([key, value]) => key === input.name && value === input.value);
  }
  form.elements.q.dispatchEvent(new Event('input', {bubbles: true}));
  await new Promise(done => requestAnimationFrame(() => setTimeout(done, 20)));
  const counts = {};
  for (const input of form.querySelectorAll('[data-facet] input')) {
    counts[`${input.name} ${input.value}`] = Number(input.parentNode.querySelector('.count').textContent);
  }
  return [Array.from(document.querySelectorAll('.hits a'), a => a.textContent), counts];
}"""
"""Asks for words and choices at once; returns the titles that are listed, and each count.

What lies below the window is listed when the rest is painted.
"""


class Archive:
    """What the site's own data say, filtered in the plainest way."""

    def __init__(self, site: Served, page: Page) -> None:
        text = (site.folder / FIND / "batches.js").read_text(encoding="utf-8")
        self.data: dict[str, Any] = json.loads(
            text.removeprefix("window.batchleafFind = ").removesuffix(";\n")
        )
        offered = "set => [set.dataset.facet, Array.from(set.querySelectorAll('input'), one => one.value)]"
        asked = f"Array.from(document.querySelectorAll('[data-facet]'), {offered})"
        self.facets: dict[str, list[str]] = dict(page.evaluate(asked))

    def true(self, key: str, value: str, at: int) -> bool:
        """Whether a choice is true of a batch."""
        place = self.facets[key].index(value)
        if key in self.data["limits"]:
            number = self.data["numbers"][key][at]
            return number is not None and number <= self.data["limits"][key][place]
        return place in self.data["choices"][key][at]

    def found(self, wanted: list[tuple[str, str]]) -> list[int]:
        """The batches of which for every kind that is asked for one choice is true."""
        kinds = {key for key, _ in wanted}
        return [
            at
            for at in range(len(self.data["titles"]))
            if all(any(self.true(k, v, at) for k, v in wanted if k == kind) for kind in kinds)
        ]

    def some(self, dice: random.Random) -> list[tuple[str, str]]:
        """Up to four choices, of a ladder no more than one."""
        every = [(key, value) for key, values in self.facets.items() for value in values]
        chosen = dice.sample(every, dice.randint(0, 4))
        ladders = {key: (key, value) for key, value in chosen if key in self.data["limits"]}
        return [one for one in chosen if one[0] not in ladders] + list(ladders.values())


def test_what_is_listed_and_counted_is_what_is_true(demo_site: Served, page: Page) -> None:
    """For two hundred selections: the list, and beside each choice how many it would find instead."""
    demo_site.visit(page, FIND)
    expect(page.locator(".listed .told")).to_have_text("All 15 batches.")
    archive, dice = Archive(demo_site, page), random.Random(8)
    sizes = set()
    for _ in range(200):
        wanted = archive.some(dice)
        titles, counts = page.evaluate(CHOOSE, ["", wanted])
        hits = archive.found(wanted)
        assert titles == [archive.data["titles"][at] for at in hits]
        for key, values in archive.facets.items():
            others = [one for one in wanted if one[0] != key]
            for value in values:
                assert counts[f"{key} {value}"] == len(archive.found([*others, (key, value)]))
        sizes.add(len(hits))
    assert len(sizes) > 6


def test_words_are_found_in_all_that_is_told(demo_site: Served, page: Page) -> None:
    """In titles, in what a batch is made of and done with; each word somewhere, accents or not."""
    demo_site.visit(page, FIND)
    for words, title in (
        ("SLOE", "Sloe lane cards"),
        ("may card box", "Hawthorn boxes"),
        ("wedding", "Hawthorn boxes"),
    ):
        titles, _ = page.evaluate(CHOOSE, [words, []])
        assert title in titles
        assert len(titles) < 6
    assert page.evaluate(CHOOSE, ["no such thing", []])[0] == []
    expect(page.locator(".listed .told")).to_have_text("No batch is all of this.")


def test_a_tag_under_half_a_euro_from_a4_that_can_be_made_today_is_found_in_four_actions(
    demo_site: Served, page: Page, axe_faults: AxeFaults
) -> None:
    """By keyboard and by label; the address brings it back; a rung is let go of by taking it again."""
    demo_site.visit(page, FIND)
    form = page.locator(".finding")
    actions = (
        form.get_by_role("checkbox", name=re.compile("^tag ")),
        form.get_by_role("radio", name=re.compile("^under 0.25")),
        form.get_by_role("checkbox", name=re.compile("^A4 ")),
        form.get_by_role("checkbox", name=re.compile("^at least one ")),
    )
    for action in actions:
        action.press("Space")
    expect(page.locator(".hits a")).to_have_text(["First frost tags"])
    page.wait_for_url("**/find/?*today=one*")
    query = parse_qs(urlsplit(page.url).query)
    assert query == {"thing": ["tag"], "cost": ["0.25"], "sheet": ["A4"], "today": ["one"]}
    assert axe_faults(page) == ()
    page.reload()
    expect(page.locator(".hits a")).to_have_text(["First frost tags"])
    for action in actions:
        expect(action).to_be_checked()
    form.get_by_role("button", name="Start over").click()
    expect(page.locator(".listed .told")).to_have_text("All 15 batches.")
    page.wait_for_url("**/find/")
    rung = form.get_by_label("under 0.25")
    rung.click()
    expect(page.locator(".hits li")).not_to_have_count(15)
    rung.click()
    expect(page.locator(".hits li")).to_have_count(15)


def test_the_order_is_what_was_asked_for(demo_site: Served, page: Page) -> None:
    """By date, by title, by a number; what has no number comes last."""
    page.goto(f"{demo_site.url}{FIND}?sort=cost")
    archive = Archive(demo_site, page)
    costs = dict(zip(archive.data["titles"], archive.data["numbers"]["cost"], strict=True))
    expect(page.locator(".hits a")).to_have_count(15)
    listed = [costs[title] for title in page.locator(".hits a").all_text_contents()]
    known = [cost for cost in listed if cost is not None]
    assert known == sorted(known)
    assert listed == [*known, *[None] * (len(listed) - len(known))]
    page.locator(".finding select").select_option("title")
    expect(page.locator(".hits a")).to_have_text(sorted(archive.data["titles"]))
    page.locator(".finding select").select_option("oldest")
    expect(page.locator(".hits a")).to_have_text(archive.data["titles"][::-1])
    expect(page.locator(".hits a").first).to_have_text("Sloe lane cards")


def test_days_are_written_as_on_every_page(demo_site: Served, page: Page) -> None:
    """The script's own way with them says what the built pages say."""
    demo_site.visit(page, FIND)
    expect(page.locator(".hits time")).to_have_count(15)
    told = page.eval_on_selector_all(".hits time", "all => all.map(one => [one.dateTime, one.textContent])")
    assert len({day for day, _ in told}) > 10
    assert [text for _, text in told] == [long_date(dt.date.fromisoformat(day)) for day, _ in told]


@pytest.mark.parametrize("width", [320, 390, 700])
def test_the_choice_to_compare_lies_on_no_title(demo_site: Served, page: Page, width: int) -> None:
    """Beside it, beside the day or below, as the window allows."""
    page.set_viewport_size({"width": width, "height": 900})
    demo_site.visit(page, FIND)
    expect(page.locator(".hits .pick")).to_have_count(15)
    apart: list[bool] = page.eval_on_selector_all(
        ".hits li",
        """cards => cards.map(card => {
          const [one, other] = ['a', '.pick'].map(part => card.querySelector(part).getBoundingClientRect());
          return one.right <= other.left || one.bottom <= other.top;
        })""",
    )
    assert apart == [True] * 15


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    """A page that runs none."""
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


def test_without_scripts_there_is_a_list_by_year(demo_site: Served, without_scripts: Page) -> None:
    """The newest year, and the way to the others; together they have every batch once."""
    page = without_scripts
    page.goto(f"{demo_site.url}{FIND}")
    assert page.locator(".finding").bounding_box() is None
    newest = page.locator(".hits a").all_text_contents()
    page.get_by_role("link", name="2025").click()
    older = page.locator(".hits a").all_text_contents()
    assert older[-1] == "Sloe lane cards"
    assert len({*newest, *older}) == len(newest) + len(older) == 15


def test_opened_as_a_file_it_works_as_well(demo_site: Served, page: Page) -> None:
    """Data and links are reached without a server."""
    page.goto(f"{(demo_site.folder / FIND / 'index.html').as_uri()}?thing=box")
    expect(page.locator(".hits a")).to_have_text(["Hawthorn boxes"])
    page.locator(".hits a").click()
    expect(page.locator("h1")).to_have_text("Hawthorn boxes")
