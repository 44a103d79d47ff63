"""The film of a batch, at the maker's own address."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

SECONDS: Final = "{seconds}"
"""Where the time goes, in an address that names the place."""


@dataclass(frozen=True, slots=True)
class Film:
    """``address`` as the maker wrote it, perhaps with :data:`SECONDS` in it."""

    address: str

    @property
    def start(self) -> str:
        """Where the film begins."""
        return self.at(0) if SECONDS in self.address else self.address

    def at(self, seconds: int) -> str:
        """Where it shows a moment.

        Where the address has no place for the time, as a temporal fragment (W3C, Media
        Fragments URI 1.0, section 4.2.1): ``#t=65``.
        """
        if SECONDS in self.address:
            return self.address.replace(SECONDS, str(seconds))
        return f"{self.address}#t={seconds}"
