"""What goes with one supply, as its page tells it."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.figures import Figures
from batchleaf.core.goes_with import Match, goes_with
from batchleaf.facts import Supply
from batchleaf.views import site_map
from batchleaf.views.colour_words import colour_in_words, colours_in_words, nearness_in_words
from batchleaf.views.colours import coloured, label_of
from batchleaf.views.pages import ColourGroup, GoesWithView, Line, Link

ANCHOR = "goes-with"


def goes_with_view(supply: Supply, figures: Figures) -> GoesWithView | None:
    """Other supplies by their colours; of a paper of a pad, whose own nobody tells, the way to the pad."""
    if not supply.colours:
        return None
    here = site_map.item(supply.slug)
    if supply.pad:
        return GoesWithView((), _of_the_pad(supply, here))
    groups = tuple(_groups(supply, figures, here))
    return GoesWithView(groups, _note(here)) if groups else None


def _of_the_pad(paper: Supply, here: str) -> Line:
    there = site_map.href(here, site_map.item(paper.pad), ANCHOR)
    return (Link("What goes with the pad", there), "; its colours are told of the pad as a whole.")


def _note(here: str) -> Line:
    return (
        Link("How this is found", site_map.href(here, site_map.HOW, "colours")),
        ". ",
        Link("All colours, by hue", site_map.href(here, site_map.COLOURS)),
        ".",
    )


def _groups(supply: Supply, figures: Figures, here: str) -> Iterator[ColourGroup]:
    found = goes_with(supply, coloured(figures))
    for heading, matches in (
        ("Same collection", found.collection),
        ("Near it", found.near),
        ("Lighter", found.lighter),
        ("Darker", found.darker),
        ("Opposite", found.opposite),
    ):
        says = _how_near if matches is found.near else _what_it_is
        labels = [label_of(one.supply, says(one, supply), figures, here) for one in matches]
        if labels:
            yield ColourGroup(heading, tuple(labels))


def _how_near(match: Match, supply: Supply) -> str:
    """``very close``; where there are several colours, which of its own: ``pale brown: very close``."""
    perhaps = "perhaps " if supply.colours_are_about or match.supply.colours_are_about else ""
    near = f"{perhaps}{nearness_in_words(match.difference)}"
    single = len(supply.colours) == len(match.supply.colours) == 1
    return near if single else f"{colour_in_words(match.colour)}: {near}"


def _what_it_is(match: Match, _: Supply) -> str:
    return colours_in_words(match.supply)
