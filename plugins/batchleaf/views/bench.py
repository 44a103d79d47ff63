"""The bench: every tool with its limits, stamps and dies with their images."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from batchleaf.core.figures import Figures
from batchleaf.facts import Image, Project, StackLimit, Tool
from batchleaf.measure.display import show_length, show_number, show_size
from batchleaf.measure.lengths import INCHES, MM_PER_INCH, Unit
from batchleaf.views import site_map
from batchleaf.views.disclosure import disclosure_for, tie_of
from batchleaf.views.links import elsewhere
from batchleaf.views.pages import BenchPage, BenchShelf, ImageRow, Line, Link, ToolRow
from batchleaf.views.terms import terms_in_words
from batchleaf.views.words import capitalised, counted, listed, number_word


def bench_page(figures: Figures) -> BenchPage:
    """All tools, by kind."""
    tools = figures.archive.tools
    return BenchPage(
        title="Bench",
        sentence=_sentence(tools),
        disclosure=disclosure_for(tools, figures.settings),
        shelves=tuple(
            BenchShelf(capitalised(kind), tuple(_row(tool, figures) for tool in tools if tool.kind == kind))
            for kind in sorted({tool.kind for tool in tools})
        ),
    )


def tools_needed(project: Project) -> frozenset[str]:
    """The tools that a batch names, and the stamps and dies of its parts."""
    images = (use.tool for part in project.parts for use in (*part.stamps, *part.dies))
    return frozenset((*project.tools, *images))


def _sentence(tools: tuple[Tool, ...]) -> Line:
    images = sum(len(tool.images) for tool in tools)
    said = f"{capitalised(number_word(len(tools)))} {'tool' if len(tools) == 1 else 'tools'}"
    if images:
        said += f", with {counted(images, 'image', 'images')} to stamp or cut"
    return (f"{said}.",)


def _row(tool: Tool, figures: Figures) -> ToolRow:
    return ToolRow(
        anchor=site_map.tool(tool.slug),
        name=tool.name,
        about=tool.about,
        facts=tuple(_facts(tool)),
        images=tuple(_image(image, tool) for image in tool.images),
        link=elsewhere(tool),
        tie=tie_of(tool) if not tool.link else "",
        used_in=tuple(
            Link(batch.project.title, site_map.href(site_map.BENCH, site_map.batch(batch.project.slug)))
            for batch in figures.batches.values()
            if tool.slug in tools_needed(batch.project)
        ),
    )


def _facts(tool: Tool) -> Iterator[tuple[str, str]]:
    unit = tool.length_unit
    if tool.longest_cut:
        yield "Longest cut", f"{show_length(tool.longest_cut, unit)} {unit.value}"
    if tool.narrowest_strip:
        yield "Narrowest strip", f"{show_length(tool.narrowest_strip, unit)} {unit.value}"
    if tool.kerf:
        yield "Taken away by a cut", f"{show_length(tool.kerf, unit)} {unit.value}"
    if tool.stack:
        yield "At once", listed([_stack(limit) for limit in tool.stack])
    if tool.grooves:
        yield (
            "From groove to groove",
            listed([groove_in_words(groove, unit) for groove in tool.grooves], "or"),
        )
    if tool.plate:
        yield "Plate", f"{show_size(tool.plate, unit)} {unit.value}"
    if tool.stroke:
        yield "One stroke", f"{tool.stroke} seconds"
    if terms := terms_in_words(tool.terms):
        yield "Selling what is made", terms


def groove_in_words(groove: Fraction, unit: Unit) -> str:
    """In inches or in mm, whichever says it exactly: a board often has a set of each."""
    own = (
        Unit.INCH if 16 % (groove / MM_PER_INCH).denominator == 0 else unit.other if unit in INCHES else unit
    )
    return f"{show_length(groove, own)} {own.word}"


def _stack(limit: StackLimit) -> str:
    sheets = counted(limit.sheets, "sheet", "sheets")
    return sheets if limit.up_to is None else f"{sheets} of up to {show_number(limit.up_to, 0)} g/m²"


def _image(image: Image, tool: Tool) -> ImageRow:
    unit = tool.length_unit
    size = f"{show_size(image.size, unit)} {unit.value}" if image.size else ""
    return ImageRow(str(image.number), image.words, size)
