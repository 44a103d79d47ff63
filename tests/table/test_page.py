"""The page for the table in a browser: a few taps, no connection, and everybody can use it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final, Literal
from urllib.parse import urlencode

import html5lib
import pytest
from mkdocs.livereload import _SCRIPT_TEMPLATE_STR
from PIL import Image
from playwright.sync_api import Browser, Locator, Page, ViewportSize, expect

from batchleaf.core.cutting.from_one_sheet import from_one_sheet
from batchleaf.facts.jobs import MakesQuestion
from batchleaf.measure.colours import Colour
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.records.job_line import read_job_line
from batchleaf.render.at_the_table import table_files
from batchleaf.render.look import STANDARD, Look
from batchleaf.views.at_the_table import table_page
from batchleaf.views.masthead import Masthead
from browsing import AxeFaults, Watch
from table.laid_out import NAME, ServedTable, lay_out_table, served_table

PHONE: Final = ViewportSize(width=360, height=740)
SCRAPS_AND_SHEET: Final = ("8 x 6", "5 1/2 x 9", "12 x 12")
WANTED: Final = "3 3/4 x 5"
EXAMPLE: Final = urlencode([("unit", "in"), *(("have", one) for one in SCRAPS_AND_SHEET), ("want", WANTED)])
TALL: Final = f"{EXAMPLE}&want=1+1/4+x+2+1/8"
NARROW, TABLET, WIDE = 320, 768, 1400
SLOW: Final = pytest.mark.slow
KEPT: Final = "Kept on this device: works without a connection."


@pytest.fixture
def served(tmp_path: Path) -> Iterator[ServedTable]:
    """The page on a server of its own."""
    lay_out_table(tmp_path / "archive")
    with served_table(tmp_path) as table:
        yield table


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The address of the page in a folder."""
    return lay_out_table(tmp_path_factory.mktemp("table")).as_uri()


def _ask(page: Page, folder: str, question: str = EXAMPLE) -> None:
    """Open the page in a folder with a question behind its address."""
    # The same document with another question would not be loaded again.
    page.goto("about:blank")
    page.goto(f"{folder}#{question}")


def _planners_count() -> int:
    part = parse_size(WANTED, Unit.INCH)
    sheets = [parse_size(one, Unit.INCH) for one in SCRAPS_AND_SHEET]
    return sum(from_one_sheet(sheet, part, turns=True).through for sheet in sheets)


# --- a few taps, and no connection ------------------------------------------------


class _Finger:
    """Taps, and counts them; what is typed is no tap."""

    def __init__(self, page: Page) -> None:
        self._page = page
        self.taps = 0

    def tap(self, what: Locator) -> None:
        what.tap()
        self.taps += 1

    def type(self, text: str) -> None:
        self._page.keyboard.type(text)


def test_two_scraps_and_a_sheet_in_eight_taps_without_a_connection(
    browser: Browser, served: ServedTable, watch: Watch
) -> None:
    """How many of 3 3/4 x 5, on a phone whose server is gone: at most eight taps, and the planner's count."""
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
    page = context.new_page()
    watch.follow(page)
    page.goto(served.url)
    expect(page.locator("#offline")).to_have_text(KEPT)
    served.close()
    context.set_offline(True)
    page.reload()
    finger = _Finger(page)
    finger.tap(page.get_by_label("Piece 1, width × height"))
    finger.type(SCRAPS_AND_SHEET[0])
    finger.tap(page.get_by_role("button", name="Another piece"))
    finger.type(SCRAPS_AND_SHEET[1])
    finger.tap(page.get_by_role("button", name="12 × 12"))
    finger.tap(page.get_by_label("Size A, width × height"))
    finger.type(WANTED)
    expect(page.locator("#answer")).to_have_text(f"{_planners_count()} pieces.")
    finger.tap(page.get_by_role("button", name=f"{_planners_count()} pieces."))
    expect(page.locator("#answer")).to_be_in_viewport()
    assert page.locator("#whole svg").count() == 1
    assert page.locator(".move svg").count() == page.locator(".move input").count() > 0
    assert finger.taps <= 8
    assert watch.errors == watch.other_hosts == []
    context.close()


