"""Collating: which papers the parts of each make come from, and how many sets that gives at most."""
