"""The plugin's settings, with a maker's sentence for each that is off.

What MkDocs itself says of a wrong setting is for programmers, so nothing is
refused while it reads them: the mistakes are kept, and told when the settings
are asked for.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Final

from mkdocs.config import config_options as c
from mkdocs.config.base import BaseConfigOption, Config, ConfigErrors, ConfigWarnings, ValidationError

from batchleaf.measure.colours import Colour
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.measure.licences import Licence
from batchleaf.measure.money import Currency
from batchleaf.records.grammar import read_date
from batchleaf.records.other_sheets import read_other_sheets
from batchleaf.records.shape_problems import did_you_mean, one_of

FILE: Final = "mkdocs.yml"
OF_MKDOCS: Final = frozenset({"enabled"})
"""What MkDocs reads of every plugin's settings."""
LEAST_TEXT: Final = 500
"""Characters: the sentence of a batch, its address and a credit have room in it."""
_CALLED: Final = {"unit": "unit"}
"""What a wrong value is said not to be, where that is more than a choice."""


class CurrencyCode(c.Type[str]):
    """A code of ISO 4217."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no currency, in the words of its reader."""
        try:
            return Currency.of(super().run_validation(value)).code
        except MeasureError as error:
            raise ValidationError(str(error)) from None


class ColourOfLook(c.Type[str]):
    """A colour as six figures after a #, in quotes."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no colour, in the words of its reader."""
        try:
            return str(Colour.of(super().run_validation(value)))
        except MeasureError as error:
            raise ValidationError(str(error)) from None


class DayOf(BaseConfigOption[str]):
    """A day, year first; nothing where it is left out."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no day, in the words of its reader; YAML takes some days for dates."""
        if value is None:
            return ""
        try:
            return read_date(value.isoformat() if isinstance(value, dt.date) else str(value)).isoformat()
        except MeasureError as error:
            raise ValidationError(str(error)) from None


class LicenceOf(BaseConfigOption[str]):
    """A licence by its short name; nothing where it is left out."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no licence, in the words of its reader."""
        if value is None or value == "":
            return ""
        try:
            return Licence.of(str(value)).id
        except MeasureError as error:
            raise ValidationError(str(error)) from None


class Characters(c.OptionallyRequired[int]):
    """How long a text may be."""

    def run_validation(self, value: object) -> int:
        """Refuses what is no whole number, and one that no text keeps to."""
        if not isinstance(value, int) or isinstance(value, bool) or value < LEAST_TEXT:
            said = _as_written(value)
            raise ValidationError(
                f"“{said}” is no length of a text; write how many characters it may have, at least"
                f" {LEAST_TEXT}"
            )
        return value


class SizeOf(c.Type[str]):
    """A width and a height with their unit."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no size, in the words of its reader."""
        text = super().run_validation(value)
        try:
            parse_size(text, Unit.MM)
        except MeasureError as error:
            raise ValidationError(str(error)) from None
        return text


class SheetsOf(c.Type[str]):
    """Sizes of sheets by name or with their unit, or none."""

    def run_validation(self, value: object) -> str:
        """Refuses what is no size, in the words of its reader."""
        text = super().run_validation(value)
        try:
            read_other_sheets(text, Unit.MM)
        except MeasureError as error:
            raise ValidationError(str(error)) from None
        return text


sheets_named: Final = read_other_sheets
"""Reads the sizes that :class:`SheetsOf` has let pass."""


class ToldSettings(Config):
    """Settings whose mistakes are sentences; the default stands where one is wrong."""

    mistakes: tuple[str, ...] = ()

    def validate(self) -> tuple[ConfigErrors, ConfigWarnings]:
        """Read every setting, also after one that is wrong; MkDocs is told of none."""
        self.mistakes = (*self._unknown(), *self._wrong())
        return [], []

    def check(self) -> None:
        """Raises :class:`MeasureError` with all mistakes, one a line, where there are some."""
        if self.mistakes:
            raise MeasureError(f"\n{FILE}: ".join(self.mistakes))

    def _unknown(self) -> Iterator[str]:
        known = [key for key, _ in self._schema if key not in OF_MKDOCS]
        for key in self.keys() - {*known, *OF_MKDOCS}:
            hint = did_you_mean(str(key), known) or f"; the settings are {', '.join(known)}"
            yield f"“{key}” is no setting of batchleaf{hint}"

    def _wrong(self) -> Iterator[str]:
        for key, option in self._schema:
            value = self.get(key)
            if value is None and isinstance(option, ColourOfLook):
                self[key] = option.default
                yield f'“{key}” is empty; write it in quotes, like "{option.default}": # begins a remark'
                continue
            if isinstance(option.default, str) and isinstance(value, bool | int | float):
                value = _as_written(value)
            try:
                self[key] = option.validate(value)
            except ValidationError as error:
                self[key] = option.default
                yield _sentence(key, option, value, str(error))


def _as_written(value: object) -> str:
    """YAML takes some words for something else than text; quotes would have kept them."""
    return str(value) if not isinstance(value, bool) else "yes" if value else "no"


def _sentence(key: str, option: BaseConfigOption[object], value: object, said: str) -> str:
    if isinstance(value, list | dict):
        found = "a list" if isinstance(value, list) else "a group of keys"
        return f"“{key}” takes one value, and {found} stands here"
    wrong = f"“{_as_written(value)}” is no {_CALLED.get(key, f'choice for {key}')}"
    if isinstance(option, c.Choice):
        return f"{wrong}; write {one_of(option.choices)}"
    return f"{wrong}; write true or false" if isinstance(option.default, bool) else said