@pytest.mark.slow
def test_it_can_be_opened_again_without_a_connection(browser: Browser, served: ServedTable) -> None:
    """A closed page opens anew, by its folder or by the name of its document, with the last question."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{served.url}#{EXAMPLE}")
    expect(page.locator("#offline")).to_have_text(KEPT)
    page.close()
    served.close()
    context.set_offline(True)
    for address in (served.url, f"{served.url}index.html"):
        again = context.new_page()
        again.goto(address)
        expect(again.locator("#answer")).to_have_text(f"{_planners_count()} pieces.")
        again.close()
    context.close()


def test_only_this_pages_files_are_kept(browser: Browser, served: ServedTable) -> None:
    """Under one name; older ones of this page are dropped, and those of others are left alone."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(served.url.removesuffix("archive/table/"))
    names = [f"batchleaf-table {served.url} old", "batchleaf-table of-another-archive", "something else"]
    page.evaluate("(names) => Promise.all(names.map((name) => caches.open(name)))", names)
    page.goto(served.url)
    expect(page.locator("#offline")).to_have_text(KEPT)
    # The old ones go while the worker begins; a page that it answers for comes after that.
    page.wait_for_function("navigator.serviceWorker.controller !== null")
    kept = page.evaluate(
        """async () => Object.fromEntries(await Promise.all((await caches.keys()).map(async (name) =>
             [name, (await (await caches.open(name)).keys()).map((one) => one.url).sort()])))"""
    )
    (own,) = set(kept) - set(names)
    assert set(kept) - {own} == set(names[1:])
    files = ["", "about.webmanifest", "icon-192.png", "icon-512.png", "table.js"]
    assert kept[own] == [f"{served.url}{name}" for name in files]
    scopes = page.evaluate(
        "navigator.serviceWorker.getRegistrations().then((all) => all.map((one) => one.scope))"
    )
    assert scopes == [served.url]
    context.close()


def test_what_is_served_live_is_not_kept(browser: Browser, served: ServedTable, tmp_path: Path) -> None:
    """MkDocs' live server adds a script that loads the page anew after a change: kept, it never ends."""
    document = tmp_path / "archive" / "table" / "index.html"
    script = _SCRIPT_TEMPLATE_STR.replace("${epoch}", "1").replace("${request_id}", "1")
    text = document.read_text(encoding="utf-8")
    document.write_text(text.replace("</body>", f"<script>{script}</script></body>"), encoding="utf-8")
    context = browser.new_context()
    page = context.new_page()
    page.goto(served.url)
    expect(page.locator("#offline")).to_have_text("Served while it is written: not kept on this device.")
    # Nor does the worker keep it, if it was there already.
    refused = page.evaluate(
        """async () => {
          const asked = await navigator.serviceWorker.register("keep.js", {scope: "./"});
          const worker = asked.installing;
          await new Promise((done) => worker.addEventListener("statechange", done));
          return [worker.state, await caches.keys()];
        }"""
    )
    assert refused == ["redundant", []]
    context.close()


def test_a_folder_opened_by_a_double_click_answers_too(page: Page, folder: str, watch: Watch) -> None:
    """Without a server: the answer, its plan, no error, nothing asked for elsewhere."""
    _ask(page, folder)
    expect(page.locator("#answer")).to_have_text(f"{_planners_count()} pieces.")
    expect(page.locator("#offline")).to_have_text("Opened from a folder: needs no connection.")
    assert page.locator("header a").get_attribute("href", timeout=1000) is not None
    assert page.locator("header a").evaluate("(link) => link.href").endswith("/index.html")
    assert watch.errors == watch.other_hosts == []


# --- what a phone asks before it takes the page in ------------------------------------


def _files(unit: Unit = Unit.INCH, name: str = NAME, look: Look = STANDARD) -> dict[str, str]:
    return dict(table_files(table_page(unit, Masthead(name)), look))


def test_it_can_be_put_among_a_phones_programs(tmp_path: Path) -> None:
    """The members that W3C's Web Application Manifest and browsers ask for; icons as large as they say."""
    document = lay_out_table(tmp_path)
    about = json.loads((document.parent / "about.webmanifest").read_text(encoding="utf-8"))
    assert about["name"] == f"At the table · {NAME}"
    assert (about["start_url"], about["scope"], about["display"]) == ("./", "./", "standalone")
    sizes = {(icon["sizes"], icon["purpose"]) for icon in about["icons"]}
    assert {("192x192", "any"), ("512x512", "any"), ("512x512", "maskable")} <= sizes
    for icon in about["icons"]:
        with Image.open(document.parent / icon["src"]) as drawn:
            assert f"{drawn.width}x{drawn.height}" == icon["sizes"]


