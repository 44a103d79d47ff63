"""The drawer's records: supplies, what was bought, what was counted."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from batchleaf.facts import (
    Count,
    Direction,
    Grain,
    Opening,
    PaperSide,
    Place,
    Purchase,
    Scrap,
    Settings,
    Supply,
)
from batchleaf.measure.amounts import is_measured, parse_amount
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_number, parse_size, unit_named
from batchleaf.measure.money import Currency, parse_money, share
from batchleaf.records.grammar import read_date, read_found, read_order_line, read_unit
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node, Path, key_place, place_of
from batchleaf.records.report import Report
from batchleaf.records.written import InventoryWritten, OpeningWritten, OrderWritten, SupplyWritten


@dataclass(frozen=True, slots=True)
class InventoryFile:
    """One file of the drawer as written, with its nodes for places."""

    file: str
    node: Node
    written: InventoryWritten

    def place(self, *path: str | int) -> Place:
        """Where the value at ``path`` stands."""
        return place_of(self.node, path)


def supplies_of(one: InventoryFile, settings: Settings, report: Report) -> Iterator[Supply]:
    """The supplies that a file defines."""
    for slug, written in one.written.supplies.items():
        supply = _supply(one, slug, written, settings, report)
        if supply is not None:
            yield supply
            yield from papers_of(supply)


def papers_of(pad: Supply) -> Iterator[Supply]:
    """The numbered papers that a pad holds, each a supply that can be cut: ``shoal-pad-4``."""
    for number in range(1, pad.designs + 1):
        yield replace(
            pad,
            slug=f"{pad.slug}-{number}",
            name=f"{pad.name} {number}",
            pad=pad.slug,
            number=number,
            designs=0,
            copies=0,
            opening=None,
            scraps=(),
        )


def _supply(
    one: InventoryFile, slug: str, written: SupplyWritten, settings: Settings, report: Report
) -> Supply | None:
    path: Path = ("supplies", slug)
    before = report.mark()
    size = report.read(one.place(*path, "size"), _size, written.size, settings.unit)
    usual = "sheet" if written.size else "piece"
    unit, units = report.read(one.place(*path, "unit"), _units, written.unit or usual, size) or (usual, "")
    designs, copies = report.read(one.place(*path, "designs"), _designs, written.designs) or (0, 0)
    colour = report.read(one.place(*path, "colour"), _colour, written.colour)
    grammage = report.read(one.place(*path, "weight"), _grammage, written.weight)
    link = report.read(one.place(*path, "link"), _link, written.link)
    opening, scraps = _opening(one, path, written.opening, (unit, units), settings, report)
    front = report.read(one.place(*path, "front"), _side, written.front) or PaperSide()
    back = report.read(one.place(*path, "back"), _side, written.back) or PaperSide()
    if report.errors_since(before):
        return None
    supply = Supply(
        slug=slug,
        name=written.name,
        kind=written.kind,
        unit=unit,
        units=units,
        length_unit=unit_named(written.size or "") or settings.unit,
        size=size,
        grain=Grain(written.grain),
        front=front,
        designs=designs,
        copies=copies,
        back=back,
        colours=(colour,) if colour else (),
        grammage=grammage,
        opening=opening,
        scraps=scraps,
        link=link or "",
        about=written.about or "",
        place=key_place(one.node, path),
    )
    return replace(supply, scraps=tuple(replace(one, size=supply.piece(one.size)) for one in scraps))


def _opening(
    one: InventoryFile,
    supply: Path,
    written: OpeningWritten | None,
    units: tuple[str, str],
    settings: Settings,
    report: Report,
) -> tuple[Opening | None, tuple[Scrap, ...]]:
    if written is None:
        return None, ()
    path = (*supply, "opening")
    date = report.read(one.place(*path, "date"), read_date, written.date)
    worth = report.read(one.place(*path, "worth"), _worth, written.worth, settings.currency)
    scraps: list[Scrap] = []
    for i, text in enumerate(written.scraps):
        place = one.place(*path, "scraps", i)
        scrap = report.read(place, _scrap, text, date or dt.date.min, settings, place)
        scraps += [scrap] if scrap else []
    if written.worth and written.amount is None:
        report.error(
            one.place(*path, "worth"),
            "a worth is given, and no amount that is worth it; write the amount too",
        )
    if written.amount is None or date is None:
        return None, tuple(scraps)
    quantity = report.read(one.place(*path, "amount"), parse_amount, written.amount, *units)
    if quantity is None:
        return None, tuple(scraps)
    return Opening(date, quantity, worth, place=one.place(*path)), tuple(scraps)


def _something(text: str, supply: Supply) -> Fraction:
    """An amount above nothing."""
    quantity = parse_amount(text, supply.unit, supply.units)
    if not quantity:
        raise MeasureError(f"“{text}” is nothing; leave the line out")
    return quantity


def _units(text: str, size: Size | None) -> tuple[str, str]:
    """What the supply is counted in, one and several."""
    unit, units = read_unit(text)
    if size and is_measured(unit):
        raise MeasureError(
            f"a supply with a size is counted, and “{unit}” is a measure; leave unit out,"
            " and write the measure behind the size"
        )
    return unit, units


def _size(text: str | None, unit: Unit) -> Size | None:
    return parse_size(text, unit) if text else None


def _worth(text: str | None, currency: Currency) -> int | None:
    return parse_money(text, currency) if text else None


def _scrap(text: str, date: dt.date, settings: Settings, place: Place) -> Scrap:
    """``2 of 4 x 9, worth 0.40``."""
    found = re.fullmatch(
        r"(?:(?P<count>[0-9]{1,4})\s+of\s+)?(?P<size>[^,]+)(?:,\s*worth\s+(?P<worth>\S+))?", text.strip()
    )
    if found is None:
        raise MeasureError(f"“{text}” is no scrap; write for example 2 of 4 x 9, worth 0.40")
    size = parse_size(found["size"], settings.unit)
    value = _worth(found["worth"], settings.currency)
    return Scrap(size, int(found["count"] or 1), value, date, place=place)


def _colour(text: str | None) -> str:
    if text and not re.fullmatch(r"#[0-9a-fA-F]{6}", text):
        raise MeasureError(f"“{text}” is not a colour; write # and six figures, like #c3d6cf, in quotes")
    return (text or "").lower()


def _designs(text: str | None) -> tuple[int, int]:
    """``12 x 2``: twelve papers, two sheets of each."""
    if not text:
        return 0, 0
    found = re.fullmatch(r"([0-9]{1,3})\s*[x×]\s*([0-9]{1,3})", text)
    if found is None or "0" in found.groups():
        raise MeasureError(
            f"“{text}” does not say how many papers a pad holds, and how often; write for example 12 x 2"
        )
    return int(found[1]), int(found[2])


def _side(text: str | None) -> PaperSide:
    look, _, direction = (text or "").rpartition(",")
    if text and direction.strip() in list(Direction):
        return PaperSide(look.strip(), Direction(direction.strip()))
    return PaperSide(text or "")


def _grammage(text: str | None) -> Fraction | None:
    if not text:
        return None
    if re.search(r"lb|pound|#", text):
        raise MeasureError(f"“{text}” is in pounds; write the weight in g/m², like 216 g/m²")
    return parse_number(re.sub(r"\s*g(sm|/m²|/m2)?$", "", text))


def _link(text: str | None) -> str:
    if text and not re.fullmatch(r"(https?://|mailto:)\S+", text):
        raise MeasureError(f"“{text}” is not a link; it begins with https://, http:// or mailto:")
    return text or ""


def purchases_of(
    one: InventoryFile, known: KnownSupplies, settings: Settings, report: Report
) -> Iterator[Purchase]:
    """The lines of all orders in a file, each with its share of the delivery."""
    for i, order in enumerate(one.written.purchases):
        path = ("purchases", i)
        date = report.read(one.place(*path, "date"), read_date, order.date)
        delivery = report.read(one.place(*path, "delivery"), _worth, order.delivery, settings.currency)
        lines = _lines(one, path, order, known, settings, report)
        if delivery and len(lines) == len(order.lines) and all(line.value is None for line in lines):
            place = one.place(*path, "delivery")
            report.error(place, "a delivery is given, and no line has a price to spread it over")
        if date is not None:
            yield from _with_delivery([replace(line, date=date) for line in lines], delivery or 0)


def _lines(
    one: InventoryFile,
    path: Path,
    order: OrderWritten,
    known: KnownSupplies,
    settings: Settings,
    report: Report,
) -> list[Purchase]:
    lines: list[Purchase] = []
    for i, text in enumerate(order.lines):
        place = one.place(*path, "lines", i)
        line = report.read(place, read_order_line, text)
        supply = known.find(line.supply, place, report) if line else None
        if line is None or supply is None:
            continue
        quantity = report.read(place, _something, line.amount, supply)
        before = report.mark()
        value = report.read(place, _worth, line.price, settings.currency)
        if quantity is not None and not report.errors_since(before):
            lines.append(Purchase(dt.date.min, supply.slug, quantity, value, order.from_ or "", place=place))
    return lines


def _with_delivery(lines: list[Purchase], delivery: int) -> Iterator[Purchase]:
    """The delivery is part of the cost (IAS 2, paragraph 10): spread by price over the priced lines."""
    weights = [Fraction(line.value or 0) for line in lines]
    if not any(weights):  # gifts alone: each line bears an equal share
        weights = [Fraction(line.value is not None) for line in lines]
    shares = share(delivery, weights)
    for line, part in zip(lines, shares, strict=True):
        yield line if line.value is None else replace(line, value=line.value + part)


def counts_of(one: InventoryFile, known: KnownSupplies, report: Report) -> Iterator[Count]:
    """What was found on each day of counting."""
    for i, counted in enumerate(one.written.counts):
        date = report.read(one.place("counts", i, "date"), read_date, counted.date)
        for j, text in enumerate(counted.found):
            place = one.place("counts", i, "found", j)
            named = report.read(place, read_found, text)
            supply = known.find(named.supply, place, report) if named else None
            if named is None or supply is None or date is None:
                continue
            quantity = report.read(place, parse_amount, named.amount, supply.unit, supply.units)
            if quantity is not None:
                yield Count(date, supply.slug, quantity, place=place)
