"""What collating is asked: the parts of one kind, and those that are collated by one rule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from batchleaf.facts import ShownSide


@dataclass(frozen=True, slots=True, order=True)
class Paper:
    """One paper; ``nth`` above 0: the record says only that it is one of the papers of a pad."""

    supply: str
    nth: int = 0


Face = tuple[Paper, ShownSide]
"""One side of a paper."""


@dataclass(frozen=True, slots=True)
class Kind:
    """The parts of one letter: one make has ``each`` of them, and of each paper so many are ``cut``."""

    letter: str
    each: int
    cut: Mapping[Paper, int]
    side: ShownSide = ShownSide.FRONT


@dataclass(frozen=True, slots=True)
class Group:
    """Kinds that are collated by one rule.

    ``most``: so often a paper may come in one make; 0: all parts of a make come from one
    paper. ``by_side``: the front and the back of a paper count as two papers.
    """

    kinds: tuple[Kind, ...]
    most: int
    by_side: bool = False

    @property
    def slots(self) -> int:
        """How many parts of the group one make has."""
        return sum(kind.each for kind in self.kinds)

    @property
    def alike(self) -> bool:
        """Whether all parts of a make come from one paper."""
        return not self.most

    def face(self, kind: Kind, paper: Paper) -> Face:
        """What may not come too often in a make: the paper, or the side of it that a kind shows."""
        return paper, (kind.side if self.by_side else ShownSide.FRONT)

    @property
    def papers(self) -> tuple[Paper, ...]:
        """All papers, in the order in which the kinds name them."""
        return tuple(dict.fromkeys(paper for kind in self.kinds for paper in kind.cut))

    @property
    def common_papers(self) -> tuple[Paper, ...]:
        """The papers that all kinds come from."""
        return tuple(paper for paper in self.papers if all(paper in kind.cut for kind in self.kinds))
