"""Nodes to a record as written, with one located sentence for each thing that is off."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final, Generic, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from batchleaf.facts import Problem
from batchleaf.records.nodes import Mapping, Node, Path, Plain, plain
from batchleaf.records.shape_problems import path_of, shape_problems
from batchleaf.records.written import fields_at

M = TypeVar("M", bound=BaseModel)
_STAND_IN: Final = "-"


@dataclass(frozen=True, slots=True)
class Shaped(Generic[M]):
    """A record as written, and what is wrong with its shape.

    Where something is wrong, ``written`` is the record with stand-ins in the
    faulty places: good for finding what else is wrong, and for nothing more.
    """

    written: M | None
    problems: tuple[Problem, ...]


def shaped(node: Node, model: type[M], called: str) -> Shaped[M]:
    """The node as ``model``; ``called`` names the record in sentences ("a batch")."""
    if not isinstance(node, Mapping):
        problem = Problem(node.place, f"{called} is written as keys with values, like “{_first(model)}: …”")
        return Shaped(None, (problem,))
    try:
        return Shaped(model.model_validate(plain(node)), ())
    except ValidationError as error:
        details = error.errors(include_url=False, include_context=True)
        return Shaped(_with_stand_ins(plain(node), model, details), shape_problems(node, model, details))


def _first(model: type[BaseModel]) -> str:
    """The first key that has to be there, else the first of all."""
    fields = {field.alias or name: field for name, field in model.model_fields.items()}
    return next((key for key, field in fields.items() if field.is_required()), next(iter(fields)))


def _with_stand_ins(tree: Plain, model: type[M], details: list[ErrorDetails]) -> M | None:
    """The record without its faulty values; a key that must be there gets its example."""
    for detail in details:
        path = path_of(detail)
        while path and isinstance(_at(tree, path[:-1]), str):
            path = path[:-1]  # a piece in one line is faulty as a whole
        if path:
            _mend(_at(tree, path[:-1]), path, model)
    try:
        return model.model_validate(tree)
    except ValidationError:
        return None


def _mend(above: Any, path: Path, model: type[BaseModel]) -> None:
    key = path[-1]
    if isinstance(above, list) and isinstance(key, int):
        above[key] = _STAND_IN
    elif isinstance(above, dict):
        above.pop(key, None)
        field = fields_at(model, path[:-1]).get(str(key))
        if field is not None and field.is_required():
            above[key] = (field.examples or [_STAND_IN])[0]


def _at(tree: Any, path: Path) -> Any:
    """What stands at ``path``; a text stays itself, however far the path goes on below it."""
    for step in path:
        if isinstance(tree, str):
            return tree
        try:
            tree = tree[step]
        except (KeyError, IndexError, TypeError):
            return None
    return tree
