"""Records that nobody wrote, drawn from the models of records themselves.

The models are walked, and what stands under their keys is taken from their own
examples and from sound records, so that a new key is tried without being named here.
"""

from __future__ import annotations

import copy
from functools import cache, partial
from typing import Annotated, Any, Final, Literal, get_args, get_origin

from hypothesis import strategies as st
from pydantic import BaseModel

from batchleaf.records.kinds import KINDS
from batchleaf.records.written import Written, fields_at
from records.odd_texts import HOSTILE, Draw, as_often, edited, hostile, short_texts
from records.seeds import (
    Files,
    home_of,
    keys_under,
    kind_in,
    sound_archives,
    texts_under,
    tree_in,
    trees,
    words,
)
from records.yaml_writing import manners, written_as

Tree = Any
"""Texts, lists, dicts and ``None``, as YAML holds them."""
DEEPEST: Final = 5


@cache
def _texts_for(key: str, examples: tuple[str, ...], pattern: str) -> st.SearchStrategy[str]:
    """Mostly what belongs under ``key``, and what fits a pattern where the model has one."""
    fitting = st.sampled_from([*examples, *texts_under().get(key, ())] or list(texts_under()[""]))
    near = fitting.flatmap(edited)
    shaped = st.from_regex(pattern, fullmatch=True) if pattern else near
    return as_often(fitting, fitting, fitting, near, near, shaped, short_texts())


@cache
def wild() -> st.SearchStrategy[Tree]:
    """Any small tree: the wrong kind wherever it stands."""
    leaf = st.sampled_from([None, "", "-", "x"]) | short_texts()
    few = st.lists(leaf, max_size=2) | st.dictionaries(_names(), leaf, max_size=2)
    return leaf | few | st.lists(few, max_size=2) | st.dictionaries(_names(), few, max_size=2)


@cache
def _names() -> st.SearchStrategy[str]:
    return st.sampled_from([*keys_under(), *HOSTILE])


@cache
def value_of(model: type[BaseModel], key: str, depth: int = 0) -> st.SearchStrategy[Tree]:
    """A value for a key of a model, by the model's own account of it."""
    field = fields_at(model, ())[key]
    examples = tuple(one for one in field.examples or () if isinstance(one, str))
    return _value(field.annotation, key, examples, tuple(field.metadata), depth)


def _value(
    annotation: Any, key: str, examples: tuple[str, ...], metadata: tuple[Any, ...], depth: int
) -> st.SearchStrategy[Tree]:
    members = [one for one in get_args(annotation) if one is not type(None)]
    match get_origin(annotation):
        case origin if origin is Annotated:
            return _value(members[0], key, examples, (*metadata, *members[1:]), depth)
        case origin if origin is Literal:
            return st.sampled_from([str(one) for one in members])
        case origin if origin is list:
            return st.lists(_value(members[0], key, examples, (), depth), max_size=4)
        case origin if origin is dict:
            names = st.sampled_from(keys_under().get(key, words())) | _value(members[0], "", (), (), depth)
            return st.dictionaries(names, _value(members[1], key, examples, (), depth), max_size=4)
    if members:
        return _value(members[0], key, examples, metadata, depth)
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return _one_of(annotation, depth + 1)
    patterns = [getattr(one, "pattern", None) for one in metadata]
    return _texts_for(key, examples, next(filter(None, patterns), ""))


def _one_of(model: type[BaseModel], depth: int) -> st.SearchStrategy[Tree]:
    """A piece of a record key by key, or as one line where it may be one."""
    lines = model.SHORT if issubclass(model, Written) else ()
    by_key = record_of(model, depth)
    return by_key if not lines else as_often(by_key, _texts_for("", lines, ""))


@st.composite
def record_of(draw: Draw, model: type[BaseModel], depth: int = 0) -> dict[str, Tree]:
    """A piece of a record with the keys that must be there and some that may."""
    fields = fields_at(model, ())
    optional = [key for key, field in fields.items() if not field.is_required()]
    most = min(8, len(optional)) if depth < DEEPEST else 0
    chosen = draw(st.lists(st.sampled_from(optional), max_size=most, unique=True)) if most else []
    keys = [key for key, field in fields.items() if field.is_required() or key in chosen]
    return {key: draw(value_of(model, key, depth)) for key in keys}


