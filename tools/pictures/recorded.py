"""A batch as the archive's own reader gives it, with the papers of its parts dealt to single makes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from batchleaf.commands.opened import open_archive
from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.cutting.plan import leaves_of
from batchleaf.facts import Image, ImageUse, Part, Project, Supply, Tool


@dataclass(frozen=True, slots=True)
class Recorded:
    """One batch with all supplies and tools of the drawer by slug.

    ``cut``: part and supply → how many of the part the figures take from that supply.
    """

    project: Project
    supplies: Mapping[str, Supply]
    tools: Mapping[str, Tool]
    cut: Mapping[tuple[str, str], int]

    @property
    def base(self) -> Part:
        """The part that carries the others."""
        return self.project.parts[0]

    def part(self, letter: str) -> Part:
        """Raises :class:`KeyError` for a letter that the record does not have."""
        for part in self.project.parts:
            if part.letter == letter:
                return part
        raise KeyError(f"{self.project.slug} has no part {letter}")

    def used(self, kind: str) -> Supply | None:
        """What the batch used of a kind: its ink, its cord; the first where there are several."""
        supplies = (self.supplies[use.supply] for use in self.project.uses)
        return next((supply for supply in supplies if supply.kind == kind), None)

    def papers_of(self, part: Part, number: int) -> tuple[str, ...]:
        """The papers of a part's copies on the make with this number, from 0."""
        round_of = self._dealt(part)
        copies = [round_of[(number * part.each + i) % len(round_of)] for i in range(part.each)]
        turn = number % part.each
        apart = _apart(copies)
        return (*apart[turn:], *apart[:turn])

    def _dealt(self, part: Part) -> tuple[str, ...]:
        """One round of dealing: each paper as often as its share of the sheets cut says."""
        names = _names(part)
        counts = [self._count(part, name.split()[0]) for name in names]
        if not any(counts):
            return names
        least = min(count for count in counts if count)
        times = [round(count / least) for count in counts]
        rounds = range(max(times))
        return tuple(name for i in rounds for name, count in zip(names, times, strict=True) if count > i)

    def _count(self, part: Part, paper: str) -> int:
        """A sheet of a pad may be cut under the pad's name."""
        return self.cut.get((part.letter, paper)) or self.cut.get((part.letter, self.supplies[paper].pad), 0)

    def image(self, part: Part, number: int) -> Image | None:
        """What is stamped on a part of the make with this number; the images are dealt round."""
        images = [
            image
            for use in part.stamps
            for image in self.tools[use.tool].images
            if _is_used(use, image.number)
        ]
        return images[number % len(images)] if images else None


def _apart(copies: list[str]) -> list[str]:
    """Where a paper comes twice, one copy lies between the two: of four squares they are opposite."""
    if len(set(copies)) == len(copies):
        return copies
    often = sorted(copies, key=lambda paper: (-copies.count(paper), copies.index(paper)))
    apart = copies[:]
    apart[::2], apart[1::2] = often[: len(apart[::2])], often[len(apart[::2]) :]
    return apart


def _is_used(use: ImageUse, number: int) -> bool:
    return not use.numbers or number in use.numbers


def _names(part: Part) -> tuple[str, ...]:
    """A part's papers; those of a pad that the record leaves open are told apart by a number."""
    if not part.any_of:
        return part.papers
    return tuple(f"{pad} {number}" for pad in part.papers for number in range(1, part.any_of + 1))


def read(archive: Path) -> dict[str, Recorded]:
    """All batches of an archive by slug. Raises :class:`ValueError` where a record cannot be read."""
    worked = open_archive(archive).worked()
    if worked.figures is None:
        raise ValueError("\n".join(problem.sentence for problem in worked.errors))
    supplies = {supply.slug: supply for supply in worked.archive.supplies}
    tools = {tool.slug: tool for tool in worked.archive.tools}
    return {
        slug: Recorded(batch.project, supplies, tools, _cut(batch.cutting))
        for slug, batch in worked.figures.batches.items()
    }


def _cut(cutting: Cutting | None) -> dict[tuple[str, str], int]:
    counts: Counter[tuple[str, str]] = Counter()
    if cutting is None:
        return {}
    for plan in cutting.plans:
        for letter, count in leaves_of(plan.tree).items():
            counts[letter, cutting.sheets[plan.stock].supply] += count * plan.times
    return dict(counts)
