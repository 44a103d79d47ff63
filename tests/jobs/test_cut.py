"""``batchleaf cut``: what it answers, to people and to programs."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections import Counter
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from batchleaf.cli import main
from batchleaf.facts.jobs import Job
from cutting.brute import brute_least_cost, brute_most_makes, brute_patterns, tiny_job
from jobs.table import Json, Rules, cut_again

KEYS = ["question", "makes", "cost", "value", "bound", "proved", "reason", "seconds", "spares", "plans"]


def written(job: Job, asked: str) -> str:
    """A job as a file spells it, in mm."""
    sheets = [
        f"  - {{id: {s.id}, size: {s.size.width} x {s.size.height}, have: {s.have}, cost: {s.cost}}}"
        for s in job.stocks
    ]
    parts = [
        f"  - {{id: {p.id}, size: {p.size.width} x {p.size.height}, each: {p.each}, "
        f"turns: {'yes' if p.turns else 'no'}, from: [{', '.join(p.sources)}]}}"
        for p in job.parts
    ]
    return "\n".join([f"kerf: {job.kerf}", "sheets:", *sheets, "parts:", *parts, asked, ""])


class Asking:
    """Types the command, and reads what it says."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self._file, self._capsys = folder / "job.yml", capsys

    def file(self, text: str, *options: str) -> tuple[int, str, str]:
        """Ask the job in a file: exit code, output, errors."""
        self._file.write_text(text, encoding="utf-8")
        return self.line(str(self._file), *options)

    def line(self, text: str, *options: str) -> tuple[int, str, str]:
        """Ask one line."""
        self._capsys.readouterr()
        code = main(["cut", text, *options])
        said = self._capsys.readouterr()
        return code, said.out, said.err

    def json(self, text: str) -> Any:
        """The answer for programs; it stands alone on the output."""
        code, out, err = self.file(text, "--json") if "\n" in text else self.line(text, "--json")
        assert (code, err) == (0, "")
        return json.loads(out)


