"""The text that goes under a video of a batch, to be copied or read from ``video.txt``.

It is made of what the public edition tells, whichever edition shows it: it is meant for others.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Problem, Project, Step, Supply, Tool, Weight
from batchleaf.measure.display import NBSP
from batchleaf.measure.durations import show_film_time
from batchleaf.views import site_map
from batchleaf.views.about_batch import credited
from batchleaf.views.bench import tools_needed
from batchleaf.views.disclosure import disclosure_for, tie_of
from batchleaf.views.links import together
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages import text_of
from batchleaf.views.sentence import batch_sentence
from batchleaf.views.words import capitalised, counted, listed

FEWEST_CHAPTERS: Final = 3
"""With fewer, times are no chapters where videos are shown (common practice)."""
START: Final = "0:00 Start"

Things = Sequence[Supply | Tool]


@dataclass(frozen=True, slots=True)
class VideoText:
    """``left_out``: what had no room, in words; ``too_long``: longer than the maker's setting even so."""

    text: str
    left_out: tuple[str, ...] = ()
    too_long: bool = False


Videos = Mapping[str, VideoText]
"""The short name of a batch → its text; none for a batch without steps."""
NO_VIDEOS: Final[Videos] = {}


def video_texts(told: Iterable[Figures], masthead: Masthead) -> dict[str, VideoText]:
    """The texts of all batches that have steps; ``told``: figures as others may see them."""
    return {
        slug: video_text(batch, figures, masthead)
        for figures in told
        for slug, batch in figures.batches.items()
        if batch.project.steps
    }


def video_text(batch: BatchFigures, figures: Figures, masthead: Masthead) -> VideoText:
    """The text, shortened step by step until it fits.

    First go the links of the supplies, then those of the tools, then the list of the tools, then
    that of the supplies, then the chapters. What is marked keeps its line, its link and the
    sentence before it, and whose design it is stays.
    """
    pieces = _pieces(batch, figures, masthead)
    most, left_out = figures.settings.video_text, list[str]()
    for words, shorter in _SHORTER:
        if len(_laid_out(pieces)) <= most:
            break
        if (less := shorter(pieces)) != pieces:
            pieces = less
            left_out.append(words)
    text = _laid_out(pieces)
    return VideoText(text, tuple(left_out), len(text) > most)


def told_of_length(videos: Videos, projects: Iterable[Project], most: int) -> Iterator[Problem]:
    """A notice for each text that had no room for everything."""
    for project in projects:
        if said := _length(videos.get(project.slug), most):
            sentence = f"the text for its video {said}; video_text in mkdocs.yml sets how long it may be"
            yield Problem(project.place, sentence, Weight.NOTICE)


def length_note(text: VideoText, most: int) -> str:
    """The same beside the text; nothing where all of it is there."""
    said = _length(text, most)
    return f"It {said}." if said else ""


def _length(text: VideoText | None, most: int) -> str:
    if text is None or not (text.left_out or text.too_long):
        return ""
    without = f" without {listed(text.left_out)}" if text.left_out else ""
    characters = counted(most, "character", "characters")
    if text.too_long:
        return f"is longer than {characters}{' even' if without else ''}{without}"
    return f"keeps to {characters}{without}"


# --- what stands in it ------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Thing:
    """A supply or a tool, where it is found, and what ties the maker to those who sell it."""

    name: str
    link: str
    tie: str

    @property
    def line(self) -> str:
        """``chalk card (gifted): https://…``"""
        marked = f"{self.name} ({self.tie})" if self.tie else self.name
        return f"{marked}: {self.link}" if self.link else marked


@dataclass(frozen=True, slots=True)
class _Pieces:
    """What stands in the text, in order."""

    sentence: str
    disclosure: str
    supplies: tuple[_Thing, ...]
    tools: tuple[_Thing, ...]
    chapters: tuple[str, ...]
    ending: tuple[str, ...]


