"""The record models as JSON Schema (draft 2020-12), for editors that help while writing.

Editors read YAML by the core schema of YAML 1.2 (chapter 10.3): ``makes: 22`` is a
number to them, ``true`` a truth value, ``yes``, ``no`` and a date are text. To
Batchleaf every value is text. The schemas therefore take all of these; only a bare
``null`` or ``~`` is nothing to an editor, and needs quotes where the word is meant.

Spaces around a text do not count in a record and do count in a schema, so that a
schema sets no limit to the length of a text.
"""

from __future__ import annotations

from typing import Any, Final

from pydantic import BaseModel

from batchleaf.records.kinds import KINDS, models_of, one_line_forms, word_of

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_SPOKEN: Final = ["string", "number", "boolean"]
_BY_NAME: Final = ("$defs", "properties", "patternProperties")
_ONE: Final = ("items", "additionalProperties", "propertyNames")


def schema_of(kind: str) -> dict[str, Any]:
    """The schema of one kind of record. Raises :class:`KeyError` for an unknown kind."""
    one = KINDS[kind]
    return schema_for(one.model, one.called)


def schema_for(model: type[BaseModel], called: str) -> dict[str, Any]:
    """The schema of a record; ``called`` is its title."""
    schema: dict[str, Any] = _as_editors_read(model.model_json_schema(by_alias=True))
    below = {one.__name__: one for one in models_of(model)}
    for name, definition in schema.get("$defs", {}).items():
        schema["$defs"][name] = _definition(below[name], definition)
    return {"$schema": DIALECT, **schema, "title": called}


def _definition(model: type[BaseModel], keys: dict[str, Any]) -> dict[str, Any]:
    """What stands below a key: its keys, or one line where its model may be written as one."""
    titled = {**keys, "title": f"One {word_of(model)}"}
    forms = one_line_forms(model)
    if not forms:
        return titled
    head = {name: titled.pop(name) for name in list(titled) if name in ("title", "description")}
    return {**head, "anyOf": [{"type": _SPOKEN, "examples": list(forms)}, titled]}


def _as_editors_read(schema: dict[str, Any]) -> dict[str, Any]:
    """A schema, and those within it, as wide as what a record may say there and no wider."""
    if "anyOf" in schema:
        # An optional key is left out, never written without a value.
        schema = {**schema, **next(one for one in schema["anyOf"] if one != {"type": "null"})}
        del schema["anyOf"]
    read = {word: _within(word, value) for word, value in schema.items()}
    if read.get("default", "") in (None, [], {}):
        del read["default"]
    if "patternProperties" in read:
        read["additionalProperties"] = False
    if "pattern" not in read:
        read.pop("maxLength", None)
    if not read.get("propertyNames", True):
        del read["propertyNames"]
    return _spoken(read)


def _within(word: str, value: Any) -> Any:
    """What a word of the schema language holds: schemas by name, one schema, or a plain value."""
    if word in _BY_NAME:
        return {name: _as_editors_read(one) for name, one in value.items()}
    return _as_editors_read(value) if word in _ONE and isinstance(value, dict) else value


def _spoken(schema: dict[str, Any]) -> dict[str, Any]:
    """A choice or a text, which an editor may have read as a number or a truth value."""
    choices = schema.pop("enum", None) or ([schema.pop("const")] if "const" in schema else [])
    if choices:
        numbers = [int(choice) for choice in choices if choice.isdigit()]
        return {**schema, "type": _SPOKEN if numbers else "string", "enum": [*choices, *numbers]}
    return {**schema, "type": _SPOKEN} if schema.get("type") == "string" else schema
