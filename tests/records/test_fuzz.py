"""Whatever is written in the records: no traceback, no end of waiting, and each problem at its place.

The quick tests try a few records of each kind. ``test_for_minutes`` goes on for as
long as ``FUZZ_MINUTES`` says (1 where it is not set), all promises together; where it is
set, each run tries others.
"""

from __future__ import annotations

import inspect
import os
import random
import re
import shutil
import sys
import time
from collections.abc import Callable, Iterable
from fractions import Fraction
from functools import cache, partial
from importlib import import_module
from itertools import count
from pathlib import Path
from pkgutil import iter_modules
from types import ModuleType
from typing import Any, Final, get_type_hints

import pytest
from hypothesis import HealthCheck, given, seed, settings
from hypothesis import strategies as st

import batchleaf.measure
import batchleaf.records
from batchleaf.core.batch_cutting import Planner, remembering
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.facts import NOWHERE, CostFlow, Problem, Settings, Supply, Weight
from batchleaf.measure.lengths import WRITTEN, Size, Unit
from batchleaf.measure.money import Currency
from batchleaf.records.kinds import KINDS
from batchleaf.records.recipients import Batches, read_recipients
from batchleaf.records.report import Report
from batchleaf.telling import told
from batchleaf.workflow import read_and_work_out
from records.fuzzing import archives_near
from records.odd_texts import short_texts
from records.seeds import Files, home_of, lay_out, sound_archives
from records.spoilt_bytes import spoilt_archives
from records.test_cases import SETTINGS as USUAL
from records.test_round_trips import LAWS
from waiting import soon

LONGEST_SENTENCE: Final = 2_000
"""Letters: a text of a record has at most 400, and a sentence may repeat two."""
MINUTES: Final = float(os.environ.get("FUZZ_MINUTES", "1"))
QUICK: Final = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
ROUND: Final = settings(QUICK, max_examples=250)
"""Few enough that the time is kept, enough that what is drawn varies."""


@cache
def planner() -> Planner:
    """Gives up almost at once: what is asked is whether a plan comes back, not how good it is."""
    return remembering(
        Planner(
            most=partial(most_makes, stop=lambda steps: steps > 4),
            cheapest=partial(least_cost, stop=lambda steps: steps > 4),
        )
    )


def is_a_sentence(text: str) -> bool:
    """One line that says something and ends, without what a validator says to programmers."""
    one_line = text.strip() != "" and len(text.splitlines()) == 1
    return one_line and len(text) < LONGEST_SENTENCE and "cannot be read (" not in text


def lines_in(path: Path) -> tuple[int, ...]:
    """The length of each line of a text, which the places of problems count."""
    text = path.read_bytes().decode("utf-8-sig", errors="replace") if path.is_file() else ""
    lines = re.split("\r\n|[\r\n\x85\u2028\u2029]", text)
    lines = lines[:-1] if lines[1:] and not lines[-1] else lines
    return tuple(map(len, lines))


def are_at_their_places(problems: Iterable[Problem], folder: Path) -> bool:
    """Each file is there, and in a text the line and the column too."""
    seen: dict[str, tuple[int, ...]] = {}
    for problem in problems:
        file, line = problem.place.file, problem.place.line
        if file not in seen:
            if not file or not (folder / file).exists():
                return False
            seen[file] = lines_in(folder / file)
        lines = seen[file]
        if not (1 <= line <= len(lines) and 1 <= problem.place.column <= lines[line - 1] + 1):
            return False
    return True


# --- the promises ----------------------------------------------------------------


SETTINGS: Final = st.builds(
    Settings,
    st.sampled_from(WRITTEN),
    st.sampled_from(["EUR", "JPY", "KWD"]).map(Currency.of),
    st.sampled_from(list(CostFlow)),
)


def check_archive(archive: tuple[Files, Settings], folder: Path) -> None:
    """All that is told is a sentence at a place that is there; figures come of what is sound."""
    files, its_settings = archive
    shutil.rmtree(folder / "projects", ignore_errors=True)
    lay_out(files, folder)
    with soon():
        worked = read_and_work_out(folder / "projects", its_settings, planner())
        recipients = read_recipients(folder / "projects", Batches(worked.archive.projects, worked.slugs))
    problems = (*worked.problems, *recipients.problems)
    for problem in problems:
        assert is_a_sentence(problem.sentence), problem
        assert told(problem).splitlines()[0].endswith(problem.sentence)
    assert are_at_their_places(problems, folder), problems
    assert (worked.figures is None) == bool(worked.errors)


MODULES: Final = [
    import_module(f"{package.__name__}.{module.name}")
    for package in (batchleaf.records, batchleaf.measure)
    for module in iter_modules(package.__path__)
]
SHEET: Final = Size(Fraction(200), Fraction(300))
BESIDE_TEXT: Final[dict[Any, st.SearchStrategy[Any]]] = {
    str: short_texts().map(lambda text: text[:400]),
    Unit: st.sampled_from(WRITTEN),
    Currency: st.sampled_from(["EUR", "JPY", "KWD"]).map(Currency.of),
    Size: st.just(SHEET),
    int: st.integers(0, 12),
    Supply: st.sampled_from(
        [
            Supply("shoal-pad", "shoal", "paper", "sheet", "sheets", Unit.MM, SHEET, designs=12, copies=2),
            Supply("jute-cord", "cord", "cord", "m", "m", Unit.MM, None, pack=5),
        ]
    ),
}


