"""Six questions: each is asked until its answer can be taken, and what is wrong is told at once."""

from __future__ import annotations

import builtins
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from batchleaf.cli import main
from batchleaf.commands.new import QUESTIONS

PAD = """\
supplies:
  shoal-pad: {name: shoal pad, kind: patterned paper, size: 200 x 200 mm, designs: 12 x 2}
  star-sticker: {name: stars, kind: stickers}
"""
SERIES = "series:\n  twelve-tides:\n    title: Twelve Tides\n"
DRAWER = "The drawer has shoal-pad 1 to 12, striped-paper, white-card\n"
Answering = Callable[..., list[str]]


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with a pad and a series."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    (folder / "projects" / "inventory" / "pad.yml").write_text(PAD, encoding="utf-8")
    (folder / "projects" / "series.yml").write_text(SERIES, encoding="utf-8")
    return folder


@pytest.fixture
def answering(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Answering:
    """Somebody at a terminal with ``answers`` for what is asked; gives the questions."""

    def somebody(*answers: str) -> list[str]:
        left, asked = iter(answers), list[str]()

        def say(question: str) -> str:
            asked.append(question.strip())
            return _next(left)

        capsys.readouterr()
        monkeypatch.setattr(builtins, "input", say)
        monkeypatch.setattr("sys.stdin.isatty", lambda: True)
        return asked

    return somebody


def _next(answers: Iterator[str]) -> str:
    answer = next(answers, None)
    if answer is None:
        raise EOFError
    return answer


def keys(asked: list[str]) -> list[str]:
    """The options that the questions stand for."""
    return [next(key for key, text in QUESTIONS.items() if question.startswith(text)) for question in asked]


def new(archive: Path, *options: str) -> int:
    """Ask for a new batch."""
    return main(["new", "--archive", str(archive), *options])


def test_each_question_is_asked_until_it_is_answered(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """The sentence comes before the next question, and no answer is lost."""
    asked = answering(
        *("", "Gorse tags"),
        *("1.3.2026", "2026-02-30", "2026-03-01"),
        *("", "tag 50 by", "card A6 side fold", "tag 50 x 90"),
        *("ten", "0", "8 of 10", "10"),
        *(
            "",
            "white card",
            "whitecard",
            "cotton-thread",
            "gold",
            "shoal-pad-13",
            "shoal-pad 3 13",
            "white-card",
        ),
        *("Twelve Tides", "tides", "twelve-tides"),
    )
    assert new(archive) == 0
    assert keys(asked) == [
        key
        for key, times in {"title": 2, "date": 3, "base": 4, "makes": 4, "paper": 8, "series": 3}.items()
        for _ in range(times)
    ]
    record = archive / "projects" / "gorse-tags" / "project.yml"
    assert capsys.readouterr().out == (
        "an answer is needed here\n"
        "“1.3.2026” is not a date; write the year first, like 2026-03-14\n"
        "“2026-02-30” is not a day of the calendar\n"
        "an answer is needed here\n"
        "“50 by” is not a size; write two lengths with x between, like 44 x 70\n"
        "“card A6 side fold” has no comma before the fold; write card A6, side fold\n"
        "“ten” is not a whole number from 1 to 99999; write for example 2\n"
        "“0” is not a whole number from 1 to 99999; write for example 2\n"
        "“8 of 10” is not a whole number from 1 to 99999; write for example 2\n"
        "an answer is needed here\n"
        f"“white card” is “white-card” in the drawer; write it so\n{DRAWER}"
        f"“whitecard” is “white-card” in the drawer; write it so\n{DRAWER}"
        f"“cotton-thread” has no sheet size in the drawer, so nothing can be cut from it\n{DRAWER}"
        f"“gold” is not in the drawer\n{DRAWER}"
        f"“shoal-pad” has papers 1 to 12; there is no 13\n{DRAWER}"
        f"“shoal-pad” has papers 1 to 12; there is no 13\n{DRAWER}"
        "“Twelve Tides” cannot be an address; small letters, figures and single hyphens can;"
        " write “twelve-tides”\nThe file series.yml has twelve-tides\n"
        "“tides” is not in series.yml\nThe file series.yml has twelve-tides\n"
        f"Wrote {record}\n"
    )
    assert record.read_text(encoding="utf-8").splitlines()[1:] == [
        "title: Gorse tags",
        "format: 1",
        "date: 2026-03-01",
        "series: twelve-tides",
        "status: planned",
        "makes: 0 of 10",
        "base: tag 50 x 90",
        "papers:",
        "  base: white-card",
    ]


def test_what_shows_only_in_the_end_is_asked_again(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """A piece that no sheet holds: the piece and the paper may be said anew, the rest is kept."""
    asked = answering("Large", "", "tag 300 x 400", "", "white-card", "", "tag 100 x 200", "")
    assert new(archive) == 0
    assert keys(asked) == ["title", "date", "base", "makes", "paper", "series", "base", "paper"]
    assert asked[-2].endswith("Leave empty for tag 300 x 400.")
    assert (
        "A is 300\xa0×\xa0400 mm and does not fit a sheet of white card, 210\xa0×\xa0297 mm\n"
        in capsys.readouterr().out
    )
    record = (archive / "projects" / "large" / "project.yml").read_text(encoding="utf-8")
    assert record.endswith("makes: 0 of 12\nbase: tag 100 x 200\npapers:\n  base: white-card\n")


def test_an_option_that_is_wrong_is_asked_for(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """What came with the command and can be taken is not asked again."""
    asked = answering("tag 5 x 9 cm")
    given = ["--title", "T", "--date", "", "--makes", "0 of 4", "--paper", "shoal-pad 3", "--series", ""]
    assert new(archive, *given, "--base", "tag") == 0
    assert keys(asked) == []
    assert new(archive, *given, "--base", "tgg") == 0
    assert keys(asked) == ["base"]
    assert "“tgg” has no size; did you mean “tag”?" in capsys.readouterr().out
    assert "makes: 0 of 4\n" in (archive / "projects" / "t-2" / "project.yml").read_text(encoding="utf-8")


@pytest.mark.parametrize("broken_off", [EOFError, KeyboardInterrupt])
def test_whoever_breaks_off_has_written_nothing(
    archive: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    broken_off: type[BaseException],
) -> None:
    """Ctrl+C and Ctrl+D end it in a sentence."""

    def stop(_: str) -> str:
        raise broken_off

    monkeypatch.setattr(builtins, "input", stop)
    monkeypatch.setattr("sys.stdin.isatty", lambda: True)
    before = sorted(archive.rglob("*"))
    assert new(archive) == 2
    assert capsys.readouterr().err == "Nothing was written.\n"
    assert sorted(archive.rglob("*")) == before


def test_without_a_terminal_all_is_told_in_the_order_of_the_questions(
    archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And nothing is written."""
    before = sorted(archive.rglob("*"))
    options = ["--date", "soon", "--makes", "some", "--paper", "gold", "--series", "tides"]
    capsys.readouterr()
    assert new(archive, *options) == 2
    assert capsys.readouterr().err.splitlines() == [
        "Nothing was written:",
        "--title is missing",
        "“soon” is not a date; write the year first, like 2026-03-14",
        "--base is missing",
        "“some” is not a whole number from 1 to 99999; write for example 2",
        "“gold” is not in the drawer",
        DRAWER.strip(),
        "“tides” is not in series.yml",
        "The file series.yml has twelve-tides",
    ]
    assert sorted(archive.rglob("*")) == before


def test_a_measure_without_a_unit_is_the_archives(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What is right in inches is far too small in millimetres."""
    given = ["--title", "T", "--base", "tag 1/8 x 2 1/2", "--makes", "2", "--paper", "white-card"]
    for unit, code in (("in", 0), ("mm", 2)):
        folder = tmp_path / unit
        assert main(["start", str(folder), "--unit", unit]) == 0
        assert new(folder, *given) == code
    assert "“1/8” is 0.125 mm, too small to cut" in capsys.readouterr().err


def test_signs_that_nobody_sees_are_asked_for_again(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """As in a record; and so is a title that is longer than one may be."""
    asked = answering("bell \x07", "x" * 401, "Fine", "", "tag", "", "white-card", "")
    assert new(archive) == 0
    assert keys(asked)[:4] == ["title", "title", "title", "date"]
    told = capsys.readouterr().out
    assert "a sign that cannot be shown stands here (U+0007)" in told
    assert "“title” is longer than 400 letters" in told


def test_a_faulty_drawer_does_not_make_answers_wrong(archive: Path) -> None:
    """Nobody can say what it holds."""
    (archive / "projects" / "inventory" / "pad.yml").write_text("supplies: [", encoding="utf-8")
    assert new(archive, "--title", "T", "--base", "tag", "--paper", "shoal-pad 3") == 0


def test_a_batch_made_again_is_asked_for_in_the_same_way(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its roles too, one by one."""
    asked = answering("", "soon", "", "6", "gold", "", "shoal-pad 1", "tides", "twelve-tides")
    assert new(archive, "--from", "first-batch") == 0
    assert [question for question in asked if "fills" in question] == [
        "Which supply fills “base”? Leave empty for white-card.",
        "Which supply fills “base”? Leave empty for white-card.",
        "Which supply fills “strip”? Leave empty for striped-paper.",
    ]
    told = capsys.readouterr().out
    assert told.startswith(
        "“soon” is not a date; write the year first, like 2026-03-14\n“gold” is not in the drawer\n"
    )
    record = (archive / "projects" / "first-batch-2" / "project.yml").read_text(encoding="utf-8")
    assert "series: twelve-tides\nstatus: planned\nmakes: 0 of 6\n" in record
    assert "  base: white-card\n  strip: shoal-pad 1\n" in record


def test_a_batch_that_can_no_longer_be_made_is_refused(
    archive: Path, answering: Answering, capsys: pytest.CaptureFixture[str]
) -> None:
    """Where no question is left whose answer could mend it."""
    (archive / "projects" / "old").mkdir()
    (archive / "projects" / "old" / "project.yml").write_text("title: Old\ndesign: gone\n", encoding="utf-8")
    answering("", "", "", "")
    assert new(archive, "--from", "old") == 2
    assert capsys.readouterr().err == "Nothing was written:\nthere is no “gone” in projects/designs\n"
