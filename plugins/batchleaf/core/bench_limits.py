"""What the tools that a batch names cannot do: images too large, cuts too long, strips too narrow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import chain
from typing import Final

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.core.dealing import Supplies
from batchleaf.core.geometry.lying import Lying, MadeUp, put_together
from batchleaf.core.geometry.room import has_room_for
from batchleaf.facts import Cut, Image, ImageUse, Part, Place, Problem, Project, Tool, Weight
from batchleaf.measure.display import show_length, show_size
from batchleaf.measure.lengths import Size, Unit

Tools = Mapping[str, Tool]


REMEDY: Final = "cut it last from a wide piece, or hold it with low-tack tape"
"""What is usually done about a narrow strip (common practice)."""


def bench_limits(
    project: Project, cutting: Cutting | None, supplies: Supplies, tools: Tools
) -> Iterator[Problem]:
    """One notice for each limit of a tool that the batch runs into."""
    made = put_together(project)
    for part in project.parts:
        for use in (*part.stamps, *part.dies):
            yield from _too_large(part, use, tools[use.tool], project.unit)
        for use in part.stamps:
            stamped = [one for one in made.lying if one.part == part] if made else ()
            yield from _partly_hidden(part, use, tools[use.tool], stamped, made, project.unit)
    trimmers = _trimmers(project, tools)
    if cutting is None or not trimmers:
        return
    laid = [lay_out(plan, cutting.job) for plan in cutting.plans]
    cut = [cutting.sheets[plan.stock] for plan in cutting.plans]
    place = project.cut[0].place if project.cut else project.place
    longest = max(chain(_trimmed(cut, supplies), map(_length, _cuts(laid))), default=Fraction(0))
    yield from _too_long(longest, trimmers, project.unit, place)
    if (held := narrowest_held(project, tools)) is not None:
        yield from _too_narrow(laid, trimmers, held, project, place)


def narrowest_held(project: Project, tools: Tools) -> Fraction | None:
    """The narrowest strip that the batch's trimmers hold; ``None`` where no limit is known of one."""
    trimmers = _trimmers(project, tools)
    limits = [tool.narrowest_strip for tool in trimmers if tool.narrowest_strip is not None]
    return min(limits) if limits and len(limits) == len(trimmers) else None


def _trimmers(project: Project, tools: Tools) -> list[Tool]:
    return [tools[slug] for slug in project.tools if "trimmer" in tools[slug].kind]


def images_of(use: ImageUse, tool: Tool) -> tuple[Image, ...]:
    """The images that are meant: those numbered, or the only one that the set has."""
    if not use.numbers:
        return tool.images if len(tool.images) == 1 else ()
    return tuple(image for image in tool.images if image.number in use.numbers)


def _too_large(part: Part, use: ImageUse, tool: Tool, unit: Unit) -> Iterator[Problem]:
    for image in images_of(use, tool):
        if image.size is not None and not _lies_on(image.size, part.size):
            yield _notice(
                part.place,
                f"{_named(image, tool, unit)}, larger than {part.letter},"
                f" {show_size(part.size, unit)} {unit.value}; check both sizes",
            )


def _partly_hidden(
    part: Part, use: ImageUse, tool: Tool, stamped: Sequence[Lying], made: MadeUp | None, unit: Unit
) -> Iterator[Problem]:
    """An image that the part would hold, were it not for what lies on that."""
    for image in images_of(use, tool):
        if made is None or image.size is None or not _lies_on(image.size, part.size):
            continue
        if not all(has_room_for(image.size, made, one) for one in stamped):
            yield _notice(
                part.place,
                f"{_named(image, tool, unit)}, and no place of {part.letter} that stays in sight is so large",
            )


def _named(image: Image, tool: Tool, unit: Unit) -> str:
    named = f"“{image.words}”" if image.words else f"image {image.number}"
    size = f"{show_size(image.size, unit)} {unit.value}" if image.size else ""
    return f"{named} of {tool.name} is {size}"


def _lies_on(image: Size, size: Size) -> bool:
    """An image may be turned before it is pressed."""
    small, large = image.upright, size.upright
    return small.width <= large.width and small.height <= large.height


def _cuts(laid: Sequence[LaidOut]) -> Iterator[CutStep]:
    return chain.from_iterable(one.cuts for one in laid)


def _length(cut: CutStep) -> Fraction:
    return cut.piece.height if cut.axis is Axis.X else cut.piece.width


def _trimmed(cuts: Sequence[Cut], supplies: Supplies) -> Iterator[Fraction]:
    """Trimming a sheet is a cut as well, along the edge that falls away."""
    for cut in cuts:
        sheet, trim = supplies[cut.supply].sheet, supplies[cut.supply].trim
        if cut.scrap is None and (trim.left or trim.right):
            yield sheet.height
        if cut.scrap is None and (trim.top or trim.bottom):
            yield sheet.width


def _too_long(longest: Fraction, trimmers: Sequence[Tool], unit: Unit, place: Place) -> Iterator[Problem]:
    reaches = [tool.longest_cut for tool in trimmers if tool.longest_cut is not None]
    if len(reaches) < len(trimmers) or longest <= max(reaches):
        return
    whose = f"{trimmers[0].name} makes none" if len(trimmers) == 1 else "none of its trimmers makes one"
    yield _notice(
        place,
        f"the plan has a cut of {show_length(longest, unit)} {unit.value}, and {whose} longer than"
        f" {show_length(max(reaches), unit)} {unit.value}",
    )


def _too_narrow(
    laid: Sequence[LaidOut], trimmers: Sequence[Tool], least: Fraction, project: Project, place: Place
) -> Iterator[Problem]:
    """The narrowest part and the narrowest strip left, each where no trimmer holds it."""
    unit = project.unit
    whose = f"{trimmers[0].name} holds none" if len(trimmers) == 1 else "none of its trimmers holds one"
    rest = f"and {whose} below {show_length(least, unit)} {unit.value}"
    on_sheets = {placed.part for one in laid for placed in one.parts}
    for part in project.cut_parts:
        width = part.cut_size.upright.width
        if part.letter in on_sheets and width < least:
            yield _notice(
                part.place,
                f"{part.letter} is a strip of {show_length(width, unit)} {unit.value}, {rest}; {REMEDY}",
            )
    left = min((rect.size.upright.width for one in laid for rect in one.leftovers), default=least)
    if left < least:
        yield _notice(place, f"the plan leaves a strip of {show_length(left, unit)} {unit.value}, {rest}")


def _notice(place: Place, sentence: str) -> Problem:
    return Problem(place, sentence, Weight.NOTICE)
