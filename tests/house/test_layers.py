"""The code's layers: what may know of what."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Final

import batchleaf

PACKAGE: Final = Path(batchleaf.__file__).parent

MAY_IMPORT: Final[dict[str, set[str]]] = {
    "measure": set(),
    "facts": {"measure"},
    "records": {"measure", "facts"},
    "core": {"measure", "facts"},
    "views": {"measure", "facts", "records", "core"},
    "render": {"measure", "facts", "records", "core", "views", "store"},
    "store": set(),
    "telling": {"measure", "facts"},
    "edition": set(),
    "workflow": {"measure", "facts", "records", "core"},
    "kept_plans": {"core", "facts", "store"},
    "made_batch": {"facts", "core", "views", "render"},
    "helping": set(),
    "kept_batches": {"core", "store", "kept_plans", "made_batch", "helping"},
    "made_site": {"facts", "core", "views", "render", "store", "made_batch", "kept_batches"},
    "linkcheck": set(),
    "build": {"edition", "linkcheck"},
    "mkdocs_told": set(),
    "searching": {"render", "store"},
    "settings": {"measure", "records"},
    "own_files": {"facts", "render", "store"},
    "handing_over": {"made_batch", "made_site", "render", "views"},
    "plugin": {
        "measure",
        "facts",
        "core",
        "edition",
        "handing_over",
        "kept_batches",
        "made_batch",
        "own_files",
        "views",
        "render",
        "searching",
        "settings",
        "store",
        "telling",
        "workflow",
        "made_site",
    },
    "writing": {"measure", "facts", "records"},
    "commands": {
        "measure",
        "facts",
        "records",
        "core",
        "views",
        "render",
        "kept_plans",
        "store",
        "telling",
        "workflow",
        "made_site",
        "writing",
        "settings",
        "plugin",
    },
    "cli": {"commands", "build", "edition", "measure", "store"},
    "__main__": {"cli"},
    "__init__": set(),
}

FOREIGN: Final[dict[str, set[str]]] = {
    "mkdocs": {
        *("settings", "own_files", "handing_over", "searching", "plugin"),
        *("commands", "build", "mkdocs_told"),
    },
    "yaml": {"records"},
    "pydantic": {"records"},
    "jinja2": {"render", "plugin"},
    "PIL": {"render"},
    "highspy": {"core"},
}
"""Who may use which library; everyone else stays free of it."""

IMPURE: Final = {"os", "pathlib", "time", "logging", "subprocess", "shutil", "tempfile", "io", "random"}
EXCUSED: Final = {
    # HiGHS writes a banner to the process's own output, past Python; it is turned off there.
    ("core/cutting/solver.py", "os"),
}


def _modules() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


def _layer(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def _imports(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written out in full"
            # "from batchleaf import x" imports a layer as well.
            module = node.module or ""
            yield from (f"{module}.{alias.name}" for alias in node.names)


def _layers_imported(path: Path) -> set[str]:
    parts = (name.split(".") for name in _imports(path))
    return {name[1] for name in parts if name[0] == "batchleaf" and len(name) > 1} - {"__version__"}


def _libraries(path: Path) -> set[str]:
    return {name.split(".")[0] for name in _imports(path)}


def _named(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def _faults(find: Callable[[Path], set[str]]) -> list[str]:
    return [f"{_named(path)} imports {name}" for path in _modules() for name in sorted(find(path))]


def test_imports_point_down() -> None:
    """measure, facts, records and core side by side, views, render: each knows only those before it."""
    assert {_layer(path) for path in _modules()} <= set(MAY_IMPORT), "say where the new module belongs"

    def too_high(path: Path) -> set[str]:
        layer = _layer(path)
        imported = _layers_imported(path) - {layer}
        return imported - MAY_IMPORT[layer]

    assert _faults(too_high) == []


def test_libraries_stay_in_their_layer() -> None:
    """MkDocs, YAML, templates, pictures and the solver are each known in one place."""

    def out_of_place(path: Path) -> set[str]:
        return {name for name in _libraries(path) & set(FOREIGN) if _layer(path) not in FOREIGN[name]}

    assert _faults(out_of_place) == []


def test_core_is_pure() -> None:
    """The core is handed all it needs: it reads no file, no clock and no chance of its own."""

    def impure(path: Path) -> set[str]:
        if _layer(path) not in ("measure", "facts", "core"):
            return set()
        return {name for name in _libraries(path) & IMPURE if (_named(path), name) not in EXCUSED}

    assert _faults(impure) == []
