"""What a sheet brings into an archive: the text of a new file of the drawer, held to the reader.

The file stands beside the others and changes none of them. Rows that the reader would
refuse are left out and told, until what is left is read without an error.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from batchleaf.facts import Settings
from batchleaf.measure.errors import MeasureError
from batchleaf.records.archive import Reading
from batchleaf.writing.csv_in.columns import Columns, Subject
from batchleaf.writing.csv_in.found import Brought, Found, Remark
from batchleaf.writing.csv_in.new_purchases import new_purchases
from batchleaf.writing.csv_in.new_supplies import new_supplies
from batchleaf.writing.csv_in.said import Said, said_in
from batchleaf.writing.csv_in.sheet import Sheet
from batchleaf.writing.csv_in.supplies import Usual


def brought_by(
    sheet: Sheet, columns: Columns, reading: Reading, settings: Settings, usual: Usual, first: Sequence[str]
) -> Brought:
    """What ``sheet`` brings into the archive of ``reading``, which has no error.

    ``first``: the lines that the new file begins with.
    Raises :class:`~batchleaf.writing.csv_in.columns.CannotMapError`.
    """
    found = Found()
    rows = list(_said(sheet, columns, settings, found))
    if columns.subject is Subject.SUPPLIES:
        lines, taken = new_supplies(rows, reading, settings, usual, found)
    else:
        lines, taken = new_purchases(rows, reading, settings, found)
    record = "".join(f"{line}\n" for line in (*first, "format: 1", *lines)) if lines else ""
    return found.brought(record, taken)


def _said(sheet: Sheet, columns: Columns, settings: Settings, found: Found) -> Iterator[Said]:
    for row in sheet.rows:
        try:
            yield said_in(row, columns, settings.currency, decimal_comma=sheet.decimal_comma)
        except MeasureError as error:
            found.faults.append(Remark(row.line, str(error)))
