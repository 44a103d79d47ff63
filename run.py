"""Batchleaf's commands on a bare Python: ``python run.py site``.

Needs nothing but Python 3.11 or later. The first run makes a virtual environment
in ``.venv`` from the locked, hashed list in ``locks/``; later runs start at once
and ask no network.
"""

from __future__ import annotations

import sys

if sys.version_info < (3, 11):
    sys.exit(
        f"Batchleaf needs Python 3.11 or later; this is Python {sys.version_info[0]}.{sys.version_info[1]}."
    )

import argparse
import contextlib
import hashlib
import json
import os
import re
import shutil
import socket
import subprocess
import tempfile
import tomllib
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
STAMP = "batchleaf-stamp.json"
HANDED_ON = (
    *("test", "slow", "bench"),
    *("check", "cut", "new", "sent", "find", "drawer", "take", "import", "upgrade"),
)
"""Commands whose further words somebody else understands."""
OF_AN_ARCHIVE = ("publish", "check", "new", "sent", "find", "drawer", "take", "upgrade", "keys", "schema")
"""Commands that are Batchleaf's own and are told the archive's folder."""
LOCKS = ("site", "test", "slow")
"""The lists of packages; each holds the one before."""
TWO_AT_ONCE = ("-n", "2", "--dist", "loadfile")
"""Tests run in two processes, those of one file in one of them; ``-n 0`` after the command asks for one."""


class Failed(Exception):
    """A step that ended in a sentence for whoever typed the command."""


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    asked, rest = _parser().parse_known_args(arguments)
    if rest and asked.command not in HANDED_ON:
        _parser().error(f"{asked.command} does not know {' '.join(rest)}")
    try:
        return _do(asked, rest)
    except Failed as failed:
        print(failed, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130


def _do(asked: argparse.Namespace, rest: list[str]) -> int:
    # No match statement: an older Python must get as far as the sentence above.
    if asked.command == "site":
        return _serve(asked.archive) if asked.serve else _build(asked.archive)
    if asked.command == "import":
        # The spreadsheet lies where the command is typed.
        words = ["import", "--archive", str(asked.archive.resolve()), *rest]
        return _run([prepare("site"), "-m", "batchleaf", *words], cwd=Path.cwd())
    if asked.command in OF_AN_ARCHIVE:
        return _batchleaf(asked.command, asked.archive, rest)
    if asked.command == "cut":
        return _run([prepare("site"), "-m", "batchleaf", "cut", *rest], cwd=Path.cwd())
    if asked.command == "start":
        settings = ["--unit", asked.unit, "--currency", asked.currency]
        return _run([prepare("site"), "-m", "batchleaf", "start", str(asked.folder.resolve()), *settings])
    if asked.command == "test":
        return _test(rest)
    if asked.command == "slow":
        return _run([prepare("slow"), "-m", "pytest", *TWO_AT_ONCE, "-m", "slow", *rest])
    if asked.command == "bench":
        return _run([prepare("site"), str(ROOT / "tools" / "speed" / "many_batches.py"), *rest])
    if asked.command == "lock":
        return _lock()
    prepare("test")
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="run.py", description="Batchleaf's commands.")
    commands = parser.add_subparsers(dest="command", required=True)
    site = commands.add_parser("site", help="build the archive's pages into its site folder")
    site.add_argument("--serve", action="store_true", help="show the pages in the browser while you write")
    publish = commands.add_parser("publish", help="build the edition for others, without what is private")
    check = commands.add_parser(
        "check", help="read the records and say what is off (--explain: what is understood)"
    )
    start = commands.add_parser("start", help="lay out an archive of your own, with an example")
    start.add_argument("folder", type=Path, metavar="FOLDER", help="a folder that is not there yet")
    start.add_argument("--unit", default="mm", help="unit of its lengths: mm, cm or in (default: mm)")
    start.add_argument("--currency", default="EUR", metavar="CODE", help="a code of ISO 4217 (default: EUR)")
    new = commands.add_parser(
        "new", help="begin the record of a batch, or of an old one made again (--from BATCH)"
    )
    sent = commands.add_parser(
        "sent", help="tell what somebody had already: sent NAME; without NAME, who there is"
    )
    find = commands.add_parser("find", help="look batches up: find box wedding (--today: can be made now)")
    drawer = commands.add_parser("drawer", help="tell what is on hand: drawer, or drawer oat card")
    take = commands.add_parser(
        "take",
        help="take cut BATCH: write the sheets of its plan into it; take defaults RECORD: all it leaves out;"
        " take colour SUPPLY PICTURE: its colours, from a photo",
    )
    sheet = commands.add_parser(
        "import", help="show what a CSV file of supplies or purchases means (--write: put it into the drawer)"
    )
    upgrade = commands.add_parser("upgrade", help="rewrite records of an older Batchleaf for this one")
    commands.add_parser("cut", help="plan the cutting of a job file, or of a line: “3 3/4 x 5 from 12 x 12”")
    keys = commands.add_parser("keys", help="write a page with every key that a record may have")
    schema = commands.add_parser("schema", help="write the schemas that help an editor help you")
    for command in (site, publish, check, new, sent, find, drawer, take, sheet, upgrade, keys, schema):
        about = "folder of the archive (default: the one you are in, else the demo)"
        command.add_argument(
            "--archive", type=Path, default=archive_of(Path.cwd()), metavar="FOLDER", help=about
        )
    commands.add_parser("setup", help="make .venv for working on Batchleaf itself")
    commands.add_parser("test", help="check the code and run the quick tests; passes options to pytest")
    commands.add_parser("slow", help="run the slow tests; passes options to pytest")
    commands.add_parser("bench", help="measure sites of 100, 1,000 and 5,000 invented batches (--sizes 100)")
    commands.add_parser("lock", help="renew the locked lists of packages from PyPI")
    return parser