def test_the_name_of_what_is_kept_follows_from_what_is_in_it() -> None:
    """Equal pages have equal names; another unit, title or colour is another name."""
    name = re.compile(r'const NOW = OURS \+ "([0-9a-f]{16})";')

    def named(files: dict[str, str]) -> str:
        found = name.search(files["table/keep.js"])
        assert found
        return found[1]

    other_look = Look(STANDARD.ground, STANDARD.ink, Colour.of("#005f5a"))
    others = [_files(unit=Unit.MM), _files(name="Another Bench"), _files(look=other_look)]
    assert _files() == _files()
    assert len({named(_files()), *(named(files) for files in others)}) == 4


def test_a_chosen_colour_is_the_pages_too(page: Page, tmp_path: Path) -> None:
    """The red of links and cuts is the maker's, in the light and in the dark."""
    look = Look(STANDARD.ground, STANDARD.ink, Colour.of("#005f5a"))
    for address, text in table_files(table_page(Unit.MM, Masthead(NAME)), look):
        (tmp_path / address).parent.mkdir(exist_ok=True)
        (tmp_path / address).write_text(text, encoding="utf-8")
    page.goto((tmp_path / "table" / "index.html").as_uri())
    red = "getComputedStyle(document.body).getPropertyValue('--red').trim()"
    assert page.evaluate(red) == "#005f5a"
    page.emulate_media(color_scheme="dark")
    assert page.evaluate(red) not in ("#005f5a", "#f1907a")


def test_titles_are_written_as_text() -> None:
    """A title with signs of HTML stays a title, and a strict parser of the HTML standard takes the page."""
    document = _files(name='<b>"Reed & Rush"</b>')["table/index.html"]
    parsed = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(document)
    titles = ["".join(one.itertext()) for one in parsed.iter("title")]
    assert titles == ['At the table · <b>"Reed & Rush"</b>']


# --- typing ----------------------------------------------------------------------------


WRONG: Final = [
    ("8,5 x 6", "“8,5” has a comma; write it with a point, like 4.25."),
    ("8 x", "“8 x” is not a size; write two lengths with x between, like 8 1/2 x 11."),
    ("11/2 x 5", "“11/2” may be 5 1/2 or 1 1/2; write the one that is meant, with a space."),
    ("8 ells x 5", "“ells” in “8 ells” is not a unit of length; write mm, cm or in."),
    ("8 x 0", "“0” is no length for a table; it has to lie above 0 and below 100 m."),
]


def test_what_cannot_be_read_is_told_in_a_sentence(page: Page, folder: str) -> None:
    """Below its field, once it is left; the field says that it is wrong, and where that is told."""
    _ask(page, folder)
    field = page.get_by_label("Piece 2, width × height")
    fault = page.locator("#have-2-fault")
    for text, sentence in WRONG:
        field.fill(text)
        field.blur()
        expect(fault).to_have_text(sentence)
        assert field.get_attribute("aria-invalid") == "true"
        assert field.get_attribute("aria-describedby") == "have-2-fault"
        expect(page.locator("#answer")).to_be_empty()
        field.fill(SCRAPS_AND_SHEET[1])
        expect(fault).to_be_empty()
        expect(page.locator("#answer")).to_have_text(f"{_planners_count()} pieces.")


@pytest.mark.slow
def test_who_stops_in_the_middle_is_told_too(page: Page, folder: str) -> None:
    """Not at each letter, but once nobody types; and nothing is said aloud meanwhile."""
    _ask(page, folder)
    page.get_by_label("Piece 2, width × height").fill("8 x")
    expect(page.locator("#have-2-fault")).to_have_text(WRONG[1][1])
    expect(page.locator("#aloud")).to_be_empty()


def test_counts_that_are_none_are_told(page: Page, folder: str) -> None:
    """A count is a whole number; sizes are counted all or none."""
    _ask(page, folder)
    count = page.get_by_label("Piece 1, how many")
    count.fill("two")
    count.blur()
    fault = page.locator("#have-1-fault")
    expect(fault).to_have_text("“two” is no count; write a whole number from 1 to 99.")
    _ask(page, folder, f"{EXAMPLE}&want=2+of+2+x+2")
    expect(page.locator("#from")).to_have_text(
        "Some of these sizes have a count and some have none; write it for all or for none."
    )


def test_the_answer_is_said_once(page: Page, folder: str) -> None:
    """Who listens is told when nobody types any more, and not at each letter."""
    _ask(page, folder, EXAMPLE.rpartition("&")[0])
    page.evaluate(
        """const aloud = document.getElementById("aloud");
           window.said = [];
           new MutationObserver(() => said.push(aloud.textContent)).observe(aloud, {childList: true})"""
    )
    page.get_by_label("Size A, width × height").press_sequentially(WANTED, delay=30)
    expect(page.locator("#aloud")).to_contain_text(f"{_planners_count()} pieces.")
    assert page.evaluate("window.said.length") == 1


