"""``run.py`` sets up once, notices what has changed, and starts at once otherwise."""

from __future__ import annotations

import ast
import importlib.util
import re
import shutil
import sys
import tomllib
from pathlib import Path
from types import ModuleType
from typing import Final

import pytest
from packaging.requirements import Requirement

ROOT: Final = Path(__file__).resolve().parents[2]


def _load_run(path: Path) -> ModuleType:
    spec = importlib.util.spec_from_file_location("run", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture
def run(tmp_path: Path) -> ModuleType:
    """``run.py`` in a project of its own, whose environment looks made but is empty."""
    root = tmp_path / "a project"
    (root / "locks").mkdir(parents=True)
    for name in ("run.py", "pyproject.toml", "locks/site.txt", "locks/test.txt", "locks/slow.txt"):
        shutil.copy(ROOT / name, root / name)
    module = _load_run(root / "run.py")
    python = module.python_in(root / ".venv")
    python.parent.mkdir(parents=True)
    python.touch()
    return module


def _ready(run: ModuleType, lock: str) -> bool:
    environment = run.ROOT / ".venv"
    return bool(run.is_ready(environment, lock, run.read_stamp(environment)))


def _edit(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_no_stamp(run: ModuleType) -> None:
    """An environment whose set-up was broken off is not taken for ready."""
    assert not _ready(run, "site")


@pytest.mark.parametrize("stamp", ["", "[]", '{"lock": "test"}', "{"])
def test_damaged_stamp(run: ModuleType, stamp: str) -> None:
    """A stamp that cannot be read counts as none."""
    (run.ROOT / ".venv" / run.STAMP).write_text(stamp, encoding="utf-8")
    assert not _ready(run, "site")


def test_stamp_holds(run: ModuleType) -> None:
    """Nothing changed: nothing to set up; each list holds those before it, not the reverse."""
    for at, lock in enumerate(run.LOCKS):
        run.write_stamp(run.ROOT / ".venv", lock)
        assert [_ready(run, other) for other in run.LOCKS] == [n <= at for n in range(len(run.LOCKS))]


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("locks/site.txt", "mkdocs==", "mkdocs== "),
        ("pyproject.toml", '"mkdocs>=1.6,<2"', '"mkdocs>=1.7,<2"'),
        ("pyproject.toml", "batchleaf.cli:main", "batchleaf.cli:run"),
        ("pyproject.toml", 'dev-mode-dirs = ["plugins"]', 'dev-mode-dirs = ["src"]'),
    ],
)
def test_change_noticed(run: ModuleType, file: str, old: str, new: str) -> None:
    """Another lock, another dependency or another entry point means another environment."""
    run.write_stamp(run.ROOT / ".venv", "site")
    _edit(run.ROOT / file, old, new)
    assert not _ready(run, "site")


def test_settings_of_tools_do_not_count(run: ModuleType) -> None:
    """A change to the linter's settings sets nothing up anew."""
    run.write_stamp(run.ROOT / ".venv", "site")
    _edit(run.ROOT / "pyproject.toml", "line-length = 110", "line-length = 100")
    assert _ready(run, "site")


def test_moved_folder_noticed(run: ModuleType) -> None:
    """An environment that moved along with its folder is not ready in the new place."""
    run.write_stamp(run.ROOT / ".venv", "site")
    moved = run.ROOT.with_name("moved")
    run.ROOT.rename(moved)
    assert not _ready(_load_run(moved / "run.py"), "site")


