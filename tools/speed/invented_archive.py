"""An invented archive of any number of batches: YAML records and pictures, the same at every run.

A maker of many years is imagined, who has some layouts and makes each of them again and again, of
other papers and in other numbers; so the jobs repeat as in a true archive, and few are quite new.
"""

from __future__ import annotations

import datetime as dt
import io
import random
from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from PIL import Image

SEED: Final = 41
FIRST_DAY: Final = dt.date(1996, 1, 6)
DAYS: Final = 11_000
PICTURES: Final = 12
SHEETS: Final = ((210, 297), (305, 305), (216, 279), (200, 200))
MAKES: Final = (6, 8, 10, 12, 16, 20)
NAMES: Final = ("alder", "birch", "cress", "dock", "elder", "fern", "gorse", "heath", "iris", "juniper")
OCCASIONS: Final = ("birthday", "wedding", "thank you", "new home", "winter")
NOTES: Final = (
    "The morning was grey and the paper lay flat, which it does not always do in this room.",
    "I cut all bases first, then the mats, and left the narrow strips for the end of the table.",
    "Twice the trimmer drifted to the left; a strip of tape along the rule put an end to it.",
    "What was left of the patterned sheets went into the drawer under the window for tags.",
    "If I make these again I shall turn the panel a quarter, so that the stripe runs with the fold.",
)


@dataclass(frozen=True)
class Layout:
    """A thing that is made again and again: its base and the parts on it, mm."""

    thing: str
    base: str
    cut: tuple[tuple[int, int], ...]
    """The base as it is cut, then its parts."""


