"""What the batch page says of a batch with everything that a record can hold.

Sheets of 300 x 200, of which 10 are trimmed off the top; a pad of which any two
papers are used; extras; parts cut by hand and ready-made; images, tools, a design
that others share, credit, an envelope, and where the makes went.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from batchleaf.core.figures import Figures, all_in_full, work_out
from batchleaf.facts import (
    Archive,
    Asked,
    Collating,
    Credit,
    Cut,
    Design,
    Fold,
    Image,
    ImageUse,
    KeptPiece,
    Origin,
    PaperSide,
    Part,
    Project,
    Purchase,
    Rule,
    Score,
    Settings,
    ShownSide,
    Status,
    Stuck,
    Supply,
    Tool,
    Trim,
    Went,
    Whereabouts,
)
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.render.html import render
from batchleaf.views.batch import batch_page
from batchleaf.views.figures_json import figures_json
from batchleaf.views.pages import BatchPage, Link
from batchleaf.views.stock import batches_using
from batchleaf.views.went import ways_in_words
from core.drawers import batch, bought, cut, part, size, supply
from core.test_for_makes import COUNT, REMEMBERED
from views.test_small import plain, said

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
SEA = replace(supply("sea-card", size=size(300, 200)), name="sea card", trim=Trim(top=Fraction(10)))
PAD = replace(
    supply("shoal-pad", size=size(200, 200)), name="shoal pad", designs=6, copies=2, back=PaperSide("dots")
)
NUMBERED = tuple(
    replace(PAD, slug=f"shoal-pad-{n}", name=f"shoal pad {n}", pad="shoal-pad", number=n, designs=0, copies=0)
    for n in range(1, 7)
)
STARS = replace(
    supply("stars", size=size(18, 18)), name="star sticker", kind="gems", unit="piece", units="pieces"
)
SUPPLIES = (SEA, PAD, *NUMBERED, STARS)
WORDS = Tool(
    "words", "the tide words", "stamps", Unit.MM,
    images=(Image(1, size(30, 8), "high water"), Image(2, size(24, 8), "slack tide"), Image(3, None, "")),
)  # fmt: skip
LEAF = Tool("leaf", "the leaf die", "dies", Unit.MM)
TRIMMER = Tool("trimmer", "the long trimmer", "trimmer", Unit.MM)
KNIFE = Tool("knife", "the thin knife", "craft knife", Unit.MM)
GUN = Tool("gun", "the hot gun", "heat gun", Unit.MM)
TOOLS = (GUN, KNIFE, LEAF, TRIMMER, WORDS)
DESIGN = Design("strip", "Strip card", (), credit=Credit("after a fold by a friend"))

BASE = replace(
    part("A", 100, 90, "sea-card"),
    name="base",
    fold=Fold.SIDE,
    scores=(Score(runs_down=True, at=Fraction(50)),),
)
STRIP = replace(part("B", 44, 70, "shoal-pad", extra=2), name="water strip", any_of=2, side=ShownSide.BACK)
LABEL = replace(
    part("C", 30, 12, "sea-card"),
    name="label",
    origin=Origin.BY_HAND,
    stamps=(ImageUse("words", (1, 2)),),
    stuck=Stuck("stars", Fraction(4)),
)
STAR = replace(part("D", 18, 18, "stars", each=3), name="star", origin=Origin.READY)


def card_batch(*parts: Part, cuts: tuple[Cut, ...] = (), on: int = 5, slug: str = "cards") -> Project:
    """Six cards of these parts; six are finished."""
    one = batch(on, cut=cuts, slug=slug, finished=6)
    return replace(one, parts=parts, finished_size=size(50, 90))


FULL = replace(
    card_batch(BASE, STRIP, LABEL, STAR, cuts=(cut(1, slug="sea-card"), cut(2, slug="shoal-pad"))),
    design="strip",
    credit=Credit("words by another friend", "https://example.org/words"),
    tools=("trimmer", "words"),
    envelope="C7 envelope, 81 × 114 mm",
    collating=(Collating(("B",), Rule.MIXED),),
    went=(
        Went(2, Whereabouts.SOLD, 700, dt.date(2026, 2, 1), "winter market"),
        Went(3, Whereabouts.GIVEN, words="to a school"),
        Went(1, Whereabouts.SAMPLE),
    ),
)
OTHERS = tuple(
    replace(card_batch(BASE, on=9 + n, slug=slug, cuts=(cut(1, slug="sea-card"),)), design="strip")
    for n, slug in enumerate(("fern", "moss"))
)


def figures(*projects: Project) -> Figures:
    """These batches, worked out, with a drawer that has enough of everything."""
    purchases: tuple[Purchase, ...] = tuple(bought(0, 90, 900, one.slug) for one in SUPPLIES)
    records = Archive(projects, SUPPLIES, purchases, (), (), (DESIGN,), TOOLS)
    return all_in_full(work_out(records, SETTINGS), REMEMBERED, COUNT)


def page_of(project: Project, *others: Project) -> BatchPage:
    """The page of a batch."""
    worked = figures(project, *others)
    return batch_page(worked.batches[project.slug], worked, {}, "")


@pytest.fixture(scope="module")
def full() -> BatchPage:
    """The page of the batch with everything."""
    return page_of(FULL, *OTHERS)


def test_what_it_stands_on(full: BatchPage) -> None:
    """Design with the other batches, both credits, the tools: a sentence each."""
    assert [said(line) for line in full.about] == [
        "Made to the design Strip card; so are fern and moss.",
        "Words by another friend.",
        "After a fold by a friend.",
        "Tools: the long trimmer and the tide words.",
        "Techniques: side fold, score, stamp.",
    ]
    links = [piece for line in full.about for piece in line if isinstance(piece, Link)]
    assert links == [
        Link("Strip card", "../../designs/strip/"),
        Link("fern", "../fern/"),
        Link("moss", "../moss/"),
        Link("Words by another friend", "https://example.org/words"),
    ]


def test_a_trimmer_among_the_tools_is_a_blade() -> None:
    """Where the record says nothing of sheets."""
    ready = card_batch(replace(STAR, papers=("stars",)))
    assert not any("blade" in one for one in page_of(ready).cautions)
    assert any("blade" in one for one in page_of(replace(ready, tools=("trimmer",))).cautions)


def test_a_knife_and_what_is_hot_are_told_of() -> None:
    """By what the tools are; the sheets of a batch pass a trimmer besides."""
    ready = card_batch(replace(STAR, papers=("stars",)))
    knife, both = replace(ready, tools=("knife",)), replace(FULL, tools=("gun", "knife"))
    assert page_of(knife).cautions[1].startswith("A knife’s blade is sharp: guard it")
    blades, heat = page_of(both).cautions[1:3]
    assert blades.startswith("Blades are sharp: guard trimmer and knife")
    assert heat.startswith("A heat tool burns")
    assert not any("heat" in one for one in page_of(knife).cautions)


def test_a_batch_that_stands_on_nothing_says_nothing() -> None:
    """No design, no credit, no tools, no fold, and nobody knows where it went."""
    bare = page_of(card_batch(replace(BASE, fold=Fold.NONE, scores=()), cuts=(cut(1, slug="sea-card"),)))
    assert (bare.about, bare.went) == ((), None)
    html = render(bare)
    assert 'id="went"' not in html
    assert 'class="detail"' not in html


def test_two_batches_of_a_design_name_each_other() -> None:
    """One other: "so is"."""
    page = page_of(FULL, OTHERS[0])
    assert said(page.about[0]) == "Made to the design Strip card; so is fern."
    assert said(page_of(FULL).about[0]) == "Made to the design Strip card."


def test_every_part_with_what_is_said_of_it(full: BatchPage) -> None:
    """Six of each, eighteen stars, and two strips on top; what is ready-made is not cut."""
    rows = [
        (
            row.letter,
            row.name,
            plain(row.folded),
            [said((paper,)) for paper in row.papers],
            row.details,
            row.cut,
        )
        for row in full.parts
    ]
    assert rows == [
        ("A", "base", "folds to 50 × 90", ["sea card"], (), "6"),
        ("B", "water strip", "", ["any 2 of shoal pad"], ("shows the back: dots",), "8"),
        (
            *("C", "label", "", ["scraps of sea card"]),
            ("stamped with high water or slack tide, dealt round", "on star stickers, 4\u00a0each"),
            "6",
        ),
        ("D", "star", "", ["star sticker"], ("ready-made",), ""),
    ]


def test_what_stands_beside_the_parts(full: BatchPage) -> None:
    """300 x 190 gives 3 x 2 of 100 x 90; 200 x 200 gives 4 x 2 of 44 x 70 and two of 70 x 44 below them."""
    assert [plain(note) for note in full.parts_notes] == [
        "One sheet of sea card gives 6 of A.",
        "One sheet of shoal pad gives 10 of B, 8 in a plain grid.",
        "C is cut by hand from scraps of sea card; no plan and no account counts it.",
        "D is ready-made: 18 × star sticker.",
        "One goes into the usual C7 envelope, 81 × 114 mm.",
    ]


def test_parts_cut_by_hand_from_the_same_scraps_are_said_together() -> None:
    """Two letters, one sentence."""
    other = replace(LABEL, letter="E", stamps=())
    page = page_of(card_batch(BASE, LABEL, other, cuts=(cut(1, slug="sea-card"),)))
    assert page.parts_notes[1:] == (
        "C and E are cut by hand from scraps of sea card; no plan and no account counts them.",
    )


@pytest.mark.parametrize(
    ("changed", "details"),
    [
        (replace(BASE, side=ShownSide.BACK), ("back side up",)),
        (replace(BASE, stamps=(ImageUse("words", (3,)),)), ("stamped with image 3 of the tide words",)),
        (
            replace(BASE, stamps=(ImageUse("words"),), dies=(ImageUse("leaf"),)),
            ("stamped with the tide words", "die-cut with the leaf die"),
        ),
    ],
)
def test_sides_and_images_without_words(changed: Part, details: tuple[str, ...]) -> None:
    """A side that nobody described, an image without words, a set that is one image."""
    assert page_of(card_batch(changed, cuts=(cut(1, slug="sea-card"),))).parts[0].details == details


def test_box_and_lid_fold_to_what_they_measure() -> None:
    """A blank of 60 x 60 scored at 10 from each edge has a bottom of 40 x 40 and walls of 10."""
    walls = (
        Score(runs_down=True, at=Fraction(10)),
        Score(runs_down=True, at=Fraction(50)),
        Score(runs_down=False, at=Fraction(10)),
        Score(runs_down=False, at=Fraction(50)),
    )
    bottom, lid = (
        replace(part(letter, 60, 60, "sea-card"), name=name, fold=Fold.BOX, scores=walls)
        for letter, name in (("A", "base"), ("L", "lid"))
    )
    names = [(row.name, plain(row.folded)) for row in page_of(card_batch(bottom, lid)).parts]
    assert names == [("base", "folds to 40 × 40 × 10"), ("lid", "folds to 40 × 40 × 10")]


def test_the_plan_says_what_to_trim_first_and_draws_what_is_left(full: BatchPage) -> None:
    """10 off the top of 300 x 200 leaves 300 x 190; scraps and the pad have nothing to trim."""
    assert [said(plan.instruction) for plan in full.plans] == [
        "First trim 10 off the top of each sheet. Cut 1 sheet of sea card like this, 300 × 190 mm.",
        "Cut 2 sheets of shoal pad like this, 200 × 200 mm.",
    ]
    assert plain(full.plans[0].drawing.title) == "Plan 1: sea card, 300 × 190 mm"


def test_trimming_two_edges_is_one_sentence() -> None:
    """In the unit of the record, left and right before top and bottom."""
    card = replace(SEA, trim=Trim(left=Fraction(127, 10), bottom=Fraction(254, 10)))
    inches = replace(card_batch(BASE, cuts=(cut(1, slug="sea-card"),)), unit=Unit.INCH)
    worked = work_out(Archive((inches,), (card,), (), (), ()), SETTINGS)
    page = batch_page(worked.batches["cards"], worked, {}, "")
    assert said(page.plans[0].instruction).startswith(
        "First trim 1/2 off the left and 1 off the bottom of each sheet. Cut 1 sheet of sea card like this,"
    )


def test_papers_of_which_unequally_many_are_cut_alike_are_told_apart() -> None:
    """Three of a part from two papers, one to a sheet: two sheets of the first and one of the other."""
    one = part("A", 200, 150, "shoal-pad-1", "shoal-pad-4")
    cuts = (cut(2, slug="shoal-pad-1"), cut(1, slug="shoal-pad-4"))
    made = replace(card_batch(one, cuts=cuts), finished=3, begun=3)
    assert [said(plan.instruction) for plan in page_of(made).plans] == [
        "Cut 2 sheets of shoal pad 1 and 1 sheet of shoal pad 4 like this, 200 × 200 mm."
    ]


def test_numbered_papers_lead_to_their_pad() -> None:
    """In the parts, the sentence and the plans; they have no page of their own."""
    one = part("A", 200, 150, "shoal-pad-1", "shoal-pad-4")
    page = page_of(card_batch(one, cuts=(cut(3, slug="shoal-pad-1"), cut(3, slug="shoal-pad-4"))))
    assert page.parts[0].papers == (Link("shoal pad 1 and 4", "../../drawer/shoal-pad/"),)
    assert said(page.sentence) == "6 cards from 3 sheets each of shoal pad 1 and 4. 0.10 € each."
    for line in (page.sentence, page.plans[0].instruction):
        hrefs = [piece.href for piece in line if isinstance(piece, Link) and piece.text.startswith("shoal")]
        assert hrefs == ["../../drawer/shoal-pad/"]


def test_papers_of_one_pad_are_named_together() -> None:
    """Whatever stands between them: the name of the pad once, after the others."""
    papers = ("shoal-pad-6", "sea-card", "shoal-pad-1", "shoal-pad-4")
    cuts = tuple(cut(1, KeptPiece(size(50, 60), 1), slug=slug) for slug in papers)
    page = page_of(card_batch(replace(part("A", 180, 130, *papers), name="base"), cuts=cuts))
    assert said(page.sentence).startswith("6 cards from 1 sheet each of sea card and shoal pad 1, 4 and 6")
    assert "Cut 1 sheet each of shoal pad 1, 4 and 6 like this, 200 × 200 mm." in [
        said(plan.instruction) for plan in page.plans
    ]
    assert [plain(note) for note in page.paper_notes] == [
        "Kept: 1 of 50 × 60 mm each (sea card and shoal pad 1, 4 and 6)."
    ]
    assert "One sheet of shoal pad 1, 4 or 6 gives 1 of A." in page.parts_notes


def test_two_lines_of_one_paper_are_told_as_one() -> None:
    """Sheets and kept pieces are added up."""
    cuts = (
        cut(2, KeptPiece(size(50, 60), 1), slug="shoal-pad-1"),
        cut(4, KeptPiece(size(50, 60), 2), slug="shoal-pad-1"),
    )
    page = page_of(card_batch(part("A", 180, 130, "shoal-pad-1"), cuts=cuts))
    assert [said(plan.instruction) for plan in page.plans] == [
        "Cut 6 sheets of shoal pad 1 like this, 200 × 200 mm."
    ]
    assert [plain(note) for note in page.paper_notes] == ["Kept: 3 of 50 × 60 mm (shoal pad 1)."]


def test_a_batch_that_used_a_numbered_paper_used_its_pad() -> None:
    """So the pad's page can say where it went."""
    worked = figures(card_batch(part("A", 50, 50, "shoal-pad-4"), cuts=(cut(1, slug="shoal-pad-4"),)))
    papers = {supply.slug: supply for supply in worked.archive.supplies}
    assert [one.project.slug for one in batches_using(papers["shoal-pad"], worked)] == ["cards"]
    assert batches_using(papers["shoal-pad-1"], worked) == ()


