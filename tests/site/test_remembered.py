"""What is remembered from one build to the next makes no page older than its records."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Final, TypeVar, TypeVarTuple

import pytest
from PIL import Image

from batchleaf.core.batch_cutting import Planner, remembering
from batchleaf.core.cutting.least_cost import least_alone, least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.remembered import Remembered, Remembering, afresh
from batchleaf.core.sheets_needed import remembering_counts
from batchleaf.facts import OtherSheet, Settings
from batchleaf.kept_batches import Making
from batchleaf.made_batch import said
from batchleaf.made_site import MadeSite, made_site
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.measure.money import Currency
from batchleaf.render.look import STANDARD
from batchleaf.store import Store
from batchleaf.views.edition import Told, handed_out
from batchleaf.views.masthead import Masthead
from batchleaf.workflow import Worked, read_and_work_out
from records.test_cases import laid_out



def _soon(steps: int) -> bool:
    """Enough work: any plan will do here."""
    return steps > 20


PLANS: Final = remembering(
    Planner(most=partial(most_makes, stop=_soon), cheapest=partial(least_cost, stop=_soon))
)
COUNT: Final = remembering_counts(lambda job: least_alone(job, 1, stop=_soon))
SHEETS: Final = (OtherSheet("A4", parse_size("210 x 297", Unit.MM)),)
SETTINGS: Final = Settings(Unit.MM, Currency.of("EUR"), other_sheets=SHEETS)
LANTERN: Final = "projects/lantern/project.yml"
ORIEL: Final = "projects/designs/oriel.yml"
DRAWER: Final = "projects/inventory/drawer.yml"

WRITTEN: Final = {
    "a title": (LANTERN, "Lantern cards", "Place(1) cards"),
    "a part of it": (LANTERN, "Place(1) cards", "Place(2) cards"),
    "a number of makes": (LANTERN, "makes: 3 of 4", "makes: 3 of 5"),
    "who gets the notes": (LANTERN, "series: tides", "series: tides\nnotes: hand-out"),
    "another title": ("projects/later/project.yml", "Later tags", "Latest tags"),
    "a design": (ORIEL, "size: 41 x 13", "size: 43 x 13"),
    "whose design it is": (ORIEL, "title: Oriel card", "title: Oriel\ncredit: after an old window"),
    "a price": (DRAWER, "dune-card 10 sheets, 5.00", "dune-card 10 sheets, 7.00"),
    "a colour": (DRAWER, "size: 200 x 200", 'size: 200 x 200\n    colour: "#203040"'),
    "a tool": (DRAWER, "longest: 320 mm", "longest: 320 mm\n    narrowest: 60 mm"),
}
"""What is edited: the file, what it says, and what it says then."""


T = TypeVar("T")
Of = TypeVarTuple("Of")


class Archive:
    """A small archive and its settings, of which a site is made as the plugin makes it."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.settings, self.masthead = folder, SETTINGS, Masthead("A paper bench")
        laid_out((Path(__file__).parent / "lantern.archive").read_text(encoding="utf-8"), folder)

    def worked(self, remembered: Remembering) -> Worked:
        """Its figures and problems, of which something may be remembered."""
        return read_and_work_out(self.folder / "projects", self.settings, PLANS, remembered)

    def site(self, remembered: Remembering, kept: Path, figures: Remembering = afresh) -> MadeSite:
        """The whole site, of which something may be remembered, or lie in the folder ``kept``."""
        worked = self.worked(figures)
        assert worked.figures is not None, worked.problems
        hand_outs = handed_out(worked.figures, Told(), PLANS, figures)
        site, problems = made_site(
            worked.figures,
            self.masthead,
            STANDARD,
            Store(kept),
            hand_outs,
            how=Making(PLANS, COUNT, remembered),
        )
        assert not problems
        return site

    def edit(self, file: str, text: str, then: str) -> None:
        """Put ``then`` in the place of ``text``."""
        path = self.folder / file
        before = path.read_text(encoding="utf-8")
        assert text in before
        path.write_text(before.replace(text, then), encoding="utf-8")


def _other_unit(archive: Archive) -> None:
    archive.settings = replace(SETTINGS, unit=Unit.CM)


def _disclosure(archive: Archive) -> None:
    archive.settings = replace(SETTINGS, disclosure="Some of it was given.")


def _sheets(archive: Archive) -> None:
    archive.settings = replace(SETTINGS, other_sheets=())


def _name_of_the_site(archive: Archive) -> None:
    archive.masthead = Masthead("Another bench")


def _photo(archive: Archive) -> None:
    Image.new("RGB", (300, 200), "navy").save(archive.folder / "projects/lantern/cover.jpg")


def _order_of_papers(archive: Archive) -> None:
    path = archive.folder / DRAWER
    head, dune, tide, rest = _pieces_of(path.read_text(encoding="utf-8"))
    path.write_text(head + tide + dune + rest, encoding="utf-8")


def _pieces_of(text: str) -> tuple[str, str, str, str]:
    dune, tide, ink = (text.index(f"  {slug}:") for slug in ("dune-card", "tide-paper", "kelp-ink"))
    return text[:dune], text[dune:tide], text[tide:ink], text[ink:]


