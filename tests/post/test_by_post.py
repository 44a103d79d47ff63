"""One make by post as a whole: its envelope, what it weighs in it, and what it costs to send."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction
from importlib.resources import files

import pytest

from batchleaf.core.post.by_post import ByPost, by_post
from batchleaf.core.post.rates import rate_for
from batchleaf.core.weight import Weighed
from batchleaf.facts import Project, Purpose, Supply, Use
from batchleaf.facts.envelopes import named
from batchleaf.facts.postage import NO_POSTAGE, Postage, Rate
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.mass import GRAMS_PER_OUNCE
from batchleaf.records.post_rules import POSTS, known_posts
from post.makes import CARD, THIN, drawer, make_of, on, thing, used

SHEET = replace(CARD, thickness=Fraction("0.3"))
BLUE = replace(thing("blue", weighs="4.6", thick="0.4"), envelope=named("C6").size)
TIGHT = replace(thing("tight"), envelope=Size(Fraction(106), Fraction(149)))
IN_BLUE = used("blue", "1", Purpose.PACKING)


def of(project: Project, *supplies: Supply, postage: Postage = NO_POSTAGE) -> ByPost:
    """What is said of a make, where something can be."""
    found = by_post(project, drawer(SHEET, *supplies), postage)
    assert found is not None
    return found


def test_a_card_in_the_envelope_that_it_is_packed_in() -> None:
    """7.4592 g and 4.6 g; 0.6 mm and 0.4."""
    found = of(make_of("card A6, side fold", uses=(IN_BLUE,)), BLUE)
    assert (found.packed, found.tight) == (True, None)
    assert found.inside.envelope is not None
    assert found.inside.envelope.supply == "blue"
    assert found.weight == Weighed(Fraction("7.4592"))
    assert found.sent == Weighed(Fraction("12.0592"))
    assert found.posted is not None
    assert [found.posted.length, found.posted.height, found.posted.thickness] == [162, 114, 1]


def test_without_packing_the_smallest_is_taken_from_the_drawer_or_the_shop() -> None:
    """The drawer's own where it is as small; in inches an American one."""
    mine = of(make_of("card A6, side fold"), BLUE)
    assert (mine.inside.envelope and mine.inside.envelope.supply, mine.packed) == ("blue", False)
    shop = of(make_of("card A6, side fold"))
    assert shop.inside.envelope == named("C6")
    assert shop.inside.estimated
    american = of(make_of("card quarter-letter, side fold", unit=Unit.INCH))
    assert american.inside.envelope == named("A2")


def test_one_that_is_too_small_is_told_and_the_smallest_taken() -> None:
    """106 x 149 leaves a millimetre."""
    found = of(make_of("card A6, side fold", uses=(used("tight", "1", Purpose.PACKING),)), TIGHT)
    assert found.tight is not None
    assert (found.tight.supply, found.packed, found.inside.envelope) == ("tight", False, named("C6"))


@pytest.mark.parametrize("each", [None, Fraction(2)])
def test_only_one_envelope_for_each_is_one_that_a_make_goes_in(each: Fraction | None) -> None:
    """Two makes to an envelope are not sent one by one, and of two nobody knows which is sent."""
    packing = Use("blue", Fraction(2), each, purpose=Purpose.PACKING)
    assert not of(make_of("card A6, side fold", uses=(packing,)), BLUE).packed


def test_other_packing_goes_with_it() -> None:
    """A band of 0.1 mm that weighs 0.5 g; what nobody knows the weight of is named."""
    band, seal = thing("band", weighs="0.5", thick="0.1"), thing("seal")
    uses = (IN_BLUE, used("band", "1", Purpose.PACKING), used("seal", "1", Purpose.PACKING))
    found = of(make_of("card A6, side fold", uses=uses), BLUE, band, seal)
    assert found.sent == Weighed(Fraction("12.5592"), ("seal",))
    assert found.weight.complete
    assert found.posted is not None
    assert found.posted.thickness == Fraction("1.1")


def test_an_estimate_counts_half_where_a_least_thickness_is_asked_for() -> None:
    """The card 0.384 mm and the envelope of the shop 0.768: both by half."""
    found = by_post(make_of("card 100 x 150"), drawer(CARD), NO_POSTAGE)
    assert found is not None
    assert found.posted is not None
    assert (found.posted.thickness, found.posted.thinnest) == (Fraction("1.152"), Fraction("0.576"))


