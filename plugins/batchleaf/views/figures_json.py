"""The numbers of one batch for programs: ``figures.json`` beside its page.

Lengths are exact fractions in the record's unit as text (``"17/2"``), areas
exact square millimetres as text, money decimal text in the archive's currency.
Each key stands in CONTRACT.md. Keys that not every
batch has are missing where the record says nothing of them: lies, weight, thickness,
envelope, post, postage, design, extras, collated, bench, for_makes, went, where, asked, sold, and
stuck_with of a part.
An edition that tells no costs has none of the keys that would tell them.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from batchleaf.core.bench.work import Done
from batchleaf.core.costing import BatchCost, CostLine
from batchleaf.core.figures import BatchFigures, PartFromSheet
from batchleaf.core.finished import finished_of
from batchleaf.core.prices import Stays, one_price, sold_makes
from batchleaf.core.used import Used
from batchleaf.facts import Design, Part, Project, Settings, Supply
from batchleaf.views.collating_words import rule_in_words
from batchleaf.views.for_makes_json import for_makes_json
from batchleaf.views.lying_json import lying_json
from batchleaf.views.post_json import post_json
from batchleaf.views.sentence import Supplies
from batchleaf.views.unpriced import is_whole
from batchleaf.views.went import went_counts

Json = dict[str, Any]
Designs = Mapping[str, Design]


def figures_json(batch: BatchFigures, supplies: Supplies, designs: Designs, settings: Settings) -> Json:
    """Everything worked out for a batch, ready to be written as JSON."""
    project = batch.project
    return {
        "format": 1,
        "title": project.title,
        "date": project.date.isoformat(),
        "status": project.status.value,
        "unit": project.unit.value,
        "makes": {"finished": project.finished, "begun": project.begun, "thing": project.thing},
        "parts": [_part(part, batch) for part in project.parts],
        **lying_json(project, supplies),
        "from_one_sheet": [_from_one_sheet(one) for one in batch.from_one_sheet],
        "could_have_given": _could_have(batch),
        "paper": _paper(batch),
        "supplies": _supplies(batch, supplies, settings),
        **_batch_cost(batch, settings),
        "cost_of_one": _cost_of_one(batch, settings),
        "minutes": project.minutes,
        **post_json(batch, settings),
        **_design(project, designs),
        **_extras(batch),
        **_collated(batch),
        **_bench(batch),
        **for_makes_json(batch, supplies, settings),
        **_went(project),
        **_asked(batch, settings),
        **_sold(batch, settings),
    }


def _part(part: Part, batch: BatchFigures) -> Json:
    unit = batch.project.unit.in_mm
    return {
        "letter": part.letter,
        "name": part.name,
        "size": [str(part.size.width / unit), str(part.size.height / unit)],
        "each": part.each,
        "papers": list(part.papers),
        "cut": part.each * batch.project.begun + part.extra,
        **_stuck(part),
    }


def _stuck(part: Part) -> Json:
    """For one part, in the unit of the supply; no amount where the batch says it of the supply as a whole."""
    if part.stuck is None:
        return {}
    amount = part.stuck.amount
    return {"stuck_with": {"supply": part.stuck.supply, "amount": None if amount is None else str(amount)}}


def _design(project: Project, designs: Designs) -> Json:
    if not project.design:
        return {}
    return {"design": {"slug": project.design, "title": designs[project.design].title}}


def _extras(batch: BatchFigures) -> Json:
    """``planned``: whether the cutting plan gives them."""
    given = dict(batch.cutting.extras) if batch.cutting else {}
    extras = [
        {"part": part.letter, "extra": part.extra, "planned": part.letter in given}
        for part in batch.project.parts
        if part.extra
    ]
    return {"extras": extras} if extras else {}


def _collated(batch: BatchFigures) -> Json:
    """``missing``: for one set more than possible; ``None`` where no more of these papers would do."""
    found = batch.collated
    if found is None:
        return {}
    missing = found.missing and [
        {
            "part": one.letter,
            "more": one.count,
            "papers": list(dict.fromkeys(paper.supply for paper in one.papers)),
        }
        for one in found.missing
    ]
    told = {"sets": found.sets, "possible": found.possible, "rule": rule_in_words(found) or None}
    return {"collated": told | {"missing": missing}}


def _bench(batch: BatchFigures) -> Json:
    """``works`` in order; ``seconds``: the estimate for hands on it, ``waits``: minutes."""
    bench = batch.bench
    if bench is None:
        return {}
    cutting = bench.cutting
    return {
        "bench": {
            "works": [_work(done) for done in bench.works],
            "cuts": cutting.cuts if cutting else None,
            "settings": cutting.settings if cutting else None,
            "seconds": bench.seconds,
            "waits": bench.waiting,
        }
    }


def _work(done: Done) -> Json:
    work = done.work
    return {
        "work": work.kind.value,
        "on": list(work.letters),
        "tool": work.tool or None,
        "with": work.supply or None,
        "when": work.moment.value,
        "pieces": done.pieces,
        "sheets": done.of_sheets,
        "at_once": [one.at_once for one in done.piles],
        "strokes": done.strokes,
        "seconds": done.seconds,
        "waits": work.wait.minutes if work.wait else 0,
    }


def _went(project: Project) -> Json:
    counts = went_counts(project)
    if not counts:
        return {}
    finished = finished_of(project)
    where = {where.value: count for where, count in finished.counts.items()}
    return {
        "went": {where.value: count for where, count in counts.items()},
        "where": {**where, "not_told": finished.not_told},
    }


def _asked(batch: BatchFigures, settings: Settings) -> Json:
    one = one_price(batch)
    if one is None or one.asked is None or batch.cost is None:
        return {}
    asked = {"amount": settings.currency.plain(one.asked)}
    return {
        "asked": {**asked, "stays": _left(one.stays, settings), "per_hour": _left(one.per_hour, settings)}
    }


def _sold(batch: BatchFigures, settings: Settings) -> Json:
    """``complete``: both what was brought in and what it cost are wholly known."""
    sold = sold_makes(batch)
    if not sold.count or batch.cost is None:
        return {}
    plain = settings.currency.plain
    return {
        "sold": {
            "makes": sold.count,
            "brought_in": plain(sold.brought.known),
            "cost": plain(sold.cost.known),
            "stayed": _left(sold.stayed, settings),
            "complete": sold.brought.complete and sold.cost.complete,
        }
    }


def _left(stays: Stays | None, settings: Settings) -> str | None:
    return settings.currency.plain(stays.amount) if stays and stays.known else None


def _from_one_sheet(one: PartFromSheet) -> Json:
    count = one.count
    return {
        "part": one.letter,
        "supply": one.supply,
        "grid": count.grid,
        "through": count.through,
        "stopped": count.stopped,
        "proved": count.proved,
    }


def _could_have(batch: BatchFigures) -> Json | None:
    most = batch.cutting.most if batch.cutting and batch.taken else None
    if most is None:
        return None
    return {"makes": most.makes, "bound": most.bound, "proved": most.proved, "reason": most.reason}


def _paper(batch: BatchFigures) -> Json | None:
    paper = batch.paper
    if paper is None:
        return None
    areas = {"cut": paper.cut, "used": paper.used, "kept": paper.kept, "waste": paper.waste}
    return {name: str(area) for name, area in areas.items()}


def _supplies(batch: BatchFigures, supplies: Supplies, settings: Settings) -> list[Json]:
    costs = {line.supply: _cost(line, settings) for line in batch.cost.lines} if batch.cost else {}
    return [_used(used, supplies[used.supply]) | costs.get(used.supply, {}) for used in batch.used]


def _used(used: Used, supply: Supply) -> Json:
    whole = [one.quantity for one in used.taken if one.quantity is not None and one.piece is None]
    scraps = sum(int(one.quantity) for one in used.taken if one.piece is not None and one.quantity)
    return {
        "supply": supply.slug,
        "used": str(sum(whole, Fraction(0))) if whole else None,
        "unit": supply.unit,
        "scraps": scraps,
    }


def _cost(line: CostLine, settings: Settings) -> Json:
    return {
        "cost": settings.currency.plain(line.cost.known) if line.measured else None,
        "complete": line.cost.complete and line.measured,
        "one": settings.currency.plain(line.one) if line.measured else None,
    }


def _batch_cost(batch: BatchFigures, settings: Settings) -> Json:
    if batch.cost is None:
        return {}
    return {"batch_cost": _account(batch, batch.cost, settings) if batch.cost.counted else None}


def _account(batch: BatchFigures, cost: BatchCost, settings: Settings) -> Json:
    return {
        "amount": settings.currency.plain(cost.batch.known),
        "currency": settings.currency.code,
        "complete": is_whole(batch),
        "without": list(cost.without),
        "not_counted": list(cost.not_counted),
        "kinds": {
            kind.kind.value: {
                "amount": settings.currency.plain(kind.cost.known),
                "one": settings.currency.plain(kind.one),
            }
            for kind in batch.kinds
        },
    }


def _cost_of_one(batch: BatchFigures, settings: Settings) -> Json | None:
    if batch.one is None:
        return None
    plain = settings.currency.plain
    one: Json = {"amount": plain(batch.one), "complete": is_whole(batch)}
    if batch.today:
        one["today"] = {"amount": plain(batch.today.one), "without": list(batch.today.without)}
    if batch.cost:
        one["shares"] = [{"amount": plain(share), "makes": makes} for share, makes in batch.cost.shares]
    return one
