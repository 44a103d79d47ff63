"""Do the tests notice where a measure, a sum or the second opinion on plans is wrong?

    .venv/bin/python tools/mutation.py                       # a sample of all modules, about ten minutes
    .venv/bin/python tools/mutation.py --sample 0 money      # every mutant of measure/money.py

A mutant is a module with one slip: another comparison, another sign, a number off by one, a
"not" or a statement left out, nothing returned. The tests of its subject are run against a copy
of the package that has it. A mutant that no test notices is printed; what is known of such ones
stands in ``mutation-survivors.md``. The sample is drawn with a fixed seed, so that two runs ask the same.
"""

from __future__ import annotations

import argparse
import ast
import os
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Final

ROOT: Final = Path(__file__).resolve().parents[1]
PACKAGE: Final = ROOT / "plugins" / "batchleaf"
_LEDGER: Final = tuple(f"tests/core/test_{subject}.py" for subject in ("ledger", "pads", "odd_pieces"))
TESTS: Final[dict[str, tuple[str, ...]]] = {
    "measure/lengths.py": ("tests/measure/test_lengths.py", "tests/measure/test_spelling.py"),
    "measure/money.py": ("tests/measure/test_money.py",),
    "core/ledger.py": _LEDGER,
    "core/pile.py": _LEDGER,
    "core/cutting/verify.py": ("tests/cutting/test_verify.py",),
    "core/cutting/verify_sheet.py": ("tests/cutting/test_verify.py",),
}
"""Module → the tests of its subject."""
SEED: Final = 1
SAMPLE: Final = 120
LIMIT: Final = 300
"""Seconds for the tests of one mutant; what takes longer hangs, and is told by itself."""
_COMPARED: Final[dict[type[ast.cmpop], type[ast.cmpop]]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
_RECKONED: Final[dict[type[ast.operator], type[ast.operator]]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Mult,
    ast.Mod: ast.FloorDiv, ast.Pow: ast.Mult,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Mutant:
    """A module with one slip: where it is, what stood there, what stands there now, and the whole text."""

    module: str
    line: int
    was: str
    now: str
    text: str

    def told(self) -> str:
        """Where it is and what changed."""
        return f"{self.module}:{self.line}: {self.was}  →  {self.now}"


def slips_of(node: ast.AST) -> Iterator[ast.AST]:
    """What could stand in place of ``node``."""
    match node:
        case ast.Compare(left, [first, *others], comparators):
            yield ast.Compare(left, [_COMPARED[type(first)](), *others], comparators)
        case ast.BinOp(left, op, right) if type(op) in _RECKONED:
            yield ast.BinOp(left, _RECKONED[type(op)](), right)
        case ast.AugAssign(target, op, value) if type(op) in _RECKONED:
            yield ast.AugAssign(target, _RECKONED[type(op)](), value)
        case ast.BoolOp(op, values):
            yield ast.BoolOp(ast.Or() if isinstance(op, ast.And) else ast.And(), values)
        case ast.UnaryOp(ast.Not() | ast.USub(), operand):
            yield operand
        case ast.Constant(int(value)) if not isinstance(value, bool):
            yield ast.Constant(value + 1)
        case ast.Return(ast.AST()):
            yield ast.Return(ast.Constant(None))
        case ast.Raise() | ast.Expr(ast.Call() | ast.Yield() | ast.YieldFrom()) | ast.Continue():
            yield ast.Pass()


def mutants_of(module: str, text: str) -> Iterator[Mutant]:
    """All of a module, in the order of its lines."""
    tree = ast.parse(text)
    for place in sorted(_places(tree), key=lambda place: _line_of(place.node)):
        for slip in slips_of(place.node):
            place.put(slip)
            changed = ast.unparse(ast.fix_missing_locations(tree))
            place.put(place.node)
            yield Mutant(module, _line_of(place.node), _brief(place.node), _brief(slip), changed)


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a node stands: a field of what is above it, in a list at a number."""

    above: ast.AST
    field: str
    number: int | None
    node: ast.AST

    def put(self, node: ast.AST) -> None:
        """Let another node stand here."""
        if self.number is None:
            setattr(self.above, self.field, node)
        else:
            getattr(self.above, self.field)[self.number] = node


def _places(above: ast.AST) -> Iterator[_Place]:
    """All places below a node but those that have no effect: types of names, words of what is raised."""
    for field, value in ast.iter_fields(above):
        if field in ("annotation", "returns") or (isinstance(above, ast.Raise) and field == "exc"):
            continue
        listed = isinstance(value, list)
        for number, node in enumerate(value if listed else [value]):
            if isinstance(node, ast.AST):
                yield _Place(above, field, number if listed else None, node)
                yield from _places(node)


def _line_of(node: ast.AST) -> int:
    return getattr(node, "lineno", 0)


def _brief(node: ast.AST) -> str:
    """A node on one line."""
    shown = " ".join(ast.unparse(ast.fix_missing_locations(node)).split())
    return shown if len(shown) <= 70 else f"{shown[:69]}…"


class Found(Enum):
    """What the tests say of a mutant."""

    NOTICED = "noticed"
    LEFT = "not noticed"
    HANGS = f"not done after {LIMIT} seconds"


def tried(mutant: Mutant, copied: Path) -> Found:
    """Run the tests against the copy of the package that has the slip."""
    file = copied / "batchleaf" / mutant.module
    sound = file.read_bytes()
    file.write_text(mutant.text, encoding="utf-8")
    try:
        return _tests_of(mutant.module, copied)
    finally:
        file.write_bytes(sound)


def _tests_of(module: str, copied: Path) -> Found:
    options = ["-x", "-q", "-n", "0", "-p", "no:cacheprovider", "--hypothesis-seed=0", "-m", "not slow"]
    path = os.pathsep.join([str(copied), str(ROOT / "tests")])
    environment = {**os.environ, "PYTHONPATH": path, "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-m", "pytest", *options, *TESTS[module]]
    try:
        done = subprocess.run(
            command, cwd=ROOT, env=environment, capture_output=True, timeout=LIMIT, check=False
        )
    except subprocess.TimeoutExpired:
        return Found.HANGS
    return Found.NOTICED if done.returncode else Found.LEFT


def drawn(modules: list[str], sample: int) -> list[Mutant]:
    """So many mutants of the modules, always the same; all of them for 0."""
    found = [
        mutant
        for module in modules
        for mutant in mutants_of(module, (PACKAGE / module).read_text(encoding="utf-8"))
    ]
    if not sample or sample >= len(found):
        return found
    return random.Random(SEED).sample(found, sample)


def main() -> int:
    """Run the tests against each mutant; 1 where one is not noticed."""
    parser = argparse.ArgumentParser(description="Do the tests notice a slip?")
    parser.add_argument("words", nargs="*", help="parts of the names of modules (default: all)")
    parser.add_argument("--sample", type=int, default=SAMPLE, help=f"how many, 0 for all (default: {SAMPLE})")
    asked = parser.parse_args()
    modules = [one for one in TESTS if not asked.words or any(word in one for word in asked.words)]
    with tempfile.TemporaryDirectory() as folder:
        copied = Path(folder, "plugins")
        shutil.copytree(PACKAGE, copied / "batchleaf", ignore=shutil.ignore_patterns("__pycache__"))
        for module in modules:
            if (as_it_stands := _tests_of(module, copied)) is not Found.LEFT:
                print(f"The tests of {module} as it stands: {as_it_stands.value}; mend them first.")
                return 2
        found = {mutant: tried(mutant, copied) for mutant in drawn(modules, asked.sample)}
    left = {mutant: one for mutant, one in found.items() if one is not Found.NOTICED}
    for mutant, one in sorted(left.items(), key=lambda pair: (pair[0].module, pair[0].line)):
        print(f"{mutant.told()}  ({one.value})")
    print(f"{len(found) - len(left)} of {len(found)} slips were noticed.")
    return 1 if left else 0


if __name__ == "__main__":
    sys.exit(main())
