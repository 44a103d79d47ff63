"""All finished makes: of each batch how many went which way, and what those sold brought in."""

from __future__ import annotations

from typing import Final

from batchleaf.core.figures import Figures
from batchleaf.core.finished import Finished, finished_of, together
from batchleaf.facts import Project, Whereabouts
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.pages import FinishedPage, FinishedRow, Line, Link
from batchleaf.views.tables.finished import finished_table
from batchleaf.views.went import ways_in_words
from batchleaf.views.words import batches_counted, capitalised, counted, in_batches, money, money_said

HERE: Final = site_map.FINISHED


def finished_page(figures: Figures) -> FinishedPage:
    """A row for each batch of which something is finished, newest first."""
    currency = figures.settings.currency
    made = [batch.project for batch in figures.batches.values() if batch.project.finished]
    all_of_them = [(project, finished_of(project)) for project in reversed(made)]
    total = together(finished for _, finished in all_of_them)
    return FinishedPage(
        title="Finished makes",
        sentence=_sentence(total, len(made), currency),
        ways=tuple(capitalised(where.value) for where in Whereabouts),
        currency=currency.sign,
        rows=tuple(_row(_link(project, finished), finished, currency) for project, finished in all_of_them),
        total=_row(Link(capitalised(batches_counted(len(made))), ""), total, currency),
        note=(Link("How this is worked out", site_map.href(HERE, site_map.HOW, "finished")), "."),
        csv=finished_table(figures).link(HERE),
    )


def _link(project: Project, finished: Finished) -> Link:
    """To the section about it, where the batch has one."""
    anchor = "went" if finished.told else ""
    return Link(project.title, site_map.href(HERE, site_map.batch(project.slug), anchor))


def _sentence(total: Finished, batches: int, currency: Currency) -> Line:
    """``104 pieces are finished, in six batches: 24 were given and 11 sold. …``."""
    be = "is" if total.finished == 1 else "are"
    counts = sorted(total.counts.items(), key=lambda one: -one[1])
    ways = ways_in_words([(where, count) for where, count in counts if count])
    start = f"{counted(total.finished, 'piece', 'pieces')} {be} finished, {in_batches(batches)}"
    rest = f", and of {total.not_told:,} it is not told" if total.not_told else ""
    income = f" Those sold brought in {money_said(total.brought, currency)}." if total.sold else ""
    return (f"{start}: {ways}{rest}.{income}",)


def _row(batch: Link, finished: Finished, currency: Currency) -> FinishedRow:
    return FinishedRow(
        batch=batch,
        finished=f"{finished.finished:,}",
        ways=tuple(_count(finished.counts[where]) for where in Whereabouts),
        not_told=_count(finished.not_told),
        brought=money(finished.brought, currency) if finished.sold else "",
    )


def _count(count: int) -> str:
    """None needs no figure: the eye finds the others."""
    return f"{count:,}" if count else ""
