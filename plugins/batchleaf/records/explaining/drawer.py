"""What a file of the drawer leaves to be understood."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from batchleaf.facts import Direction, Dots, Sale, Strips, Supply
from batchleaf.measure.amounts import plural
from batchleaf.measure.lengths import FRACTION_SIGNS, Unit
from batchleaf.measure.spelling import with_unit
from batchleaf.records.explaining.inferred import DEFAULT, Inferred, defaults, differing
from batchleaf.records.inventory import InventoryFile
from batchleaf.records.nodes import Path
from batchleaf.records.sticks import per_area
from batchleaf.records.tools import image_in_full
from batchleaf.records.written import OpeningWritten, SupplyWritten, ToolWritten

SITES_UNIT = "the site’s unit"


def of_the_drawer(one: InventoryFile, supplies: Mapping[str, Supply], unit: Unit) -> Iterator[Inferred]:
    """All that a file of the drawer means besides what it says; ``unit`` is the site's."""
    yield from defaults(one.written)
    if one.written.clearance:
        full = with_unit(one.written.clearance, unit)
        yield from differing((), "clearance", one.written.clearance, full, SITES_UNIT)
    for slug, supply in one.written.supplies.items():
        yield from _of_supply(("supplies", slug), supply, supplies[slug], unit)
    for slug, tool in one.written.tools.items():
        yield from _of_tool(("tools", slug), tool, unit)
    for i, order in enumerate(one.written.purchases):
        for j, line in enumerate(order.lines):
            amount, comma, price = line.partition(",")
            full = in_its_unit(amount, supplies) + comma + price
            yield from differing(("purchases", i, "lines"), j, line, full, "what it is counted in")
    for i, count in enumerate(one.written.counts):
        for j, line in enumerate(count.found):
            full = in_its_unit(line, supplies)
            yield from differing(("counts", i, "found"), j, line, full, "what it is counted in")


def in_its_unit(text: str, supplies: Mapping[str, Supply]) -> str:
    """``envelope 25`` with the word that the supply is counted in: ``envelope 25 pieces``."""
    slug, _, amount = text.strip().partition(" ")
    if slug not in supplies or not _is_bare(amount):
        return text
    return f"{text.strip()} {_unit_for(amount, supplies[slug])}"


def _is_bare(amount: str) -> bool:
    return bool(re.search(rf"[0-9{FRACTION_SIGNS}]$", amount))


def _unit_for(amount: str, supply: Supply) -> str:
    return supply.unit if amount == "1" else supply.units


def one_and_several(one: str, several: str) -> str:
    """``sheet``, or ``leaf, leaves`` where the plural is not the usual one."""
    return one if several == plural(one) else f"{one}, {several}"


def _of_supply(path: Path, written: SupplyWritten, supply: Supply, unit: Unit) -> Iterator[Inferred]:
    yield from defaults(written, path)
    named = one_and_several(supply.unit, supply.units)
    yield from differing(path, "unit", written.unit, named, "what it is counted in")
    if written.size:
        full = with_unit(written.size, unit)
        yield from differing(path, "size", written.size, full, SITES_UNIT)
        for key, side in (("front", written.front), ("back", written.back)):
            yield from differing(path, key, side, _with_direction(side), DEFAULT)
    if written.envelope:
        full = with_unit(written.envelope, unit)
        yield from differing(path, "envelope", written.envelope, full, SITES_UNIT)
    if written.trim:
        trim = _each_with_unit(written.trim, supply.length_unit)
        yield from differing(path, "trim", written.trim, trim, "the unit of its size")
    if written.sticks:
        full = _sticks(written.sticks, supply)
        yield from differing(path, "sticks", written.sticks, full, "the unit of the area, and the least")
    if written.weight and re.fullmatch(r"[0-9.]+", written.weight):
        yield Inferred(path, "weight", f"{written.weight} g/m²", "grammage")
    mark = (written.mark or "").strip()
    if _is_bare(mark):
        yield Inferred(path, "mark", f"{mark} {_unit_for(mark, supply)}", "what it is counted in")
    yield from differing(path, "sale", written.sale, written.sale or Sale.UNKNOWN.value, DEFAULT)
    if written.opening:
        yield from _of_opening((*path, "opening"), written.opening, supply, unit)


def _each_with_unit(text: str, unit: Unit) -> str:
    return ", ".join(with_unit(piece.strip(), unit) for piece in text.split(","))


def _sticks(text: str, supply: Supply) -> str:
    """``1 per 20 x 30 mm, at least 1`` for what is written ``1 per 20 x 30``."""
    found = None if isinstance(supply.sticks, Strips) else per_area(text)
    if found is None:
        return text
    least = f", at least {found.least or 1}" if isinstance(supply.sticks, Dots) else ""
    return f"{found.amount} per {with_unit(found.area, supply.length_unit)}{least}"


def _with_direction(side: str | None) -> str:
    words = (side or "").rpartition(",")[2].strip()
    if words in list(Direction):
        return side or ""
    return f"{side}, {Direction.ANY_WAY.value}" if side else Direction.ANY_WAY.value


def _of_opening(path: Path, written: OpeningWritten, supply: Supply, unit: Unit) -> Iterator[Inferred]:
    amount = written.amount
    if amount and re.fullmatch(r"[0-9./ ]+", amount):
        yield Inferred(path, "amount", f"{amount} {supply.units}", "what it is counted in")
    for i, text in enumerate(written.scraps):
        size, comma, worth = text.partition(",")
        count, of, bare = size.rpartition(" of ")
        full = f"{count or '1'}{of or ' of '}{with_unit(bare.strip(), unit)}{comma}{worth}"
        yield from differing((*path, "scraps"), i, text, full, SITES_UNIT)


def _of_tool(path: Path, written: ToolWritten, unit: Unit) -> Iterator[Inferred]:
    yield from defaults(written, path)
    for key, lengths in (
        ("longest", written.longest),
        ("narrowest", written.narrowest),
        ("grooves", written.grooves),
    ):
        if lengths:
            yield from differing(path, key, lengths, _each_with_unit(lengths, unit), SITES_UNIT)
    if written.plate:
        yield from differing(path, "plate", written.plate, with_unit(written.plate, unit), SITES_UNIT)
    for i, text in enumerate(written.images):
        yield from differing((*path, "images"), i, text, image_in_full(text, unit), SITES_UNIT)
    yield from differing(path, "sale", written.sale, written.sale or Sale.UNKNOWN.value, DEFAULT)
