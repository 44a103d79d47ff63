"""Records made from the models: the least that each kind takes, and any that a maker might type."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal, get_args, get_origin

from hypothesis import strategies as st
from pydantic import BaseModel

from batchleaf.records.kinds import KINDS, Held, Key, keys_of, one_line_forms

NAME = "a-name"
"""Good for a role, a part and an address alike."""


def least(model: type[BaseModel]) -> dict[str, Any]:
    """The keys that must be there, as their first example says them."""
    needed = [key for key in keys_of(model) if key.field.is_required()]
    return {key.name: (key.field.examples or ["?"])[0] for key in needed}


class Site:
    """A place in a kind of record where keys may stand: the record itself, or what a key holds."""

    def __init__(self, kind: str, path: tuple[Key, ...] = ()) -> None:
        self.kind, self.path = kind, path
        self.root = KINDS[kind].model
        self.model = path[-1].below or self.root if path else self.root

    def __str__(self) -> str:
        return ".".join((self.kind, *(key.name for key in self.path)))

    def with_(self, inner: Any) -> dict[str, Any]:
        """A record with the least there must be, and ``inner`` at this place."""
        record = inner
        models = (self.root, *(key.below for key in self.path))
        for model, key in reversed(list(zip(models, self.path, strict=False))):
            held = {Held.NAMED: {NAME: record}, Held.LIST: [record], Held.ONE: record}[key.held]
            record = {**least(model or self.root), key.name: held}
        return dict(record)


def sites() -> Iterator[Site]:
    """Every place of every kind of record."""
    waiting = [Site(kind) for kind in KINDS]
    for site in waiting:
        yield site
        waiting += [Site(site.kind, (*site.path, key)) for key in keys_of(site.model) if key.below]


WORDS = [
    *("x", "44 x 70", "2026-03-14", "22 of 24", "yes", "no", "1", "22", "4.25", ".5", "0x1F", "1e3", "010"),
    *("true", "False", "null", "~", "a-slug", "A slug", "con", "1:05 Cut", "made", "mm", "", " ", "- x"),
]
TEXTS = st.sampled_from(WORDS) | st.text(max_size=6) | st.just("x" * 400 + "  ")


@st.composite
def records(draw: st.DrawFn, model: type[BaseModel]) -> Any:
    """What might be typed for ``model``: mostly sound, with up to three keys that need not be there."""
    keys = keys_of(model)
    chosen = draw(st.lists(st.sampled_from(keys), max_size=3, unique_by=lambda key: key.name))
    record = least(model)
    for key in chosen:
        examples = [st.sampled_from(key.field.examples)] if key.field.examples else []
        record[key.name] = draw(st.one_of(*examples, values(key.field.annotation)))
    if draw(st.integers(0, 19)) == 0:
        record[draw(TEXTS)] = draw(TEXTS)
    return record


def values(annotation: Any) -> st.SearchStrategy[Any]:
    """What might be typed where ``annotation`` is asked for."""
    members = [one for one in get_args(annotation) if one is not type(None)]
    origin = get_origin(annotation)
    if type(None) in get_args(annotation) or hasattr(annotation, "__metadata__"):
        return values(members[0])
    if origin is Literal:
        return st.sampled_from(members) | TEXTS
    if origin is list:
        return st.lists(values(members[0]), max_size=3)
    if origin is dict:
        return st.dictionaries(st.just(NAME) | TEXTS, values(members[1]), max_size=2)
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        forms = one_line_forms(annotation)
        return records(annotation) | (st.sampled_from(forms) | TEXTS if forms else st.nothing())
    return TEXTS
