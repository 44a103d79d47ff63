"""The companion notes of a batch: what stands on the sheet, and how large."""
