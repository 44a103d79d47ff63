"""What ``base`` says: ``card A6, side fold``, ``box 60 x 60 x 30, lid 15``.

A measured size is that of the blank, unless it “folds to” it; a named one is that
of the finished piece, and the three measures of a box are those of the box.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Fold, Score, folded_size
from batchleaf.facts.shapes import RECTANGLE, Shape
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import (
    FRACTION_SIGNS,
    MM_PER_INCH,
    Size,
    Unit,
    parse_length,
    parse_lengths,
    parse_size,
    unit_named,
)
from batchleaf.records.around import Around, read_around
from batchleaf.records.cut_to_shape import belongs_to_hole, fitted, is_meant_so, read_features
from batchleaf.records.folds import (
    FOLD_WORDS,
    Blank,
    Form,
    blank_size,
    box_blank,
    read_form,
    scores_of,
    unfolded,
)
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.standard_sizes import NAMED, OWN, envelope_of

LID_ROOM: Final = {Unit.MM: Fraction(3, 2), Unit.CM: Fraction(3, 2), Unit.INCH: MM_PER_INCH / 16}
"""How much longer and wider than the box its lid is, in mm: common practice."""
CARD_MAKERS: Final = {
    "a2": "; a card for an A2 envelope is quarter-letter",
    "a9": "; a card for an A9 envelope is half-letter",
}
FLAT: Final = Form(Fold.NONE)


@dataclass(frozen=True, slots=True)
class BaseLine:
    """The thing, its blank, and how that is folded; ``ready``: the blank is bought as it is."""

    thing: str
    size: Size
    fold: Fold = Fold.NONE
    scores: tuple[Score, ...] = ()
    lid: Blank | None = None
    ready: bool = False
    around: Around | None = None
    """What it goes round, where it is a sleeve, a slipcase or a cover."""
    shape: Shape = RECTANGLE
    """That of the finished piece, as it stands."""

    @property
    def finished_size(self) -> Size:
        """The size once folded; of a box with a lid that of the lid, which stands out."""
        outermost = self.lid or Blank(self.size, self.scores)
        return folded_size(outermost.size, outermost.scores, self.fold)

    @property
    def folded_size(self) -> Size:
        """The face that is seen, and that a shape is cut from."""
        return folded_size(self.size, self.scores, self.fold)

    @property
    def height(self) -> Fraction | None:
        """How high a box stands, closed, or how thick a sleeve, in mm, without the thickness of its card."""
        if self.around:
            return self.around.height
        if self.fold is not Fold.BOX:
            return None
        return max(piece[0].at for piece in (self.scores, self.lid.scores if self.lid else ()) if piece)

    def room_of(self, blank: Blank) -> Fraction | None:
        """How much larger than what goes in the lid is, or what goes round; ``None`` for all other pieces."""
        if self.around:
            return self.around.room
        if self.lid != blank:
            return None
        bottom, lid = (folded_size(one.size, one.scores, Fold.BOX) for one in (self, self.lid))
        return lid.width - bottom.width

    @property
    def envelope(self) -> str:
        """The usual envelope of a standard size; what stands open or is a box goes in none."""
        return "" if self.fold is Fold.TENT or self.height is not None else envelope_of(self.finished_size)


@dataclass(frozen=True, slots=True)
class _Words:
    """What stands after the measures, each by its kind, as written; empty where nothing is."""

    form: str = ""
    lid: str = ""
    room: str = ""
    ready: str = ""


_BETWEEN_WORDS: Final = re.compile(r"(?<![0-9]),|,(?![0-9])")
"""A comma between two figures is a decimal comma, which the reader of lengths tells of."""
_MEASURED: Final = re.compile(
    rf"(?P<thing>[^0-9{FRACTION_SIGNS}.]+?)\s+(?P<measures>[0-9{FRACTION_SIGNS}.].*)"
)
_FOLDED: Final = re.compile(r"(?P<thing>\S.*?)\s+folds\s+to\s+(?P<measures>\S.*)", re.IGNORECASE)
_KIND: Final = re.compile(
    r"(?P<ready>ready-made)|(?P<lid>lid\b.*)|(?P<room>room\b.*)|(?P<form>.+)", re.IGNORECASE
)


def read_base(text: str, unit: Unit) -> BaseLine:
    """``bookmark 50 x 180 mm`` · ``card A6, top fold`` · ``tag, rounded 6`` · ``box 60 x 60 x 30, lid 15``.

    Raises :class:`MeasureError` with a sentence.
    """
    what, *rest = (piece.strip() for piece in _BETWEEN_WORDS.split(text))
    _check_comma(what)
    others, shape = _apart(rest)
    base = _unshaped(what, others, unit)
    return (
        replace(base, shape=fitted(read_features(shape, unit), base.folded_size, base.fold, unit))
        if shape
        else base
    )


def _apart(pieces: Sequence[str]) -> tuple[list[str], str]:
    """What is said of the fold and the like, and what of the shape."""
    others: list[str] = []
    shape: list[str] = []
    for piece in pieces:
        to_hole = shape and shape[-1] and belongs_to_hole(piece)
        (shape if is_meant_so(piece) or to_hole else others).append(piece)
    return others, ", ".join(shape)


def _unshaped(what: str, pieces: Sequence[str], unit: Unit) -> BaseLine:
    if around := read_around(what, pieces, unit):
        blank = around.blank
        return BaseLine(around.thing, blank.size, around.fold, blank.scores, around=around)
    words = _words(pieces)
    if folded := _FOLDED.fullmatch(what):
        return _by_finished(what, folded["thing"], folded["measures"], words, unit)
    if measured := _MEASURED.fullmatch(what):
        return _measured(what, measured["thing"], measured["measures"], words, unit)
    _check_no_lid(what, words)
    thing, finished = _named(what)
    form = read_form(words.form) if words.form else FLAT
    return _flat_base(thing, blank_size(finished, form), form, words)


def _by_finished(what: str, thing: str, measures: str, words: _Words, unit: Unit) -> BaseLine:
    """What it measures once folded, and how it is folded."""
    _check_no_lid(what, words)
    if not words.form:
        raise MeasureError(f"“{what}” does not say how it folds; write for example {what}, side fold")
    form = read_form(words.form)
    return _flat_base(thing, unfolded(parse_size(measures, unit), form), form, words)


def _check_says_fold(what: str, thing: str, words: _Words) -> None:
    """A thing that is called folded, and lies flat as far as the record says."""
    bare = re.sub(r"\b(?:(?:gate|side|top|half)[ -]?)?fold(?:ed|ing)?\b", " ", thing, flags=re.IGNORECASE)
    if bare != thing and not words.form:
        example = f"{' '.join(bare.split()) or 'card'} 8 1/2 x 5 1/2 in, side fold"
        raise MeasureError(
            f"“{what}” does not say how it folds; write for example {example}, with the size before folding"
        )


def _check_comma(what: str) -> None:
    fold = next((word for word in FOLD_WORDS if what.lower().endswith(f" {word}")), "")
    if fold:
        raise MeasureError(
            f"“{what}” has no comma before the fold; write {what[: -len(fold)].strip()}, {fold}"
        )


def _words(pieces: Sequence[str]) -> _Words:
    said: dict[str, str] = {}
    for piece in filter(None, pieces):
        found = _KIND.fullmatch(piece)
        kind = str(found.lastgroup) if found else "form"
        if kind in said:
            twice = "are two folds" if kind == "form" else "say one thing twice"
            raise MeasureError(f"“{said[kind]}” and “{piece}” {twice}; leave one out")
        said[kind] = piece
    return _Words(**said)


def _flat_base(thing: str, blank: Size, form: Form, words: _Words) -> BaseLine:
    return BaseLine(thing, blank, form.fold, scores_of(blank, form), ready=bool(words.ready))


def _measured(what: str, thing: str, measures: str, words: _Words, unit: Unit) -> BaseLine:
    match parse_lengths(measures, unit):
        case (length, width, height):
            return _box(thing, box_blank(Size(length, width), height), words, unit_named(measures) or unit)
        case (width, height):
            _check_no_lid(what, words)
            if re.search(r"\bbox$", thing, re.IGNORECASE) and not words.form:
                raise MeasureError(
                    f"“{what}” has no height; write length, width and height, like box 60 x 60 x 30"
                )
            _check_says_fold(what, thing, words)
            form = read_form(words.form) if words.form else FLAT
            return _flat_base(thing, Size(width, height), form, words)
    raise MeasureError(
        f"“{measures}” is not a size; write two lengths with x between, like 44 x 70, or three for a box"
    )


def _check_no_lid(what: str, words: _Words) -> None:
    """Only a box has a lid, and only a lid has room."""
    if words.lid or words.room:
        raise MeasureError(
            f"“{words.lid or words.room}” is for a box, and “{what}” is none;"
            " a box has three measures, like box 60 x 60 x 30, lid 15"
        )


def _box(thing: str, bottom: Blank, words: _Words, unit: Unit) -> BaseLine:
    if words.form:
        raise MeasureError(f"a box is scored on all four sides; leave out “{words.form}”")
    if words.room and not words.lid:
        raise MeasureError(f"“{words.room}” is the room in a lid, and there is none; write lid 15 before it")
    lid = _lid(folded_size(bottom.size, bottom.scores, Fold.BOX), words, unit) if words.lid else None
    return BaseLine(thing, bottom.size, Fold.BOX, bottom.scores, lid, ready=bool(words.ready))


def _lid(bottom: Size, words: _Words, unit: Unit) -> Blank:
    """A shallow box that goes over the other with a little room."""
    room = _after_word(words.room, unit) if words.room else LID_ROOM[unit]
    return box_blank(Size(bottom.width + room, bottom.height + room), _after_word(words.lid, unit))


def _after_word(text: str, unit: Unit) -> Fraction:
    """The length after ``lid`` or ``room``."""
    word, _, length = text.partition(" ")
    if not length:
        raise MeasureError(f"“{text}” has no measure; write for example {word} {15 if word == 'lid' else 2}")
    return parse_length(length, unit)


def _named(what: str) -> tuple[str, Size]:
    """The thing and its finished size by name: ``card A6``, ``gift tag``."""
    thing, _, last = what.rpartition(" ")
    if size := NAMED.get(last.lower()):
        if thing:
            return thing.strip(), size
        raise MeasureError(f"“{what}” does not say what it is; write for example card {what}")
    if own := OWN.get(last.lower()):
        return what, own
    if re.match(rf"[0-9{FRACTION_SIGNS}.]", what):
        raise MeasureError(f"“{what}” does not say what it is; write for example card {what}")
    hint = CARD_MAKERS.get(last.lower()) or did_you_mean(last.lower(), [*NAMED, *OWN])
    names = ", ".join(NAMED)
    raise MeasureError(
        f"“{what}” has no size{hint or f'; write its measures, like bookmark 50 x 180, or one of {names}'}"
    )
