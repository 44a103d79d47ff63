"""Facts to figures. Pure: no files, no clock, no logging."""
