"""The records as written: which keys there are, and that each value is text.

Keys are spelt here and nowhere else. What a text means is read afterwards
(``projects``, ``inventory``, ``series``), since a length depends on the
record's unit and a role on the other records.
"""

from batchleaf.records.written.inventory import (
    CountWritten,
    InventoryWritten,
    OpeningWritten,
    OrderWritten,
    RatesWritten,
    SupplyWritten,
    ToolWritten,
)
from batchleaf.records.written.projects import DesignWritten, PartWritten, ProjectWritten
from batchleaf.records.written.recipients import RecipientsFileWritten, RecipientWritten
from batchleaf.records.written.series import SeriesFileWritten, SeriesWritten
from batchleaf.records.written.shape import Written, fields_at

__all__ = [
    "CountWritten",
    "DesignWritten",
    "InventoryWritten",
    "OpeningWritten",
    "OrderWritten",
    "PartWritten",
    "ProjectWritten",
    "RatesWritten",
    "RecipientWritten",
    "RecipientsFileWritten",
    "SeriesFileWritten",
    "SeriesWritten",
    "SupplyWritten",
    "ToolWritten",
    "Written",
    "fields_at",
]
