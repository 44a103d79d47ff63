"""Batchleaf: a page for every batch, worked out from the maker's own records."""

__version__ = "0.1.0"
