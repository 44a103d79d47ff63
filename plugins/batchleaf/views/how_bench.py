"""How bench work is counted, and its time estimated, in the words of the bench."""

from __future__ import annotations

from typing import Final

from batchleaf.core.bench.times import CUT_SECONDS, SETTING_SECONDS
from batchleaf.views.bench_words import stroke_seconds_in_words
from batchleaf.views.how_words import paragraphs
from batchleaf.views.pages import HowSection


def how_at_the_bench() -> HowSection:
    """The section that the page tells of bench work."""
    times = _TIMES.format(strokes=stroke_seconds_in_words(), cut=CUT_SECONDS, setting=SETTING_SECONDS)
    return HowSection("bench", "At the bench", (*paragraphs(_WORKS), *paragraphs(times)))


_WORKS: Final = """
What is done besides cutting: what the record says, and what follows from it. Scores are scored and folded,
stamps are stamped, dies cut. Where no tool is named, it is the only one of the batch that is made for such
work, else the set that a part is stamped or cut with; else the work is done by hand.

When a work is done follows from common practice, unless the record says it: ink goes on the whole sheet
before it is cut; what is cut larger, to be trimmed later, is embossed before the last cut, and so is a
strip punched that is narrower than the punch holds (2 cm, where nothing is said of the punch); all else is
done once the parts are cut. On one part ink and dies come before stamps, stamps before embossing, and
folding last.

As long as that holds, works before, between and after the cuts are each put in an order in which a tool is
taken in hand as seldom as can be; with more than ten tools among them the order may be a little longer.

Strokes are the pieces of all makes that were begun, with their extras, divided by how many the tool takes
at once, rounded up, times the strokes for one piece. The weight of the paper decides how many it takes: the
pieces are dealt evenly over their papers, and each weight is counted by itself. Where a weight is not known
it is taken for the heaviest. A tool of which nothing is said, or for which a paper is too heavy, takes one.
On a plate lie as many beside one another as a sheet of its size gives. Before cutting, sheets are counted.
"""
_TIMES: Final = """
The time with hands on it is an estimate, by the house’s own figures: for one stroke {strokes}, for one cut
{cut} seconds, and {setting} for each setting of the stop. A tool may say itself how long a stroke takes.
Drying and waiting are told apart, once for each work, since its pieces wait together. Sticking is not
estimated. The time at the table that the record tells stands beside the estimate, and nothing else is
worked out from it.
"""
