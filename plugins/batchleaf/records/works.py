"""The bench work of a batch: what its record names, and what follows from scores, stamps and dies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Moment, Origin, Part, Place, Tool, Use, Work, WorkKind
from batchleaf.records.bench_lines import BenchLine, read_bench
from batchleaf.records.known import KnownSupplies, KnownTools, respelt
from batchleaf.records.made_of import ANY_LETTER, Line
from batchleaf.records.parts import PartsRead
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean, one_of
from batchleaf.records.tool_works import may_do, only_one_for

NARROW: Final = Fraction(20)
"""A strip narrower than this, in mm, is hard to hold under a punch that says nothing (common practice)."""
_VERBS: Final = {WorkKind.ROUND: "round corners"}
"""What is not said of a tool in the word of the record alone."""


@dataclass(frozen=True, slots=True)
class NamedWork:
    """A line, the tool and the supply that it names, and where it stands; ``own``: not from a design."""

    line: BenchLine
    tool: Tool | None
    supply: str
    place: Place
    own: bool

    @property
    def spots(self) -> tuple[tuple[WorkKind, str, tuple[Fraction, ...]], ...]:
        """Work, part and place: a line that says where it scores comes on top of the scores of the part."""
        return tuple((self.line.kind, letter, self.line.at) for letter in self.line.letters)


def read_works(
    lines: Sequence[Line], parts: PartsRead, supplies: KnownSupplies, tools: KnownTools, report: Report
) -> tuple[NamedWork, ...]:
    """What the lines of ``bench`` say, as far as they can be read."""
    return tuple(_named_works(lines, parts, _Names(supplies, tools), report))


def _named_works(
    lines: Sequence[Line], parts: PartsRead, names: _Names, report: Report
) -> Iterator[NamedWork]:
    for line in lines:
        before = report.mark()
        said = report.read(line.place, read_bench, line.text, line.unit)
        if said is None:
            continue
        _check_letters(said, parts, line, report)
        tool, supply = names.found(said, line.place, report)
        if not report.errors_since(before):
            yield NamedWork(said, tool, supply, line.place, line.own)


def _check_letters(said: BenchLine, parts: PartsRead, line: Line, report: Report) -> None:
    by_letter = {part.letter: part for part in parts.parts}
    for letter in said.letters:
        part = by_letter.get(letter)
        if part is not None:
            _check_scores(said, part, line, report)
        elif parts.lost.isdisjoint({letter, ANY_LETTER}):
            known = f"; write {one_of(by_letter)}" if by_letter else ""
            report.error(line.place, f"there is no part {letter} to {_verb(said.kind)}{known}")


def _check_scores(said: BenchLine, part: Part, line: Line, report: Report) -> None:
    """A line lies on its part; without a place it is one of the part's own scores."""
    if said.kind is WorkKind.SCORE and not (said.at or part.scores):
        report.error(
            line.place,
            f"nothing says where {part.letter} is scored; write for example score {part.letter} at 30 across",
        )
    far = part.size.width if said.runs_down else part.size.height
    if any(at >= far for at in said.at):
        edge = "width" if said.runs_down else "height"
        report.error(line.place, f"“{line.text}” lies beyond the {edge} of {part.letter}; check the measure")


@dataclass(frozen=True, slots=True)
class _Names:
    """What a line may name: tools of the bench, supplies of the drawer."""

    supplies: KnownSupplies
    tools: KnownTools

    def found(self, said: BenchLine, place: Place, report: Report) -> tuple[Tool | None, str]:
        """The tool and the supply that a line names; a problem for each name that is neither."""
        tools = [tool for slug in said.named if (tool := self.tools.get(slug))]
        supplies = [slug for slug in said.named if not self.tools.get(slug) and self.supplies.get(slug)]
        for slug in said.named:
            if not (self.tools.get(slug) or slug in supplies):
                self._tell_unknown(slug, place, report)
        for what, slugs in (("tools", [tool.slug for tool in tools]), ("supplies", supplies)):
            if len(slugs) > 1:
                both = f"“{slugs[0]}” and “{slugs[1]}”"
                report.error(place, f"{both} are two {what}; write a line for each")
        for tool in tools:
            self._check_kind(said, tool, place, report)
        if tools and said.by_hand:
            report.error(place, f"“by hand” and “{tools[0].slug}” do not go together; leave one out")
        return next(iter(tools), None), next(iter(supplies), "")

    def _check_kind(self, said: BenchLine, tool: Tool, place: Place, report: Report) -> None:
        if not may_do(tool, said.kind):
            report.error(
                place,
                f"“{tool.slug}” is of the kind “{tool.kind}”, which does not {_verb(said.kind)};"
                " write another tool, or by hand",
            )

    def _tell_unknown(self, slug: str, place: Place, report: Report) -> None:
        """Unless its own record cannot be read."""
        silent = Report()
        self.tools.find(slug, place, silent)
        self.supplies.find(slug, place, silent)
        known = (*(one.slug for one in self.tools.all()), *(one.slug for one in self.supplies.all()))
        if len(silent.found) < len((self.tools, self.supplies)):
            return
        if own := respelt(slug, known):
            report.error(place, f"“{slug}” is “{own}” in the records; write it so")
        else:
            hint = did_you_mean(slug, known)
            report.error(place, f"“{slug}” is neither on the bench nor in the drawer{hint}")


