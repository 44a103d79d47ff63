"""What the script that lays batches side by side is told of one: a call, since files may read no other."""

from __future__ import annotations

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views.compare.told import told_of
from batchleaf.views.scripted import as_script
from batchleaf.views.words import long_date


def compare_data(batch: BatchFigures, figures: Figures) -> str:
    """``batchleafTold("slug", {…});``."""
    project = batch.project
    data = {
        "title": project.title,
        "date": long_date(project.date),
        "day": project.date.isoformat(),
        "told": told_of(batch, figures),
    }
    return f"window.batchleafTold({as_script(project.slug)}, {as_script(data)});\n"
