"""Builds a site aside and puts it in place only when it is sound.

A visitor, or the maker, never meets half a site: until the last moment the old
one stands untouched, and where anything fails it stays.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final
from urllib.parse import urlsplit

from mkdocs.exceptions import ConfigurationError
from mkdocs.utils.yaml import yaml_load

from batchleaf.edition import VARIABLE, Edition
from batchleaf.linkcheck import BrokenLink, broken_links

OWNER: Final = "owner"
"""The file in the folder of a build that names its process."""
A_DAY: Final = 86_400.0
SHOWN: Final = 20
"""More broken links than this are counted, not listed."""

Make = Callable[[Path, Path], int]
"""Makes the site of a configuration file in a folder; returns an exit code."""


class NotSwappedError(OSError):
    """The new site could not take the old one's place; the old one is where it was."""


def build_aside(config_file: Path, site_dir: Path, edition: Edition = Edition.PRIVATE) -> int:
    """Build an edition of an archive and swap it in as ``site_dir``; returns an exit code.

    The build is refused, and the old site kept byte for byte, where MkDocs fails
    or warns, and where a link inside the site leads nowhere.
    """
    return build_with(partial(run_mkdocs, edition), config_file.resolve(), site_dir.resolve())


def build_with(make: Make, config_file: Path, site_dir: Path) -> int:
    """:func:`build_aside` with another way to make the site. Both paths are absolute."""
    if refusal := _why_not(config_file, site_dir):
        return _fail(refusal)
    try:
        _clear_away(site_dir)
        aside = _folder_beside(site_dir)
    except OSError as error:
        return _fail(f"Nothing can be written to {site_dir.parent}: {error.strerror}.")
    new = aside / site_dir.name
    try:
        recover(site_dir)
        if code := make(config_file, new):
            return _fail(f"Not built{_as_it_was(site_dir)}.", code)
        if broken := broken_links(new, base_path_of(config_file)):
            return _fail(f"{_listed(broken)}\nNot swapped in{_as_it_was(site_dir)}.")
        swap(new, site_dir)
    except (NotSwappedError, ConfigurationError) as error:
        return _fail(str(error))
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    print(f"The site is in {site_dir}; its first page is {site_dir / 'index.html'}")
    return 0


def run_mkdocs(edition: Edition, config_file: Path, site_dir: Path) -> int:
    """``mkdocs build`` in a process of its own; a warning counts as a failure."""
    command = [sys.executable, "-m", "batchleaf.mkdocs_told", "build", "--strict"]
    command += ["--config-file", str(config_file), "--site-dir", str(site_dir)]
    # Set, so that the theme's notice about another MkDocs does not stand in every build.
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1", VARIABLE: edition.value}
    return subprocess.run(command, env=environment, check=False).returncode


def base_path_of(config_file: Path) -> str:
    """The path that ``site_url`` puts the site under: "/" where there is none.

    Raises :class:`~mkdocs.exceptions.ConfigurationError` where the file is no YAML.
    """
    with config_file.open("rb") as opened:
        site_url = yaml_load(opened).get("site_url") or ""
    return urlsplit(str(site_url)).path or "/"


def swap(new: Path, site_dir: Path) -> None:
    """Put ``new`` in the place of ``site_dir``, or raise :class:`NotSwappedError` and change nothing.

    Two renames, because no system replaces a full folder in one; the old site is
    away for that instant only, and comes back if the second rename fails.
    """
    old = _old(site_dir)
    try:
        shutil.rmtree(old, ignore_errors=True)
        if site_dir.exists():
            site_dir.replace(old)
        try:
            new.replace(site_dir)
        except OSError:
            recover(site_dir)
            raise
    except OSError as error:
        raise NotSwappedError(
            f"Could not put the new site into {site_dir}: {error.strerror or error}. "
            f"Close what has files of it open, and build again{_as_it_was(site_dir)}."
        ) from error
    shutil.rmtree(old, ignore_errors=True)


def recover(site_dir: Path) -> None:
    """Bring back the old site where an earlier swap was cut off between its two renames."""
    if _old(site_dir).exists() and not site_dir.exists():
        _old(site_dir).replace(site_dir)


def _old(site_dir: Path) -> Path:
    return site_dir.with_name(f".{site_dir.name}-old")


def _folder_beside(site_dir: Path) -> Path:
    """A folder that no other build uses; on the site's own disk, so that a rename can swap it in."""
    site_dir.parent.mkdir(parents=True, exist_ok=True)
    folder = Path(tempfile.mkdtemp(prefix=_beginning(site_dir), dir=site_dir.parent))
    (folder / OWNER).write_text(str(os.getpid()), encoding="ascii")
    return folder


def _beginning(site_dir: Path) -> str:
    return f".{site_dir.name}-new-"


def _clear_away(site_dir: Path) -> None:
    """What builds that were stopped half-way left behind."""
    if site_dir.parent.is_dir():
        for folder in site_dir.parent.glob(f"{_beginning(site_dir)}*"):
            if not _is_at_work(folder):
                shutil.rmtree(folder, ignore_errors=True)


def _is_at_work(folder: Path) -> bool:
    """Whether the build that made ``folder`` still runs; where nothing tells, for a day."""
    try:
        owner = (folder / OWNER).read_text(encoding="ascii")
    except OSError:
        owner = ""  # its build has only just begun
    if os.name == "nt" or not owner.isdecimal():
        return folder.exists() and folder.stat().st_mtime > time.time() - A_DAY
    try:
        os.kill(int(owner), 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True  # it is somebody else's
    return True


def _as_it_was(site_dir: Path) -> str:
    return f"; what is in {site_dir} is as it was" if site_dir.exists() else ""


def _why_not(config_file: Path, site_dir: Path) -> str:
    """A reason not to begin; empty where there is none."""
    if not config_file.is_file():
        return f"There is no {config_file.name} in {config_file.parent}; name the archive's folder."
    if config_file.is_relative_to(site_dir):
        return f"{site_dir} holds the archive itself; a site needs a folder of its own."
    if site_dir.exists() and not _is_site(site_dir):
        return f"{site_dir} holds something that is no site; it is left alone. Name another folder."
    return ""


def _is_site(folder: Path) -> bool:
    return folder.is_dir() and ((folder / "404.html").exists() or not any(folder.iterdir()))


def _listed(broken: tuple[BrokenLink, ...]) -> str:
    lines = [f"{link.page}: the link “{link.href}”: {link.why}" for link in broken[:SHOWN]]
    if len(broken) > SHOWN:
        lines.append(f"… and {len(broken) - SHOWN} more")
    count = "One link leads" if len(broken) == 1 else f"{len(broken)} links lead"
    return "\n".join([f"{count} nowhere:", *lines])


def _fail(sentence: str, code: int = 1) -> int:
    print(sentence, file=sys.stderr)
    return code
