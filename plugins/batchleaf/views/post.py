"""One make by post: what it weighs, how thick it is, its envelope, and as what it goes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import ceil, floor

from batchleaf.core.figures import BatchFigures
from batchleaf.core.post.by_post import ByPost
from batchleaf.core.post.verdict import Verdict
from batchleaf.core.thickness import Thickness
from batchleaf.core.weight import Weighed
from batchleaf.facts import Project, Settings
from batchleaf.facts.envelopes import Envelope
from batchleaf.measure.display import NBSP, show_number
from batchleaf.measure.lengths import INCHES, Unit
from batchleaf.measure.mass import GRAMS_PER_OUNCE
from batchleaf.views import site_map
from batchleaf.views.links import together
from batchleaf.views.pages import Link, PostRow, PostView
from batchleaf.views.post_reasons import reasons
from batchleaf.views.sentence import Supplies
from batchleaf.views.words import listed, long_date


def post_view(batch: BatchFigures, supplies: Supplies, settings: Settings) -> PostView | None:
    """``None`` where nothing can be said."""
    one, project = batch.by_post, batch.project
    if one is None:
        return None
    rules = Link("how each is worked out", site_map.href(site_map.batch(project.slug), site_map.HOW, "post"))
    return PostView(
        rows=tuple(_rows(one, project, supplies, settings)),
        ask=("Ask at your post office before you send the first; here is ", rules, ", with the editions.")
        if one.verdicts
        else (),
        notes=tuple(_notes(one, supplies)),
    )


def _rows(one: ByPost, project: Project, supplies: Supplies, settings: Settings) -> Iterator[PostRow]:
    if one.weight.grams:
        yield _weight(one, project, supplies)
    if one.thickness is None:
        return
    yield _thickness(one.thickness, project, supplies)
    yield _envelope(one, one.thickness)
    for verdict in one.verdicts:
        yield _verdict(verdict, one, one.thickness)
    for rate in one.rates:
        least = "at least " if one.sent and not one.sent.complete else ""
        yield PostRow(
            "Postage",
            f"{least}{settings.currency.show_with_sign(rate.price)}",
            details=(f"{rate.post} up to {_whole(rate.step)}, by the rates of {long_date(rate.date)}",),
        )


def _whole(step: str) -> str:
    """``20 g`` on one line."""
    return NBSP.join(step.split())


# --- weight and thickness -------------------------------------------------------


def _weight(one: ByPost, project: Project, supplies: Supplies) -> PostRow:
    inches = project.unit in INCHES
    shown = [_mass_of(one.weight, ounces=inches), _mass_of(one.weight, ounces=not inches)]
    details = [f"without {_missing(one.weight, supplies)}"] if not one.weight.complete else []
    if one.sent and one.inside.envelope:
        details.append(f"{_least_or_about(one.sent)} {_mass_of(one.sent, ounces=inches)} in its envelope")
    return PostRow(
        "Weight", f"{_least_or_about(one.weight)} {shown[0]}", other=shown[1], details=tuple(details)
    )


def _thickness(thickness: Thickness, project: Project, supplies: Supplies) -> PostRow:
    units = [Unit.INCH, Unit.MM] if project.unit in INCHES else [Unit.MM, Unit.INCH]
    known = thickness.complete
    shown = [_thick(thickness.most, unit, up=known) for unit in units]
    details = [f"without {_missing(thickness, supplies)}"] if not known else []
    if thickness.is_box:
        details.append("closed, from below to the top")
    elif thickness.most > thickness.usual:
        usual = _thick(thickness.usual, units[0], up=known)
        uneven = ", so it is uneven" if thickness.uneven else ""
        details.append(f"at its thickest; half of it is no thicker than {usual}{uneven}")
    return PostRow(
        "Height" if thickness.is_box else "Thickness",
        f"{_least_or_about(thickness)} {shown[0]}",
        other=shown[1],
        details=tuple(details),
    )


def _least_or_about(found: Weighed | Thickness) -> str:
    return "about" if found.complete else "at least"


def _missing(found: Weighed | Thickness, supplies: Supplies) -> str:
    """``the dusk rose and F``: what has no known weight, or no known thickness."""
    return listed([*(f"the {supplies[slug].name}" for slug in found.without), *found.parts])


def _mass_of(found: Weighed, *, ounces: bool) -> str:
    """To the nearest tenth of a gram or hundredth of an ounce; what something is at least, rounded down."""
    number, step = (found.grams / GRAMS_PER_OUNCE, 100) if ounces else (found.grams, 10)
    rounded = Fraction(round(number * step) if found.complete else floor(number * step), step)
    return f"{show_number(rounded, 2)}{NBSP}{'oz' if ounces else 'g'}"


def _thick(length: Fraction, unit: Unit, *, up: bool) -> str:
    """To a tenth of a millimetre or a thousandth of an inch: up, so that nothing sticks in a slot."""
    step = 1000 if unit is Unit.INCH else 10
    number = length / unit.in_mm * step
    return f"{show_number(Fraction(ceil(number) if up else floor(number), step), 3)}{NBSP}{unit.value}"


# --- the envelope and the posts ----------------------------------------------------


def _envelope(one: ByPost, thickness: Thickness) -> PostRow:
    details = list(_tight(one.tight))
    if one.inside.envelope is None:
        why = "a box goes in none" if thickness.is_box else "none that is usual takes it"
        return PostRow("Envelope", why, details=tuple(details))
    why = "in which it is packed" if one.packed else "the smallest that takes it"
    return PostRow("Envelope", envelope_in_words(one.inside.envelope), details=(why, *details))


def envelope_in_words(envelope: Envelope) -> str:
    """``A2, 4 3/8 × 5 3/4 in``; of one without a name its size."""
    return f"{envelope.name}, {envelope.measures}" if envelope.name else envelope.measures


def _tight(envelope: Envelope | None) -> Iterator[str]:
    if envelope is not None:
        name = envelope.name or "envelope"
        yield f"the {name} that it is packed in, {envelope.measures}, is too small for it"


def _verdict(verdict: Verdict, one: ByPost, thickness: Thickness) -> PostRow:
    whole = thickness.complete and one.sent is not None and one.sent.complete
    known = "" if whole else ", as far as is known"
    name = f"{verdict.told}{known}" if verdict.told else "not taken"
    why = list(reasons(verdict))
    if verdict.too_small:
        why.append(f"a larger {'envelope' if one.inside.envelope else 'wrapping'} would do")
    return PostRow(verdict.post.title, name, details=("; ".join(why),) if why else ())


def _notes(one: ByPost, supplies: Supplies) -> Iterator[str]:
    yield "An estimate: papers differ by some per cent, and what is punched or torn counts as a rectangle."
    if one.thickness and one.thickness.estimated:
        names = _named(one.thickness.estimated, supplies)
        yield f"Estimated from weight, so that it errs thick: the thickness of {names}."
    if one.inside.estimated:
        yield "What the envelope weighs and how thick it is, is estimated too."
    if one.weight.not_counted:
        yield f"Used without a measure, and not counted: {_named(one.weight.not_counted, supplies)}."


def _named(slugs: Sequence[str], supplies: Supplies) -> str:
    return listed([one.name for one in together(supplies[slug] for slug in slugs)])
