"""Two batches of the demo worked out by hand: every field of their ``figures.json``.

The comments are the working. "Sums" means: by through cuts every part can be
pushed towards one corner, so that each edge lies at a sum of part sides
(Herz 1972; Christofides and Whitlock 1977); what lies beyond the largest sum
that fits is lost.
"""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

from browsing import Served

SQUARE_INCH = Fraction("25.4") ** 2


ELSEWHERE = ("thickness", "envelope", "post", "postage", "for_makes")
"""What follows from where each part lies, or for other numbers of makes: worked by hand for other batches."""


def published(site: Served, slug: str) -> dict[str, Any]:
    """What the site says of a batch, but for what is worked by hand elsewhere."""
    text = (site.folder / "projects" / slug / "figures.json").read_text(encoding="utf-8")
    data: dict[str, Any] = json.loads(text)
    assert float(Fraction(data["weight"].pop("posted"))) > float(Fraction(data["weight"]["grams"]))
    return {key: value for key, value in data.items() if key not in ELSEWHERE}


def weight(grams: Fraction) -> dict[str, Any]:
    """What one weighs; the ink is not measured."""
    return {"grams": str(grams), "complete": True, "without": [], "not_counted": ["hedge-ink"]}


def part(
    letter: str, name: str, size: tuple[str, str], papers: list[str], cut: int, **stuck: str
) -> dict[str, Any]:
    """One part, once in each make; ``stuck``: how much of what one is stuck with."""
    one: dict[str, Any] = {"letter": letter, "name": name, "size": [*size], "each": 1, "papers": papers}
    for supply, amount in stuck.items():
        one["stuck_with"] = {"supply": supply.replace("_", "-"), "amount": amount}
    return one | {"cut": cut}


def out(part: str, supply: str, grid: int, through: int) -> dict[str, Any]:
    """How many one sheet gives."""
    # Cuts that stop part way give no more here; that is not worked out by hand.
    counts = {"grid": grid, "through": through, "stopped": through}
    return {"part": part, "supply": supply, **counts, "proved": True}


def used(supply: str, amount: str | None, unit: str, scraps: int, cost: str, one: str) -> dict[str, Any]:
    """One supply with what it added."""
    return {
        "supply": supply, "used": amount, "unit": unit, "scraps": scraps,
        "cost": cost, "complete": True, "one": one,
    }  # fmt: skip


def kind(amount: str, one: str) -> dict[str, str]:
    """What one kind of thing adds to the batch, and to one."""
    return {"amount": amount, "one": one}


def work(what: str, on: str, tool: str | None, pieces: int, seconds: int, **more: Any) -> dict[str, Any]:
    """One work after the cuts, with one stroke for each piece, one at a time."""
    one = {"work": what, "on": [on], "tool": tool, "with": None, "when": "after cutting"}
    counts = {"pieces": pieces, "sheets": False, "at_once": [1], "strokes": pieces}
    return one | counts | {"seconds": seconds, "waits": 0} | more


NOT_MEASURED = {
    "supply": "hedge-ink", "used": None, "unit": "pad", "scraps": 0,
    "cost": None, "complete": False, "one": None,
}  # fmt: skip
"""A stamp of ink is used, and nobody measures it."""


def lies(part: str, on: str, left: str, top: str, width: str, height: str) -> dict[str, str]:
    """Where a part lies on the front, in the unit of its record."""
    return {"part": part, "on": on, **room("front", left, top, width, height)}


def room(face: str, left: str, top: str, width: str, height: str) -> dict[str, str]:
    """A place of a face, in the unit of its record."""
    return {"face": face, "left": left, "top": top, "width": width, "height": height}


