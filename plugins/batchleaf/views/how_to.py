"""A batch for machines: a HowTo in the words of schema.org, with nothing that its page does not show.

Terms: https://schema.org/HowTo. Durations are those of ISO 8601, money is a plain decimal.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final
from urllib.parse import urljoin

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Settings
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages import BatchPage, text_of
from batchleaf.views.unpriced import is_whole
from batchleaf.views.words import counted

CONTEXT: Final = "https://schema.org"
Json = dict[str, Any]


def how_to(
    page: BatchPage, batch: BatchFigures, figures: Figures, masthead: Masthead
) -> Mapping[str, Any] | None:
    """What the page of a batch tells of making one; ``None`` where it has no steps.

    Addresses are whole where the site has one, and otherwise lead within the page.
    """
    if not page.steps:
        return None
    address = f"{masthead.address}{site_map.batch(batch.project.slug)}" if masthead.address else ""
    told = {
        "@context": CONTEXT,
        "@type": "HowTo",
        "name": page.title,
        "description": text_of(page.sentence),
        "url": address,
        "image": urljoin(address, page.cover.fallback) if address and page.cover else "",
        "yield": _yield(batch),
        "totalTime": duration(batch.project.minutes or 0),
        "estimatedCost": _cost(batch, figures.settings),
        "supply": [_named("HowToSupply", row.supply.text) for row in page.cost.rows],
        "tool": _tools(batch, figures),
        "step": [
            {"@type": "HowToStep", "text": step.sentence, "url": f"{address}#{site_map.step(number)}"}
            for number, step in enumerate(page.steps, 1)
        ],
        "license": masthead.licence.deed if masthead.licence else "",
    }
    return {key: value for key, value in told.items() if value}


def duration(minutes: int) -> str:
    """``PT3H10M`` (ISO 8601); nothing for no time."""
    hours, rest = divmod(minutes, 60)
    said = (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "")
    return f"PT{said}" if said else ""


def _named(kind: str, name: str) -> Json:
    return {"@type": kind, "name": name}


def _tools(batch: BatchFigures, figures: Figures) -> list[Json]:
    names = {tool.slug: tool.name for tool in figures.archive.tools}
    return [_named("HowToTool", names[slug]) for slug in batch.project.tools]


def _yield(batch: BatchFigures) -> str:
    project = batch.project
    return counted(project.finished if batch.made else project.begun, project.thing, project.things)


def _cost(batch: BatchFigures, settings: Settings) -> Json | None:
    """Of one; where a price is not known, the least that it is."""
    if batch.one is None:
        return None
    amount = settings.currency.plain(batch.one)
    return {
        "@type": "MonetaryAmount",
        "currency": settings.currency.code,
        "value" if is_whole(batch) else "minValue": amount,
    }
