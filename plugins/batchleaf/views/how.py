"""How each number is worked out, in the words of the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.figures import Figures
from batchleaf.facts import CostFlow
from batchleaf.views.colours import has_colours
from batchleaf.views.how_bench import how_at_the_bench
from batchleaf.views.how_colours import how_of_colours
from batchleaf.views.how_post import how_posted
from batchleaf.views.how_words import paragraphs
from batchleaf.views.more import tells_prices, tells_where
from batchleaf.views.pages import HowPage, HowSection


def how_page(figures: Figures) -> HowPage:
    """One section for each number that pages show."""
    flow = _FLOW[figures.settings.cost_flow]
    by_year = _YEARS
    if figures.ledger:
        of_money = [
            _section("on-hand", "On hand, and what it is worth", flow + _ON_HAND),
            _section("price", "Price of one unit", _PRICE),
            _section("cost", "Cost of the batch and of one", _COST + _KINDS + _SHARES + _UNPRICED),
        ]
        by_year += _YEARS_OF_THE_DRAWER
        numbers = _FIGURES + _KEYS
    else:
        told = any(batch.one is not None for batch in figures.batches.values())
        of_money = [_section("cost", "Cost of one", _COST + _UNPRICED + flow)] if told else []
        numbers = _FIGURES + _KEYS_WITHOUT_COSTS
    return HowPage(
        title="How it is worked out",
        sentence=("Every number on these pages is worked out from the records; nothing is typed twice.",),
        sections=(
            _section("measures", "Measures", _MEASURES),
            _section("from-one-sheet", "From one sheet", _FROM_ONE_SHEET),
            _section("together", "Where parts lie", _TOGETHER),
            _section("could-have-given", "Could have given", _COULD_HAVE_GIVEN),
            _section("paper", "Paper used, kept and waste", _PAPER),
            _section("for-makes", "Another number of makes", _FOR_MAKES),
            *([_section("become", "What it could become", _BECOME)] if figures.could_become else []),
            *([_section("today", "From today’s drawer", _TODAY)] if figures.ledger else []),
            how_at_the_bench(),
            _section("collating", "Collated sets", _COLLATING),
            _section("adhesive", "Adhesive and packing", _ADHESIVE),
            *of_money,
            *([how_of_colours()] if has_colours(figures) else []),
            how_posted(figures.archive.postage, is_private=figures.ledger is not None),
            _section("years", "The year at the table", by_year),
            *_of_finished(figures),
            _section("figures", "The numbers alone", numbers),
        ),
    )


def _of_finished(figures: Figures) -> Iterator[HowSection]:
    """Each where there is such a page."""
    if tells_where(figures):
        yield _section("finished", "Where finished makes are", _FINISHED)
    if tells_prices(figures):
        yield _section("prices", "What is asked, and what stays", _PRICES)


def _section(anchor: str, heading: str, text: str) -> HowSection:
    return HowSection(anchor, heading, paragraphs(text))


_MEASURES: Final = """
Lengths are kept exactly, also thirds of an inch. One inch is 25.4 mm exactly (international yard,
1 July 1959; NIST Special Publication 447, appendix 5).

The unit of the record is shown as written. The other unit, beside it or chosen instead, is rounded down
to a sixteenth of an inch or half a millimetre, since a part cut too large does not fit. A sheet as bought is
no part: its size is told to the nearest sixteenth of an inch or tenth of a millimetre.

Pounds of paper are those of 500 sheets of the basic size of its kind: cover 20 × 26 in, text and book
25 × 38, index 25½ × 30½, bristol 22½ × 28½, bond 17 × 22, tag 24 × 36. One pound is
453.59237 g exactly (the same publication), so that 80 lb cover is 216 g/m².
"""
_FROM_ONE_SHEET: Final = """
The most parts of one size that a sheet gives by through cuts, from edge to edge of the piece in hand,
as a trimmer makes them. The plain grid, all parts lying one way, often gives fewer. Cuts that stop part
way, with knife and rule, sometimes give more: five by seven inches come three times from a sheet of twelve
by twelve by through cuts, and four times round a hole in the middle.

