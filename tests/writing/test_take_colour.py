"""The colours of a supply, picked from a photo and written into its record."""

from __future__ import annotations

from codecs import BOM_UTF8
from pathlib import Path
from typing import Final

import pytest
from PIL import Image

from batchleaf.cli import main
from batchleaf.measure.colours import Colour
from batchleaf.render.picked_colours import picked_colours

DRAWER: Final = """\
# my own remark
supplies:
  reed-card:
    name: reed card   # from the fair
    kind: card
    size: 305 x 305
    opening:
      date: 2026-01-01
      amount: 4 sheets
  kelp-ink: {name: kelp ink, kind: ink}
  salt-card:
    name: salt card
    kind: card
    colour: "#f0ece2"
  wrack-pad:
    name: wrack pad
    kind: paper
    size: 150 x 150
    designs: 2 x 2
"""
TABLE, REED, SHELL = (130, 82, 45), (108, 114, 87), (230, 211, 208)


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with a drawer of its own."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    (folder / "projects" / "inventory" / "mine.yml").write_text(DRAWER, encoding="utf-8")
    return folder


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """A sheet of two colours on a table, of which the middle shows the sheet alone: three quarters reed."""
    image = Image.new("RGB", (800, 600), TABLE)
    image.paste(REED, (80, 60, 720, 540))
    image.paste(SHELL, (160, 120, 280, 480))
    path = tmp_path / "reed.png"
    image.save(path)
    return path


def take(archive: Path, *words: str) -> int:
    """The command with these words."""
    return main(["take", "colour", *words, "--archive", str(archive)])


def drawer(archive: Path) -> Path:
    """The file with the supplies."""
    return archive / "projects" / "inventory" / "mine.yml"


def test_the_middle_of_a_photo_is_seen(photo: Path) -> None:
    """The most frequent colour first, without the table at the edges."""
    assert picked_colours(photo) == (Colour(*REED), Colour(*SHELL))


def test_colours_that_are_alike_are_one(tmp_path: Path) -> None:
    """A paper that the light falls on from one side has one colour, near its mean."""
    image = Image.linear_gradient("L").resize((400, 400)).point(lambda value: 190 + value // 16)
    image.convert("RGB").save(tmp_path / "lit.png")
    (colour,) = picked_colours(tmp_path / "lit.png")
    assert all(abs(share - 197) <= 4 for share in (colour.red, colour.green, colour.blue))


def test_the_frequent_ones_count(tmp_path: Path) -> None:
    """Of four stripes the three widest, widest first; a narrow one is left out, and so is a speck alone."""
    image = Image.new("RGB", (100, 100), (250, 250, 250))
    tops = [20, 40, 57, 70, 80]
    stripes = [(200, 0, 0), (0, 120, 0), (0, 0, 150), (240, 200, 0)]  # 20, 17, 13 and 10 of 60 high
    for top, foot, colour in zip(tops, tops[1:], stripes, strict=False):
        image.paste(colour, (0, top, 100, foot))
    image.save(tmp_path / "striped.png")
    found = picked_colours(tmp_path / "striped.png")
    assert found == tuple(Colour(*colour) for colour in stripes[:3])
    speck = Image.new("RGB", (100, 100), REED)
    speck.paste((0, 0, 0), (50, 50, 62, 62))
    speck.save(tmp_path / "speck.png")
    assert picked_colours(tmp_path / "speck.png") == (Colour(*REED),)


def test_the_line_is_written_as_about(archive: Path, photo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is shown in words too; all else stays byte for byte, and the record is sound."""
    assert take(archive, "reed-card", str(photo), "--yes") == 0
    line = 'colour: "about #6c7257 #e6d3d0"  # green and pale pink'
    assert line in capsys.readouterr().out
    written = drawer(archive).read_text(encoding="utf-8")
    added = "      amount: 4 sheets\n    colour: 'about #6c7257 #e6d3d0'\n"
    assert written == DRAWER.replace("      amount: 4 sheets\n", added)
    assert main(["check", "--archive", str(archive)]) == 0


def test_a_supply_on_one_line(archive: Path, photo: Path) -> None:
    """The key stands between its braces; a mark at the start and ends of lines stay."""
    before = BOM_UTF8 + DRAWER.replace("\n", "\r\n").encode()
    drawer(archive).write_bytes(before)
    assert take(archive, "kelp-ink", str(photo), "--yes") == 0
    added = b'kind: ink, "colour": "about #6c7257 #e6d3d0"}'
    assert drawer(archive).read_bytes() == before.replace(b"kind: ink}", added)
    assert main(["check", "--archive", str(archive)]) == 0


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (
            ["salt-card", "reed.png"],
            "Nothing was written: “salt-card” has a colour already, #f0ece2; change it there.",
        ),
        (
            ["red-card", "reed.png"],
            "Nothing was written: there is no supply “red-card”; did you mean “reed-card”?",
        ),
        (
            ["wrack-pad-2", "reed.png"],
            "Nothing was written: the colours of “wrack-pad-2” are told of its pad; name “wrack-pad”.",
        ),
        (
            ["reed-card", "gone.png"],
            "Nothing was written: gone.png: this picture is gone, or may not be read.",
        ),
        (["reed-card"], "Name a picture as well: take colour oat-card oat.jpg"),
    ],
)
def test_what_cannot_be_taken_is_told(
    archive: Path,
    photo: Path,
    words: list[str],
    sentence: str,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """In a sentence, and the record stays as it is."""
    monkeypatch.chdir(photo.parent)
    assert take(archive, *words, "--yes") == 2
    assert capsys.readouterr().err.strip() == sentence
    assert drawer(archive).read_text(encoding="utf-8") == DRAWER


def test_no_picture_is_taken_for_a_colour(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nor does a picture go with what is worked out."""
    record = str(drawer(archive))
    assert take(archive, "reed-card", record, "--yes") == 2
    assert f"{record}: this picture cannot be read" in capsys.readouterr().err
    assert main(["take", "cut", "first-batch", "reed.png", "--archive", str(archive)]) == 2
    assert "leave reed.png out" in capsys.readouterr().err


def test_faulty_records_stay_as_they_are(
    archive: Path, photo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Where not all can be read, nothing is written."""
    drawer(archive).write_text(DRAWER.replace("kind: card", "kynd: card", 1), encoding="utf-8")
    assert take(archive, "kelp-ink", str(photo), "--yes") == 2
    assert "not all records can be read" in capsys.readouterr().err


@pytest.mark.parametrize(("answer", "code"), [("yes", 0), ("no", 2)])
def test_it_asks_first(
    archive: Path, photo: Path, monkeypatch: pytest.MonkeyPatch, answer: str, code: int
) -> None:
    """Only a yes writes."""
    monkeypatch.setattr("builtins.input", lambda _: answer)
    assert take(archive, "reed-card", str(photo)) == code
    assert ("about" in drawer(archive).read_text(encoding="utf-8")) == (code == 0)
