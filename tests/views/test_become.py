"""What the pieces of the drawer could become, in words and drawn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import with_the_drawer, work_out
from batchleaf.facts import KeptPiece, Opening, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.become import become_page
from batchleaf.views.drawing.shapes import Box, Stroke
from batchleaf.views.pages import Line, text_of
from core.drawers import archive, batch_of, cut, day, part, size, supply

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
CARD = supply(opening=Opening(day(0), Fraction(4), 400))
FERN = supply("fern", opening=Opening(day(0), Fraction(2), 200))


def plain(line: Line) -> str:
    """Its words, with spaces of one kind."""
    return text_of(line).replace("\u00a0", " ")


def test_pieces_are_told_with_their_best_use_and_drawn() -> None:
    """A kept half gives two of the squares; sheets of either card four; the fern card was never taken."""
    one = batch_of(part("A", 50, 50, "card"), makes=2, cuts=())
    one = replace(one, cut=(cut(1, KeptPiece(size(100, 50), 1)),))
    worked = work_out(archive(one, supplies=(CARD, FERN)), SETTINGS)
    figures = with_the_drawer(worked, PLANNER)
    assert figures.ledger
    page = become_page(figures, figures.ledger)
    (kept,), (sheets,) = page.odd, page.whole
    assert plain(page.sentence).startswith("1 kept piece and 5 sheets, with the parts of batches")
    assert (plain((kept.size,)), plain(kept.papers)) == ("100 × 50 mm", "1 piece of card")
    assert plain(sheets.papers) == "3 sheets of card and 2 sheets of fern"
    assert [plain(use) for use in (*kept.uses, *sheets.uses)] == [
        f"2 × A a of {one.title}; 100 % of it",
        f"4 × A a of {one.title}; 100 % of it",
    ]
    assert kept.drawing
    boxes = [shape for shape in kept.drawing.shapes if isinstance(shape, Box) and shape.role == "part"]
    (cuts,) = (shape for shape in kept.drawing.shapes if isinstance(shape, Stroke))
    assert sorted((box.x, box.y, box.width, box.height) for box in boxes) == [
        (0.0, 0.0, 50.0, 50.0),
        (50.0, 0.0, 50.0, 50.0),
    ]
    assert cuts.lines == ((50.0, 0.0, 50.0, 50.0),)
    assert [(row.supply, row.last) for row in page.untouched if isinstance(row.supply, str)] == []
    assert [row.last for row in page.untouched] == ["never"]