Where something must be trimmed off a sheet before it can be used, only what is left is cut from; the
sheet costs what it costs as bought.
"""
_TOGETHER: Final = """
From the record alone: its base with its folds, the sizes of the parts, and where each of them is said to sit.
A part of which nothing is said sits in the middle of what carries it. Distances are those from the edges of
what a part lies on, exactly; of two edges across from each other the nearer one is told, or both where they
are as near.

Drawings are in proportion. Papers have the colour that the drawer tells of them. A pattern is told there in
words only, so a few marks stand for it: small ups where it has an up, stripes where it may stand on its head,
small points where it may be turned as one likes.

Room to write is the largest rectangle inside that no part covers, on the base or on a part that lies there;
what has no inside is written on its back. Printed and see-through papers are left out. Room to stamp is the
largest rectangle of a stamped part that nothing laid later covers. Both are found exactly.
"""
_COULD_HAVE_GIVEN: Final = """
The most full sets of parts that the sheets of a batch can give by through cuts. Parts are turned on
the sheet only where their paper allows it.

Beside it stands the reason why there cannot be more. Where no proof was found, the page says how many
more there might be at most. Extra parts that a batch asks for on top of its makes are in the cutting plan,
and not in this number.
"""
_PAPER: Final = """
By area. Used is what the parts of the finished makes measure, cut to their shapes; kept is what went back
into the drawer; waste is the rest: spoiled makes, what is trimmed off, and what is cut off a part for its
shape. The three sum to all that was cut. A batch that is cut, and of which nothing is finished yet, is in
none of them.

A shape is measured exactly, but for π, which is taken as 355/113: too large by less than one in eleven
million. In a cutting plan a part is the rectangle that it is cut from.

Parts cut by hand from scraps that nobody measures, and ready-made ones, are in none of them.
"""
_FOR_MAKES: Final = """
For one to twelve makes, for some numbers up to sixty, and for that of the batch: the fewest whole sheets as
bought, by area, from which the parts can be cut, dealt round evenly where there are several papers. Scraps
are left out, since nobody else has them. Nothing is said of the numbers between: fewer makes never take more
sheets, so the next one that is worked out is enough.

A supply follows the number where the record says how much one make takes. What it states for the whole batch
stays as it is, and what is not measured stays so. Where the page tells what the batch cost, each amount costs
what the batch paid for one on average; what is left of a sheet is not taken off. Time is not scaled.
"""
_TODAY: Final = """
For each batch as if it were the only one: the most full sets of parts that all sheets and odd pieces on
hand give, each part from any of its papers, by the planner that works out what a batch could have given;
and no more than any other supply is enough for, where the record says how much one make takes. A sheet of a
pad stands in the question once, under its number or among those of which no record says the number. Spare
parts and scraps are pieces like others.

What runs out first is what these makes use up; where no measured supply is, the papers of which one more
sheet would give another make. What to get is the least paper, by area, and the supplies that lack, for as
many makes as the batch began.
"""
_BECOME: Final = """
For each piece in the drawer, and for whole sheets, the parts of your batches that it gives by through cuts;
equal papers of one kind together, whatever their colour. The best use is the largest part that takes two
thirds of the piece, since small ones find room anywhere; three are told. The drawing shows one piece cut
for the first.

Not touched for long is a paper that no batch took for half a year before the newest record.
"""
_COLLATING: Final = """
How the parts of each make are put together before assembly, so that no make gets the same paper twice. How
many parts there are of each paper follows from the cutting plan; where it does not tell, they are taken to
come evenly from their papers.

The most sets is exact: every part of a make is there so many times, no paper comes more often than the rule
allows in all of them together, and of no paper more parts than were cut. That is a flow through a network,
and the largest number of sets is found by halving. Parts that pass this test can always be dealt out: König
showed it in 1916 for the edges between two sides of a graph (Mathematische Annalen 77), here the papers and
the parts of a make. So where papers are cut alike, all that it takes is as many papers as one make has
parts of them.

Unless the record says otherwise, no paper comes more often in one make than it must: none twice where there
are papers enough, and where four squares come from three papers each once or twice. Makes that get the same
stand together. Where the parts do not give a set by the rule for every make, the last ones get what is
left.

Images of stamps and dies are dealt round: each as often as the next, or once more, and so that none meets
the same paper again before it has met the others.
"""
_ADHESIVE: Final = """
How much of an adhesive a part takes follows from its size and from what the drawer says of the adhesive.
Of tape it is the length of the sides that get a strip. Of what comes in pieces, such as foam squares, it is
the area of the part divided by the area that one is for, rounded up, and at least the number that is set,
often four: one under each corner. Of glue it is so much for an area.

