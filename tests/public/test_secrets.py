"""Nothing of what the public edition must not show is in any of its bytes."""

from __future__ import annotations

import csv
import gzip
import re
import subprocess
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Final

import pytest
from PIL import Image
from pydantic import BaseModel

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.measure.display import NBSP, show_number
from batchleaf.records.kinds import KINDS, Held, keys_of, models_of, word_of
from public.marked import FATES, FIXED, MARK, NUMBERS, OF_RECIPIENTS, PHOTOS, Fate, lay_out
from records.seeds import kind_in, tree_in

MODELS: Final = {model for kind in KINDS.values() for model in models_of(kind.model)}
ALL_KEYS: Final = {(word_of(model), key.name) for model in MODELS for key in keys_of(model)}
NOWHERE_SHOWN: Final = frozenset(
    f"{MARK}-{word}"
    for word in (
        *("remark", "remark-idea", "remark-planned", "remark-cut", "remark-made", "photo", "star-kind"),
        *("exif-open", "exif-idea", "exif-planned", "exif-cut", "exif-made"),
        *("role", "role-words", "design-role", "design-sale", "design-about", "design-more"),
        *("design-part", "design-step", "design-thing"),
        *("recipients-remark", "aunt", "sent-aunt", "uncle", "sent-uncle"),
    )
)
"""Marks that no edition shows: remarks, what hides in photos, words that no page has a place for."""

