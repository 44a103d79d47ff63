"""Tables of pages as files for spreadsheets; a page that brings one needs :mod:`.table` alone."""
