"""What lies in the folder of records: only the maker's own files are read."""

from __future__ import annotations

import os
from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.measure.lengths import Size
from batchleaf.records.folder import LEADS_OUT
from batchleaf.records.nodes import Mapping, place_of
from batchleaf.records.yaml_text import lines_of, read_yaml
from records.test_cases import CASES, laid_out, read
from waiting import soon

SOUND = (CASES / "sound.case").read_text(encoding="utf-8")

needs_links = pytest.mark.skipif(os.name == "nt", reason="links need a right on Windows")


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """The sound archive of the cases."""
    laid_out(SOUND, tmp_path / "mine")
    return tmp_path / "mine"


def test_what_editors_and_systems_leave_behind_is_no_record(archive: Path) -> None:
    """A lock file, a shadow of a system, a folder with the ending of a record: none is read."""
    inventory = archive / "projects" / "inventory"
    (inventory / "._drawer.yml").write_bytes(b"\x00\x05\x16\x07")
    (inventory / ".#drawer.yml").write_text("lock", encoding="utf-8")
    (inventory / "old.yml").mkdir()
    (inventory / "drawer.yml~").write_text("supplies: [", encoding="utf-8")
    (archive / "projects" / "wren" / "._cover.jpg").write_bytes(b"\x00")
    worked = read(archive)
    assert worked.problems == ()
    assert worked.archive.projects[0].photos == ()


def test_a_mark_at_the_start_of_a_file_is_no_part_of_it(archive: Path) -> None:
    """Some editors begin UTF-8 files with a byte order mark."""
    record = archive / "projects" / "wren" / "project.yml"
    record.write_bytes(b"\xef\xbb\xbf" + record.read_bytes())
    worked = read(archive)
    assert worked.problems == ()
    assert worked.archive.projects[0].title == "Wren notes"


@needs_links
def test_nothing_outside_of_the_records_is_read(archive: Path, tmp_path: Path) -> None:
    """Links to notes, photos, drawers and whole batches elsewhere are not followed."""
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "secret.md").write_text("my diary", encoding="utf-8")
    (elsewhere / "cover.jpg").write_bytes(b"x")
    (elsewhere / "project.yml").write_text("title: Not mine\n", encoding="utf-8")
    wren = archive / "projects" / "wren"
    (wren / "notes.md").symlink_to(elsewhere / "secret.md")
    (wren / "cover.jpg").symlink_to(elsewhere / "cover.jpg")
    (archive / "projects" / "linked").symlink_to(elsewhere, target_is_directory=True)
    (archive / "projects" / "inventory" / "more.yml").symlink_to(elsewhere / "project.yml")
    worked = read(archive)
    [project] = worked.archive.projects
    assert (project.notes, project.photos) == ("", ())
    assert [(problem.place.file, problem.sentence) for problem in worked.problems] == [
        (f"projects/{name}", LEADS_OUT) for name in ("inventory/more.yml", "linked", "wren/notes.md")
    ]


@needs_links
@pytest.mark.parametrize("link", ["series.yml", "inventory", "wren/project.yml"])
def test_a_record_elsewhere_is_not_read(link: str, archive: Path, tmp_path: Path) -> None:
    """The series, the whole drawer, one record: each is told, none is read."""
    here, elsewhere = archive / "projects" / link, tmp_path / "elsewhere"
    if not here.exists():
        here.write_text("series:\n  a:\n    title: A\n", encoding="utf-8")
    here.rename(elsewhere)
    here.symlink_to(elsewhere, target_is_directory=elsewhere.is_dir())
    worked = read(archive)
    assert [problem.sentence for problem in worked.problems] == [LEADS_OUT]
    assert worked.archive.series == ()


@needs_links
def test_a_link_inside_of_the_records_is_followed(archive: Path) -> None:
    """Notes that two batches share lie among the records."""
    (archive / "projects" / "shared.md").write_text("Sloes", encoding="utf-8")
    (archive / "projects" / "wren" / "notes.md").symlink_to(archive / "projects" / "shared.md")
    assert read(archive).archive.projects[0].notes == "Sloes"


