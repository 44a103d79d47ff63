"""The records of an archive, read a second time: what each line of the drawer moves.

Each key and each line that is looked at is noted, so that a test can tell whether one was not.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any, Final, NamedTuple

from summing.supplies import Size, Supply, matched, supply

PRICE: Final = r"(?:(?:about )?\d+(?:\.\d\d)?|gift|price unknown)"
Entry = dict[str, Any]


class Move(NamedTuple):
    """What a line moved of a supply, or of its odd pieces of one size; of a count what was found."""

    day: str
    kind: str
    supply: str
    piece: Size | None
    quantity: Fraction
    about: bool = False


def positions(tree: Any) -> dict[tuple[int, Any], str]:
    """Every key and every line below, by what it stands in and where there; each as a text."""
    items = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    found: dict[tuple[int, Any], str] = {}
    for at, below in items:
        found |= {(id(tree), at): f"{at}: {below}"} | positions(below)
    return found


class Reading:
    """Notes the keys and lines that were looked at."""

    def __init__(self) -> None:
        self.seen: set[tuple[int, Any]] = set()

    def keys(self, said: Entry, read: str, told: str = "") -> None:
        """Refuse a key that nobody knows; pass over what is told and moves nothing, with all below it."""
        unknown = set(said) - {*read.split(), *told.split()}
        assert not unknown, f"the sum knows no key {unknown}"
        self.seen.update((id(said), key) for key in said)
        self.seen.update(*(positions(said[key]) for key in told.split() if key in said))

    def lines(self, said: Entry, key: str) -> Iterator[Any]:
        """The lines under a key."""
        for at, line in enumerate(said.get(key, [])):
            self.seen.add((id(said[key]), at))
            yield line

    def named(self, said: Entry, key: str) -> Iterator[tuple[str, Any]]:
        """What stands under a key, each under its name."""
        for name, one in said.get(key, {}).items():
            self.seen.add((id(said[key]), name))
            yield name, one


class Drawer(Reading):
    """All files of the drawer; ``moves``: what they say came, went and was counted."""

    def __init__(self, files: list[Entry]) -> None:
        super().__init__()
        self.supplies: dict[str, Supply] = {}
        for file in files:
            self.keys(file, "stick supplies purchases counts gone", "format tools clearance rates")
            for slug, said in self.named(file, "supplies"):
                self.describe(slug, said)
        (self.stick,) = [file["stick"] for file in files if "stick" in file]
        self.moves = [move for file in files for move in self.stated(file)]

    def describe(self, slug: str, said: Entry) -> None:
        """A supply; of a pad also each of its papers, by number."""
        told = "name kind mark grain core see-through trim colour collection weight weighs thickness"
        told += " envelope sale link disclose about"
        self.keys(said, "size unit by designs pack sticks front back opening", told)
        one = supply(said)
        papers = [f"{slug}-{n + 1}" for n in range(int(said.get("designs", "0").split()[0]))]
        self.supplies |= dict.fromkeys(papers, one._replace(pad=slug))
        self.supplies[slug] = one._replace(papers=tuple(papers))

    def stated(self, file: Entry) -> Iterator[Move]:
        """What one file says, order by order and line by line."""
        for slug, said in file.get("supplies", {}).items():
            yield from self.opening(slug, said.get("opening", {}))
        for order in self.lines(file, "purchases"):
            self.keys(order, "date lines", "from delivery")
            for line in self.lines(order, "lines"):
                slug, amount = matched(rf"(\S+) (.+), {PRICE}", line)
                yield from self.came(order["date"], "bought", slug, amount)
        for gone in self.lines(file, "gone"):
            self.keys(gone, "date lines", "why")
            for line in self.lines(gone, "lines"):
                slug, amount = matched(r"(\S+) (.+)", line)
                piece, quantity = self.supplies[slug].moved(amount, "mm")
                yield Move(gone["date"], "gone", slug, piece, -quantity)
        for rates in self.lines(file, "rates"):
            self.keys(rates, "lines", "date")
            for line in self.lines(rates, "lines"):
                matched(rf".+ up to .+, {PRICE}", line)
        for count in self.lines(file, "counts"):
            self.keys(count, "date found")
            for line in self.lines(count, "found"):
                slug, about, amount = matched(r"(\S+) (about )?(.+)", line)
                piece, found = self.supplies[slug].moved(amount, "mm")
                yield Move(count["date"], "counted", slug, piece, found, bool(about))

    def opening(self, slug: str, said: Entry) -> Iterator[Move]:
        """What was there before the first purchase."""
        self.keys(said, "date amount scraps", "worth")
        if "amount" in said:
            yield from self.came(said["date"], "opening", slug, said["amount"])
        for line in self.lines(said, "scraps"):
            (scraps,) = matched(rf"(.+?)(?:, worth {PRICE})?", line)
            yield Move(said["date"], "opening", slug, *self.supplies[slug].pieces(scraps, "mm"))

    def came(self, day: str, kind: str, slug: str, text: str) -> Iterator[Move]:
        """What came in: whole pads as so many sheets of each of their papers."""
        one = self.supplies[slug]
        quantity = one.amount(text)
        whole = bool(one.papers) and quantity % one.words["pad"] == 0
        for paper in one.papers if whole else (slug,):
            yield Move(day, kind, paper, None, quantity / len(one.papers) if whole else quantity)
