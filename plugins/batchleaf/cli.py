"""The command ``batchleaf``: how each command is typed, and which function does it."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path
from typing import Final

from batchleaf.build import build_aside
from batchleaf.commands.again import again
from batchleaf.commands.check import check
from batchleaf.commands.cut import JOB, SECONDS, cut
from batchleaf.commands.explain import explain, take_defaults
from batchleaf.commands.find import drawer, find
from batchleaf.commands.import_csv import import_csv
from batchleaf.commands.lay_out import keys, schema, start
from batchleaf.commands.new import QUESTIONS, new
from batchleaf.commands.opened import CannotOpenError, Opened, open_archive
from batchleaf.commands.sent import sent
from batchleaf.commands.take import take_cut
from batchleaf.commands.take_colour import take_colour
from batchleaf.commands.terminal import FAULTY, refuse
from batchleaf.commands.upgrade import upgrade
from batchleaf.edition import Edition
from batchleaf.measure.lengths import Unit
from batchleaf.store import CannotKeepError

LONGEST: Final = 86_400.0
"""Seconds that a search may last: a day."""
_EDITIONS = {"build": Edition.PRIVATE, "publish": Edition.PUBLIC}


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    try:
        code = _run(parser().parse_args(arguments))
        sys.stdout.flush()
    except BrokenPipeError:  # whoever read the answer has enough of it, like ``| head``
        # What is left must not be written when Python ends.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FAULTY
    except CannotKeepError as error:
        return refuse(str(error))
    except OSError as error:
        where = f"{error.filename}: " if error.filename else ""
        return refuse(f"{where}{error.strerror or error}. Nothing more was done.")
    return code


def _run(asked: argparse.Namespace) -> int:
    if asked.command == "start":
        return start(Path(asked.folder), asked.unit, asked.currency)
    if asked.command == "cut":
        return cut(asked.job, asked.seconds, as_json=asked.json)
    root = Path(asked.archive)
    if not (root / "mkdocs.yml").is_file():
        return refuse(f"There is no mkdocs.yml in {root}; name the archive’s folder.")
    if asked.command in _EDITIONS:
        edition = _EDITIONS[asked.command]
        return build_aside(root / "mkdocs.yml", root.resolve() / edition.folder, edition)
    if asked.command == "schema":
        return schema(root)
    try:
        archive = open_archive(root)
    except CannotOpenError as error:
        return refuse(str(error))
    match asked.command:
        case "keys":
            return keys(archive)
        case "new":
            return again(archive, asked) if asked.source else new(archive, asked)
        case "find":
            unsent_to = " ".join(asked.unsent_to)
            return find(archive, asked.words, today=asked.today, unsent_to=unsent_to, as_json=asked.json)
        case "drawer":
            return drawer(archive, asked.words, as_json=asked.json)
        case "sent":
            return sent(archive, " ".join(asked.name))
        case "upgrade":
            return upgrade(archive, sure=asked.yes)
        case "import":
            return import_csv(archive, asked)
        case "take":
            return _take(archive, asked)
    return check(archive) if asked.explain is None else explain(archive, asked.explain)


def _take(archive: Opened, asked: argparse.Namespace) -> int:
    if asked.what == "colour":
        if asked.picture is None:
            return refuse("Name a picture as well: take colour oat-card oat.jpg")
        return take_colour(archive, asked.record, asked.picture, sure=asked.yes)
    if asked.picture is not None:
        return refuse(f"A picture goes with take colour alone; leave {asked.picture} out.")
    take = take_cut if asked.what == "cut" else take_defaults
    return take(archive, asked.record, sure=asked.yes)


def seconds(text: str) -> float:
    """A time above nothing. Raises :class:`ValueError`."""
    number = float(text)
    if not 0 < number <= LONGEST:
        raise ValueError(text)
    return number


def _sheet_options(command: argparse.ArgumentParser) -> None:
    """What may be said of a spreadsheet."""
    command.add_argument("file", metavar="FILE.csv", help="the spreadsheet, saved as CSV")
    rows = "what its rows are, where its headings do not tell"
    command.add_argument("--as", dest="subject", choices=["supplies", "purchases"], help=rows)
    which = "which key a column fills, as often as needed; nothing behind = leaves a column out"
    command.add_argument("--map", action="append", default=[], metavar="COLUMN=KEY", help=which)
    kind = "the shelf of supplies whose line names none"
    command.add_argument("--kind", metavar="KIND", help=kind)
    date = "the day of what is there, where a line names none (default: today)"
    command.add_argument("--date", metavar="DAY", help=date)
    command.add_argument("--write", action="store_true", help="write it; else it is only shown")


def parser() -> argparse.ArgumentParser:
    """All commands with their options."""
    batchleaf = argparse.ArgumentParser(prog="batchleaf", description="A page for every batch.")
    commands = batchleaf.add_subparsers(dest="command", required=True)
    for name, about in (
        ("check", "read all records and tell what is wrong with them"),
        ("build", "make the site aside and put it in place when it is whole"),
        ("publish", "make the edition for others in the same way: what is private is not in it"),
        ("new", "write the record of a batch to come, from six answers"),
        ("keys", "write a page with every key that a record may have"),
        ("schema", "write the schemas that help an editor help you"),
        ("sent", "tell what somebody had already, from the file of recipients that no site shows"),
        ("find", "look batches up by what they are, are made of and made with"),
        ("drawer", "tell what is on hand"),
        ("take", "write what is worked out, or picked from a photo, into a record"),
        ("import", "read a spreadsheet of supplies or purchases (CSV) into a new file of the drawer"),
        ("upgrade", "rewrite records of an older Batchleaf for this one, remarks and all"),
    ):
        command = commands.add_parser(name, help=about, description=about)
        command.add_argument("--archive", default=".", help="folder with mkdocs.yml (default: this one)")
        if name == "check":
            explains = "say instead what each record, or the one named, means besides what it says"
            command.add_argument("--explain", nargs="?", const="", metavar="RECORD", help=explains)
        if name == "new":
            for option, question in QUESTIONS.items():
                how = "append" if option == "paper" else "store"
                command.add_argument(f"--{option}", metavar="TEXT", help=question, action=how)
            source = (
                "take the design of this batch; --paper ROLE=SUPPLY then fills a role, as often as needed"
            )
            command.add_argument("--from", dest="source", metavar="BATCH", help=source)
        if name in ("find", "drawer"):
            words = "words that must all be told of a batch" if name == "find" else "words of a supply’s name"
            command.add_argument("words", nargs="*", metavar="WORD", help=words)
            command.add_argument("--json", action="store_true", help="answer for programs")
        if name == "find":
            can = "only what can be made once more from what is on hand"
            command.add_argument("--today", action="store_true", help=can)
            had = "only what this person was not sent yet, from the file of recipients"
            command.add_argument("--unsent-to", nargs="+", default=[], metavar="NAME", help=had)
        if name == "sent":
            who = "a short name, or part of a name; without it all people, with the last day for each"
            command.add_argument("name", nargs="*", metavar="NAME", help=who)
        if name == "take":
            what = (
                "cut: the sheets that its plan needs, as cut; defaults: all that it leaves to be understood;"
                " colour: what a photo of a supply shows, as about"
            )
            command.add_argument("what", choices=["cut", "defaults", "colour"], help=what)
            record = (
                "the folder of the batch; for defaults also a file of the drawer, like card;"
                " for colour a supply, like oat-card"
            )
            command.add_argument("record", help=record)
            command.add_argument(
                "picture", nargs="?", help="for colour: a photo with the supply in its middle"
            )
            command.add_argument("--yes", action="store_true", help="write without asking")
        if name == "upgrade":
            command.add_argument("--yes", action="store_true", help="write without asking")
        if name == "import":
            _sheet_options(command)
    cut_help = "plan the cutting of a job that belongs to no batch, cut by cut"
    plan = commands.add_parser("cut", help=cut_help, description=cut_help)
    plan.add_argument("job", metavar="JOB", help=JOB)
    plan.add_argument("--json", action="store_true", help="answer for programs, alone on standard output")
    plan.add_argument("--seconds", type=seconds, default=SECONDS, help="how long to search (default: 2)")
    start_help = "lay out a new archive with an example in FOLDER"
    begin = commands.add_parser("start", help=start_help, description=start_help)
    begin.add_argument("folder")
    begin.add_argument("--unit", default=Unit.MM.value, help="unit of lengths: mm, cm or in (default: mm)")
    begin.add_argument("--currency", default="EUR", help="a code of ISO 4217 (default: EUR)")
    return batchleaf
