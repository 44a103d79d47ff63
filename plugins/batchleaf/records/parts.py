"""The parts of a make: sizes worked out, papers found, images looked up."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Fold, Origin, Part, ShownSide
from batchleaf.facts.shapes import RECTANGLE, Shape
from batchleaf.facts.spots import Spot
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, parse_length, parse_size
from batchleaf.records.bases import BaseLine, read_base
from batchleaf.records.cut_to_shape import fitted, read_features
from batchleaf.records.folds import Blank
from batchleaf.records.grammar import read_count, read_extra
from batchleaf.records.images import images_of
from batchleaf.records.known import KnownTools
from batchleaf.records.made_of import ANY_LETTER, BASE_LETTER, Line, MadeOf, PartLine, lettered, lid_letter
from batchleaf.records.origins import Origins, origin_of, own_size
from batchleaf.records.papers import NOTHING, Papers, Source
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import one_of
from batchleaf.records.spots import read_spots

BASE: Final = "base"
"""The name of the part that carries the others, and of the role that fills it."""
LID: Final = "lid"
"""The name of the lid of a box, and of the role that fills it."""


@dataclass(frozen=True, slots=True)
class PartsRead:
    """The base and the parts in the order written, and their lines with a letter each.

    ``lost``: the letters of those that cannot be read.
    """

    base: BaseLine | None
    parts: tuple[Part, ...]
    lines: tuple[PartLine, ...]
    lost: frozenset[str]


def read_parts(
    makeup: MadeOf,
    papers: Callable[[Line | PartLine], Papers],
    tools: KnownTools,
    report: Report,
) -> PartsRead:
    """The base and the parts; ``papers`` finds what a line names, which a design may leave open."""
    reader = _PartsReader(papers, tools, report, makeup.lost)
    base = reader.base(makeup.base, lid_letter(makeup.parts)) if makeup.base else None
    of_base = {BASE_LETTER, *(part.letter for part in reader.parts)} if makeup.base else ()
    lines = lettered(makeup.parts, of_base, report)
    for line in lines:
        reader.part(line)
    return PartsRead(base, tuple(reader.parts), lines, frozenset(reader.lost))


class _PartsReader:
    """Knows the parts read so far: a part may be measured from, or cut from the papers of, an earlier one."""

    def __init__(
        self,
        papers: Callable[[Line | PartLine], Papers],
        tools: KnownTools,
        report: Report,
        lost: frozenset[str],
    ) -> None:
        self._papers, self._tools, self._report = papers, tools, report
        self._faces: dict[str, Size] = {}
        self._origins = Origins(report)
        self._last = ""
        self.lost = set(lost)
        self.parts: list[Part] = []

    def base(self, line: Line, lid: str) -> BaseLine | None:
        """The part that carries the others, which sit on its folded front, and the lid of a box."""
        papers = self._papers(line)
        base = self._report.read(line.place, read_base, line.text, line.unit)
        source = papers.role(BASE)
        self._last = BASE_LETTER
        if base is None:
            self.lost.add(BASE_LETTER)
            return None
        if source is None:
            self._report.error(line.place, "no paper is named for the base; write it under papers")
        self._of_base(base, BASE, Blank(base.size, base.scores), source or NOTHING, line)
        if base.lid:
            source = papers.role(LID) if papers.has_role(LID) else source
            self._of_base(base, LID, base.lid, source or NOTHING, line, lid)
        return base

    def _of_base(
        self,
        base: BaseLine,
        name: str,
        blank: Blank,
        source: Source,
        line: Line,
        letter: str = BASE_LETTER,
    ) -> None:
        papers = self._papers(line)
        part = Part(
            letter=letter,
            name=name,
            size=blank.size,
            each=1,
            papers=source.papers,
            turns=papers.let_turn(source, ShownSide.FRONT),
            fold=base.fold,
            scores=blank.scores,
            origin=Origin.READY if base.ready else origin_of(source, papers),
            any_of=source.any_of,
            room=base.room_of(blank),
            shape=base.shape if name == BASE else RECTANGLE,
            place=line.place,
        )
        self._remember(part, source, part.folded_size)
        self._last = letter

    def part(self, line: PartLine) -> None:
        """One part: remembered, or lost with its problems told."""
        before = self._report.mark()
        part = self._part(line)
        if not line.own:
            self._report.reword(before, lambda told: f"in part {line.letter} of the design: {told}")
        if part is None:
            self.lost.add(line.letter)
        self._last = line.letter

    def _part(self, line: PartLine) -> Part | None:
        written, read = line.written, self._report.read
        papers, shown = self._papers(line), ShownSide(line.written.side)
        before = self._report.mark()
        below = self._below(line)
        source, origin = self._origins.of(line, papers, self._may_be)
        size = self._size(line, below, source, papers)
        shape = self._shape(line, size)
        each = read(line.at("each"), read_count, written.each)
        extra = read(line.at("extra"), read_extra, written.extra)
        oversize = self._oversize(line)
        spots = self._spots(line)
        stamps = images_of(written.stamp, line.at("stamp"), self._tools, self._report)
        dies = images_of(written.die, line.at("die"), self._tools, self._report)
        if self._report.errors_since(before) or size is None or each is None or extra is None:
            return None
        part = Part(
            letter=line.letter,
            name=line.name,
            size=size,
            each=each,
            papers=source.papers,
            turns=written.turn == "yes" and papers.let_turn(source, shown),
            origin=origin,
            extra=extra,
            any_of=source.any_of,
            oversize=oversize or Fraction(0),
            before=written.before or "",
            side=shown,
            below=below or "",
            spots=spots,
            stamps=stamps,
            dies=dies,
            shape=shape,
            place=line.place,
        )
        self._remember(part, source, size)
        return part

    def _spots(self, line: PartLine) -> tuple[Spot, ...]:
        text, place = line.written.at, line.at("at")
        spots = self._report.read(place, read_spots, text, line.unit) if text else None
        return tuple(replace(spot, place=place) for spot in spots or ())

    def _shape(self, line: PartLine, size: Size | None) -> Shape:
        """What it is cut to; of a part whose size is not known only how that is written is looked at."""
        text, place = line.written.shape, line.at("shape")
        features = self._report.read(place, read_features, text, line.unit) if text else None
        if features is None or size is None:
            return RECTANGLE
        return self._report.read(place, fitted, features, size, Fold.NONE, line.unit) or RECTANGLE

    def _oversize(self, line: PartLine) -> Fraction | None:
        text = line.written.oversize
        return self._report.read(line.at("oversize"), parse_length, text, line.unit) if text else None

    def _remember(self, part: Part, source: Source, face: Size) -> None:
        self._faces[part.letter] = face
        self._origins.remember(part, source)
        self.parts.append(part)

    def _may_be(self, letter: str) -> bool:
        """Whether a part of that letter is there, or would be if it could be read."""
        return letter in self._faces or not self.lost.isdisjoint({letter, ANY_LETTER})

    def _below(self, line: PartLine) -> str | None:
        """The letter of the part below: the one named, else the one before."""
        on = line.written.on
        if on is None or self._may_be(on):
            return on or self._last
        known = f"; write {one_of(self._faces)}" if self._faces else ""
        self._report.error(line.at("on"), f"“{on}” is not the letter of a part before this one{known}")
        return None

    def _size(self, line: PartLine, below: str | None, source: Source, papers: Papers) -> Size | None:
        written = line.written
        if written.size and written.border:
            self._report.error(line.at("border"), "both a size and a border are given; leave one out")
            return None
        if written.size:
            return self._report.read(line.at("size"), parse_size, written.size, line.unit)
        if written.border:
            return self._report.read(line.at("border"), self._within, written.border, line, below)
        if written.ready:
            return self._report.read(line.place, own_size, tuple(papers.supplies(source)))
        if not line.mended:
            sentence = "this part has no size; write size, or border for a layer so much smaller"
            self._report.error(line.place, sentence)
        return None

    def _within(self, border: str, line: PartLine, below: str | None) -> Size | None:
        """The size that leaves a border on each side of the part below."""
        length = parse_length(border, line.unit)
        face = self._faces.get(below or "")
        if face is None and (below is None or (below and self._may_be(below))):
            return None
        if face is None:
            raise MeasureError("there is no part before this one to lie on; write a size")
        size = Size(face.width - 2 * length, face.height - 2 * length)
        if size.width <= 0 or size.height <= 0:
            raise MeasureError(f"a border of “{border}” leaves nothing of the part below")
        return size
