"""The parts of a make: letters given, sizes worked out, papers found."""

from __future__ import annotations

import string
from collections.abc import Iterator
from typing import Final

from batchleaf.facts import Origin, Part, Place
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_length, parse_size
from batchleaf.records.bases import BaseLine
from batchleaf.records.folds import Blank
from batchleaf.records.grammar import read_count, read_part_key
from batchleaf.records.nodes import Node, key_place, place_of
from batchleaf.records.papers import Papers, Roles
from batchleaf.records.written import PartWritten, ProjectWritten

BASE: Final = "base"
"""The name of the part that carries the others, and of the role that fills it."""
BASE_LETTER: Final = "A"
LID: Final = "lid"
"""The name of the lid of a box, and of the role that fills it."""


def read_parts(
    node: Node,
    written: ProjectWritten,
    base: BaseLine | None,
    roles: Roles,
    papers: Papers,
    unit: Unit,
) -> Iterator[Part]:
    """The base, and the parts in the order written."""
    reader = _PartsReader(node, roles, papers, unit)
    lid_letter = _lid_letter(written) if base and base.lid else ""
    if base is not None:
        yield from reader.base(base, lid_letter)
    letters = _letters(node, written, papers, lid_letter)
    for key, part in written.parts.items():
        read = reader.part(key, next(letters), part)
        if read is not None:
            yield read


class _PartsReader:
    """Knows the parts read so far: a part may be measured from, or cut from the papers of, an earlier one."""

    def __init__(self, node: Node, roles: Roles, papers: Papers, unit: Unit) -> None:
        self._node, self._roles, self._papers, self._unit = node, roles, papers, unit
        self._faces: dict[str, Size] = {}
        self._cut_from: dict[str, tuple[str, ...]] = {}
        self._below = ""

    def base(self, base: BaseLine, lid_letter: str) -> Iterator[Part]:
        """The part that carries the others, which sit on its folded front, and the lid of a box."""
        place = place_of(self._node, ("base",))
        if BASE not in self._roles:
            self._papers.report.error(place, "no paper is named for the base; write it under papers")
        found = self._roles.get(BASE, ())
        yield self._of_base(base, BASE_LETTER, BASE, Blank(base.size, base.scores), found)
        if base.lid:
            yield self._of_base(base, lid_letter, LID, base.lid, self._roles.get(LID, found))

    def _of_base(self, base: BaseLine, letter: str, name: str, blank: Blank, papers: tuple[str, ...]) -> Part:
        part = Part(
            letter,
            name,
            blank.size,
            1,
            papers,
            turns=self._papers.let_turn(papers),
            fold=base.fold,
            scores=blank.scores,
            origin=Origin.READY if base.ready else Origin.CUT,
            place=place_of(self._node, ("base",)),
        )
        self._remember(letter, part.folded_size, papers)
        return part

    def part(self, key: str, letter: str, written: PartWritten) -> Part | None:
        """One part, or ``None`` with problems."""
        path = ("parts", key)
        report = self._papers.report
        size = report.read(self._size_place(path, written), self._size, written)
        each = report.read(place_of(self._node, (*path, "each")), read_count, written.each)
        found = self._papers_of(written, place_of(self._node, (*path, "paper")))
        if size is None or each is None:
            return None
        self._remember(letter, size, found)
        turns = written.turn == "yes" and self._papers.let_turn(found)
        name = read_part_key(key)[1]
        return Part(letter, name, size, each, found, turns, place=key_place(self._node, path))

    def _remember(self, letter: str, face: Size, papers: tuple[str, ...]) -> None:
        self._faces[letter], self._cut_from[letter], self._below = face, papers, letter

    def _size_place(self, path: tuple[str, str], written: PartWritten) -> Place:
        if written.border:
            return place_of(self._node, (*path, "border"))
        return place_of(self._node, (*path, "size")) if written.size else key_place(self._node, path)

    def _size(self, written: PartWritten) -> Size:
        if written.size and written.border:
            raise MeasureError("both a size and a border are given; leave one out")
        if written.size:
            return parse_size(written.size, self._unit)
        if not written.border:
            raise MeasureError("this part has no size; write size, or border for a layer so much smaller")
        border = parse_length(written.border, self._unit)
        below = self._faces.get(written.on or self._below)
        if below is None:
            raise MeasureError(f"there is no part {written.on or 'before this one'} to lie on")
        size = Size(below.width - 2 * border, below.height - 2 * border)
        if size.width <= 0 or size.height <= 0:
            raise MeasureError(f"a border of “{written.border}” leaves nothing of the part below")
        return size

    def _papers_of(self, written: PartWritten, place: Place) -> tuple[str, ...]:
        paper = written.paper or ""
        like = paper.removeprefix("as ") if paper.startswith("as ") else ""
        if like in self._cut_from:
            return self._cut_from[like]
        if like:
            self._papers.report.error(place, f"there is no part {like} before this one to share a paper with")
            return ()
        role = self._roles.get(paper)
        return self._papers.named_in(paper, place, self._roles) if role is None else role


def _lid_letter(written: ProjectWritten) -> str:
    """L, or where a part has that the first that is free."""
    taken = {BASE_LETTER, *(read_part_key(key)[0] for key in written.parts)}
    return next((letter for letter in f"L{string.ascii_uppercase}" if letter not in taken), "")


def _letters(node: Node, written: ProjectWritten, papers: Papers, lid_letter: str) -> Iterator[str]:
    """The letter of each part in order: the one written, else the next that is free."""
    given = [read_part_key(key)[0] for key in written.parts]
    of_base = {BASE_LETTER, lid_letter} - {""} if written.base else set[str]()
    taken = {*given, *of_base}
    free = (letter for letter in string.ascii_uppercase if letter not in taken)
    seen = set(of_base)
    for key, own in zip(written.parts, given, strict=True):
        place = key_place(node, ("parts", key))
        letter = own or next(free, "")
        if not letter:
            papers.report.error(place, "there are more parts here than letters; one make has at most 26")
        elif letter in seen:
            papers.report.error(place, f"the letter {letter} is taken by another part")
        seen |= {letter} - {""}
        yield letter
