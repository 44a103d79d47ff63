"""Colours: all of them laid by hue, and what goes with one supply."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class ColourLabel:
    """One supply by its colours; ``words`` say what is seen, ``on_hand`` is empty where it is not told."""

    supply: Link
    colours: tuple[str, ...]
    words: str
    on_hand: str


@dataclass(frozen=True, slots=True)
class ColourGroup:
    """Labels that belong together."""

    heading: str
    labels: tuple[ColourLabel, ...]


@dataclass(frozen=True, slots=True)
class ColoursPage:
    """All supplies that have a colour, family by family."""

    title: str
    drawer: Link
    sentence: Line
    families: tuple[ColourGroup, ...]
    note: Line


@dataclass(frozen=True, slots=True)
class GoesWithView:
    """What goes with one supply, and where that is explained; without groups, where it is told instead."""

    groups: tuple[ColourGroup, ...]
    note: Line
