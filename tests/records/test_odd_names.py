"""Names and files that nobody would give, and a stranger might: told at their place, or harmless."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from batchleaf.measure.signs import on_one_line
from batchleaf.records.folder import CANNOT_BE_READ
from batchleaf.records.yaml_text import LARGEST
from batchleaf.telling import told
from batchleaf.views.problems import problems_page
from records.test_cases import CASES, laid_out, problems_of
from waiting import soon

TURNS: Final = "a sign that turns the direction of what follows stands here"
SOUND: Final = (CASES / "sound.case").read_text(encoding="utf-8")
posix_only = pytest.mark.skipif(os.name == "nt", reason="Windows has no such files")


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """The sound archive of the cases."""
    laid_out(SOUND, tmp_path / "mine")
    return tmp_path / "mine"


def sentences(archive: Path) -> set[tuple[str, str]]:
    """What is told, with the file that it is told of."""
    return {(problem.place.file, problem.sentence) for problem in problems_of(archive)}


# --- links, pipes, and what cannot be read -------------------------------------


@posix_only
def test_links_in_loops_end(archive: Path) -> None:
    """A link to itself, to one that leads back, to the folder above: none is followed for ever."""
    projects = archive / "projects"
    (projects / "round").symlink_to(projects / "round")
    (projects / "there").symlink_to(projects / "back")
    (projects / "back").symlink_to(projects / "there")
    (projects / "up").symlink_to(projects, target_is_directory=True)
    (projects / "wren" / "down").symlink_to(projects / "wren", target_is_directory=True)
    (projects / "inventory" / "again.yml").symlink_to(projects / "inventory" / "again.yml")
    (projects / "wren" / "notes.md").symlink_to(projects / "wren" / "notes.md")
    with soon():
        assert sentences(archive) == {
            ("projects/up", "this folder has no project.yml, so it is left out"),
        }


@posix_only
@pytest.mark.parametrize(
    "name", ["series.yml", "recipients.yml", "inventory/more.yml", "wren/notes.md", "wren/cover.jpg"]
)
def test_a_pipe_is_no_file(name: str, archive: Path) -> None:
    """Whoever opened one would wait for ever."""
    os.mkfifo(archive / "projects" / name)
    with soon():
        assert sentences(archive) == set()


@posix_only
def test_a_pipe_in_place_of_a_record_is_told(archive: Path) -> None:
    """The folder has no record then."""
    record = archive / "projects" / "wren" / "project.yml"
    record.unlink()
    os.mkfifo(record)
    with soon():
        [problem] = problems_of(archive)
    assert problem.sentence.startswith("this folder has no project.yml, so it is left out")


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("wren/project.yml", f"this file is larger than {LARGEST // 1024} kB; a record is a few lines"),
        ("inventory/more.yml", f"this file is larger than {LARGEST // 1024} kB; a record is a few lines"),
        ("recipients.yml", f"this file is larger than {LARGEST // 1024} kB; a record is a few lines"),
        ("wren/notes.md", f"these notes are larger than {LARGEST // 1024} kB; shorten them"),
    ],
)
def test_a_huge_file_is_not_read_to_its_end(name: str, sentence: str, archive: Path) -> None:
    """Sixteen gigabytes that lie nowhere: no room is made for them."""
    with (archive / "projects" / name).open("wb") as file:
        file.truncate(16 * 1024**3)
    with soon():
        assert (f"projects/{name}", sentence) in sentences(archive)


@pytest.mark.parametrize(
    "name", ["wren/project.yml", "inventory/drawer.yml", "wren/notes.md", "recipients.yml"]
)
def test_a_file_that_may_not_be_read_is_told(
    name: str, archive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It belongs to somebody else, or its disk fails."""
    path = archive / "projects" / name
    path.touch()
    really: Callable[[Path], bytes] = Path.read_bytes

    def refused(file: Path) -> bytes:
        if file == path:
            raise PermissionError
        return really(file)

    for module in ("folder", "archive", "recipients"):
        monkeypatch.setattr(f"batchleaf.records.{module}.bytes_of", refused)
    assert (f"projects/{name}", CANNOT_BE_READ) in sentences(archive)


@posix_only
def test_folders_in_folders_are_no_batches(archive: Path) -> None:
    """However deep: what lies below the folder of a batch is nobody's business."""
    deep = archive / "projects" / "wren"
    for _ in range(60):
        deep /= "deeper"
    deep.mkdir(parents=True)
    (deep / "project.yml").write_text("title: Deep\n", "utf-8")
    assert sentences(archive) == set()


