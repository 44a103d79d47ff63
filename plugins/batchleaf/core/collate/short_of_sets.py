"""What the record asks of collating and the parts do not give."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.collate.collated import Collated, Ruled
from batchleaf.facts import Problem, Project, Rule, Weight


def short_of_sets(project: Project, collated: Collated | None) -> Iterator[Problem]:
    """One notice for each rule that the record states and not every make can keep."""
    for one in collated.ruled if collated else ():
        if one.by.rule not in (Rule.MIXED, Rule.ANY) and one.sets < project.begun:
            yield Problem(one.by.place, _sentence(project, one), Weight.NOTICE)


def _sentence(project: Project, one: Ruled) -> str:
    group = one.group
    letters = " and ".join(kind.letter for kind in group.kinds)
    faces = {group.face(kind, paper) for kind in group.kinds for paper in kind.cut}
    if not group.alike and group.slots > len(faces):
        noun = "side" if group.by_side else "paper"
        return (
            f"one {project.thing} has {group.slots} of {letters} and there are {len(faces)} {noun}s of them,"
            f" so in each a {noun} comes twice; write mixed, and none comes more often than it must"
        )
    if group.alike and not group.common_papers:
        return f"{letters} have no paper in common, so no {project.thing} can have them alike"
    named = f"{project.begun} {project.name_of(project.begun)}"
    rule = "alike" if group.alike else "with no side twice" if group.by_side else "with no paper twice"
    return f"{letters} can be put together {rule} for {one.sets or 'none'} of the {named}"
