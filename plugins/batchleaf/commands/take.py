"""What is worked out for a batch, written into its record."""

from __future__ import annotations

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, nothing_written, refuse
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.telling import told
from batchleaf.writing.slugs import not_there
from batchleaf.writing.take_cut import CannotTakeError, cut_lines, with_cut


def take_cut(archive: Opened, slug: str, *, sure: bool) -> int:
    """Show the sheets that the plan of a batch needs, ask, and write them into its record."""
    worked = archive.worked()
    if worked.figures is None:
        sentences = "\n".join(told(problem) for problem in worked.errors)
        return refuse(f"Nothing was written, since not all records can be read:\n{sentences}")
    batch = worked.figures.batches.get(slug)
    if batch is None:
        return nothing_written(not_there(slug, worked.figures.batches))
    return _take(archive, batch, worked.figures, sure=sure)


def _take(archive: Opened, batch: BatchFigures, figures: Figures, *, sure: bool) -> int:
    if batch.cutting is None:
        return nothing_written("nothing is planned for this batch that could be cut")
    file = archive.projects / batch.project.slug / "project.yml"
    lines = cut_lines(batch.cutting.sheets.values(), {one.slug: one for one in figures.archive.supplies})
    try:
        record = with_cut(file.read_bytes(), lines)
    except CannotTakeError as error:
        return nothing_written(str(error))
    print("\n".join(["cut:", *(f"  - {line}" for line in lines)]))
    if not sure and not agrees(f"Write this into {file}?"):
        return refuse("Nothing was written.")
    file.write_bytes(record)
    print(f"Wrote {file}")
    return 0