@pytest.fixture
def asking(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Asking:
    """Somebody at a terminal."""
    return Asking(tmp_path, capsys)


def checked(answer: Json, job: Job) -> tuple[Counter[str], Counter[str]]:
    """Cut the answer again: parts by id, sheets by id."""
    rules = Rules(
        {stock.id: (stock.size.width, stock.size.height) for stock in job.stocks},
        {part.id: (part.size.width, part.size.height) for part in job.parts},
        frozenset(part.id for part in job.parts if not part.turns),
        job.kerf,
    )
    parts, sheets = Counter[str](), Counter[str]()
    for plan in answer["plans"]:
        assert plan["times"] >= 1
        sheets[plan["sheet"]] += plan["times"]
        for part, count in cut_again(plan, rules).items():
            allowed = next(one.sources for one in job.parts if one.id == part)
            assert not allowed or plan["sheet"] in allowed
            parts[part] += count * plan["times"]
    for stock in job.stocks:
        assert stock.have is None or sheets[stock.id] <= stock.have
    return parts, sheets


@pytest.mark.parametrize("seed", range(60))
def test_the_most_makes_of_tiny_jobs(asking: Asking, seed: int) -> None:
    """As many as trying everything gives, with spares counted; none is told in a sentence."""
    job = tiny_job(seed)
    most = brute_most_makes(job)
    if not most:
        code, out, err = asking.file(written(job, "want: most"), "--json")
        assert (code, out) == (1, "")
        assert err.endswith(".\n")
        return
    answer = asking.json(written(job, "want: most"))
    assert list(answer) == KEYS
    assert (answer["question"], answer["makes"], answer["bound"]) == ("makes", most, str(most))
    assert answer["proved"] is True
    parts, _ = checked(answer, job)
    assert answer["spares"] == {
        part.id: parts[part.id] - most * part.each for part in job.parts if parts[part.id] > most * part.each
    }


@pytest.mark.parametrize("seed", range(60))
def test_the_least_cost_of_tiny_jobs(asking: Asking, seed: int) -> None:
    """As little as trying everything gives; where there are too few sheets, how many they would give."""
    job = tiny_job(seed)
    makes = 1 + seed % 3
    least = brute_least_cost(job, makes)
    if least is None:
        code, out, err = asking.file(written(job, f"want: {makes}"), "--json")
        assert (code, out) == (1, "")
        most = brute_most_makes(job)
        assert not most or err.endswith(f"; they give {most}.\n")
        return
    answer = asking.json(written(job, f"want: {makes}"))
    assert (answer["question"], answer["makes"], answer["value"]) == ("cost", makes, None)
    assert Fraction(answer["cost"]) == Fraction(answer["bound"]) == least
    assert answer["proved"] is True
    parts, sheets = checked(answer, job)
    assert all(parts[part.id] >= makes * part.each for part in job.parts)
    assert sum(stock.cost * sheets[stock.id] for stock in job.stocks) == least


@pytest.mark.parametrize("seed", range(40))
def test_filling_tiny_sheets(asking: Asking, seed: int) -> None:
    """By area, as full as trying everything makes it; no spares are counted."""
    job = tiny_job(seed)
    stock = job.stocks[0]
    areas = [part.size.area for part in job.parts]
    best = max(
        sum(area * count for area, count in zip(areas, counts, strict=True))
        for counts in brute_patterns(job, stock)
    )
    if not best:
        assert asking.file(written(job, f"fill: {stock.id}"))[0] == 1
        return
    answer = asking.json(written(job, f"fill: {stock.id}"))
    assert (answer["question"], answer["makes"], answer["cost"]) == ("fill", None, None)
    assert Fraction(answer["value"]) == Fraction(answer["bound"]) == best
    parts, sheets = checked(answer, job)
    assert sheets == {stock.id: 1}
    assert sum(part.size.area * parts[part.id] for part in job.parts) == best


@pytest.mark.parametrize(
    ("line", "many"),
    [
        # Numbers out by through cuts: printing course; print buyer's guide; common practice, recomputed.
        ("8 1/2 x 11 from 17 x 22", 4),
        ("9 x 12 from 23 x 35", 5),
        ("2 1/2 x 3 1/2 from 8 1/2 x 11", 10),
        ("5 x 7 from 12 x 12", 3),
        # Thirds have to be exact (a printer's table of sizes without waste).
        ("8 1/2 x 3 2/3 from 8 1/2 x 11", 3),
    ],
)
def test_numbers_out_in_one_line(asking: Asking, line: str, many: int) -> None:
    """The published counts."""
    answer = asking.json(line)
    assert (answer["makes"], answer["proved"]) == (many, True)


def test_lengths_are_exact_fractions_in_the_unit_of_the_job(asking: Asking) -> None:
    """Eleven inches in three: 11/3 each."""
    (plan,) = asking.json("8 1/2 x 3 2/3 from 8 1/2 x 11")["plans"]
    assert {part["h"] for part in plan["parts"]} == {"11/3"}
    assert [cut["at"] for cut in plan["cuts"]] == ["11/3", "22/3"]


def test_in_words(asking: Asking) -> None:
    """What was found, why nothing is better, and each sheet cut by cut."""
    code, out, err = asking.line("5 x 7, 2 x 2 from 2 sheets of 12 x 12")
    assert (code, err) == (0, "")
    assert out.startswith(
        "2 sheets of 12 × 12 in give 6 of 5 × 7 and 6 of 2 × 2 in.\n"
        "Proved: each sheet gives at most 3 of part A.\n\n"
        "Plan 1. Cut 2 sheets like this, 12 × 12 in:\n"
    )


def test_rows_and_columns_are_told_where_they_give_fewer(asking: Asking) -> None:
    """And only there."""
    tip = "Rows and columns that all lie one way would give 12."
    assert tip in asking.line("2 1/2 x 3 1/2 from 12 x 12")[1]
    assert "Rows" not in asking.line("3 x 4 from 12 x 12")[1]


@pytest.mark.parametrize(
    ("job", "code", "said"),
    [
        ("13 x 13 from 12 x 12", 1, "Part A fits on none of these sheets.\n"),
        ("9 of 6 x 6 from 2 of 12 x 12", 1, "No way of cutting these sheets gives 9; they give 8.\n"),
        ("3 x from 12 x 12", 2, "“3 x” is not a size; write two lengths with x between, like 44 x 70\n"),
        ("job", 2, "There is no file job; name a job file, or write a line like “3 3/4 x 5 from 12 x 12”.\n"),
        ("no/such.yml", 2, "There is no file no/such.yml; name a job file, or write a line like"),
        ("a\0b.yml", 2, "There is no file a\0b.yml"),
    ],
)
def test_no_answer_is_one_sentence(asking: Asking, job: str, code: int, said: str) -> None:
    """1 where there is none, 2 where the job is wrong; nothing on the output."""
    ended, out, err = asking.line(job)
    assert (ended, out) == (code, "")
    assert err.startswith(said)


def test_a_wrong_file_is_told_with_its_places(asking: Asking) -> None:
    """All at once."""
    code, out, err = asking.file("sheets: [{id: a, size: 3}]\nparts: [{id: A, size: 4 x}]\nwant: 1\n")
    assert (code, out) == (2, "")
    assert [line.partition("job.yml")[2][:5] for line in err.splitlines() if "job.yml" in line] == [
        ":1:24",
        ":2:23",
    ]


def test_an_answer_that_nobody_reads_to_its_end(tmp_path: Path) -> None:
    """Where a pipe is closed, as by ``head``, the command ends without a word."""
    command = [sys.executable, "-m", "batchleaf", "cut", "5 x 7 from 12 x 12", "--json"]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=tmp_path, env=environment
    ) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.close()
        told = running.stderr.read()
        assert running.wait() == 1
    assert told == b""
