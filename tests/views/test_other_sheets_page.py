"""The page that plans a batch on other sheets, as the demo has it."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import Figures, all_in_full
from batchleaf.kept_batches import making
from batchleaf.store import Store
from batchleaf.views.other_sheets import link_to_other_sheets, other_sheets_page

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def figures() -> Figures:
    """The demo."""
    archive = open_archive(ROOT)
    found = archive.worked().figures
    assert found is not None
    how = making(Store(archive.cache))
    return all_in_full(found, how.planner, how.count)


def said(figures: Figures, slug: str) -> dict[str, str]:
    """What stands at each size."""
    page = other_sheets_page(figures.batches[slug], figures)
    assert page is not None
    return {one.name: one.sentence.replace("\u00a0", " ") for one in page.sheets}


def test_what_the_makes_take(figures: Figures) -> None:
    """Ten cards of film, two from a sheet of A4 or Letter; a band of 340 mm comes from none."""
    film = said(figures, "puddle-ice-cards")
    assert film["A4"].startswith("10 cards take ")
    assert "5 of clear film" in film["A4"]
    assert set(said(figures, "letter-bundle-bands").values()) == {
        "Not from these: A, base, is 50 × 340 mm and does not fit."
    }


def test_names_on_the_page_are_its_own(figures: Figures) -> None:
    """Each plan of each size has another; links lead from one folder below the batch."""
    page = other_sheets_page(figures.batches["sloe-lane-cards"], figures)
    assert page is not None
    ids = [plan.drawing.id for sheet in page.sheets for plan in sheet.plans]
    assert len(set(ids)) == len(ids) > 4
    links = [piece.href for sheet in page.sheets for plan in sheet.plans for piece in plan.instruction
             if not isinstance(piece, str) and hasattr(piece, "href")]  # fmt: skip
    assert links
    assert all(link.startswith("../../../drawer/") for link in links)


def test_the_batch_leads_there(figures: Figures) -> None:
    """With the sizes in the words of the link."""
    link = link_to_other_sheets(figures.batches["sloe-lane-cards"])
    assert link is not None
    assert (link.text, link.href) == ("Cut from A4, Letter, 12 x 12 in or 30.5 x 30.5 cm", "other-sheets/")
