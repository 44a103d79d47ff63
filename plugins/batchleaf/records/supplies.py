"""Supplies: everything that is used up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from batchleaf.facts import NO_TERMS, Grain, PaperSide, Settings, Supply, Tie, Trim
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.grammage import in_pounds, parse_grammage
from batchleaf.measure.lengths import parse_size, unit_named
from batchleaf.records.amounts import read_some
from batchleaf.records.heft import with_heft
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.openings import with_opening
from batchleaf.records.report import Report
from batchleaf.records.sheets import (
    Colours,
    read_colours,
    read_counted_unit,
    read_designs,
    read_pack,
    read_side,
    read_trim,
)
from batchleaf.records.sticks import read_sticks
from batchleaf.records.terms import read_link, read_terms
from batchleaf.records.written import SupplyWritten


def supplies_of(one: InventoryFile, settings: Settings, report: Report) -> Iterator[Supply]:
    """The supplies that a file defines."""
    for slug, written in one.written.supplies.items():
        supply = _supply(Entry(one, ("supplies", slug), report), slug, written, settings)
        if supply is not None:
            yield supply


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
            mark=None,
            opening=None,
            scraps=(),
        )


def _supply(entry: Entry, slug: str, written: SupplyWritten, settings: Settings) -> Supply | None:
    mark = entry.report.mark()
    supply = _unsized(entry, slug, written, settings)
    supply = _counted(entry, supply, written)
    supply = with_heft(entry, _as_sheet(entry, supply, written), written)
    opening = Entry(entry.file, (*entry.path, "opening"), entry.report)
    supply = with_opening(supply, opening, written.opening, settings)
    return None if entry.report.errors_since(mark) else supply


def _unsized(entry: Entry, slug: str, written: SupplyWritten, settings: Settings) -> Supply:
    """What any supply has."""
    coloured = entry.read("colour", read_colours, written.colour) or Colours()
    return Supply(
        slug=slug,
        name=written.name,
        kind=written.kind,
        unit="sheet" if written.size else "piece",
        units="sheets" if written.size else "pieces",
        length_unit=unit_named(written.size or written.envelope or "") or settings.unit,
        size=entry.read("size", parse_size, written.size, settings.unit),
        colours=coloured.colours,
        colours_are_about=coloured.about,
        collection=written.collection or "",
        terms=entry.read("sale", read_terms, written.sale) or NO_TERMS,
        link=entry.read("link", read_link, written.link) or "",
        tie=Tie(written.disclose),
        about=written.about or "",
        place=entry.name_place,
    )


def _counted(entry: Entry, supply: Supply, written: SupplyWritten) -> Supply:
    """With the words it is counted and bought in, and how much of it sticks a part."""
    units = entry.read("unit", read_counted_unit, written.unit, supply.size)
    unit, several = units or (supply.unit, supply.units)
    designs, copies = entry.read("designs", read_designs, written.designs) or (0, 0)
    if designs and not written.size:
        entry.report.error(
            entry.place("designs"), "a pad of papers needs the size of a sheet; write size as well"
        )
    if written.by == "level" and (supply.size or designs or is_measured(unit)):
        entry.report.error(
            entry.place("by"),
            f"a level goes with bottles, jars and the like, and this is counted in {several};"
            " leave “by” out, or write its unit, like bottle",
        )
    pack = entry.read("pack", read_pack, written.pack, unit, designs)
    # Where the unit cannot be read nobody knows what would fit it, and that is told already.
    text = written.sticks if units or not written.unit else None
    counted = replace(
        supply,
        unit=unit,
        units=several,
        by_level=written.by == "level",
        designs=designs,
        copies=copies,
        pack=pack or 0,
        sticks=entry.read("sticks", read_sticks, text, unit, several, supply.length_unit),
    )
    return replace(
        counted,
        mark=entry.read("mark", read_some, written.mark if units or not written.unit else None, counted),
    )


def _as_sheet(entry: Entry, supply: Supply, written: SupplyWritten) -> Supply:
    """With its sides, its edges and its weight."""
    weight = written.weight
    return replace(
        supply,
        grain=Grain(written.grain),
        front=entry.read("front", read_side, written.front) or PaperSide(),
        back=entry.read("back", read_side, written.back) or PaperSide(),
        core=written.core or "",
        see_through=written.see_through == "yes",
        trim=_trim(entry, supply, written.trim),
        grammage=entry.read("weight", parse_grammage, weight),
        pounds=weight if weight and in_pounds(weight) else "",
    )


def _trim(entry: Entry, supply: Supply, text: str | None) -> Trim:
    if text and supply.size is None:
        # A size that cannot be read has been told of already.
        if entry.place("size") == entry.place():
            entry.report.error(
                entry.place("trim"), "a trim is given, and no size to cut it off; write size too"
            )
        return Trim()
    return (entry.read("trim", read_trim, text, supply.sheet, supply.length_unit) if text else None) or Trim()