def test_sloe_lane_cards_by_hand(demo_site: Served) -> None:
    """Inches, scraps of two cards, one of fourteen spoiled, the average of two lots."""
    assert published(demo_site, "sloe-lane-cards") == {
        "format": 1,
        "title": "Sloe lane cards",
        "date": "2025-10-04",
        "status": "published",
        "unit": "in",
        "makes": {"finished": 13, "begun": 14, "thing": "card"},
        "parts": [
            part("A", "base", ("17/2", "11/2"), ["oat-card"], 14),
            # A strip along each long side: 10 in are 254 mm, 7 in are 177.8.
            part("B", "mat", ("15/4", "5"), ["moss-card"], 14, paper_tape="127/500"),
            part("C", "panel", ("7/2", "3"), ["bramble-paper"], 14, paper_tape="889/5000"),
            part("D", "strip", ("7/2", "3/4"), ["ember-card"], 14, paper_tape="889/5000"),
            # 1.5 sq in are 968 mm², which is 1.6 times the 600 that one square is for; four are
            # common practice, one under each corner.
            part("E", "label", ("2", "3/4"), ["oat-card"], 14, foam_square="4"),
        ],
        "from_one_sheet": [
            # 8 1/2 x 11 is two of 8 1/2 x 5 1/2, and nothing is left.
            out("A", "oat-card", 2, 2),
            # 12 x 12: three across, two down. Sums of 3 3/4 and 5 up to 12 end at 11 1/4:
            # 126.5625 sq in hold six of 18.75 and no seventh.
            out("B", "moss-card", 6, 6),
            # Not turned: three across, four down.
            out("C", "bramble-paper", 12, 12),
            # Three across and sixteen down are 48; the strip of 1 1/2 x 12 beside them holds two
            # columns of three, turned: 54, and 55 of 2.625 sq in are more than 144.
            out("D", "ember-card", 48, 54),
            # Not turned: four across, fourteen down.
            out("E", "oat-card", 56, 56),
        ],
        # Seven sheets of oat card give two bases each; everything else suffices.
        "could_have_given": {
            "makes": 14,
            "bound": 14,
            "proved": True,
            "reason": "each sheet of oat card gives at most 2 of base A",
        },
        "paper": {
            # 7 x 93 1/2, a scrap of 4 x 8 1/2, 3 x 144, 2 x 144, two scraps of 4 x 9: 1,480 1/2 sq in.
            "cut": str(Fraction("1480.5") * SQUARE_INCH),
            # Thirteen times 46.75 + 18.75 + 10.5 + 2.625 + 1.5 = 80.125 sq in.
            "used": str(Fraction("1041.625") * SQUARE_INCH),
            # Three of 3 1/4 x 12 and two of 5 x 12: 117 + 120.
            "kept": str(Fraction("237") * SQUARE_INCH),
            "waste": str(Fraction("201.875") * SQUARE_INCH),
        },
        "supplies": [
            # The delivery of 1.70 on 5.00 + 4.80 + 7.20 = 17.00 adds a tenth: oat card 5.50 for 20.
            # With 4 for 0.80 there are 24 for 6.30; seven are 1.8375, so 1.84; the scrap 0.07.
            used("oat-card", "7", "sheet", 1, "1.91", "0.15"),
            # Three of six for 5.28: 2.64. Kept are 117 of 432 sq in: 71.5 of 264 cents, so 72.
            used("moss-card", "3", "sheet", 0, "1.92", "0.15"),
            # Two of five for 4.25: 1.70. Kept are 120 of 288 sq in: 70.8 of 170 cents, so 71.
            used("bramble-paper", "2", "sheet", 0, "0.99", "0.08"),
            used("ember-card", None, "sheet", 2, "0.40", "0.03"),
            NOT_MEASURED,
            # Thirteen times 10 + 7 + 7 = 24 in are 7.9248 m, at 2.97 for 33 m: 71.3 cents.
            used("paper-tape", "4953/625", "m", 0, "0.71", "0.05"),
            # Thirteen times four of 100 for 1.80: 93.6 cents.
            used("foam-square", "52", "piece", 0, "0.94", "0.07"),
            # Thirteen of 25 for 2.75.
            used("envelope-a2", "13", "piece", 0, "1.43", "0.11"),
        ],
        "batch_cost": {
            "amount": "8.30",
            "currency": "EUR",
            "complete": True,
            "without": [],
            "not_counted": ["hedge-ink"],
            # By area, in sq in, into thirteen makes, the spoiled one, and the rest. Oat 191 cents by
            # 627.25, 48.25 and 13: 174, 13 and 4. Moss 192 by 243.75, 18.75 and 52.5: 149, 11 and 32.
            # Bramble 99 by 136.5, 10.5 and 21: 81, 6 and 12. Ember 40 by 34.125, 2.625 and 35.25: 19, 1
            # and 20. Of 64 cents the exact shares are 32.62, 12.72, 11.03, 5.24 and 2.39.
            "kinds": {
                "papers": kind("4.23", "0.33"),
                "adhesive": kind("1.65", "0.13"),
                "packing": kind("1.43", "0.11"),
                "waste": kind("0.68", "0.05"),
                "spoilage": kind("0.31", "0.02"),
            },
        },
        # 830 ÷ 13 = 63.8: 64. Of 64 cents the exact shares are 14.73, 14.80, 7.63, 3.08, 5.47, 7.25
        # and 11.03; whole cents are 61, and the three left go to .80, .73 and .63.
        # 11 x 64 + 2 x 63 = 830.
        "cost_of_one": {
            "amount": "0.64",
            "complete": True,
            # 7 4/11 sheets of oat card at 0.28, 2.1875 of moss at 0.88, 1 1/6 of bramble at 0.85; tape at
            # 3.58 for 33 m, foam at 1.90 for 100, envelopes at 3.30 for 25: 206 + 193 + 99 + 86 + 99 + 172
            # cents are 855, and a thirteenth is 65.8. No ember card was ever bought.
            "today": {"amount": "0.66", "without": ["ember-card"]},
            "shares": [{"amount": "0.64", "makes": 11}, {"amount": "0.63", "makes": 2}],
        },
        "minutes": 160,
        # Fourteen labels at 15 s, fourteen bases scored at 10 s and folded at 8 s. The trimmer takes two of a
        # card of 216 g/m², four of a paper of 120. Bases: seven sheets in four stacks, a cut each, 4; mats: three
        # in two, seven cuts, 14; strips: two scraps at once, 14; panels: two sheets at once, 8; labels: 14.
        # The stop is set 1 + 3 + 2 + 3 + 2 times. 54 cuts of 8 s, 11 settings of 15 s: 597 s.
        "bench": {
            "works": [
                work("stamp", "E", "hedge-sprigs", 14, 210),
                work("score", "A", "score-board", 14, 140),
                work("fold", "A", None, 14, 112),
            ],
            "cuts": 54,
            "settings": 11,
            "seconds": 597 + 210 + 140 + 112,
            "waits": 0,
        },
        # The mat a quarter inside 4 1/4 x 5 1/2; the panel an eighth inside the mat, and an eighth below
        # it the strip: 3/8 + 3 + 1/8. The label in the middle, an eighth below the strip: 7/2 + 3/4 + 1/8.
        "lies": [
            lies("B", "A", "1/4", "1/4", "15/4", "5"),
            lies("C", "B", "3/8", "3/8", "7/2", "3"),
            lies("D", "B", "3/8", "7/2", "7/2", "3/4"),
            lies("E", "B", "9/8", "35/8", "2", "3/4"),
        ],
        # Nothing lies inside; nothing lies on the label.
        "room_to_write": room("inside right", "0", "0", "17/4", "11/2") | {"on": "A"},
        "room_to_stamp": [room("front", "9/8", "35/8", "2", "3/4") | {"part": "E"}],
        # Oat card of 216 g/m², 46.75 + 1.5 sq in, and bramble paper of 120, 10.5; moss and ember card are 80 lb
        # cover, of which 500 sheets of 520 sq in weigh 80 lb: 21.375. Tape 24 in of 0.6 g a metre, and four
        # foam squares of 0.05 g.
        "weight": weight(
            (Fraction("48.25") * 216 + Fraction("10.5") * 120) * SQUARE_INCH / 1_000_000
            + Fraction("21.375") * 80 * Fraction("453.59237") / (500 * 520)
            + Fraction("0.6096") * Fraction("0.6")
            + Fraction("0.2")
        ),
        "went": {"sold": 6, "given": 4, "kept": 2},
        "where": {"kept": 2, "given": 4, "sold": 6, "sample": 0, "class": 0, "not_told": 1},
        # Six at 3.20. Their share of 8.30 is 6/13: 383.1 cents, so 383.
        "sold": {
            "makes": 6, "brought_in": "19.20", "cost": "3.83", "stayed": "15.37", "complete": True,
        },
    }  # fmt: skip


