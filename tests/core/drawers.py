"""Small drawers and batches, built by hand for the tests of the ledger."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction

from batchleaf.facts import (
    Archive,
    Basis,
    Count,
    Cut,
    Gone,
    KeptPiece,
    Opening,
    Part,
    Place,
    Project,
    Purchase,
    Scrap,
    Status,
    Supply,
    Use,
)
from batchleaf.measure.lengths import Size, Unit


def day(number: int) -> dt.date:
    """Days from the first of January 2026 on."""
    return dt.date(2026, 1, 1) + dt.timedelta(days=number)


def supply(
    slug: str = "card",
    *,
    size: Size | None = None,
    opening: Opening | None = None,
    scraps: tuple[Scrap, ...] = (),
) -> Supply:
    """A supply counted in sheets."""
    return Supply(
        slug=slug,
        name=slug,
        kind="card",
        unit="sheet",
        units="sheets",
        length_unit=Unit.MM,
        size=size or Size(Fraction(100), Fraction(100)),
        opening=opening,
        scraps=scraps,
        place=Place("drawer.yml", 1, 1),
    )


def pad(designs: int = 3, copies: int = 2, *, opening: Opening | None = None) -> tuple[Supply, ...]:
    """A pad called “pad”, and its papers: pad-1, pad-2 …"""
    whole = replace(supply("pad", opening=opening), designs=designs, copies=copies)
    papers = (replace(supply(f"pad-{number}"), pad="pad", number=number) for number in range(1, designs + 1))
    return (whole, *papers)


def bought(
    on: int, quantity: int, value: int | None, slug: str = "card", basis: Basis = Basis.STATED
) -> Purchase:
    """A purchase for ``value`` minor units in all."""
    return Purchase(day(on), slug, Fraction(quantity), value, "", basis, Place("drawer.yml", 100 + on, 1))


def counted(
    on: int, quantity: int, slug: str = "card", *, about: bool = False, piece: Size | None = None
) -> Count:
    """A count of what is there."""
    return Count(day(on), slug, Fraction(quantity), about, piece, Place("drawer.yml", 500 + on, 1))


def batch(
    on: int,
    *,
    uses: tuple[tuple[str, int], ...] = (),
    cut: tuple[Cut, ...] = (),
    slug: str = "",
    finished: int = 1,
    status: Status = Status.MADE,
) -> Project:
    """A batch that uses amounts, or cuts sheets."""
    return Project(
        slug=slug or f"batch-{on}",
        title=slug or f"Batch {on}",
        date=day(on),
        status=status,
        series=None,
        unit=Unit.MM,
        thing="card",
        things="cards",
        finished=finished,
        begun=finished,
        finished_size=None,
        parts=(),
        cut=cut,
        uses=tuple(Use(name, Fraction(amount)) for name, amount in uses),
        minutes=None,
        steps=(),
        photos=(),
        notes="",
        place=Place(f"{slug or on}.yml", 1, 1),
    )


def size(width: int, height: int) -> Size:
    """A size in whole millimetres."""
    return Size(Fraction(width), Fraction(height))


def part(letter: str, width: int, height: int, *papers: str, each: int = 1, extra: int = 0) -> Part:
    """A part that may be turned."""
    place = Place("batch.yml", 10 + ord(letter) - ord("A"), 3)
    return Part(
        letter, letter.lower(), size(width, height), each, papers, turns=True, extra=extra, place=place
    )


def batch_of(
    *parts: Part, makes: int, cuts: tuple[tuple[str, int], ...] = (), planned: bool = False
) -> Project:
    """A batch with these parts, from so many sheets of these supplies."""
    one = batch(
        1,
        cut=tuple(cut(count, slug=slug) for slug, count in cuts),
        finished=makes,
        status=Status.PLANNED if planned else Status.MADE,
    )
    return replace(one, parts=parts)


def cut(count: int, *kept: KeptPiece, slug: str = "card", scrap: Size | None = None) -> Cut:
    """Sheets, or scraps of one size, of which some pieces are kept."""
    return Cut(slug, count, scrap, tuple(kept), Place("batch.yml", 5, 3))


def gone(on: int, quantity: int, slug: str = "card", *, piece: Size | None = None) -> Gone:
    """Something that left for another use."""
    return Gone(day(on), slug, piece, Fraction(quantity), "swatches", Place("drawer.yml", 700 + on, 1))


def archive(*records: Project | Purchase | Count | Gone, supplies: tuple[Supply, ...] = ()) -> Archive:
    """An archive of these records, in the order given."""
    return Archive(
        projects=tuple(one for one in records if isinstance(one, Project)),
        supplies=supplies or (supply(),),
        purchases=tuple(one for one in records if isinstance(one, Purchase)),
        counts=tuple(one for one in records if isinstance(one, Count)),
        series=(),
        gone=tuple(one for one in records if isinstance(one, Gone)),
    )
