"""What a page says in the unit of the record, joined with the same in the other unit.

Both are made by the same views from the same figures. They differ in lengths alone, so one is laid
upon the other, word for word; where they do not match, that of the record stands.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import TypeVar

from batchleaf.core.figures import BatchFigures
from batchleaf.views.drawing.shapes import Drawing, Label, Shape
from batchleaf.views.pages.pieces import InBoth

T = TypeVar("T")


def for_readers(batch: BatchFigures) -> BatchFigures:
    """The batch as if it were measured in the other unit."""
    return replace(batch, project=replace(batch.project, unit=batch.project.unit.for_readers))


def in_both(written: T, other: T) -> T:
    """``written``, whose texts know how they read in the other unit."""
    joined = _joined(written, other)
    return joined if isinstance(joined, type(written)) else written


def _joined(written: object, other: object) -> object:
    if type(written) is not type(other) or written == other:
        return written
    match written, other:
        case str(), str():
            return _text(written, other)
        case Drawing(), Drawing():
            return _drawing(written, other)
        case tuple(), tuple() if len(written) == len(other):
            return tuple(map(_joined, written, other))
    if is_dataclass(written) and not isinstance(written, type):
        changed = {
            one.name: _joined(getattr(written, one.name), getattr(other, one.name)) for one in fields(written)
        }
        return replace(written, **changed)
    return written


def _drawing(written: Drawing, other: Drawing) -> Drawing:
    """Its figures alone change where both units lay the drawing out alike; else there are two of it."""
    shapes = tuple(map(_shape, written.shapes, other.shapes))
    if _frame(written) != _frame(other) or len(written.shapes) != len(other.shapes) or None in shapes:
        return replace(written, other=replace(other, id=f"{other.id}-other"))
    return replace(
        written,
        title=_text(written.title, other.title),
        description=_text(written.description, other.description),
        shapes=tuple(one for one in shapes if one),
    )


def _frame(drawing: Drawing) -> tuple[float, ...]:
    return (drawing.x, drawing.y, drawing.width, drawing.height, drawing.scale)


def _shape(written: Shape, other: Shape) -> Shape | None:
    """``None`` where they lie elsewhere, or are not of one kind."""
    if isinstance(written, Label) and isinstance(other, Label):
        same_place = replace(other, text=written.text) == written
        return replace(written, text=_text(written.text, other.text)) if same_place else None
    return written if written == other else None


def _text(written: str, other: str) -> str:
    return written if written == other else InBoth.of(written, other)