def test_a_planned_batch_needs_as_many_papers_of_a_pad_as_it_says() -> None:
    """Six strips would lie on one sheet."""
    planned = replace(card_batch(replace(STRIP, extra=0)), status=Status.PLANNED)
    page = page_of(planned)
    assert said(page.sentence) == "6 cards planned; they need 2 sheets of shoal pad."


def test_the_plans_say_that_they_give_the_extras(full: BatchPage) -> None:
    """Six and two more strips, four from each of the two papers."""
    assert tuple(map(plain, full.plan_notes)) == (
        "These plans give the 6 cards that were begun, with 2 × B as extras.",
    )


def test_extras_that_the_sheets_do_not_give_are_left_out() -> None:
    """Six of 100 x 90 fill the sheet."""
    page = page_of(card_batch(replace(BASE, extra=1), cuts=(cut(1, slug="sea-card"),)))
    assert tuple(map(plain, page.plan_notes)) == (
        "These plans give the 6 cards that were begun.",
        "The extras, 1 × A, are left out: the sheets do not give them too.",
    )


@pytest.mark.parametrize("parts", [(LABEL,), (STAR,), (LABEL, STAR)])
def test_a_batch_without_parts_from_sheets_has_no_plan(parts: tuple[Part, ...]) -> None:
    """Nothing is missing from it either."""
    worked = figures(card_batch(*parts))
    page = batch_page(worked.batches["cards"], worked, {}, "")
    assert (page.plans, page.plan_intro, page.plan_notes, page.paper) == ((), "", (), "")
    assert worked.problems == ()
    assert said(page.sentence) == "6 cards."
    assert 'id="plan"' not in render(page)


