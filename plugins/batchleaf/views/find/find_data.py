"""What the script of the page filters: a script itself, since a page opened as a file may read no other.

Lists by the order of the batches, newest first; choices by their place in the list of the page.
"""

from __future__ import annotations

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Supply
from batchleaf.views.find.indexed import Indexed
from batchleaf.views.pictures import Prepared, cover_photo
from batchleaf.views.scripted import as_script
from batchleaf.views.sentence import short_line


def find_data(index: Indexed, figures: Figures, prepared: Prepared) -> str:
    """One assignment; no text of it can end a script."""
    projects = [batch.project for batch in index.batches]
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    photos = [cover_photo(project) for project in projects]
    data = {
        "titles": [project.title for project in projects],
        "slugs": [project.slug for project in projects],
        "lines": [short_line(batch, figures.settings.currency) for batch in index.batches],
        "days": [project.date.isoformat() for project in projects],
        "pictures": [prepared[photo.path].webp[0][0] if photo else "" for photo in photos],
        "shapes": [_shape(batch, supplies) for batch in index.batches],
        "choices": {one.view.key: one.true_of for one in index.chosen},
        "limits": {one.view.key: one.limits for one in index.measured},
        "numbers": {one.view.key: one.numbers for one in index.measured},
    }
    return f"window.batchleafFind = {as_script(data)};\n"


def _shape(batch: BatchFigures, supplies: dict[str, Supply]) -> tuple[int, int, str] | None:
    """Where there is no photo: width and height in mm, for the eye alone, and the colour of a paper."""
    project = batch.project
    if project.photos or project.finished_size is None:
        return None
    colours = (supplies[slug].colour for part in project.parts for slug in part.papers)
    size = project.finished_size
    return round(size.width), round(size.height), next((colour for colour in colours if colour), "")
