"""A design that several batches share, and these side by side."""

from __future__ import annotations

from batchleaf.core.figures import Figures
from batchleaf.facts import Design
from batchleaf.views import site_map
from batchleaf.views.about_batch import credit_line
from batchleaf.views.compare.compared import compared
from batchleaf.views.home import gallery
from batchleaf.views.pages import DesignPage
from batchleaf.views.pictures import Prepared
from batchleaf.views.words import batches_counted, capitalised, counted


def designs_made(figures: Figures) -> tuple[Design, ...]:
    """The designs to which there is a batch."""
    return tuple(design for design in figures.archive.designs if figures.of_design(design.slug))


def design_page(design: Design, figures: Figures, prepared: Prepared) -> DesignPage:
    """One design."""
    here = site_map.design(design.slug)
    batches = figures.of_design(design.slug)
    made = sum(batch.project.finished for batch in batches)
    thing = batches[0].project
    number = capitalised(batches_counted(len(batches)))
    return DesignPage(
        title=design.title,
        sentence=(f"{number} to one design: {counted(made, thing.thing, thing.things)}.",),
        credits=(credit_line(design.credit),) if design.credit else (),
        entries=gallery(batches, figures, prepared, here),
        compared=compared(batches, figures, here) if len(batches) > 1 else None,
    )
