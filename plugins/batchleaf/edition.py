"""The two editions of a site, and how a build is told which one to make."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Final

VARIABLE: Final = "BATCHLEAF_EDITION"
"""The environment variable that names the edition to MkDocs, which hands no options on to a plugin."""


class Edition(StrEnum):
    """Both are made from the same records."""

    PRIVATE = "private"
    """Everything, for the maker's own machine."""
    PUBLIC = "public"
    """What others may see."""

    @property
    def folder(self) -> str:
        """Where it stands in an archive."""
        return {Edition.PRIVATE: "site", Edition.PUBLIC: "public"}[self]


def edition_in(environment: Mapping[str, str]) -> Edition:
    """The edition that is asked for; the private one where nothing is said.

    Raises :class:`ValueError` for a word that is neither.
    """
    asked = environment.get(VARIABLE) or Edition.PRIVATE.value
    if asked not in [edition.value for edition in Edition]:
        raise ValueError(f"{VARIABLE} says “{asked}”; say private or public, or leave it out")
    return Edition(asked)
