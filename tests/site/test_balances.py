"""What the drawer's pages say is on hand, held against a second sum over the demo's records.

Opening + purchases - uses, set right by counts: of whole units and of the odd pieces of each size,
at the end of each day on which something moved. The sum (``tests/summing``) reads the YAML itself
and shares no code with what makes the pages; a line that it does not know fails it.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any, Final, NamedTuple

import pytest
import yaml

from browsing import SVG, Served, parsed, texts_of
from summing.batches import moves_of
from summing.records import Drawer, Move, positions
from summing.supplies import Size, Supply, matched

ROOT: Final = Path(__file__).parents[2]
KINDS: Final = {"opening", "bought", "cut", "kept", "used", "packed", "stuck", "gone", "counted"}
OPEN: Final = {"half full": "5", ", low": "25", "one low": "25"}
Trees = dict[str, Any]
Holding = tuple[str, Size | None]


# --- the sum -------------------------------------------------------------------


class Sum:
    """All that the records say moved, added up.

    ``days``: what there was of each supply (piece None) and of its odd pieces at the end of a day
    on which any of it moved. ``less``: the counts that found less than was expected.
    """

    def __init__(self, trees: Trees) -> None:
        self.drawer = Drawer([tree for path, tree in trees.items() if path.startswith("inventory/")])
        designs = {Path(path).stem: tree for path, tree in trees.items() if path.startswith("designs/")}
        batches = [tree for path, tree in trees.items() if path.endswith("/project.yml")]
        self.moves = self.drawer.moves + [
            one for each in batches for one in moves_of(each, designs, self.drawer)
        ]
        self.days: dict[Holding, dict[str, Fraction]] = defaultdict(dict)
        self.less: list[Move] = []
        self._now: dict[Holding, Fraction] = defaultdict(Fraction)
        for move in sorted(self.moves, key=self._in_order):
            self._add(move)

    def _in_order(self, move: Move) -> tuple[str, bool, bool]:
        """Counts at the end of a day, and those of a whole pad after those of its papers."""
        return move.day, move.kind == "counted", bool(self.drawer.supplies[move.supply].papers)

    def _add(self, move: Move) -> None:
        """A paper of a pad lies in the pad, and moves both."""
        supply, piece = self.drawer.supplies[move.supply], move.piece
        change = self._found(move) if move.kind == "counted" else move.quantity
        for slug in filter(None, (move.supply, supply.pad)):
            self._now[slug, piece] += change
            for holding in ((slug, None), (slug, piece)):
                self.days[holding][move.day] = self._now[holding]

    def _found(self, move: Move) -> Fraction:
        """By how much a count moves; a rough one by nothing within a fifth of the expected, or within one."""
        pad = self.drawer.supplies[move.supply].pad
        if pad and not move.piece:
            numbered = sum(
                (self._now[paper, None] for paper in self.drawer.supplies[pad].papers), Fraction(0)
            )
            assert numbered == self._now[pad, None], "sheets without a number are more than the sum knows of"
        expected = self._now[move.supply, move.piece]
        change = move.quantity - expected
        if move.about and abs(change) <= max(expected / 5, Fraction(1)):
            return Fraction(0)
        self.less += [move] if change < 0 else []
        return change


# --- the pages -----------------------------------------------------------------


class Shown(NamedTuple):
    """The page of a supply: on hand after each day and now, its kept pieces, and its sentence."""

    days: dict[str, str]
    total: str
    pieces: Counter[Size]
    sentence: str


def shown_on(path: Path, supply: Supply) -> Shown:
    """What a page shows; where nothing moved it has no table."""
    page = parsed(path)
    tables = [one for one in page.iter("table") if "moves" in one.get("class", "").split()]
    rows = [row for table in tables for body in table.iter("tbody") for row in body.iter("tr")]
    feet = [foot for table in tables for foot in table.iter("tfoot")]
    kept = [one for one in page.iter(f"{SVG}desc") if one.get("id") == "kept-drawing-words"]
    return Shown(
        {row.find(".//time").get("datetime"): _text(row.find("td[@data-head='On hand']")) for row in rows},
        next((_text(foot.find(".//td[@class='r']")) for foot in feet), "0"),
        sum((_pieces(one.text, supply) for one in kept), Counter()),
        next(_text(one) for one in page.iter("p") if "sentence" in one.get("class", "").split()),
    )


def _text(element: Any) -> str:
    return "".join(texts_of(element)).replace("\xa0", " ").strip()


def _pieces(drawn: str, supply: Supply) -> Counter[Size]:
    """``4 of 4 × 16 and 1 of 4 × 13 in.``"""
    said, unit = matched(r"(.+) (mm|in)\.", drawn.replace("\xa0", " ").replace("×", "x"))
    found = [supply.pieces(one, unit) for one in re.split(", | and ", said)]
    return Counter({size: int(count) for size, count in found})


def in_words(sentence: str) -> tuple[str, int]:
    """How much a sentence says there is, and how many kept pieces: ``a bottle, half full`` is 0.5."""
    kept = re.search(r"(\d+) kept piece", sentence)
    there = re.search(r"([\d,.]+)(?: \w+)? on hand", sentence)
    full = re.search(r"(\d+) full \w", sentence)
    opened = next((part for word, part in OPEN.items() if word in sentence), "0")
    return there[1] if there else f"{full[1] if full else 0}.{opened}", int(kept[1]) if kept else 0


def fits(shown: str, value: Fraction | int) -> bool:
    """Whether a number is the one shown, to the last place shown."""
    number, places = matched(r"(\d+(?:\.(\d+))?)", shown.replace(",", ""))
    return abs(Fraction(number) - value) <= Fraction(1, 2 * 10 ** len(places))


def differences(summed: Sum, pages: dict[str, Shown]) -> Iterator[str]:
    """Where a page says otherwise than the sum."""
    for slug, page in pages.items():
        days = summed.days.get((slug, None), {})
        now = [Fraction(0), *days.values()][-1]
        pieces = {
            piece: [*there.values()][-1] for (of, piece), there in summed.days.items() if of == slug and piece
        }
        if days.keys() != page.days.keys():
            yield f"{slug}: moved on {sorted(days)}, and the page has {sorted(page.days)}"
        for day in days.keys() & page.days.keys():
            if not fits(page.days[day], days[day]):
                yield f"{slug}: {days[day]} on {day}, and the page says {page.days[day]}"
        whole, kept = in_words(page.sentence)
        if not (fits(page.total, now) and fits(whole, now)):
            yield f"{slug}: {now} on hand, and the page says {page.total} and “{page.sentence}”"
        if {piece: count for piece, count in pieces.items() if count} != page.pieces or kept != sum(
            pieces.values()
        ):
            yield f"{slug}: pieces {pieces}, and the page says {page.pieces} and “{page.sentence}”"


# --- what is held to be true -----------------------------------------------------


@pytest.fixture(name="trees", scope="module")
def _trees() -> Trees:
    """Every record of the demo as YAML gives it, each scalar a text."""
    projects = ROOT / "projects"
    read = {path: yaml.load(path.read_bytes(), yaml.BaseLoader) for path in projects.rglob("*.yml")}
    return {path.relative_to(projects).as_posix(): tree for path, tree in read.items()}


@pytest.fixture(name="pages", scope="module")
def _pages_of(demo_site: Served, trees: Trees) -> dict[str, Shown]:
    """Every page of the drawer but its first."""
    supplies = Sum(trees).drawer.supplies
    drawer = demo_site.folder / "drawer"
    return {
        path.parent.name: shown_on(path, supplies[path.parent.name]) for path in drawer.glob("*/index.html")
    }


def test_every_page_of_the_drawer_says_what_the_records_add_up_to(
    trees: Trees, pages: dict[str, Shown]
) -> None:
    """Each supply, and each paper of a pad: on hand after each day, now, and its odd pieces."""
    summed = Sum(trees)
    assert set(pages) == set(summed.drawer.supplies)
    assert list(differences(summed, pages)) == []


def test_no_line_of_the_records_is_passed_over(trees: Trees) -> None:
    """Every key and every line was looked at; each kind of them moved something; a count found less."""
    summed = Sum(trees)
    files = [tree for path, tree in trees.items() if path != "series.yml"]
    there = [line for tree in files for line in positions(tree).items()]
    assert [line for position, line in there if position not in summed.drawer.seen] == []
    assert Counter(move.kind for move in summed.moves).keys() == KINDS
    assert summed.less
    # Of settings the demo has none: a length without a unit is in mm, and all days are told of.
    settings = yaml.load((ROOT / "mkdocs.yml").read_bytes(), yaml.BaseLoader)
    assert {"batchleaf": {"licence": "CC-BY-4.0"}} in settings["plugins"]


def test_a_line_left_out_would_be_noticed(trees: Trees, pages: dict[str, Shown]) -> None:
    """Without any one line that moves something the sum is another than the pages."""
    left_out = list(unnoticed(trees, pages))
    assert left_out == []


def moving_lists(tree: Any) -> Iterator[list[str]]:
    """The lists of a record of which each line moves something."""
    for key, below in (
        tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    ):
        if key == "rates":
            continue  # what the post asks moves nothing
        if key in ("lines", "scraps", "cut", "packing"):
            yield below
        else:
            yield from moving_lists(below)


def unnoticed(trees: Trees, pages: dict[str, Shown]) -> Iterator[str]:
    """The lines without which the sum would be the same."""
    for path, tree in trees.items():
        for lines in moving_lists(tree if tree.get("status") != "planned" else {}):
            for at in range(len(lines)):
                line = lines.pop(at)
                if not any(differences(Sum(trees), pages)):
                    yield f"{path}: {line}"
                lines.insert(at, line)
