"""What each step of making uses: the parts, supplies and tools that its sentence names.

A thing is named by its whole name, or by the last word of it where nothing else of the batch ends so
("the strip" for a water strip). A work is named by its verb. Words are compared without their plural.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Part, Project, Purpose, Step, Supply, Tool, Use
from batchleaf.facts.works import WorkKind

Supplies = Mapping[str, Supply]
Tools = Mapping[str, Tool]
_WORD: Final = re.compile(r"[^\W\d_]+", re.UNICODE)
_CUTS: Final = ("trimmer", "knife", "guillotine", "scissors", "cutter")
"""Kinds of tools that cut."""
_VERBS: Final = {WorkKind.DIE_CUT: ("die",), WorkKind.ROUND: ("round", "corner")}
"""Where a work is not named by its own word alone."""


@dataclass(frozen=True, slots=True)
class StepUses:
    """What one step names."""

    parts: tuple[Part, ...]
    uses: tuple[Use, ...]
    tools: tuple[str, ...]


def uses_of_steps(project: Project, supplies: Supplies, tools: Tools) -> tuple[StepUses, ...]:
    """One for each step."""
    names = [
        *(part.name for part in project.parts),
        *(supplies[use.supply].name for use in _worked_in(project)),
        *(tools[slug].name for slug in project.tools),
    ]
    ends = Counter(_words(name)[-1] for name in dict.fromkeys(names) if _words(name))
    things = {*_words(project.thing), *_words(project.things)}
    once = {word for word, count in ends.items() if count == 1} - things
    return tuple(_uses(step, project, supplies, tools, once) for step in project.steps)


def _uses(step: Step, project: Project, supplies: Supplies, tools: Tools, once: set[str]) -> StepUses:
    said = _words(step.sentence)
    named = tuple(part for part in project.parts if _names(part.name, said, once))
    return StepUses(
        parts=(*_cut_first(project, said, named), *named),
        uses=tuple(use for use in _worked_in(project) if _names(supplies[use.supply].name, said, once)),
        tools=tuple(slug for slug in _all_tools(project) if _takes(tools[slug], project, said, once)),
    )


def _cut_first(project: Project, said: Sequence[str], named: Sequence[Part]) -> tuple[Part, ...]:
    """A step that cuts what is made, or names no part, cuts the base: “Cut, score and fold”."""
    base, thing = project.parts[:1], _words(project.thing)
    cuts = "cut" in said and (not named or (bool(thing) and thing[-1] in said))
    return base if cuts and base[0] not in named else ()


def _worked_in(project: Project) -> Iterator[Use]:
    """Packing comes after the last step, and what sticks is named with any of them."""
    yield from (use for use in project.uses if use.purpose is Purpose.WORKED_IN)


def _all_tools(project: Project) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*project.tools, *(work.tool for work in project.works if work.tool))))


def _takes(tool: Tool, project: Project, said: Sequence[str], once: set[str]) -> bool:
    """By its name, or by the verb of what it does: stamping for stamps, cutting for a knife."""
    if _names(tool.name, said, once):
        return True
    kinds = {work.kind for work in project.works if work.tool == tool.slug}
    verbs = {verb for kind in kinds for verb in _VERBS.get(kind, (kind.value,))}
    if not kinds and any(word in tool.kind for word in _CUTS):
        verbs = {"cut"}
    return any(word in verbs for word in said)


def _names(name: str, said: Sequence[str], once: set[str]) -> bool:
    words = _words(name)
    if not words:
        return False
    if any(said[i : i + len(words)] == words for i in range(len(said) - len(words) + 1)):
        return True
    return words[-1] in once and words[-1] in said


def _words(text: str) -> list[str]:
    """In small letters, without an article and the ending of a plural."""
    found = [_singular(word) for word in _WORD.findall(text.lower())]
    return [word for word in found if word not in ("the", "a", "an", "of", "each")]


def _singular(word: str) -> str:
    if word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word
