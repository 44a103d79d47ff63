"""Problems as a terminal shows them: place, sentence, the line and a caret."""

from __future__ import annotations

from batchleaf.facts import Archive, Problem, Weight
from batchleaf.measure.amounts import plural
from batchleaf.measure.signs import on_one_line, with_turns_shown


def told(problem: Problem) -> str:
    """``file:line:column: sentence`` with the line it speaks of and a caret below; a remark is one line."""
    place = problem.place
    weight = "" if problem.weight is Weight.ERROR else f"{problem.weight.value}: "
    head = on_one_line(f"{place.file}:{place.line}:{place.column}: {weight}{problem.sentence}")
    lines = [head]
    if problem.line_text.strip() and problem.weight is not Weight.REMARK:
        lines += [f"    {with_turns_shown(problem.line_text)}", f"    {' ' * (place.column - 1)}^"]
    lines += [f"    {line}" for line in problem.paste.splitlines()]
    return "\n".join(lines)


def told_in_short(archive: Archive) -> str:
    """One line of what was read."""
    counts = (
        (len(archive.projects), "batch"),
        (sum(not supply.pad for supply in archive.supplies), "supply"),
        (len(archive.tools), "tool"),
        (len(archive.purchases), "line of purchases"),
        (len(archive.counts), "count"),
        (len(archive.series), "series"),
        (len(archive.designs), "design"),
    )
    said = [f"{count} {noun if count == 1 or noun == 'series' else _several(noun)}" for count, noun in counts]
    return f"Read {', '.join(said[:-1])} and {said[-1]}."


def _several(noun: str) -> str:
    first, of, rest = noun.partition(" of ")
    return f"{plural(first)}{of}{rest}"