def test_ready_made_small_things_are_warned_of(full: BatchPage) -> None:
    """Stars of the kind gems, though no line of supplies names them."""
    assert full.cautions[0] == "Small parts: not for children under three."


WENT = Whereabouts


@pytest.mark.parametrize(
    ("went", "told"),
    [
        ({WENT.GIVEN: 8, WENT.SOLD: 3, WENT.KEPT: 2}, "8 were given, 3 sold and 2 kept"),
        ({WENT.CLASS: 5, WENT.SAMPLE: 1}, "5 were used in class and 1 put by as a sample"),
        ({WENT.SAMPLE: 1200}, "1,200 were put by as samples"),
        ({WENT.GIVEN: 1}, "1 was given"),
    ],
)
def test_ways_in_words(went: dict[Whereabouts, int], told: str) -> None:
    """The verb goes with the first of them."""
    assert ways_in_words(list(went.items())) == told


def test_where_they_are_now(full: BatchPage) -> None:
    """Line by line, with the maker's words, the day and the price: this page is the maker's own."""
    assert full.went is not None
    rows = [
        (row.letter, row.where, row.words, plain(row.date), row.count, row.one, row.value)
        for row in full.went.rows
    ]
    assert rows == [
        ("a", "Sold", "winter market", "1 Feb 2026", "2", "3.50", "7.00"),
        ("b", "Given", "to a school", "", "3", "", ""),
        ("c", "Sample", "", "", "1", "", ""),
    ]
    assert (full.went.total_count, full.went.total_value) == ("6", "7.00")
    assert full.went.all_of_them == Link("All finished makes", "../../finished/")
    html = render(full)
    for private in ("winter market", "to a school", "7.00", "1 Feb"):
        assert private in html.replace("\u00a0", " ")


