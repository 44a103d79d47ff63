"""The README of a new archive leads from its example to a published batch with pictures."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import html5lib
import pytest
from PIL import Image

from batchleaf.cli import main
from batchleaf.commands.opened import open_archive
from batchleaf.measure.lengths import Size, Unit, parse_size
from batchleaf.writing.archive import STARTER

README = (STARTER / "README.md").read_text(encoding="utf-8")
DRAWER, PARTS, STAMPED, MADE, PHOTOS, SERIES = re.findall(r"```yaml\n(.*?)```", README, re.DOTALL)


def answer(question: str) -> str:
    """What the README says of the batch that it leads to."""
    wanted = {
        "called": "Gorse tags",
        "month": "2026-03-01",
        "What is one": "tag 50 x 90 mm",
        "meant": "10",
        "cut from": "moss-card",
        "series": "",
    }
    return next(text for word, text in wanted.items() if word in question)


def without(record: str, *keys: str) -> str:
    """The record without what the maker writes over."""
    return re.sub(rf"^({'|'.join(keys)}):.*\n(  .*\n)*", "", record, flags=re.MULTILINE)


@pytest.mark.parametrize(
    "settings", [[], pytest.param(["--unit", "in", "--currency", "USD"], marks=pytest.mark.slow)]
)
def test_a_newcomer_gets_from_start_to_a_published_batch(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capfd: pytest.CaptureFixture[str],
    settings: list[str],
) -> None:
    """Step by step, with what stands in the README, and never a word from the check, on any continent."""
    archive = tmp_path / "my paper"
    at = ["--archive", str(archive)]
    monkeypatch.setattr("builtins.input", answer)
    monkeypatch.setattr("sys.stdin.isatty", lambda: True)
    assert main(["start", str(archive), *settings]) == 0
    drawer = archive / "projects" / "inventory" / "drawer.yml"
    text = drawer.read_text(encoding="utf-8")
    drawer.write_text(text.replace("supplies:\n", DRAWER, 1), encoding="utf-8")

    assert main(["new", *at]) == 0
    record = archive / "projects" / "gorse-tags" / "project.yml"
    record.write_text(record.read_text(encoding="utf-8") + PARTS, encoding="utf-8")
    assert main(["build", *at]) == 0
    assert "1 sheet of moss card" in words_of(archive, "projects/gorse-tags")

    assert main(["take", "cut", "gorse-tags", "--yes", *at]) == 0
    taken = record.read_text(encoding="utf-8")
    assert "cut:\n  - moss-card 1 sheet\n  - striped-paper 1 sheet\n" in taken
    record.write_text(without(taken, "status", "makes", "cut") + MADE + PHOTOS, encoding="utf-8")
    for name, colour in (("cover.jpg", "darkgreen"), ("02-label.jpg", "beige")):
        Image.new("RGB", (800, 600), colour).save(record.parent / name)
    (archive / "projects" / "series.yml").write_text(SERIES, encoding="utf-8")
    capfd.readouterr()
    assert main(["check", *at]) == 0
    assert capfd.readouterr().out.count("\n") == 1

    made = record.read_text(encoding="utf-8")
    record.write_text(made.replace("status: made", "status: published"), encoding="utf-8")
    assert main(["build", *at]) == 0
    page = html5lib.parse(
        (archive / "site" / "projects" / "gorse-tags" / "index.html").read_text(encoding="utf-8"),
        namespaceHTMLElements=False,
    )
    pictures = [one.get("alt") for one in page.iter("img")]
    assert pictures == [
        "Nine tags in a fan, green with striped labels",
        "Stick a label to each, and knot the thread through a hole at the top.",
    ]
    assert "9 tags from 1 sheet each of moss card and striped paper" in words_of(
        archive, "projects/gorse-tags"
    )
    assert "Gorse tags" in words_of(archive, "")


def words_of(archive: Path, address: str) -> str:
    """All words of a page."""
    page = archive / "site" / address / "index.html"
    tree: Any = html5lib.parse(page.read_text(encoding="utf-8"), namespaceHTMLElements=False)
    return " ".join("".join(tree.find(".//main").itertext()).split())


@pytest.mark.slow
def test_the_example_may_go(tmp_path: Path) -> None:
    """Its folder first, and then what only it used."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive)]) == 0
    for file in sorted((archive / "projects" / "first-batch").iterdir()):
        file.unlink()
    (archive / "projects" / "first-batch").rmdir()
    (archive / "projects" / "inventory" / "drawer.yml").write_text(DRAWER, encoding="utf-8")
    assert main(["check", "--archive", str(archive)]) == 0
    assert main(["build", "--archive", str(archive)]) == 0