def test_signs_that_keys_hide_go_where_the_caret_stands(page: Page, folder: str) -> None:
    """A half and a times sign, pressed; the field keeps the caret."""
    page.goto(folder)
    field = page.get_by_label("Piece 1, width × height")
    field.click()
    page.keyboard.type("8")
    signs = page.get_by_role("group", name="Signs for the field above").first
    signs.get_by_role("button", name="a half").click()
    signs.get_by_role("button", name="times").click()
    page.keyboard.type("11")
    expect(field).to_have_value("8½×11")
    expect(field).to_be_focused()


def test_the_keyboard_alone_will_do(page: Page, folder: str) -> None:
    """Return leads to the next piece; a piece is taken off the list, and the next one is in hand."""
    page.goto(folder)
    page.get_by_label("Piece 1, width × height").focus()
    for size in SCRAPS_AND_SHEET:
        page.keyboard.type(size)
        page.keyboard.press("Enter")
    expect(page.get_by_label("Piece 4, width × height")).to_be_focused()
    page.get_by_role("button", name="Take piece 2 away").press("Enter")
    expect(page.get_by_label("Piece 2, width × height")).to_be_focused()
    expect(page.get_by_label("Piece 2, width × height")).to_have_value(SCRAPS_AND_SHEET[2])


def test_a_usual_sheet_pressed_again_is_one_more(page: Page, folder: str) -> None:
    """Two taps on Letter are two sheets."""
    page.goto(folder)
    for _ in range(2):
        page.get_by_role("button", name="Letter").click()
    expect(page.get_by_label("Piece 1, width × height")).to_have_value("8 1/2 × 11 in")
    expect(page.get_by_label("Piece 1, how many")).to_have_value("2")
    assert page.locator("#have > li").count() == 1


# --- what stays --------------------------------------------------------------------------


def test_an_address_brings_the_question_back(browser: Browser, page: Page, folder: str) -> None:
    """What was typed is in the address, and another browser that opens it shows and answers the same."""
    page.goto(folder)
    page.get_by_label("Piece 1, width × height").fill("210 x 297 mm")
    page.get_by_label("Piece 1, how many").fill("2")
    page.get_by_label("Size A, width × height").fill("50 x 180 mm")
    page.get_by_label("Size A, how many").fill("3")
    page.get_by_label("May be turned on the sheet").uncheck()
    expect(page.locator("#answer")).to_have_text("All 3 pieces.")
    address = page.url
    assert address.endswith("#unit=in&have=2+of+210+x+297+mm&want=3+of+50+x+180+mm&turn=no")
    context = browser.new_context()
    other = context.new_page()
    other.goto(address)
    expect(other.locator("#answer")).to_have_text("All 3 pieces.")
    expect(other.get_by_label("Piece 1, how many")).to_have_value("2")
    expect(other.get_by_label("May be turned on the sheet")).not_to_be_checked()
    assert other.locator("#from").text_content() == page.locator("#from").text_content()
    context.close()


def test_ticks_belong_to_their_plan(page: Page, folder: str) -> None:
    """They are there again after a while; another question begins without."""
    _ask(page, folder)
    ticks = page.locator(".move input")
    ticks.nth(0).check()
    ticks.nth(2).check()
    _ask(page, folder, EXAMPLE + "&turn=no")
    assert page.locator(".move input:checked").count() == 0
    _ask(page, folder)
    assert [ticks.nth(at).is_checked() for at in range(3)] == [True, False, True]


@pytest.mark.parametrize(
    "text",
    [
        "have=%3Cimg+src%3Dx+onerror%3Dx()%3E&want=1+x+1",
        *(pytest.param(text, marks=SLOW) for text in ("unit=ell&have=1&have=", "%%%", "want=&" * 50)),
    ],
)
def test_addresses_of_any_kind_are_borne(page: Page, folder: str, watch: Watch, text: str) -> None:
    """What stands there is shown as text or left out; the page goes on."""
    _ask(page, folder, text)
    page.get_by_role("button", name="Begin anew").click()
    page.get_by_role("button", name="12 × 12").click()
    page.get_by_label("Size A, width × height").fill("6 x 6")
    expect(page.locator("#answer")).to_have_text("4 pieces.")
    assert page.locator("img").count() == 0
    assert watch.errors == []


