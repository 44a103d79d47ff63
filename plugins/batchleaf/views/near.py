"""What of an archive the pages of one batch look at, so that they are made again only where it changes.

The pages of a batch are made from figures that hold nothing else: what they are not given they cannot show.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, Protocol, TypeVar

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Archive, Project, Supply


class _Named(Protocol):
    @property
    def slug(self) -> str: ...


Named = TypeVar("Named", bound=_Named)

_TEXTS: Final = re.compile(r"'([a-z0-9-]+)'")
"""What may be a name by which a fact points to another one."""


def near(batch: BatchFigures, figures: Figures) -> Figures:
    """The figures of the archive, of which only what ``batch`` names is there.

    Of other batches of its series and of its design only the titles stay, and the drawer is empty, since
    the pages tell of the day on which the batch left it. One to come looks at the whole drawer, and at all
    that others take out of it before: near it is everything.
    """
    archive, project = figures.archive, batch.project
    if figures.ledger and not batch.taken:
        return figures
    # A fact points to another by its slug, wherever that stands: all texts that are slugs are looked at.
    named = _texts_in(batch)
    supplies = tuple(_supplies(named, archive.supplies))
    archive = Archive(
        projects=(project,),
        supplies=supplies,
        purchases=(),
        counts=(),
        series=tuple(one for one in archive.series if one.slug == project.series),
        designs=tuple(one for one in archive.designs if one.slug == project.design),
        tools=tuple(_of(named | _texts_in(supplies), archive.tools)),
        postage=archive.postage,
    )
    drawer = _EMPTY if figures.ledger else None
    return Figures(archive, figures.settings, dict(_batches(batch, figures)), drawer, ())


_EMPTY: Final = Ledger((), {}, (), (), (), {}, {})


def _texts_in(fact: object) -> frozenset[str]:
    return frozenset(_TEXTS.findall(repr(fact)))


def _of(named: frozenset[str], facts: tuple[Named, ...]) -> Iterator[Named]:
    return (one for one in facts if one.slug in named)


def _supplies(named: frozenset[str], supplies: tuple[Supply, ...]) -> Iterator[Supply]:
    """Those that are named, and those that these name: a paper names its pad."""
    there = tuple(_of(named, supplies))
    return _of(named | _texts_in(there), supplies)


def _batches(batch: BatchFigures, figures: Figures) -> Iterator[tuple[str, BatchFigures]]:
    project = batch.project
    for slug, other in figures.batches.items():
        if other is batch:
            yield slug, batch
        elif _belongs(other.project, project):
            yield slug, _title_of(other)


def _title_of(batch: BatchFigures) -> BatchFigures:
    """What a link to it says, and where it belongs."""
    project = batch.project
    told = Project(
        slug=project.slug,
        title=project.title,
        date=project.date,
        status=project.status,
        series=project.series,
        unit=project.unit,
        thing=project.thing,
        things=project.things,
        finished=0,
        begun=0,
        finished_size=None,
        parts=(),
        cut=(),
        uses=(),
        minutes=None,
        steps=(),
        photos=(),
        notes="",
        design=project.design,
    )
    return BatchFigures(told, None, None, ())


def _belongs(other: Project, project: Project) -> bool:
    return any(
        one and one == its for one, its in ((project.series, other.series), (project.design, other.design))
    )