def test_other_python_noticed(run: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """Packages built for one Python are not used with another."""
    run.write_stamp(run.ROOT / ".venv", "site")
    monkeypatch.setattr(sys, "version_info", (3, 99, 0, "final", 0))
    assert not _ready(run, "site")


def test_failed_set_up_brings_the_old_one_back(run: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the new environment cannot be made, the old one is there as it was."""
    run.write_stamp(run.ROOT / ".venv", "site")
    before = run.read_stamp(run.ROOT / ".venv")
    _edit(run.ROOT / "locks" / "site.txt", "mkdocs==", "mkdocs== ")

    def no_network(environment: Path) -> str:
        environment.mkdir()
        raise run.Failed("no network")

    monkeypatch.setattr(run, "_new_environment", no_network)
    assert run.main(["site"]) == 1
    assert run.read_stamp(run.ROOT / ".venv") == before
    assert not (run.ROOT / ".venv-old").exists()


def test_older_python_meets_a_sentence(run: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """A Python before 3.11 can read the file and is refused in one sentence."""
    ast.parse((ROOT / "run.py").read_text(encoding="utf-8"), feature_version=(3, 7))
    monkeypatch.setattr(sys, "version_info", (3, 9, 2, "final", 0))
    with pytest.raises(SystemExit, match=r"^Batchleaf needs Python 3\.11 or later; this is Python 3\.9\.$"):
        _load_run(run.ROOT / "run.py")


def test_unknown_option_is_refused(run: ModuleType, capsys: pytest.CaptureFixture[str]) -> None:
    """A slip in an option is told, not passed over."""
    with pytest.raises(SystemExit):
        run.main(["site", "--sreve"])
    assert "site does not know --sreve" in capsys.readouterr().err


def test_archive_without_configuration(
    run: ModuleType, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Showing a folder that is no archive ends in a sentence."""
    assert run.main(["site", "--serve", "--archive", str(tmp_path)]) == 1
    assert "There is no mkdocs.yml" in capsys.readouterr().err


@pytest.mark.parametrize("code", [0, 1])
def test_after_a_build_the_way_to_look_at_it_is_told(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], code: int
) -> None:
    """The last line says how to see the pages with their search; after a failure there is nothing to see."""
    monkeypatch.setattr(run, "_batchleaf", lambda *_: code)
    monkeypatch.chdir(run.ROOT)
    look = "To look at it as on the web, with search: python run.py site --serve"
    assert run.main(["site"]) == code
    assert capsys.readouterr().out == ("" if code else f"{look}\n")
    assert run.main(["site", "--archive", "my paper"]) == code
    assert capsys.readouterr().out == ("" if code else f'{look} --archive "my paper"\n')


@pytest.mark.parametrize(
    "settings",
    [
        "plugins:\n  - search\n  - batchleaf\n",
        "plugins:\n  - batchleaf:\n",
        "plugins:\n  batchleaf: {unit: mm}\n",
    ],
)
def test_the_archive_is_the_one_you_are_in(
    run: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, settings: str
) -> None:
    """In its folder or below nothing has to be named; what is named counts everywhere."""
    ran: list[list[str]] = []
    monkeypatch.setattr(run, "prepare", lambda _: "python")
    monkeypatch.setattr(run, "_run", ran.append)
    mine, other = tmp_path / "my paper", tmp_path / "other"
    for folder in (mine, other):
        (folder / "projects").mkdir(parents=True)
        (folder / "mkdocs.yml").write_text(settings, encoding="utf-8")
    for inside in (mine, mine / "projects"):
        monkeypatch.chdir(inside)
        run.main(["check", "--explain", "x"])
        assert ran.pop()[3:] == ["check", "--archive", str(mine), "--explain", "x"]
        run.main(["site", "--serve"])
        assert ran.pop()[-2:] == ["--config-file", str(mine / "mkdocs.yml")]
        run.main(["site", "--archive", str(other)])
        assert ran.pop()[3:] == ["build", "--archive", str(other)]


def test_the_demo_is_taken_where_there_is_no_archive(
    run: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The pages of a site that another program makes are never replaced by ours."""
    monkeypatch.chdir(tmp_path)
    assert run.archive_of(Path.cwd()) == run.ROOT
    (tmp_path / "mkdocs.yml").write_text("site_name: My batchleaf notes\n", encoding="utf-8")
    assert run.archive_of(Path.cwd()) == run.ROOT


# --- the locks -----------------------------------------------------------------


def _locked(lock: str) -> dict[str, set[str]]:
    text = (ROOT / "locks" / f"{lock}.txt").read_text(encoding="utf-8")
    found: dict[str, set[str]] = {}
    for name, version in re.findall(r"^([a-z0-9._-]+)==([^\s;\\]+)", text, re.MULTILINE):
        found.setdefault(name, set()).add(version)
    return found


def _asked(groups: tuple[str, ...]) -> list[Requirement]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    listed = [*project["project"]["dependencies"]]
    for group in groups:
        listed += project["dependency-groups"][group]
    return [Requirement(text) for text in listed]


@pytest.mark.parametrize(
    ("lock", "groups"),
    [("site", ("editable",)), ("test", ("editable", "test")), ("slow", ("editable", "test", "slow"))],
)
def test_lock_meets_what_is_asked(lock: str, groups: tuple[str, ...]) -> None:
    """Each package that the project asks for is locked, in a version it allows."""
    locked = _locked(lock)
    for asked in _asked(groups):
        versions = locked.get(asked.name.lower(), set())
        assert versions, f"{asked.name} is not in locks/{lock}.txt; run: python run.py lock"
        assert all(asked.specifier.contains(version) for version in versions), asked


def test_locks_agree() -> None:
    """Each list holds every package of the one before, in the same version."""
    assert _locked("site").items() <= _locked("test").items() <= _locked("slow").items()


@pytest.mark.parametrize("lock", ["site", "test", "slow"])
def test_every_package_has_a_hash(lock: str) -> None:
    """Nothing is installed whose bytes are not known."""
    text = (ROOT / "locks" / f"{lock}.txt").read_text(encoding="utf-8")
    packages = re.split(r"^(?=[a-z0-9._-]+==)", text, flags=re.MULTILINE)[1:]
    assert packages
    assert all("--hash=sha256:" in package for package in packages)
