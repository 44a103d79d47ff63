"""Bytes of a record to located nodes, or located problems.

One pass over the parser's events. What makes YAML surprising is refused here
with a sentence: anchors, aliases, tags, a key written twice. All scalars stay
text, so that ``no``, ``12:30``, ``010`` and ``1.10`` mean what they look like.
"""

from __future__ import annotations

import re
from codecs import BOM_UTF8
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final, Protocol

import yaml

from batchleaf.facts import NOWHERE, Place, Problem
from batchleaf.measure.signs import unclosed_turn, without_turns
from batchleaf.records.nodes import Listing, Mapping, Node, Scalar

LARGEST: Final = 512 * 1024
"""Bytes: no record that a person writes is longer."""
DEEPEST: Final = 12
SHOWN_AGAIN: Final = 100
"""Letters: what is longer is not said again in a sentence."""
LONGEST_KEY: Final = 400
"""Letters: keys are quoted whole in sentences, and names of parts are keys."""

try:
    from yaml import CBaseLoader as _Loader
except ImportError:  # PyYAML built without libyaml: slower, the same events
    from yaml import BaseLoader as _Loader  # type: ignore[assignment]


_LINE_END: Final = re.compile("\r\n|[\r\n\x85\u2028\u2029]")
"""What ends a line in YAML 1.1; Python's own splitting knows more."""
_NOT_SHOWN: Final = re.compile("[^\t\n\r\x20-\x7e\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What YAML 1.1 does not count as printable (section 5.1), and the end of a line of old mainframes."""
_SWALLOWED: Final = re.compile(r"\s+(#[^\s#]\S*)")
# Nothing is given back once it is read, so that a line of any length is looked through once.
_UNSPACED: Final = re.compile(r"\s*+(?:(-)[^\s-]|(?:- )?+[\w -]++(:)[^\s:])")


def lines_of(text: str) -> tuple[str, ...]:
    """The lines that places count, as they may be shown: a terminal obeys signs that nobody sees."""
    lines = [_NOT_SHOWN.sub("\ufffd", line) for line in _LINE_END.split(text)]
    return tuple(lines[:-1] if len(lines) > 1 and not lines[-1] else lines)


class Refused(Exception):
    """The text cannot be read on; carries the problem."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.sentence)
        self.problem = problem


def read_yaml(data: bytes, file: str) -> tuple[Node | None, tuple[Problem, ...]]:
    """The one document in ``data`` as nodes, with problems; ``None`` where it cannot be read at all."""
    text = ""
    try:
        text = _decoded(data, file)
        reader = _Reader(text, file)
        node = reader.document()
    except Refused as refused:
        return None, (refused.problem,)
    except yaml.MarkedYAMLError as error:
        return None, (_within(text, _syntax_problem(error, text, file)),)
    return node, tuple(reader.problems)


def _decoded(data: bytes, file: str) -> str:
    start = Place(file, 1, 1)
    if len(data) > LARGEST:
        raise Refused(
            Problem(start, f"this file is larger than {LARGEST // 1024} kB; a record is a few lines")
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")) or data[:2].count(0) == 1:
        raise Refused(Problem(start, "this file is in UTF-16; save it as UTF-8"))
    data = data.removeprefix(BOM_UTF8)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        place = _end_of(data[: error.start].decode(), file)
        raise Refused(Problem(place, "this letter is not in UTF-8; save the file as UTF-8")) from None
    if found := _NOT_SHOWN.search(text.replace("\x85", "\n")):
        raise Refused(Problem(_end_of(text[: found.start()], file), _cannot_be_shown(found[0])))
    return text


def _end_of(before: str, file: str) -> Place:
    """Where the text goes on after ``before``."""
    lines = _LINE_END.split(before)
    return Place(file, len(lines), len(lines[-1]) + 1)


def _cannot_be_shown(sign: str) -> str:
    return (
        f"a sign that cannot be shown stands here (U+{ord(sign):04X}); take it out, or write the line again"
    )


def _turns_what_follows(sign: str) -> str:
    return (
        f"a sign that turns the direction of what follows stands here (U+{ord(sign):04X});"
        " take it out, or write the line again"
    )


def _within(text: str, problem: Problem) -> Problem:
    return replace(problem, place=_on_the_page(lines_of(text), problem.place))


def _on_the_page(lines: Sequence[str], place: Place) -> Place:
    """The place, or the end of the text where it lies past that: the parser looks for more below."""
    if place.line > len(lines):
        return replace(place, line=max(len(lines), 1), column=len(lines[-1]) + 1 if lines else 1)
    return replace(place, column=min(place.column, len(lines[place.line - 1]) + 1))


def _letter_at(text: str, place: Place) -> str:
    line = lines_of(text)[place.line - 1 : place.line]
    return line[0][place.column - 1 : place.column] if line else ""


def _syntax_problem(error: yaml.MarkedYAMLError, text: str, file: str) -> Problem:
    mark = error.problem_mark or error.context_mark
    place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file, 1, 1)
    said = error.problem or "the text breaks off"
    if "tab character" in said or _letter_at(text, place) == "\t":
        return Problem(place, "a tab stands where only spaces may stand; indent with spaces")
    if "mapping values are not allowed" in said:
        return Problem(place, _stray_colon(lines_of(text), place))
    if "could not find expected ':'" in said:
        return _missing_space(text, place) or Problem(
            place, "a key stands here without its colon; write “key: value”"
        )
    if "quoted scalar" in (error.context or "") and error.context_mark:
        mark = error.context_mark
        return Problem(Place(file, mark.line + 1, mark.column + 1), "this quote is not closed")
    if "did not find expected" in said or "cannot start any token" in said:
        return _missing_space(text, place) or Problem(
            place,
            _half_quoted(lines_of(text), place)
            or "this does not fit what stands above it; lines of one group begin at the same column,"
            " and a value with quotes in it, or a sign at its start, goes in quotes as a whole",
        )
    return Problem(place, f"the line is not readable as YAML ({said})")


def _stray_colon(lines: Sequence[str], place: Place) -> str:
    """Why a colon cannot stand where it does: curly quotes, a value above it, or no quotes at all."""
    line = lines[place.line - 1]
    if re.match(r"\s*+(?:- |[^:\s][^:]*+: )\s*+[“”„‘’]", line):
        return 'curly quotes do not hold a value together; type straight ones, like "…"'
    above = next((other for other in reversed(lines[: place.line - 1]) if other.strip()), "")
    below_value = re.match(r"(\s*+)([^\s#-][^:]*+): ++[^\s#]", above)
    if (
        below_value
        and len(below_value[2]) <= SHOWN_AGAIN
        and len(line) - len(line.lstrip()) > len(below_value[1])
    ):
        return (
            f"nothing can stand below “{below_value[2]}”, whose value stands behind its colon; begin this"
            f" line where “{below_value[2]}” begins, or move that value down here, key by key"
        )
    return "a colon stands inside a value here; put the whole value in quotes"


def _half_quoted(lines: Sequence[str], place: Place) -> str:
    """A sentence that begins with a quotation, and goes on after it."""
    line = lines[place.line - 1] if place.line <= len(lines) else ""
    found = re.match(r"\s*+(?:- ++|[^:\"\s][^:\"]*+: ++)(\"[^\"]*+\".*\S)", line)
    if found is None or "'" in found[1]:
        return ""
    whole = f", '{found[1]}'" if len(found[1]) <= SHOWN_AGAIN else ""
    return f"what begins with a quote has to end with it; write single quotes around all of it{whole}"


def _missing_space(text: str, place: Place) -> Problem | None:
    """A key or a dash that the value follows without a space, in the line or the one above it."""
    for number in (place.line, place.line - 1):
        line = next(iter(lines_of(text)[max(number - 1, 0) : number]), "")
        if found := _UNSPACED.match(line):
            column = found.end()
            after = "dash" if found[1] else "colon"
            return Problem(
                replace(place, line=number, column=column), f"a space is missing after the {after}"
            )
    return None


class _Spot(Protocol):
    """What the two parsers' own marks have in common; lines and columns count from 0."""

    line: int
    column: int


class _Reader:
    """Builds nodes from the parser's events; problems that do not stop the reading are kept."""

    def __init__(self, text: str, file: str) -> None:
        self._file, self._lines = file, lines_of(text)
        self._events: Iterator[yaml.Event] = yaml.parse(text, Loader=_Loader)
        self._closed = NOWHERE
        self.problems: list[Problem] = []

    def document(self) -> Node:
        """The first document; a second one is refused."""
        node: Node | None = None
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                if node is not None:
                    raise Refused(
                        Problem(self._place(event), "a second document begins here; keep one to a file")
                    )
                node = self._node(next(self._events), 0)
        if node is None:
            raise Refused(Problem(Place(self._file, 1, 1), "nothing is written in this file yet"))
        return node

    def _place(self, event: yaml.Event) -> Place:
        return self._at(event.start_mark)

    def _at(self, mark: _Spot | None) -> Place:
        place = Place(self._file, mark.line + 1, mark.column + 1) if mark else Place(self._file, 1, 1)
        return _on_the_page(self._lines, place)

    def _node(self, event: yaml.Event, depth: int) -> Node:
        place = self._place(event)
        if depth > DEEPEST:
            raise Refused(Problem(place, "this is nested deeper than a record ever is"))
        if isinstance(event, yaml.AliasEvent):
            raise Refused(
                Problem(place, "“*” at the start refers to another place; write the value out, in quotes")
            )
        if getattr(event, "anchor", None) is not None:
            raise Refused(Problem(place, "“&” at the start names a value; put the value in quotes"))
        if getattr(event, "tag", None) is not None:
            raise Refused(Problem(place, "“!” at the start has a special meaning; put the value in quotes"))
        if isinstance(event, yaml.ScalarEvent):
            self._look_behind(event)
            return Scalar(self._shown(event.value, place), place, self._at(event.end_mark))
        flow = isinstance(event, yaml.CollectionStartEvent) and bool(event.flow_style)
        if isinstance(event, yaml.SequenceStartEvent):
            items = tuple(self._items(depth))
            return Listing(items, place, self._end(items, flow=flow), flow=flow)
        entries = tuple(self._entries(depth))
        end = self._end(tuple(value for _, value in entries), flow=flow)
        return Mapping(entries, place, end, flow=flow)

    def _end(self, values: Sequence[Node], *, flow: bool) -> Place:
        """The parser knows where brackets close; lines below one another end with the last value."""
        return self._closed if flow or not values else values[-1].end

    def _shown(self, text: str, place: Place) -> str:
        """Quotes can hold signs by their number that no page may hold."""
        if turn := unclosed_turn(text):
            self.problems.append(Problem(place, _turns_what_follows(turn)))
            text = without_turns(text)
        found = _NOT_SHOWN.search(text)
        if found is None:
            return text
        self.problems.append(Problem(place, _cannot_be_shown(found[0])))
        return _NOT_SHOWN.sub("", text)

    def _look_behind(self, event: yaml.ScalarEvent) -> None:
        """A remark begins with “# ”; a # right before a word was rather meant as part of the value."""
        mark = event.end_mark
        if mark is None or event.style not in (None, ""):
            return
        line = self._lines[mark.line] if mark.line < len(self._lines) else ""
        if swallowed := _SWALLOWED.match(line, mark.column):
            place = Place(self._file, mark.line + 1, swallowed.start(1) + 1)
            sentence = f"“{swallowed[1]}” and what follows is not read; put the whole value in quotes"
            self.problems.append(Problem(place, sentence))

    def _items(self, depth: int) -> Iterator[Node]:
        while not isinstance(event := next(self._events), yaml.SequenceEndEvent):
            yield self._node(event, depth + 1)
        self._closed = self._at(event.end_mark)

    def _entries(self, depth: int) -> Iterator[tuple[Scalar, Node]]:
        seen: dict[str, Place] = {}
        while not isinstance(event := next(self._events), yaml.MappingEndEvent):
            key = self._node(event, depth + 1)
            value = self._node(next(self._events), depth + 1)
            if not isinstance(key, Scalar):
                self.problems.append(Problem(key.place, "a key is a word, not a list"))
            elif len(key.text) > LONGEST_KEY:
                self.problems.append(Problem(key.place, f"a key has at most {LONGEST_KEY} letters"))
            elif key.text in seen:
                first = seen[key.text].line
                self.problems.append(
                    Problem(key.place, f"“{key.text}” is here twice; it stands in line {first} already")
                )
            else:
                seen[key.text] = key.place
                yield key, value
        self._closed = self._at(event.end_mark)
