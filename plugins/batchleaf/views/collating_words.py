"""Collated sets in one sentence: ``24 sets, no paper twice; with one more strip there would be 25.``"""

from __future__ import annotations

import string
from collections.abc import Sequence
from itertools import groupby
from typing import Final

from batchleaf.core.collate.collated import Collated, Ruled
from batchleaf.core.collate.question import Paper
from batchleaf.facts import Part, Project, Rule
from batchleaf.measure.amounts import plural
from batchleaf.views.links import together
from batchleaf.views.sentence import Supplies
from batchleaf.views.words import counted, listed, number_word


def sentence_of(found: Collated, project: Project, supplies: Supplies) -> str:
    """How many sets there are by which rule, and what one more would take.

    Where nothing is short and one more takes some of many parts, that is a whole set and not told.
    """
    rest = ""
    if project.begun < found.possible:
        rest = f"; these parts would give {found.possible:,}"
    elif found.missing and (found.sets < project.begun or len({one.letter for one in found.missing}) <= 2):
        more = _more(found, project, supplies)
        rest = f"; with {more} there would be {found.possible + 1:,}"
    return f"{_sets(found, project.begun)}{rest}."


def _sets(found: Collated, begun: int) -> str:
    rule, told = rule_in_words(found), _ruled(found)
    if found.sets == begun:
        return f"{counted(begun, 'set', 'sets')}{', ' if rule else ''}{rule}"
    some = f"{found.sets:,}" if found.sets else "None"
    of = f"{some} of the {counted(begun, 'set', 'sets')}"
    one = found.sets < 2
    if len(found.ruled) > 1 or not rule:
        return f"{of} {'keeps' if one else 'keep'} the rules: {rule}" if rule else of
    if told[0].group.alike:
        return f"{of} {'is' if one else 'are each'} from one paper"
    if found.sets:
        return f"{of} {'has' if one else 'have'} {rule}"
    each = "The set" if begun == 1 else f"Each of the {begun:,} sets"
    return f"{each} has {rule.replace('no', 'a', 1)}"


# --- the rule ---------------------------------------------------------------------

_TIMES: Final = {1: "twice", 2: "more than twice"}


def rule_in_words(found: Collated) -> str:
    """``no paper twice``; with their letters where there are several rules, empty where there is none."""
    return ", ".join(_rule(one, alone=len(found.ruled) == 1) for one in _ruled(found))


def _ruled(found: Collated) -> list[Ruled]:
    """Those whose rule says something: one part of one paper cannot but keep it."""
    return [one for one in found.ruled if one.group.slots > 1 and one.by.rule is not Rule.ANY]


def _rule(one: Ruled, *, alone: bool) -> str:
    letters = listed([kind.letter for kind in one.group.kinds])
    if one.group.alike:
        return "each from one paper" if alone else f"{letters} from one paper"
    most, noun = one.group.most, "side of a paper" if one.group.by_side else "paper"
    times = _TIMES.get(most, f"more than {number_word(most)} times")
    return f"no {noun} {times}{'' if alone else f' in {letters}'}"


# --- what one more takes ------------------------------------------------------------


def _more(found: Collated, project: Project, supplies: Supplies) -> str:
    """``one more strip of dusk rose``; ``2 more squares of catkin paper and 2 of nutshell paper``."""
    parts = {part.letter: part for part in project.parts}
    all_papers = {kind.letter: len(kind.cut) for one in found.ruled for kind in one.group.kinds}
    before = ""
    told: list[str] = []
    for (letter, count), some in groupby(found.missing or (), key=lambda one: (one.letter, one.count)):
        papers = [one.papers for one in some]
        noun = "" if letter == before else f" more {_named(parts[letter], count)}"
        each = " each" if len(papers) > 1 else ""
        of = _of(papers, all_papers[letter], supplies)
        told.append(f"{'one' if count == 1 else f'{count:,}'}{noun}{each}{of}")
        before = letter
    return listed(told)


def _named(part: Part, count: int) -> str:
    return part.name if count == 1 else plural(part.name)


def _of(papers: Sequence[tuple[Paper, ...]], there: int, supplies: Supplies) -> str:
    """Of each of several papers, of any of several, or of whichever of them all."""
    if len(papers) == 1:
        return "" if len(papers[0]) == there else f" of {_listed(papers[0], supplies, 'or')}"
    return f" of {_listed([one for some in papers for one in some[:1]], supplies, 'and')}"


def _listed(papers: Sequence[Paper], supplies: Supplies, last: str) -> str:
    named = together((supplies[one.supply] for one in papers if not one.nth), last)
    names = [*(supply.name for supply in named), *(paper_name(one, supplies) for one in papers if one.nth)]
    return listed(names, last)


def paper_name(paper: Paper, supplies: Supplies) -> str:
    """``dusk rose``, ``shoal pad 4``; ``shoal pad b`` where the record does not say which."""
    name = supplies[paper.supply].name
    return f"{name} {mark_of(paper, supplies)}" if paper.nth else name


def mark_of(paper: Paper, supplies: Supplies) -> str:
    """The number of a paper in its pad, ``a``, ``b``, ``c`` where the record does not say which it is.

    Empty for what is no paper of a pad, or goes by its kind.
    """
    supply = supplies[paper.supply]
    if paper.nth:
        return string.ascii_lowercase[paper.nth - 1] if paper.nth <= _LETTERS else f"no. {paper.nth}"
    return str(supply.number) if supply.pad and supply.named else ""


_LETTERS: Final = len(string.ascii_lowercase)