@pytest.mark.parametrize("unit", ["mm", "cm", "in"])
@pytest.mark.parametrize("currency", ["EUR", "usd", "JPY", "BHD"])
def test_the_example_means_the_same_everywhere(
    unit: str, currency: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whatever the unit and the currency, also one without cents or with a thousand of them."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive), "--unit", unit, "--currency", currency]) == 0
    capsys.readouterr()
    opened = open_archive(archive)
    assert opened.settings.unit.value == unit
    assert opened.settings.currency.code == currency.upper()
    assert opened.worked().problems == ()
    (batch,) = opened.worked().archive.projects
    assert batch.finished_size == Size(Fraction(50), Fraction(140))
    text = (archive / "mkdocs.yml").read_text(encoding="utf-8")
    assert f"unit: {unit} " in text
    assert f"currency: {currency.upper()} " in text


@pytest.mark.slow
def test_the_example_builds_in_inches_and_dollars(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """Without a word of warning."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive), "--unit", "in", "--currency", "USD"]) == 0
    assert main(["build", "--archive", str(archive)]) == 0
    assert "WARNING" not in capfd.readouterr().err
    assert "$" in words_of(archive, "projects/first-batch")


def test_settings_that_are_none_lay_nothing_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each is told in the words that a wrong one in mkdocs.yml is told in."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive), "--unit", "inch", "--currency", "dollars"]) == 2
    assert capsys.readouterr().err.splitlines() == [
        "Nothing was written:",
        "“inch” is no unit; write mm, cm or in",
        "“dollars” is no currency; write a code of ISO 4217 such as EUR or USD",
    ]
    assert not archive.exists()


STAMPS = "tools:\n  tide-words: {name: tide words, kind: stamps}\n"
ENVELOPE = "supplies:\n  plain-envelope: {name: plain envelope, kind: envelopes}\n"


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_what_the_readme_says_of_parts_and_amounts_can_be_read(
    unit: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A base by its name, a stamp on a part, an envelope and a thread."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive), "--unit", unit]) == 0
    (archive / "projects" / "inventory" / "more.yml").write_text(STAMPS + ENVELOPE, encoding="utf-8")
    amounts = re.findall(r"`((?:plain-envelope|cotton-thread) [^`]+)`", README)
    bases = re.findall(r"`(card [^`]+ fold)`", README)
    assert (len(amounts), len(bases)) == (2, 2)
    for number, base in enumerate(bases):
        given = ["--title", f"T {number}", "--base", base, "--makes", "2", "--paper", "white-card"]
        assert main(["new", "--archive", str(archive), *given]) == 0
        record = archive / "projects" / f"t-{number}" / "project.yml"
        lines = "".join(f"  - {amount}\n" for amount in amounts)
        text = record.read_text(encoding="utf-8")
        record.write_text(f"{text}{STAMPED}supplies:\n{lines}", encoding="utf-8")
    capsys.readouterr()
    worked = open_archive(archive).worked()
    told = {one.sentence for one in worked.problems}
    assert all(one.startswith("A folds across the grain of white card") for one in told)
    made = [one for one in worked.archive.projects if one.slug.startswith("t-")]
    sizes = [one.finished_size.upright for one in made if one.finished_size]
    assert sizes == [parse_size("105 x 148", Unit.MM), parse_size("4 1/4 x 5 1/2", Unit.INCH)]
    assert [{use.supply for use in one.uses} for one in made] == [{"plain-envelope", "cotton-thread"}] * 2
