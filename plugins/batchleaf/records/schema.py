"""The record models as JSON Schema (draft 2020-12), for editors that help while writing.

Editors read YAML by its core schema, so that ``makes: 22`` is a number to them;
to Batchleaf every value is text. The schemas therefore take both.
"""

from __future__ import annotations

from typing import Any, Final

from pydantic import BaseModel

from batchleaf.records.written import InventoryWritten, ProjectWritten, SeriesFileWritten

KINDS: Final[dict[str, type[BaseModel]]] = {
    "project": ProjectWritten,
    "inventory": InventoryWritten,
    "series": SeriesFileWritten,
}
"""Kind of record → its model; the kinds name the schema files."""

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_SPOKEN: Final = ["string", "number", "boolean"]


def schema_of(kind: str) -> dict[str, Any]:
    """The schema of one kind of record. Raises :class:`KeyError` for an unknown kind."""
    schema = _as_editors_read(KINDS[kind].model_json_schema(by_alias=True))
    return {"$schema": DIALECT, **schema}


def _as_editors_read(schema: Any) -> Any:
    if isinstance(schema, list):
        return [_as_editors_read(item) for item in schema]
    if not isinstance(schema, dict):
        return schema
    if "anyOf" in schema:
        # An optional key is left out, never written without a value.
        schema = {**schema, **next(one for one in schema["anyOf"] if one != {"type": "null"})}
        del schema["anyOf"]
    read = {key: _as_editors_read(value) for key, value in schema.items() if key != "default"}
    if schema.get("default") not in (None, [], {}):
        read["default"] = schema["default"]
    if read.get("type") == "string" and "enum" not in read and "const" not in read:
        read["type"] = _SPOKEN
    if read.get("const") == "1":
        del read["const"]
        read |= {"type": _SPOKEN, "enum": ["1", 1]}
    return read