def hints_of(reader: Callable[..., Any]) -> dict[str, Any]:
    """What a reader must be given, by its own annotations."""
    hints = get_type_hints(reader)
    needed = inspect.signature(reader).parameters.values()
    return {one.name: hints.get(one.name) for one in needed if one.default is inspect.Parameter.empty}


def reads_a_text(name: str, reader: Any, module: ModuleType) -> bool:
    """Whether it is a reader of the module's own that takes one text, and what can be made up here."""
    if not (inspect.isfunction(reader) and reader.__module__ == module.__name__):
        return False
    hints = tuple(hints_of(reader).values())
    return bool(re.match("(read|parse)_", name)) and hints[:1] == (str,) and set(hints) <= set(BESIDE_TEXT)


READERS: Final[tuple[Callable[..., Any], ...]] = tuple(
    reader
    for module in MODULES
    for name, reader in sorted(vars(module).items())
    if reads_a_text(name, reader, module)
)
"""All that reads a short text: every public reader of the records and of measures."""


def test_the_readers_are_found() -> None:
    """A reader that is moved or is new is tried without being named here."""
    names = {reader.__name__ for reader in READERS}
    assert len(names) >= 35
    assert {"parse_length", "read_cut", "read_base", "read_source", "read_went", "read_trim"} <= names


def arguments_of(reader: Callable[..., Any]) -> st.SearchStrategy[dict[str, Any]]:
    """What a reader takes, by its own annotations."""
    return st.fixed_dictionaries({name: BESIDE_TEXT[hint] for name, hint in hints_of(reader).items()})


CALLS: Final = st.sampled_from(READERS).flatmap(
    lambda reader: st.tuples(st.just(reader), arguments_of(reader))
)


def check_call(call: tuple[Callable[..., Any], dict[str, Any]], folder: Path) -> None:
    """A value, the same each time, or a sentence."""
    reader, arguments = call
    report = Report()
    with soon():
        value = report.read(NOWHERE, reader, **arguments)
    assert (value is None) == bool(report.found)
    assert all(is_a_sentence(problem.sentence) for problem in report.found)


LAWFUL: Final = st.sampled_from(sorted(LAWS)).flatmap(lambda law: st.tuples(st.just(law), LAWS[law][0]))


def check_law(case: tuple[str, Any], folder: Path) -> None:
    """A value, written and read."""
    law, value = case
    LAWS[law][1](value)


PROMISES: Final[dict[str, tuple[st.SearchStrategy[Any], Callable[[Any, Path], None]]]] = {
    "any bytes": (st.tuples(spoilt_archives(), SETTINGS), check_archive),
    "any tree": (st.tuples(archives_near(), SETTINGS), check_archive),
    "any short text": (CALLS, check_call),
    "any value": (LAWFUL, check_law),
}
SHARES: Final = {"any bytes": 0.4, "any tree": 0.45, "any short text": 0.1, "any value": 0.05}
"""Of the time that all promises have together: most for those with most that can go wrong."""


@pytest.mark.parametrize("promise", PROMISES)
def test_a_few_of_each(promise: str, tmp_path: Path) -> None:
    """Read or told, and never more than that."""
    things, check = PROMISES[promise]
    QUICK(given(things)(lambda thing: check(thing, tmp_path)))()


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_of_record_is_tried_where_it_is_read(kind: str, tmp_path: Path) -> None:
    """What is no YAML is told of the very file in which the records of a kind are put here."""
    path = home_of(kind)
    lay_out({**sound_archives()[0], path: b"]"}, tmp_path)
    worked = read_and_work_out(tmp_path / "projects", USUAL, planner())
    recipients = read_recipients(tmp_path / "projects", Batches(worked.archive.projects, worked.slugs))
    problems = (*worked.problems, *recipients.problems)
    assert path in {problem.place.file for problem in problems if problem.weight is Weight.ERROR}


@pytest.mark.slow
@pytest.mark.parametrize("promise", PROMISES)
def test_for_minutes(promise: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The same promises, round after round of fresh ones."""
    things, check = PROMISES[promise]
    until = time.monotonic() + 60 * MINUTES * SHARES[promise]
    first = random.randrange(2**32) if "FUZZ_MINUTES" in os.environ else 0
    tried = 0

    def counted(thing: Any) -> None:
        nonlocal tried
        tried += 1
        check(thing, tmp_path)

    for number in count(first):
        seed(number)(ROUND(given(things)(counted)))()
        if time.monotonic() > until:
            break
    with capsys.disabled():
        sys.stdout.write(f" {promise}: {tried} tried ")
