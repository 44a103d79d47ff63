"""What is installed elsewhere works elsewhere."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import venv
from pathlib import Path
from typing import Final
from zipfile import ZipFile

import pytest

ROOT: Final = Path(__file__).resolve().parents[2]
ARCHIVE: Final = ("mkdocs.yml", "site_src", "projects")
HOUSE: Final = (
    *ARCHIVE,
    "plugins",
    "locks",
    "run.py",
    "pyproject.toml",
    "README.md",
    "LICENSE",
    ".gitignore",
)


def _python_in(environment: Path) -> Path:
    return environment / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _base_python() -> str:
    """The Python below the environment that the tests run in."""
    return str(Path(sys.base_prefix) / ("python.exe" if os.name == "nt" else "bin/python3"))


def _call(command: list[str | Path], cwd: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    return subprocess.run(
        [str(word) for word in command],
        cwd=cwd,
        env={**kept, "PYTHONUTF8": "1", **environment},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )


def _copy(names: tuple[str, ...], target: Path) -> Path:
    target.mkdir(parents=True)
    ignore = shutil.ignore_patterns("__pycache__")
    for name in names:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, target / name, ignore=ignore)
        else:
            shutil.copy(source, target / name)
    return target


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project's wheel, built without network from a copy."""
    source = _copy(HOUSE, tmp_path_factory.mktemp("source") / "house")
    target = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "pip", "wheel", "--no-deps", "--no-build-isolation", "--no-index"]
    done = _call([*command, "--wheel-dir", target, source], target)
    assert done.returncode == 0, done.stderr
    (built,) = target.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The Python of an environment with the wheel and what it needs, but not the project's own folder.

    A path file lends the packages of the environment the tests run in; path files
    that lie among those are not read, so the editable project stays out.
    """
    environment = tmp_path_factory.mktemp("elsewhere") / "env"
    venv.create(environment, symlinks=os.name != "nt")
    python = _python_in(environment)
    lent = sysconfig.get_path("purelib")
    own = _call([python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"], environment)
    Path(own.stdout.strip(), "lent.pth").write_text(lent + "\n", encoding="utf-8")
    done = _call(
        [python, "-m", "pip", "install", "--no-deps", "--no-index", "--ignore-installed", wheel], environment
    )
    assert done.returncode == 0, done.stderr
    return python


@pytest.mark.slow
def test_wheel_holds_the_whole_package(wheel: Path) -> None:
    """Every file of the package is in the wheel, templates, styles and data too, and nothing else is."""
    package = ROOT / "plugins"
    files = (path for path in package.rglob("*") if path.is_file() and "__pycache__" not in path.parts)
    expected = {path.relative_to(package).as_posix() for path in files}
    with ZipFile(wheel) as opened:
        names = set(opened.namelist())
    assert {name for name in names if ".dist-info/" not in name} == expected
    assert any(name.endswith(".dist-info/licenses/LICENSE") for name in names)


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that the project's sdist holds, built from the tree itself."""
    target = tmp_path_factory.mktemp("sdist")
    done = _call([sys.executable, "-m", "hatchling", "build", "-t", "sdist", "-d", target], ROOT)
    assert done.returncode == 0, done.stderr
    (built,) = target.glob("*.tar.gz")
    with tarfile.open(built) as opened:
        opened.extractall(target / "all", filter="data")
    (folder,) = (target / "all").iterdir()
    return folder


@pytest.mark.slow
def test_sdist_holds_all_that_is_kept(unpacked: Path) -> None:
    """Code, tests, tools, locks, demo and papers; what lies about besides does not go with it."""
    if not (ROOT / ".git").exists() or shutil.which("git") is None:
        pytest.skip("only where the project is under version control can it be said what is kept")
    kept = _call(["git", "ls-files", "-z"], ROOT).stdout.split("\0")
    held = {path.relative_to(unpacked).as_posix() for path in unpacked.rglob("*") if path.is_file()}
    assert held - {"PKG-INFO"} == {name for name in kept if name}


@pytest.mark.slow
def test_wheel_from_sdist_is_that_from_the_tree(unpacked: Path, wheel: Path, tmp_path: Path) -> None:
    """The same files with the same bytes, and the same is said of them."""
    done = _call([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", tmp_path], unpacked)
    assert done.returncode == 0, done.stderr
    (again,) = tmp_path.glob("*.whl")
    assert again.name == wheel.name
    assert _files_in(again) == _files_in(wheel)


def _files_in(wheel: Path) -> dict[str, bytes]:
    with ZipFile(wheel) as opened:
        return {name: opened.read(name) for name in opened.namelist()}


@pytest.mark.slow
def test_sdist_can_test_the_wheel(unpacked: Path, installed: Path) -> None:
    """Its tests run against the installed package, whatever lies beside them."""
    command: list[str | Path] = [installed, "-m", "pytest", "-q", "-n", "0", "-p", "no:cacheprovider"]
    done = _call([*command, "tests/measure", "tests/importing", "tests/house/test_layers.py"], unpacked)
    assert done.returncode == 0, done.stdout + done.stderr
    where = _call([installed, "-c", "import batchleaf; print(batchleaf.__file__)"], unpacked)
    assert not Path(where.stdout.strip()).is_relative_to(unpacked)


@pytest.mark.slow
def test_works_outside_the_project(installed: Path, tmp_path: Path) -> None:
    """The command answers from the installed package, in a folder that knows nothing of the project."""
    where = _call([installed, "-c", "import batchleaf; print(batchleaf.__file__)"], tmp_path)
    assert Path(where.stdout.strip()).is_relative_to(installed.parent.parent), where.stderr
    helped = _call([installed, "-m", "batchleaf", "--help"], tmp_path)
    assert helped.returncode == 0, helped.stderr
    assert "build" in helped.stdout


@pytest.mark.slow
def test_builds_an_archive_elsewhere(installed: Path, tmp_path: Path) -> None:
    """An archive is a short mkdocs.yml and its records, in any folder, spaces and all."""
    archive = _copy(ARCHIVE, tmp_path / "My paper, all of it")
    done = _call([installed, "-m", "batchleaf", "build", "--archive", archive], tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr
    assert (archive / "site" / "index.html").is_file()
    assert (archive / "site" / "projects" / "wren-note-bookmarks" / "index.html").is_file()


@pytest.mark.slow
def test_from_a_bare_python(tmp_path: Path) -> None:
    """In a folder with spaces: the first run sets up and builds; the second asks no network.

    A folder that was moved is set up anew; where that fails, the environment is back.
    """
    house = _copy(HOUSE, tmp_path / "Paper and card")
    first = _call([_base_python(), "run.py", "site"], house)
    assert first.returncode == 0, first.stdout + first.stderr
    assert (house / "site" / "index.html").is_file()

    second = _call([_base_python(), "-c", "import run; print(run.prepare('site'))"], house, PIP_NO_INDEX="1")
    assert second.stdout.split("\n") == [str(_python_in(house / ".venv")), ""]

    moved = house.rename(tmp_path / "Card and paper")
    third = _call([_base_python(), "run.py", "site"], moved, PIP_NO_INDEX="1", PIP_FIND_LINKS="")
    assert third.returncode == 1
    assert "Setting up .venv" in third.stdout
    assert _python_in(moved / ".venv").exists()
