"""What the record of a batch leaves to be understood."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from batchleaf.facts import Project, Rule, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.records.bases import read_base
from batchleaf.records.bench_lines import spell_work
from batchleaf.records.designs import KnownDesigns
from batchleaf.records.explaining.bases import spelt_base
from batchleaf.records.explaining.drawer import SITES_UNIT, in_its_unit, one_and_several
from batchleaf.records.explaining.inferred import Inferred, Understood, defaults, differing
from batchleaf.records.explaining.parts import FROM_DESIGN, of_parts
from batchleaf.records.explaining.sticking import packing_in_full
from batchleaf.records.made_of import MadeOf, made_of, varied
from batchleaf.records.projects import ProjectFile
from batchleaf.records.report import Report


def of_a_batch(
    one: ProjectFile, project: Project, designs: KnownDesigns, supplies: Mapping[str, Supply], site: Unit
) -> Iterator[Understood]:
    """All that a batch's record means besides what it says; ``site`` is the archive's unit."""
    lines = _lines(one, project, designs)
    yield from defaults(one.written)
    yield from differing((), "unit", one.written.unit, project.unit.value, SITES_UNIT)
    makes = f"{project.finished} of {project.begun}"
    yield from differing((), "makes", one.written.makes, makes, "nothing was spoiled")
    yield from _thing_and_base(one, project, lines)
    yield from of_parts(one.node, lines.parts, project.parts, one.written.papers, supplies, project.unit)
    yield from _lists(one, project, lines, supplies)
    yield from _collate(one, project, lines)
    yield from _photos(one, project)


def _lines(one: ProjectFile, project: Project, designs: KnownDesigns) -> MadeOf:
    own = made_of(one.node, one.written, project.unit)
    design = designs.find(project.design, project.place, Report()) if project.design else None
    return varied(design.lines, own, project.place) if design else own


def _thing_and_base(one: ProjectFile, project: Project, lines: MadeOf) -> Iterator[Inferred]:
    thing = one_and_several(project.thing, project.things)
    from_base = FROM_DESIGN if lines.thing and not lines.thing.own else "from the base"
    yield from differing((), "thing", one.written.thing, thing, from_base)
    if lines.base:
        full = spelt_base(read_base(lines.base.text, lines.base.unit), project.unit)
        why = "its measures, and how it is folded" if lines.base.own else FROM_DESIGN
        yield from differing((), "base", one.written.base, full, why)
    if lines.credit and not lines.credit.own:
        yield Inferred((), "credit", lines.credit.text, FROM_DESIGN)


def _lists(
    one: ProjectFile, project: Project, lines: MadeOf, supplies: Mapping[str, Supply]
) -> Iterator[Inferred]:
    counted = [in_its_unit(line.text, supplies) for line in lines.supplies]
    if any(not line.own for line in lines.supplies):
        yield Inferred((), "supplies", list(counted), FROM_DESIGN)
    else:
        for i, (text, full) in enumerate(zip(one.written.supplies, counted, strict=True)):
            yield from differing(("supplies",), i, text, full, "what it is counted in")
    packed = [packing_in_full(line.text, supplies) for line in lines.packing]
    if any(not line.own for line in lines.packing):
        yield Inferred((), "packing", list(packed), FROM_DESIGN)
    else:
        for i, (text, full) in enumerate(zip(one.written.packing, packed, strict=True)):
            yield from differing(("packing",), i, text, full, "what it is counted in")
    if list(project.tools) != one.written.tools:
        yield Inferred((), "tools", list(project.tools), "with those of the design, its stamps and dies")
    works = [spell_work(work, project.unit) for work in project.works]
    if works != one.written.bench:
        yield Inferred((), "bench", list(works), "with what follows from scores, stamps and dies")
    if any(not line.own for line in lines.steps):
        yield Inferred((), "steps", [line.text for line in lines.steps], FROM_DESIGN)


def _collate(one: ProjectFile, project: Project, lines: MadeOf) -> Iterator[Inferred]:
    if lines.collate and not lines.collate.own:
        yield Inferred((), "collate", lines.collate.text, FROM_DESIGN)
    elif one.written.collate is None and project.collating:
        yield Inferred((), "collate", Rule.MIXED.value, "no paper comes more often in one than it must")


def _photos(one: ProjectFile, project: Project) -> Iterator[Inferred]:
    for photo in project.photos:
        name = Path(photo.path).name
        if photo.alt and name not in one.written.photos:
            yield Inferred(("photos",), name, photo.alt, f"the sentence of step {photo.step}")
