"""From today’s drawer, in words."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.figures import Figures, with_the_drawer, work_out
from batchleaf.facts import Opening, Settings, Use
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.find.indexed import indexed
from batchleaf.views.more import more_of
from batchleaf.views.pages import text_of
from batchleaf.views.today import today_page
from core.drawers import archive, batch_of, day, part, supply

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
CARD = supply(opening=Opening(day(0), Fraction(5), None))
BAG = replace(
    supply("bag", opening=Opening(day(0), Fraction(9), None)), unit="piece", units="pieces", size=None
)
SQUARES = replace(
    batch_of(part("A", 50, 50, "card"), makes=6, cuts=(("card", 2),)),
    slug="squares",
    uses=(Use("bag", Fraction(6), Fraction(1)),),
)
LARGE = replace(batch_of(part("A", 90, 90, "card"), makes=3, planned=True), slug="large", finished=0)


def figures() -> Figures:
    """Of five sheets two are cut, of nine bags six are used."""
    return with_the_drawer(work_out(archive(SQUARES, LARGE, supplies=(CARD, BAG)), SETTINGS), PLANNER)


def test_each_batch_is_told_what_there_is_for_it_and_what_it_lacks() -> None:
    """Three large ones from three sheets, which is enough; squares until the bags are gone."""
    page = today_page(figures())
    said = [
        (row.batch.href, row.makes, text_of(row.first_out), text_of(row.again), row.again_head)
        for row in page.rows
    ]
    plain = [tuple(text.replace("\u00a0", " ") for text in row) for row in said]
    assert sorted(plain) == [
        ("../projects/large/", "3 cards", "card", "enough", "For 3 cards"),
        ("../projects/squares/", "3 cards", "bag", "3 pieces of bag", "For 6 cards"),
    ]
    assert text_of(page.sentence).startswith("Two of two batches can be made again")
    assert text_of(page.sentence).endswith(", one of them in full.")


def test_it_is_a_choice_where_batches_are_found() -> None:
    """At least one of both, as many again of the large ones."""
    facet = next(one for one in indexed(figures()).chosen if one.view.key == "today")
    counts = {choice.value: choice.count for choice in facet.view.choices}
    assert counts == {"one": 2, "again": 1}


def test_the_public_edition_says_nothing_of_it() -> None:
    """No page, no choice: it tells what lies in the drawer."""
    published = replace(SQUARES, status=type(SQUARES.status).PUBLISHED)
    worked = work_out(archive(published, supplies=(CARD, BAG)), SETTINGS)
    private = with_the_drawer(worked, PLANNER)
    assert any(one.address == "today/" for one in more_of(private))
    public = with_the_drawer(public_edition(private, Told(), PLANNER), PLANNER)
    assert not any(one.address == "today/" for one in more_of(public))
    assert all(batch.from_drawer is None for batch in public.batches.values())
    assert "today" not in {one.view.key for one in indexed(public).chosen}
