"""The tool that asks whether the tests notice a slip makes slips, one at a time."""

from __future__ import annotations

import ast
import importlib.util
import sys
from pathlib import Path
from types import ModuleType
from typing import Final

import pytest

ROOT: Final = Path(__file__).parents[2]
SOURCE: Final = '''
def far(a: int, b: int) -> int:
    """Words."""
    if not a or a < b + 1:
        raise ValueError(f"{a - 1} is near")
    a -= b
    return a * 2
'''


@pytest.fixture(scope="module")
def mutation() -> ModuleType:
    """The tool."""
    spec = importlib.util.spec_from_file_location("mutation", ROOT / "tools" / "mutation.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["mutation"] = module
    spec.loader.exec_module(module)
    return module


def test_each_slip_is_one(mutation: ModuleType) -> None:
    """All of a small function, each at its line; what only words and types say has none."""
    told = [mutant.told() for mutant in mutation.mutants_of("far.py", SOURCE)]
    assert sorted(told) == sorted(
        [
            "far.py:4: not a or a < b + 1  →  not a and a < b + 1",
            "far.py:4: not a  →  a",
            "far.py:4: a < b + 1  →  a <= b + 1",
            "far.py:4: b + 1  →  b - 1",
            "far.py:4: 1  →  2",
            "far.py:5: raise ValueError(f'{a - 1} is near')  →  pass",
            "far.py:6: a -= b  →  a += b",
            "far.py:7: return a * 2  →  return None",
            "far.py:7: a * 2  →  a / 2",
            "far.py:7: 2  →  3",
        ]
    )


@pytest.mark.parametrize("module", ["measure/money.py", "core/cutting/verify.py"])
def test_each_mutant_can_be_read_and_differs(mutation: ModuleType, module: str) -> None:
    """From the module and from all others."""
    text = (ROOT / "plugins" / "batchleaf" / module).read_text(encoding="utf-8")
    mutants = list(mutation.mutants_of(module, text))
    texts = {mutant.text for mutant in mutants}
    assert len(texts) == len(mutants) > 20
    assert ast.unparse(ast.parse(text)) not in texts
    for mutant in mutants:
        compile(mutant.text, module, "exec")


def test_the_sample_is_always_the_same(mutation: ModuleType) -> None:
    """Two runs ask of the same slips; the modules and the tests are there."""
    modules = list(mutation.TESTS)
    assert mutation.drawn(modules, 20) == mutation.drawn(modules, 20)
    for module, tests in mutation.TESTS.items():
        assert (ROOT / "plugins" / "batchleaf" / module).is_file()
        assert all((ROOT / test).is_file() for test in tests)
