"""Nodes to a record as written, or one located sentence for each thing that is off."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from typing import Any, TypeVar, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from batchleaf.facts import Problem
from batchleaf.records.nodes import Listing, Mapping, Node, Path, Scalar, child, key_place, place_of, plain

M = TypeVar("M", bound=BaseModel)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """``; did you mean “papers”?`` where something known is close, else nothing."""
    close = get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f"; did you mean “{close[0]}”?" if close else ""


def shaped(node: Node, model: type[M], called: str) -> tuple[M | None, tuple[Problem, ...]]:
    """The node as ``model``; ``called`` names the record in sentences ("a batch")."""
    if not isinstance(node, Mapping):
        return None, (Problem(node.place, f"{called} is written as keys with values, like “title: …”"),)
    try:
        return model.model_validate(plain(node)), ()
    except ValidationError as error:
        details = error.errors(include_url=False, include_context=True)
        return None, tuple(_problem(node, model, detail) for detail in details)


def _problem(node: Node, model: type[BaseModel], detail: ErrorDetails) -> Problem:
    path: Path = tuple(detail["loc"])
    if path and path[-1] == "[key]":
        path = path[:-1]
        return Problem(key_place(node, path), _bad_slug(str(path[-1])))
    key = str(path[-1]) if path else ""
    match detail["type"]:
        case "extra_forbidden":
            known = _keys(model, path[:-1])
            hint = did_you_mean(key, known) or f"; the keys here are {', '.join(known)}"
            return Problem(key_place(node, path), f"“{key}” is not a key of this record{hint}")
        case "missing":
            return Problem(place_of(node, path[:-1]), f"“{key}” is missing here")
        case _:
            return Problem(place_of(node, path), _wrong_value(_at(node, path), path, detail))


def _wrong_value(value: Node | None, path: Path, detail: ErrorDetails) -> str:
    named = _named(path)
    context: dict[str, Any] = detail.get("ctx", {})
    match detail["type"]:
        case "literal_error":
            said = value.text if isinstance(value, Scalar) else ""
            choices = _choices(str(context["expected"]))
            if path[-1] == "format":
                return f"this record is in format {said or '?'}; this Batchleaf reads format 1"
            hint = did_you_mean(said, choices)
            return f"“{said}” is not a choice for {named}; write {_or(choices)}{hint}"
        case "string_pattern_mismatch":
            return _bad_slug(value.text if isinstance(value, Scalar) else "")
        case "string_too_short":
            return f"{named} is empty; write a value or leave the key out"
        case "string_too_long":
            return f"{named} is longer than {context['max_length']} letters; longer text goes into notes.md"
        case "too_short":
            return f"{named} is an empty list; write an item or leave the key out"
        case "string_type":
            return f"{named} takes one line of text, and {_kind(value)} stands here"
        case "list_type":
            return f"{named} takes a list, each item on its own line after “- ”"
        case "dict_type" | "model_type":
            return f"{named} takes lines of “name: value”, and {_kind(value)} stands here"
        case other:
            return f"{named} cannot be read ({other.replace('_', ' ')})"


def _bad_slug(text: str) -> str:
    better = "-".join("".join(c if c.isascii() and c.isalnum() else " " for c in text.lower()).split())
    hint = f"; write “{better}”" if better else ""
    return f"“{text}” cannot be an address; small letters, figures and single hyphens can{hint}"


def _at(node: Node, path: Path) -> Node | None:
    found: Node | None = node
    for step in path:
        if found is None:
            return None
        found = child(found, step)
    return found


def _named(path: Path) -> str:
    """``“size” of “B water strip”``: the last key, with the one above it where that helps."""
    words = [str(step) for step in path if isinstance(step, str)]
    if not words:
        return "this record"
    return f"“{words[-1]}”" if len(words) == 1 else f"“{words[-1]}” of “{words[-2]}”"


def _kind(value: Node | None) -> str:
    match value:
        case Listing():
            return "a list"
        case Mapping():
            return "a group of keys"
        case Scalar(text=text) if text.strip():
            return f"“{text}”"
    return "nothing"


def _choices(expected: str) -> list[str]:
    return [word.strip(" '") for word in expected.replace(" or ", ",").split(",")]


def _or(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def _keys(model: type[BaseModel], path: Path) -> list[str]:
    """The keys that may stand at ``path`` of a record."""
    annotation: Any = model
    for step in path:
        if isinstance(annotation, type) and issubclass(annotation, BaseModel):
            annotation = _fields(annotation).get(str(step))
        else:
            annotation = get_args(annotation)[-1] if get_origin(annotation) in (dict, list) else None
        annotation = _without_none(annotation)
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return list(_fields(annotation))
    return []


def _fields(model: type[BaseModel]) -> dict[str, Any]:
    return {field.alias or name: field.annotation for name, field in model.model_fields.items()}


def _without_none(annotation: Any) -> Any:
    members = [member for member in get_args(annotation) if member is not type(None)]
    return members[0] if type(None) in get_args(annotation) else annotation
