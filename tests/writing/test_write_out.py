"""The long form of a record means exactly what the short one means."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path
from typing import Any, Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts import Settings, Weight
from batchleaf.measure.lengths import WRITTEN, Unit
from batchleaf.measure.money import Currency
from batchleaf.records.archive import Reading, read_archive
from batchleaf.records.bases import read_base
from batchleaf.records.explaining.archive import explained
from batchleaf.records.explaining.bases import spelt_base
from batchleaf.writing.block import entry
from batchleaf.writing.write_out import written_out

DEMO = Path(__file__).parents[2] / "projects"
SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
BASES: Final = (
    "bookmark 50 x 180 mm",
    "card A6, side fold",
    "card quarter-letter, top fold",
    "card a7, gate fold",
    "place card A7, tent",
    "card 400 x 100, accordion of 5",
    "gift tag",
    "box 60 x 60 x 30, lid 15",
    "gift box 3 x 2 1/2 x 1 1/4 in, lid 1/2 in, room 1/16 in",
    "box 60 x 80 x 20",
)


@pytest.mark.parametrize("base", BASES)
@pytest.mark.parametrize("unit", WRITTEN)
def test_a_base_spelt_out_is_the_same_base(base: str, unit: Unit) -> None:
    """Names and folds turn into measures, and read back the same wherever another unit counts."""
    read = read_base(base, Unit.MM)
    assert read_base(spelt_base(read, unit), Unit.INCH) == read


def _read(root: Path) -> Reading:
    reading = read_archive(root / "projects", SETTINGS)
    assert [one.sentence for one in reading.problems if one.weight is Weight.ERROR] == []
    return reading


def _written_out(root: Path) -> Reading:
    """What the archive in ``root`` was, after all of its records are written out."""
    short = _read(root)
    for one in explained(short, SETTINGS):
        file = root / one.file
        long = written_out(file.read_bytes().decode(), one.node, one.understood)
        file.write_bytes(long.encode())
    return short


def _same_in_full(root: Path) -> None:
    short = _written_out(root)
    long = _read(root)
    assert long.archive == short.archive
    assert {one.file: one.understood for one in explained(long, SETTINGS) if one.understood} == {}


def test_the_demo_written_out_means_the_same(tmp_path: Path) -> None:
    """Every record of the demo with all its defaults written out gives the same facts, and leaves nothing."""
    shutil.copytree(DEMO, tmp_path / "projects")
    _same_in_full(tmp_path)


DRAWER: Final = """\
stick: paper-tape
supplies:
  paper-tape: {name: tape, kind: adhesive, unit: ft, sticks: two long sides}
  foam-square: {name: foam, kind: adhesive, sticks: 1 per 20 x 30}
  bench-glue:
    name: glue
    kind: adhesive
    unit: ml
    sticks: 1 ml per 1 x 1 in
  clear-bag: {name: bags, kind: bags, unit: bag}
  chalk-card:
    name: chalk card
    kind: card
    size: 305 x 305
    mark: 5
    weight: 240
    opening:
      date: 2026-01-01
      amount: 9
      scraps: [60 x 80, 2 of 4 x 9 in]
  oat-card: {name: oat card, kind: card, size: 8 1/2 x 11 in, back: plain}
  shoal-pad:
    name: shoal pad
    kind: patterned paper
    size: 200 x 200
    designs: 6 x 2
    front: fish, one-way
    trim: top 6
    sale: handmade only, the back of the pad, 2026-01-02
  star-sticker: {name: star, kind: stickers, size: 18 x 18, mark: 1}
  jute-cord: {name: cord, kind: cord, unit: m}
  box-tie: {name: ties, kind: cord}
tools:
  tide-words:
    name: tide words
    kind: stamps
    images:
      - 30 x 8 high water
      - slack tide
  leaf-dies: {name: leaves, kind: dies}
  trimmer: {name: trimmer, kind: trimmer, longest: 310, narrowest: 1/4 in}
purchases:
  - date: 2026-01-12
    lines:
      - chalk-card 12, 7.20
      - shoal-pad 1 pad, 8.40
      - box-tie 1, gift
counts:
  - date: 2026-09-30
    found: [chalk-card 7, shoal-pad about 9]
"""
DESIGN: Final = """\
title: Strip
unit: in
base: card quarter-letter, side fold
credit: a friend, https://example.org/strip
supplies: [jute-cord 10 in, box-tie 2]
packing: [clear-bag per 5, jute-cord 8 in]
stick: foam-square
tools: [trimmer]
steps: [Cut, '1:05 Fold']
parts:
  mat: border 1/4
  C strip:
    size: 3 x 1/2
    paper: water
    each: 2
    stamp: tide-words 1
    stick: bench-glue 1/2 ml