That is counted for each of the parts that lie on another, as often as a make has it; extras lie loose. Where
the record of a batch lists the adhesive itself, with an amount or without, that stands instead.

Packing is counted for finished makes. Where several are packed together, the last ones take as much as any.
"""
_FLOW: Final = {
    CostFlow.AVERAGE: """
Each unit is taken at the average cost of all on hand at that moment (weighted average, International
Accounting Standard 2, paragraphs 25 and 27).
""",
    CostFlow.OLDEST_FIRST: """
The oldest units on hand are taken first, at what they cost (first in, first out, International
Accounting Standard 2, paragraphs 25 and 27).
""",
}
_ON_HAND: Final = """
On hand is what was there before, and what was bought, less what batches took, set right by each count,
in order of date; on one day purchases come first, then batches, then what went elsewhere, then counts.
The drawer is told as of the newest of these records, or of the day that the setting as_of names.

What is kept by level is full, half, low (taken for a quarter) or empty; what a count finds less of it was
used. It leaves at cost, and no batch is charged with it.

The delivery of an order is part of the cost, spread by price over its lines. Each movement is rounded
once to the smallest coin, and the remainder stays in the drawer, so that nothing is lost.

A kept piece goes back with its share of the sheet’s cost, by area. A count that finds less takes the
missing out at cost; one that finds more brings it in at none. A rough count, such as about 9, bears the
records out where it lies within a fifth of what they expect, or within one; then nothing moves. Beyond
that it counts as any other.

The sheets of a pad lie together and have one price. Beside it stands how many there are of each paper:
whole pads bring in as many of each; what was taken, or came in, without a number leaves open which. A
count of one paper first settles what was left open, and moves the pad by the rest.

A gift cost nothing but its share of the delivery. What is only guessed is worked with as if it were
known; the page of the supply says so.

Alike pieces are not told apart: where they came from names all that brought one since there were none.

With less on hand than its mark a supply is to be bought again; kept pieces do not count towards it. What
each cost is the newest purchase with its share of the delivery, divided by what came, halves rounded up.
"""
_PRICE: Final = """
What a purchase cost with its share of the delivery, divided among its units. It is kept exactly and
rounded where it is shown: to the smallest coin, or finer where one unit costs less than ten of them, or
where two prices after one another would look the same.

A gift and an unknown price are no price, and in no average. The average is all that was paid, divided
among all that was bought for it. What is guessed counts as if it were known.
"""
_COST: Final = """
What the batch drew from the drawer, less the pieces it kept. The cost of one is that, divided among the
finished ones, halves rounded up; spoiled ones are paid for by the rest.
"""
_KINDS: Final = """
The strip shows what one is made of. What the papers cost is split by area, paper by paper: into the parts
of finished makes, those of spoiled ones, and the rest, which is waste. A part that comes from several
papers counts to each of them by how much of it was cut.

Beside it stands what the same would cost at the prices last paid: sheets and kept pieces by area, each
supply rounded once. A gift is no price.
"""
_SHARES: Final = """
The cost of one is shared out among its supplies so that the column adds up: each share is rounded down
to the smallest coin, and the coins left over go one each to the largest remainders. So a share may be a
cent more or less than rounding it alone would give.
"""
_UNPRICED: Final = """
Where a price is not known, the cost is at least the sum of the others, and the page names what is
missing. What was used without a measure is named and not counted. Time is told apart.
"""
_FINISHED: Final = """
What the lines of a record say of its finished makes is added up: kept, given, sold, put by as samples, used
in class. Those of which no line says anything are not told. Together they are all that were finished.

What they brought in is the sum of what was paid. Where something was sold and the record has no price for
it, it is at least the sum of the others.
"""
_PRICES: Final = """
What stays of a price that is asked is that price less the cost of one. What stays for an hour is the price
of all finished ones less the cost of the batch, divided by the hours at the table, halves rounded up. Time
itself is never priced, and is in no sum. The time for one is the time at the table divided among the finished
ones.

Makes that were sold carry their share of what the batch cost: its cost times those sold, divided by those
finished, halves rounded up. What stayed is what they brought in less that share. The sums below the columns
are those of the lines above them.

