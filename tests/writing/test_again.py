"""A batch made again: the design of an old one, copied line by line, with other papers."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.cli import main
from batchleaf.records.kinds import KINDS, keys_of
from batchleaf.records.nodes import plain
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.again import TAKEN_OVER, Again, begun_in, record_again
from batchleaf.writing.record_lines import CannotPartError, record_lines

ROOT = Path(__file__).parents[2]
DEMO = sorted((ROOT / "projects").glob("*/project.yml"))
LEFT_BEHIND = (
    "title",
    "date",
    "format",
    "status",
    "series",
    "makes",
    "cut",
    "time",
    "youngest",
    "occasion",
    "film",
    "photos",
    "went",
    "asks",
    "notes",
    "was",
)
"""What belongs to one batch alone."""

OLD = """\
# yaml-language-server: $schema=../../.batchleaf/project.schema.json
# made in a hurry
title: Gorse tags
was: [gorse]
date: 2026-03-01
status: made
makes: 9 of 10   # one torn
# What it is made of.
unit: cm         # as I measure
base: tag 5 x 9
papers:
  base: white-card   # the heavy one
  "strip": 'striped-paper'

# From below.
parts:
  B strip:
    size: 4 x 2  # by eye
    paper: strip
cut:
  - white-card 1 sheet
  - striped-paper 1 sheet
time: 1 h
steps:
  # the film begins later
  - "0:30 Cut: then fold."
photos: {}
"""

NEW = """\
# yaml-language-server: $schema=../../.batchleaf/project.schema.json
title: Broom tags
format: 1
date: 2026-04-01
status: planned
makes: 0 of 6
# What it is made of.
unit: cm         # as I measure
base: tag 5 x 9
papers:
  base: striped-paper   # the heavy one
  "strip": 'striped-paper'

# From below.
parts:
  B strip:
    size: 4 x 2  # by eye
    paper: strip
steps:
  # the film begins later
  - "0:30 Cut: then fold."
"""


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with one batch that was made."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    record = folder / "projects" / "gorse-tags" / "project.yml"
    record.parent.mkdir()
    record.write_text(OLD, encoding="utf-8")
    return folder


def again(archive: Path, *papers: str, **answers: str) -> int:
    """Make the batch again."""
    given = {"from": "gorse-tags", "title": "Broom tags", "date": "2026-04-01", **answers}
    options = [word for option, text in given.items() for word in (f"--{option}", text)]
    options += [word for paper in papers for word in ("--paper", paper)]
    return main(["new", "--archive", str(archive), *options])


def test_the_design_is_copied_line_by_line(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With its remarks and its way of writing; what belongs to the old batch stays there, and is named."""
    assert again(archive, "base=striped-paper", makes="6") == 0
    record = archive / "projects" / "broom-tags" / "project.yml"
    assert record.read_bytes() == NEW.encode()
    assert capsys.readouterr().out.splitlines() == [
        f"Wrote {record}",
        "Left with the old batch: was, cut, time, photos",
    ]
    assert main(["check", "--archive", str(archive)]) == 0


def test_what_is_not_said_stays_as_it_was(archive: Path) -> None:
    """Title, number and papers are those of the old batch; it goes into a folder of its own."""
    assert main(["new", "--archive", str(archive), "--from", "gorse-tags", "--date", "2026-04-01"]) == 0
    record = (archive / "projects" / "gorse-tags-2" / "project.yml").read_text(encoding="utf-8")
    assert "title: Gorse tags\n" in record
    assert "makes: 0 of 10\n" in record
    assert "  base: white-card   # the heavy one\n" in record


def test_a_record_from_windows_is_read_too(archive: Path) -> None:
    """With its line ends and its mark at the start; the new record has plain ones."""
    old = archive / "projects" / "gorse-tags" / "project.yml"
    old.write_bytes(OLD.replace("\n", "\r\n").encode("utf-8-sig"))
    assert again(archive, "base=striped-paper", makes="6") == 0
    assert (archive / "projects" / "broom-tags" / "project.yml").read_bytes() == NEW.encode()


