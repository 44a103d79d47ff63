"""The file of recipients, besides what cases tell of it."""

from __future__ import annotations

import datetime as dt
import os
from pathlib import Path

import pytest

from batchleaf.facts.recipients import Sent
from batchleaf.records.recipients import Batches, RecipientsRead, read_recipients, read_sent
from records.test_cases import laid_out, read

CASE = Path(__file__).parent / "cases" / "recipients.case"


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """The archive of the case, with many a faulty line."""
    laid_out(CASE.read_text(encoding="utf-8"), tmp_path)
    return tmp_path


def of(folder: Path) -> RecipientsRead:
    """What the file of an archive says."""
    worked = read(folder)
    return read_recipients(folder / "projects", Batches(worked.archive.projects, worked.slugs))


@pytest.mark.parametrize(
    ("text", "sent"),
    [
        ("2026-02-21 hazel-square-cards", Sent(dt.date(2026, 2, 21), 1, "hazel-square-cards")),
        ("2026-05-16 2 hawthorn-boxes", Sent(dt.date(2026, 5, 16), 2, "hawthorn-boxes")),
        ("  2026-5-6   12   2026 ", Sent(dt.date(2026, 5, 6), 12, "2026")),
    ],
)
def test_a_line_is_a_day_a_number_and_a_batch(text: str, sent: Sent) -> None:
    """The number may be left out; the last word is the batch, whatever it looks like."""
    assert read_sent(text) == sent


def test_what_can_be_read_is_read(archive: Path) -> None:
    """Beside all that cannot: oldest first, under the address of today; a lost batch keeps its own."""
    people = {one.slug: one for one in of(archive).people}
    assert people["marsh-aunt"].name == "the aunt on the marsh"
    assert [(one.date.day, one.count, one.batch) for one in people["marsh-aunt"].sent] == [
        (20, 1, "tags"),
        (1, 3, "tags"),
        (1, 2, "tags"),
        (2, 1, "tags"),
        (3, 1, "faulty"),
        (4, 40, "faulty"),
    ]
    assert (people["bell-tower"].name, len(people["bell-tower"].sent)) == ("bell-tower", 2)


def test_without_the_file_nothing_is_told(archive: Path) -> None:
    """Nobody has to have one."""
    (archive / "projects/recipients.yml").unlink()
    assert of(archive) == RecipientsRead((), (), there=False)


@pytest.mark.skipif(os.name == "nt", reason="links need rights there")
def test_a_link_that_leads_out_is_not_followed(
    archive: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """As with every other record."""
    file = archive / "projects/recipients.yml"
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "people.yml"
    elsewhere.write_bytes(file.read_bytes())
    file.unlink()
    file.symlink_to(elsewhere)
    read_ = of(archive)
    assert read_.people == ()
    assert [one.sentence for one in read_.problems] == [
        "this is a link that leads out of the records, so it is not read; put the file itself here"
    ]


def test_a_sound_archive_does_not_depend_on_it(archive: Path) -> None:
    """What is read of all other records, and told of them, is the same without it."""
    before = read(archive)
    (archive / "projects/recipients.yml").write_text("]", encoding="utf-8")
    after = read(archive)
    assert (after.archive, after.problems) == (before.archive, before.problems)
    assert [one.place.file for one in of(archive).problems] == ["projects/recipients.yml"]