def test_those_of_which_nothing_is_told_have_a_row_of_their_own() -> None:
    """So the rows sum to all that were finished. A price for all that does not come out even is about."""
    went = (Went(3, Whereabouts.SOLD, 1000), Went(1, Whereabouts.SOLD), Went(1, Whereabouts.KEPT))
    page = page_of(replace(FULL, went=went))
    assert page.went is not None
    assert [(row.where, row.count, row.one, row.value) for row in page.went.rows] == [
        ("Sold", "3", "about 3.33", "10.00"),
        ("Sold", "1", "", "not known"),
        ("Kept", "1", "", ""),
        ("Not told", "1", "", ""),
    ]
    assert (page.went.total_label, page.went.total_count, page.went.total_value) == (
        "All",
        "6",
        "at least 10.00",
    )
    assert page.went.drawing.description == "a, 3 sold; b, 1 sold; c, 1 kept; d, 1 not told."
    assert page.went.caption == (
        "One for each card; the letters are those of the list; what is kept is hatched;"
        " what is not told is dotted."
    )


def test_of_very_many_each_line_is_one_mark() -> None:
    """And the caption does not say that there is one for each."""
    page = page_of(replace(FULL, finished=61, begun=61, went=(Went(60, Whereabouts.GIVEN),)))
    assert page.went is not None
    assert page.went.caption.startswith("The more cards, the longer the mark; the letters")


