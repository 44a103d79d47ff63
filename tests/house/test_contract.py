"""What others may rely on is written down whole, and nothing is promised that is not there."""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

import pytest

from batchleaf import edition
from batchleaf.cli import main, parser
from batchleaf.commands.terminal import FAULTY, UNUSABLE
from batchleaf.plugin import BatchleafConfig
from batchleaf.records.formats import LATEST
from browsing import Served

ROOT: Final = Path(__file__).parents[2]
PAGE: Final = (ROOT / "CONTRACT.md").read_text(encoding="utf-8")
NAMED: Final = ("batch_cost.kinds", "went", "where", "spares")
"""Objects whose keys are names."""
JOBS: Final = ("24 of 3 3/4 x 5, 48 of 2 x 2 from 12 x 12", "5 x 7 from 2 sheets of 12 x 12")


def section(title: str) -> str:
    """What stands below a heading, up to the next one."""
    found = re.search(rf"^#+ {re.escape(title)}\n(.*?)(?=^#|\Z)", PAGE, re.MULTILINE | re.DOTALL)
    assert found, title
    return found[1]


def first_cells(title: str) -> list[str]:
    """What the rows of a section's tables are about."""
    return re.findall(r"^\| `([^`]+)` \|", section(title), re.MULTILINE)


def paths(value: Any, at: str = "") -> Iterator[str]:
    """Every key of JSON with those above it; ``[]`` for each of a list."""
    if isinstance(value, list):
        for one in value:
            yield from paths(one, f"{at}[]")
    elif isinstance(value, dict):
        for key, below in value.items():
            name = "NAME" if at in NAMED else key
            path = f"{at}.{name}" if at else name
            yield from (() if at in NAMED and isinstance(below, dict) else (path,))
            yield from paths(below, path)


def test_every_setting_and_no_other() -> None:
    """Those of the class that reads them, with the meaning that the README gives."""
    settings = [name for name, _ in BatchleafConfig._schema if name != "enabled"]
    assert first_cells("Settings") == settings
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for line in re.findall(r"^\| `.*$", section("Settings"), re.MULTILINE):
        assert line in readme


def test_every_command_with_its_options_and_no_other() -> None:
    """Those that the command line takes."""
    (commands,) = [one for one in parser()._actions if isinstance(one, argparse._SubParsersAction)]
    typed = {
        (name, action.option_strings[0] if action.option_strings else str(action.metavar or action.dest))
        for name, command in commands.choices.items()
        for action in command._actions
        if action.dest != "help"
    }
    told = re.findall(r"^\| `([^`]+)` \| (?:`([^`]+)` )?\| \S", section("Commands"), re.MULTILINE)
    codes = {str(code) for code in (0, FAULTY, UNUSABLE)}
    rows = [(name, option) for name, option in told if not name.isdigit()]
    assert {row for row in rows if row[1]} == typed
    assert [name for name, option in rows if not option] == list(commands.choices)
    assert len(rows) == len(set(rows))
    assert {name for name in first_cells("Commands") if name.isdigit()} == codes


def test_every_variable_and_no_other() -> None:
    """What the package reads of the environment; tests and tools have their own."""
    package = (ROOT / "plugins" / "batchleaf").rglob("*.py")
    # What is handed on whole to another process is not read.
    texts = {path.name: path.read_text(encoding="utf-8").replace("**os.environ", "") for path in package}
    assert [name for name, text in texts.items() if "environ[" in text or "os.environ" in text] == [
        "plugin.py"
    ]
    assert first_cells("Environment") == [edition.VARIABLE]
    assert {one.value for one in edition.Edition} == set(re.findall(r"`([a-z]+)`", section("Environment")))


def test_records_lead_to_their_keys() -> None:
    """The page of keys is there, and the format is the one that is read."""
    assert (ROOT / re.findall(r"\]\(([^)]+)\)", section("Records"))[0]).is_file()
    assert f"`format: {LATEST}`" in section("Records")


def test_every_key_of_figures_and_no_other(demo_site: Served) -> None:
    """Each is in a batch of the demo, and each that is there stands on the page once."""
    files = sorted((demo_site.folder / "projects").glob("*/figures.json"))
    found = {path for file in files for path in paths(json.loads(file.read_text(encoding="utf-8")))}
    told = first_cells("`figures.json`")
    assert set(told) == found
    assert len(told) == len(set(told))


def test_every_key_of_a_cutting_job_and_no_other(capsys: pytest.CaptureFixture[str]) -> None:
    """Sheets for so many makes, and the most of so many sheets."""
    found: set[str] = set()
    for job in JOBS:
        assert main(["cut", job, "--json"]) == 0
        found |= set(paths(json.loads(capsys.readouterr().out)))
    assert set(first_cells("`cut --json`")) == found


@pytest.mark.parametrize("command", ["find", "drawer"])
def test_every_key_of_what_is_found_and_no_other(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Of batches and of supplies."""
    assert main([command, "--json", "--archive", str(ROOT)]) == 0
    found = set(paths(json.loads(capsys.readouterr().out)))
    assert set(first_cells(f"`{command} --json`")) == found
