"""Jobs for the cutting planner: from a file to the question it asks.

Lengths may be improper fractions (``17/2``), as programs write them and as answers do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm
from typing import Final, TypeVar

from batchleaf.facts import Problem
from batchleaf.facts.jobs import (
    AskedJob,
    CostQuestion,
    FillQuestion,
    Job,
    JobQuestion,
    MakesQuestion,
    Offer,
    PartKind,
    Stock,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_length, parse_number, parse_size, with_wholes
from batchleaf.records.grammar import read_count, read_extra
from batchleaf.records.nodes import Node, Path, place_of
from batchleaf.records.report import Report
from batchleaf.records.shape import shaped
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.written.jobs import JobPartWritten, JobSheetWritten, JobWritten
from batchleaf.records.yaml_text import lines_of, read_yaml

MOST: Final = "most"
T = TypeVar("T")


def read_job(data: bytes, file: str) -> tuple[AskedJob | None, tuple[Problem, ...]]:
    """The question that a job file asks, or everything that is wrong with it."""
    node, problems = read_yaml(data, file)
    if node is None:
        return None, _with_lines(problems, data)
    shape = shaped(node, JobWritten, "a job")
    report = Report()
    report.take((*problems, *shape.problems))
    if shape.written is None:
        return None, _with_lines(report.found, data)
    told = {problem.place for problem in report.found}
    mark = report.mark()
    asked = _Reading(node, shape.written, report).asked()
    report.forget_repeats(mark, told)
    return (None if report.errors_since(0) else asked), _with_lines(sorted(report.found), data)


def _with_lines(problems: Iterable[Problem], data: bytes) -> tuple[Problem, ...]:
    """Each with the line that it speaks of."""
    lines = lines_of(data.decode(errors="replace"))
    return tuple(
        replace(one, line_text=lines[one.place.line - 1]) if one.place.line <= len(lines) else one
        for one in problems
    )


@dataclass(frozen=True, slots=True)
class _Reading:
    node: Node
    written: JobWritten
    report: Report

    @property
    def unit(self) -> Unit:
        return Unit(self.written.unit or Unit.MM)

    def asked(self) -> AskedJob | None:
        stocks, parts = self._stocks(), self._parts()
        kerf = self._lost("kerf", self.written.kerf) + self._lost("gap", self.written.gap)
        question = self._question(stocks, parts, kerf)
        return AskedJob(question, self.unit) if question else None

    # --- sheets and parts --------------------------------------------------------

    def _stocks(self) -> tuple[Stock, ...]:
        self._each_once("sheets", [sheet.id for sheet in self.written.sheets])
        if not self.written.sheets:
            self._error("a job needs a sheet to cut from", "sheets")
        return tuple(self._stock(at, sheet) for at, sheet in enumerate(self.written.sheets))

    def _stock(self, at: int, sheet: JobSheetWritten) -> Stock:
        scrap = sheet.scrap == "yes"
        cost = self._read(("sheets", at, "cost"), sheet.cost, read_cost)
        return Stock(
            sheet.id,
            self._size(("sheets", at, "size"), sheet.size),
            self._read(("sheets", at, "have"), sheet.have, read_extra),
            Fraction(0 if scrap else 1) if cost is None else cost,
            scrap,
            sheet.id,
        )

    def _parts(self) -> tuple[PartKind, ...]:
        self._each_once("parts", [part.id for part in self.written.parts])
        if not self.written.parts:
            self._error("a job needs a part to be cut", "parts")
        return tuple(self._part(at, part) for at, part in enumerate(self.written.parts))

    def _part(self, at: int, part: JobPartWritten) -> PartKind:
        known = [sheet.id for sheet in self.written.sheets]
        for n, name in enumerate(part.from_ or ()):
            if name not in known:
                hint = did_you_mean(name, known)
                self._error(f"there is no sheet “{name}” in this job{hint}", "parts", at, "from", n)
        return PartKind(
            part.id,
            self._size(("parts", at, "size"), part.size),
            self._read(("parts", at, "each"), part.each, read_count) or 1,
            part.turns != "no",
            tuple(part.from_ or ()),
        )

    def _each_once(self, key: str, ids: Sequence[str]) -> None:
        for at, one in enumerate(ids):
            if one in ids[:at]:
                self._error(f"“{one}” is there twice; each needs an id of its own", key, at, "id")

    # --- what is asked ---------------------------------------------------------------

    def _question(
        self, stocks: tuple[Stock, ...], parts: tuple[PartKind, ...], kerf: Fraction
    ) -> JobQuestion | None:
        want, fill = self.written.want, self.written.fill
        if (want is None) == (fill is None):
            self._error("a job asks one thing: write want: 12, want: most, or fill: with the id of a sheet")
            return None
        if fill is not None:
            return self._filling(fill, stocks, parts, kerf)
        job = Job(stocks, parts, kerf)
        if want == MOST:
            for at, stock in enumerate(stocks):
                if stock.have is None:
                    counted = (
                        "the most is asked of sheets that are counted; write have: and how many there are"
                    )
                    self._error(counted, "sheets", at)
            return MakesQuestion(job)
        makes = self._read(("want",), want, _read_want)
        return CostQuestion(job, makes) if makes else None

    def _filling(
        self, fill: str, stocks: tuple[Stock, ...], parts: tuple[PartKind, ...], kerf: Fraction
    ) -> FillQuestion | None:
        stock = next((one for one in stocks if one.id == fill), None)
        if stock is None:
            hint = did_you_mean(fill, [one.id for one in stocks])
            self._error(f"there is no sheet “{fill}” in this job{hint}", "fill")
            return None
        offered = [
            (part, self._worth(at, part), self._read(("parts", at, "most"), written.most, read_extra))
            for at, (part, written) in enumerate(zip(parts, self.written.parts, strict=True))
            if not part.sources or fill in part.sources
        ]
        unit = Fraction(1, lcm(*(worth.denominator for _, worth, _ in offered)))
        offers = tuple(Offer(part, int(worth / unit), most) for part, worth, most in offered)
        return FillQuestion(stock, offers, unit, kerf)

    def _worth(self, at: int, part: PartKind) -> Fraction:
        """The area in the job's unit where nothing is written."""
        worth = self._read(("parts", at, "worth"), self.written.parts[at].worth, read_cost)
        return part.size.area / self.unit.in_mm**2 if worth is None else worth

    # --- single values ---------------------------------------------------------------

    def _read(self, path: Path, text: str | None, reader: Callable[[str], T]) -> T | None:
        return None if text is None else self.report.read(place_of(self.node, path), reader, text)

    def _size(self, path: Path, text: str) -> Size:
        """Where it cannot be read, a stand-in, so that the rest is read on."""
        return self._read(path, text, self._as_size) or Size(Fraction(1), Fraction(1))

    def _as_size(self, text: str) -> Size:
        return parse_size(with_wholes(text), self.unit)

    def _lost(self, key: str, text: str | None) -> Fraction:
        return self._read((key,), text, self._as_lost) or Fraction(0)

    def _as_lost(self, text: str) -> Fraction:
        return Fraction(0) if text.strip() == "0" else parse_length(with_wholes(text), self.unit)

    def _error(self, sentence: str, *path: str | int) -> None:
        self.report.error(place_of(self.node, path), sentence)


def read_cost(text: str) -> Fraction:
    """A plain number, perhaps none. Raises :class:`MeasureError`."""
    return parse_number(with_wholes(text))


def _read_want(text: str) -> int:
    try:
        return read_count(text)
    except MeasureError:
        raise MeasureError(
            f"“{text}” is no number of makes; write a whole number from 1 to 99999, or most"
        ) from None
