"""An archive in which everything that the public edition must not show bears a mark.

Records whose names begin with ``open`` are published, or used by what is; all others
belong to batches that are not. A mark is a word that begins with ``vexqu``, or a number
of :data:`NUMBERS`.
"""

from __future__ import annotations

from enum import Enum, auto
from pathlib import Path
from typing import Final

from PIL import Image

MARK: Final = "vexqu"
STATUSES: Final = ("idea", "planned", "cut", "made")


class Fate(Enum):
    """What becomes of a key's value in the public edition."""

    SHOWN = auto()
    """It may be shown where the batch is published, or uses what it belongs to."""
    NEVER = auto()
    """Neither it nor anything below it is shown, whatever it belongs to."""


FATES: Final[dict[str, dict[Fate, str]]] = {
    "project": {
        Fate.SHOWN: "title date format status series unit design makes thing base papers parts stick supplies"
        " packing collate tools bench cut youngest occasion time film steps photos credit notes was",
        Fate.NEVER: "went asks",
    },
    "part": {
        Fate.SHOWN: "size border on at paper ready side each extra turn shape oversize before stamp die stick"
    },
    "design": {
        Fate.SHOWN: "title format unit thing base parts stick supplies packing collate tools bench steps"
        " credit",
        Fate.NEVER: "roles sale about",
    },
    "inventory": {
        Fate.SHOWN: "format stick clearance supplies tools",
        Fate.NEVER: "purchases counts gone rates",
    },
    "supply": {
        Fate.SHOWN: "name kind size unit by sticks grain front back core see-through trim colour collection"
        " weight thickness weighs envelope sale link disclose about",
        Fate.NEVER: "designs pack mark opening",
    },
    "tool": {
        Fate.SHOWN: "name kind longest narrowest kerf stack grooves plate stroke images sale link disclose"
        " about"
    },
    "opening": {Fate.NEVER: "date amount worth scraps"},
    "order": {Fate.NEVER: "date from lines delivery"},
    "count": {Fate.NEVER: "date found"},
    "gone": {Fate.NEVER: "date why lines"},
    "rates": {Fate.NEVER: "date lines"},
    "series file": {Fate.SHOWN: "format series"},
    "series": {Fate.SHOWN: "title about"},
    "recipients file": {Fate.SHOWN: "format", Fate.NEVER: "people"},
    "recipient": {Fate.NEVER: "name sent"},
}
"""What a model is called → its keys by their fate. A new key has to be put here."""

FIXED: Final = {
    *("by", "format", "status", "unit", "grain", "see-through", "side", "turn", "on", "each"),
    *("disclose", "youngest"),
    *("clearance", "collate", "notes"),
}
"""Keys that take one of a few words, a letter or a small number: they can bear no mark."""

NUMBERS: Final = (
    *("13577", "13591", "13999", "1873.11", "1759.13", "1871.31", "1291.7", "1181.3", "17.31", "19.37"),
    *("583.19",),
    *("2347", "239 up to", "1987", "3907", "977", "7877", "6007.13", "1202.37", "719.53", "7919.37"),
    *("811.43", "7741", "7853", "3511.61", "1103.41", "1223", "31 h", "59:47", "#7e57a1"),
    *("600713.97", "351161.19", "110341.47"),
    *("4799.83", "6199.57"),
)
"""Marks in numbers, as they are written."""

