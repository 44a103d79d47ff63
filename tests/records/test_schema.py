"""The schemas that help an editor agree with the models.

An editor reads YAML by the core schema of YAML 1.2 (chapter 10.3.2): numbers as
numbers, ``true`` as a truth value, ``yes`` and ``no`` as text. One thing it reads
otherwise than Batchleaf is left to quotes: a bare ``null`` or ``~`` is no text to it.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any, ClassVar

import pytest
import yaml
from hypothesis import assume, given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from pydantic import BaseModel, ValidationError, model_validator

from batchleaf.records.kinds import KINDS, Key, keys_of, one_line_forms
from batchleaf.records.schema import schema_for, schema_of
from batchleaf.records.written import Written
from batchleaf.records.yaml_text import read_yaml
from records.sound_records import Site, least, records, sites

ROOT = Path(__file__).parents[2]
ARCHIVES = (ROOT, ROOT / "plugins" / "batchleaf" / "writing" / "starter")
RECORDS = [
    (path, kind)
    for kind, one in KINDS.items()
    for archive in ARCHIVES
    for path in sorted(archive.glob(one.file.replace("NAME", "*")))
]
SITES = list(sites())
every_site = pytest.mark.parametrize("site", SITES, ids=str)


@cache
def validator(kind: str) -> Draft202012Validator:
    """What an editor holds a record to."""
    return Draft202012Validator(schema_of(kind))


def faults(kind: str, value: object) -> list[str]:
    """What the schema says of a value."""
    return [error.message for error in validator(kind).iter_errors(value)]


def takes(model: type[BaseModel], value: object) -> bool:
    """Does the model take it?"""
    try:
        model.model_validate(value)
    except ValidationError:
        return False
    return True


def as_an_editor_reads(value: Any) -> Any:
    """A tree of unquoted texts as the core schema resolves them; keys are text in JSON."""
    if isinstance(value, dict):
        return {key: as_an_editor_reads(one) for key, one in value.items()}
    if isinstance(value, list):
        return [as_an_editor_reads(one) for one in value]
    if re.fullmatch(r"true|True|TRUE|false|False|FALSE", value):
        return value.lower() == "true"
    if re.fullmatch(r"[-+]?[0-9]+", value, re.ASCII):
        return int(value)
    if re.fullmatch(r"0o[0-7]+|0x[0-9a-fA-F]+", value, re.ASCII):
        return int(value, 0)
    if re.fullmatch(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", value, re.ASCII):
        return float(value)
    if re.fullmatch(r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)", value):
        return float(value.replace(".", ""))
    return value


def plain_tree(node: yaml.Node) -> Any:
    """A record's text, each quoted value marked so that it stays text."""
    if isinstance(node, yaml.MappingNode):
        return {key.value: plain_tree(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [plain_tree(item) for item in node.value]
    quoted = isinstance(node, yaml.ScalarNode) and node.style
    return node.value if quoted else as_an_editor_reads(node.value)


@pytest.mark.parametrize("kind", KINDS)
def test_a_schema_is_a_schema(kind: str) -> None:
    """By the meta-schema of JSON Schema draft 2020-12."""
    Draft202012Validator.check_schema(schema_of(kind))


@pytest.mark.parametrize(("path", "kind"), RECORDS, ids=lambda one: getattr(one, "parent", one))
def test_an_editor_finds_no_fault_in_what_comes_with_batchleaf(path: Path, kind: str) -> None:
    """Nothing in the demo and in the starter is underlined."""
    node = yaml.compose(path.read_text(encoding="utf-8"), yaml.BaseLoader)
    assert node is not None
    assert faults(kind, plain_tree(node)) == []


@pytest.mark.parametrize(("path", "kind"), RECORDS, ids=lambda one: getattr(one, "parent", one))
def test_a_record_names_the_schema_of_its_kind(path: Path, kind: str) -> None:
    """By the way from its own folder, in the first line."""
    archive = next(one for one in reversed(ARCHIVES) if path.is_relative_to(one))
    first = path.read_text(encoding="utf-8").splitlines()[0]
    named = first.removeprefix("# yaml-language-server: $schema=")
    assert (path.parent / named).resolve() == archive / ".batchleaf" / f"{kind}.schema.json"


@pytest.mark.parametrize("kind", KINDS)
def test_the_demos_schemas_are_those_of_the_models(kind: str) -> None:
    """What `batchleaf schema` wrote into the demo is not out of date."""
    written = json.loads((ROOT / ".batchleaf" / f"{kind}.schema.json").read_text(encoding="utf-8"))
    assert written == schema_of(kind)


@every_site
def test_an_editor_shows_what_each_key_means(site: Site) -> None:
    """Title, description and examples of each key are those of the model."""
    shown = properties(site)
    assert list(shown) == [key.name for key in keys_of(site.model)]
    for key in keys_of(site.model):
        assert shown[key.name].get("title") or key.below
        assert shown[key.name].get("description") == key.field.description
        assert shown[key.name].get("examples") == key.field.examples


def definition(site: Site) -> dict[str, Any]:
    """What the schema says of a place."""
    whole = schema_of(site.kind)
    return dict(whole["$defs"][site.model.__name__] if site.path else whole)


def properties(site: Site) -> dict[str, Any]:
    """The keys of a place, as the schema lists them."""
    found = definition(site)
    keys: dict[str, Any] = next(
        one["properties"] for one in (found, *found.get("anyOf", [])) if "properties" in one
    )
    return keys


@every_site
def test_an_editor_names_what_stands_there(site: Site) -> None:
    """In words, not by the name that the code gives it."""
    found = definition(site)
    assert re.fullmatch(r"(A|The|One) [a-z ]+", found["title"])
    assert found["description"]


EXAMPLES = [
    (site, key, example)
    for site in SITES
    for key in keys_of(site.model)
    for example in key.field.examples or ()
]


@pytest.mark.parametrize(("site", "key", "example"), EXAMPLES, ids=lambda one: getattr(one, "name", str(one)))
def test_every_example_is_taken(site: Site, key: Key, example: Any) -> None:
    """In a record that is sound otherwise: by the model, and by the schema quoted or not."""
    record = site.with_({**least(site.model), key.name: example})
    assert takes(site.root, record)
    assert faults(site.kind, record) == []
    assert faults(site.kind, as_an_editor_reads(record)) == []


@every_site
def test_every_example_of_one_line_is_taken(site: Site) -> None:
    """Where one line may stand for keys, by the model and by the schema; elsewhere by neither."""
    forms = one_line_forms(site.model)
    for form in forms or ("44 x 70",) if site.path else ():
        record = site.with_(form)
        assert takes(site.root, record) == bool(forms)
        assert (faults(site.kind, record) == []) == bool(forms)


@every_site
def test_both_refuse_a_key_that_is_none(site: Site) -> None:
    """The schema is no wider than the model for keys."""
    record = site.with_({**least(site.model), "titel": "x"})
    assert not takes(site.root, record)
    assert faults(site.kind, record) != []


@every_site
def test_both_refuse_a_record_without_what_must_be_there(site: Site) -> None:
    """Each key that must be there, left out alone."""
    for needed in least(site.model):
        record = site.with_({key: value for key, value in least(site.model).items() if key != needed})
        assert not takes(site.root, record)
        assert faults(site.kind, record) != []


@every_site
def test_both_refuse_what_is_no_choice_and_no_address(site: Site) -> None:
    """Each key with a list of choices, or whose values or names are addresses."""
    for name, shown in properties(site).items():
        wrong = {"enum": "neither", "pattern": "No Address"}
        values: list[Any] = [word for kind, word in wrong.items() if kind in shown]
        values += [["No Address"]] if "pattern" in shown.get("items", {}) else []
        values += [{"No Address": {}}] if "patternProperties" in shown else []
        for value in values:
            record = site.with_({**least(site.model), name: value})
            assert not takes(site.root, record)
            assert faults(site.kind, record) != []


@given(
    st.sampled_from(sorted(KINDS)).flatmap(lambda kind: st.tuples(st.just(kind), records(KINDS[kind].model)))
)
def test_what_the_model_takes_the_schema_takes(typed: tuple[str, Any]) -> None:
    """No record that Batchleaf reads is underlined by an editor, its values in quotes or not."""
    kind, record = typed
    assume(takes(KINDS[kind].model, record))
    assert faults(kind, record) == []
    assert faults(kind, as_an_editor_reads(record)) == []


class Leaf(Written):
    """One leaf, under its letter."""

    SHORT: ClassVar[tuple[str, ...]] = ("44 x 70, water",)
    size: str
    paper: str = "base"

    @model_validator(mode="before")
    @classmethod
    def _from_one_line(cls, written: Any) -> Any:
        return (
            dict(zip(("size", "paper"), written.split(", "), strict=False))
            if isinstance(written, str)
            else written
        )


class Twig(Written):
    """A record with leaves."""

    leaves: dict[str, Leaf]


@pytest.mark.parametrize(
    ("leaf", "sound"),
    [
        ("44 x 70, water", True),
        (44, True),
        ({"size": "44 x 70"}, True),
        ({"size": "44 x 70", "papre": "base"}, False),
        ({}, False),
        (["44 x 70"], False),
    ],
)
def test_one_line_may_stand_for_keys(leaf: Any, sound: bool) -> None:  # noqa: FBT001
    """A model with ``SHORT`` takes a line or its keys, and nothing between."""
    schema = schema_for(Twig, "A twig")
    Draft202012Validator.check_schema(schema)
    assert Draft202012Validator(schema).is_valid({"leaves": {"B": leaf}}) == sound
    assert takes(Twig, {"leaves": {"B": str(leaf) if isinstance(leaf, int) else leaf}}) == sound
    shown = schema["$defs"]["Leaf"]
    assert (shown["title"], shown["description"]) == ("One leaf", "One leaf, under its letter.")
    assert shown["anyOf"][0]["examples"] == ["44 x 70, water"]


@pytest.mark.parametrize("text", ["null", "~", "Null"])
def test_a_bare_nothing_is_the_one_exception(text: str) -> None:
    """Batchleaf reads it as text; an editor underlines it until it is in quotes."""
    node, problems = read_yaml(f"title: {text}".encode(), "x")
    assert (repr(text) in repr(node), problems) == (True, ())
    assert faults("project", {**least(KINDS["project"].model), "title": None}) != []
    assert faults("project", {**least(KINDS["project"].model), "title": text}) == []
