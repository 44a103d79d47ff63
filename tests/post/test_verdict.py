"""As what a piece goes, against published checks and both sides of each limit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.post.verdict import Measure, Piece, judge
from batchleaf.facts.envelopes import named
from batchleaf.facts.postage import Post
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.measure.mass import parse_mass
from batchleaf.measure.thickness import parse_thickness
from batchleaf.records.post_rules import known_posts
from batchleaf.views.post_reasons import reasons

USPS, ROYAL_MAIL, CLASSES, FORMATS = known_posts()


def piece(size: str, thick: str = "2 mm", weight: str = "15 g", *, uneven: bool = False) -> Piece:
    """Something to be sent."""
    thickness = parse_thickness(thick)
    return Piece(parse_size(size, Unit.MM), thickness, thickness, parse_mass(weight), uneven)


def goes_as(one: Piece, post: Post) -> str:
    """What it is, as a page says it."""
    return judge(one, post).told


def why(one: Piece, post: Post) -> list[str]:
    """The reasons, in plain spaces."""
    return [reason.replace("\u00a0", " ") for reason in reasons(judge(one, post))]


# --- published checks ---------------------------------------------------------


def test_an_a2_envelope_just_passes_the_ratio() -> None:
    """5 3/4 ÷ 4 3/8 is 1.314."""
    one = piece("4 3/8 x 5 3/4 in")
    assert round(float(one.of(Measure.RATIO)), 3) == 1.314
    assert goes_as(one, USPS) == "a letter"


def test_a_square_of_five_inches_is_a_nonmachinable_letter() -> None:
    """Its ratio is 1."""
    assert goes_as(piece("5 x 5 in"), USPS) == "a nonmachinable letter"
    assert why(piece("5 x 5 in"), USPS) == ["as long as high, and machines take at least 1.3 times"]


def test_a_number_10_is_a_royal_mail_large_letter() -> None:
    """It is 241.3 mm long."""
    one = Piece(named("#10").size, Fraction(1), Fraction(1), Fraction(10))
    assert goes_as(one, ROYAL_MAIL) == "a large letter"
    assert why(one, ROYAL_MAIL) == ["241.3 mm long, and a letter has at most 240"]
    assert goes_as(one, USPS) == "a letter"


def test_c5_is_a_usps_flat_and_a_royal_mail_letter() -> None:
    """6.378 is more than 6.125."""
    one = Piece(named("C5").size, Fraction(1), Fraction(1), Fraction(10))
    assert goes_as(one, USPS) == "a flat"
    assert why(one, USPS) == ["6.378 in high, and a letter has at most 6 1/8"]
    assert goes_as(one, ROYAL_MAIL) == "a letter"


def test_dl_passes_all() -> None:
    """110 x 220 mm."""
    one = Piece(named("DL").size, Fraction(1), Fraction(1), Fraction(10))
    told = [goes_as(one, post) for post in known_posts()]
    assert told == ["a letter", "a letter", "a standardized letter", "format P"]
    assert [why(one, post) for post in known_posts()] == [[]] * 4


def test_a_quarter_of_an_inch_is_thin_enough_for_one_and_too_thick_for_the_other() -> None:
    """6.35 mm; a hair more is too thick for both."""
    quarter, more = piece("110 x 220", "1/4 in"), piece("110 x 220", "0.2501 in")
    assert (goes_as(quarter, USPS), goes_as(quarter, ROYAL_MAIL)) == ("a letter", "a large letter")
    assert (goes_as(more, USPS), goes_as(more, ROYAL_MAIL)) == ("a flat", "a large letter")
    assert why(more, USPS) == ["0.2501 in thick, and a letter has at most 1/4"]


# --- both sides of each limit ---------------------------------------------------

LIMITS = [
    (USPS, "11 1/2 x 6 1/8 in", "1/4 in", "3.5 oz", "a letter"),
    (USPS, "5 x 3 1/2 in", "0.007 in", "1 g", "a letter"),
    (USPS, "15 x 12 in", "3/4 in", "2 kg", "a flat"),
    (ROYAL_MAIL, "240 x 165", "5 mm", "100 g", "a letter"),
    (ROYAL_MAIL, "353 x 250", "25 mm", "750 g", "a large letter"),
    (CLASSES, "235 x 120", "5 mm", "20 g", "a standardized letter"),
    (CLASSES, "140 x 90", "5 mm", "20 g", "a standardized letter"),
    (FORMATS, "245 x 165", "5 mm", "100 g", "format P"),
    (FORMATS, "140 x 90", "5 mm", "100 g", "format P"),
]


@pytest.mark.parametrize(("post", "size", "thick", "weight", "kind"), LIMITS)
def test_what_is_just_as_large_as_a_limit_is_within(
    post: Post, size: str, thick: str, weight: str, kind: str
) -> None:
    """All limits at once."""
    assert goes_as(piece(size, thick, weight), post) == kind


HAIR = Fraction(1, 1000)


def beyond(one: Piece) -> Iterator[tuple[str, Piece]]:
    """The same piece, a hair larger in one measure at a time."""
    length, height = one.size.upright.height, one.size.upright.width
    yield "long", replace(one, size=replace(one.size, width=length + HAIR, height=height))
    yield "high", replace(one, size=replace(one.size, width=length, height=height + HAIR))
    yield "thick", replace(one, thickness=one.thickness + HAIR, thinnest=one.thinnest + HAIR)
    yield "weight", replace(one, grams=one.grams + HAIR)


AFTER = {"a letter": ("a flat", "a large letter"), "a large letter": ("a parcel",), "a flat": ("a parcel",)}


@pytest.mark.parametrize(
    ("post", "size", "thick", "weight", "kind"),
    [one for one in LIMITS if one[1] not in ("5 x 3 1/2 in", "140 x 90")],
)
def test_a_hair_more_is_the_next_kind(post: Post, size: str, thick: str, weight: str, kind: str) -> None:
    """In each measure by itself; of a flat no weight is known."""
    for measure, larger in beyond(piece(size, thick, weight)):
        if kind == "a flat" and measure == "weight":
            assert goes_as(larger, post) == kind
            continue
        assert goes_as(larger, post) in AFTER.get(kind, (post.beyond,)), measure
        words = {"weight": "g, and" if post.unit is Unit.MM else "oz, and"}.get(measure, measure)
        assert any(words in reason for reason in why(larger, post))


@pytest.mark.parametrize(
    ("post", "size", "smaller"),
    [
        (USPS, "5 x 3 1/2 in", "4.99 x 3 1/2 in"),
        (USPS, "5 x 3 1/2 in", "5 x 3.49 in"),
        (CLASSES, "140 x 90", "139.9 x 90"),
        (CLASSES, "140 x 90", "140 x 89.9"),
        (FORMATS, "140 x 90", "139.9 x 90"),
        (FORMATS, "140 x 90", "140 x 89.9"),
    ],
)
def test_a_hair_less_is_not_taken(post: Post, size: str, smaller: str) -> None:
    """It goes by no kind, and no rate is asked for it."""
    assert goes_as(piece(size), post)
    verdict = judge(piece(smaller), post)
    assert (verdict.told, verdict.name, verdict.too_small) == ("", "", True)


def test_what_is_thinner_than_seven_thousandths_is_not_taken() -> None:
    """An estimate counts by what it is at least."""
    assert goes_as(piece("5 1/2 x 4 in", "0.007 in"), USPS) == "a letter"
    assert goes_as(piece("5 1/2 x 4 in", "0.00699 in"), USPS) == ""
    estimated = replace(piece("5 1/2 x 4 in", "0.01 in"), thinnest=parse_thickness("0.006 in"))
    assert goes_as(estimated, USPS) == ""
    assert why(estimated, USPS) == ["0.006 in thick, and what is sent has at least 0.007"]


@pytest.mark.parametrize(
    ("size", "thick", "kind"),
    [
        ("6 x 4 1/4 in", "0.008 in", "a letter"),
        ("6.01 x 4 1/4 in", "0.008 in", "a nonmachinable letter"),
        ("6 x 4.26 in", "0.008 in", "a nonmachinable letter"),
        ("6.01 x 4.26 in", "0.009 in", "a letter"),
    ],
)
def test_a_large_thin_letter_is_nonmachinable(size: str, thick: str, kind: str) -> None:
    """Longer than 6 in or higher than 4 1/4, and thinner than 0.009."""
    assert goes_as(piece(size, thick), USPS) == kind


@pytest.mark.parametrize(
    ("size", "kind"),
    [
        ("5.2 x 4 in", "a letter"),
        ("5.19 x 4 in", "a nonmachinable letter"),
        ("10 x 4 in", "a letter"),
        ("10.01 x 4 in", "a nonmachinable letter"),
    ],
)
def test_ratios_of_one_and_three_tenths_and_two_and_a_half_are_within(size: str, kind: str) -> None:
    """Length ÷ height."""
    assert goes_as(piece(size), USPS) == kind


def test_a_standardized_letter_is_at_least_one_and_four_tenths_times_as_long_as_high() -> None:
    """Its ratio makes it no standardized letter."""
    assert goes_as(piece("140 x 100"), CLASSES) == "a standardized letter"
    assert goes_as(piece("140 x 100.1"), CLASSES) == "a letter that is not standardized"
    assert why(piece("140 x 100.1"), CLASSES) == [
        "1.399 times as long as high, and a standardized letter has at least 1.4 times"
    ]


def test_an_uneven_letter_is_nonmachinable_where_the_rules_say_so() -> None:
    """A large letter or a flat is none the dearer for it."""
    assert goes_as(piece("162 x 114", uneven=True), USPS) == "a nonmachinable letter"
    assert why(piece("162 x 114", uneven=True), USPS) == ["it is uneven"]
    assert goes_as(piece("300 x 200", uneven=True), USPS) == "a flat"
    assert goes_as(piece("162 x 114", uneven=True), ROYAL_MAIL) == "a letter"


def test_weight_counts() -> None:
    """A letter of more than 3.5 oz is a flat, and more than 100 g make a large letter."""
    assert goes_as(piece("162 x 114", weight="3.51 oz"), USPS) == "a flat"
    assert why(piece("162 x 114", weight="3.51 oz"), USPS) == ["3.51 oz, and a letter has at most 3.5"]
    assert goes_as(piece("162 x 114", weight="100.1 g"), ROYAL_MAIL) == "a large letter"


def test_what_is_small_and_thick_is_a_parcel() -> None:
    """A box of two inches is too small for a letter, and too thick for one."""
    assert goes_as(piece("60 x 60", "30 mm"), USPS) == "a parcel"
    assert goes_as(piece("60 x 60", "1/4 in"), USPS) == ""


def test_rates_are_called_by_post_and_kind() -> None:
    """Every name that a verdict can have is one that a rate may have."""
    assert USPS.rate_names() == ("USPS letter", "USPS nonmachinable letter", "USPS flat")
    assert FORMATS.rate_names() == ("UPU format P",)


SIZES = st.builds(lambda a, b: f"{a} x {b}", st.integers(50, 400), st.integers(50, 400))


@given(SIZES, st.integers(1, 300), st.integers(1, 900), st.sampled_from(known_posts()))
def test_what_is_larger_never_goes_as_a_smaller_kind(size: str, tenths: int, grams: int, post: Post) -> None:
    """And turning it changes nothing."""
    one = piece(size, f"{tenths // 10}.{tenths % 10} mm", f"{grams} g")
    assert judge(replace(one, size=one.size.turned), post) == judge(one, post)
    kinds = [*(kind.name for kind in post.kinds), ""]
    rank = {name: at for at, name in enumerate(kinds)}
    verdict = judge(one, post)
    heavier = judge(replace(one, grams=one.grams * 2, thickness=one.thickness * 2), post)
    if not verdict.too_small and not heavier.too_small:
        before, after = (rank[v.kind.name if v.kind else ""] for v in (verdict, heavier))
        assert before <= after


def test_every_post_says_its_edition_its_source_and_its_rules() -> None:
    """Every number of the rules stands in what the page says of them, inches as fractions."""
    for post in known_posts():
        assert all((post.edition, post.source, post.says))
    assert "copy later than July 2023" in USPS.edition
    assert "from memory" in FORMATS.edition
    said = " ".join(USPS.says)
    for number in ("5 × 3½ × 0.007", "11½ × 6⅛ × ¼", "3.5 oz", "1.3", "2.5", "0.009", "4¼", "15 × 12 × ¾"):
        assert number in said
    for number in ("240 × 165 × 5", "100 g", "353 × 250 × 25", "750 g"):
        assert number in " ".join(ROYAL_MAIL.says)
    for number in ("140 × 90", "235 × 120 × 5", "20 g", "1.4"):
        assert number in " ".join(CLASSES.says)
    for number in ("140 × 90", "245 × 165 × 5", "100 g"):
        assert number in " ".join(FORMATS.says)
