"""The most that flows through a small network of whole capacities, at the least cost, exactly.

Augmenting along shortest ways: by cost first, of which none is left cheaper in the end (Busacker
and Gowen 1961), then by length, so that the rounds are few (Edmonds and Karp, Journal of the ACM 19
(1972) 248–264).
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field
from typing import Final

_LONGEST: Final = 1 << 20
"""More than any way has pipes, so that a cost outweighs every length."""


@dataclass(slots=True)
class Flow:
    """A network of numbered nodes. Beside each pipe, at its number ^ 1, lies its way back."""

    nodes: int
    _ends: list[int] = field(default_factory=list)
    _room: list[int] = field(default_factory=list)
    _cost: list[int] = field(default_factory=list)
    _at: list[list[int]] = field(init=False)

    def __post_init__(self) -> None:
        self._at = [[] for _ in range(self.nodes)]

    def pipe(self, start: int, end: int, capacity: int, cost: int = 0) -> int:
        """A new pipe, with what each unit through it costs; returns its number."""
        for a, b, room, price in ((start, end, capacity, cost), (end, start, 0, -cost)):
            self._at[a].append(len(self._ends))
            self._ends.append(b)
            self._room.append(room)
            self._cost.append(price * _LONGEST)
        return len(self._ends) - 2

    def through(self, pipe: int) -> int:
        """How much flows through a pipe."""
        return self._room[pipe ^ 1]

    def push(self, source: int, sink: int) -> int:
        """Let as much flow as possible; returns how much that is."""
        pushed = 0
        while way := self._way(source, sink):
            most = min(self._room[pipe] for pipe in way)
            for pipe in way:
                self._room[pipe] -= most
                self._room[pipe ^ 1] += most
            pushed += most
        return pushed

    def _way(self, source: int, sink: int) -> list[int]:
        """The pipes of a shortest way with room, from the sink back; none where there is no way."""
        far: dict[int, int] = {source: 0}
        came: dict[int, int] = {}
        waiting = deque((source,))
        while waiting:
            node = waiting.popleft()
            for pipe in self._at[node]:
                if self._room[pipe]:
                    end, distance = self._ends[pipe], far[node] + self._cost[pipe] + 1
                    if end not in far or distance < far[end]:
                        far[end], came[end] = distance, pipe
                        waiting.append(end)
        way: list[int] = []
        node = sink
        while node != source and node in came:
            way.append(came[node])
            node = self._ends[came[node] ^ 1]
        return way