def test_wren_note_bookmarks_by_hand(demo_site: Served) -> None:
    """Millimetres, three papers dealt round, a piece kept of each, two of twenty-four spoiled."""
    papers = ["ripple-green", "dusk-rose", "night-blue"]
    assert published(demo_site, "wren-note-bookmarks") == {
        "format": 1,
        "title": "Wren note bookmarks",
        "date": "2026-04-11",
        "status": "published",
        "unit": "mm",
        "makes": {"finished": 22, "begun": 24, "thing": "bookmark"},
        "parts": [
            part("A", "base", ("50", "180"), ["chalk-card"], 24),
            # A strip along each long side: 2 x 70 and 2 x 30 mm.
            part("B", "water strip", ("44", "70"), papers, 24, paper_tape="7/50"),
            part("C", "label", ("30", "12"), ["chalk-card"], 24, paper_tape="3/50"),
        ],
        "from_one_sheet": [
            # 305 x 305. In a grid six of 50 across, one of 180 down. By through cuts: six on top of one
            # another, 180 wide, and two upright in the 125 beside them. Nine are too many: a first cut
            # that leaves less than 180 on both sides gives six; one that leaves 125 or less gives two
            # there and six of the other 180 to 205, or one and seven of up to 255 (five upright, two across).
            out("A", "chalk-card", 6, 8),
            # 200 x 200. In a grid four across, two down. Sums of 44 and 70 up to 200 end at 184:
            # 33,856 mm² hold ten of 3,080 and no eleventh (33,880). Ten: two rows of four, and two
            # turned in the 60 below.
            *(out("B", paper, 8, 10) for paper in papers),
            # Sums of 30 and 12 are multiples of 6, so they end at 300: 90,000 ÷ 360 = 250.
            out("C", "chalk-card", 250, 250),
        ],
        # Three papers give ten strips each. Four sheets of chalk card give 32 bases, and thirty labels
        # find room beside thirty of them.
        "could_have_given": {
            "makes": 30,
            "bound": 30,
            "proved": True,
            "reason": "these sheets give at most 30 of water strip B, and one more make would need 31",
        },
        "paper": {
            # 4 x 93,025 + 3 x 40,000.
            "cut": "492100",
            # 22 x (9,000 + 3,080 + 360).
            "used": "273680",
            # 3 x 60 x 200.
            "kept": "36000",
            "waste": "182420",
        },
        "supplies": [
            # Twelve for 7.20, with 0.72 of the delivery 7.92: four are 2.64.
            used("chalk-card", "4", "sheet", 0, "2.64", "0.12"),
            # One of four for 1.80 is 0.45; kept are 12,000 of 40,000 mm², 13.5 cents, so 14.
            used("ripple-green", "1", "sheet", 0, "0.31", "0.02"),
            used("dusk-rose", "1", "sheet", 0, "0.31", "0.01"),
            used("night-blue", "1", "sheet", 0, "0.31", "0.01"),
            NOT_MEASURED,
            # 22 x 140 mm are 3.08 m, at 3.00 for 20 m: 46.2 cents.
            used("jute-cord", "77/25", "m", 0, "0.46", "0.02"),
            # 22 x 200 mm are 4.4 m. Of the tape of 2.97 and 3.58 there are 34.3868 m for 3.55 left:
            # 66 m less 7.9248, 2.736, 10.0584, 4.734, 5.2 and 0.96, for 71, 25, 91, 49, 54 and 10
            # cents. 355 x 4.4 ÷ 34.3868 = 45.4.
            used("paper-tape", "22/5", "m", 0, "0.45", "0.02"),
        ],
        "batch_cost": {
            "amount": "4.48",
            "currency": "EUR",
            "complete": True,
            "without": [],
            "not_counted": ["hedge-ink"],
            # By area into 22 makes, two spoiled ones, and the rest. Chalk 264 cents by 205,920, 18,720 and
            # 147,460 mm²: 146, 13 and 105. Each of the three papers 31 by 22,586 2/3, 2,053 1/3 and 3,360:
            # 25, 2 and 4. Of 20 cents the exact shares are 9.87, 2.01, 2.05, 5.22 and 0.85.
            "kinds": {
                "papers": kind("2.21", "0.10"),
                "adhesive": kind("0.45", "0.02"),
                "embellishments": kind("0.46", "0.02"),
                "waste": kind("1.17", "0.05"),
                "spoilage": kind("0.19", "0.01"),
            },
        },
        # 448 ÷ 22 = 20.4. Of 20 cents the exact shares are 11.79, three times 1.38, 2.05 and 2.01;
        # whole cents are 18, and the two left go to .79 and to the first .38. 8 x 21 + 14 x 20 = 448.
        "cost_of_one": {
            "amount": "0.20",
            "complete": True,
            # Chalk 264, three times 0.7 sheet at 0.45 (32 each), cord 46, tape at 3.58 for 33 m 48 cents:
            # 454, and 22 go into it 20.6 times.
            "today": {"amount": "0.21", "without": []},
            "shares": [{"amount": "0.21", "makes": 8}, {"amount": "0.20", "makes": 14}],
        },
        # Eight strips of each paper and one in a make: 24, and a strip of any paper would be one more.
        "collated": {
            "sets": 24,
            "possible": 24,
            "rule": None,
            "missing": [{"part": "B", "more": 1, "papers": papers}],
        },
        "minutes": 190,
        # Two dozen labels at 15 s, and two dozen holes at 5 s: chalk card of 240 g/m² goes into the punch one by
        # one. No trimmer is named, so sheets are cut one by one: three with 27 cuts at 7 settings, one each of
        # the others with 10 at 2. 111 cuts of 8 s, 13 settings of 15 s: 1,083 s.
        "bench": {
            "works": [
                work("stamp", "C", "hedge-sprigs", 24, 360, waits=10) | {"with": "hedge-ink"},
                work("punch", "A", "hole-punch", 24, 120),
            ],
            "cuts": 3 * 27 + 3 * 10,
            "settings": 7 + 3 * 2,
            "seconds": 1083 + 360 + 120,
            "waits": 10,
        },
        # Six above the foot of 180: 180 - 6 - 70. The label in the middle of the strip: 104 + (70 - 12) / 2.
        "lies": [lies("B", "A", "3", "104", "44", "70"), lies("C", "B", "10", "133", "30", "12")],
        "room_to_write": room("back", "0", "0", "50", "180") | {"on": "A"},
        "room_to_stamp": [room("front", "10", "133", "30", "12") | {"part": "C"}],
        # 9,360 mm² of 240 g/m², 3,080 of 120: 2.2464 + 0.3696 g. Tape 0.2 m of 0.6 g, cord 0.14 m of 1.3 g.
        "weight": weight(Fraction("2.616") + Fraction("0.12") + Fraction("0.182")),
    }


