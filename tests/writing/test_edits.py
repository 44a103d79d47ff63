"""Changing the text of a record in places."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.records.nodes import Mapping, Plain, plain
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.block import entry
from batchleaf.writing.edits import Drop, Edit, Put, Rename, edited

WRITTEN = """\
# a remark above
title: Tide line   # a remark beside
papers: {base: chalk-card}
parts:
  B strip: 44 x 70, water   # of the second pad

  # below the parts
steps:
- Cut
- Fold # with the grain
about: two lines
  of text"""


def _read(text: str) -> Mapping:
    node, problems = read_yaml(text.encode(), "record.yml")
    assert isinstance(node, Mapping)
    assert not problems
    return node


@pytest.mark.parametrize(
    ("edit", "expected"),
    [
        (Put((), "title", "Low water"), "title: Low water   # a remark beside"),
        (Put(("papers",), "water", "a, b"), 'papers: {base: chalk-card, "water": "a, b"}'),
        (Put(("papers",), "base", "oat"), 'papers: {base: "oat"}'),
        (
            Put(("parts",), "B strip", {"size": "44 x 70", "paper": "water"}),
            "  B strip:\n    size: 44 x 70\n    paper: water   # of the second pad\n",
        ),
        (Put(("parts",), "C label", "9 x 9"), "pad\n  C label: 9 x 9\n\n  # below the parts\n"),
        (Put((), "steps", ["Cut", "1:05 Fold"]), "steps:\n  - Cut\n  - 1:05 Fold\nabout"),
        (Put(("steps",), 1, "1:05 Fold"), "- Cut\n- 1:05 Fold # with the grain\n"),
        (Put((), "unit", "mm"), "about: two lines\n  of text\nunit: mm\n"),
        (Put((), "colour", "#c3d6cf"), "\ncolour: '#c3d6cf'\n"),
        (Rename(("parts", "B strip"), "D strip"), "  D strip: 44 x 70, water   # of"),
        (Drop(("about",)), "# with the grain\n"),
    ],
)
def test_changes_one_place(edit: Edit, expected: str) -> None:
    """The change stands where it belongs, and every remark is still there."""
    changed = edited(WRITTEN, _read(WRITTEN), [edit])
    assert expected in changed
    if not (isinstance(edit, Put) and edit.key == "steps"):
        assert changed.count("# ") == WRITTEN.count("# ")


def test_a_key_and_its_value_change_together() -> None:
    """A new name and a new value for one key do not get into each other's way."""
    text = "parts:\n  strip: 4 x 4 # mark\n"
    edits: list[Edit] = [Put(("parts",), "strip", {"size": "4 x 4"}), Rename(("parts", "strip"), "B strip")]
    assert edited(text, _read(text), edits) == "parts:\n  B strip:\n    size: 4 x 4 # mark\n"


def test_windows_line_ends_stay() -> None:
    """A record with CRLF gets no other line ends, whatever is added."""
    text = WRITTEN.replace("\n", "\r\n")
    changed = edited(text, _read(text), [Put((), "unit", "mm"), Put((), "steps", ["Cut", "Fold"])])
    assert changed.count("\n") == changed.count("\r\n")
    assert "\r\r" not in changed


def test_inner_groups_end_before_outer_ones() -> None:
    """Lines that are added at one foot of several groups each stay in their own group."""
    text = "parts:\n  B strip:\n    size: 4 x 4\n"
    edits = [Put((), "time", "1 h"), Put(("parts",), "C", "2 x 2"), Put(("parts", "B strip"), "each", "2")]
    changed = edited(text, _read(text), edits)
    assert changed == "parts:\n  B strip:\n    size: 4 x 4\n    each: 2\n  C: 2 x 2\ntime: 1 h\n"


WORDS = st.text(
    st.characters(exclude_categories=["Cc", "Cs"], exclude_characters="\ufeff\ufffe\uffff"),
    min_size=1,
    max_size=12,
).filter(lambda text: text.strip() == text)
KEYS = st.text("abcdé -", min_size=1, max_size=5).filter(lambda key: key.strip(" -") == key)
TREES: st.SearchStrategy[Any] = st.recursive(
    WORDS,
    lambda below: st.lists(WORDS, max_size=3) | st.dictionaries(KEYS, below, max_size=3),
    max_leaves=8,
)


@st.composite
def changes(draw: st.DrawFn) -> tuple[dict[str, Any], list[Edit], dict[str, Any]]:
    """A tree, some changes to it at different places, and the tree with these changes."""
    tree = draw(st.dictionaries(KEYS, TREES, min_size=1, max_size=4))
    wanted = dict(tree)
    edits: list[Edit] = []
    for key in draw(st.lists(KEYS, unique=True, max_size=4)):
        inner = tree.get(key)
        value = draw(TREES)
        if isinstance(inner, dict) and inner and draw(st.booleans()):
            edits.append(Put((key,), "new", value))
            wanted[key] = {**inner, "new": value}
        else:
            edits.append(Put((), key, value))
            wanted[key] = value
    return tree, edits, wanted


def _text_of(tree: dict[str, Any]) -> str:
    return "\n".join(line for key, value in tree.items() for line in entry(key, value, 0))


@given(change=changes(), line_end=st.sampled_from(["\n", "\r\n"]))
def test_the_changed_text_reads_as_the_changed_record(
    change: tuple[dict[str, Any], list[Edit], dict[str, Plain]], line_end: str
) -> None:
    """Whatever is put where, all else reads as before, and what was put reads as it was meant."""
    tree, edits, wanted = change
    text = _text_of(tree)
    text = text.replace("\n", line_end)
    assert plain(_read(text)) == tree
    assert plain(_read(edited(text, _read(text), edits))) == wanted
