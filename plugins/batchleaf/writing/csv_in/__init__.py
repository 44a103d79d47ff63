"""Spreadsheets into records: what a CSV file says of supplies or purchases, as a new file of the drawer.

Nothing is evaluated, nothing that is there is changed: what can be taken becomes a file
of its own beside the others, and what cannot is told with its line.
"""
