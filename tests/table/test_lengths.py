"""The page reads and shows lengths as the records' readers do."""

from __future__ import annotations

import random
from collections.abc import Iterator
from fractions import Fraction
from typing import Final

import pytest
from playwright.sync_api import Browser, Page

from batchleaf.measure.display import show_size
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_size
from table.laid_out import lay_out_table

READ: Final = """(asked) => asked.map(([text, unit]) => {
  try {
    const {width, height} = lengths.readSize(text, unit);
    return [width, height].map((one) => `${one.top}/${one.bottom}`);
  } catch (error) {
    if (!(error instanceof NoMeasure)) throw error;
    return error.message;
  }
})"""


@pytest.fixture(scope="module")
def reader(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """The page, opened from a folder, whose scripts read."""
    context = browser.new_context()
    opened = context.new_page()
    opened.goto(lay_out_table(tmp_path_factory.mktemp("table")).as_uri())
    yield opened
    context.close()


WRITTEN: Final = [
    "8 1/2 x 11", "8-1/2 x 11", "8½ × 11", "8 ½×11¼ in", "8½x11”", "8.5 by 11 in", "5½ in x 210 mm",
    "21 x 29.7 cm", "44 x 70", "44x70mm", ".5 x 1 in", "6 X 4", "6*4", "3⅓ x 2⅞", "1⁄2 x 1", "8–1/2 x 11",
    "12'' x 12''", "4 1/4\u00a0x 5", "11/2 x 5", "17/2 x 11", "4/4 x 3", "7/1 x 3", "1/0 x 3", "8,5 x 11",
    "-3 x 4", "−3 x 4", "0 x 4", "x", "", "8", "8 x", "8 x 9 x 10", "8 ells x 3", "1000000 x 3",
    "99999999 x 3", "1e9 x 3", "8 x 1/2/3", "0.1 x 5 in", "0.001 x 5 in", "٣ x 4", "constructor x 3",
    "3 toString x 3", "8 . 5 x 3", "100001 x 5", "3 1/4 1/2 x 5", "8. x 3", "1/3 x 1/3",
]  # fmt: skip


def _expected(text: str, unit: Unit) -> list[str] | str:
    try:
        size = parse_size(text, unit)
    except MeasureError as error:
        # A record names its unit in a line of its own; a field of the page has no such line.
        return str(error).replace("is “unit: in” missing, or “in” after it?", "is “in” missing after it?")
    return [f"{one.numerator}/{one.denominator}" for one in (size.width, size.height)]


def _check(reader: Page, asked: list[tuple[str, Unit]]) -> int:
    found = reader.evaluate(READ, [[text, unit.value] for text, unit in asked])
    for (text, unit), read in zip(asked, found, strict=True):
        expected = _expected(text, unit)
        if isinstance(expected, str) and "like 44 x 70" in expected and unit is Unit.INCH:
            expected = expected.replace("like 44 x 70", "like 8 1/2 x 11")
        assert read == expected, (text, unit)
    return sum(isinstance(read, list) for read in found)


@pytest.mark.parametrize("unit", [Unit.INCH, Unit.MM, Unit.CM])
def test_sizes_are_read_and_refused_alike(reader: Page, unit: Unit) -> None:
    """Exactly the same lengths; what is none is told in the same sentence."""
    assert _check(reader, [(text, unit) for text in WRITTEN]) > 15


def test_any_text_is_read_alike(reader: Page) -> None:
    """Two thousand texts of figures, signs and words that look like sizes."""
    draw = random.Random(11)
    marks = [*"0123456789" * 2, *" /.-½¼⅞x×", " x ", " in", " mm", "cm", "”", ",", " by ", "1/2", " 3/4"]
    texts = ["".join(draw.choices(marks, k=draw.randint(1, 9))) for _ in range(1000)]
    texts += [f"{_length(draw)} x {_length(draw)}" for _ in range(1000)]
    assert _check(reader, [(text, draw.choice([Unit.INCH, Unit.MM, Unit.CM])) for text in texts]) > 500


def _length(draw: random.Random) -> str:
    bottom = draw.choice([2, 3, 4, 5, 7, 8, 16, 32, 64, 100])
    forms = [f"{draw.randint(1, 400)}", f"{draw.randint(1, 40)} {draw.randint(1, bottom - 1)}/{bottom}"]
    forms.append(f"{draw.randint(1, 40)}.{draw.randint(0, 9999):04d}")
    return draw.choice(forms) + draw.choice(["", "", " in", " mm", " cm"])


def test_lengths_are_shown_alike_whatever_they_are(reader: Page) -> None:
    """A thousand lengths that no rule has a mark for are cut off as the house cuts them off.

    What lies below the finest mark is told to be under it, and not to be nothing.
    """
    draw = random.Random(12)
    lengths = [2 + Fraction(draw.randint(1, 10**6), draw.randint(1, 5000)) for _ in range(1000)]
    for unit in (Unit.INCH, Unit.MM, Unit.CM):
        shown = reader.evaluate(
            """([asked, unit]) => asked.map(([top, bottom]) => {
                 const width = fractions.of(BigInt(top), BigInt(bottom));
                 return lengths.showSize({width, height: fractions.of(9n, 1n)}, unit);
               })""",
            [[[one.numerator, one.denominator] for one in lengths], unit.value],
        )
        assert shown == [show_size(Size(one, Fraction(9)), unit) for one in lengths]
