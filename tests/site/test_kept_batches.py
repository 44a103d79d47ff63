"""What is made of batches by other processes, or of what is near them alone, is what is made of all here."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from batchleaf import kept_batches
from batchleaf.core.batch_cutting import PLANNER, remembering
from batchleaf.core.figures import Figures
from batchleaf.helping import Helpers, NoHelpError
from batchleaf.kept_batches import Making, made_batches
from batchleaf.made_batch import MadeBatch, ToMake, made_page, said, to_make
from batchleaf.store import CannotKeepError, Store
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.masthead import Masthead
from batchleaf.views.near import near
from batchleaf.views.site import data_of_batch, pages_of_batch
from core.test_for_makes import COUNT
from views.test_small import worked_out

PLANS = remembering(PLANNER)
LONG = [pytest.param(name, marks=pytest.mark.slow) for name in ("collating", "sticking")]
ARCHIVES = ("small", "bench", "colours", "pads", "post", "video", *LONG)


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> list[ToMake]:
    """The batches of a small archive, one of which is still to come."""
    figures = worked_out("small.archive", tmp_path_factory.mktemp("small"))
    return [to_make(batch, figures, None, {}, Masthead("A bench"), None) for batch in figures.batches.values()]


def texts(made: list[MadeBatch]) -> list[dict[str, str]]:
    """Each page and file by its address."""
    return [
        {**{one.address: said(one.body) for one in batch.pages}, **{one.address: said(one.text) for one in batch.files}}
        for batch in made
    ]


def made_here(asked: list[ToMake], folder: Path) -> list[dict[str, str]]:
    """Made in this process."""
    return texts(list(made_batches(asked, Store(folder), Making(PLANS, COUNT))))


def test_helpers_make_the_same(
    asked: list[ToMake], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Letter for letter, with a planner of their own; and they are asked."""
    told: list[int] = []

    class Counted(Helpers):
        def made(self, asked: Sequence[object]) -> list[str]:
            answers = super().made(asked)
            told.append(len(answers))
            return answers

    here = made_here(asked, tmp_path / "here")
    monkeypatch.setattr(kept_batches, "ENOUGH_FOR_ALL_CORES", 1)
    monkeypatch.setattr(kept_batches, "Helpers", Counted)
    monkeypatch.setattr("batchleaf.kept_batches.os.cpu_count", lambda: 2)
    assert made_here(asked, tmp_path / "elsewhere") == here
    # The one to come is made here in any case.
    assert told == [len(asked) - 1]


def test_without_help_all_is_made_here(
    asked: list[ToMake], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where no other process can be had, or it ends at once, nothing is lost."""
    here = made_here(asked, tmp_path / "here")
    monkeypatch.setattr(kept_batches, "ENOUGH_FOR_ALL_CORES", 1)
    monkeypatch.setattr("batchleaf.kept_batches.os.cpu_count", lambda: 2)
    for program in (tmp_path / "is-not-there", Path("/bin/false")):
        monkeypatch.setattr("batchleaf.helping.sys.executable", str(program))
        with pytest.raises(NoHelpError), Helpers(tmp_path) as helpers:
            helpers.made([1, 2, 3])
        assert made_here(asked, tmp_path / program.name) == here


@pytest.mark.parametrize("name", ARCHIVES)
def test_pages_look_at_what_is_near(name: str, tmp_path: Path) -> None:
    """In both editions, the pages and files of each batch say the same as where they may see everything."""
    figures = worked_out(f"{name}.archive", tmp_path)
    for seen in (figures, public_edition(figures, Told(), PLANS)):
        assert list(written(seen, seen)) == [
            one for slug in seen.batches for one in written(near(seen.batches[slug], seen), seen, slug)
        ]


def written(around: Figures, figures: Figures, only: str = "") -> list[tuple[str, str]]:
    """What is written of the batches of ``figures`` with ``around`` to look at."""
    found: list[tuple[str, str]] = []
    for slug, batch in figures.batches.items():
        if only in ("", slug):
            pages = pages_of_batch(batch, around, {}, str)
            files = data_of_batch(batch, around, is_one_of_several=True)
            found += [(one.address, str(made_page(one).body)) for one in pages]
            found += [(one.address, one.text) for one in files]
    return found


def test_a_cache_that_cannot_be_written_is_told_once(
    asked: list[ToMake], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """Helpers end without a word, and who asked them says what stood in the way."""
    folder = tmp_path / "cache"
    folder.write_text("no folder", encoding="utf-8")
    monkeypatch.setattr(kept_batches, "ENOUGH_FOR_ALL_CORES", 1)
    monkeypatch.setattr("batchleaf.kept_batches.os.cpu_count", lambda: 2)
    with pytest.raises(CannotKeepError, match="Nothing can be kept in"):
        made_here(asked, folder)
    assert capfd.readouterr().err == ""
