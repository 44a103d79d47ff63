"""What is wrong with a record's shape, in a maker's words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from typing import Any, Final

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from batchleaf.facts import Problem
from batchleaf.records.addresses import DEVICES, why_no_address
from batchleaf.records.formats import is_retired, wrong_format
from batchleaf.records.nodes import Listing, Mapping, Node, Path, Scalar, child, key_place, place_of
from batchleaf.records.written import fields_at

LONGEST_QUOTE: Final = 120
"""Letters of a value that a sentence about it repeats."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """``; did you mean “papers”?`` where something known is close, else nothing."""
    close = closest(word, known)
    return f"; did you mean “{close}”?" if close else ""


def closest(word: str, known: Iterable[str]) -> str:
    """What is known and spelt nearly so, or nothing."""
    return next(iter(_close(word, known)), "")


def one_of(words: Iterable[str]) -> str:
    """``A, B or C``."""
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last


def _close(word: str, known: Iterable[str]) -> list[str]:
    return get_close_matches(word, list(known), n=1, cutoff=0.6)


def shorten(text: str) -> str:
    """A text as it is quoted in a sentence; nobody needs more of it to find it."""
    return text if len(text) <= LONGEST_QUOTE else f"{text[:LONGEST_QUOTE]}…"


def path_of(detail: ErrorDetails) -> Path:
    """The way to the faulty value; for a faulty key the way to that key."""
    path: Path = tuple(detail["loc"])
    return path[:-1] if _speaks_of_a_key(detail) else path


def _speaks_of_a_key(detail: ErrorDetails) -> bool:
    """The validator puts ``[key]`` behind the key, and a maker may write that as a key too."""
    return detail["loc"][1:][-1:] == ("[key]",) and detail["input"] == detail["loc"][-2]


def shape_problems(
    node: Node, model: type[BaseModel], details: Sequence[ErrorDetails]
) -> tuple[Problem, ...]:
    """A sentence for each thing that the validator found; a misspelt key is not missing besides."""
    meant = {
        (*path_of(detail)[:-1], close)
        for detail in details
        if detail["type"] == "extra_forbidden"
        for close in _close(str(path_of(detail)[-1]), fields_at(model, path_of(detail)[:-1]))
    }
    return tuple(
        _problem(node, model, detail)
        for detail in details
        if detail["type"] != "missing" or path_of(detail) not in meant
    )


def _problem(node: Node, model: type[BaseModel], detail: ErrorDetails) -> Problem:
    path = path_of(detail)
    if _speaks_of_a_key(detail):
        return Problem(key_place(node, path), _bad_slug(str(path[-1])))
    key = str(path[-1]) if path else ""
    match detail["type"]:
        case "extra_forbidden" if is_retired(path):
            sentence = f"“{key}” is no key of this record any more; the command upgrade rewrites it"
            return Problem(key_place(node, path), sentence)
        case "extra_forbidden":
            known = list(fields_at(model, path[:-1]))
            hint = did_you_mean(key, known) or f"; the keys here are {', '.join(known)}"
            return Problem(key_place(node, path), f"“{key}” is not a key of this record{hint}")
        case "missing":
            return Problem(place_of(node, path[:-1]), f"“{key}” is missing here")
    return Problem(place_of(node, path), _wrong_value(_value(node, path), path, detail))


def _wrong_value(value: Node | None, path: Path, detail: ErrorDetails) -> str:
    named = _named(path)
    said = shorten(value.text) if isinstance(value, Scalar) else ""
    context: dict[str, Any] = detail.get("ctx", {})
    match detail["type"]:
        case "literal_error" if path[-1] == "format":
            return wrong_format(said)
        case "literal_error":
            choices = _choices(str(context["expected"]))
            hint = did_you_mean(said, choices)
            return f"“{said}” is not a choice for {named}; write {one_of(choices)}{hint}"
        case "one_line_part" if not said.strip():
            return f"{named} is empty; write size and paper, like 44 x 70, water"
        case "one_line_part":
            return f"“{said}” does not begin with a size; write size and paper, like 44 x 70, water"
        case "one_line_comma":
            return f"“{said}” has no comma after the size; write {context['better']}"
        case "string_pattern_mismatch" | "device_name":
            return _bad_slug(said)
        case "string_too_short" if isinstance(path[-1], int):
            return f"an item of {named} is empty; write it or leave the line out"
        case "string_too_short":
            return f"{named} is empty; write a value or leave the key out"
        case "string_too_long":
            return f"{named} is longer than {context['max_length']} letters; longer text goes into notes.md"
        case "too_short":
            return f"{named} is an empty list; write an item or leave the key out"
        case "string_type" if isinstance(value, Mapping) and _first_key(value)[:1] in tuple("“”„‘’"):
            return 'curly quotes do not hold a line together; type straight ones, like "…"'
        case "string_type" if isinstance(path[-1], int) and isinstance(value, Mapping):
            return "a colon stands inside this line; put the whole line in quotes"
        case "string_type":
            return f"{named} takes one line of text, and {_kind(value)} stands here"
        case "list_type" if said.startswith("-"):
            return f"a space is missing after the dash of “{said}”"
        case "list_type":
            return f"{named} takes a list, each item on its own line after “- ”"
        case "dict_type" | "model_type":
            return f"{named} takes lines of “name: value”, and {_kind(value)} stands here"
        case other:
            return f"{named} cannot be read ({other.replace('_', ' ')})"


def _first_key(value: Mapping) -> str:
    return value.entries[0][0].text if value.entries else ""


def _bad_slug(text: str) -> str:
    if text in DEVICES:
        return why_no_address(text)
    better = "-".join("".join(c if c.isascii() and c.isalnum() else " " for c in text.lower()).split())
    hint = f"; write “{better}”" if better else ""
    return f"{why_no_address(text)}{hint}"


def _value(node: Node, path: Path) -> Node | None:
    found: Node | None = node
    for step in path:
        found = child(found, step) if found else None
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
            return f"“{shorten(text)}”"
    return "nothing"


def _choices(expected: str) -> list[str]:
    return [word.strip(" '") for word in expected.replace(" or ", ",").split(",")]
