"""Which papers may meet in one make: ``no paper twice``, ``B and C alike``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.facts import Collating, Part, Place, Rule
from batchleaf.measure.errors import MeasureError
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import ANY_LETTER, Line
from batchleaf.records.parts import PartsRead
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import one_of

_WHOLE: Final = {rule.value: rule for rule in Rule}
"""What is said of all parts."""
_VERBS: Final = {"alike": Rule.ALIKE, "differ": Rule.NONE_TWICE}
"""What is said of single parts, behind their letters."""
_LETTERS: Final = r"[A-Z](?:(?:\s*,\s*|\s+and\s+|\s*,\s*and\s+)[A-Z])*"
_CLAUSE: Final = rf"(?:{_LETTERS}\s+(?:{'|'.join(_VERBS)})|{'|'.join(_WHOLE)})"


@dataclass(frozen=True, slots=True)
class CollateLine:
    """What is said of parts by their letters, and the rule for all others; ``None``: nothing is said."""

    named: tuple[tuple[tuple[str, ...], Rule], ...]
    others: Rule | None

    @property
    def letters(self) -> tuple[str, ...]:
        """All letters that are named, in the order written."""
        return tuple(letter for letters, _ in self.named for letter in letters)


def read_collate(text: str) -> CollateLine:
    """``no paper twice`` · ``B and C alike`` · ``any, B, C and D differ``. Raises :class:`MeasureError`."""
    if not re.fullmatch(rf"{_CLAUSE}(?:\s*,\s*{_CLAUSE})*", " ".join(text.split())):
        raise MeasureError(
            f"“{text}” is no rule for the papers of one make; write {one_of(_WHOLE)},"
            " or of single parts for example B and C alike, or B and C differ"
        )
    clauses = re.findall(_CLAUSE, " ".join(text.split()))
    whole = [_WHOLE[clause] for clause in clauses if clause in _WHOLE]
    named = tuple(_of_parts(clause) for clause in clauses if clause not in _WHOLE)
    if len(whole) > 1:
        raise MeasureError(f"“{text}” has two rules for all parts; leave one of them out")
    line = CollateLine(named, whole[0] if whole else None)
    for letter in line.letters:
        if line.letters.count(letter) > 1:
            raise MeasureError(f"“{text}” names {letter} twice, and a part follows one rule")
    return line


def _of_parts(clause: str) -> tuple[tuple[str, ...], Rule]:
    letters, _, verb = clause.rpartition(" ")
    return tuple(re.findall(r"[A-Z]", letters)), _VERBS[verb]


def check_collate(line: Line, parts: PartsRead, report: Report) -> CollateLine | None:
    """What a line says, with a problem for each letter that no part has."""
    said = report.read(line.place, read_collate, line.text)
    there = [part.letter for part in parts.parts]
    for letter in said.letters if said else ():
        if letter not in there and parts.lost.isdisjoint({letter, ANY_LETTER}):
            known = f"; write {one_of(there)}" if there else ""
            report.error(line.place, f"there is no part {letter} to collate{known}")
    return said


def collating_of(
    line: Line | None, parts: PartsRead, known: KnownSupplies, report: Report
) -> tuple[Collating, ...]:
    """The rules of a batch, for every part that comes from several papers and those that are named."""
    said = check_collate(line, parts, report) if line else None
    several = [part for part in parts.parts if part.has_several_papers]
    if line and line.own and said and said.others and not (several or parts.lost):
        report.notice(line.place, f"no part comes from several papers, so “{line.text}” rules nothing")
    named = [Collating(letters, rule) for letters, rule in said.named] if said else []
    rest = [part for part in several if not said or part.letter not in said.letters]
    groups = [*named, *_of_the_rest(rest, (said and said.others) or Rule.MIXED, known)]
    return tuple(_in_order(groups, parts.parts, line.place if line else None))


def _in_order(groups: Sequence[Collating], parts: Sequence[Part], place: Place | None) -> Iterator[Collating]:
    """The groups and their letters in the order of the parts; letters of lost parts fall out."""
    told = set[str]()
    for part in parts:
        for group in groups:
            if part.letter in group.letters and part.letter not in told:
                letters = tuple(one.letter for one in parts if one.letter in group.letters)
                told |= {*letters}
                yield replace(group, letters=letters, place=place or part.place)


def _of_the_rest(rest: Sequence[Part], rule: Rule, known: KnownSupplies) -> Iterator[Collating]:
    """Mixed papers are ruled apart where parts have none in common: there none could come twice."""
    if rest and rule is not Rule.MIXED:
        yield Collating(tuple(part.letter for part in rest), rule)
        return
    groups: list[list[Part]] = []
    for part in rest:
        mine = [group for group in groups if any(_share(part, other, known) for other in group)]
        groups = [group for group in groups if group not in mine]
        groups.append([*(other for group in mine for other in group), part])
    for group in groups:
        yield Collating(tuple(part.letter for part in group), rule)


def _share(one: Part, other: Part, known: KnownSupplies) -> bool:
    """Whether both may come from one paper; a pad holds its numbered papers."""
    ours, theirs = _with_pads(one, known), _with_pads(other, known)
    return bool({*one.papers} & theirs or {*other.papers} & ours)


def _with_pads(part: Part, known: KnownSupplies) -> frozenset[str]:
    pads = (supply.pad for slug in part.papers if (supply := known.get(slug)))
    return frozenset((*part.papers, *pads)) - {""}
