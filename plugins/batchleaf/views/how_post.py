"""How weight, thickness, envelope and letter are worked out, with the sources."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.facts.postage import USUAL_CLEARANCE, Post, Postage
from batchleaf.measure.display import show_length, show_number
from batchleaf.measure.lengths import Unit
from batchleaf.views.how_words import paragraphs
from batchleaf.views.pages import HowSection


def how_posted(postage: Postage, *, is_private: bool) -> HowSection:
    """One section, with the rules of each post in its edition."""
    usual = postage.clearance == USUAL_CLEARANCE
    inches, mm = show_length(postage.clearance, Unit.INCH), show_number(postage.clearance, 3)
    clearance = f"The clearance is {inches} in ({mm} mm){'' if usual else ', as the drawer says'}."
    told = [line for post in postage.posts for line in _rules(post)]
    rates = paragraphs(_RATES) if is_private and postage.rates else ()
    return HowSection("post", "By post", (*paragraphs(_BY_POST.format(clearance=clearance)), *told, *rates))


def _rules(post: Post) -> Iterator[str]:
    says = " ".join(post.says)
    yield f"{post.title}: {says} Edition: {post.edition}. Source: {post.source}."


_BY_POST: Final = """
What one weighs is the area of its parts times the grammage of their papers, and of what is worked in the
weight that the drawer says of one. Where a part comes from several papers the heaviest counts; one whose
shape the record does not say counts as the rectangle that it is cut from. Nothing is weighed, so it is an
estimate. What has no known weight is named, and the weight is then at least the rest.

How thick it is, is measured at its thickest spot, folded flat: there the thicknesses of all that lies
over one another are added up, panels of the base, parts, and what they are stuck with, which is taken to
lie under the whole of a part. A side fold, a top fold and a tent have two panels over one another, a gate
fold its back and the doors, an accordion all of its panels. What no record says the place of, such as a
brad, is taken to lie on that spot; a cord or a ribbon goes round, and counts twice. Glue counts for
nothing. A box is as high as its walls and its card.

Where the drawer does not say how thick a paper is, it is taken for 1.6 cm³ a gram: 240 g/m² are 0.384 mm.
That is more than each published caliper of a paper guide (65 lb cover 8 points, 80 lb 9.5, 100 lb 11, 110
lb index 9, 20 lb bond 3.8; a point is a thousandth of an inch) and than uncoated card of 80 lb cover, 13
points, from memory. So the estimate errs thick; a coated paper may have half of it. Several sheets
measured together come out differently from one (ISO 534).

It is uneven where the thickest spot is more than 1 mm above the thickness that half of its face does not
go beyond. No rule says how much is uneven; this is the house’s own.

The smallest envelope is that with the least area. It has to be wider and higher than the make by the
clearance; or, where that is more, by half of the clearance and by what its paper needs to close round the
make: the thickness of its rim, which is half a centimetre wide, and the square of what stands above that,
divided by a centimetre (half of the way round it is no longer). {clearance} This is common practice, from
memory: the commonest card, 4¼ × 5½ in, has just ⅛ in of room in its A2 envelope. Sizes are those of ISO
269 and of the American trade, and the maker’s own. An envelope of which the drawer says no weight is
taken to be two and a half times its area in paper of 120 g/m², and four layers of that thick, so that
both err on the safe side.

As what it goes follows from the size of the envelope, from the thickness and the weight of both, and from
these rules. What is just as large as a limit is within it. Where a least thickness is asked for, an
estimate counts half. Rules change: ask at your post office.
"""
_RATES: Final = """
What it costs to send one is the maker’s own rate for that kind of letter: of its newest day, the lowest
step that the weight does not go beyond.
"""
