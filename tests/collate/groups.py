"""Small groups of parts to be collated, and all that can be known of them by trying."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations, product

from hypothesis import strategies as st

from batchleaf.core.collate.question import Face, Group, Kind, Paper
from batchleaf.core.collate.sets import AlikeSets
from batchleaf.facts import ShownSide

LETTERS = "BCDEFGHI"


def papers(count: int) -> tuple[Paper, ...]:
    """p1, p2, p3 …"""
    return tuple(Paper(f"p{nth}") for nth in range(1, count + 1))


def kind(letter: str, cut: Sequence[int], each: int = 1, side: ShownSide = ShownSide.FRONT) -> Kind:
    """A part of which so many are cut from p1, p2, …; nothing is cut where that is nothing."""
    there = zip(papers(len(cut)), cut, strict=True)
    return Kind(letter, each, {paper: count for paper, count in there if count}, side)


def group(*cut: Sequence[int], each: int = 1, most: int = 1) -> Group:
    """Parts of one rule, each as :func:`kind`."""
    return Group(tuple(kind(letter, some, each) for letter, some in zip(LETTERS, cut, strict=False)), most)


def by_trying(one: Group) -> int:
    """The most sets, found by laying out every choice of papers for set after set."""
    stock = {(k.letter, paper): count for k in one.kinds for paper, count in k.cut.items()}
    choices = tuple(_choices(one))
    return _most(choices, stock, 0)


def _choices(one: Group) -> Iterator[Mapping[tuple[str, Paper], int]]:
    """Every set that keeps the rule: (letter, paper) → how many parts."""
    of_kinds = [[(k, chosen) for chosen in _with_repeats(tuple(k.cut), k.each)] for k in one.kinds]
    for makeup in product(*of_kinds):
        parts = [(k, paper) for k, chosen in makeup for paper in chosen]
        if keeps(one, {k.letter: chosen for k, chosen in makeup}):
            yield {(k.letter, paper): parts.count((k, paper)) for k, paper in parts}


def _with_repeats(of: tuple[Paper, ...], count: int) -> Iterator[tuple[Paper, ...]]:
    spots = range(len(of) + count - 1)
    for bars in combinations(spots, len(of) - 1):
        counts = [b - a - 1 for a, b in zip((-1, *bars), (*bars, len(of) + count - 1), strict=True)]
        yield tuple(paper for paper, times in zip(of, counts, strict=True) for _ in range(times))


def _most(
    choices: Sequence[Mapping[tuple[str, Paper], int]], stock: Mapping[tuple[str, Paper], int], at: int
) -> int:
    best = 0
    for nth in range(at, len(choices)):
        if all(stock[key] >= count for key, count in choices[nth].items()):
            rest = {key: there - choices[nth].get(key, 0) for key, there in stock.items()}
            best = max(best, 1 + _most(choices, rest, nth))
    return best


def keeps(one: Group, chosen: Mapping[str, Sequence[Paper]]) -> bool:
    """Whether a set keeps the rule of its group."""
    if one.alike:
        return len({paper for some in chosen.values() for paper in some}) == 1
    faces: list[Face] = [one.face(k, paper) for k in one.kinds for paper in chosen[k.letter]]
    return all(faces.count(face) <= one.most for face in faces)


def used(sets: Sequence[AlikeSets]) -> dict[tuple[str, Paper], int]:
    """How many parts of each letter and paper go into sets."""
    found: dict[tuple[str, Paper], int] = {}
    for one in sets:
        for letter, some in one.papers.items():
            for paper in some:
                found[letter, paper] = found.get((letter, paper), 0) + one.times
    return found


def groups(largest: int = 6, kinds: int = 4, of: int = 5) -> st.SearchStrategy[Group]:
    """Any group: unequal counts, papers that one part comes from and another does not, every rule."""
    cut = st.dictionaries(st.sampled_from(papers(of)), st.integers(0, largest), min_size=1)
    one = st.tuples(st.integers(1, 3), cut, st.sampled_from(ShownSide))
    return st.builds(
        lambda some, most, by_side: Group(
            tuple(Kind(letter, *rest) for letter, rest in zip(LETTERS, some, strict=False)), most, by_side
        ),
        st.lists(one, min_size=1, max_size=kinds),
        st.integers(0, 3),
        st.booleans(),
    )
