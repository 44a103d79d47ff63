"""Makes built by hand: a base, what lies on it, and the supplies they come from."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.facts import Origin, Part, Project, Purpose, Stuck, Supply, Use
from batchleaf.facts.spots import Spot
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.bases import read_base
from core.drawers import batch, supply

CARD = replace(supply("card", size=Size(Fraction(300), Fraction(300))), grammage=Fraction(240))
THIN = replace(supply("paper", size=Size(Fraction(200), Fraction(200))), grammage=Fraction(100))


def base_of(text: str, paper: str = "card", unit: Unit = Unit.MM) -> tuple[Part, ...]:
    """The base that a record says, with the lid of a box."""
    read = read_base(text, unit)
    base = Part(
        "A", "base", read.size, 1, (paper,), turns=True, fold=read.fold, scores=read.scores, shape=read.shape
    )
    if read.lid is None:
        return (base,)
    return base, replace(base, letter="L", name="lid", size=read.lid.size, scores=read.lid.scores)


def on(
    letter: str,
    width: str,
    height: str,
    *spots: Spot,
    paper: str = "paper",
    below: str = "A",
    each: int = 1,
    stuck: str = "",
    origin: Origin = Origin.CUT,
) -> Part:
    """A part that lies on another."""
    return Part(
        letter, letter.lower(), Size(Fraction(width), Fraction(height)), each, (paper,), turns=True,
        below=below, spots=spots, stuck=Stuck(stuck, Fraction(1)) if stuck else None, origin=origin,
    )  # fmt: skip


def make_of(text: str, *parts: Part, uses: tuple[Use, ...] = (), unit: Unit = Unit.MM) -> Project:
    """Four of a base with these parts."""
    read = read_base(text, unit)
    one = replace(batch(1, finished=4), unit=unit, uses=uses)
    return replace(
        one,
        parts=(*base_of(text, unit=unit), *parts),
        finished_size=read.finished_size,
        height=read.height,
    )


def put(project: Project) -> MadeUp:
    """The make put together; it has a base."""
    made = put_together(project)
    assert made is not None
    return made


def used(slug: str, per_make: str, purpose: Purpose = Purpose.WORKED_IN) -> Use:
    """So much of a supply for each of the four."""
    amount = Fraction(per_make)
    return Use(slug, amount * 4, amount, purpose=purpose)


def drawer(*supplies: Supply) -> dict[str, Supply]:
    """By slug, with the card and the paper."""
    return {one.slug: one for one in (CARD, THIN, *supplies)}


def thing(
    slug: str, unit: str = "piece", *, thick: str = "", weighs: str = "", kind: str = "charms"
) -> Supply:
    """Something without a size."""
    return replace(
        supply(slug),
        size=None,
        kind=kind,
        unit=unit,
        units=f"{unit}s" if unit == "piece" else unit,
        thickness=Fraction(thick) if thick else None,
        weighs=Fraction(weighs) if weighs else None,
    )


FOLDED = (
    "card 100 x 150",
    "card 200 x 150, side fold",
    "card 100 x 300, top fold",
    "card 100 x 300, tent",
    "card 200 x 150, gate fold",
    "card 400 x 150, accordion of 4",
    "card 500 x 150, accordion of 5",
)
"""A base of every kind but a box; each is 100 x 150 once folded."""
LAYERS = (1, 2, 2, 2, 2, 4, 5)
"""How many panels of each lie over one another."""
BASES = tuple(zip(FOLDED, LAYERS, strict=True))