def test_without_days_and_prices_their_columns_are_away() -> None:
    """Two makes kept need no more than a count."""
    html = render(page_of(replace(FULL, went=(Went(2, Whereabouts.KEPT),))))
    section = html.partition('id="went"')[2].partition("</table>")[0]
    assert ("When" in section, "In all" in section, "How many" in section) == (False, False, True)


def test_the_account_says_what_is_asked_and_what_stays() -> None:
    """Six cards cost 0.30: one 0.05. Of 3.50 stay 3.45; 0.02 are 0.03 less than one cost."""
    notes = [page_of(replace(FULL, asks=Asked(price))).cost.notes for price in (3_50, 2)]
    assert [plain(note) for note in (notes[0][-1], notes[1][-1])] == [
        "Asked for one: 3.50 €, of which 3.45 € stays.",
        "Asked for one: 0.02 €, which is 0.03 € less than it cost.",
    ]
    assert not any("Asked" in note for note in page_of(FULL).cost.notes)


def numbers_of(project: Project, *others: Project) -> dict[str, Any]:
    """Its ``figures.json``."""
    worked = figures(project, *others)
    supplies = {one.slug: one for one in SUPPLIES}
    return figures_json(worked.batches[project.slug], supplies, {"strip": DESIGN}, SETTINGS)