def _verb(kind: WorkKind) -> str:
    return _VERBS.get(kind, kind.value)


def tell_unlisted(named: Iterable[NamedWork], uses: Iterable[Use], report: Report) -> None:
    """A notice for each supply that is worked in at the bench and stands nowhere among what is used."""
    used = {use.supply for use in uses}
    for one in named:
        if one.own and one.supply and one.supply not in used:
            report.notice(
                one.place,
                f"“{one.supply}” is worked in here, and nothing counts it; write it under supplies too",
            )


# --- what is meant ---------------------------------------------------------------------


def works_of(named: Sequence[NamedWork], parts: Sequence[Part], tools: Sequence[Tool]) -> tuple[Work, ...]:
    """All bench work: the lines of the record in order, then what follows from the parts.

    ``tools`` are all of the batch. A line of a batch stands instead of what its design says of the
    same work on the same part, and any line instead of what would be supposed.
    """
    own = {spot for one in named if one.own for spot in one.spots}
    said = {spot for one in named for spot in one.spots}
    choice = _Choice(tuple(tools), _sets_of(parts))
    works: list[Work] = []
    for one in named:
        letters = [spot[1] for spot in one.spots if one.own or spot not in own]
        works += _of_line(one, [part for part in parts if part.letter in letters], choice)
    for kind in (WorkKind.DIE_CUT, WorkKind.STAMP, WorkKind.SCORE, WorkKind.FOLD):
        asking = [part for part in parts if _follows(kind, part) and (kind, part.letter, ()) not in said]
        works += _grouped(kind, asking, choice)
    return tuple(works)


def _sets_of(parts: Sequence[Part]) -> frozenset[str]:
    return frozenset(use.tool for part in parts for use in (*part.stamps, *part.dies))


def _follows(kind: WorkKind, part: Part) -> bool:
    """Whether a part is worked on so although no line says it; what is bought ready is scored already."""
    match kind:
        case WorkKind.SCORE | WorkKind.FOLD:
            return bool(part.scores) and part.origin is not Origin.READY
        case WorkKind.STAMP:
            return bool(part.stamps)
    return bool(part.dies)


@dataclass(frozen=True, slots=True)
class _Choice:
    """Chooses tools where none is named; ``sets``: the stamps and dies that parts name."""

    tools: tuple[Tool, ...]
    sets: frozenset[str]

    def of(self, kind: WorkKind, part: Part) -> tuple[str, ...]:
        """The only tool that is there for the work, else the sets of the part, else bare hands."""
        only = only_one_for(kind, (tool for tool in self.tools if tool.slug not in self.sets))
        sets = {WorkKind.STAMP: part.stamps, WorkKind.DIE_CUT: part.dies}.get(kind, ())
        return (only,) if only else tuple(dict.fromkeys(use.tool for use in sets)) or ("",)

    def narrowest(self, slug: str) -> Fraction:
        """The narrowest strip that is held under a tool."""
        limits = [tool.narrowest_strip for tool in self.tools if tool.slug == slug and tool.narrowest_strip]
        return limits[0] if limits else NARROW


def usual_moment(kind: WorkKind, part: Part, narrowest: Fraction) -> Moment:
    """When a work is usually done (common practice): flat work on whole parts is easiest once they are cut.

    Ink goes on the whole sheet; what is embossed larger and trimmed later, and strips too narrow to
    be held under a punch, are worked before their last cut.
    """
    match kind:
        case WorkKind.INK:
            return Moment.BEFORE
        case WorkKind.EMBOSS if part.oversize and not part.stamps:
            return Moment.BETWEEN
        case WorkKind.PUNCH if part.size.upright.width < narrowest and part.origin is Origin.CUT:
            return Moment.BETWEEN
    return Moment.AFTER


def _of_line(one: NamedWork, parts: Sequence[Part], choice: _Choice) -> Iterator[Work]:
    """One work, or one for each tool and each moment where its parts differ in these."""
    line = one.line
    apart: dict[tuple[str, Moment], list[str]] = {}
    for part in parts:
        if line.by_hand or one.tool:
            tools: tuple[str, ...] = (one.tool.slug if one.tool else "",)
        else:
            tools = choice.of(line.kind, part)
        for slug in tools:
            moment = line.moment or usual_moment(line.kind, part, choice.narrowest(slug))
            apart.setdefault((slug, moment), []).append(part.letter)
    for (slug, moment), letters in apart.items():
        yield Work(
            kind=line.kind,
            letters=tuple(letters),
            tool=slug,
            moment=moment,
            supply=one.supply,
            where=line.where,
            at=line.at,
            runs_down=line.runs_down,
            times=line.times,
            wait=line.wait,
            place=one.place,
        )


def _grouped(kind: WorkKind, parts: Sequence[Part], choice: _Choice) -> Iterator[Work]:
    """What follows from parts, those with one tool together."""
    apart: dict[str, list[Part]] = {}
    for part in parts:
        for slug in choice.of(kind, part):
            apart.setdefault(slug, []).append(part)
    for slug, mine in apart.items():
        yield Work(kind, tuple(part.letter for part in mine), slug, Moment.AFTER, place=mine[0].place)