@pytest.mark.parametrize(
    ("papers", "answers", "says"),
    [
        (
            ["base"],
            {},
            "Nothing was written: “base” fills no role; write ROLE=SUPPLY, the roles here are base, strip.",
        ),
        (
            ["B=x"],
            {},
            "Nothing was written: “B=x” fills no role; write ROLE=SUPPLY, the roles here are base, strip.",
        ),
        ([], {"from": "gorse"}, "Nothing was written: there is no batch “gorse”; did you mean “gorse-tags”?"),
        ([], {"from": "../x"}, "Nothing was written: there is no batch “../x”."),
        (
            [],
            {"base": "tag 1 x 1"},
            "Nothing was written: the base comes from the old batch; leave out --base.",
        ),
        (
            ["base=white-crad"],
            {},
            (
                "Nothing was written:\n“white-crad” is not in the drawer; did you mean “white-card”?\n"
                "The drawer has striped-paper, white-card"
            ),
        ),
        (
            [],
            {"date": "soon"},
            "Nothing was written:\n“soon” is not a date; write the year first, like 2026-03-14",
        ),
    ],
)
def test_what_does_not_fit_writes_nothing(
    archive: Path, capsys: pytest.CaptureFixture[str], papers: list[str], answers: dict[str, str], says: str
) -> None:
    """It is told in sentences, and no folder is left behind."""
    before = sorted(archive.rglob("*"))
    assert again(archive, *papers, **answers) == 2
    assert capsys.readouterr().err == f"{says}\n"
    assert sorted(archive.rglob("*")) == before


BELOW = (
    "line 2: nothing can stand below “title”, whose value stands behind its colon; begin this line where"
    " “title” begins, or move that value down here, key by key"
)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (
            OLD.replace("hurry", "hürry").encode("cp1252"),
            "line 2: this letter is not in UTF-8; save the file as UTF-8",
        ),
        (OLD.encode("utf-16"), "line 1: this file is in UTF-16; save it as UTF-8"),
        (
            b"title: a\n title: b\n",
            BELOW,
        ),
        (
            b"{title: a}\n",
            "its keys do not stand at the start of their lines; write each on a line of its own",
        ),
        (
            b"title: a\n unit: |+\n",
            BELOW,
        ),
    ],
)
def test_an_old_record_that_cannot_be_read_is_told(
    archive: Path, capsys: pytest.CaptureFixture[str], data: bytes, says: str
) -> None:
    """With its file and line, and without a traceback."""
    (archive / "projects" / "gorse-tags" / "project.yml").write_bytes(data)
    assert again(archive) == 2
    assert capsys.readouterr().err == f"Nothing was written: projects/gorse-tags/project.yml, {says}.\n"


def test_a_folder_that_leads_out_of_the_records_is_not_read(archive: Path, tmp_path: Path) -> None:
    """A link may lead to anything."""
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "project.yml").write_text(OLD, encoding="utf-8")
    try:
        (archive / "projects" / "linked").symlink_to(tmp_path / "elsewhere", target_is_directory=True)
    except OSError:
        pytest.skip("this system makes no links")
    assert again(archive, **{"from": "linked"}) == 2


@pytest.mark.parametrize(
    ("papers", "filled"),
    [
        ("papers:\n  base: a\n", "papers:\n  base: new\n"),
        ("papers:\n    'base' :  \"a\"  # why\n", "papers:\n    'base' :  new  # why\n"),
        ("papers: {base: a}\n", 'papers: {base: "new"}\n'),
        ("papers:\n  base:\n    a\n", "papers:\n  base:\n    new\n"),
        ("papers:\n  top: base\n  base: a  \n", "papers:\n  top: base\n  base: new  \n"),
    ],
)
def test_a_role_is_filled_anew_in_its_own_line(papers: str, filled: str) -> None:
    """However the maker wrote it, and with the remark behind it."""
    record = record_again(record_lines(papers.encode()), Again("t", "d", "1", "", {"base": "new"}), ())
    assert record == f"title: t\nformat: 1\ndate: d\nstatus: planned\nmakes: 0 of 1\n{filled}"


