"""The numbers of one make by post, for programs: grams and millimetres as exact fractions."""

from __future__ import annotations

from typing import Any

from batchleaf.core.figures import BatchFigures
from batchleaf.core.post.by_post import ByPost
from batchleaf.core.post.verdict import Verdict
from batchleaf.core.thickness import Thickness
from batchleaf.facts import Settings
from batchleaf.facts.postage import Rate
from batchleaf.views.post_reasons import reasons

Json = dict[str, Any]


def post_json(batch: BatchFigures, settings: Settings) -> Json:
    """The keys weight, thickness, envelope, post and postage, so far as something can be said."""
    one = batch.by_post
    if one is None:
        return {}
    found: Json = {"weight": _weight(one)}
    if one.thickness is not None:
        found["thickness"] = _thickness(one.thickness, one)
        found["envelope"] = _envelope(one)
    if one.verdicts:
        found["post"] = [_verdict(verdict) for verdict in one.verdicts]
    if one.rates:
        found["postage"] = [_rate(rate, settings) for rate in one.rates]
    return found


def _weight(one: ByPost) -> Json:
    """``posted``: with its envelope and what else it is packed with."""
    return {
        "grams": str(one.weight.grams),
        "complete": one.weight.complete,
        "without": [*one.weight.without, *one.weight.parts],
        "not_counted": list(one.weight.not_counted),
        "posted": None if one.sent is None else str(one.sent.grams),
    }


def _thickness(thickness: Thickness, one: ByPost) -> Json:
    """``usual``: half of the face is no thicker."""
    return {
        "mm": str(thickness.most),
        "usual": str(thickness.usual),
        "uneven": thickness.uneven,
        "complete": thickness.complete,
        "without": [*thickness.without, *thickness.parts],
        "estimated": list(thickness.estimated),
        "posted": None if one.posted is None else str(one.posted.thickness),
    }


def _envelope(one: ByPost) -> Json | None:
    envelope = one.inside.envelope
    if envelope is None:
        return None
    return {
        "name": envelope.name,
        "mm": [str(envelope.size.width), str(envelope.size.height)],
        "supply": envelope.supply or None,
        "packed": one.packed,
    }


def _verdict(verdict: Verdict) -> Json:
    """``as`` is ``None`` for what is not taken."""
    return {
        "rules": verdict.post.title,
        "edition": verdict.post.edition,
        "as": verdict.told or None,
        "reasons": list(reasons(verdict)),
    }


def _rate(rate: Rate, settings: Settings) -> Json:
    return {
        "rate": f"{rate.post} up to {rate.step}",
        "date": rate.date.isoformat(),
        "amount": settings.currency.plain(rate.price),
    }