def _spots(tree: Tree, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The way to each value of a tree."""
    inner = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    return [path, *(spot for step, value in inner for spot in _spots(value, (*path, step)))]


@st.composite
def changed(draw: Draw, model: type[BaseModel], tree: Tree) -> Tree:
    """A sound record in which a few values are others, are gone, or came to it."""
    tree = copy.deepcopy(tree)
    for kind in draw(st.sampled_from(_CHANGES)):
        *path, last = draw(st.sampled_from(_spots(tree)[1:] or [(0,)]))
        above = tree
        for step in path:
            above = above[step]
        if above and isinstance(above, (dict, list)):
            own = model_at(model, tuple(path)) if isinstance(above, dict) else None
            _change(draw, kind, own, above, last)
    return tree


_CHANGES: Final = (
    *[("edit",)] * 4,
    ("edit", "edit"),
    ("edit", "edit", "gone", "twice", "new"),
    ("new", "renamed", "text", "odd", "wild"),
    ("odd",) * 12,
)
"""What happens to one record; most slips are small, and reading goes on after any."""


def _change(draw: Draw, kind: str, model: type[BaseModel] | None, above: Any, last: Any) -> None:
    match kind:
        case "gone":
            del above[last]
        case "twice" if isinstance(above, list):
            above.insert(last, copy.deepcopy(above[last]))
        case "new" if model:
            key = draw(st.sampled_from(sorted(fields_at(model, ()))))
            above[key] = draw(value_of(model, key))
        case "renamed" if isinstance(above, dict):
            above[draw(_names() | edited(last))] = above.pop(last)
        case "text":
            above[last] = draw(short_texts())
        case "odd":
            above[last] = draw(hostile())
        case "wild":
            above[last] = draw(wild())
        case _ if isinstance(above[last], str) and draw(st.booleans()):
            above[last] = draw(edited(above[last]))
        case _ if model and last in fields_at(model, ()):
            above[last] = draw(value_of(model, last))
        case _ if isinstance(above[last], str):
            above[last] = draw(edited(above[last]))


def model_at(model: type[BaseModel], path: tuple[Any, ...]) -> type[BaseModel] | None:
    """The model of what stands at ``path`` of a record, if it is one with keys of its own."""
    annotation: Any = model
    for step in path:
        if isinstance(annotation, type) and issubclass(annotation, BaseModel):
            field = fields_at(annotation, ()).get(str(step))
            annotation = field.annotation if field else None
        else:
            annotation = (get_args(annotation) or (None,))[-1]
        if type(None) in get_args(annotation):
            annotation = get_args(annotation)[0]
    return annotation if isinstance(annotation, type) and issubclass(annotation, BaseModel) else None


@cache
def trees_of(kind: str) -> st.SearchStrategy[Tree]:
    """A record of a kind: a sound one with a few changes, one from the model alone, now and then none."""
    model = KINDS[kind].model
    fresh = record_of(model)
    if not trees(kind):
        return fresh | wild()
    near = st.sampled_from(trees(kind)).flatmap(partial(changed, model))
    return as_often(*[near] * 9, fresh, fresh, wild())


# --- archives --------------------------------------------------------------------

_NAMES: Final = (*["more", "wren-two"] * 4, "no slug", "CON", "nul", "é")
_PICTURES: Final = ("cover.jpg", "cover.png", "02-label.jpg", "99-late.webp", "a.heic", "notes.md")


@st.composite
def archives_near(draw: Draw) -> Files:
    """A sound archive in which one or two records are others or came to it."""
    files = dict(draw(st.sampled_from(sound_archives())))
    for _ in range(draw(st.sampled_from([1, 1, 2]))):
        own = sorted(path for path in files if kind_in(path))
        new = [home_of(kind, name) for kind in sorted(KINDS) for name in _NAMES]
        path = draw(st.sampled_from([*own * 12, *new]))
        kind, own_tree = kind_in(path), tree_in(files.get(path, b""))
        if own_tree and draw(st.integers(0, 4)):
            tree = draw(changed(KINDS[kind].model, own_tree))
        else:
            tree = draw(trees_of(kind))
        files[path] = written_as(tree, draw(manners())).encode()
    if draw(st.integers(0, 9)) == 9:
        folder = draw(st.sampled_from(sorted(files))).rpartition("/")[0]
        files[f"{folder}/{draw(st.sampled_from(_PICTURES))}"] = b"x"
    return files
