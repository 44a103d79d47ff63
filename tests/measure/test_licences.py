"""Licences by their short names."""

from __future__ import annotations

import re

import pytest

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.licences import IDS, Licence


@pytest.mark.parametrize(
    ("text", "name", "deed"),
    [
        ("CC-BY-4.0", "CC BY 4.0", "https://creativecommons.org/licenses/by/4.0/"),
        ("cc by-nc-sa 3.0", "CC BY-NC-SA 3.0", "https://creativecommons.org/licenses/by-nc-sa/3.0/"),
        (" CC BY-ND 2.5 ", "CC BY-ND 2.5", "https://creativecommons.org/licenses/by-nd/2.5/"),
        ("CC0-1.0", "CC0 1.0", "https://creativecommons.org/publicdomain/zero/1.0/"),
    ],
)
def test_a_licence_has_a_name_and_a_deed(text: str, name: str, deed: str) -> None:
    """The names and addresses that creativecommons.org gives them."""
    licence = Licence.of(text)
    assert (licence.name, licence.deed) == (name, deed)


@pytest.mark.parametrize(
    "text", ["", "all mine", "CC", "CC-BY", "CC-BY-5.0", "CC-BY-SA-ND-4.0", "MIT", "CC0"]
)
def test_other_words_are_refused(text: str) -> None:
    """A licence that nobody can look up helps no reader."""
    with pytest.raises(MeasureError, match="is no licence of Creative Commons; write its short name"):
        Licence.of(text)


def test_every_licence_reads_back() -> None:
    """By its short name and by the one that is shown; no two share a deed."""
    assert len({Licence.of(one).deed for one in IDS}) == len(IDS)
    for one in IDS:
        assert Licence.of(one).id == Licence.of(Licence.of(one).name).id == one
        assert re.fullmatch(
            r"https://creativecommons\.org/[a-z-]+/[a-z-]+/[0-9]\.[0-9]/", Licence.of(one).deed
        )
