"""The most collated sets, exactly, and how many parts of each paper go into a number of sets.

M sets in which a paper comes at most t times are there if and only if
x[paper, kind] ≤ cut, Σ over papers = each · M and Σ over the kinds of a paper ≤ t · M has a
solution in whole numbers: a flow. Such parts can then be dealt (see ``colouring``).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import count

from batchleaf.core.collate.flow import Flow
from batchleaf.core.collate.question import Face, Group, Kind, Paper

Uses = Mapping[tuple[str, Paper], int]
"""(Letter, paper) → how many parts go into the sets."""


def most_sets(group: Group) -> int:
    """The most sets that the parts cut give."""
    if group.alike:
        return sum(_alike(group, paper) for paper in group.common_papers)
    most = min(sum(kind.cut.values()) // kind.each for kind in group.kinds)
    return largest(0, most, lambda sets: enough(group, sets))


def fewest_times(kinds: Iterable[Kind]) -> int:
    """How often a paper must come in one make, however many parts of each paper are cut."""
    plenty = tuple(Kind(kind.letter, kind.each, dict.fromkeys(kind.cut, kind.each)) for kind in kinds)
    together = Group(plenty, 1)
    least = -(-together.slots // len(together.papers))
    return next(times for times in count(least) if enough(Group(plenty, times), 1))


def enough(group: Group, sets: int) -> bool:
    """Whether the parts cut give so many sets; not for kinds that are alike."""
    return _total(_filled(group, sets, {})) == group.slots * sets


def uses_of(group: Group, sets: int) -> Uses:
    """The parts that go into so many sets, which there are, from all papers as evenly as can be."""
    if group.alike:
        return _uses_alike(group, sets)
    if all(sum(kind.cut.values()) == kind.each * sets for kind in group.kinds):
        return {(kind.letter, paper): cut for kind in group.kinds for paper, cut in kind.cut.items() if cut}
    return _filled(group, sets, _evenly(group, sets))


def largest(least: int, most: int, holds: Callable[[int], bool]) -> int:
    """The largest number up to ``most`` for which something holds; it does for ``least`` and all between."""
    while least < most:
        middle = (least + most + 1) // 2
        least, most = (middle, most) if holds(middle) else (least, middle - 1)
    return least


def _alike(group: Group, paper: Paper) -> int:
    return min(kind.cut[paper] // kind.each for kind in group.kinds)


def _uses_alike(group: Group, sets: int) -> Uses:
    """Each paper gives as many sets as the others, as far as it reaches."""
    there = {paper: _alike(group, paper) for paper in group.common_papers}
    level = largest(0, sets, lambda level: sum(min(most, level) for most in there.values()) <= sets)
    given = {paper: min(most, level) for paper, most in there.items()}
    left = sets - sum(given.values())
    for paper, most in there.items():
        if left and most > given[paper]:
            given[paper] += 1
            left -= 1
    return {
        (kind.letter, paper): kind.each * times
        for kind in group.kinds
        for paper, times in given.items()
        if times
    }


def _evenly(group: Group, sets: int) -> dict[Face, int]:
    """How much each face gives, where the one that gives least gives as much as can be, then the next.

    What the faces can give together is a polymatroid: one that cannot give more beside the others never
    can again (Megiddo, Mathematical Programming 7 (1974) 97–107).
    """
    given = dict.fromkeys((group.face(kind, paper) for kind in group.kinds for paper in kind.cut), 0)
    rising = list(given)
    while rising and sum(given.values()) < group.slots * sets:
        level = _level(group, sets, given, rising)
        given |= dict.fromkeys(rising, level)
        for face in tuple(rising):
            if _can_give(group, sets, given | {face: level + 1}):
                given[face] = level + 1
            else:
                rising.remove(face)
    return given


def _level(group: Group, sets: int, given: Mapping[Face, int], rising: Sequence[Face]) -> int:
    """How much all faces that still rise can give each."""
    least, most = given[rising[0]], group.most * sets
    return largest(
        least, most, lambda level: _can_give(group, sets, {**given, **dict.fromkeys(rising, level)})
    )


def _can_give(group: Group, sets: int, given: Mapping[Face, int]) -> bool:
    return _total(_filled(group, sets, given)) == sum(given.values())


def _filled(group: Group, sets: int, limits: Mapping[Face, int]) -> Uses:
    """As many parts as fit into so many sets; ``limits``: so many of a face at most."""
    uses, _ = _flow(group, sets, limits, more=0)
    return uses


def least_more(group: Group, sets: int) -> Uses | None:
    """The fewest parts that would have to be cut besides for so many sets; ``None``: nothing would help.

    They come from as many papers as can be.
    """
    uses, least = _flow(group, sets, {}, more=group.slots * sets)
    if _total(uses) + _total(least) < group.slots * sets:
        return None
    for more in range(max(least.values(), default=0)):
        uses, spread = _flow(group, sets, {}, more=more)
        if _total(uses) + _total(spread) == group.slots * sets and _total(spread) == _total(least):
            return spread
    return least


def _flow(group: Group, sets: int, limits: Mapping[Face, int], *, more: int) -> tuple[Uses, Uses]:
    """Parts that go into so many sets, as many as fit: those cut, and besides these the fewest others.

    ``more``: so many others at most of each kind from each paper.
    """
    faces = dict.fromkeys(group.face(kind, paper) for kind in group.kinds for paper in kind.cut)
    number = {face: at for at, face in enumerate(faces, 2 + len(group.kinds))}
    flow = Flow(2 + len(group.kinds) + len(faces))
    most = group.most * sets
    for face, at in number.items():
        flow.pipe(0, at, min(limits.get(face, most), most))
    pipes: tuple[dict[tuple[str, Paper], int], dict[tuple[str, Paper], int]] = {}, {}
    for at, kind in enumerate(group.kinds, 2):
        flow.pipe(at, 1, kind.each * sets)
        for paper, cut in kind.cut.items():
            node = number[group.face(kind, paper)]
            pipes[0][kind.letter, paper] = flow.pipe(node, at, cut)
            pipes[1][kind.letter, paper] = flow.pipe(node, at, more, cost=1)
    flow.push(0, 1)
    used, besides = (
        {key: flow.through(pipe) for key, pipe in some.items() if flow.through(pipe)} for some in pipes
    )
    return used, besides


def _total(uses: Uses) -> int:
    return sum(uses.values())
