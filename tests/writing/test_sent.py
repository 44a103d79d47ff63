"""``sent``: what somebody had already."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.cli import main

PEOPLE = """\
people:
  marsh-aunt:
    name: the aunt on the marsh
    sent:
      - 2026-02-21 tags
      - 2026-05-16 2 boxes
      - 2026-03-01 2 tags
  hill-aunt:
    name: the aunt on the hill
    sent: [2025-12-24 3 tags]
  quay:
    name: the harbour office
"""
BATCHES = {
    "tags": ("Frost tags", "2026-02-14", "made", "8", "tag"),
    "boxes": ("May boxes", "2026-05-10", "published", "4", "box, boxes"),
    "marks": ("Wren marks", "2026-04-10", "made", "6", "bookmark"),
    "old": ("Old cards", "2025-03-10", "made", "6", "card"),
    "planned": ("Late cards", "2026-05-20", "planned", "0 of 6", "card"),
}


@pytest.fixture
def archive(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An archive with recipients, on the first of June 2026."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    for slug, (title, date, status, makes, thing) in BATCHES.items():
        record = f"title: {title}\ndate: {date}\nstatus: {status}\nmakes: {makes}\nthing: {thing}\n"
        (folder / "projects" / slug).mkdir()
        (folder / "projects" / slug / "project.yml").write_text(record, encoding="utf-8")
    (folder / "projects/first-batch/project.yml").unlink()
    write(folder, PEOPLE)
    monkeypatch.setattr("batchleaf.commands.sent.today", lambda: "2026-06-01")
    return folder


def write(archive: Path, people: str) -> None:
    """Put ``people`` in the place of the recipients."""
    (archive / "projects" / "recipients.yml").write_text(people, encoding="utf-8")


def asked(archive: Path, capsys: pytest.CaptureFixture[str], *name: str) -> tuple[int, str, str]:
    """The exit code of ``sent``, what it says, and why it does not."""
    capsys.readouterr()
    code = main(["sent", *name, "--archive", str(archive)])
    said = capsys.readouterr()
    return code, said.out, said.err


AUNT = """\
marsh-aunt, the aunt on the marsh, had:
  2026-05-16  2 boxes, May boxes
  2026-03-01  2 tags, Frost tags
  2026-02-21  1 tag, Frost tags
Of the last year not had:
  2026-04-10  Wren marks
"""


@pytest.mark.parametrize(
    "name", [("marsh-aunt",), ("marsh",), ("aunt", "on", "the", "Marsh"), ("on the marsh",)]
)
def test_what_somebody_had_and_had_not(
    name: tuple[str, ...], archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the short name or a part of the name; newest first, then what is finished of the last year."""
    assert asked(archive, capsys, *name) == (0, AUNT, "")


def test_who_had_everything_and_who_had_nothing(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Both are said."""
    write(archive, PEOPLE.replace("- 2026-03-01 2 tags", "- 2026-05-20 marks"))
    assert asked(archive, capsys, "marsh")[1].splitlines()[-1] == "Of the last year nothing is missing."
    assert asked(archive, capsys, "quay")[1] == (
        "quay, the harbour office, had nothing yet.\n"
        "The batches of the last year:\n"
        "  2026-05-10  May boxes\n"
        "  2026-04-10  Wren marks\n"
        "  2026-02-14  Frost tags\n"
    )


def test_all_people_with_their_last_day(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Who had something last stands first."""
    everybody = (
        "2026-05-16  marsh-aunt, the aunt on the marsh\n"
        "2025-12-24  hill-aunt, the aunt on the hill\n"
        "never       quay, the harbour office\n"
    )
    assert asked(archive, capsys) == (0, everybody, "")
    write(archive, "people: {}\n")
    assert asked(archive, capsys) == (0, "Nobody stands there yet.\n", "")


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("aunt", "“aunt” may be hill-aunt or marsh-aunt; name one of them."),
        ("march-aunt", "There is nobody “march-aunt” in recipients.yml; did you mean “marsh-aunt”?"),
        ("bell", "There is nobody “bell” in recipients.yml; say sent alone to see who there is."),
    ],
)
def test_a_name_that_is_nobodys_or_that_of_several(
    name: str, told: str, archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is guessed."""
    assert asked(archive, capsys, name) == (2, "", f"{told}\n")


def test_a_short_name_that_is_part_of_another_is_its_own(
    archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """So everybody can be named."""
    write(archive, "people:\n  ann:\n    name: Ann\n  anna:\n    name: Anna\n")
    assert asked(archive, capsys, "ann")[1].startswith("ann, Ann, had nothing yet.")


def test_what_is_off_is_told_and_the_rest_is_said(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A slip in one line hides nothing of the others; the check tells it too."""
    write(archive, PEOPLE.replace("2026-03-01 2 tags", "2026-03-01 2 tag").replace("2 boxes", "5 boxes"))
    code, out, _ = asked(archive, capsys, "marsh")
    assert code == 1
    assert "projects/recipients.yml:7:9: there is no batch “tag”; did you mean “tags”?" in out
    assert "projects/recipients.yml:6:9: notice: with this, 5 boxes were sent, and 4 were finished" in out
    assert "  2026-05-16  5 boxes, May boxes\n  2026-02-21  1 tag, Frost tags\n" in out
    assert main(["check", "--archive", str(archive)]) == 1
    assert "projects/recipients.yml:7:9: there is no batch “tag”" in capsys.readouterr().out


def test_a_batch_whose_record_is_faulty_is_named_by_its_address(
    archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The check says what is wrong with it; this says what was sent."""
    (archive / "projects/boxes/project.yml").write_text("title: x\n", encoding="utf-8")
    code, out, _ = asked(archive, capsys, "marsh")
    assert (code, out.splitlines()[1]) == (0, "  2026-05-16  2 of boxes")


def test_the_check_reads_it_too(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It says that it did, and nobody's name."""
    assert main(["check", "--archive", str(archive)]) == 0
    out = capsys.readouterr().out
    assert out.splitlines()[-1] == "Read recipients.yml too, which no site shows."
    assert "aunt" not in out
    (archive / "projects" / "recipients.yml").unlink()
    assert main(["check", "--archive", str(archive)]) == 0
    assert "recipients" not in capsys.readouterr().out


def test_a_new_archive_has_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Who wants one is told how it begins."""
    folder = tmp_path / "new"
    assert main(["start", str(folder)]) == 0
    assert not (folder / "projects" / "recipients.yml").exists()
    told = (
        "There is no projects/recipients.yml; write one that begins with “people:”,"
        " and no site will ever show it.\n"
    )
    assert asked(folder, capsys, "aunt") == (2, "", told)