def test_a_box_goes_in_no_envelope() -> None:
    """It is sent as it is, and is a parcel; so is nothing that is larger than all envelopes."""
    postage = Postage(known_posts())
    box = of(make_of("box 60 x 60 x 30, lid 15"), BLUE, postage=postage)
    assert box.inside.envelope is None
    assert [verdict.told for verdict in box.verdicts] == ["a parcel", "a parcel", "", ""]
    poster = of(make_of("poster 280 x 360"), postage=postage)
    assert poster.inside.envelope is None
    assert [verdict.told for verdict in poster.verdicts][:2] == ["a flat", "a parcel"]


def test_of_a_batch_of_which_nothing_is_known_nothing_is_said() -> None:
    """No weight of any paper; no base: then at most a weight."""
    unknown = {slug: replace(one, grammage=None) for slug, one in drawer().items()}
    assert by_post(make_of("card A6, side fold"), unknown, NO_POSTAGE) is None
    bare = replace(make_of("card A6, side fold"), parts=(), uses=(used("star", "1"),))
    assert by_post(bare, drawer(thing("star")), NO_POSTAGE) is None
    weighed = by_post(bare, drawer(thing("star", weighs="2")), NO_POSTAGE)
    assert weighed == ByPost(Weighed(Fraction(2)), None)


def test_without_any_weight_there_is_no_verdict() -> None:
    """A thickness alone says which envelope, and not as what it goes."""
    gauged = {"card": replace(CARD, grammage=None, thickness=Fraction("0.3"))}
    found = by_post(make_of("card A6, side fold"), gauged, Postage(known_posts()))
    assert found is not None
    assert (found.inside.envelope, found.verdicts, found.sent) == (named("C6"), (), None)


def test_a_larger_clearance_takes_a_larger_envelope() -> None:
    """As a file of the drawer says it."""
    wide = of(make_of("card A6, side fold"), postage=Postage(clearance=Fraction(15)))
    assert wide.inside.envelope == named("B6")


# --- rates -----------------------------------------------------------------------


def rate(day: int, name: str, up_to: str, price: int) -> Rate:
    """From a day of January on."""
    grams = Fraction(up_to.split()[0]) * (GRAMS_PER_OUNCE if up_to.endswith("oz") else 1)
    return Rate(dt.date(2026, 1, day), name, grams, up_to, price)


RATES = (
    rate(1, "USPS letter", "1 oz", 73),
    rate(1, "USPS letter", "2 oz", 101),
    rate(1, "USPS letter", "3.5 oz", 140),
    rate(9, "USPS letter", "1 oz", 78),
    rate(9, "USPS letter", "2 oz", 107),
    rate(9, "USPS flat", "4 oz", 150),
)


@pytest.mark.parametrize(
    ("grams", "price"),
    [("1", 78), ("28.349523125", 78), ("28.3496", 107), ("56.69904625", 107), ("56.6991", None)],
)
def test_the_lowest_step_of_the_newest_day_that_reaches_so_far(grams: str, price: int | None) -> None:
    """Just so much is within; a step that the newest day leaves out is no longer offered."""
    found = rate_for("USPS letter", Fraction(grams), RATES)
    assert (found and found.price) == price


def test_rates_of_later_days_do_not_count_yet() -> None:
    """As the drawer is told of a day."""
    early = Postage(rates=RATES).until(dt.date(2026, 1, 8))
    found = rate_for("USPS letter", Fraction(1), early.rates)
    assert found is not None
    assert found.price == 73
    assert Postage(rates=RATES).until(None).rates == RATES


def test_sending_one_costs_what_the_rate_for_its_weight_says() -> None:
    """12.0592 g with its envelope; each rate once, although two posts may have kinds of one name."""
    postage = Postage(known_posts(), (*RATES, rate(2, "Royal Mail letter", "100 g", 165)))
    found = of(make_of("card A6, side fold", uses=(IN_BLUE,)), BLUE, postage=postage)
    assert [(one.post, one.price) for one in found.rates] == [("USPS letter", 78), ("Royal Mail letter", 165)]
    heavy = make_of("card A6, side fold", on("B", "100", "140"), uses=(IN_BLUE,))
    board = replace(THIN, grammage=Fraction(5000), thickness=Fraction(1))
    assert of(heavy, BLUE, board, postage=postage).rates == found.rates[1:]


# --- the rules that come with the program ---------------------------------------------


def test_every_file_of_rules_is_read() -> None:
    """None lies there idle."""
    folder = files("batchleaf.records").joinpath("post")
    assert {one.name for one in folder.iterdir()} == {f"{name}.toml" for name in POSTS}
    assert [post.title for post in known_posts()] == [
        "USPS", "Royal Mail", "Abroad, older classes", "Abroad, formats",
    ]  # fmt: skip