def layouts(count: int, dice: random.Random) -> list[Layout]:
    """Cards, folded cards and tags."""
    found = []
    for number in range(count):
        width, height = dice.randrange(90, 150, 5), dice.randrange(90, 150, 5)
        inner = tuple((width - less, height - less) for less in (10, 24)[: 1 + number % 2])
        match number % 3:
            case 0:
                found.append(Layout("card", f"card {width} x {height}", ((width, height), *inner)))
            case 1:
                flat = (2 * width, height)
                found.append(Layout("card", f"card {flat[0]} x {height}, side fold", (flat, *inner)))
            case _:
                wide = width // 2
                tag = f"tag {wide} x {height} mm, hole 5 top, down 10"
                found.append(Layout("tag", tag, ((wide, height), (wide - 12, height // 2))))
    return found


def per_sheet(sheet: tuple[int, int], part: tuple[int, int]) -> int:
    """How many parts a plain grid gives: never more than there are."""
    across, along = sheet
    return max((across // wide) * (along // high) for wide, high in (part, part[::-1]))


def write_archive(folder: Path, batches: int, seed: int = SEED) -> None:
    """Lay the archive out in ``folder``, which is made."""
    dice = random.Random(seed)
    projects = folder / "projects"
    inventory = projects / "inventory"
    inventory.mkdir(parents=True)
    (folder / "site_src").mkdir()
    papers = {
        f"{NAMES[n % len(NAMES)]}-paper-{n}": SHEETS[n % len(SHEETS)] for n in range(16 + batches // 25)
    }
    known = layouts(8 + batches // 25, dice)
    pictures = _pictures()
    series = [f"series-{number}" for number in range(1 + batches // 20)]
    needed: Counter[tuple[str, int]] = Counter()
    for number in range(batches):
        on = FIRST_DAY + dt.timedelta(days=number * DAYS // batches)
        layout = dice.choice(known)
        chosen = _papers_for(layout, papers, dice)
        makes = dice.choice(MAKES)
        cut = {
            paper: -(-makes // per_sheet(papers[paper], part))
            for paper, part in zip(chosen, layout.cut, strict=True)
        }
        if number < batches - max(1, batches // 100):
            for paper, sheets in cut.items():
                needed[paper, on.year] += sheets
            status = "published" if number % 10 else "made"
        else:
            status = "planned"
        place = projects / f"batch-{number:05}"
        place.mkdir()
        record = _record(number, on, status, dice.choice(series), layout, chosen, makes, cut, dice)
        (place / "project.yml").write_text(record, encoding="utf-8")
        (place / "notes.md").write_text("\n\n".join(dice.sample(NOTES, 3)) + "\n", encoding="utf-8")
        (place / "cover.jpg").write_bytes(pictures[number % PICTURES])
    (projects / "series.yml").write_text(_series(series), encoding="utf-8")
    (inventory / "papers.yml").write_text(_supplies(papers, dice), encoding="utf-8")
    (inventory / "orders.yml").write_text(_orders(needed), encoding="utf-8")
    (folder / "mkdocs.yml").write_text(CONFIG, encoding="utf-8")


CONFIG: Final = """site_name: A bench of many years
site_url: https://example.org/many/
docs_dir: site_src
theme:
  name: material
plugins:
  - search
  - batchleaf
"""


def _papers_for(layout: Layout, papers: dict[str, tuple[int, int]], dice: random.Random) -> list[str]:
    """A paper for each part, all different, large enough."""
    chosen: list[str] = []
    for part in layout.cut:
        fitting = [name for name, sheet in papers.items() if name not in chosen and per_sheet(sheet, part)]
        chosen.append(dice.choice(fitting))
    return chosen


def _record(
    number: int,
    on: dt.date,
    status: str,
    series: str,
    layout: Layout,
    papers: list[str],
    makes: int,
    cut: dict[str, int],
    dice: random.Random,
) -> str:
    name = f"{NAMES[number % len(NAMES)].capitalize()} {layout.thing}s {number}"
    parts = [
        f"  {letter} layer {letter.lower()}: {size[0]} x {size[1]}, {paper}"
        for letter, size, paper in zip("BCD", layout.cut[1:], papers[1:], strict=False)
    ]
    lines = [
        f"title: {name}",
        f"date: {on}",
        f"series: {series}",
        f"status: {status}",
        f"thing: {layout.thing}, {layout.thing}s",
        f"occasion: {dice.choice(OCCASIONS)}",
        f"makes: {'0 of ' if status == 'planned' else ''}{makes}",
        f"base: {layout.base}",
        "papers:",
        f"  base: {papers[0]}",
        "parts:",
        *parts,
        "tools: [long-trimmer]",
        "supplies: [cotton-thread 300 mm]" if layout.thing == "tag" else "supplies: [paper-tape 240 mm]",
    ]
    if status != "planned":
        sheets = [f"  - {paper} {count} sheet{'s' if count > 1 else ''}" for paper, count in cut.items()]
        lines += ["cut:", *sheets, f"time: {dice.randrange(1, 4)} h {dice.randrange(10, 55)}"]
    lines += [
        "steps:",
        "  - 0:30 Cut the bases, then the layers, each paper with one setting after the other.",
        f"  - 2:0{number % 10} Stick the layers one on the other, the smallest last.",
        "  - 4:10 Lay them under a board for an hour.",
    ]
    return "\n".join(lines) + "\n"


def _series(slugs: list[str]) -> str:
    heads = [f"  {slug}:\n    title: Series {number}\n" for number, slug in enumerate(slugs)]
    return "series:\n" + "".join(heads)


def _supplies(papers: dict[str, tuple[int, int]], dice: random.Random) -> str:
    found = [
        f"  {slug}:\n    name: {slug.replace('-', ' ')}\n"
        f"    kind: {'card' if at % 2 else 'patterned paper'}\n"
        f"    size: {sheet[0]} x {sheet[1]} mm\n    weight: {dice.randrange(80, 240, 10)} g/m²\n"
        f'    colour: "#{dice.randrange(1 << 24):06x}"\n'
        for at, (slug, sheet) in enumerate(papers.items())
    ]
    return "supplies:\n" + "".join(found) + SMALL_THINGS


SMALL_THINGS: Final = """\
  paper-tape:
    name: paper tape
    kind: adhesive
    unit: m
  cotton-thread:
    name: cotton thread
    kind: cord and thread
    unit: m
tools:
  long-trimmer:
    name: the long trimmer
    kind: trimmer
    longest: 310 mm
"""


def _orders(needed: Counter[tuple[str, int]]) -> str:
    """Each year's papers are bought on its first day, with one sheet to spare; the small things too."""
    lines = ["purchases:"]
    for year in sorted({year for _, year in needed}):
        lines += [f"  - date: {year}-01-01", "    from: a paper fair", "    lines:"]
        lines += ["      - paper-tape 2000 m, 90.00", "      - cotton-thread 500 m, 12.00"]
        for (paper, when), sheets in sorted(needed.items()):
            if when == year:
                money = sheets * 40 + 40
                lines.append(f"      - {paper} {sheets + 1} sheets, {money // 100}.{money % 100:02}")
    return "\n".join(lines) + "\n"


def _pictures() -> list[bytes]:

    found = []
    for number in range(PICTURES):
        picture = Image.linear_gradient("L").resize((1200, 900)).rotate(number * 30, expand=False)
        shifted = picture.point([(one + 20 * number) % 256 for one in range(256)])
        coloured = Image.merge("RGB", (picture, shifted, picture))
        kept = io.BytesIO()
        coloured.save(kept, "JPEG", quality=80)
        found.append(kept.getvalue())
    return found
