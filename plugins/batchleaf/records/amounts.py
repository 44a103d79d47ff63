"""Amounts of a supply as records say them: in its own unit, in packs, in pads."""

from __future__ import annotations

import re
from fractions import Fraction

from batchleaf.facts import Supply
from batchleaf.measure.amounts import parse_amount
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import FRACTION_SIGNS, parse_number
from batchleaf.records.levels import is_level, read_level

_NAMED = re.compile(rf"(?P<name>\S.*?)\s+(?P<amount>(?:about\s+)?[0-9.{FRACTION_SIGNS}].*)")
_BUNDLES = re.compile(r"(?P<number>\S.*?)\s*\b(?P<bundle>pad|pack)s?", re.IGNORECASE)


def read_named(text: str) -> tuple[str, str]:
    """``chalk-card 12 sheets``: the name, and the amount from its number on; nothing where there is none."""
    found = _NAMED.fullmatch(text.strip())
    if found:
        return found["name"], found["amount"]
    name, _, rest = text.strip().partition(" ")
    return name, rest.strip()


def read_amount(text: str, supply: Supply) -> Fraction:
    """How many of the supply's own unit ``text`` says: ``3 sheets``, ``2 packs``, ``1 pad``, ``half``.

    Raises :class:`MeasureError`.
    """
    if is_level(text):
        return read_level(text, supply)
    bundled = _BUNDLES.fullmatch(text.strip())
    if bundled is None or bundled["bundle"].lower() == supply.unit:
        return parse_amount(text, supply.unit, supply.units)
    return parse_number(bundled["number"]) * _held(bundled["bundle"].lower(), text, supply)


def read_come_in(text: str, supply: Supply) -> Fraction:
    """As :func:`read_amount`; of a pad a number alone does not say whether pads or sheets came."""
    number = text.strip()
    if supply.designs and re.fullmatch(r"[0-9]+", number):
        pads, sheets = ("pad", supply.unit) if number == "1" else ("pads", supply.units)
        raise MeasureError(f"“{number}” does not say of what; write {number} {pads}, or {number} {sheets}")
    return read_amount(text, supply)


def read_some(text: str, supply: Supply) -> Fraction:
    """As :func:`read_come_in`, above nothing."""
    quantity = read_come_in(text, supply)
    if not quantity:
        raise MeasureError(f"“{text}” is nothing; leave the line out")
    return quantity


def _held(bundle: str, text: str, supply: Supply) -> int:
    """How many a pad or a pack of the supply holds; a pad may be called a pack."""
    held = supply.pad_sheets or (supply.pack if bundle == "pack" else 0)
    if held:
        return held
    if supply.pad:
        raise MeasureError(
            f"“{text.strip()}”: {supply.slug} is one paper of a pad; write {supply.pad} for whole pads,"
            f" or count {supply.units} here"
        )
    key = "designs, like 12 x 2" if bundle == "pad" else "pack, like 25"
    raise MeasureError(
        f"“{text.strip()}”: the drawer does not say how many a {bundle} of {supply.slug} holds;"
        f" write it there under {key}, or count {supply.units} here"
    )
