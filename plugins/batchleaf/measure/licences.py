"""Licences of texts and pictures by the short names of SPDX.

Only those of Creative Commons, which are made for such works. The names are those of the SPDX
License List (3.x; from memory), the addresses of the deeds those of creativecommons.org.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Self

from batchleaf.measure.errors import MeasureError

_ZERO: Final = "CC0-1.0"
_TERMS: Final = ("BY", "BY-SA", "BY-NC", "BY-NC-SA", "BY-ND", "BY-NC-ND")
_VERSIONS: Final = ("4.0", "3.0", "2.5", "2.0")
IDS: Final = (*(f"CC-{terms}-{version}" for version in _VERSIONS for terms in _TERMS), _ZERO)
"""All that are known, the newest first."""


@dataclass(frozen=True, slots=True)
class Licence:
    """``id`` as in :data:`IDS`."""

    id: str

    @classmethod
    def of(cls, text: str) -> Self:
        """``CC-BY-4.0``, or ``CC BY 4.0`` as its own deed has it. Raises :class:`MeasureError`."""
        named = re.sub(r"\s+", "-", text.strip()).upper()
        if named not in IDS:
            raise MeasureError(
                f"“{text.strip()}” is no licence of Creative Commons; write its short name, like CC-BY-4.0 or"
                " CC0-1.0, or leave the setting out"
            )
        return cls(named)

    @property
    def name(self) -> str:
        """``CC BY-SA 4.0``."""
        if self.id == _ZERO:
            return "CC0 1.0"
        terms, _, version = self.id.removeprefix("CC-").rpartition("-")
        return f"CC {terms} {version}"

    @property
    def deed(self) -> str:
        """The page that says in plain words what it allows."""
        if self.id == _ZERO:
            return "https://creativecommons.org/publicdomain/zero/1.0/"
        terms, _, version = self.id.removeprefix("CC-").rpartition("-")
        return f"https://creativecommons.org/licenses/{terms.lower()}/{version}/"
