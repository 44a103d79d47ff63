"""How colours are compared and named, in the words of the bench."""

from __future__ import annotations

from typing import Final

from batchleaf.core.goes_with import MOST_OF_HUE, NEAR, SAME_HUE, STEP
from batchleaf.views.colour_words import HARDLY_APART, VERY_CLOSE
from batchleaf.views.how_words import paragraphs
from batchleaf.views.pages import HowSection
from batchleaf.views.words import number_word


def how_of_colours() -> HowSection:
    """The section that the page tells of colours."""
    told = _COLOURS.format(
        hardly=HARDLY_APART,
        very=VERY_CLOSE,
        near=f"{NEAR:.0f}",
        step=f"{STEP:.0f}",
        hue=SAME_HUE,
        most=number_word(MOST_OF_HUE),
    )
    return HowSection("colours", "Colours, and what goes together", paragraphs(told))


_COLOURS: Final = """
Colours are those that the records tell, as shares of red, green and blue (sRGB, IEC 61966-2-1); about
stands before those that were picked from a photo or by eye. How far two look apart is their CIEDE2000
difference (CIE 142-2001, in the form that Sharma, Wu and Dalal gave it in 2005), by way of CIELAB under
daylight, D65. Up to {hardly} they are hardly told apart, up to {very} very close, up to {near} close; these
limits are the house’s own. Perhaps stands before it where either colour was picked. Of supplies with
several colours the two that are nearest count, and each colour gets its nearest in turn.

With a supply goes its collection first, then what is nearest. Then come up to {most} that are lighter
and {most} that are darker by {step} of 100 or more, of the same hue within {hue} degrees, and one whose
hue lies opposite, within {hue} degrees of half a turn; there the first colour of each counts.
These limits are the house’s own too. What is on hand does not change the order, and whether it pleases is
not worked out.

The families are eleven words that everybody uses. Where one ends and the next begins is the house’s own,
by lightness, chroma and hue; so is what is called pale or dark.

How well a stamp stands out from its paper is the contrast of the Web Content Accessibility Guidelines 2.2,
from 1 to 21: words can be read from 4.5 on, and from 3 on where they are large, 18 point or more (success
criterion 1.4.3). An image lower than that has no large words. The guidelines are made for screens; on
paper the number is a guide, and a try on a scrap decides. Where powder is embossed over the ink, its colour
counts. Of a paper with several colours the nearest to the ink counts; nothing is told of what can be seen
through.
"""