# --- names ---------------------------------------------------------------------


@pytest.mark.parametrize(
    "name", ["../wren/cover.jpg", "/etc/hostname", "..", "C:\\cover.jpg", "a/cover.jpg", "."]
)
def test_a_photo_lies_in_its_folder(name: str, archive: Path) -> None:
    """Neither above it nor anywhere else: a name that is a path is no picture of the folder."""
    record = archive / "projects" / "wren" / "project.yml"
    record.write_text(record.read_text("utf-8") + f"photos:\n  '{name}': Elsewhere\n", "utf-8")
    [problem] = problems_of(archive)
    assert problem.sentence.startswith(f"there is no picture “{name}” in the folder")
    assert problem.place.line == len(record.read_text("utf-8").splitlines())


def test_names_that_differ_in_case_alone_are_told(archive: Path) -> None:
    """On some systems they are one: of two covers one is the cover, and no folder is named with a capital."""
    wren = archive / "projects" / "wren"
    for name in ("cover.jpg", "Cover.jpg"):
        (wren / name).write_bytes(b"x")
    upper = archive / "projects" / "Wren"
    upper.mkdir(exist_ok=True)
    if len(list(wren.iterdir())) < 3 or upper.samefile(wren):
        pytest.skip("this disk does not tell them apart")
    (upper / "project.yml").write_bytes((wren / "project.yml").read_bytes())
    assert sentences(archive) == {
        ("projects/wren/cover.jpg", "Cover.jpg is the cover already; this is shown as another picture"),
        (
            "projects/Wren",
            (
                "“Wren” cannot be an address; small letters, figures and single hyphens can;"
                " it is the name of this folder"
            ),
        ),
    }


@posix_only
@pytest.mark.parametrize(
    "name", ["con", "nul", "aux", "com1", "lpt9", "a\u200bb", "a\u202eb", "ｗren", "wrеn"]
)
def test_a_folder_is_an_address_everywhere(name: str, archive: Path) -> None:
    """Devices of Windows, signs that nobody sees, letters of another script that look alike."""
    folder = archive / "projects" / name
    folder.mkdir()
    (folder / "project.yml").write_bytes((archive / "projects" / "wren" / "project.yml").read_bytes())
    [problem] = problems_of(archive)
    assert problem.place.file == f"projects/{name}"
    assert problem.sentence.startswith(f"“{name}” ")
    assert problem.sentence.endswith("it is the name of this folder")


@pytest.mark.parametrize("where", ["title", "notes", "key"])
def test_a_text_turns_nothing_but_itself(where: str, archive: Path) -> None:
    """What would turn the rest of a line is told; what ends with its text, as phones write it, is not."""
    record = archive / "projects" / "wren" / "project.yml"
    text = record.read_text("utf-8")
    turned = {
        "title": text.replace("title: ", "title: \u2068One\u2069 \u202e"),
        "notes": f'{text}credit: "a \\u202Efriend"\n',
        "key": f"{text}\u2067credit: a friend\n",
    }[where]
    record.write_text(turned, "utf-8")
    found = [one for one in problems_of(archive) if "turns the direction" in one.sentence]
    sign = "2067" if where == "key" else "202E"
    assert [one.sentence for one in found] == [
        f"{TURNS} (U+{sign}); take it out, or write the line again",
    ]


ODD: Final = st.text(
    st.one_of(st.characters(exclude_characters="/\0"), st.sampled_from("\u202e\u200b\x1b\n\r\t\ud800\x07")),
    min_size=1,
    max_size=12,
).filter(lambda name: name not in (".", ".."))


@posix_only
@settings(max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(ODD, ODD)
def test_names_of_any_kind_are_told_in_plain_lines(archive: Path, folder: str, picture: str) -> None:
    """A terminal and a page get a line for each, with no sign in it that they would obey."""
    batch = archive / "projects" / os.fsdecode(folder.encode("utf-8", "surrogatepass"))
    photo = archive / "projects" / "wren" / os.fsdecode(f"99-{picture}.jpg".encode("utf-8", "surrogatepass"))
    batch.mkdir(exist_ok=True)
    photo.touch()
    found = problems_of(archive)
    for problem in found:
        line, *_ = told(problem).split("\n")
        assert line == on_one_line(line)
        told(problem).encode()
    for row in problems_page(found).rows:
        assert on_one_line(row.where + row.sentence) == row.where + row.sentence
    photo.unlink()
    if not list(batch.iterdir()):
        batch.rmdir()