def test_a_design_that_stands_alone_is_named_again() -> None:
    """With what the old batch said besides; nothing of the design is copied into the record."""
    old = record_lines(
        b"title: a\ndesign: strip-bookmark\nmakes: 4 of 5\npapers:\n  water: a, b\ntime: 1 h\n"
    )
    record = record_again(old, Again("t", "d", begun_in(old, "12"), "tides", {"water": "c"}), ())
    begins = "title: t\nformat: 1\ndate: d\nseries: tides\nstatus: planned\nmakes: 0 of 5\n"
    assert record == f"{begins}design: strip-bookmark\npapers:\n  water: c\n"


def test_lines_that_mean_something_else_elsewhere_are_refused() -> None:
    """A value whose blank lines count cannot be cut off before them."""
    old = record_lines(b"base: |+\n  a\n\ntime: 1 h\n")
    with pytest.raises(CannotPartError, match="cannot be copied as they stand"):
        record_again(old, Again("t", "d", "1", "", {}), ())


def test_every_key_is_taken_over_or_left_behind_on_purpose() -> None:
    """A new key of a batch belongs to its design or to the one batch; that is decided once."""
    keys = {key.name for key in keys_of(KINDS["project"].model)}
    assert keys <= {*TAKEN_OVER, *LEFT_BEHIND}
    assert not {*TAKEN_OVER} & {*LEFT_BEHIND}


REMARKS = st.lists(st.tuples(st.integers(0, 60), st.sampled_from(["", "# x", "   # y"])), max_size=6)


@given(st.sampled_from(DEMO), REMARKS, st.sampled_from(["\n", "\r\n"]))
def test_the_blocks_are_the_record(path: Path, remarks: list[tuple[int, str]], line_end: str) -> None:
    """Wherever remarks and blank lines stand, all lines are in one block each, and the values are kept."""
    rows = path.read_text(encoding="utf-8").splitlines()
    for at, remark in remarks:
        rows.insert(min(at, len(rows)), remark)
    text = line_end.join(rows) + line_end
    parted = record_lines(text.encode())
    assert parted.text == text
    node, _ = read_yaml(text.encode(), "x")
    assert node is not None
    assert parted.values == plain(node)
    assert [one.key for one in parted.keys] == list(parted.values)


def test_records_written_by_commands_name_their_schema(archive: Path) -> None:
    """Where the records lie elsewhere too; and none is named where there is none."""
    assert again(archive) == 0
    config = archive / "mkdocs.yml"
    moved = config.read_text(encoding="utf-8").replace("unit: mm ", "projects: my/records\n      unit: mm ")
    config.write_text(moved, encoding="utf-8")
    (archive / "my").mkdir()
    (archive / "projects").rename(archive / "my" / "records")
    assert again(archive, title="Elsewhere") == 0
    for slug, way in (("broom-tags", "../.."), ("elsewhere", "../../..")):
        record = archive / "my" / "records" / slug / "project.yml"
        first = record.read_text(encoding="utf-8").splitlines()[0]
        assert first == f"# yaml-language-server: $schema={way}/.batchleaf/project.schema.json"
    named = os.path.normpath(record.parent / first.partition("=")[2])
    assert Path(named) == archive / ".batchleaf" / "project.schema.json"
    assert Path(named).is_file()
    Path(named).unlink()
    assert again(archive, title="Without") == 0
    without = archive / "my" / "records" / "without" / "project.yml"
    assert without.read_text(encoding="utf-8").startswith("title: Without\n")