def test_the_numbers_alone() -> None:
    """Design, extras and where the makes went, as counts."""
    numbers = numbers_of(FULL)
    assert numbers["design"] == {"slug": "strip", "title": "Strip card"}
    assert numbers["extras"] == [{"part": "B", "extra": 2, "planned": True}]
    assert numbers["went"] == {"given": 3, "sold": 2, "sample": 1}
    assert numbers["where"] == {"kept": 0, "given": 3, "sold": 2, "sample": 1, "class": 0, "not_told": 0}
    # A third of 0.30.
    assert numbers["sold"] == {
        "makes": 2, "brought_in": "7.00", "cost": "0.10", "stayed": "6.90", "complete": True,
    }  # fmt: skip
    assert "asked" not in numbers
    assert [row["cut"] for row in numbers["parts"]] == [6, 8, 6, 18]


def test_the_numbers_alone_leave_out_what_the_record_does_not_say() -> None:
    """A key that is missing says nothing; an extra that is not planned says so."""
    bare = numbers_of(card_batch(BASE, cuts=(cut(1, slug="sea-card"),)))
    assert {"design", "extras", "went", "where", "asked", "sold"}.isdisjoint(bare)
    more = numbers_of(card_batch(replace(BASE, extra=1), cuts=(cut(1, slug="sea-card"),)))
    assert more["extras"] == [{"part": "A", "extra": 1, "planned": False}]


def test_the_numbers_of_what_is_asked() -> None:
    """Six at 3.50 are 21.00, less 0.30; in 90 minutes, so 13.80 an hour. Without a time there is no hour."""
    asks = replace(FULL, asks=Asked(3_50))
    assert numbers_of(asks)["asked"] == {"amount": "3.50", "stays": "3.45", "per_hour": None}
    timed = numbers_of(replace(asks, minutes=90))
    assert timed["asked"] == {"amount": "3.50", "stays": "3.45", "per_hour": "13.80"}


def test_every_supply_a_page_names_can_be_found(full: BatchPage) -> None:
    """The cost list names what was drawn, and leads to the drawer."""
    known: dict[str, Supply] = {one.name: one for one in SUPPLIES}
    for row in full.cost.rows:
        assert row.supply.href == f"../../drawer/{known[row.supply.text].pad or known[row.supply.text].slug}/"


def test_a_part_that_is_trimmed_later_says_how_it_is_cut() -> None:
    """Its size is that of the make; beside it stands the one that leaves the sheet."""
    page = page_of(card_batch(replace(STRIP, oversize=Fraction(3))))
    row = next(row for row in page.parts if row.letter == STRIP.letter)
    whole = [measure + 6 for measure in (STRIP.size.width, STRIP.size.height)]
    assert [plain(detail) for detail in row.details][:1] == [
        f"cut {whole[0]} × {whole[1]} mm, and trimmed later"
    ]