def archive_of(folder: Path) -> Path:
    """The archive that ``folder`` is or lies in, else the demo.

    A folder with another program's mkdocs.yml is none: nothing of it is to be replaced by pages.
    """
    for place in (folder, *folder.parents):
        config = place / "mkdocs.yml"
        if config.is_file() and re.search(rb"(?m)^\s*(?:- +)?batchleaf\b", config.read_bytes()):
            return place
    return ROOT


# --- what the commands do ------------------------------------------------------


def _batchleaf(command: str, archive: Path, rest: list[str]) -> int:
    return _run([prepare("site"), "-m", "batchleaf", command, "--archive", str(archive.resolve()), *rest])


def _build(archive: Path) -> int:
    code = _batchleaf("build", archive, [])
    if not code:
        named = "" if archive.resolve() == ROOT else f' --archive "{archive}"'
        print(f"To look at it as on the web, with search: python run.py site --serve{named}")
    return code


def _serve(archive: Path) -> int:
    config_file = archive.resolve() / "mkdocs.yml"
    if not config_file.is_file():
        raise Failed(f"There is no mkdocs.yml in {archive.resolve()}; name the archive's folder.")
    # Named outright: with some releases of click, MkDocs takes the default for "off".
    live = ["--livereload", "--open", "--dev-addr", f"127.0.0.1:{_free_port()}"]
    return _run([prepare("site"), "-m", "mkdocs", "serve", *live, "--config-file", str(config_file)])


def _free_port() -> int:
    """The first free port from 8000 on, so that a bookmark mostly keeps working."""
    for port in range(8000, 8050):
        with socket.socket() as probe, contextlib.suppress(OSError):
            probe.bind(("127.0.0.1", port))
            return port
    raise Failed("No port between 8000 and 8049 is free to show the pages on.")


def _test(rest: list[str]) -> int:
    """All checks, then pytest last, so that its summary closes the output."""
    python = prepare("test")
    checks = (["ruff", "check"], ["ruff", "format", "--check"], ["mypy"])
    codes = [_run([python, "-m", *check]) for check in checks]
    for check, code in zip(checks, codes, strict=True):
        if code:
            print(f"{' '.join(check)} found something; see above.", file=sys.stderr)
    codes.append(_run([python, "-m", "pytest", *TWO_AT_ONCE, "-m", "not slow", *rest]))
    return max(codes, key=abs)


def _lock() -> int:
    """Resolve all lists in a folder of their own; replace the old ones only when all are done."""
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder, "work")
        (work / "locks").mkdir(parents=True)
        shutil.copy(ROOT / "pyproject.toml", work)
        python = _new_environment(Path(folder, "venv"))
        _step([python, "-m", "pip", "install", "--quiet", "uv"])
        compile_one = [python, "-m", "uv", "pip", "compile", "pyproject.toml", "--quiet", "--universal"]
        compile_one += ["--generate-hashes", "--python-version", "3.11", "--group", "editable"]
        compile_one += ["--custom-compile-command", "python run.py lock"]
        lists = [Path("locks", f"{lock}.txt") for lock in LOCKS]
        for at, (lock, path) in enumerate(zip(LOCKS, lists, strict=True)):
            if at:
                # Held to the list before, so that an environment for tests holds a site's.
                compile_one += ["--group", lock, "--constraint", lists[at - 1].as_posix()]
            _step([*compile_one, "-o", str(path)], cwd=work)
        for path in lists:
            shutil.copy(work / path, ROOT / path)
    print("The lists in locks/ are renewed; run the tests before keeping them.")
    return 0