@pytest.mark.slow
def test_a_browser_that_keeps_nothing_will_do(browser: Browser, folder: str, watch: Watch) -> None:
    """Where storing is refused, the page still answers and can be ticked."""
    context = browser.new_context()
    refused = "{get() { throw new Error('no'); }}"
    context.add_init_script(f"Object.defineProperty(window, 'localStorage', {refused})")
    page = context.new_page()
    watch.follow(page)
    _ask(page, folder)
    page.locator(".move input").first.check()
    expect(page.locator("#answer")).to_have_text(f"{_planners_count()} pieces.")
    assert watch.errors == []
    context.close()


# --- for everybody -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", NARROW),
        pytest.param("dark", NARROW, marks=SLOW),
        *(pytest.param("light", width, marks=SLOW) for width in (TABLET, WIDE)),
        *(pytest.param("dark", width, marks=SLOW) for width in (TABLET, WIDE)),
    ],
)
def test_it_is_plain_to_all(
    page: Page, folder: str, axe_faults: AxeFaults, scheme: Literal["light", "dark"], width: int
) -> None:
    """None of axe-core's rules is broken: empty, with a plan, and with something that cannot be read."""
    page.emulate_media(color_scheme=scheme)
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(folder)
    assert axe_faults(page) == ()
    _ask(page, folder, TALL)
    assert page.locator(".move").count() > 3
    assert axe_faults(page) == ()
    page.get_by_label("Piece 2, width × height").fill(WRONG[0][0])
    page.get_by_label("Piece 2, width × height").blur()
    expect(page.locator("#have-2-fault")).not_to_be_empty()
    assert axe_faults(page) == ()


@pytest.mark.parametrize("width", [NARROW, *(pytest.param(width, marks=SLOW) for width in (360, WIDE))])
def test_nothing_is_wider_than_the_screen_and_a_finger_finds_all(page: Page, folder: str, width: int) -> None:
    """Targets are 44 pixels high, and fields write with 16 pixels or more, so that no phone zooms in."""
    page.set_viewport_size({"width": width, "height": 740})
    for question in (EXAMPLE, TALL, "unit=mm&have=210+x+297&want=105+x+148"):
        _ask(page, folder, question)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        wide = page.evaluate(
            "[...document.querySelectorAll('svg')].map((one) => one.getBoundingClientRect().right)"
        )
        assert wide
        assert max(wide) <= width
        low = page.evaluate(
            """[...document.querySelectorAll("button, input, main label")].filter((one) => {
                 const target = one.closest("label") || one;
                 return target.offsetParent !== null && target.getBoundingClientRect().height < 44;
               }).map((one) => one.outerHTML.slice(0, 90))"""
        )
        assert low == []
        sizes = page.evaluate(
            """[...document.querySelectorAll("input[type=text]")]
                 .map((one) => parseFloat(getComputedStyle(one).fontSize))"""
        )
        assert min(sizes) >= 16


def test_every_drawing_is_told_in_words(page: Page, folder: str) -> None:
    """A title, and a description that knows each letter in the drawing; no two have one name."""
    _ask(page, folder, TALL)
    told = page.evaluate(
        """[...document.querySelectorAll("svg")].map((svg) => ({
             title: svg.querySelector("title").textContent, words: svg.querySelector("desc").textContent,
             letters: [...new Set([...svg.querySelectorAll(".letter")].map((one) => one.textContent))]}))"""
    )
    assert len(told) > 3
    assert len({one["title"] for one in told}) == len(told)
    for one in told:
        assert all(re.search(rf"\b{letter}\b", one["words"]) for letter in one["letters"]), one


def test_on_paper_there_is_the_plan(page: Page, folder: str) -> None:
    """What was asked in a sentence, the plan, the settings with their boxes; no form."""
    _ask(page, folder)
    page.emulate_media(media="print")
    assert not page.locator("#asked").is_visible()
    assert page.locator("#from").is_visible()
    assert page.locator("#whole svg").is_visible()
    assert page.locator(".move input").first.is_visible()


def test_without_scripts_it_says_how_to_ask(browser: Browser, folder: str) -> None:
    """One sentence, and a line for the terminal that is answered there."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(folder)
    assert "scripts" in str(page.locator("noscript p").text_content())
    line = re.fullmatch(r'batchleaf cut "(.+)"', str(page.locator("noscript pre").text_content()).strip())
    assert line
    assert isinstance(read_job_line(line[1]).question, MakesQuestion)
    assert not page.locator("#asked").is_visible()
    context.close()
