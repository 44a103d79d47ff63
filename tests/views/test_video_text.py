"""The text that goes under a video: what stands in it, in which order, and what gives way first."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Final

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures
from batchleaf.facts import NOWHERE, Step
from batchleaf.views.edition import Told, as_told, public_edition
from batchleaf.views.masthead import Masthead
from batchleaf.views.video_text import (
    VideoText,
    chapters,
    length_note,
    told_of_length,
    video_text,
    video_texts,
)
from records.test_cases import laid_out, read

HERE: Final = Masthead("Paper", "https://example.org/paper/")
WHOLE: Final = """\
6 cards from 3 sheets of dune card. At least 0.25 € each (without the cord), 1 h 10 at the table.

Some of what is named here is marked: paid, where its seller pays the maker for the link or for naming it; \
gifted, where it was free for the maker, or cost less.

Supplies
Dune card (gifted): https://example.org/dune-card
Kelp ink: https://example.org/kelp-ink
Cord

Tools
The press: https://example.org/press
The rocker (paid): https://example.org/rocker

Chapters
0:00 Start
0:30 Cut & score
2:00 Fold </script><script>alert(1)</script>. Press
1:02:40 Tie <!-- the cord

The whole batch, with its cutting plans: https://example.org/paper/projects/dunes/
Design: a fold by a neighbour, https://example.org/fold
"""


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive beside this file."""
    folder = tmp_path_factory.mktemp("video")
    laid_out((Path(__file__).parent / "video.archive").read_text(encoding="utf-8"), folder)
    worked = read(folder)
    assert worked.figures is not None
    return worked.figures


def text_within(most: int, figures: Figures, masthead: Masthead = HERE) -> VideoText:
    """The text of the batch with everything, of at most so many characters."""
    few = replace(figures, settings=replace(figures.settings, video_text=most))
    return video_text(few.batches["dunes"], few, masthead)


def test_it_is_laid_out_in_paragraphs(figures: Figures) -> None:
    """Sentence, disclosure, supplies, tools, chapters, the page, whose design it is: without bound spaces."""
    text = text_within(5000, figures)
    assert text.text == WHOLE
    assert (text.left_out, text.too_long) == ((), False)


def test_readers_are_told_before_the_first_link_that_is_marked(figures: Figures) -> None:
    """However little room there is, the sentence and the marks stay, and in this order."""
    for most in range(100, 1000, 50):
        text = text_within(most, figures).text
        assert 0 < text.index("is marked: paid") < text.index("(gifted): https://example.org/dune-card")
        assert "(paid): https://example.org/rocker" in text
        assert "Design: a fold by a neighbour, https://example.org/fold\n" in text


def test_without_a_tie_nothing_is_disclosed(figures: Figures) -> None:
    """The second batch uses what was a gift; without the tie the sentence is gone."""
    archive = figures.archive
    free = tuple(replace(one, tie=type(one.tie).NONE) for one in archive.supplies)
    for supplies, there in ((archive.supplies, True), (free, False)):
        one = replace(figures, archive=replace(archive, supplies=supplies))
        assert ("is marked" in video_text(one.batches["shells"], one, HERE).text) is there


@pytest.mark.parametrize(
    ("steps", "told"),
    [
        ([(0, "Cut."), (60, "Fold."), (120, "Tie.")], ["0:00 Cut", "1:00 Fold", "2:00 Tie"]),
        ([(5, "Cut."), (60, "Fold.")], ["0:00 Start", "0:05 Cut", "1:00 Fold"]),
        ([(60, "Fold."), (None, "Wait."), (5, "Cut.")], ["0:00 Start", "0:05 Cut", "1:00 Fold"]),
        ([(0, "Cut."), (60, "Fold.")], []),
        ([(5, "Cut.")], []),
        ([(None, "Cut."), (None, "Fold."), (None, "Tie.")], []),
        ([(1, "A."), (1, "B."), (3600, "C.")], ["0:00 Start", "0:01 A. B", "1:00:00 C"]),
    ],
)
def test_chapters_begin_at_nought_and_rise(steps: list[tuple[int | None, str]], told: list[str]) -> None:
    """In the order of the film; a step without a time is none, and fewer than three are none at all."""
    assert [*chapters([Step(sentence, at) for at, sentence in steps])] == told


def test_what_has_no_room_goes_in_its_order_by_whole_lines(figures: Figures) -> None:
    """Links of supplies, of tools, then tools, supplies, chapters; no line is cut, and no text is longer."""
    whole = text_within(5000, figures)
    gone: list[tuple[str, ...]] = []
    for most in range(len(whole.text), 100, -1):
        text = text_within(most, figures)
        assert len(text.text) <= most or text.too_long
        plain = {line.partition(": https")[0] for line in whole.text.splitlines()}
        assert {line.partition(": https")[0] for line in text.text.splitlines()} <= plain
        if text.left_out not in gone:
            gone.append(text.left_out)
    every = (
        "the links of the supplies",
        "the links of the tools",
        "the tools",
        "the supplies",
        "the chapters",
    )
    assert gone == [every[:n] for n in range(len(every) + 1)]


def test_a_maker_is_told_of_what_had_no_room(figures: Figures) -> None:
    """With the number that the site sets; on the page without the names of files."""
    few = text_within(700, figures)
    (notice,) = told_of_length({"dunes": few}, figures.archive.projects, 700)
    assert notice.place == figures.batches["dunes"].project.place != NOWHERE
    assert notice.sentence == (
        "the text for its video keeps to 700 characters without the links of the supplies; video_text in"
        " mkdocs.yml sets how long it may be"
    )
    assert length_note(few, 700) == "It keeps to 700 characters without the links of the supplies."
    assert length_note(text_within(120, figures), 120).startswith(
        "It is longer than 120 characters even without"
    )
    assert [*told_of_length({"dunes": text_within(5000, figures)}, figures.archive.projects, 5000)] == []


def test_without_an_address_it_leads_to_no_page(figures: Figures) -> None:
    """Nor is one made up."""
    text = text_within(5000, figures, Masthead("Paper")).text
    assert text == text_within(5000, figures).text.replace(
        "The whole batch, with its cutting plans: https://example.org/paper/projects/dunes/\n", ""
    )


@pytest.mark.parametrize(
    "told", [Told(), Told(cost=False), Told(supplies=False), Told(cost=False, supplies=False)], ids=str
)
def test_the_private_text_is_the_public_one(figures: Figures, told: Told) -> None:
    """Of what is published letter for letter, and of the rest nothing that others would not see."""
    private = video_texts(as_told(figures, told, PLANNER), HERE)
    public = video_texts([public_edition(figures, told, PLANNER)], HERE)
    assert set(private) == {"dunes", "shells"}
    assert public == {"dunes": private["dunes"]}
    all_words = "\n".join(text.text for text in private.values())
    assert "9.75" not in all_words
    assert ("€" in all_words) is told.cost
    assert ("dune card" in all_words.lower()) is told.supplies
    assert ("example.org/dune-card" in all_words) is told.supplies