"""
SOURCES: Final = st.sampled_from(
    ["water", "chalk-card", "as A", "scraps of oat-card", "shoal-pad 1 3", "any 2 of shoal-pad", "sand"]
)
SIZES: Final = st.sampled_from(["20 x 30", "1 x 1 1/2 in", "25.5 x 20", "20 x 28 mm"])
MEASURES: Final = st.one_of(
    SIZES.map(lambda size: {"size": size}), st.sampled_from(["1 mm", "1/16 in"]).map(lambda b: {"border": b})
)
USUAL: Final = st.fixed_dictionaries(
    {},
    optional={
        "each": st.sampled_from(["1", "3"]),
        "extra": st.sampled_from(["0", "2"]),
        "side": st.sampled_from(["front", "back"]),
        "turn": st.sampled_from(["yes", "no"]),
        "stamp": st.sampled_from(["tide-words 1 2", "tide-words 2"]),
        "die": st.just("leaf-dies"),
        "on": st.just("A"),
        "stick": st.sampled_from(["foam-square", "foam-square 6", "bench-glue 2 ml", "nothing"]),
    },
)
LONG_PARTS: Final = st.builds(
    lambda measure, source, usual: measure | source | usual,
    MEASURES,
    st.one_of(SOURCES.map(lambda paper: {"paper": paper}), st.just({"ready": "star-sticker"})),
    USUAL,
)
SHORT_PARTS: Final = st.builds(
    lambda measure, source: ", ".join(filter(None, (measure, source))),
    st.one_of(SIZES, st.just("border 1 mm")),
    st.one_of(SOURCES, st.just("ready star-sticker")),
)
OWN_SIZE: Final = st.just({"ready": "star-sticker"})
KEYS: Final = st.sampled_from(["strip", "B mat", "water", "Z label", "sand", "C dot", "mat"])
PARTS: Final = st.one_of(LONG_PARTS, SHORT_PARTS, OWN_SIZE)


@st.composite
def batches(draw: st.DrawFn) -> dict[str, Any]:
    """The record of a batch without a mistake, of any shortness."""
    record: dict[str, Any] = {
        "title": "Tide",
        "date": "2026-03-14",
        "makes": draw(st.sampled_from(["4", "3 of 4"])),
    }
    if draw(st.booleans()):
        record["design"] = "strip"
    if "design" not in record or draw(st.booleans()):
        record["base"] = draw(st.sampled_from(BASES))
    record["papers"] = {
        "base": draw(st.sampled_from(["chalk-card", "oat-card"])),
        "water": draw(st.sampled_from(["chalk-card", "shoal-pad 2 5", "scraps of chalk-card"])),
        "sand": "oat-card, chalk-card",
        "mat": "oat-card",
    }
    parts = draw(
        st.dictionaries(KEYS, PARTS, max_size=3).filter(lambda parts: len({"mat", "B mat"} & set(parts)) < 2)
    )
    optional = {
        "unit": st.sampled_from(["mm", "cm"]),
        "status": st.sampled_from(["idea", "planned"]),
        "thing": st.sampled_from(["leaf, leaves", "card"]),
        "supplies": st.lists(
            st.sampled_from(
                ["jute-cord 140 mm", "box-tie 3", "jute-cord 2 m in all", "foam-square 3", "paper-tape"]
            ),
            unique=True,
        ),
        "stick": st.sampled_from(["bench-glue", "nothing"]),
        "packing": st.lists(
            st.sampled_from(["clear-bag", "clear-bag 2 per 4", "box-tie 3 in all", "jute-cord 1 m per 10"]),
            unique=True,
        ),
        "tools": st.lists(st.sampled_from(["trimmer", "leaf-dies"]), unique=True),
        "steps": st.lists(st.sampled_from(["Cut", "1:05 Fold"]), max_size=2),
        "credit": st.just("a neighbour"),
        "format": st.just("1"),
    }
    return record | {"parts": parts} | draw(st.fixed_dictionaries({}, optional=optional))


def _text(record: dict[str, Any]) -> str:
    filled = {key: value for key, value in record.items() if value not in ([], {})}
    return "".join(f"{line}\n" for key, value in filled.items() for line in entry(key, value, 0))


@pytest.mark.slow
@given(record=batches(), line_end=st.sampled_from(["\n", "\r\n"]))
def test_any_batch_written_out_means_the_same(record: dict[str, Any], line_end: str) -> None:
    """Explained, written out and read again: the same facts, and nothing left to explain."""
    with tempfile.TemporaryDirectory() as folder:
        projects = Path(folder) / "projects"
        for name, text in (
            ("inventory/drawer.yml", DRAWER),
            ("designs/strip.yml", DESIGN),
            ("tide/project.yml", _text(record)),
        ):
            (projects / name).parent.mkdir(parents=True)
            (projects / name).write_bytes(text.replace("\n", line_end).encode())
        _same_in_full(Path(folder))
