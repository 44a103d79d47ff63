"""Cautions: which a record asks for, in which order, and never a promise."""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import work_out_batch
from batchleaf.facts import Part, Supply, Tool, Use
from batchleaf.measure.lengths import Unit
from batchleaf.views.cautions import cautions_for
from core.drawers import batch, part, supply

THINGS = ("button cells", "magnets", "brads", "tea lights", "spray adhesive", "ink", "beads")
BENCH = ("craft knife", "trimmer", "heat tool")


def things(*kinds: str) -> dict[str, Supply]:
    """Supplies of these kinds, by their kind."""
    return {kind: replace(supply(kind), kind=kind) for kind in (*kinds, "card")}


def tools(*kinds: str) -> dict[str, Tool]:
    """Tools of these kinds, by their kind."""
    return {kind: Tool(kind, f"the {kind}", kind, Unit.MM) for kind in kinds}


def told(*kinds: str, bench: tuple[str, ...] = (), youngest: int | None = None) -> tuple[str, ...]:
    """The cautions of a batch that uses all of these; it is cut by hand."""
    parts: tuple[Part, ...] = (part("A", 50, 50, "card"),)
    uses = tuple(Use(kind, None) for kind in kinds)
    one = replace(batch(1), parts=parts, cut=(), uses=uses, tools=bench, youngest=youngest)
    supplies = things(*kinds)
    known = tools(*bench)
    return cautions_for(work_out_batch(one, supplies, known, PLANNER), supplies, known)


def test_all_of_them_in_order() -> None:
    """What can be swallowed, what burns, what cuts, what is hot, then the label."""
    assert [one.split(":")[0].split(",")[0] for one in told(*THINGS, bench=BENCH)] == [
        "A button cell that is swallowed does harm within hours",
        "Loose magnets are dangerous to swallow",
        "Small parts",
        "Keep paper away from a flame",
        "Sprays",
        "Blades are sharp",
        "A heat tool burns",
        "Read what the label says of inks and adhesives",
    ]


@pytest.mark.parametrize(
    ("months", "kinds", "first"),
    [
        (35, ("brads",),
         "It is for somebody under three, and it has small parts: not for children under three."),
        (36, ("brads",), "Small parts: not for children under three."),
        (None, ("brads",), "Small parts: not for children under three."),
        (24, ("ribbon",),
         ("It is for somebody under three: nothing small may come loose, and no cord or ribbon be long enough"
          " to go round a neck.")),
    ],
)  # fmt: skip
def test_the_age_of_the_youngest(months: int | None, kinds: tuple[str, ...], first: str) -> None:
    """Three years is the limit of 16 CFR 1501 and EN 71-1."""
    assert told(*kinds, youngest=months)[0] == first


def test_what_needs_none_has_none() -> None:
    """Ribbon for somebody grown up, by hand."""
    assert told("ribbon", youngest=40 * 12) == ()


def test_nothing_is_promised() -> None:
    """No caution calls anything safe, or not poisonous."""
    words = " ".join(told(*THINGS, bench=BENCH, youngest=12)).lower()
    assert "safe" not in words
    assert "toxic" not in words