BATCH: Final = """\
# vexqu-remark-{status}
title: Vexqu-title-{status}
date: 1987-03-1{day}
format: 1
status: {status}
series: {series}
unit: mm
design: {design}
makes: {makes}
thing: vexqu-thing-{status}, vexqu-things-{status}
base: card 1759.13 x 1291.7, side fold
papers:
  base: vexqu-card
  vexqu-role: vexqu-card
parts:
  B vexqu-part-{status}:
    size: 1181.3 x 17.31
    on: A
    at: top, down 17.31
    paper: vexqu-role
    side: back
    each: 1
    extra: 13577
    turn: no
    shape: pointed 583.19 left
    oversize: 17.31
    before: vexqu-before-{status}
    stamp: vexqu-stamps 1
    die: vexqu-dies 1
    stick: vexqu-foam 1223
  C vexqu-mat:
    border: 17.31
    on: A
    paper: vexqu-card
  D vexqu-star:
    ready: vexqu-star
stick: vexqu-tape
supplies:
  - vexqu-ribbon 1103.41 mm
  - open-ribbon 3 mm
packing:
  - vexqu-bag 1223 per 5
collate: B alike
tools: [vexqu-trimmer, open-trimmer]
bench:
  - punch B, vexqu-hole, between cuts, wait 31 h 07
  - ink C, vexqu-ribbon, dry 31 h 07
{cut}
time: 31 h 07
youngest: 18 months
occasion: vexqu-occasion-{status}
film: https://vexqu-film.example.org/?at={{seconds}}
steps:
  - 59:47 Vexqu-step-{status}.
photos:
  vexqu-photo.jpg: Vexqu-alt-{status}
{went}
asks: 6199.57
credit: vexqu-credit-{status}, https://example.org/vexqu-credit-link
notes: hand-out
was: [vexqu-old-{status}]
"""

