"""All supplies by their colours, laid by hue."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Final

from batchleaf.core.figures import Figures
from batchleaf.core.goes_with import swatch_of
from batchleaf.facts import Supply
from batchleaf.measure.colour_difference import DECIMALS
from batchleaf.measure.colour_families import Family
from batchleaf.views import site_map
from batchleaf.views.colour_words import colours_in_words
from batchleaf.views.pages import ColourGroup, ColourLabel, ColoursPage, Link
from batchleaf.views.stock import on_hand_in_words, on_shelves
from batchleaf.views.words import capitalised, number_word

HERE: Final = site_map.COLOURS
LEAST: Final = 2
"""One colour alone need not be laid out."""
_ORDER: Final = tuple(Family)


def coloured(figures: Figures) -> tuple[Supply, ...]:
    """The supplies with a page and a colour; the papers of a pad lie in it."""
    return tuple(supply for supply in on_shelves(figures) if supply.named and supply.colours)


def has_colours(figures: Figures) -> bool:
    """Whether there is something to be laid out."""
    return len(coloured(figures)) >= LEAST


def colours_page(figures: Figures) -> ColoursPage:
    """Family by family, each from light to dark; what has no hue comes last."""
    supplies = sorted(coloured(figures), key=_place)
    return ColoursPage(
        title="Colours",
        drawer=Link("Drawer" if figures.ledger else "Supplies", site_map.href(HERE, site_map.DRAWER)),
        sentence=(_sentence(supplies),),
        families=tuple(
            ColourGroup(
                capitalised(family),
                tuple(label_of(one, colours_in_words(one), figures, HERE) for one in mine),
            )
            for family, mine in groupby(supplies, key=lambda one: swatch_of(one).family)
        ),
        note=(Link("How colours are told", site_map.href(HERE, site_map.HOW, "colours")), "."),
    )


def _place(supply: Supply) -> tuple[int, float, str, str]:
    swatch = swatch_of(supply)
    lightness = round(swatch.main.lightness, DECIMALS)
    return _ORDER.index(swatch.family), -lightness, supply.name.casefold(), supply.slug


def _sentence(supplies: Sequence[Supply]) -> str:
    many = f"{capitalised(number_word(len(supplies)))} supplies"
    families = {swatch_of(one).family for one in supplies}
    apart = "" if all(family.has_hue for family in families) else "; what has no hue lies apart"
    return f"{many} laid by hue, each family from light to dark{apart}."


def label_of(supply: Supply, words: str, figures: Figures, here: str) -> ColourLabel:
    """A supply on the page at ``here``, with ``words`` of its colours."""
    return ColourLabel(
        supply=Link(supply.name, site_map.href(here, site_map.item(supply.slug))),
        colours=supply.colours,
        words=words,
        on_hand=on_hand_in_words(supply, figures, figures.ledger) if figures.ledger else "",
    )