_Shorter = Callable[[_Pieces], _Pieces]
_SHORTER: Final[tuple[tuple[str, _Shorter], ...]] = (
    ("the links of the supplies", lambda one: replace(one, supplies=_unlinked(one.supplies))),
    ("the links of the tools", lambda one: replace(one, tools=_unlinked(one.tools))),
    ("the tools", lambda one: replace(one, tools=_marked(one.tools))),
    ("the supplies", lambda one: replace(one, supplies=_marked(one.supplies))),
    ("the chapters", lambda one: replace(one, chapters=())),
)
"""What is left out, in this order, and how."""


def _unlinked(things: tuple[_Thing, ...]) -> tuple[_Thing, ...]:
    """What is marked keeps its link: readers are to see both together."""
    return tuple(thing if thing.tie else replace(thing, link="") for thing in things)


def _marked(things: tuple[_Thing, ...]) -> tuple[_Thing, ...]:
    return tuple(thing for thing in things if thing.tie)


def _pieces(batch: BatchFigures, figures: Figures, masthead: Masthead) -> _Pieces:
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    tools = {tool.slug: tool for tool in figures.archive.tools}
    used = together(supplies[slug] for slug in _supplies_of(batch.project) if supplies[slug].named)
    at_hand = [tools[slug] for slug in sorted(tools_needed(batch.project))]
    return _Pieces(
        sentence=text_of(batch_sentence(batch, supplies, figures.settings.currency)),
        disclosure=disclosure_for((*used, *at_hand), figures.settings),
        supplies=_things(used),
        tools=_things(at_hand),
        chapters=tuple(chapters(batch.project.steps)),
        ending=tuple(_ending(batch, figures, masthead)),
    )


def _supplies_of(project: Project) -> Iterable[str]:
    """What was cut, in that order, then other papers of its parts, then the rest."""
    return dict.fromkeys(
        (
            *(cut.supply for cut in project.cut),
            *(slug for part in project.parts for slug in part.papers),
            *(use.supply for use in project.uses),
        )
    )


def _things(things: Things) -> tuple[_Thing, ...]:
    return tuple(_Thing(thing.name, thing.link, tie_of(thing)) for thing in things)


def chapters(steps: Sequence[Step]) -> Iterator[str]:
    """``1:05 Cut bookmarks, strips and labels``, from 0:00 on, in the order of the film; none if too few.

    Steps that begin at one moment are one chapter; a step without a time is none.
    """
    timed = sorted((step.film_seconds, i) for i, step in enumerate(steps) if step.film_seconds is not None)
    lines = [
        f"{show_film_time(at)} {' '.join(steps[i].sentence for _, i in these).removesuffix('.')}"
        for at, these in groupby(timed, key=lambda one: one[0])
    ]
    if timed and timed[0][0] > 0:
        lines.insert(0, START)
    if len(lines) >= FEWEST_CHAPTERS:
        yield from lines


def _ending(batch: BatchFigures, figures: Figures, masthead: Masthead) -> Iterator[str]:
    if masthead.address:
        plans = ", with its cutting plans" if batch.cutting and batch.cutting.plans else ""
        yield f"The whole batch{plans}: {masthead.address}{site_map.batch(batch.project.slug)}"
    for credit in credited(batch.project, figures):
        words = f"Design: {credit.words.rstrip('.')}"
        yield f"{words}, {credit.link}" if credit.link else words


def _laid_out(pieces: _Pieces) -> str:
    """Paragraphs with an empty line between, without spaces that do not break."""
    paragraphs = (
        (pieces.sentence,),
        (pieces.disclosure,),
        _headed("Supplies", [thing.line for thing in pieces.supplies]),
        _headed("Tools", [thing.line for thing in pieces.tools]),
        _headed("Chapters", pieces.chapters),
        pieces.ending,
    )
    return "\n\n".join("\n".join(lines) for lines in paragraphs if any(lines)).replace(NBSP, " ") + "\n"


def _headed(heading: str, lines: Sequence[str]) -> tuple[str, ...]:
    return (heading, *map(capitalised, lines)) if lines else ()