RECORDS: Final = {
    "projects/open-cards/project.yml": """\
# vexqu-remark
title: Open cards
date: 2026-03-14
series: open-series
status: published
design: open-design
makes: 5 of 7
papers:
  base: open-card
  strip: open-pad 1 3
stick: open-tape
supplies:
  - open-ink
packing:
  - open-envelope
tools: [open-trimmer]
bench:
  - punch B, open-hole, open-ink, dry 12 min
cut:
  - open-card 4 sheets, kept 2 of 100 x 90
  - open-pad-1 1 sheet
  - open-pad-3 1 sheet
time: 2 h 10
film: https://open-film.example.org/
steps:
  - 1:05 Cut the open strips.
photos:
  cover.jpg: Five open cards
went:
  - 3 sold, 3511.61 each, vexqu-market, 1987-05-23
  - 2 given, vexqu-friend
asks: 4799.83
was: [open-things]
""",
    "projects/open-cards/notes.md": "Notes in the open.\n",
    "projects/designs/open-design.yml": """\
title: Open design
unit: mm
base: card 200 x 140, side fold
roles:
  base: vexqu-role-words
parts:
  B strip:
    size: 80 x 30
    paper: strip
    stamp: open-stamps 1
supplies:
  - open-ribbon 140 mm
credit: an open friend
sale: no, vexqu-design-sale, 1987-07-05
about: Vexqu-design-about.
""",
    "projects/designs/vexqu-design.yml": """\
format: 1
title: Vexqu-design-title
unit: mm
thing: vexqu-design-thing
base: card 1759.13 x 1291.7, side fold
roles:
  vexqu-role: vexqu-design-role
parts:
  B vexqu-design-part: 1181.3 x 17.31, vexqu-role
stick: vexqu-tape
supplies:
  - vexqu-ribbon 1103.41 mm
packing:
  - vexqu-bag 1223
collate: B alike
tools: [vexqu-trimmer]
bench:
  - punch B, vexqu-hole, wait 31 h 07
steps:
  - 59:47 Vexqu-design-step.
credit: vexqu-design-credit
sale: no, vexqu-design-sale, 1987-07-06
about: Vexqu-design-more.
""",
    "projects/series.yml": """\
format: 1
series:
  open-series:
    title: Open series
    about: Words about the open series.
  vexqu-series:
    title: Vexqu-series-title
    about: Vexqu-series-about.
""",
    "projects/recipients.yml": """\
# vexqu-recipients-remark
format: 1
people:
  open-vexqu-aunt:
    name: vexqu-sent-aunt
    sent:
      - 1987-06-11 9191 open-cards
      - 1987-06-13 vexqu-made
  vexqu-uncle:
    name: vexqu-sent-uncle
    sent:
      - 1987-06-12 8181 vexqu-made
""",
    "projects/inventory/open.yml": """\
supplies:
  open-card:
    name: open card
    kind: card
    size: 305 x 305 mm
    weight: 240 g/m²
    thickness: 0.3 mm
    about: Folds in the open.
    opening:
      date: 1987-01-02
      amount: 7877 sheets
      worth: about 600713.97
      scraps:
        - 2 of 1202.37 x 19.37 mm, worth 719.53
  open-pad:
    name: open pad
    kind: patterned paper
    size: 200 x 200 mm
    front: dots
    designs: 3 x 977
    opening:
      date: 1987-01-04
      amount: 1223 sheets
  open-ribbon:
    name: open ribbon
    kind: ribbon
    unit: m
    pack: 3907
    mark: 7741 m
  open-ink:
    name: open ink
    kind: ink
    unit: pad
    by: level
  open-tape:
    name: open tape
    kind: adhesive
    unit: m
    sticks: two long sides
  open-envelope:
    name: open envelope
    kind: envelopes
    envelope: 114 x 162 mm
    weighs: 4.5 g
tools:
  open-trimmer:
    name: the open trimmer
    kind: trimmer
    longest: 310 mm
  open-hole:
    name: the open hole
    kind: punch
    plate: 90 x 60 mm
    stroke: 7 s
  open-stamps:
    name: open stamps
    kind: stamps
    images:
      - 20 x 8 open words
purchases:
  - date: 1987-02-03
    from: vexqu-shop
    lines:
      - open-card 1223 sheets, 7919.37
      - open-ribbon 7853 m, 351161.19
      - open-pad 1 pad, about 110341.47
    delivery: 811.43
counts:
  - date: 1987-09-30
    found:
      - open-card 7853 sheets
rates:
  - date: 1987-10-03
    lines:
      - Royal Mail letter up to 100 g, 811.43
gone:
  - date: 1987-10-01
    why: vexqu-why
    lines:
      - open-card 239 sheets
      - open-card scrap 1202.37 x 19.37 mm
""",
    "projects/inventory/hidden.yml": """\
format: 1
stick: vexqu-tape
clearance: 4 mm
rates:
  - date: 1987-10-02
    lines:
      - Royal Mail letter up to 1103.41 g, 811.43
supplies:
  vexqu-tape:
    name: vexqu-tape-name
    kind: vexqu-tape-kind
    unit: g
    sticks: 1103.41 g per 17.31 x 19.37 mm
  vexqu-foam:
    name: vexqu-foam-name
    kind: vexqu-foam-kind
    sticks: 1223 per 17.31 x 19.37 mm, at least 1223
    thickness: 17.31 mm
    weighs: 1103.41 g
  vexqu-bag:
    name: vexqu-bag-name
    kind: vexqu-bag-kind
    envelope: 1202.37 x 1103.41 mm
  vexqu-card:
    name: vexqu-card-name
    kind: vexqu-kind
    size: 1873.11 x 1759.13 mm
    grain: long
    front: vexqu-front
    back: vexqu-back
    core: vexqu-core
    see-through: yes
    trim: top 17.31
    colour: "about #7e57a1"
    collection: vexqu-collection
    weight: 2347 g/m²
    sale: no, vexqu-card-sale, 1987-07-07
    link: https://vexqu-card.example.org/
    disclose: gifted
    about: Vexqu-card-about.
    opening:
      date: 1987-01-03
      amount: 7877 sheets
      worth: 6007.13
      scraps:
        - 2 of 1202.37 x 19.37 mm, worth 719.53
  vexqu-unused:
    name: vexqu-unused-name
    kind: vexqu-unused-kind
    unit: vexqu-unit, vexqu-units
    designs: 3 x 977
    size: 1871.31 x 1759.13 mm
  vexqu-ribbon:
    name: vexqu-ribbon-name
    kind: vexqu-ribbon-kind
    unit: m
    pack: 3907
    mark: 7741 m
  vexqu-glue:
    name: vexqu-glue-name
    kind: vexqu-glue-kind
    by: level
  vexqu-star:
    name: vexqu-star-name
    kind: vexqu-star-kind
    size: 17.31 x 17.31 mm
tools:
  vexqu-trimmer:
    name: vexqu-trimmer-name
    kind: vexqu-trimmer-kind
    longest: 1871.31 mm
    narrowest: 17.31 mm
    kerf: 17.31 mm
    stack: 239 up to 2347 g/m²
    grooves: 17.31 mm
    sale: no, vexqu-trimmer-sale, 1987-07-08
    link: https://vexqu-trimmer.example.org/
    disclose: paid
    about: Vexqu-trimmer-about.
  vexqu-hole:
    name: vexqu-hole-name
    kind: vexqu-hole-kind
    plate: 1871.31 x 1759.13 mm
    stroke: 1223 s
  vexqu-stamps:
    name: vexqu-stamps-name
    kind: vexqu-stamps-kind
    images:
      - 19.37 x 17.31 vexqu-image
  vexqu-dies:
    name: vexqu-dies-name
    kind: vexqu-dies-kind
    images:
      - 19.37 x 17.31 vexqu-die
""",
    "mkdocs.yml": """\
site_name: The open bench
site_url: https://example.org/bench/
docs_dir: site_src
theme:
  name: material
plugins:
  - search
  - batchleaf{settings}
""",
    "site_src/about.md": "# About\n\nAn open page.\n",
}

