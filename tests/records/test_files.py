"""What lies in the folder of records: only the maker's own files are read."""

from __future__ import annotations

import os
import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from batchleaf.measure.lengths import Size
from batchleaf.records.folder import LEADS_OUT
from batchleaf.records.nodes import Mapping
from batchleaf.records.yaml_text import read_yaml
from batchleaf.workflow import read_and_work_out
from records.test_cases import CASES, SETTINGS, laid_out, read

ROOT = Path(__file__).parents[2]
SOUND = (CASES / "sound.case").read_text(encoding="utf-8")
RECORDS = [path.read_bytes() for path in sorted((ROOT / "projects").rglob("*.yml"))]

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


def test_pictures_are_told_that_belong_to_no_step_or_cannot_be_read(archive: Path) -> None:
    """One step is recorded; a photo for the ninth, a second cover and a format of phones are told."""
    for name in ("09-late.jpg", "cover.jpg", "cover.png", "IMG_1.HEIC"):
        (archive / "projects" / "wren" / name).write_bytes(b"x")
    worked = read(archive)
    assert {(p.place.file.rpartition("/")[2], p.sentence) for p in worked.problems} == {
        ("09-late.jpg", "this picture belongs to step 9, and the record has 1 step"),
        ("cover.png", "cover.jpg is the cover already; this is shown as another picture"),
        ("IMG_1.HEIC", "this picture cannot be read here; save it as JPEG"),
    }
    photos = {Path(photo.path).name: photo for photo in worked.archive.projects[0].photos}
    assert [name for name, photo in photos.items() if photo.cover] == ["cover.jpg"]
    assert photos["09-late.jpg"].step == 0


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


def mutated() -> st.SearchStrategy[bytes]:
    """A record of the demo with some bytes changed, left out or put in."""
    change = st.tuples(st.integers(0, 2000), st.integers(0, 3), st.binary(max_size=4))

    def apply(record: bytes, changes: list[tuple[int, int, bytes]]) -> bytes:
        for at, gone, new in changes:
            start = at % (len(record) + 1)
            record = record[:start] + new + record[start + gone :]
        return record

    return st.builds(apply, st.sampled_from(RECORDS), st.lists(change, min_size=1, max_size=4))


def check_bytes(data: bytes, folder: Path) -> None:
    """Whatever the bytes are: no traceback, and every problem at a place that is there."""
    for name in ("projects/wren/project.yml", "projects/inventory/more.yml"):
        laid_out(SOUND, folder)
        (folder / name).write_bytes(data)
        for problem in read_and_work_out(folder / "projects", SETTINGS).problems:
            path = folder / problem.place.file
            assert path.exists()
            if path.is_file():
                text = path.read_bytes().decode("utf-8-sig", errors="replace")
                lines = re.split("\r\n|[\r\n\x85\u2028\u2029]", text)
                assert 1 <= problem.place.line <= len(lines)
                assert 1 <= problem.place.column <= len(lines[problem.place.line - 1]) + 1
        (folder / name).unlink()


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=mutated() | st.binary(max_size=60))
def test_any_bytes_are_a_record_or_a_located_sentence(data: bytes, tmp_path: Path) -> None:
    """Slips of any kind, and no record at all."""
    check_bytes(data, tmp_path)


@pytest.mark.slow
@settings(max_examples=3000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=mutated() | st.binary(max_size=200))
def test_many_more_bytes(data: bytes, tmp_path: Path) -> None:
    """The same promise, for minutes."""
    check_bytes(data, tmp_path)


@given(st.binary(max_size=200))
def test_no_bytes_make_the_reader_fall(data: bytes) -> None:
    """Nodes, or problems that say why not."""
    node, problems = read_yaml(data, "x.yml")
    assert node is not None or problems


@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"], ids=["plain", "with a mark"])
@pytest.mark.parametrize(
    ("before", "line", "column"), [("é", 1, 2), ("title: café ", 1, 13), ("a: ü\nb: ö", 2, 5)]
)
def test_a_letter_that_is_not_utf_8_is_found(start: bytes, before: str, line: int, column: int) -> None:
    """The place counts letters, not bytes, and a byte order mark is none."""
    node, [problem] = read_yaml(start + before.encode() + b"\xff\n", "x.yml")
    assert node is None
    assert (problem.place.line, problem.place.column) == (line, column)


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
    assert len(sentences) == 2
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
