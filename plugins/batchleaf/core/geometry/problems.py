"""What cannot lie as the record says: faces that are not there, more places than copies, layers too large."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.off_their_face import notice, off_their_face, place_of
from batchleaf.facts import Fold, Part, Problem, Project
from batchleaf.facts.spots import Face, Spot
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Unit


def misplaced(project: Project) -> tuple[Problem, ...]:
    """One sentence for each place that cannot be, or hardly be, as it is written."""
    made = put_together(project)
    if made is None:
        return ()
    found = [
        *_lost(made),
        *_miscounted(project),
        *off_their_face(made, project.unit),
        *_too_large(made, project.unit),
    ]
    return tuple(dict.fromkeys(found))


def _lost(made: MadeUp) -> Iterator[Problem]:
    """What stands on a lost part is no second problem."""
    keys = {panel.key for panel in made.panels}
    for part, spot in made.lost:
        base = _base_of(part, made)
        if base is None:
            continue
        if spot.face is not None and (base.letter, spot.face, _number(spot)) not in keys:
            yield Problem(place_of(spot, part), f"{_has_no(base, spot)}; write {_or(_faces(made, base))}")
        elif spot.behind:
            where = f" on {_said(spot)}" if spot.face else ""
            yield Problem(
                place_of(spot, part),
                f"no part {spot.behind} lies{where} before {part.letter}, to be tucked behind;"
                f" write the letter of one that does, and {part.letter} after it",
            )


def _base_of(part: Part, made: MadeUp) -> Part | None:
    """The base that the part is sought on; ``None`` where what should carry it is lost itself."""
    of_base = {base.letter: base for base in made.bases}
    if any(one.part.letter == part.below for one in made.lying):
        return made.bases[0]
    return of_base.get(part.below)


def _number(spot: Spot) -> int:
    return spot.panel or (1 if spot.face in (Face.PANEL, Face.BACK_OF_PANEL) else 0)


def _has_no(base: Part, spot: Spot) -> str:
    folded = "" if base.fold is Fold.NONE else f", {_article(base.fold)},"
    return f"{base.letter}{folded} has no {_said(spot)}"


def _said(spot: Spot) -> str:
    face = spot.face.value if spot.face else ""
    return f"{face} {spot.panel}" if spot.panel else face


def _article(fold: Fold) -> str:
    return f"{'an' if fold is Fold.ACCORDION else 'a'} {fold.value}"


def _faces(made: MadeUp, base: Part) -> list[str]:
    panels = [panel for panel in made.panels if panel.base == base.letter and panel.face is not Face.ROUND]
    if base.fold is Fold.ACCORDION:
        last = max(panel.number for panel in panels)
        return [f"panel 1 to panel {last}", f"back of panel 1 to back of panel {last}"]
    return [panel.name for panel in panels]


def _or(words: Sequence[str]) -> str:
    return " or ".join(filter(None, [", ".join(words[:-1]), words[-1]]))


def _miscounted(project: Project) -> Iterator[Problem]:
    for part in project.parts:
        count = len(part.spots)
        if count > 1 and count != part.each:
            yield notice(
                place_of(part.spots[0], part),
                f"{part.letter} has {count} places, and one {project.thing} has {part.each} of it;"
                f" write each: {count}, or {part.each} {'place' if part.each == 1 else 'places'}",
            )


def _too_large(made: MadeUp, unit: Unit) -> Iterator[Problem]:
    """Parts that lie on a smaller one."""
    for one in made.lying:
        if one.on is None:
            continue
        carrier = made.lying[one.on]
        if one.rect.width > carrier.rect.width or one.rect.height > carrier.rect.height:
            yield notice(
                one.part.place,
                f"{one.part.letter}, {show_size(one.rect.size, unit)} {unit.value}, is larger than"
                f" {carrier.part.letter} that carries it, {show_size(carrier.rect.size, unit)} {unit.value};"
                " if it lies on another part, name that one under on",
            )
