"""A build that is stopped, or cannot write, leaves what was there, and the next one makes the whole site."""

from __future__ import annotations

import contextlib
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest

from small_demo import lay_out_small_demo

pytestmark = pytest.mark.skipif(os.name == "nt", reason="signals and limits are those of POSIX")

TIMES: Final = int(os.environ.get("STOPPED_TIMES", "8"))
"""How often a build is stopped; more where somebody has the time."""
ANY_SEED: Final = 17
STAMP: Final = {"SOURCE_DATE_EPOCH": "1790000000"}


def started(archive: Path, before: Callable[[], None] | None = None, **more: str) -> subprocess.Popen[str]:
    """A build as a maker runs it, with all the processes that it starts in a group of their own."""
    command = [sys.executable, "-m", "batchleaf", "build", "--archive", str(archive)]
    return subprocess.Popen(
        command,
        env={**os.environ, **STAMP, **more},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        start_new_session=True,
        preexec_fn=before,  # noqa: PLW1509  no threads are at work here
    )


def built(archive: Path, before: Callable[[], None] | None = None, **more: str) -> tuple[int, str]:
    """Its exit code, and what it tells."""
    with started(archive, before, **more) as process:
        told, _ = process.communicate(timeout=300)
        return process.returncode, told


def files(folder: Path) -> dict[str, bytes]:
    """All that lies in a folder."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A part of the demo, built."""
    folder = tmp_path_factory.mktemp("stopped") / "my archive"
    lay_out_small_demo(folder)
    code, told = built(folder)
    assert code == 0, told
    return folder


@pytest.mark.slow
def test_stopped_at_any_moment(archive: Path) -> None:
    """The old site stays whole whenever a build is killed; the next build gives the same, and leaves nothing over."""
    dice = random.Random(ANY_SEED)
    title = archive / "projects" / "sloe-lane-cards" / "project.yml"
    record = title.read_text(encoding="utf-8")
    began = time.monotonic()
    assert built(archive)[0] == 0
    lasts = time.monotonic() - began
    whole, stopped = files(archive / "site"), 0
    for number in range(TIMES):
        # Something is to be made anew each time, and the cache to be written.
        title.write_text(record.replace("Sloe lane cards", f"Sloe lane cards {number}"), encoding="utf-8")
        with started(archive) as process:
            time.sleep(dice.uniform(0, lasts))
            stopped += process.poll() is None
            # It may have ended just now, and nobody of its group be left.
            with contextlib.suppress(ProcessLookupError):
                os.killpg(process.pid, signal.SIGKILL)
        there = files(archive / "site") if (archive / "site").exists() else files(archive / ".site-old")
        if there != whole:
            # It had been swapped in before the signal came: that one is whole as well.
            assert f"Sloe lane cards {number}".encode() in there["projects/sloe-lane-cards/index.html"]
            assert set(there) == set(whole)
            whole = there
    title.write_text(record, encoding="utf-8")
    assert built(archive)[0] == 0
    after = files(archive / "site")
    shutil.rmtree(archive / ".cache")
    assert built(archive)[0] == 0
    assert files(archive / "site") == after
    assert sorted(path.name for path in archive.iterdir() if path.name.startswith(".site")) == []
    assert stopped, "every build had ended before its signal came"


def _small_files() -> None:
    """No file may be longer than this: writing fails as it does on a full disk."""
    import resource

    resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)


@pytest.mark.slow
@pytest.mark.parametrize("cached", [True, False])
def test_where_nothing_more_can_be_written(archive: Path, tmp_path: Path, *, cached: bool) -> None:
    """A sentence says so, in the cache or in the site; the old site stays; nothing tracebacks."""
    copy = tmp_path / "full"
    shutil.copytree(archive, copy)
    if not cached:
        shutil.rmtree(copy / ".cache")
    before = files(copy / "site")
    code, told = built(copy, _small_files)
    assert code == 1
    assert "Traceback" not in told
    assert ("can be kept in" in told) != cached
    assert ("can be written" in told) == cached
    assert files(copy / "site") == before


@pytest.mark.slow
@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_may_only_be_read(archive: Path, tmp_path: Path) -> None:
    """It is told, and nothing is touched."""
    copy = tmp_path / "closed"
    shutil.copytree(archive, copy)
    before = files(copy)
    copy.chmod(0o500)
    try:
        code, told = built(copy)
        assert (code, "Traceback" in told) == (1, False)
        assert str(copy) in told
        assert files(copy) == before
    finally:
        copy.chmod(0o700)


@pytest.mark.slow
def test_the_same_on_every_machine(archive: Path, tmp_path: Path) -> None:
    """At another place, in another time zone and language, with other seeds and an empty cache: equal bytes."""
    code, told = built(archive)
    assert code == 0, told
    other = tmp_path / "elsewhere" / "deep"
    lay_out_small_demo(other)
    code, told = built(other, TZ="Pacific/Kiritimati", LC_ALL="C", LANG="C", PYTHONHASHSEED="99")
    assert code == 0, told
    here, there = files(archive / "site"), files(other / "site")
    assert set(here) == set(there)
    assert [name for name in here if here[name] != there[name]] == []