Files = Mapping[str, bytes]


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The archive of marks, with both editions built by the commands."""
    root = lay_out(tmp_path_factory.mktemp("marked") / "archive")
    for command in ("build", "publish"):
        ran = subprocess.run(
            [sys.executable, "-m", "batchleaf", command, "--archive", str(root)],
            capture_output=True,
            check=False,
            text=True,
            encoding="utf-8",
        )
        assert ran.returncode == 0, ran.stderr
    return root


@pytest.fixture(scope="module")
def public(archive: Path) -> Files:
    """Every file of the public edition, unpacked, with its name among its bytes."""
    return files_in(archive / "public")


@pytest.fixture(scope="module")
def private(archive: Path) -> Files:
    """The same of the private edition."""
    return files_in(archive / "site")


@pytest.fixture(scope="module")
def figures(archive: Path) -> Figures:
    """All figures of the archive."""
    worked = open_archive(archive).worked()
    assert worked.figures is not None
    return worked.figures


def files_in(folder: Path) -> Files:
    """Address → all that a visitor could get of it, in small letters."""
    found = {}
    for path in folder.rglob("*"):
        if path.is_file():
            data = path.read_bytes()
            name = path.relative_to(folder).as_posix()
            found[name] = (
                name.encode() + b"\n" + (gzip.decompress(data) if path.suffix == ".gz" else data)
            ).lower()
    return found


def where(text: str, files: Files) -> list[str]:
    """The files that hold ``text``."""
    needle = text.lower().encode()
    return [name for name, data in files.items() if needle in data]


def forms(number: str) -> set[str]:
    """A number as it is written and as it may be shown."""
    shown = {number, number.replace(" ", NBSP), number.replace(" h", f"{NBSP}h")}
    if re.fullmatch(r"[0-9]{4,}(\.[0-9]+)?", number):
        whole, _, rest = number.partition(".")
        shown.add(f"{int(whole):,}{'.' if rest else ''}{rest}")
    return shown


# --- the marks themselves ------------------------------------------------------


def test_every_key_of_a_record_has_its_fate() -> None:
    """A new key is shown in public only after somebody has said so."""
    listed = [
        (model, key) for model, fates in FATES.items() for keys in fates.values() for key in keys.split()
    ]
    assert sorted(listed) == sorted(ALL_KEYS)


def fate_of(model: type[BaseModel], key: str) -> Fate:
    """What becomes of a key."""
    return next(fate for fate, keys in FATES[word_of(model)].items() if key in keys.split())


Held_ = tuple[str, str, Fate, str]
"""Model, key, fate, and what stands there as text."""


def walked(model: type[BaseModel], tree: Any, above: Fate = Fate.SHOWN) -> Iterator[Held_]:
    """Every key that is set at any depth; below what is never shown, nothing is."""
    for key in keys_of(model):
        if not isinstance(tree, dict) or key.name not in tree:
            continue
        fate = Fate.NEVER if above is Fate.NEVER else fate_of(model, key.name)
        yield word_of(model), key.name, fate, str(tree[key.name])
        if key.below is not None:
            for one in _held(key.held, tree[key.name]):
                yield from walked(key.below, one, fate)


def _held(held: Held, value: Any) -> list[Any]:
    match held:
        case Held.NAMED:
            return list(value.values())
        case Held.LIST:
            return list(value)
        case Held.ONE:
            return [value]


def records_of(archive: Path) -> Iterator[tuple[bool, list[Held_]]]:
    """Each record, and each supply, tool and series, with whether it belongs to what is published."""
    for path in sorted((archive / "projects").rglob("*.yml")):
        kind = kind_in(path.relative_to(archive).as_posix())
        tree: Any = tree_in(path.read_bytes())
        model = KINDS[kind].model
        if kind in ("project", "design", "inventory"):
            yield "open" in path.as_posix().removeprefix(archive.as_posix()), list(walked(model, tree))
        else:
            key = "people" if kind == "recipients" else "series"
            for slug, one in tree[key].items():
                yield slug.startswith("open"), list(walked(model, {**tree, key: {slug: one}}))


def marked(text: str) -> bool:
    """Whether a value bears a mark."""
    return MARK in text.lower() or any(number in text for number in NUMBERS)


@pytest.fixture(scope="module")
def held(archive: Path) -> list[tuple[bool, Held_]]:
    """Every key that is set in the archive, with whether it belongs to what is published."""
    return [(is_open, one) for is_open, all_of_it in records_of(archive) for one in all_of_it]


def test_what_must_not_be_shown_bears_a_mark(held: list[tuple[bool, Held_]]) -> None:
    """Of what is not published every value; of what is published each that is never shown."""
    for is_open, (model, key, fate, text) in held:
        belongs_elsewhere = key in ("series", "design") and text.startswith("open-")
        if fate is Fate.NEVER or not (is_open or key in FIXED or belongs_elsewhere):
            assert marked(text), f"{key} of {model} says {text} and bears no mark"


def test_the_archive_leaves_no_key_out(held: list[tuple[bool, Held_]]) -> None:
    """Each key is set in what is not published; what is never shown in what is published too."""
    hidden = {(model, key) for is_open, (model, key, _, _) in held if not is_open}
    of_orders = {(model, key) for model, key in ALL_KEYS if model in ("order", "count", "gone")}
    moves = {("inventory", key) for key in ("purchases", "counts", "gone")}
    assert ALL_KEYS - hidden == of_orders | moves
    never = {(m, key) for m, fates in FATES.items() for key in fates.get(Fate.NEVER, "").split()}
    assert never - {(model, key) for is_open, (model, key, _, _) in held if is_open} == set()


# --- the recipients ------------------------------------------------------------


@pytest.mark.parametrize("text", OF_RECIPIENTS)
def test_the_recipients_are_in_no_edition(text: str, archive: Path, public: Files, private: Files) -> None:
    """Not even in the private one: no build reads the file, so nothing of it can be in any byte."""
    records = (path for path in archive.glob("projects/**/*.yml") if text in path.read_text(encoding="utf-8"))
    assert [path.name for path in records] == ["recipients.yml"]
    for form in forms(text):
        assert (where(form, public), where(form, private)) == ([], [])


@pytest.mark.parametrize("text", ["recipient", "June 1987", "Jun 1987"])
def test_no_edition_speaks_of_recipients(text: str, public: Files, private: Files) -> None:
    """Neither that there is such a file, nor of a day on which something was sent."""
    assert (where(text, public), where(text, private)) == ([], [])


# --- both editions -------------------------------------------------------------


def test_no_word_that_is_marked_is_public(public: Files) -> None:
    """Titles, names, remarks, addresses, words of any kind: in no file and in no file's name."""
    assert where(MARK, public) == []


@pytest.mark.parametrize("number", NUMBERS)
def test_no_number_that_is_marked_is_public(number: str, public: Files) -> None:
    """As it is written, or with a comma for thousands."""
    if number not in ("977", "239 up to"):
        assert [where(form, public) for form in forms(number)] == [[]] * len(forms(number))


def test_the_private_edition_shows_what_the_public_one_does_not(archive: Path, private: Files) -> None:
    """So the search for marks can find them, and they are left out on purpose."""
    texts = [p.read_text(encoding="utf-8") for p in archive.rglob("projects/**/*.[ym][md]*")]
    words = {word for text in texts for word in re.findall(rf"{MARK}[a-z-]*[a-z]", text.lower())}
    unseen = {word for word in words if not where(word, private)}
    assert unseen <= NOWHERE_SHOWN
    assert len(words) > 60
    assert where(f"977{NBSP}sheets", private) or where("977 sheets", private)


