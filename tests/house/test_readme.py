"""The documents say what is true: their records read, their commands are there."""

from __future__ import annotations

import importlib.util
import json
import re
import shlex
import shutil
from pathlib import Path

import pytest
from mkdocs.config import load_config

from batchleaf.cli import main, parser
from batchleaf.commands.opened import open_archive
from batchleaf.commands.sent import recipients_of
from batchleaf.facts import Weight
from batchleaf.plugin import BatchleafConfig
from batchleaf.records.kinds import keys_of, models_of
from batchleaf.records.written.jobs import JobWritten
from batchleaf.telling import told

ROOT = Path(__file__).parents[2]
STARTER = ROOT / "plugins" / "batchleaf" / "writing" / "starter"
README = (ROOT / "README.md").read_text(encoding="utf-8")
ALL_BLOCKS = re.findall(r"```yaml\n(.*?)```", README, re.DOTALL)
JOBS = [block for block in ALL_BLOCKS if block.startswith("unit:")]
BLOCKS = [block for block in ALL_BLOCKS if block not in JOBS]
DOCUMENTS = [ROOT / "README.md", ROOT / "DEVELOPERS.md", STARTER / "README.md"]
RUN = r"python (?:BATCHLEAF/|C:\\batchleaf\\)?run\.py"
TYPED = re.compile(rf"^ {{4}}({RUN} .+?)(?=  |$)|`({RUN} [^`]+)`", re.MULTILINE)
COMMANDS = [
    (path.parent.name, found[1] or found[2])
    for path in DOCUMENTS
    for found in TYPED.finditer(path.read_text(encoding="utf-8"))
]


def test_the_readme_leads_to_every_key() -> None:
    """The reference of keys is one step away."""
    assert "(site_src/keys.md)" in README
    assert (ROOT / "site_src" / "keys.md").is_file()


@pytest.mark.parametrize("key", [name for name, _ in BatchleafConfig._schema if name != "enabled"])
def test_every_setting_is_in_the_readme(key: str) -> None:
    """With its meaning, in the table of settings."""
    assert re.search(rf"^\| `{key}` \|", README, re.MULTILINE)


def test_the_readme_says_how_to_look_at_the_pages() -> None:
    """Opened from the disk they have no search, so the first row of the table serves them."""
    first = re.search(r"^\| to \| type \|\n\|[-| ]+\|\n\| (.+) \| `(.+)` \|$", README, re.MULTILINE)
    assert first is not None
    assert "look at the pages with search" in first[1]
    assert first[2] == "python run.py site --serve"


def place_of(block: str) -> str:
    """The file of an archive that a block of the README shows."""
    first = block.partition(":")[0]
    return {
        "title": "projects/wren-note-bookmarks/project.yml",
        "supplies": "projects/inventory/drawer.yml",
        "tools": "projects/inventory/bench.yml",
        "series": "projects/series.yml",
        "people": "projects/recipients.yml",
        "site_name": "mkdocs.yml",
    }[first]


@pytest.mark.parametrize("block", BLOCKS, ids=place_of)
def test_the_examples_of_the_readme_are_read_without_a_word(block: str, tmp_path: Path) -> None:
    """Each is a whole file: a batch and recipients come to the demo's; a drawer and a series stand alone."""
    file = tmp_path / place_of(block)
    shutil.copytree(ROOT / "site_src", tmp_path / "site_src")
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    if file.name in ("project.yml", "recipients.yml"):
        shutil.copytree(ROOT / "projects", tmp_path / "projects", ignore=shutil.ignore_patterns("*.jpg"))
    (tmp_path / "projects").mkdir(exist_ok=True)
    file.parent.mkdir(exist_ok=True)
    file.write_text(block, encoding="utf-8")
    archive = open_archive(tmp_path)
    worked = archive.worked()
    recipients = recipients_of(archive, worked.archive)
    assert recipients.there == (file.name == "recipients.yml")
    problems = (*worked.problems, *recipients.problems)
    assert [told(one) for one in problems if one.weight is not Weight.REMARK] == []
    read = worked.archive
    assert file.name == "mkdocs.yml" or [*read.projects, *read.supplies, *read.tools, *read.series]
    assert load_config(str(tmp_path / "mkdocs.yml")).site_name == "Fernhollow Paper Bench"


def test_the_readme_shows_a_file_of_each_kind() -> None:
    """A batch, a drawer, a bench, a series, the recipients, the settings."""
    assert len({place_of(block) for block in BLOCKS}) == len(BLOCKS) == 6


