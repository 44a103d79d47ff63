"""How the parts of each make are put together: one sentence, and a table to sort the parts by."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from batchleaf.core.collate.makes import AlikeMakes, Copies
from batchleaf.core.collate.question import Paper
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Part, Project
from batchleaf.measure.display import NBSP
from batchleaf.views import site_map
from batchleaf.views.collating_words import mark_of, paper_name, sentence_of
from batchleaf.views.pages import CollatingView, SortedColumn, SortedMakes, SortedPart
from batchleaf.views.part_rows import Tools, image_words
from batchleaf.views.sentence import Supplies
from batchleaf.views.tables.collating import collating_table
from batchleaf.views.words import capitalised, listed

LEFT = "from what is left"
"""Why a make does not keep the rule."""


def collating_view(
    batch: BatchFigures, figures: Figures, supplies: Supplies, tools: Tools
) -> CollatingView | None:
    """The section of a batch that has something to collate."""
    found, project = batch.collated, batch.project
    if found is None:
        return None
    parts = [part for part in project.parts if part.letter in found.makes[0].parts]
    columns = tuple(_column(part, found.makes, supplies) for part in parts)
    return CollatingView(
        sentence=sentence_of(found, project, supplies),
        things=capitalised(project.things),
        columns=columns,
        rows=tuple(_row(makes, columns, supplies, tools) for makes in found.makes),
        csv=collating_table(batch, figures).link(site_map.batch(project.slug)),
        notes=(*_on_images(found.makes, project, tools), *_unnamed(found.makes, supplies)),
    )


def _column(part: Part, makes: Sequence[AlikeMakes], supplies: Supplies) -> SortedColumn:
    papers = [copy.paper for one in makes for copy in one.parts[part.letter] if copy.paper]
    pads = {supplies[paper.supply].pad or paper.supply for paper in papers}
    boxed = papers and all(mark_of(paper, supplies) for paper in papers)
    pad = supplies[pads.pop()].name if boxed and len(pads) == 1 else ""
    return SortedColumn(part.letter, part.name, pad)


def _row(makes: AlikeMakes, columns: Sequence[SortedColumn], supplies: Supplies, tools: Tools) -> SortedMakes:
    between = "to" if makes.last > makes.first + 1 else "and"
    several = f"{makes.first}{NBSP}{between}{NBSP}{makes.last}"
    return SortedMakes(
        makes=several if makes.last > makes.first else str(makes.first),
        cells=tuple(tuple(_cell(makes.parts[one.letter], one, supplies, tools)) for one in columns),
        remark="" if makes.keeps else LEFT,
    )


def _cell(copies: Copies, column: SortedColumn, supplies: Supplies, tools: Tools) -> Iterator[SortedPart]:
    for copy, count in Counter(copies).items():
        paper = copy.paper
        mark = mark_of(paper, supplies) if paper else ""
        yield SortedPart(
            count="" if count == 1 or column.pad else f"{count}{NBSP}×",
            paper=paper_name(paper, supplies) if paper and not column.pad else "",
            colour=supplies[paper.supply].colour if paper and not mark else "",
            boxes=(mark,) * (count if column.pad else 1) if mark else (),
            images=listed([image_words(tools[tool], number) for tool, number in copy.images]),
        )


# --- beside the table --------------------------------------------------------------


def _on_images(makes: Sequence[AlikeMakes], project: Project, tools: Tools) -> Iterator[str]:
    """``On C: high water 8, slack tide 8.``"""
    for part in project.parts:
        counts = Counter[tuple[str, int]]()
        for alike in makes if part.dealt_images else ():
            for copy in alike.parts[part.letter]:
                counts.update(dict.fromkeys(copy.images, alike.last - alike.first + 1))
        for use in part.dealt_images:
            told = (
                f"{image_words(tools[use.tool], number)}{NBSP}{counts[use.tool, number]}"
                for number in use.numbers
            )
            yield f"On {part.letter}: {', '.join(told)}."


def _unnamed(makes: Sequence[AlikeMakes], supplies: Supplies) -> Iterator[str]:
    """What the marks are where the record says no more than “any 3 of” a pad."""
    copies = [copy for one in makes for some in one.parts.values() for copy in some]
    pads: dict[str, set[Paper]] = {}
    for paper in (copy.paper for copy in copies if copy.paper and copy.paper.nth):
        pads.setdefault(paper.supply, set()).add(paper)
    for pad, papers in pads.items():
        marks = listed([mark_of(paper, supplies) for paper in sorted(papers)])
        yield f"{marks} are papers of {supplies[pad].name}; the record leaves open which."
