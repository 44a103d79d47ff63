"""What records note about selling what is made with a thing, held against what is sold.

Nothing here judges: it names what the maker noted, and leaves the rest to the text of
the licence, whose owner alone can say what it means.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.core.dealing import Supplies
from batchleaf.facts import Design, Place, Problem, Project, Sale, Terms, Tool, Weight, Whereabouts


@dataclass(frozen=True, slots=True)
class NotedTerms:
    """A supply, a tool or a design by its name, and what is noted of it."""

    name: str
    terms: Terms


def terms_of_sale(
    project: Project, supplies: Supplies, tools: Mapping[str, Tool], designs: Mapping[str, Design]
) -> Iterator[Problem]:
    """A notice where something may not be sold, a remark where its terms want to be read.

    Both stand where the price is asked, or where the first of the makes was sold.
    """
    place = _for_sale_at(project)
    if place is None:
        return
    noted = noted_terms(project, supplies, tools, designs)
    done = "a price is asked" if project.asks else "some were sold"
    for sale, weight in _WEIGHTS.items():
        of_it = [one for one in noted if one.terms.sale is sale]
        if of_it:
            sentence = (
                f"{done} here, and about selling what is made with {_listed(of_it)} the records say"
                f" “{sale.value}”; {_SAID_BY_THE_OWNER[sale]}"
            )
            yield Problem(place, sentence, weight)


def noted_terms(
    project: Project, supplies: Supplies, tools: Mapping[str, Tool], designs: Mapping[str, Design]
) -> tuple[NotedTerms, ...]:
    """What a batch is made with of which a record notes anything but a plain yes.

    The design first, then tools and supplies by name; a pad goes for its papers.
    """
    found = {}
    if design := designs.get(project.design):
        found[f"the design {design.title}"] = design.terms
    named = {tools[slug].name: tools[slug].terms for slug in project.tools}
    for slug in _used(project):
        supply = supplies[slug]
        named[supplies[supply.pad].name if supply.pad in supplies else supply.name] = supply.terms
    found |= dict(sorted(named.items()))
    return tuple(NotedTerms(name, terms) for name, terms in found.items() if _to_be_read(terms))


def _to_be_read(terms: Terms) -> bool:
    """Where nothing is noted there is nothing to say."""
    return terms.sale in (Sale.NO, Sale.HANDMADE) or (terms.sale is Sale.UNKNOWN and terms.noted)


def _for_sale_at(project: Project) -> Place | None:
    if project.asks:
        return project.asks.place
    return next((went.place for went in project.went if went.where is Whereabouts.SOLD), None)


def _used(project: Project) -> Iterator[str]:
    for part in project.parts:
        yield from part.papers
    yield from (cut.supply for cut in project.cut)
    yield from (use.supply for use in project.uses)


def _listed(noted: Sequence[NotedTerms]) -> str:
    """``hedge words (printed on the packet, 2026-01-12) and sea words``."""
    said = [_with_source(one) for one in noted]
    return " and ".join([", ".join(said[:-1]), said[-1]] if len(said) > 1 else said)


def _with_source(one: NotedTerms) -> str:
    date = [one.terms.date.isoformat()] if one.terms.date else []
    source = ", ".join(filter(None, [one.terms.source, *date]))
    return f"{one.name} ({source})" if source else one.name


_SAID_BY_THE_OWNER: Final = {
    Sale.NO: "the owner’s licence text decides",
    Sale.HANDMADE: "the owner’s licence text says what that means",
    Sale.UNKNOWN: "the owner’s licence text would say",
}
_WEIGHTS: Final = {Sale.NO: Weight.NOTICE, Sale.HANDMADE: Weight.REMARK, Sale.UNKNOWN: Weight.REMARK}