def test_other_numbers_of_place_cards_by_hand(demo_site: Served) -> None:
    """Six blanks of 3 1/2 x 4 lie on 8 1/2 x 11, two across and three up; all bands lie on one sheet."""
    text = (demo_site.folder / "projects" / "ropewalk-place-cards" / "figures.json").read_text(encoding="utf-8")
    found = {one["makes"]: one for one in json.loads(text)["for_makes"]}
    assert list(found) == [*range(1, 13), 15, 18, 20, 24, 30, 36, 48, 60]
    for makes, one in found.items():
        # Seven of 14 sq in are more than 93 1/2. A sheet of 12 x 12 holds three columns of 24 bands.
        assert one["sheets"] == [
            {"supply": "oat-card", "sheets": -(-makes // 6)},
            {"supply": "bramble-paper", "sheets": 1},
        ]
        # A strip of 3 1/2 in along each long side of the band: 177.8 mm.
        (tape,) = one["supplies"]
        assert tape == {
            "supply": "paper-tape", "amount": str(makes * Fraction("0.1778")), "unit": "m", "scales": True,
        }  # fmt: skip
    # The batch paid 1.08 for four sheets and 0.44 for 4.2672 m of tape, which is 24 times as much as one takes.
    # Bramble paper came from a scrap, which tells no price of a sheet.
    costs = {makes: found[makes]["cost"] for makes in (1, 7, 24, 60)}
    assert {makes: cost["amount"] for makes, cost in costs.items()} == {
        1: "0.29",  # 27 + 1.8
        7: "0.67",  # 54 + 12.8
        24: "1.52",  # 108 + 44
        60: "3.80",  # 270 + 110
    }
    assert all((cost["complete"], cost["without"]) == (False, ["bramble-paper"]) for cost in costs.values())
