"""What a supply is: its size, its sides, its weight and thickness, its terms."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from batchleaf.facts import Direction, Grain, PaperSide, Supply
from batchleaf.measure.display import show_length, show_number, show_other_sheet_size, show_size
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.thickness import MM_PER_POINT
from batchleaf.views.disclosure import tie_of
from batchleaf.views.terms import terms_in_words
from batchleaf.views.words import counted, listed, number_of

Fact = tuple[str, str]
_LIES: Final = {
    Direction.ONE_WAY: "one-way: it has an up, so parts are not turned on it",
    Direction.TWO_WAY: "two-way: the same upside down, so parts are not turned sideways on it",
    Direction.ANY_WAY: "",
}


def facts_of(supply: Supply) -> Iterator[Fact]:
    """Label and text of all that the record says of a supply."""
    if supply.size:
        yield from _as_bought(supply)
    if supply.designs:
        sheets = counted(supply.copies, supply.unit, supply.units)
        yield "A pad holds", f"{counted(supply.designs, 'paper', 'papers')}, {sheets} of each"
    if supply.pack:
        yield "A pack holds", counted(supply.pack, supply.unit, supply.units)
    if supply.mark is not None:
        least = number_of(supply.mark, supply)
        yield "Mark", f"{least}; with less on hand, to be bought again"
    if supply.grain is not Grain.UNKNOWN:
        yield "Grain", supply.grain.value
    yield from _sides(supply)
    if supply.collection:
        yield "Collection", supply.collection
    if supply.grammage:
        yield "Weight", weight_in_words(supply)
    if supply.thickness:
        yield "Thickness", thickness_in_words(supply)
    if supply.weighs:
        yield f"One {supply.unit} weighs", f"{show_number(supply.weighs, 3)} g"
    if supply.envelope:
        yield "An envelope of", _size_in_words(supply.envelope, supply.length_unit)
    if (tie := tie_of(supply)) and not supply.link:
        yield "Disclosed", tie
    if terms := terms_in_words(supply.terms):
        yield "Selling what is made", terms
    if supply.about:
        yield "About", supply.about


def weight_in_words(supply: Supply) -> str:
    """``216 g/m²``; pounds first, where they were written."""
    grams = f"{show_number(supply.grammage or Fraction(0), 0)} g/m²"
    return f"{supply.pounds}, {grams}" if supply.pounds else grams


def thickness_in_words(supply: Supply) -> str:
    """``0.3 mm, 12 pt``: in points to a tenth, as papers are sold."""
    points = show_number((supply.thickness or Fraction(0)) / MM_PER_POINT, 1)
    return f"{show_number(supply.thickness or Fraction(0), 3)} mm, {points} pt"


def _size_in_words(size: Size, unit: Unit) -> str:
    return f"{show_size(size, unit)} {unit.value}, {show_other_sheet_size(size, unit)}"


def _as_bought(supply: Supply) -> Iterator[Fact]:
    unit = supply.length_unit
    yield "As bought", _size_in_words(supply.sheet, unit)
    if supply.usable != supply.sheet:
        trim = supply.trim
        edges = {"left": trim.left, "right": trim.right, "top": trim.top, "bottom": trim.bottom}
        cut = [f"{show_length(length, unit)} off the {edge}" for edge, length in edges.items() if length]
        yield "Usable", f"{show_size(supply.usable, unit)} {unit.value}, after {listed(cut)}"


def _sides(supply: Supply) -> Iterator[Fact]:
    for label, side in (("Front", supply.front), ("Back", supply.back)):
        if side != PaperSide():
            yield label, "; ".join(filter(None, (side.look, _LIES[side.direction]))) or "any-way"
    if supply.core:
        yield "Core", supply.core
    if supply.see_through:
        yield "See-through", "what lies behind it shows"
