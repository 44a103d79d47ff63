"""What is to be understood of how parts are stuck and makes are packed."""

from __future__ import annotations

from collections.abc import Mapping

from batchleaf.facts import Coat, Dots, Part, Strips, Supply
from batchleaf.measure.display import NBSP, show_length, show_number, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.records.explaining.drawer import in_its_unit
from batchleaf.records.nodes import Plain
from batchleaf.records.packing import read_packing_line
from batchleaf.records.written import PartWritten


def stick_in_full(written: PartWritten, part: Part, supplies: Mapping[str, Supply]) -> dict[str, Plain]:
    """What ``stick`` would say of a part; nothing of one that is not stuck and does not say so."""
    if written.stick:
        return {"stick": in_its_unit(written.stick, supplies)}
    return {"stick": part.stuck.supply} if part.stuck else {}


def why_stuck(part: Part, supplies: Mapping[str, Supply], unit: Unit) -> str:
    """``stuck with double-sided tape: two long sides, 140 mm each``; nothing of what is not stuck."""
    if part.stuck is None:
        return ""
    supply = supplies[part.stuck.supply]
    said = f"stuck with {supply.name}"
    amount = "" if part.stuck.amount is None else f"{show_number(part.stuck.amount)} {supply.units} each"
    match supply.sticks if amount else None:
        case Strips(sides=sides):
            said += f": {sides.value}, {show_length(sides.along(part.size), unit)} {unit.value} each"
        case Dots(count=count, area=area, least=least):
            of = f"{count} per {show_size(area, unit)} {unit.value}, at least {least}"
            said += f": {of}, so {amount}"
        case Coat(amount=of_area, area=area):
            of = f"{show_number(of_area)} {supply.units} per {show_size(area, unit)} {unit.value}"
            said += f": {of}, so {amount}"
        case None:
            said += "; supplies says how much"
    return said.replace(NBSP, " ")


def packing_in_full(text: str, supplies: Mapping[str, Supply]) -> str:
    """``clear-bag 1 piece per 5`` for what is written ``clear-bag per 5``."""
    line, per, makes = text.strip().rpartition(" per ")
    named = read_packing_line(text).named
    counted = in_its_unit(f"{line or makes}{'' if named.amount else ' 1'}", supplies)
    return f"{counted}{per}{makes}" if per else counted
