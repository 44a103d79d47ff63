"""What the page of a batch says of collating, and the table to sort the parts by, in both editions."""

from __future__ import annotations

from typing import Any

import pytest

from batchleaf.core.batch_cutting import PLANNER
from batchleaf.core.collate.collated import Collated, Ruled
from batchleaf.core.collate.missing import Missing
from batchleaf.core.collate.question import Group, Kind, Paper
from batchleaf.core.figures import Figures
from batchleaf.facts import Collating, Rule
from batchleaf.views.collating_words import sentence_of
from batchleaf.views.edition import Told, public_edition
from batchleaf.views.figures_json import figures_json
from batchleaf.views.pages import BatchPage, CollatingView, SortedPart
from batchleaf.views.tables.collating import collating_table
from core.drawers import batch_of, part, supply
from views.test_small import page, plain, worked_out
from whole_site import all_pages


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Figures:
    """The archive ``collating.archive``, worked out."""
    return worked_out("collating.archive", tmp_path_factory.mktemp("collating"))


@pytest.fixture(scope="module")
def public(figures: Figures) -> Figures:
    """The same for others."""
    return public_edition(figures, Told(), PLANNER)


def section(figures: Figures, slug: str) -> CollatingView:
    """What the page of one batch says of collating."""
    pages = {placed.address: placed.page for placed in all_pages(figures)}
    found = page(pages, f"projects/{slug}/", BatchPage).collating
    assert found is not None
    return found


def numbers(figures: Figures, slug: str) -> Any:
    """What ``figures.json`` says of it."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    return figures_json(figures.batches[slug], supplies, {}, figures.settings)["collated"]


def in_words(part: SortedPart) -> str:
    """``[#5d7156] 2 × fern, high water``: all that is seen of it."""
    marks = "".join(f"[{mark}]" for mark in (part.colour, *part.boxes) if mark)
    words = ", ".join(filter(None, (f"{part.count} {part.paper}".strip(), part.images)))
    return plain(f"{marks} {words}".strip())


def table(view: CollatingView) -> list[tuple[str, ...]]:
    """The rows as they are read."""
    rows = []
    for row in view.rows:
        cells = ("; ".join(in_words(part) for part in cell) for cell in row.cells)
        rows.append((plain(row.makes), *cells, *([row.remark] if row.remark else [])))
    return rows


# --- the table -----------------------------------------------------------------------


def test_papers_and_images_stand_with_their_colours_and_words(figures: Figures, public: Figures) -> None:
    """Four of each paper, and each image four times: 1, 2, 4, 1 · 2, 4, 1, 2 · 4, 1, 2, 4."""
    one, two, four = "high water", "slack tide", "gull"
    fern, plum, sky = "[#5d7156] fern", "[#7a4a63] plum", "[#9db0c8] sky"
    for edition in (figures, public):
        assert table(section(edition, "strips")) == [
            *(("1 and 2", fern, one), ("3", fern, two), ("4", fern, four)),
            *(("5", plum, one), ("6 and 7", plum, two), ("8", plum, four)),
            *(("9", sky, one), ("10", sky, two), ("11 and 12", sky, four)),
        ]
        assert [plain(note) for note in section(edition, "strips").notes] == [
            "On C: high water 4, slack tide 4, gull 4."
        ]


def test_papers_of_one_pad_are_their_numbers(figures: Figures) -> None:
    """The column names the pad, and each part has its box; beside another paper both are named."""
    view = section(figures, "squares")
    assert [(one.head, one.pad) for one in view.columns] == [
        ("B square, shoal pad", "shoal pad"),
        ("C box", ""),
    ]
    both = "[#5d7156] fern; [6] shoal pad 6"
    assert table(view) == [
        ("1 and 2", "[1][1]; [2]; [5]", both),
        ("3 and 4", "[1]; [2][2]; [5]", both),
        ("5 and 6", "[1]; [2]; [5][5]", both),
    ]


def test_papers_that_the_record_does_not_name_go_by_letters(figures: Figures) -> None:
    """Any three of a pad: a, b and c, and the note says what these are."""
    view = section(figures, "any-three")
    assert [row[1] for row in table(view)] == ["[a][a]; [b]; [c]", "[a]; [b][b]; [c]", "[a]; [b]; [c][c]"]
    assert view.notes == ("a, b and c are papers of shoal pad; the record leaves open which.",)


def test_what_is_left_is_told_at_its_makes(figures: Figures) -> None:
    """Three of six have fern and plum; the others get fern twice."""
    assert table(section(figures, "short")) == [
        ("1 to 3", "[#7a4a63] plum", "[#5d7156] fern"),
        ("4 to 6", "[#5d7156] fern", "[#5d7156] fern", "from what is left"),
    ]


def test_an_edition_without_supplies_names_kinds(figures: Figures) -> None:
    """No name, no colour and no number of a paper."""
    bare = public_edition(figures, Told(supplies=False), PLANNER)
    assert {row[1] for row in table(section(bare, "strips"))} == {"paper 1", "paper 2", "paper 8"}
    assert table(section(bare, "squares"))[0][1] == "2 × paper 4; paper 5; paper 6"


def test_nothing_is_said_where_all_makes_get_the_same(figures: Figures) -> None:
    """Neither on the page nor in the numbers."""
    pages = {placed.address: placed.page for placed in all_pages(figures)}
    assert page(pages, "projects/plain/", BatchPage).collating is None
    with pytest.raises(KeyError):
        numbers(figures, "plain")


# --- the sentence ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slug", "sentence"),
    [
        ("strips", "12 sets; with one more strip there would be 13."),
        (
            "squares",
            (
                "6 sets, no paper more than twice in B, no paper twice in C;"
                " with 4 more squares and one more box each of fern and shoal pad 6 there would be 7."
            ),
        ),
        ("any-three", "6 sets, no paper more than twice; with 4 more squares there would be 7."),
        ("short", "3 of the 6 sets have no paper twice; with one more strip of plum there would be 4."),
        ("none", "Each of the 2 sets has a paper twice."),
        ("rules", "4 sets, B and C from one paper, no paper twice in D, no paper twice in E and F."),
        (
            "sides",
            (
                "1 set, no side of a paper twice;"
                " with one more strip of fern and one more dot of plum there would be 2."
            ),
        ),
    ],
)
def test_the_sentence(figures: Figures, slug: str, sentence: str) -> None:
    """How many sets by which rule, and what one more would take, unless that is a part of everything."""
    assert plain(section(figures, slug).sentence) == sentence