OTHERWISE: Final[dict[str, Callable[[Archive], None]]] = {
    "the unit": _other_unit,
    "a disclosure": _disclosure,
    "other sheets": _sheets,
    "the name of the site": _name_of_the_site,
    "a photo": _photo,
    "the order of the papers": _order_of_papers,
}


@pytest.fixture
def archive(tmp_path: Path) -> Archive:
    """The archive as it is laid out."""
    return Archive(tmp_path)


@pytest.mark.slow
def test_after_each_edit_all_is_as_if_made_afresh(archive: Archive, tmp_path: Path) -> None:
    """One after the other, every edit changes the site, to what a new process would make of the same."""
    remembered, kept = Remembered(), tmp_path / "kept"
    before = archive.site(remembered, kept, remembered)
    assert _told(before) == _told(archive.site(afresh, tmp_path / "new"))
    edits = {name: _written(*edit) for name, edit in WRITTEN.items()} | OTHERWISE
    for name, edit in edits.items():
        edit(archive)
        site = archive.site(remembered, kept, remembered)
        assert _told(site) == _told(archive.site(afresh, tmp_path / f"new {name}")), name
        assert name == "the order of the papers" or _told(site) != _told(before), name
        before = site


def _written(file: str, text: str, then: str) -> Callable[[Archive], None]:
    return lambda archive: archive.edit(file, text, then)


def _told(site: MadeSite) -> tuple[object, ...]:
    """All that is written of it."""
    bodies = {page.address: (said(page.body), page.title, page.meta) for page in site.pages}
    return bodies, {one.address: said(one.text) for one in site.data}, _names(site), _social(site)


def _names(site: MadeSite) -> list[str]:
    return [photo.name for photo in site.photos]


def _social(site: MadeSite) -> dict[str, tuple[str, str]]:
    return {address: (one.file.name, one.alt) for address, one in site.social.items()}


class Asked:
    """Remembers nothing, and writes down of which batches something is made."""

    def __init__(self) -> None:
        self.of: set[str] = set()

    def __call__(self, name: str, make: Callable[[*Of], T], *of: *Of) -> T:
        """What ``make`` gives for ``of``."""
        self.of.add(name)
        return make(*of)


def test_what_an_edit_does_not_touch_is_not_made_again(archive: Archive, tmp_path: Path) -> None:
    """A step's words make the pages of their own batch anew; those of the other are where they were."""
    first, again, edited = Asked(), Asked(), Asked()
    archive.site(first, tmp_path)
    archive.site(again, tmp_path)
    archive.edit("projects/later/project.yml", "title: ", "time: 35 min\ntitle: ")
    archive.site(edited, tmp_path)
    assert first.of == {"lantern", "later"}
    assert again.of == set()
    assert edited.of == {"later"}


def test_a_problem_is_told_where_it_stands_now(archive: Archive) -> None:
    """Equal facts a line further down give the same figures, and their problems at that line."""
    remembered = Remembered()
    archive.edit(LANTERN, "dune-card 3 sheets, kept 90 x 300", "dune-card 1 sheet, kept 90 x 300")
    before = archive.worked(remembered).problems
    archive.edit(LANTERN, "cut:", "# Bought where the lane ends.\ncut:")
    now = archive.worked(remembered).problems
    assert now == archive.worked(afresh).problems
    assert [one.sentence for one in now] == [one.sentence for one in before] != []
    assert [one.place.line for one in now] != [one.place.line for one in before]


def test_terms_that_are_noted_are_told_at_once(archive: Archive) -> None:
    """That nothing is known of them is no other fact, but a maker who wrote it down is reminded of it."""
    remembered = Remembered()
    before = archive.worked(remembered).problems
    archive.edit(DRAWER, "      - 30 x 8 slack water", "      - 30 x 8 slack water\n    sale: not known")
    now = archive.worked(remembered).problems
    assert now == archive.worked(afresh).problems
    assert [one.sentence for one in now if "“not known”" in one.sentence]
    assert now != before


def test_where_a_record_says_a_thing_changes_no_page(archive: Archive, tmp_path: Path) -> None:
    """A remark above all supplies moves each to another line, and nothing is made again."""
    archive.site(afresh, tmp_path)
    archive.edit(DRAWER, "supplies:", "# Bought where the lane ends.\nsupplies:")
    asked = Asked()
    archive.site(asked, tmp_path)
    assert asked.of == set()


def test_a_spoilt_text_is_made_again(archive: Archive, tmp_path: Path) -> None:
    """Whatever lies in the store with other bytes than it was given is not taken for what it was."""
    before = _told(archive.site(afresh, tmp_path / "kept"))
    spoilt = [one for one in (tmp_path / "kept").rglob("*") if one.is_file()]
    for one in spoilt:
        one.write_bytes(one.read_bytes()[:-1] + b"?")
    assert _told(archive.site(afresh, tmp_path / "kept")) == before
    assert len(spoilt) > 20
