"""The command ``batchleaf``: the same functions without a browser."""

from __future__ import annotations

import argparse
import datetime as dt
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Final

from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import ConfigurationError

from batchleaf.build import build_aside
from batchleaf.made_site import prepared_photos
from batchleaf.measure.errors import MeasureError
from batchleaf.plugin import BatchleafConfig, BatchleafPlugin, cache_folder, projects_folder
from batchleaf.store import Store
from batchleaf.telling import told, told_in_short
from batchleaf.workflow import Worked, read_and_work_out
from batchleaf.writing.archive import NotEmptyError, start_archive, write_schemas
from batchleaf.writing.record import Answers, record_text
from batchleaf.writing.slugs import slug_of
from batchleaf.writing.take_cut import CannotTakeError, cut_lines, with_cut

FAULTY: Final = 1
UNUSABLE: Final = 2


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    asked = _parser().parse_args(arguments)
    if asked.command == "start":
        return start(Path(asked.folder))
    archive = Path(asked.archive)
    if not (archive / "mkdocs.yml").is_file():
        return _refuse(f"There is no mkdocs.yml in {archive}; name the archive’s folder.")
    match asked.command:
        case "check":
            return check(archive)
        case "new":
            return new(archive, asked)
        case "schema":
            return schema(archive)
        case "take-cut":
            return take_cut(archive, asked.batch, sure=asked.yes)
    return build_aside(archive / "mkdocs.yml", archive.resolve() / "site")


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="batchleaf", description="A page for every batch.")
    commands = parser.add_subparsers(dest="command", required=True)
    for name, about in (
        ("check", "read all records and tell what is wrong with them"),
        ("build", "make the site aside and put it in place when it is whole"),
        ("new", "write the record of a batch to come, from six answers"),
        ("schema", "write the schemas that help an editor help you"),
        ("take-cut", "write the sheets that a planned batch needs into its record, as cut"),
    ):
        command = commands.add_parser(name, help=about, description=about)
        command.add_argument("--archive", default=".", help="folder with mkdocs.yml (default: this one)")
        if name == "new":
            for option, (question, _) in QUESTIONS.items():
                command.add_argument(f"--{option}", metavar="TEXT", help=question)
        if name == "take-cut":
            command.add_argument("batch", help="the folder of the batch")
            command.add_argument("--yes", action="store_true", help="write without asking")
    start_help = "lay out a new archive with an example in FOLDER"
    commands.add_parser("start", help=start_help, description=start_help).add_argument("folder")
    return parser


def check(archive: Path) -> int:
    """Print every problem of every record; 1 where one of them stops the build."""
    try:
        worked = _worked(archive)
        store = Store(cache_folder(_config(archive)[0]))
    except (ConfigurationError, MeasureError) as error:
        return _refuse(f"mkdocs.yml: {error}")
    unreadable = prepared_photos(worked.archive.projects, store).problems
    for problem in sorted((*worked.problems, *unreadable)):
        print(told(problem))
    if worked.errors or unreadable:
        return FAULTY
    print(told_in_short(worked.archive))
    return 0


def start(folder: Path) -> int:
    """Lay out a new archive."""
    try:
        start_archive(folder)
    except NotEmptyError as error:
        return _refuse(f"{error}.")
    print(f"A small archive with one example is in {folder}; read its README.md first.")
    return 0


def schema(archive: Path) -> int:
    """Write the schemas of all kinds of records."""
    for file in write_schemas(archive):
        print(f"Wrote {file}")
    return 0


QUESTIONS: Final[dict[str, tuple[str, Callable[[], str]]]] = {
    "title": ("What is the batch called?", str),
    "date": ("When is it (year-month-day)?", lambda: dt.datetime.now().astimezone().date().isoformat()),
    "base": ("What is one, and how large? For example: bookmark 50 x 180 mm", str),
    "makes": ("How many are meant?", lambda: "12"),
    "paper": ("Which supply is it cut from?", str),
    "series": ("Which series does it belong to? Leave empty for none.", str),
}
"""Option → the question, and what an empty answer means."""


def new(archive: Path, asked: argparse.Namespace) -> int:
    """Write a record that passes the check, or write nothing."""
    try:
        folder = projects_folder(*_config(archive))
        _worked(archive)  # a setting that cannot be read is told before anything is asked
        taken = {path.name.lower() for path in folder.iterdir()} if folder.is_dir() else set()
    except (ConfigurationError, MeasureError) as error:
        return _refuse(f"mkdocs.yml: {error}")
    answers = Answers(**{option: _answer(option, asked) for option in QUESTIONS})
    slug = slug_of(answers.title, taken)
    file = folder / slug / "project.yml"
    file.parent.mkdir(parents=True)
    file.write_text(record_text(answers), encoding="utf-8")
    mine = [problem for problem in _worked(archive).errors if f"/{slug}/" in problem.place.file]
    if mine:
        file.unlink()
        file.parent.rmdir()
        return _refuse("\n".join(["Nothing was written:", *(problem.sentence for problem in mine)]))
    print(f"Wrote {file}")
    return 0


def take_cut(archive: Path, slug: str, *, sure: bool) -> int:
    """Show the lines, ask, and write them into the record."""
    try:
        folder = projects_folder(*_config(archive))
        figures = _worked(archive).figures
    except (ConfigurationError, MeasureError) as error:
        return _refuse(f"mkdocs.yml: {error}")
    if figures is None:
        return _refuse("The records cannot all be read; see check.")
    batch = figures.batches.get(slug)
    if batch is None:
        return _refuse(f"There is no batch “{slug}”.")
    if batch.cutting is None:
        return _refuse("Nothing is planned for it that could be cut.")
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    lines = cut_lines(batch.cutting.sheets.values(), supplies)
    file = folder / slug / "project.yml"
    try:
        text = with_cut(file.read_bytes().decode("utf-8"), lines)
    except CannotTakeError as error:
        return _refuse(f"Nothing was written: {error}.")
    print("\n".join(["cut:", *(f"  - {line}" for line in lines)]))
    if not sure and _asked(f"Write this into {file}? (yes or no) ").lower() not in ("y", "yes"):
        return _refuse("Nothing was written.")
    file.write_bytes(text.encode("utf-8"))
    print(f"Wrote {file}")
    return 0


def _answer(option: str, asked: argparse.Namespace) -> str:
    question, usual = QUESTIONS[option]
    given: str | None = getattr(asked, option)
    if given is None and sys.stdin.isatty():
        given = _asked(f"{question} ")
    return (given or "").strip() or usual()


def _asked(question: str) -> str:
    """What is typed; nothing where nobody types."""
    try:
        return input(question).strip()
    except EOFError:
        return ""


def _config(archive: Path) -> tuple[MkDocsConfig, BatchleafConfig]:
    config = load_config(str(archive / "mkdocs.yml"))
    found = config.plugins.get("batchleaf")
    if not isinstance(found, BatchleafPlugin):
        raise ConfigurationError("the plugin batchleaf is not in its list of plugins")
    return config, found.config


def _worked(archive: Path) -> Worked:
    config, plugin = _config(archive)
    return read_and_work_out(projects_folder(config, plugin), plugin.settings())


def _refuse(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return UNUSABLE