FERN, PLUM = Paper("fern"), Paper("plum")


def told(begun: int, sets: int, *rules: tuple[Rule, int, str], missing: tuple[Missing, ...] = ()) -> str:
    """The sentence of a batch with these rules: (rule, most, its letters, each twice in a make)."""
    ruled = tuple(
        Ruled(
            Collating(tuple(letters), rule),
            Group(tuple(Kind(letter, 2, {FERN: 9, PLUM: 9}) for letter in letters), most),
            sets,
        )
        for rule, most, letters in rules
    )
    found = Collated(min(sets, begun), sets, ruled, missing, ())
    batch = batch_of(*(part(letter, 5, 5, "fern", "plum") for letter in "BCD"), makes=begun)
    supplies = {slug: supply(slug) for slug in ("fern", "plum")}
    return plain(sentence_of(found, batch, supplies))


ALIKE, NONE_TWICE, ANY = (Rule.ALIKE, 0, "BC"), (Rule.NONE_TWICE, 1, "BC"), (Rule.ANY, 2, "D")


@pytest.mark.parametrize(
    ("sentence", "begun", "sets", "rules"),
    [
        ("5 sets, each from one paper.", 5, 5, (ALIKE,)),
        ("3 of the 5 sets are each from one paper.", 5, 3, (ALIKE,)),
        ("1 of the 5 sets is from one paper.", 5, 1, (ALIKE,)),
        ("None of the 5 sets is from one paper.", 5, 0, (ALIKE,)),
        ("1 of the 5 sets has no paper twice.", 5, 1, (NONE_TWICE,)),
        ("The set has a paper twice.", 1, 0, (NONE_TWICE,)),
        ("Each of the 5 sets has a paper more than three times.", 5, 0, ((Rule.MIXED, 3, "BC"),)),
        ("5 sets, no paper twice in B and C; these parts would give 9.", 5, 9, (NONE_TWICE, ANY)),
        ("2 of the 5 sets keep the rules: B and C from one paper.", 5, 2, (ALIKE, ANY)),
        ("None of the 5 sets keeps the rules: B and C from one paper.", 5, 0, (ALIKE, ANY)),
        ("4 of the 5 sets.", 5, 4, (ANY,)),
        ("5 sets.", 5, 5, ()),
    ],
)
def test_sentences_of_few_and_many(
    sentence: str, begun: int, sets: int, rules: tuple[tuple[Rule, int, str], ...]
) -> None:
    """One, none or some of all, by one rule or several."""
    assert told(begun, sets, *rules) == sentence