OF_RECIPIENTS: Final = (
    *("vexqu-recipients-remark", "open-vexqu-aunt", "vexqu-sent-aunt", "vexqu-uncle", "vexqu-sent-uncle"),
    *("1987-06-11", "1987-06-12", "1987-06-13", "9191", "8181"),
)
"""What stands in the file of recipients and nowhere else: no edition has any of it."""

MAKER, COMMENT = 0x010F, 0x9286
PHOTOS: Final[tuple[tuple[int, ...], ...]] = (
    (0, 90, 120),
    (60, 90, 120),
    (120, 90, 120),
    (180, 90, 120),
    (200, 190, 120),
)
"""The colour of the photo of each batch: those of :data:`STATUSES`, and last the published one."""


def lay_out(root: Path, settings: str = "") -> Path:
    """Write the archive below ``root``; ``settings`` are those of the plugin, as YAML."""
    for name, text in RECORDS.items():
        _write(root / name, text.replace("{settings}", settings))
    for day, status in enumerate(STATUSES):
        cut = status in ("cut", "made")
        record = BATCH.format(
            status=status,
            day=day,
            series="open-series" if cut else "vexqu-series",
            design="open-design" if status == "made" else "vexqu-design",
            makes="13577 of 13591" if cut else "0 of 13591",
            cut="cut:\n  - vexqu-card 13999 sheets, kept 13577 of 1181.3 x 19.37\n" if cut else "",
            went="went:\n  - 13577 sold, 3511.61 each, vexqu-fair, 1987-05-24\n" if status == "made" else "",
        )
        folder = root / "projects" / f"{MARK}-{status}"
        _write(folder / "project.yml", record)
        _write(folder / "notes.md", f"Vexqu-notes-{status}.\n")
        _photo(folder / "vexqu-photo.jpg", PHOTOS[day], f"vexqu-exif-{status}")
    _photo(root / "projects" / "open-cards" / "cover.jpg", PHOTOS[-1], "vexqu-exif-open")
    return root


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def _photo(path: Path, colour: tuple[int, ...], hidden: str) -> None:
    exif = Image.Exif()
    exif[MAKER] = exif[COMMENT] = hidden
    Image.new("RGB", (700, 500), colour).save(path, exif=exif, comment=f"{hidden}-comment".encode())
