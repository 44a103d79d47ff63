"""One make by post: its weight, its thickness, its envelope, and as what it goes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from batchleaf.core.post.envelopes import NOT_ENCLOSED, Enclosed, enclosed, own, smallest, takes
from batchleaf.core.post.rates import rate_for
from batchleaf.core.post.verdict import Piece, Verdict, judge
from batchleaf.core.thickness import THINNER, Supplies, Thickness, caliper, thickness_of
from batchleaf.core.weight import Weighed, weigh, weigh_use
from batchleaf.facts import Project, Purpose, Use
from batchleaf.facts.envelopes import Envelope, on_sale
from batchleaf.facts.postage import Postage, Rate
from batchleaf.measure.lengths import Unit


@dataclass(frozen=True, slots=True)
class ByPost:
    """``thickness`` None: the record does not say how one make is put together.

    ``inside``: the envelope that it goes in. ``packed``: whether the record says so; else it
    is the smallest there is. ``tight``: the one that it is packed in, where that does not
    take it. ``posted``: what is handed in, and ``sent``: what that weighs, envelope and other
    packing with it. ``verdicts``: as what it goes; none where not even a part of its weight and of its
    thickness is known.
    """

    weight: Weighed
    thickness: Thickness | None
    inside: Enclosed = NOT_ENCLOSED
    packed: bool = False
    tight: Envelope | None = None
    posted: Piece | None = None
    sent: Weighed | None = None
    verdicts: tuple[Verdict, ...] = ()
    rates: tuple[Rate, ...] = ()


def by_post(project: Project, supplies: Supplies, postage: Postage) -> ByPost | None:
    """``None`` where nothing can be said: no weight and no thickness of anything is known."""
    weight, thickness = weigh(project, supplies), thickness_of(project, supplies)
    if thickness is None or not thickness.most:
        return ByPost(weight, None) if weight.grams else None
    inside, tight = _enclose(project, thickness, supplies, postage)
    one = ByPost(weight, thickness, inside, bool(_packed_in(project, supplies)) and not tight, tight)
    return _posted(one, project, supplies, postage) if weight.grams else one


def _enclose(
    project: Project, thickness: Thickness, supplies: Supplies, postage: Postage
) -> tuple[Enclosed, Envelope | None]:
    """The envelope that the record packs it in; where there is none, or it is too small, the smallest."""
    packed = _packed_in(project, supplies)
    fits = packed is not None and _fits(packed, thickness, postage)
    found = packed if fits else _smallest(project, thickness, supplies, postage)
    tight = packed if packed is not None and not fits else None
    if found is None or thickness.is_box:
        return NOT_ENCLOSED, tight
    return enclosed(found, supplies.get(found.supply), fits=True), tight


def _fits(envelope: Envelope, thickness: Thickness, postage: Postage) -> bool:
    return not thickness.is_box and takes(envelope.size, thickness, postage.clearance)


def _packed_in(project: Project, supplies: Supplies) -> Envelope | None:
    """The envelope that the record packs each make in."""
    for use in _packing(project):
        envelope = own(supplies[use.supply])
        if envelope is not None and use.per_make == 1:
            return envelope
    return None


def _packing(project: Project) -> Iterator[Use]:
    """What each make is packed with by itself."""
    return (use for use in project.uses if use.purpose is Purpose.PACKING and use.per_make)


def _smallest(
    project: Project, thickness: Thickness, supplies: Supplies, postage: Postage
) -> Envelope | None:
    """Of the maker's own and of those sold where one measures so; else of those sold elsewhere."""
    mine = [envelope for supply in supplies.values() if (envelope := own(supply)) is not None]
    there = project.unit if project.unit is Unit.INCH else Unit.MM
    for envelopes in ([*mine, *on_sale(there)], on_sale(there.other)):
        found = smallest(envelopes, thickness, postage.clearance)
        if found is not None:
            return found
    return None


def _posted(one: ByPost, project: Project, supplies: Supplies, postage: Postage) -> ByPost:
    """With what is handed in, and as what it goes."""
    thickness, inside = one.thickness, one.inside
    if thickness is None:
        return one
    sent, besides = one.weight + Weighed(inside.grams), Fraction(0)
    for use in _packing(project):
        supply = supplies[use.supply]
        if supply.envelope is None:
            sent += weigh_use(use, project, supplies)
            besides += (caliper(supply) or (Fraction(0), False))[0]
    of_envelope = inside.thickness / THINNER if inside.estimated else inside.thickness
    piece = Piece(
        size=inside.envelope.size if inside.envelope else thickness.size,
        thickness=thickness.most + inside.thickness + besides,
        thinnest=thickness.least + of_envelope,
        grams=sent.grams,
        uneven=thickness.uneven,
    )
    verdicts = tuple(judge(piece, post) for post in postage.posts)
    names = dict.fromkeys(verdict.post.rate_name(verdict.name) for verdict in verdicts)
    rates = (rate_for(name, sent.grams, postage.rates) for name in names)
    found = tuple(rate for rate in rates if rate is not None)
    return replace(one, posted=piece, sent=sent, verdicts=verdicts, rates=found)