Where a price of a supply is not known, the cost is at least so much, and what stays at most. Where
something was sold at a price that is not known, what stayed is at least so much; where both are so, it is
not known.
"""
_YEARS: Final = """
A batch belongs to the year and the month of its date, once something of it is finished. Makes begun, less
those finished, are spoiled. Time at the table is the sum of what the records tell; the page says of how
many batches they tell nothing. The paper of a year is that of its batches. Nothing depends on the day on
which the page is made.
"""
_YEARS_OF_THE_DRAWER: Final = """
Spent is what came in by orders in that year, delivery included. Used is what batches took, less what they
kept, at cost; a batch that is cut is in it, though nothing of it is finished. What the drawer was worth at
the start, and what came in, less what was used, what went elsewhere and what was missing at counts, is what
it was worth at the end, to the smallest coin. What a count found too much came in at no cost, and what was
used without having come in at a price that is not known. Of what is kept by level, what a count finds less
has been used up.

The last year ends with the day as of which the drawer is told. The worth at the end of a month is that of
all piles then. Where something has no known price, it is at
least so much.
"""
_FIGURES: Final = """
Beside each batch page lies figures.json with the same numbers for programs: lengths in the unit of the
record as exact fractions, areas in square millimetres, money as decimal text.

Tables lie beside their pages as CSV for spreadsheets: dates by year, month and day, lengths in
millimetres, money as plain decimals; a number that no decimal says exactly is rounded to six places. Text
that a spreadsheet would take for a formula begins with a quotation mark there.
"""
_KEYS: Final = """
Its keys: format, title, date, status, unit; makes (finished, begun, thing); parts (letter, name, size,
each, papers, cut); from_one_sheet (part, supply, grid, through, stopped, proved); could_have_given (makes,
bound, proved, reason); paper (cut, used, kept, waste); supplies (supply, used, unit, scraps, cost,
complete, one); batch_cost (amount, currency, complete, without, not_counted, and kinds: papers, adhesive,
embellishments, packing, waste, spoilage); cost_of_one (amount, complete, today, shares); minutes. Where the
record says something of it: lies (part, on, face, left, top, width, height); room_to_write (on, face, left,
top, width, height); room_to_stamp (part, face, left, top, width, height); stuck_with (supply, amount);
weight (grams, complete, without, not_counted, posted); thickness (mm, usual, uneven, complete, without,
estimated, posted); envelope (name, mm, supply,
packed); post (rules, edition, as, reasons); postage (rate, date, amount); design (slug, title); extras
(part, extra, planned); collated (sets, possible, rule, missing: part, more, papers); bench (works: work,
on, tool, with, when, pieces, sheets, at_once, strokes, seconds, waits; cuts, settings, seconds, waits);
for_makes (makes, sheets: supply, sheets; proved, supplies: supply, amount, unit, scales; cost: amount,
complete, without); went (how many makes each way: kept, given, sold, sample, class); where (the same
with every way, and not_told, which sum to all that are finished); asked (amount, stays, per_hour); sold
(makes, brought_in, cost, stayed, complete).
"""
_KEYS_WITHOUT_COSTS: Final = """
Its keys: format, title, date, status, unit; makes (finished, begun, thing); parts (letter, name, size,
each, papers, cut); from_one_sheet (part, supply, grid, through, stopped, proved); could_have_given
(makes, bound, proved, reason); paper (cut, used, kept, waste); supplies (supply, used, unit, scraps);
cost_of_one (amount, complete); minutes. Where the record says something of it: lies (part, on,
face, left, top, width, height); room_to_write (on, face, left, top, width, height); room_to_stamp
(part, face, left, top, width, height); stuck_with (supply, amount);
weight (grams, complete, without, not_counted, posted); thickness (mm, usual, uneven, complete,
without, estimated, posted); envelope (name, mm, supply, packed); post (rules, edition, as, reasons);
design (slug, title); extras (part, extra, planned); collated (sets, possible, rule, missing: part, more,
papers); bench (works: work, on, tool, with, when, pieces, sheets, at_once, strokes, seconds, waits; cuts,
settings, seconds, waits); for_makes (makes, sheets: supply, sheets; proved, supplies: supply, amount,
unit, scales).
"""