def amounts_of(figures: Figures) -> Iterator[int]:
    """Every amount of money that the records lead to, in minor units."""
    assert figures.ledger is not None
    yield from (movement.cost.known for movement in figures.ledger.movements)
    yield from (balance.cost.known for balance in figures.ledger.balances)
    for draws in figures.ledger.draws.values():
        for draw in draws:
            yield from (draw.taken.known, draw.kept.known, draw.cost.known)
    for batch in figures.batches.values():
        yield from _of_batch(batch)


def _of_batch(batch: BatchFigures) -> Iterator[int]:
    assert batch.cost is not None
    yield batch.cost.batch.known
    yield from (line.one for line in batch.cost.lines)
    yield from (amount for amount, _ in batch.cost.shares)
    yield from (went.value for went in batch.project.went if went.value is not None)


def test_no_amount_of_money_is_public_but_what_one_cost(
    figures: Figures, public: Files, private: Files
) -> None:
    """Prices, worth, shares, the cost of batches; the private edition shows most of them."""
    one, currency = figures.batches["open-cards"].one, figures.settings.currency
    assert one is not None
    amounts = {abs(amount) for amount in amounts_of(figures)} - {one}
    told = {amount for amount in amounts if amount >= 5_00}
    assert {abs(amount) for amount in _of_batch(figures.batches["open-cards"])} - {one, 0} <= told
    for amount in told:
        assert where(currency.show(amount), public) == []
        assert where(currency.plain(amount), public) == []
    assert len([a for a in told if where(currency.show(a), private)]) > len(told) / 2
    assert where(currency.show_with_sign(one), public)


def test_nothing_on_hand_is_public(figures: Figures, public: Files, private: Files) -> None:
    """Neither what there is nor what there ever was."""
    assert figures.ledger is not None
    there = {movement.on_hand for movement in figures.ledger.movements if movement.on_hand >= 1000}
    assert len(there) > 3
    assert [where(show_number(quantity, 2), public) for quantity in there] == [[]] * len(there)
    assert len([one for one in there if where(show_number(one, 2), private)]) > len(there) / 2


