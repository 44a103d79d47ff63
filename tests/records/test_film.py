"""Where a film shows a moment."""

from __future__ import annotations

import re

import pytest

from batchleaf.records.film import read_film


@pytest.mark.parametrize(
    ("address", "start", "later"),
    [
        ("https://example.org/film", "https://example.org/film", "https://example.org/film#t=65"),
        (
            "https://example.org/w?f=a&at={seconds}",
            "https://example.org/w?f=a&at=0",
            "https://example.org/w?f=a&at=65",
        ),
        (
            "https://example.org/f#at={seconds}s",
            "https://example.org/f#at=0s",
            "https://example.org/f#at=65s",
        ),
    ],
)
def test_a_time_goes_behind_or_where_its_place_is(address: str, start: str, later: str) -> None:
    """Behind as a temporal fragment (Media Fragments URI 1.0): npt seconds after ``t=``."""
    film = read_film(address)
    assert (film.start, film.at(65)) == (start, later)
    assert "{" not in film.start + film.at(3600)


def test_a_fragment_is_that_of_the_recommendation() -> None:
    """``t=`` and seconds: section 4.2.1, whose first form has neither unit nor fraction."""
    fragment = read_film("http://example.org/film.webm").at(3760).partition("#")[2]
    assert re.fullmatch(r"t=[0-9]+", fragment)
