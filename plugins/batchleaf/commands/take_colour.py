"""The colours of a supply, picked from a photo of it and written into its record."""

from __future__ import annotations

from pathlib import Path

from batchleaf.commands.explain import UNREADABLE
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, nothing_written, refuse
from batchleaf.facts import Supply, Weight
from batchleaf.records.archive import read_archive
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.render.photos import UnreadableError
from batchleaf.render.picked_colours import picked_colours
from batchleaf.views.colour_words import colour_in_words
from batchleaf.views.words import listed
from batchleaf.writing.block import in_quotes
from batchleaf.writing.take_colour import COLOUR, picked_value, with_colour


def take_colour(archive: Opened, slug: str, picture: str, *, sure: bool) -> int:
    """Show the colours of the middle of a picture, ask, and write them into the record of a supply."""
    reading = read_archive(archive.projects, archive.settings)
    if any(problem.weight is Weight.ERROR for problem in reading.problems):
        return nothing_written(UNREADABLE)
    supplies = {one.slug: one for one in reading.archive.supplies if not one.supposed}
    if slug not in supplies:
        return nothing_written(f"there is no supply “{slug}”{did_you_mean(slug, supplies)}")
    supply = supplies[slug]
    if supply.pad:
        return nothing_written(f"the colours of “{slug}” are told of its pad; name “{supply.pad}”")
    try:
        colours = picked_colours(Path(picture))
    except UnreadableError as reason:
        return nothing_written(f"{picture}: {reason}")
    value = picked_value(colours)
    print(f"{COLOUR}: {in_quotes(value)}  # {listed([colour_in_words(str(one)) for one in colours])}")
    return _write(archive, supply, value, sure=sure)


def _write(archive: Opened, supply: Supply, value: str, *, sure: bool) -> int:
    if supply.colours:
        return nothing_written(
            f"“{supply.slug}” has a colour already, {' '.join(supply.colours)}; change it there"
        )
    file = archive.projects.parent / supply.place.file
    if not sure and not agrees(f"Write this into {file}?"):
        return refuse("Nothing was written.")
    file.write_bytes(with_colour(file.read_bytes(), supply.slug, value))
    print(f"Wrote {file}")
    return 0
