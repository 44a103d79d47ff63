"""The parts of a make as the batch page lists them, and what is said of them beside the list."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from batchleaf.core.cutting.from_one_sheet import FromOneSheet
from batchleaf.core.figures import BatchFigures
from batchleaf.facts import ImageUse, Origin, Part, Project, ShownSide, Stuck, Supply, Tool
from batchleaf.measure.amounts import is_measured, plural
from batchleaf.measure.display import NBSP, show_number, show_other_size, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.views import site_map
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import Link, PartRow
from batchleaf.views.scoring import folded_in_words
from batchleaf.views.sentence import Supplies
from batchleaf.views.shape_in_words import shape_words
from batchleaf.views.words import listed

Tools = Mapping[str, Tool]


def part_rows(project: Project, supplies: Supplies, tools: Tools) -> tuple[PartRow, ...]:
    """One row for each part, in the order of the record."""
    return tuple(
        PartRow(
            letter=part.letter,
            name=part.name,
            folded=f"folds to {folded_in_words(part, project.unit)}" if part.scores else "",
            papers=_papers(part, supplies, site_map.batch(project.slug)),
            details=tuple(_details(part, supplies, tools, project.unit)),
            size=show_size(part.size, project.unit),
            other_size=show_other_size(part.size, project.unit),
            each=str(part.each),
            cut="" if part.origin is Origin.READY else str(_count(part, project)),
        )
        for part in project.parts
    )


def _count(part: Part, project: Project) -> int:
    return part.each * project.begun + part.extra


def _papers(part: Part, supplies: Supplies, here: str) -> tuple[str | Link, ...]:
    papers = together(supplies[slug] for slug in part.papers)
    before = f"any {part.any_of} of " if part.any_of else ""
    before = "scraps of " if part.origin is Origin.BY_HAND else before
    return tuple(_after(before, supply_named(paper, here)) for paper in papers)


def _after(words: str, paper: str | Link) -> str | Link:
    return f"{words}{paper}" if isinstance(paper, str) else Link(f"{words}{paper.text}", paper.href)


def _details(part: Part, supplies: Supplies, tools: Tools, unit: Unit) -> Iterator[str]:
    """What the list does not measure: how it is cut, the side that shows, and what is pressed into it."""
    yield from shape_words(part, unit)
    if part.oversize:
        later = ", and trimmed later" if part.shape.is_rectangle else " first"
        yield f"cut {show_size(part.cut_size, unit)}{NBSP}{unit.word}{later}"
    if part.origin is Origin.READY:
        yield "ready-made"
    if part.side is ShownSide.BACK:
        looks = dict.fromkeys(supplies[slug].side(part.side).look for slug in part.papers)
        seen = [look for look in looks if look]
        yield f"shows the back: {listed(seen, last='or')}" if seen else "back side up"
    if part.stamps:
        yield f"stamped with {_images(part.stamps, tools)}"
    if part.dies:
        yield f"die-cut with {_images(part.dies, tools)}"
    if part.stuck:
        yield _stuck(part.stuck, supplies[part.stuck.supply])


def _stuck(stuck: Stuck, supply: Supply) -> str:
    """``stuck with double-sided tape``; ``on foam squares, 4 each`` for what is set on pieces of it."""
    amount = stuck.amount
    on_pieces = supply.unit == "piece" or bool(amount and amount.denominator == 1)
    if is_measured(supply.unit) or not (supply.named and on_pieces):
        return f"stuck with {supply.name}"
    count = f", {show_number(amount)}{NBSP}each" if amount else ""
    return f"on {_several(supply.name)}{count}"


def _several(name: str) -> str:
    """A name may be in the plural already."""
    return name if name.endswith("s") else plural(name)


def _images(uses: Sequence[ImageUse], tools: Tools) -> str:
    return listed([_image(use, tools[use.tool]) for use in uses])


def _image(use: ImageUse, tool: Tool) -> str:
    """The words of the image that is meant, or of those dealt round; a set that is one goes by its name."""
    if not use.numbers:
        return tool.name
    words = [image_words(tool, number) for number in use.numbers]
    return f"{listed(words, 'or')}, dealt round" if use.is_dealt else words[0]


def image_words(tool: Tool, number: int) -> str:
    """What an image of a set is called."""
    words = next((image.words for image in tool.images if image.number == number), "")
    return words or f"image {number} of {tool.name}"


def part_notes(batch: BatchFigures, supplies: Supplies) -> tuple[str, ...]:
    """What one sheet gives of each part, and what stands outside of the plan."""
    project = batch.project
    return (
        *_from_one_sheet(batch, supplies),
        *_by_hand(project, supplies),
        *_ready_made(project, supplies),
        *((f"One goes into the usual {project.envelope}.",) if _says_envelope(batch) else ()),
    )


def _says_envelope(batch: BatchFigures) -> bool:
    """Unless the page says by what it measures which envelope takes it."""
    told = batch.by_post is not None and batch.by_post.thickness is not None
    return bool(batch.project.envelope) and not told


def _from_one_sheet(batch: BatchFigures, supplies: Supplies) -> Iterator[str]:
    """Papers that give equally many are said together."""
    alike: dict[tuple[str, FromOneSheet], list[Supply]] = {}
    for one in batch.from_one_sheet:
        alike.setdefault((one.letter, one.count), []).append(supplies[one.supply])
    for (letter, count), papers in alike.items():
        names = listed([paper.name for paper in together(papers, "or")], last="or")
        grid = f", {count.grid} in a plain grid" if count.grid < count.through else ""
        least = "" if count.proved else "at least "
        stopped = f"; with cuts that stop part way {count.stopped}" if count.stopped > count.through else ""
        yield f"One {papers[0].unit} of {names} gives {least}{count.through} of {letter}{grid}{stopped}."


def _by_hand(project: Project, supplies: Supplies) -> Iterator[str]:
    alike: dict[tuple[str, ...], list[str]] = {}
    for part in project.parts:
        if part.origin is Origin.BY_HAND:
            alike.setdefault(part.papers, []).append(part.letter)
    for papers, letters in alike.items():
        names = listed([one.name for one in together((supplies[slug] for slug in papers), "or")], last="or")
        scraps = f"scraps of {names}" if names else "scraps"
        be, them = ("is", "it") if len(letters) == 1 else ("are", "them")
        yield f"{listed(letters)} {be} cut by hand from {scraps}; no plan and no account counts {them}."


def _ready_made(project: Project, supplies: Supplies) -> Iterator[str]:
    for part in project.parts:
        if part.origin is Origin.READY:
            names = listed([supplies[slug].name for slug in part.papers], last="or") or part.name
            yield f"{part.letter} is ready-made: {_count(part, project)}{NBSP}× {names}."