def test_pictures_are_told_that_belong_to_no_step_or_cannot_be_read(
    archive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One step is recorded; a photo for the ninth, a second cover and formats that are not read are told."""
    monkeypatch.setattr("batchleaf.records.folder.find_spec", lambda _: None)
    for name in ("09-late.jpg", "cover.jpg", "cover.png", "IMG_1.HEIC", "raw.dng"):
        (archive / "projects" / "wren" / name).write_bytes(b"x")
    worked = read(archive)
    assert {(p.place.file.rpartition("/")[2], p.sentence) for p in worked.problems} == {
        ("09-late.jpg", "this picture belongs to step 9, and the record has 1 step"),
        ("cover.png", "cover.jpg is the cover already; this is shown as another picture"),
        (
            "IMG_1.HEIC",
            (
                "this picture of a phone cannot be read here; save it as JPEG, or install what reads it:"
                " pip install mkdocs-batchleaf[heic]"
            ),
        ),
        ("raw.dng", "this picture cannot be read here; save it as JPEG"),
    }
    photos = {Path(photo.path).name: photo for photo in worked.archive.projects[0].photos}
    assert [name for name, photo in photos.items() if photo.cover] == ["cover.jpg"]
    assert photos["09-late.jpg"].step == 0


def test_pictures_of_phones_are_read_where_something_reads_them(
    archive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They are photos like any other then, and nothing is told."""
    monkeypatch.setattr("batchleaf.records.folder.find_spec", lambda _: object())
    (archive / "projects" / "wren" / "cover.heic").write_bytes(b"x")
    worked = read(archive)
    assert worked.problems == ()
    assert [Path(photo.path).name for photo in worked.archive.projects[0].photos] == ["cover.heic"]


def test_opening_scraps_and_kept_pieces_have_one_name(tmp_path: Path) -> None:
    """80 x 60 in the drawer is the 60 x 80 that a batch cuts."""
    laid_out(SOUND.replace("=== told", "  - Glue.\n=== told"), tmp_path)
    record = tmp_path / "projects" / "wren" / "project.yml"
    text = record.read_text(encoding="utf-8")
    record.write_text(
        text.replace("  - chalk-card 2 sheets", "  - ripple-green scrap 80 x 60\n  - chalk-card 2 sheets"),
        "utf-8",
    )
    assert read(tmp_path).problems == ()


def test_an_amount_in_all_is_not_multiplied(tmp_path: Path) -> None:
    """3.5 m in all for ten bookmarks are 3.5 m."""
    laid_out(SOUND.replace("jute-cord 140 mm", "jute-cord 3.5 m in all"), tmp_path)
    [use] = read(tmp_path).archive.projects[0].uses
    assert (use.quantity, use.per_make) == (use.quantity, None)
    assert use.quantity is not None
    assert float(use.quantity) == 3.5


@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"], ids=["plain", "with a mark"])
@pytest.mark.parametrize(
    ("before", "line", "column"), [("é", 1, 2), ("title: café ", 1, 13), ("a: ü\nb: ö", 2, 5)]
)
def test_a_letter_that_is_not_utf_8_is_found(start: bytes, before: str, line: int, column: int) -> None:
    """The place counts letters, not bytes, and a byte order mark is none."""
    node, [problem] = read_yaml(start + before.encode() + b"\xff\n", "x.yml")
    assert node is None
    assert (problem.place.line, problem.place.column) == (line, column)


@pytest.mark.parametrize(
    ("data", "place", "sentence"),
    [
        (b"a: x\nb: \x1b[31m", (2, 4), "a sign that cannot be shown stands here (U+001B)"),
        ("é: \x00".encode(), (1, 4), "a sign that cannot be shown stands here (U+0000)"),
        (b"a: x\xc2\x85b: \x7f", (2, 4), "a sign that cannot be shown stands here (U+007F)"),
        ("a: x".encode("utf-16-le"), (1, 1), "this file is in UTF-16"),
        ("a: x".encode("utf-16-be"), (1, 1), "this file is in UTF-16"),
    ],
)
def test_a_sign_that_cannot_be_shown_is_found(data: bytes, place: tuple[int, int], sentence: str) -> None:
    """A terminal obeys some of them, and no page may hold them."""
    node, [problem] = read_yaml(data, "x.yml")
    assert node is None
    assert (problem.place.line, problem.place.column) == place
    assert problem.sentence.startswith(sentence)
    assert lines_of("\x1b[31m\ta") == ("\ufffd[31m\ta",)


def test_the_validators_own_word_for_a_key_may_be_a_key(archive: Path) -> None:
    """It puts ``[key]`` behind a key that is off; a maker's ``[key]`` is one like any other."""
    record = archive / "projects" / "wren" / "project.yml"
    record.write_bytes(record.read_bytes() + b'"[key]": x\n')
    [problem] = read(archive).problems
    assert problem.sentence.startswith("“[key]” is not a key of this record; the keys here are title, ")


def test_a_line_of_any_length_is_looked_through_once() -> None:
    """The work grows with the length of what cannot be read, not with its square."""
    with soon():
        node, _ = read_yaml(b"a: [\n" + b" " * 200_000 + b"}\n", "x.yml")
    assert node is None


def test_what_stands_under_a_key_is_found_at_once() -> None:
    """Each of thousands of supplies is looked up, not searched for one by one."""
    node, _ = read_yaml(b"a:\n" + b"".join(b"  k%d: x\n" % i for i in range(40_000)), "x.yml")
    assert node is not None
    with soon():
        lines = [place_of(node, ("a", f"k{i}")).line for i in range(40_000)]
    assert lines == list(range(2, 40_002))


@pytest.mark.parametrize("text", ["a: [1,\n", "a: {\n\n", "- 'x\n"])
def test_a_text_that_breaks_off_is_told_at_its_last_line(text: str) -> None:
    """The parser looks for more below; there is no line there."""
    _, [problem] = read_yaml(text.encode(), "x.yml")
    assert problem.place.line <= len(text.splitlines())


def test_a_quoted_value_keeps_its_sentence_on_one_line(archive: Path) -> None:
    """A terminal and a page show a problem as one line."""
    record = archive / "projects" / "wren" / "project.yml"
    record.write_bytes(record.read_bytes() + b'status: "ma\\n\\ede"\nunit: >\n  m\n\n  m\n')
    sentences = [problem.sentence for problem in read(archive).problems]
    assert len(sentences) == 3
    assert all(sentence.isprintable() for sentence in sentences)


def test_a_paper_with_an_up_is_never_turned(archive: Path) -> None:
    """Parts cut from it stand, and its scraps and kept pieces keep the name they were written with."""
    drawer = archive / "projects" / "inventory" / "drawer.yml"
    text = drawer.read_text(encoding="utf-8").replace("60 x 80", "80 x 60")
    sizes = {}
    for direction in ("any-way", "one-way"):
        drawer.write_text(
            text.replace("    name: ripple green\n", f"    name: r\n    front: rows, {direction}\n"), "utf-8"
        )
        record = archive / "projects" / "wren" / "project.yml"
        record.write_text(record.read_text("utf-8").replace("kept 20 x 90", "kept 90 x 20"), "utf-8")
        worked = read(archive).archive
        [project] = worked.projects
        paper = next(supply for supply in worked.supplies if supply.slug == "ripple-green")
        cut = next(cut for cut in project.cut if cut.supply == "ripple-green")
        sizes[direction] = [part.turns for part in project.parts], paper.scraps[0].size, cut.kept[0].size
    standing = Size(Fraction(60), Fraction(80)), Size(Fraction(20), Fraction(90))
    assert sizes["any-way"] == ([True, True], *standing)
    assert sizes["one-way"] == ([True, False], *(size.turned for size in standing))


def test_an_empty_key_stands_in_a_line_that_is_there() -> None:
    """A question mark asks for a key, and the parser takes the nothing below the last line for it."""
    node, _ = read_yaml(b"?\n", "x.yml")
    assert isinstance(node, Mapping)
    assert [key.place.line for key, _ in node.entries] == [1]


@pytest.mark.parametrize("text", ['title: "Kite" ' + "x" * 3000 + "\n", "k" * 3000 + ": v\n  a: b\n"])
def test_a_long_line_is_not_said_again(text: str) -> None:
    """Its place is enough; a sentence stays one that is read."""
    _, [problem] = read_yaml(text.encode(), "x.yml")
    assert len(problem.sentence) < 200