# --- the environment -----------------------------------------------------------


def prepare(lock: str) -> str:
    """The environment's Python with all that ``lock``, one of :data:`LOCKS`, names; made if need be."""
    environment = ROOT / ".venv"
    have = read_stamp(environment)
    if is_ready(environment, lock, have):
        return str(python_in(environment))
    if is_ready(environment, LOCKS[0], have):
        _install(environment, lock)
    else:
        held = have.get("lock")
        _make(environment, max(lock, held, key=LOCKS.index) if held in LOCKS else lock)
    return str(python_in(environment))


def is_ready(environment: Path, lock: str, stamp: dict[str, str]) -> bool:
    """Does ``stamp`` say that ``environment`` holds ``lock`` as it stands today, in this place?"""
    held = stamp.get("lock", "")
    return (
        held in LOCKS[LOCKS.index(lock) :]
        and stamp.get("fingerprint") == fingerprint(ROOT, held)
        and python_in(environment).exists()
    )


def fingerprint(root: Path, lock: str) -> str:
    """One hash over all that makes an environment what it is.

    The place counts, since an installed project is found by its full path.
    """
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))
    installed = [project.get("build-system"), project.get("project"), project.get("tool", {}).get("hatch")]
    told = (
        (root / "locks" / f"{lock}.txt").read_text(encoding="utf-8"),
        json.dumps(installed, sort_keys=True),
        f"{sys.implementation.name} {sys.version_info[0]}.{sys.version_info[1]}",
        str(root),
    )
    return hashlib.sha256("\0".join(told).encode()).hexdigest()


def read_stamp(environment: Path) -> dict[str, str]:
    """What was installed last; empty where nothing was, or not to the end."""
    try:
        stamp = json.loads((environment / STAMP).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return stamp if isinstance(stamp, dict) else {}


def write_stamp(environment: Path, lock: str) -> None:
    """Written last of all: an interrupted set-up leaves none and is begun anew."""
    stamp = {"lock": lock, "fingerprint": fingerprint(ROOT, lock)}
    (environment / STAMP).write_text(json.dumps(stamp, indent=1), encoding="utf-8")


def python_in(environment: Path) -> Path:
    """The environment's Python on this system."""
    return environment / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _make(environment: Path, lock: str) -> None:
    """Make the environment anew; the one that was there comes back if that fails."""
    if Path(sys.prefix).resolve() == environment.resolve():
        raise Failed("Run this with the Python that Batchleaf was set up with, not with the one in .venv.")
    print("Setting up .venv; this is done once and takes a minute.", flush=True)
    aside = environment.with_name(".venv-old")
    shutil.rmtree(aside, ignore_errors=True)
    if environment.exists():
        environment.rename(aside)
    try:
        _new_environment(environment)
        _install(environment, lock)
    except BaseException:
        shutil.rmtree(environment, ignore_errors=True)
        if aside.exists():
            aside.rename(environment)
        raise
    shutil.rmtree(aside, ignore_errors=True)


def _new_environment(environment: Path) -> str:
    try:
        venv.create(environment, with_pip=True, symlinks=os.name != "nt")
    except (OSError, subprocess.CalledProcessError) as error:
        raise Failed(
            f"Python could not make {environment}: {error}. "
            "On Debian and Ubuntu this needs the package python3-venv."
        ) from error
    return str(python_in(environment))


def _install(environment: Path, lock: str) -> None:
    pip = [str(python_in(environment)), "-m", "pip", "install", "--quiet"]
    _step([*pip, "--require-hashes", "--requirement", str(ROOT / "locks" / f"{lock}.txt")])
    # A second step, because pip takes no editable install where every file needs a hash.
    _step([*pip, "--no-deps", "--no-build-isolation", "--editable", str(ROOT)])
    write_stamp(environment, lock)


# --- running -------------------------------------------------------------------


def _run(command: list[str], cwd: Path = ROOT) -> int:
    """Print the command, then run it; returns its exit code."""
    # Not where the command itself answers, perhaps for a program.
    print("$ python", *command[1:], file=sys.stderr, flush=True)
    kept = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTHONHOME")}
    quiet = {"NO_MKDOCS_2_WARNING": "1", "PIP_DISABLE_PIP_VERSION_CHECK": "1"}
    # UTF-8 everywhere: records and pages are, whatever the system's own code page.
    return subprocess.run(command, cwd=cwd, env={**kept, **quiet, "PYTHONUTF8": "1"}, check=False).returncode


def _step(command: list[str], cwd: Path = ROOT) -> None:
    code = _run(command, cwd)
    if code:
        raise Failed(f"That step ended with code {code}; what was to follow was left undone.")


if __name__ == "__main__":
    sys.exit(main())
