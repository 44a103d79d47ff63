"""What runs on GitHub: what it may do, what it uses, and that its commands are there.

That the actions exist in these versions nobody can look up here; they are named by version.
"""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from importlib.metadata import metadata
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

ROOT: Final = Path(__file__).parents[2]
FILES: Final = sorted((ROOT / ".github" / "workflows").glob("*.yml"))
PINNED: Final = re.compile(r"[\w.-]+/[\w./-]+@(?:[0-9a-f]{40}|v\d+(?:\.\d+){0,2})")
"""By the hash of a commit, or by a version, a major one at least; a branch moves."""
Workflow = dict[str, Any]


def read(file: Path) -> Workflow:
    """The file as plain text; ``on`` stays a word."""
    workflow: Workflow = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    return workflow


def steps_of(workflow: Workflow) -> Iterator[dict[str, Any]]:
    """The steps of all jobs."""
    for job in workflow["jobs"].values():
        yield from job["steps"]


def shells_of(workflow: Workflow) -> str:
    """All that is typed."""
    return "\n".join(step.get("run", "") for step in steps_of(workflow))


def named(name: str) -> Workflow:
    """The workflow in the file with this name."""
    return read(ROOT / ".github" / "workflows" / name)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_every_action_is_pinned(file: Path) -> None:
    """To a commit or a version."""
    used = [step["uses"] for step in steps_of(read(file)) if "uses" in step]
    assert used
    assert [one for one in used if not PINNED.fullmatch(one)] == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_no_job_may_more_than_it_says(file: Path) -> None:
    """Nothing for all; only what puts something in place may write, and it fetches no code."""
    workflow = read(file)
    assert workflow["permissions"] == {}
    for job in workflow["jobs"].values():
        fetches = any(step.get("uses", "").startswith("actions/checkout@") for step in job["steps"])
        writes = [name for name, right in job["permissions"].items() if right != "read"]
        assert bool(writes) != fetches
        assert set(job["permissions"].values()) <= {"read", "write"}
    for step in steps_of(workflow):
        if step.get("uses", "").startswith("actions/checkout@"):
            assert step["with"]["persist-credentials"] == "false"


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_strangers_change_finds_no_secret(file: Path) -> None:
    """No secret is named anywhere, no job runs on changes of others with rights of its own."""
    text = file.read_text(encoding="utf-8")
    assert "secrets." not in text
    assert not {"pull_request_target", "workflow_run", "issue_comment"} & set(read(file)["on"])
    if "pull_request" in read(file)["on"]:
        rights = [right for job in read(file)["jobs"].values() for right in job["permissions"].values()]
        assert set(rights) == {"read"}
        assert "github.token" not in text


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_nothing_of_others_is_typed(file: Path) -> None:
    """What a title or a branch says never becomes part of a command."""
    assert "${{" not in shells_of(read(file))


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_the_commands_of_run_are_there(file: Path) -> None:
    """Each is one that run.py knows."""
    text = (ROOT / "run.py").read_text(encoding="utf-8")
    for line in re.findall(r"^python run\.py (.+)$", shells_of(read(file)), re.MULTILINE):
        assert f'add_parser("{shlex.split(line)[0]}"' in re.sub(r"\(\s+", "(", text)


def test_every_system_and_python_is_tried() -> None:
    """From the oldest that the package asks for; in a browser on Linux alone."""
    quick = named("test.yml")["jobs"]["quick"]
    matrix = quick["strategy"]["matrix"]
    assert matrix["os"] == ["ubuntu-latest", "macos-latest", "windows-latest"]
    assert matrix["python"] == ["3.11", "3.12", "3.13", "3.14"]
    assert metadata("mkdocs-batchleaf")["Requires-Python"] == f">={matrix['python'][0]}"
    runs = {step["if"]: step["run"] for step in quick["steps"] if "if" in step}
    assert runs == {
        "runner.os == 'Linux'": "python run.py test",
        "runner.os != 'Linux'": 'python run.py test -m "not slow and not browser"',
    }


def test_a_release_is_published_without_a_password() -> None:
    """By a trusted publisher, in an environment, and only what was built and tested from a tag."""
    workflow = named("release.yml")
    assert list(workflow["on"]) == ["push"]
    assert list(workflow["on"]["push"]) == ["tags"]
    publish = workflow["jobs"]["publish"]
    assert publish["needs"] == "build"
    assert publish["environment"]["name"] == "pypi"
    assert publish["permissions"] == {"id-token": "write"}
    last = publish["steps"][-1]
    assert last["uses"].startswith("pypa/gh-action-pypi-publish@")
    assert "with" not in last
    assert "pytest" in shells_of(workflow)
