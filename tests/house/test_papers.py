"""The papers beside the code: licences of what is needed, the changelog, what is defended."""

from __future__ import annotations

import importlib.util
import re
import sys
from pathlib import Path
from types import ModuleType
from typing import Final

import pytest

import batchleaf

ROOT: Final = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def licences() -> ModuleType:
    """The tool that writes the table."""
    spec = importlib.util.spec_from_file_location("licences", ROOT / "tools" / "licences.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def rows() -> dict[str, str]:
    """Package → licence, as the page has them."""
    text = (ROOT / "LICENCES.md").read_text(encoding="utf-8")
    _, _, table = text.partition("| package | licence |\n| --- | --- |\n")
    return dict(re.findall(r"^\| (\S+) \| (.+) \|$", table, re.MULTILINE))


def test_every_locked_package_has_its_licence(licences: ModuleType) -> None:
    """The page names all that a site's environment holds, and nothing else."""
    assert tuple(rows()) == licences.locked()


def test_every_licence_is_one_that_is_permitted(licences: ModuleType) -> None:
    """Permissive ones, and weak copyleft that asks nothing of who uses it."""
    permitted = licences.PERMISSIVE | licences.WEAK_COPYLEFT
    named = {word for said in rows().values() for word in licences.identifiers_in(said)}
    assert named <= permitted
    assert named & licences.WEAK_COPYLEFT


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="the lock has another numpy from there on")
def test_the_page_says_what_the_packages_say(licences: ModuleType) -> None:
    """Written anew from what is installed it stays as it is."""
    assert (ROOT / "LICENCES.md").read_text(encoding="utf-8") == licences.page()


def test_the_changelog_tells_of_this_version() -> None:
    """The version of the package is the newest one told of; each stands once, with its day or without."""
    text = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
    told = re.findall(r"^## (\S+) · (not released yet|\d{4}-\d{2}-\d{2})$", text, re.MULTILINE)
    assert len(told) == len(re.findall(r"^## ", text, re.MULTILINE))
    versions = [version for version, _ in told]
    assert versions[0] == batchleaf.__version__
    assert versions == sorted(set(versions), key=lambda one: [int(n) for n in one.split(".")], reverse=True)


@pytest.mark.parametrize("page", ["CHANGELOG.md", "SECURITY.md", "LICENCES.md", "CONTRACT.md"])
def test_each_paper_is_led_to(page: str) -> None:
    """From the README or from what developers read; and every link of it leads somewhere."""
    leading = "".join((ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md"))
    assert f"({page})" in leading
    text = (ROOT / page).read_text(encoding="utf-8")
    for link in re.findall(r"\]\(([^)#]+)\)", text):
        assert link.startswith(("https://", "mailto:")) or (ROOT / link).exists(), link


def test_every_test_that_is_named_is_there() -> None:
    """What is said to be defended is held by a test, and that test is found where it is said to be."""
    text = (ROOT / "SECURITY.md").read_text(encoding="utf-8")
    named = re.findall(r"`(tests/[^`]+)`", text)
    assert len(named) >= 8
    for path in named:
        assert (ROOT / path).exists(), path
