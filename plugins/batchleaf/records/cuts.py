"""What a batch cut, from its lines to its sheets: roles filled, papers of pads found."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from batchleaf.facts import Cut, KeptPiece, Origin, Part, Place, Supply
from batchleaf.measure.display import show_size
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size
from batchleaf.records.cut_lines import CutLine, KeptLine, read_cut
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import ANY_LETTER, Line
from batchleaf.records.papers import Papers, Roles, Source
from batchleaf.records.parts import PartsRead
from batchleaf.records.report import Report


@dataclass(frozen=True, slots=True)
class _Taken:
    """Sheets of which papers; ``times``: of each so many times what the line says."""

    papers: tuple[str, ...]
    times: int = 1


NONE = _Taken(())


def read_cuts(
    lines: Sequence[Line], roles: Roles, parts: PartsRead, known: KnownSupplies, least: Size, report: Report
) -> tuple[Cut, ...]:
    """The sheets of all lines, in order; a piece smaller than ``least`` is not kept."""
    reader = _CutsReader(roles, parts, known, least, report)
    return tuple(cut for line in lines for cut in reader.cuts(line))


class _CutsReader:
    """Knows what the parts come from: a pad’s name alone means the papers of it that they use."""

    def __init__(
        self, roles: Roles, parts: PartsRead, known: KnownSupplies, least: Size, report: Report
    ) -> None:
        self._roles, self._parts, self._known, self._report = roles, parts, known, report
        self._least = least.upright
        self._papers = Papers(known, report, roles)

    def cuts(self, written: Line) -> Iterator[Cut]:
        """One line: a cut for each supply that it is of."""
        if sentence := self._spelt_out(written.text):
            self._report.error(written.place, sentence)
            return
        line = self._report.read(written.place, read_cut, written.text, written.unit, self._roles)
        if line is None:
            return
        taken = self._taken(line, written.place)
        kept = self._report.read(written.place, self._kept, line, taken, written)
        for slug in taken.papers:
            supply = self._known.named(slug)
            pieces = tuple(replace(piece, size=supply.piece(piece.size)) for piece in kept or ())
            scrap = line.scrap and supply.piece(line.scrap)
            yield Cut(slug, line.count * taken.times, scrap, pieces, written.place)

    def _spelt_out(self, text: str) -> str:
        """A sentence where a line begins with the name of a supply in words."""
        a_role = any(text.startswith(f"{role} ") for role in self._roles)
        known = a_role or self._known.get(text.partition(" ")[0]) is not None
        return "" if known else self._known.spelt_out(text.partition(",")[0])

    def _taken(self, line: CutLine, place: Place) -> _Taken:
        role = self._roles.get(line.who)
        if role is None:
            supply = self._papers.find(line.who, place)
            taken = self._of_supply(line, supply, place) if supply else NONE
        else:
            taken = self._of_role(line, role, place)
        return taken if self._papers.can_be_cut(taken.papers, place) else NONE

    def _of_supply(self, line: CutLine, supply: Supply, place: Place) -> _Taken:
        self._check_noun(line, supply, place)
        return self._of_pad(line, supply, place) if supply.designs else _Taken((supply.slug,))

    def _of_role(self, line: CutLine, role: Source, place: Place) -> _Taken:
        for slug in role.papers:
            if supply := self._known.get(slug):
                self._check_noun(line, supply, place)
        if role.any_of and line.each:
            return _Taken(role.papers, role.any_of)
        if len(role.papers) > 1 and not line.each:
            several = f"“{line.who}” is filled by {len(role.papers)} papers"
            self._report.error(place, f"{several}; write “each”, or name one of them")
            return NONE
        return _Taken(role.papers)

    def _of_pad(self, line: CutLine, pad: Supply, place: Place) -> _Taken:
        """The pad as a whole where the parts use it so, else the papers of it that they use."""
        cut = [part for part in self._parts.parts if part.origin is not Origin.READY]
        whole = [part for part in cut if pad.slug in part.papers]
        numbered = self._numbered(pad, cut)
        if line.scrap or not (line.each or numbered):
            return _Taken((pad.slug,))
        if line.each and not numbered:
            return self._each_of_any(line, pad, whole, place)
        if line.each or (len(numbered) == 1 and not whole):
            return _Taken(numbered)
        if whole:
            return _Taken((pad.slug,))
        several = f"{len(numbered)} papers of “{pad.slug}” are used here"
        self._report.error(place, f"{several}; write “each”, or name one of them, like {numbered[0]}")
        return NONE

    def _numbered(self, pad: Supply, parts: Sequence[Part]) -> tuple[str, ...]:
        found = {slug: self._known.get(slug) for part in parts for slug in part.papers}
        mine = [supply for supply in found.values() if supply and supply.pad == pad.slug]
        return tuple(supply.slug for supply in sorted(mine, key=lambda supply: supply.number))

    def _each_of_any(self, line: CutLine, pad: Supply, whole: Sequence[Part], place: Place) -> _Taken:
        times = max((part.any_of for part in whole), default=0)
        if not times:
            self._report.error(
                place,
                f"no part says which papers of “{pad.slug}” it comes from;"
                f" write how many sheets there were, like {pad.slug} 6 {pad.units}",
            )
        return _Taken((pad.slug,), times) if times else NONE

    def _check_noun(self, line: CutLine, supply: Supply, place: Place) -> None:
        """Sheets are counted by the supply's own word; scraps by theirs."""
        if supply.size and line.noun and line.noun not in (supply.unit, supply.units):
            self._report.error(
                place, f"“{line.noun}” is not what {supply.slug} is counted in; write {supply.units}"
            )

    def _kept(self, line: CutLine, taken: _Taken, written: Line) -> tuple[KeptPiece, ...]:
        by_letter = {part.letter: part for part in self._parts.parts}
        found = (self._kept_piece(kept, by_letter, taken) for kept in line.kept)
        return tuple(piece for piece in found if piece is not None and self._is_usable(piece, written))

    def _is_usable(self, piece: KeptPiece, written: Line) -> bool:
        """A spare part always is; what is too small to cut from is waste, and told so."""
        size = piece.size.upright
        if piece.letter or (size.width >= self._least.width and size.height >= self._least.height):
            return True
        unit = written.unit
        self._report.notice(
            written.place,
            f"a piece of {show_size(piece.size, unit)} {unit.value} is smaller than what is kept"
            f" ({show_size(self._least, unit)} {unit.value}, the setting least_kept), so it counts as waste",
        )
        return False

    def _kept_piece(self, kept: KeptLine, parts: Mapping[str, Part], taken: _Taken) -> KeptPiece | None:
        """A piece that was kept, or ``None`` where it is a part that could not be read."""
        count = kept.count * taken.times
        if kept.size:
            return KeptPiece(kept.size, count)
        part = parts.get(kept.letter)
        if part is not None:
            self._check_own(part, taken)
            return KeptPiece(part.size, count, kept.letter)
        if self._parts.lost.isdisjoint({kept.letter, ANY_LETTER}):
            raise MeasureError(f"there is no part {kept.letter} to keep")
        return None

    def _check_own(self, part: Part, taken: _Taken) -> None:
        """A spare part is kept where its own paper is cut."""
        if part.origin is Origin.READY:
            raise MeasureError(f"{part.letter} is bought as it is, so no sheet leaves one to keep")
        found = [self._known.get(slug) for slug in taken.papers]
        foreign = [supply for supply in found if supply and not {supply.slug, supply.pad} & {*part.papers}]
        if part.papers and foreign:
            raise MeasureError(
                f"{part.letter} is cut from {' or '.join(part.papers)} only, and this line is of"
                f" {' and '.join(taken.papers)}; keep it where its own paper is cut"
            )
