"""New archives and new records, as a maker asks for them."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.cli import main
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.block import quoted
from batchleaf.writing.record import Answers, record_text
from batchleaf.writing.slugs import slug_of


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive, in a folder with a space in its name."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    return folder


def new(archive: Path, **answers: str) -> int:
    """Ask for a new batch."""
    given = {"title": "Gorse tags", "base": "tag 50 x 90", "makes": "10", "paper": "white-card", **answers}
    options = [word for option, text in given.items() for word in (f"--{option}", text)]
    return main(["new", "--archive", str(archive), *options])


def test_a_new_archive_passes_the_check_and_builds(archive: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """From nothing to a site in two commands."""
    assert main(["check", "--archive", str(archive)]) == 0
    assert main(["build", "--archive", str(archive)]) == 0
    assert (archive / "site" / "projects" / "first-batch" / "index.html").is_file()
    assert "Read 1 batch, 3 supplies" in capfd.readouterr().out


def test_nothing_is_written_over(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder that holds something is refused."""
    before = (archive / "mkdocs.yml").read_bytes()
    assert main(["start", str(archive)]) == 2
    assert "is not empty; name a folder that is not there yet" in capsys.readouterr().err
    assert (archive / "mkdocs.yml").read_bytes() == before


def test_a_new_batch_passes_the_check(archive: Path) -> None:
    """The record is planned, and moves nothing."""
    assert new(archive, date="2026-03-01") == 0
    assert (archive / "projects" / "gorse-tags" / "project.yml").read_text(encoding="utf-8") == (
        "# yaml-language-server: $schema=../../.batchleaf/project.schema.json\n"
        "title: Gorse tags\n"
        "format: 1\n"
        "date: 2026-03-01\n"
        "status: planned\n"
        "makes: 0 of 10\n"
        "base: tag 50 x 90\n"
        "papers:\n"
        "  base: white-card\n"
    )
    assert main(["check", "--archive", str(archive)]) == 0


def test_a_second_batch_of_the_same_name_has_its_own_folder(archive: Path) -> None:
    """No record is written over."""
    assert (new(archive), new(archive)) == (0, 0)
    assert {path.name for path in (archive / "projects").iterdir()} >= {"gorse-tags", "gorse-tags-2"}


def test_a_wrong_answer_writes_nothing(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What is off is told in whole sentences, and no folder is left behind."""
    assert new(archive, base="tag 50 by", paper="white-crad") == 2
    assert capsys.readouterr().err.splitlines() == [
        "Nothing was written:",
        "“50 by” is not a size; write two lengths with x between, like 44 x 70",
        "“white-crad” is not in the drawer; did you mean “white-card”?",
        "The drawer has striped-paper, white-card",
    ]
    assert not (archive / "projects" / "gorse-tags").exists()


def test_a_wrong_setting_writes_nothing(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is told before a folder is made."""
    config = archive / "mkdocs.yml"
    config.write_text(config.read_text(encoding="utf-8").replace("EUR", "GOLD"), encoding="utf-8")
    assert new(archive) == 2
    assert "“GOLD” is no currency" in capsys.readouterr().err
    assert not (archive / "projects" / "gorse-tags").exists()


@pytest.mark.parametrize(
    ("title", "slug"),
    [
        ("Gorse tags", "gorse-tags"),
        ("Écluse & Été", "ecluse-ete"),
        ("  --Straße 7!  ", "strasse-7"),
        ("Sister’s thank-you cards", "sisters-thank-you-cards"),
        ("Rock 'n' roll", "rock-n-roll"),
        ("Con", "con-batch"),
        ("Inventory", "inventory-batch"),
        ("日本", "batch"),
        ("x" * 200, "x" * 60),
        ("../../etc", "etc"),
    ],
)
def test_an_address_is_safe_on_every_system(title: str, slug: str) -> None:
    """Small letters, figures and hyphens; no name that Windows or the archive keeps for itself."""
    assert slug_of(title) == slug


@pytest.mark.parametrize(
    "text",
    [
        "Plain",
        "Ode: to a wren",
        "it's",
        "# no comment",
        "- no list",
        "&a",
        "*a",
        "!x",
        "{a}",
        "yes",
        "a\nb",
        "“x”",
    ],
)
def test_whatever_the_title_is_the_record_says_it(text: str) -> None:
    """Signs that mean something in YAML are put in quotes."""
    node, problems = read_yaml(
        record_text(Answers(text, "2026-03-01", "tag 5 x 9", "3", "card"), ()).encode(), "x"
    )
    assert problems == ()
    assert node is not None
    assert f"'{' '.join(text.split())}'" in repr(node) or f'"{" ".join(text.split())}"' in repr(node)
    assert "\n" not in quoted(text)
