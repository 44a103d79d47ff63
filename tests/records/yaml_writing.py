"""Trees as YAML text, in any of its styles, with what makes YAML surprising here and there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

import yaml
from hypothesis import strategies as st

Tree = Any
STYLES: Final = ("", "'", '"', "|", ">")


@dataclass(frozen=True, slots=True)
class Manner:
    """How a tree is written: scalars in turn in ``styles``; ``oddities`` by the number of the node."""

    styles: tuple[str, ...] = ("",)
    flow: bool = False
    oddities: Mapping[int, str] = field(default_factory=dict)


def written_as(tree: Tree, manner: Manner) -> str:
    """The tree as YAML text."""
    writer = _Writer(manner)
    events = [
        yaml.StreamStartEvent(),
        yaml.DocumentStartEvent(explicit=False),
        *writer.node(tree),
        yaml.DocumentEndEvent(explicit=False),
        yaml.StreamEndEvent(),
    ]
    text = yaml.emit(events, allow_unicode=True, width=10_000)
    assert isinstance(text, str)
    return text


class _Writer:
    """Counts the nodes, so that an oddity stands where it is meant to."""

    def __init__(self, manner: Manner) -> None:
        self._manner, self._count = manner, 0
        self._anchored = False

    def node(self, tree: Tree) -> Iterator[yaml.Event]:
        """The events of a tree."""
        odd = self._manner.oddities.get(self._count, "")
        style = self._manner.styles[self._count % len(self._manner.styles)]
        self._count += 1
        if odd == "alias" and self._anchored:
            yield yaml.AliasEvent("a")
            return
        anchor, tag = ("a" if odd == "anchor" else None), ("!odd" if odd == "tag" else None)
        self._anchored |= anchor is not None
        plain, flow = (tag is None, tag is None), self._manner.flow
        match tree:
            case list():
                yield yaml.SequenceStartEvent(anchor, tag, tag is None, flow_style=flow)
                for item in tree:
                    yield from self.node(item)
                yield yaml.SequenceEndEvent()
            case dict():
                yield yaml.MappingStartEvent(anchor, tag, tag is None, flow_style=flow)
                yield from self._entries(tree, odd)
                yield yaml.MappingEndEvent()
            case None:
                yield yaml.ScalarEvent(anchor, tag, plain, "", style="")
            case _:
                yield yaml.ScalarEvent(anchor, tag, plain, str(tree), style=style)

    def _entries(self, tree: dict[str, Tree], odd: str) -> Iterator[yaml.Event]:
        for key, value in tree.items():
            yield from self.node(key)
            yield from self.node(value)
            if odd == "twice":
                yield from self.node(key)
                yield from self.node(value)
        if odd == "key":
            yield from self.node(["a list", "for a key"])
            yield from self.node({})


def manners() -> st.SearchStrategy[Manner]:
    """Mostly as a person writes."""
    kinds = st.sampled_from(["anchor", "alias", "tag", "twice", "key"])
    odd = st.dictionaries(st.integers(0, 40), kinds, min_size=1, max_size=2)
    return st.builds(
        Manner,
        styles=st.lists(st.sampled_from(STYLES), min_size=1, max_size=3).map(tuple),
        flow=st.sampled_from([False, False, False, True]),
        oddities=st.sampled_from(range(8)).flatmap(lambda often: odd if often == 7 else st.just({})),
    )
