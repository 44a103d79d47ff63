"""What is worked out for a batch, written into its record."""

from __future__ import annotations

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, refuse
from batchleaf.writing.take_cut import CannotTakeError, cut_lines, with_cut


def take_cut(archive: Opened, slug: str, *, sure: bool) -> int:
    """Show the lines, ask, and write them into the record."""
    figures = archive.worked().figures
    if figures is None:
        return refuse("The records cannot all be read; see check.")
    batch = figures.batches.get(slug)
    if batch is None:
        return refuse(f"There is no batch “{slug}”.")
    if batch.cutting is None:
        return refuse("Nothing is planned for it that could be cut.")
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    lines = cut_lines(batch.cutting.sheets.values(), supplies)
    file = archive.projects / slug / "project.yml"
    try:
        text = with_cut(file.read_bytes().decode("utf-8"), lines)
    except CannotTakeError as error:
        return refuse(f"Nothing was written: {error}.")
    print("\n".join(["cut:", *(f"  - {line}" for line in lines)]))
    if not sure and not agrees(f"Write this into {file}?"):
        return refuse("Nothing was written.")
    file.write_bytes(text.encode("utf-8"))
    print(f"Wrote {file}")
    return 0