@pytest.mark.parametrize(
    ("missing", "more"),
    [
        ([("B", 1, [FERN, PLUM])], "one more b"),
        ([("B", 1, [PLUM])], "one more b of plum"),
        ([("B", 4, [FERN, PLUM])], "4 more bs"),
        ([("B", 2, [FERN]), ("B", 2, [PLUM])], "2 more bs each of fern and plum"),
        ([("B", 2, [FERN]), ("B", 1, [PLUM])], "2 more bs of fern and one of plum"),
        ([("B", 1, [FERN]), ("C", 1, [PLUM])], "one more b of fern and one more c of plum"),
    ],
)
def test_what_one_more_takes(missing: list[tuple[str, int, list[Paper]]], more: str) -> None:
    """Nothing is said of papers where any will do."""
    lacks = tuple(Missing(letter, count, tuple(papers)) for letter, count, papers in missing)
    assert told(5, 5, NONE_TWICE, missing=lacks) == f"5 sets, no paper twice; with {more} there would be 6."


# --- the numbers alone -------------------------------------------------------------------


def test_the_numbers_are_those_of_the_sentence(figures: Figures, public: Figures) -> None:
    """Also for others; nothing is missing that could be told where no more parts would help."""
    for edition in (figures, public):
        assert numbers(edition, "strips") == {
            "sets": 12,
            "possible": 12,
            "rule": None,
            "missing": [{"part": "B", "more": 1, "papers": ["fern", "plum", "sky"]}],
        }
    assert numbers(figures, "any-three")["missing"] == [{"part": "B", "more": 4, "papers": ["shoal-pad"]}]
    assert numbers(figures, "short")["rule"] == "no paper twice"
    assert numbers(figures, "none") == {
        "sets": 0,
        "possible": 0,
        "rule": "no paper twice",
        "missing": None,
    }


# --- the table for spreadsheets -----------------------------------------------------------


def test_the_file_has_every_make(figures: Figures) -> None:
    """Six cards: four squares of three papers, two boxes of two; and which of six tags keep the rule."""
    squares = collating_table(figures.batches["squares"], figures)
    assert [row for row in squares.rows if row[0] == 3] == [
        (3, "B", "square", 1, "shoal-pad-1", "shoal pad 1", "", "yes"),
        (3, "B", "square", 2, "shoal-pad-2", "shoal pad 2", "", "yes"),
        (3, "B", "square", 1, "shoal-pad-5", "shoal pad 5", "", "yes"),
        (3, "C", "box", 1, "fern", "fern", "", "yes"),
        (3, "C", "box", 1, "shoal-pad-6", "shoal pad 6", "", "yes"),
    ]
    short = collating_table(figures.batches["short"], figures)
    assert [(row[0], row[-1]) for row in short.rows if row[1] == "B"] == [
        (make, "yes" if make < 4 else "no") for make in range(1, 7)
    ]
    strips = collating_table(figures.batches["strips"], figures)
    assert strips.rows[1] == (1, "C", "label", 1, None, None, "high water", "yes")
    assert collating_table(figures.batches["plain"], figures).rows == ()
