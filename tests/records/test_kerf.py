"""What a blade takes away comes to a batch from the tools that it names."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from records.test_cases import laid_out, read

ARCHIVE = """\
=== projects/inventory/drawer.yml
supplies:
  chalk-card: {{name: chalk card, kind: card, size: 210 x 297}}
tools:
  knife: {{name: the knife, kind: craft knife}}
  thin-saw: {{name: the thin saw, kind: saw, kerf: 1 mm}}
  thick-saw: {{name: the thick saw, kind: saw, kerf: 1/16 in}}
=== projects/cards/project.yml
title: Cards
date: 2026-03-14
makes: 1
base: card A6
papers:
  base: chalk-card
tools: [{tools}]
cut:
  - chalk-card 1 sheet
=== told
"""


@pytest.mark.parametrize(
    ("tools", "kerf"),
    [("", 0), ("knife", 0), ("knife, thin-saw", 1), ("thin-saw, thick-saw", Fraction(127, 80))],
)
def test_a_batch_loses_what_its_thickest_blade_takes(tools: str, kerf: Fraction, tmp_path: Path) -> None:
    """Nothing where none of them says so."""
    laid_out(ARCHIVE.format(tools=tools), tmp_path)
    (cards,) = read(tmp_path).archive.projects
    assert cards.kerf == kerf
