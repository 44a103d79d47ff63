"""One line of bench work: ``round A top, corner-punch`` · ``emboss D, heat-tool, dry 2 min``."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import CORNERS, Moment, Wait, Waiting, Work, WorkKind
from batchleaf.measure.durations import parse_minutes
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_length
from batchleaf.measure.spelling import spell_length
from batchleaf.records.shape_problems import did_you_mean, one_of

BY_HAND: Final = "by hand"
_WORKS: Final = {kind.value: kind for kind in WorkKind}
_MOMENTS: Final = {moment.value: moment for moment in Moment}
_ALSO: Final = re.compile(r"(?:(?P<die>die\s+cut)|round(?:\s+the)?\s+corners?(?:\s+of)?)(?=\s)")
"""Longer ways to say ``die-cut`` and ``round``."""
_LETTER: Final = r"[A-Z](?![\w-])"
_LETTERS: Final = rf"{_LETTER}(?:(?:\s*,\s*and\s+|\s*,\s*|\s+and\s+){_LETTER})*"
_HEAD: Final = re.compile(rf"(?P<work>\S+)\s+(?P<letters>{_LETTERS})(?P<rest>[^,]*)(?P<more>,.*)?")
_SCORED: Final = re.compile(r"at\s+(?P<at>.*\S)\s+(?P<way>across|down)")
_WAIT: Final = re.compile(r"(?P<what>dry|wait)\b\s*(?P<time>.*)")


@dataclass(frozen=True, slots=True)
class BenchLine:
    """What one line says; ``named``: what stands in it by its short name, a tool or a supply.

    ``by_hand``: no tool, though one might be supposed.
    """

    kind: WorkKind
    letters: tuple[str, ...]
    where: str = ""
    at: tuple[Fraction, ...] = ()
    runs_down: bool = False
    moment: Moment | None = None
    wait: Wait | None = None
    times: int = 0
    by_hand: bool = False
    named: tuple[str, ...] = ()


def read_bench(text: str, unit: Unit) -> BenchLine:
    """A line of ``bench``; ``unit`` counts for lengths that name none. Raises :class:`MeasureError`."""
    plain = " ".join(text.split())
    short = _ALSO.sub(lambda found: "die-cut" if found["die"] else "round", plain, count=1)
    kind, head = _work_in(short), _HEAD.fullmatch(short)
    if head is None:
        example = _example(kind)
        raise MeasureError(f"“{text}” does not say which part by its letter; write for example {example}")
    letters = tuple(re.findall(_LETTER, head["letters"]))
    for letter in letters:
        if letters.count(letter) > 1:
            raise MeasureError(f"“{text}” names {letter} twice; once is enough")
    line = _placed(BenchLine(kind, letters), head["rest"].strip(), unit)
    said: dict[str, str] = {}
    for piece in (head["more"] or "").split(",")[1:]:
        line = _with_piece(line, piece.strip(), said, text)
    return line


def _example(kind: WorkKind) -> str:
    return f"{kind} B at 30 across" if kind is WorkKind.SCORE else f"{kind} A"


def _work_in(text: str) -> WorkKind:
    word = text.partition(" ")[0].rstrip(",")
    if word not in _WORKS:
        hint = did_you_mean(word, _WORKS) or f"; write {one_of(_WORKS)}"
        raise MeasureError(f"“{word}” is no work at the bench{hint}")
    return _WORKS[word]


def _placed(line: BenchLine, rest: str, unit: Unit) -> BenchLine:
    """What stands behind the letters without a comma: where it is scored, rounded or punched."""
    if not rest:
        return line
    match line.kind:
        case WorkKind.SCORE:
            at, runs_down = _scored(rest, unit)
            return replace(line, at=at, runs_down=runs_down)
        case WorkKind.ROUND | WorkKind.PUNCH if rest in CORNERS:
            return replace(line, where=rest)
        case WorkKind.ROUND | WorkKind.PUNCH:
            places = one_of([place for place in CORNERS if place])
            raise MeasureError(f"“{rest}” is no edge or corner of a part; write {places}")
    raise MeasureError(
        f"“{rest}” says nothing behind the letters of {line.kind};"
        f" a comma and what it is done with may follow, like {line.kind} A, by hand"
    )


def _scored(rest: str, unit: Unit) -> tuple[tuple[Fraction, ...], bool]:
    found = _SCORED.fullmatch(rest)
    if found is None:
        raise MeasureError(
            f"“{rest}” does not say where it is scored, and which way the line runs;"
            " write for example at 30 across, or at 20 and 40 down"
        )
    at = tuple(parse_length(piece, unit) for piece in found["at"].split(" and "))
    return at, found["way"] == "down"


def _with_piece(line: BenchLine, piece: str, said: dict[str, str], text: str) -> BenchLine:
    """The line with one more piece of it; ``said``: what was said already, and how."""
    word = piece.partition(" ")[0]
    if piece in _MOMENTS:
        _once("moment", piece, said)
        return replace(line, moment=_MOMENTS[piece])
    if waiting := _WAIT.fullmatch(piece):
        _once("wait", piece, said)
        return replace(line, wait=Wait(Waiting(waiting["what"]), _minutes(waiting["time"], piece)))
    if word == "times":
        _once("times", piece, said)
        return replace(line, times=_times(piece))
    if piece == BY_HAND:
        return replace(line, by_hand=True)
    if word in ("before", "between", "after"):
        raise MeasureError(f"“{piece}” does not say when it is done; write {one_of(_MOMENTS)}")
    if re.fullmatch(r"\S+", piece):
        return replace(line, named=(*line.named, piece))
    raise MeasureError(
        f"“{piece}” in “{text}” is neither a tool or a supply by its short name nor {one_of(_MOMENTS)},"
        " dry 20 min, wait 10 min, times 2 or by hand"
    )


def _once(what: str, piece: str, said: dict[str, str]) -> None:
    if what in said:
        raise MeasureError(f"“{said[what]}” and “{piece}” say one thing twice; leave one out")
    said[what] = piece


def _minutes(time: str, piece: str) -> int:
    """With its unit, since ``20`` alone may be meant in hours."""
    try:
        minutes = parse_minutes(time) if re.search(r"h|min|:", time) else 0
    except MeasureError:
        minutes = 0
    if not minutes:
        raise MeasureError(f"“{piece}” does not say how long; write for example dry 20 min, or wait 1 h 30")
    return minutes


def _times(piece: str) -> int:
    number = piece.partition(" ")[2]
    if not re.fullmatch(r"[1-9][0-9]?", number):
        raise MeasureError(f"“{piece}” does not say how often; write a number from 1 to 99, like times 2")
    return int(number)


def spell_work(work: Work, unit: Unit) -> str:
    """The line of a work with all that it means, which reads back as the same."""
    pieces = [f"{work.kind} {_all_of(work.letters)}{_where(work, unit)}", work.tool or BY_HAND, work.supply]
    pieces += [work.moment, f"times {work.times}" if work.times else "", _spell_wait(work.wait)]
    return ", ".join(piece for piece in pieces if piece)


def _where(work: Work, unit: Unit) -> str:
    if work.at:
        at = " and ".join(spell_length(one, unit) for one in work.at)
        return f" at {at} {'down' if work.runs_down else 'across'}"
    return f" {work.where}" if work.where else ""


def _all_of(letters: tuple[str, ...]) -> str:
    *most, last = letters
    return f"{', '.join(most)} and {last}" if most else last


def _spell_wait(wait: Wait | None) -> str:
    if wait is None:
        return ""
    hours, minutes = divmod(wait.minutes, 60)
    said = [f"{hours} h" if hours else "", f"{minutes} min" if minutes else ""]
    return " ".join([wait.what, *(one for one in said if one)])