def colours_in(folder: Path) -> set[tuple[int, ...]]:
    """Which photos of the archive are below ``folder``: each is of one colour."""
    found: set[tuple[int, ...]] = set()
    for path in sorted(folder.rglob("photos/*")):
        with Image.open(path) as image:
            middle = image.convert("RGB").getpixel((image.width // 2, image.height // 2))
        assert isinstance(middle, tuple)
        found.add(
            min(PHOTOS, key=lambda colour: sum(abs(a - b) for a, b in zip(colour, middle, strict=True)))
        )
    return found


def test_only_photos_of_published_batches_are_public(archive: Path) -> None:
    """By what they show, whatever their files are called."""
    assert colours_in(archive / "public") == {PHOTOS[-1]}
    assert colours_in(archive / "site") == set(PHOTOS)


def test_pages_are_those_of_what_is_published(public: Files) -> None:
    """The published batch and its old address, what it uses, its series; nobody else's."""
    pages = {name.removesuffix("index.html") for name in public if name.endswith("index.html")}
    assert pages == {
        "", "about/", "bench/", "drawer/", "how/", "series/", "series/open-series/", "table/", "year/",
        "projects/open-cards/", "projects/open-cards/notes/", "projects/open-cards/notes/in/",
        "projects/open-cards/other-sheets/",
        "projects/open-things/", "designs/open-design/",
        *(f"drawer/open-{name}/" for name in ("card", "pad", "pad-1", "pad-3")),
        *(f"drawer/open-{name}/" for name in ("ribbon", "ink", "tape", "envelope")),
    }  # fmt: skip
    page = public["projects/open-cards/index.html"].decode()
    assert "first of" in page
    for word in ("so are", "so is", "before</span>", "after</span>", "whereabouts", "is a guess"):
        assert word not in page


def test_the_page_for_the_table_is_one_in_both_editions(archive: Path) -> None:
    """Byte by byte: it knows the archive’s name and unit, and nothing of a record."""
    names = ["about.webmanifest", "icon-192.png", "icon-512.png", "index.html", "keep.js", "table.js"]
    for edition in ("site", "public"):
        assert sorted(path.name for path in (archive / edition / "table").iterdir()) == names
    for name in names:
        assert (archive / "site" / "table" / name).read_bytes() == (
            archive / "public" / "table" / name
        ).read_bytes()


def test_nothing_of_money_or_of_the_drawer_is_spoken_of(public: Files) -> None:
    """Not even without a number."""
    for name, data in public.items():
        if name.startswith(("drawer/", "series/", "projects/", "year/")):
            for word in (b"on hand", b"worth", b"movements", b"kept pieces", b"batch, \xe2\x82\xac"):
                assert word not in data, f"{word!r} in {name}"
            for word in (b'id="bought"', b"spent", b"paid"):
                assert word not in data, f"{word!r} in {name}"


SUPPLY_COLUMNS: Final = ["supply", "name", "used", "unit", "scraps"]
PART_COLUMNS: Final = [
    *("letter", "part", "width in mm", "height in mm", "cut width in mm", "cut height in mm"),
    *("in one", "extra", "cut", "made how", "papers"),
]
CUT_COLUMNS: Final = [
    *("plan", "papers", "sheets", "cut", "setting in mm", "measured from"),
    *("width in hand in mm", "height in hand in mm", "gives"),
]
BATCH_COLUMNS: Final = [
    *("slug", "title", "date", "status", "series", "thing", "finished", "begun", "minutes", "sheets"),
    *("scraps", "could have given", "cost of one in eur", "price known"),
]
DRAWER_COLUMNS: Final = [
    *("supply", "name", "shelf", "width in mm", "height in mm", "weight in g/m2"),
    *("colours", "in words", "collection", "unit", "batches", "last used"),
]
COLLATING_COLUMNS: Final = ["make", "letter", "part", "count", "supply", "paper", "images", "by the rule"]
BENCH_COLUMNS: Final = [
    *("work", "what", "letter", "tool", "worked in", "when"),
    *("supplies", "of", "count", "at once", "strokes", "wait in minutes"),
]
MONTH_COLUMNS: Final = [
    *("year", "month", "batches", "finished", "begun", "minutes"),
    *("paper cut in mm2", "paper used in mm2", "paper kept in mm2"),
]
COUNT_COLUMNS: Final = ["makes", "supply", "name", "needed", "unit", "follows the number"]
TABLES: Final = {
    "batches.csv": BATCH_COLUMNS,
    "series/open-series/batches.csv": BATCH_COLUMNS,
    "projects/open-cards/parts.csv": PART_COLUMNS,
    "projects/open-cards/cuts.csv": CUT_COLUMNS,
    "projects/open-cards/bench.csv": BENCH_COLUMNS,
    "projects/open-cards/collating.csv": COLLATING_COLUMNS,
    "projects/open-cards/supplies.csv": SUPPLY_COLUMNS,
    "projects/open-cards/how-many.csv": COUNT_COLUMNS,
    "drawer/drawer.csv": DRAWER_COLUMNS,
    "year/months.csv": MONTH_COLUMNS,
}
"""The tables of the public edition, with their columns in small letters."""


def tables_in(files: Files) -> dict[str, list[list[str]]]:
    """Address → rows, the heading row first."""
    texts = {name: data.partition(b"\n")[2] for name, data in files.items() if name.endswith(".csv")}
    return {name: list(csv.reader(text.decode("utf-8-sig").splitlines())) for name, text in texts.items()}


def test_tables_are_those_that_public_pages_show(public: Files, private: Files) -> None:
    """No movements, no kept pieces, nothing to buy; no column of what is on hand, paid or marked."""
    found = tables_in(public)
    assert {name: head for name, (head, *_) in found.items()} == TABLES
    assert all(len(rows) > 1 for rows in found.values())
    hidden = tables_in(private)
    assert {"drawer/buy-next.csv", "offcuts/offcuts.csv", "drawer/open-card/movements.csv"} <= set(hidden)
    assert {"on hand", "worth in eur"} <= set(hidden["drawer/drawer.csv"][0])


def test_what_is_to_come_is_not_public(public: Files, private: Files) -> None:
    """Neither that it is planned nor what the drawer lacks for it; the private edition says both."""
    for words in ('id="to-come"', "the drawer has"):
        assert where(words, private)
        assert where(words, public) == []
