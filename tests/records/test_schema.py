"""The schemas that help an editor agree with the models."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from pydantic import ValidationError

from batchleaf.records.schema import KINDS, schema_of

ROOT = Path(__file__).parents[2]
RECORDS = [
    *((path, "project") for path in sorted((ROOT / "projects").glob("*/project.yml"))),
    *((path, "inventory") for path in sorted((ROOT / "projects" / "inventory").glob("*.yml"))),
    (ROOT / "projects" / "series.yml", "series"),
]


class CoreLoader(yaml.SafeLoader):
    """Reads YAML as editors do: by the core schema of YAML 1.2, in which dates and yes are text."""


CoreLoader.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in resolvers if not tag.endswith((":timestamp", ":bool"))]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def faults(kind: str, value: object) -> list[str]:
    """What the schema says of a value."""
    return [error.message for error in Draft202012Validator(schema_of(kind)).iter_errors(value)]


@pytest.mark.parametrize("kind", KINDS)
def test_a_schema_is_a_schema(kind: str) -> None:
    """By the meta-schema of JSON Schema draft 2020-12."""
    Draft202012Validator.check_schema(schema_of(kind))


@pytest.mark.parametrize(("path", "kind"), RECORDS, ids=lambda value: getattr(value, "stem", value))
def test_an_editor_finds_no_fault_in_the_demo(path: Path, kind: str) -> None:
    """Numbers and plain words are taken as an editor reads them."""
    assert faults(kind, yaml.load(path.read_text(encoding="utf-8"), CoreLoader)) == []


def test_an_editor_sees_a_key_that_is_none() -> None:
    """The schema is no wider than the records for keys."""
    assert faults("project", {"title": "x", "date": "2026-01-01", "makes": 3, "titel": "x"}) != []


WORDS = st.sampled_from(
    ["x", "44 x 70", "2026-03-14", "22 of 24", "yes", "no", "1", "made", "mm", "base", ""]
)
KEYS = [
    *("title", "date", "makes", "format", "status", "unit", "base", "papers", "parts", "size", "paper"),
    *("each", "turn", "cut", "steps", "series", "about", "supplies", "purchases", "counts", "lines"),
    *("found", "name", "kind", "opening", "amount", "a-slug"),
]
TREES = st.recursive(
    WORDS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(KEYS), inner, max_size=5),
    max_leaves=14,
)
SOUND: dict[str, dict[str, Any]] = {
    "project": {"title": "x", "date": "2026-03-14", "makes": "1"},
    "inventory": {},
    "series": {"series": {}},
}
"""What each kind must have, so that most of what is tried is a record."""


@given(TREES, st.sampled_from(sorted(KINDS)))
def test_what_the_model_takes_the_schema_takes(tree: Any, kind: str) -> None:
    """No record that Batchleaf reads is underlined in red by an editor."""
    if isinstance(tree, dict):
        tree = {**SOUND[kind], **tree}
    try:
        KINDS[kind].model_validate(tree)
    except ValidationError:
        return
    assert faults(kind, tree) == []


def test_what_the_examples_say_the_model_takes() -> None:
    """Each example of a key is a value that the key takes."""

    def examples(schema: Any) -> Any:
        if isinstance(schema, dict):
            for key, inner in schema.get("properties", {}).items():
                yield from ((key, inner, example) for example in inner.get("examples", []))
            for inner in schema.values():
                yield from examples(inner)

    seen = 0
    for kind in KINDS:
        whole = schema_of(kind)
        for key, inner, example in examples(whole):
            seen += 1
            checked = {**inner, "$defs": whole.get("$defs", {})}
            assert not list(Draft202012Validator(checked).iter_errors(example)), key
    assert seen >= 10


@pytest.mark.parametrize("kind", KINDS)
def test_the_demos_schemas_are_those_of_the_models(kind: str) -> None:
    """What `batchleaf schema` wrote into the demo is not out of date."""
    written = json.loads((ROOT / ".batchleaf" / f"{kind}.schema.json").read_text(encoding="utf-8"))
    assert written == schema_of(kind)
