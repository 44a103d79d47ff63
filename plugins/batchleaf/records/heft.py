"""How thick a supply is, what one of it weighs, and which envelope it is."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.facts import Supply
from batchleaf.measure.amounts import is_measured, measure_of
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_size
from batchleaf.measure.mass import parse_mass
from batchleaf.measure.thickness import parse_thickness
from batchleaf.records.inventory import Entry
from batchleaf.records.written import SupplyWritten


def with_heft(entry: Entry, supply: Supply, written: SupplyWritten) -> Supply:
    """The supply with its thickness, its weight and the size of the envelope that it is."""
    return replace(
        supply,
        thickness=entry.read("thickness", read_thickness, written.thickness, supply.unit),
        weighs=entry.read("weighs", read_weighs, written.weighs, supply.unit),
        envelope=entry.read(
            "envelope", read_envelope, written.envelope, supply.unit, written.size, supply.length_unit
        ),
    )


def read_thickness(text: str, unit: str) -> Fraction:
    """Of one sheet or one piece, in mm. Raises :class:`MeasureError`."""
    if measure_of(unit) in ("volume", "mass"):
        raise MeasureError(f"what is kept in {unit} has no thickness; leave it out")
    return parse_thickness(text)


def read_weighs(text: str, unit: str) -> Fraction:
    """What one of its unit weighs, in grams. Raises :class:`MeasureError`."""
    if measure_of(unit) == "mass":
        raise MeasureError(f"this supply is kept in {unit}, so what it weighs is known; leave weighs out")
    return parse_mass(text)


def read_envelope(text: str, unit: str, size: str | None, length_unit: Unit) -> Size:
    """The size of an envelope. Raises :class:`MeasureError`."""
    if size is not None:
        raise MeasureError(
            "size is that of a sheet to be cut, and an envelope stays whole; leave size out, since envelope"
            " says how large it is"
        )
    if is_measured(unit):
        raise MeasureError(
            f"an envelope is counted, and this supply is kept in {unit}; leave envelope or the unit out"
        )
    return parse_size(text, length_unit)
