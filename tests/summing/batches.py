"""What batches take and keep, read a second time: sheets, odd pieces, uses, packing, sticking."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil
from typing import Final

from summing.records import Drawer, Entry, Move
from summing.supplies import Size, matched, measures

FINISHED: Final = {
    "card A6, side fold": "105 x 148 mm",  # ISO 216
    "card quarter-letter, side fold": "4 1/4 x 5 1/2 in",  # the US letter, 8 1/2 x 11, halved both ways
    "card 270 x 135, side fold": "135 x 135 mm",  # the blank, halved by its fold
}
"""Finished sizes of the bases that a part with a border lies on."""
MADE_OF: Final = "unit base parts stick supplies packing"
TOLD: Final = "title format thing tools bench collate steps credit"
Line = tuple[str, str]
"""A supply, and what a line says after it."""


def moves_of(batch: Entry, designs: dict[str, Entry], drawer: Drawer) -> list[Move]:
    """What a batch moves; one that is only planned is read all the same."""
    design = designs[batch["design"]] if "design" in batch else {}
    drawer.keys(design, MADE_OF, f"{TOLD} roles sale about")
    drawer.keys(
        batch,
        f"{MADE_OF} date status design makes papers cut",
        f"{TOLD} series time youngest occasion film photos asks went notes was",
    )
    moves = [one for one in _Batch(batch, design, drawer).moves() if one.quantity]
    return moves if batch.get("status", "made") in ("cut", "made", "published") else []


class _Batch:
    """A batch, and the design that it may use."""

    def __init__(self, said: Entry, design: Entry, drawer: Drawer) -> None:
        self.said, self.design, self.drawer = said, design, drawer
        self.unit = said.get("unit", "mm")
        self.finished = int(matched(r"(\d+)(?: of \d+)?", said["makes"])[0])
        self.papers = {role: self.filling(text) for role, text in drawer.named(said, "papers")}
        self.parts: dict[str, Entry] = {}
        for one in (design, said):
            for key, written in drawer.named(one, "parts"):
                letter, name = matched(r"([A-Z]) (.+)", key)
                self.parts[letter] = {"paper": name, "unit": one.get("unit", "mm")} | self.part(written)

    def moves(self) -> Iterator[Move]:
        """Sheets first, then what goes by the finished makes."""
        day, uses = self.said["date"], self.varied("supplies")
        yield from self.cut()
        for slug, text in uses:
            yield Move(day, "used", slug, None, -self.used(slug, text))
        for slug, text in self.varied("packing"):
            yield Move(day, "packed", slug, None, -self.packed(slug, text))
        for letter, part in self.parts.items():
            for slug in self.ready(part):
                yield Move(day, "used", slug, None, -Fraction(self.all_of(part)))
            slug, one = self.stuck(letter, [slug for slug, _ in uses])
            if one:
                yield Move(day, "stuck", slug, None, -one * self.all_of(part))

    # --- papers and sheets

    def filling(self, text: str) -> list[str]:
        """The papers of a role: ``dusk-rose, night-blue``, ``shoal-pad 1 4``, ``any 3 of shoal-pad``."""
        found: list[str] = []
        for one in text.split(", "):
            many, slug, numbers = matched(r"(?:any (\d+) of )?(\S+)((?: \d+)*)", one)
            found += [f"{slug}-{n}" for n in numbers.split()] or [slug] * int(many or 1)
        assert set(found) <= set(self.drawer.supplies), text
        return found

    def cut(self) -> Iterator[Move]:
        """``water 1 sheet each, kept 2 of 60 x 60``, ``oat-card scrap 4 x 8 1/2``."""
        for line in self.drawer.lines(self.said, "cut"):
            taken, _, kept = line.partition(", kept ")
            name, amount, each = matched(r"(\S+) (.+?)( each)?", taken)
            papers = self.papers.get(name) or self.filling(name)
            assert each or len(papers) == 1, line
            for slug in papers:
                supply = self.drawer.supplies[slug]
                piece, quantity = supply.moved(amount, self.unit)
                yield Move(self.said["date"], "cut", slug, piece, -quantity)
                for one in kept.split(", ") if kept else ():
                    yield Move(self.said["date"], "kept", slug, *supply.pieces(one, self.unit))

    # --- what goes by the finished makes

    def varied(self, key: str) -> list[Line]:
        """The lines of the design whose supply the batch does not name itself; then the batch's own."""
        of_design, own = (
            [(line.partition(" ")[0], line.partition(" ")[2]) for line in self.drawer.lines(one, key)]
            for one in (self.design, self.said)
        )
        return [line for line in of_design if line[0] not in dict(own)] + own

    def used(self, slug: str, text: str) -> Fraction:
        """``140 mm`` of each make, ``1 sheet in all``; what has no amount is not measured."""
        amount, in_all = matched(r"(.*?)( in all)?", text)
        times = 1 if in_all else self.finished
        return self.drawer.supplies[slug].amount(amount) * times if amount else Fraction(0)

    def packed(self, slug: str, text: str) -> Fraction:
        """One for each make, ``220 mm``, ``per 6``, ``2 per 5``: the last ones with it."""
        amount, several = matched(r"(.*?) ?(?:per (\d+))?", text)
        times = ceil(Fraction(self.finished, int(several or 1)))
        return self.drawer.supplies[slug].amount(amount or "1") * times

    # --- parts

    def part(self, written: str | Entry) -> Entry:
        """``44 x 70, water``, ``border 5``, ``18 x 18, ready star-sticker`` as keys; or its keys."""
        if isinstance(written, str):
            shape, _, paper = written.partition(", at ")[0].partition(", ")
            if shape.startswith("ready "):
                shape, paper = "", shape
            said = {"border": shape[7:]} if shape.startswith("border ") else {"size": shape}
            said |= {"ready": paper[6:]} if paper.startswith("ready ") else {"paper": paper}
            return {key: text for key, text in said.items() if text}
        told = "at side turn extra shape oversize before stamp die"
        self.drawer.keys(written, "size border on paper ready each stick", told)
        return written

    def all_of(self, part: Entry) -> int:
        """How many of it the finished makes have."""
        return int(part.get("each", "1")) * self.finished

    def ready(self, part: Entry) -> list[str]:
        """What is bought as it is; of what is cut the paper must be known, and ``cut`` says how much."""
        if "ready" in part:
            assert "extra" not in part, part
            (slug,) = self.papers.get(part["ready"]) or self.filling(part["ready"])
            return [slug]
        paper = part["paper"].removeprefix("scraps of ")
        assert paper in self.papers or paper.removeprefix("as ") in {"A", *self.parts} or self.filling(paper)
        return []

    def stuck(self, letter: str, listed: list[str]) -> tuple[str, Fraction]:
        """With what one part is stuck, and with how much; a line under ``supplies`` stands instead."""
        part = self.parts[letter]
        usual = self.said.get("stick", self.design.get("stick", self.drawer.stick))
        slug, _, own = part.get("stick", "nothing" if "ready" in part else usual).partition(" ")
        if slug == "nothing" or slug in listed:
            return slug, Fraction(0)
        supply = self.drawer.supplies[slug]
        return slug, supply.amount(own) if own else supply.sticking(self.size_of(letter))

    def size_of(self, letter: str) -> Size:
        """In mm: as written, or with a border smaller than the part below it."""
        if letter == "A":
            return measures(FINISHED[self.said.get("base") or self.design["base"]], "mm")
        part, above = self.parts[letter], ["A", *self.parts]
        if "border" not in part:
            return measures(part["size"], part["unit"])
        width, height = self.size_of(part.get("on", above[above.index(letter) - 1]))
        edge, _ = measures(f"{part['border']} x 0", part["unit"])
        return width - 2 * edge, height - 2 * edge
