"""Photos as pages show them. The files are made elsewhere; here they get their addresses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from batchleaf.facts import Photo, Project
from batchleaf.views import site_map
from batchleaf.views.pages import Picture, Source


@dataclass(frozen=True, slots=True)
class PreparedPhoto:
    """A photo's files below ``photos/``: per format ``(name, width)``, smallest first."""

    width: int
    height: int
    webp: tuple[tuple[str, int], ...]
    jpeg: tuple[tuple[str, int], ...]


Prepared = Mapping[str, PreparedPhoto]
"""Path of the photo in the project's folder → its files."""


def picture(photo: Photo, alt: str, prepared: Prepared, here: str) -> Picture:
    """``photo`` for the page at ``here``."""
    files = prepared[photo.path]
    return Picture(
        sources=tuple(
            Source(kind, tuple((_href(here, name), width) for name, width in made))
            for kind, made in (("image/webp", files.webp), ("image/jpeg", files.jpeg))
        ),
        fallback=_href(here, files.jpeg[-1][0]),
        width=files.width,
        height=files.height,
        alt=alt,
    )


def cover_photo(project: Project) -> Photo | None:
    """The cover of a batch, or its first photo, or nothing."""
    photo = next((photo for photo in project.photos if photo.cover), None)
    return photo or (project.photos[0] if project.photos else None)


def cover(project: Project, prepared: Prepared, here: str) -> Picture | None:
    """The :func:`cover_photo` of a batch for the page at ``here``."""
    photo = cover_photo(project)
    return picture(photo, photo.alt or project.title, prepared, here) if photo else None


def _href(here: str, name: str) -> str:
    return site_map.href(here, f"{site_map.PHOTOS}{name}")