@pytest.mark.parametrize("job", JOBS)
def test_the_job_of_the_readme_is_answered(
    job: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """As it stands there; and with the other things that may be asked."""
    file = tmp_path / "job.yml"
    for asked in ("want: 12", "want: most", "fill: letter"):
        text, count = re.subn(r"want: 12.*", asked, job)
        assert count == 1
        have = text if asked != "want: 12" else text.replace("have: 7, ", "")
        file.write_text(have, encoding="utf-8")
        assert main(["cut", str(file)]) == 0, capsys.readouterr().err


def test_the_readme_names_every_key_of_a_job_and_of_its_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """What may be written, and what a program is told."""
    assert len(JOBS) == 1
    section = README.partition("## A job at the table")[2].partition("\n## ")[0]
    keys = {key.name for model in models_of(JobWritten) for key in keys_of(model)}
    assert main(["cut", "5 x 7 from 12 x 12", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    (plan,) = answer["plans"]
    for key in (*keys, *answer, *plan, *plan["cuts"][0]):
        assert re.search(rf"\b{key}\b", section), key


def rows_of(table: str) -> list[str]:
    """The first cell of each row of the table whose first head is ``table``."""
    _, _, after = README.partition(f"| {table} |")
    rows = re.findall(r"^\| `([^`]+)` \|", after.partition("\n\n")[0], re.MULTILINE)
    assert len(rows) >= 5
    return rows


DRAWER = """\
supplies:
  chalk-card: {name: chalk card, kind: card, size: 600 x 600}
  shoal-pad: {name: shoal pad, kind: patterned paper, size: 200 x 200, designs: 12 x 2}
  star-sticker: {name: stars, kind: stickers, size: 18 x 18}
"""
RECORD = "title: Tide\ndate: 2026-03-14\nstatus: planned\nmakes: 0 of 4\n"


def told_of(record: str, folder: Path) -> list[str]:
    """All that is told of a batch with ``record`` and a small drawer."""
    shutil.copytree(STARTER, folder / "paper")
    projects = folder / "paper" / "projects"
    shutil.rmtree(projects)
    for name, text in (("inventory/drawer.yml", DRAWER), ("tide/project.yml", record)):
        (projects / name).parent.mkdir(parents=True)
        (projects / name).write_text(text, encoding="utf-8")
    return [told(problem) for problem in open_archive(folder / "paper").worked().problems]


@pytest.mark.parametrize("base", rows_of("base"))
def test_every_base_of_the_readme_can_be_planned(base: str, tmp_path: Path) -> None:
    """Written as it stands there, and cut from one large card."""
    unit = "unit: in\n" if " in" in base else ""
    record = f"{RECORD}{unit}base: {base}\npapers:\n  base: chalk-card\n"
    assert told_of(record, tmp_path) == []


def test_every_part_of_the_readme_can_be_planned(tmp_path: Path) -> None:
    """All of them on one card."""
    roles = "papers:\n  base: chalk-card\n  water: shoal-pad 1 4 7\n  panel: any 6 of shoal-pad\n"
    parts = "".join(f"  {part}\n" for part in rows_of("a part"))
    assert told_of(f"{RECORD}base: card A5, side fold\n{roles}parts:\n{parts}", tmp_path) == []


@pytest.mark.parametrize(("where", "line"), COMMANDS)
def test_every_command_of_the_documents_is_one(
    where: str, line: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """``run.py`` takes it, and hands on what ``batchleaf`` takes."""
    spec = importlib.util.spec_from_file_location("run", ROOT / "run.py")
    assert spec is not None
    assert spec.loader is not None
    run = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(run)
    shutil.copytree(STARTER, tmp_path / "my paper")
    ran: list[list[str]] = []

    def keep(command: list[str], cwd: Path = ROOT) -> int:
        ran.append(command)
        return 0

    monkeypatch.setattr(run, "prepare", lambda _: "python")
    monkeypatch.setattr(run, "_run", keep)
    monkeypatch.setattr(run, "_lock", lambda: 0)
    typed = re.sub(r"\[[^\]]*\]", "", line).replace('"C:\\My paper"', "FOLDER").replace("BATCH", "x")
    words = [str(tmp_path / "my paper") if word == "FOLDER" else word for word in shlex.split(typed)]
    assert run.main(words[2:]) == 0
    for command in ran:
        if command[1:3] == ["-m", "batchleaf"]:
            assert parser().parse_args(command[3:]).command == words[2] or words[2] == "site"
