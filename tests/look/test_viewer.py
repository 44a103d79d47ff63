"""Photos looked at one by one, as large as the window."""

from __future__ import annotations

from typing import Any, Final, Literal

import pytest
from playwright.sync_api import Browser, Page, expect

from browsing import AxeFaults, Served

BATCH: Final = "projects/sloe-lane-cards/"
"""A batch with a cover and the photos of two steps."""
WIDTHS: Final = (320, 390, 768, 1400)

BOXES: Final = """() => {
  const box = (e) => e.getBoundingClientRect().toJSON();
  const dialog = document.querySelector("dialog.viewer");
  return {dialog: box(dialog), image: box(dialog.querySelector("img")),
    buttons: [...dialog.querySelectorAll("button")].map(box)};
}"""

SWIPE: Final = """([across, down, second]) => {
  const there = document.querySelector(".viewer__photo");
  const tell = (kind, x, y, more) => there.dispatchEvent(new PointerEvent(kind, {
    bubbles: true, pointerId: 1, pointerType: "touch", isPrimary: true, clientX: x, clientY: y, ...more,
  }));
  tell("pointerdown", 200, 200);
  if (second) tell("pointerdown", 220, 220, {pointerId: 2, isPrimary: false});
  tell("pointerup", 200 + across, 200 + down);
}"""


def opened(page: Page, site: Served, width: int = 1400, photo: int = 0) -> None:
    """The batch with one of its photos, from 0, opened by a click."""
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(site.url + BATCH)
    page.locator("a.photo").nth(photo).click()
    expect(page.locator("dialog.viewer")).to_be_visible()


def place(page: Page) -> str:
    """Which photo is shown, as the page says it."""
    return page.locator("dialog.viewer [data-viewer=place]").inner_text()


def test_each_photo_opens_and_says_what_it_is(demo_site: Served, page: Page) -> None:
    """The cover and the photos of the steps, with their words and their place; the address stays."""
    for number in range(3):
        opened(page, demo_site, photo=number)
        words = page.locator("a.photo img").nth(number).get_attribute("alt")
        assert words
        expect(page.locator("dialog.viewer [role=status]")).to_have_text(f"{words} {number + 1} of 3")
        assert page.url == demo_site.url + BATCH
        image = page.locator("dialog.viewer img")
        expect(image).to_have_js_property("complete", value=True)
        assert image.evaluate("image => image.naturalWidth") > 0


def test_without_scripts_a_photo_leads_to_its_largest_file(demo_site: Served, browser: Browser) -> None:
    """A plain link, to the widest of the files that it is shown from."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(demo_site.url + BATCH)
    link = page.locator("a.photo").first
    files = link.locator("source").last.get_attribute("srcset") or ""
    widest = max(files.split(", "), key=lambda file: int(file.split()[1].removesuffix("w"))).split()[0]
    assert link.get_attribute("href") == widest
    link.click()
    assert page.url.endswith(widest.rpartition("/")[2])
    context.close()


def test_a_new_tab_is_a_new_tab(demo_site: Served, page: Page) -> None:
    """A click with the key for it held is left to the browser."""
    page.goto(demo_site.url + BATCH)
    with page.context.expect_page() as other:
        page.locator("a.photo").first.click(modifiers=["ControlOrMeta"])
    assert other.value.url.endswith(".jpg")
    expect(page.locator("dialog.viewer")).to_be_hidden()


def test_keys_lead_from_photo_to_photo(demo_site: Served, page: Page) -> None:
    """Arrows, Home and End; at either end they stay; no other key of the page does anything."""
    opened(page, demo_site)
    seen = []
    for key in ("ArrowLeft", "ArrowRight", "ArrowRight", "ArrowRight", "Home", "End", "ArrowLeft"):
        page.keyboard.press(key)
        seen.append(place(page))
    assert seen == [f"{number} of 3" for number in (1, 2, 3, 3, 1, 3, 2)]
    page.keyboard.press("s")
    page.keyboard.press("Escape")
    expect(page.locator("dialog.viewer")).to_be_hidden()
    expect(page.locator(".md-search__output")).to_be_hidden()


def test_buttons_lead_from_photo_to_photo(demo_site: Served, page: Page) -> None:
    """In words; the one that leads nowhere says so, and does nothing."""
    opened(page, demo_site)
    before, after = (page.get_by_role("button", name=name) for name in ("Previous", "Next"))
    expect(after).to_be_focused()
    expect(before).to_have_attribute("aria-disabled", "true")
    before.dispatch_event("click")
    assert place(page) == "1 of 3"
    after.click()
    after.click()
    assert place(page) == "3 of 3"
    expect(after).to_have_attribute("aria-disabled", "true")
    expect(after).to_be_focused()
    before.click()
    assert place(page) == "2 of 3"


@pytest.mark.parametrize("way", ["Escape", "Close"])
def test_closing_leads_back_to_the_photo(demo_site: Served, page: Page, way: str) -> None:
    """The page lies as it lay, and the photo that was opened has the focus again."""
    opened(page, demo_site, photo=1)
    lay = page.evaluate("scrollY")
    assert lay > 0
    page.keyboard.press("ArrowRight")
    page.mouse.move(600, 300)
    page.mouse.wheel(0, 900)
    if way == "Close":
        page.get_by_role("button", name="Close").click()
    else:
        page.keyboard.press(way)
    expect(page.locator("a.photo").nth(1)).to_be_focused()
    assert page.evaluate("scrollY") == lay
    assert page.evaluate("getComputedStyle(document.documentElement).overflowY") == "visible"


def test_closing_leads_back_where_a_click_gives_no_focus(demo_site: Served, page: Page) -> None:
    """Some browsers leave the focus where it was when a link is clicked."""
    page.goto(demo_site.url + BATCH)
    page.locator("a.photo").nth(1).dispatch_event("click")
    page.keyboard.press("Escape")
    expect(page.locator("a.photo").nth(1)).to_be_focused()


@pytest.mark.parametrize(
    ("moved", "arrives"),
    [
        ((-60, 10, False), "2 of 3"),
        ((60, 10, False), "1 of 3"),
        ((-30, 0, False), "1 of 3"),
        ((-60, 90, False), "1 of 3"),
        ((-60, 0, True), "1 of 3"),
    ],
    ids=["to the left", "to the right", "too short", "down", "two fingers"],
)
def test_a_swipe_leads_on(demo_site: Served, page: Page, moved: tuple[int, int, bool], arrives: str) -> None:
    """From side to side and more than 40 px; what scrolls or pinches is no swipe."""
    opened(page, demo_site, 390)
    page.evaluate(SWIPE, moved)
    assert place(page) == arrives


def test_a_finger_swipes_and_two_pinch(demo_site: Served, browser: Browser) -> None:
    """On a real touch screen; what was pinched large is moved about by a finger, and not exchanged."""
    context = browser.new_context(has_touch=True, is_mobile=True, viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.goto(demo_site.url + BATCH)
    page.locator("a.photo").first.tap()
    screen = context.new_cdp_session(page)

    def draw(across: int, down: int) -> None:
        screen.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": 250, "y": 400}]})
        for part in range(1, 6):
            there = {"x": 250 + across * part / 5, "y": 400 + down * part / 5}
            screen.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [there]})
        screen.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})

    draw(-150, 20)
    expect(page.locator("[data-viewer=place]")).to_have_text("2 of 3")
    draw(-60, -200)
    assert place(page) == "2 of 3"
    screen.send("Input.synthesizePinchGesture", {"x": 200, "y": 400, "scaleFactor": 2})
    expect(page.locator("dialog.pinched")).to_be_visible()
    left = page.evaluate("visualViewport.pageLeft")
    draw(-100, 0)
    page.wait_for_function("left => visualViewport.pageLeft > left", arg=left)
    assert place(page) == "2 of 3"
    context.close()


def test_a_mouse_swipes_too(demo_site: Served, page: Page) -> None:
    """The photo is drawn aside, and not taken along as a file."""
    opened(page, demo_site)
    page.mouse.move(800, 300)
    page.mouse.down()
    page.mouse.move(600, 310, steps=4)
    page.mouse.up()
    assert place(page) == "2 of 3"


@pytest.mark.parametrize("height", [320, 800])
@pytest.mark.parametrize("width", [*WIDTHS, 2560])
def test_a_photo_fits_the_window(demo_site: Served, page: Page, width: int, height: int) -> None:
    """Whole, uncropped, never larger than it is; all that is pressed is in the window, 24 px or more."""
    opened(page, demo_site, width)
    page.set_viewport_size({"width": width, "height": height})
    found: dict[str, Any] = page.evaluate(BOXES)
    image = found["image"]
    assert (found["dialog"]["width"], found["dialog"]["height"]) == (width, height)
    for box in (image, *found["buttons"]):
        assert min(box["left"], box["top"]) >= 0
        assert box["right"] <= width
        assert box["bottom"] <= height
    assert image["width"] / image["height"] == pytest.approx(1600 / 1067, rel=0.005)
    assert image["width"] <= 1600
    assert image["width"] >= 0.99 * width or image["height"] >= 0.45 * height
    assert min(box["height"] for box in found["buttons"]) >= 24


def test_after_instant_navigation_photos_open(instant_demo: Served, page: Page) -> None:
    """Also where the page was exchanged without being loaded; going back closes what is open."""
    with page.expect_response("**/sitemap.xml"):  # from then on pages are exchanged
        page.goto(instant_demo.url)
    page.evaluate("window.stayed = true")
    page.locator(f".gallery a[href$='{BATCH}']").click()
    expect(page.locator(".batch h1")).to_be_visible()
    assert page.evaluate("window.stayed"), "the page was loaded anew"
    link = page.locator("a.photo").first
    expect(link).to_have_attribute("aria-haspopup", "dialog")
    link.click()
    page.keyboard.press("ArrowRight")
    assert place(page) == "2 of 3"
    page.go_back()
    expect(page.locator(".gallery")).to_be_visible()
    expect(page.locator("dialog")).to_have_count(0)
    assert page.evaluate("getComputedStyle(document.documentElement).overflowY") == "visible"


def test_from_a_folder_photos_open(demo_site: Served, page: Page) -> None:
    """On a site opened as files too."""
    page.goto((demo_site.folder / BATCH / "index.html").as_uri())
    page.locator("a.photo").nth(1).click()
    assert place(page) == "2 of 3"
    expect(page.locator("dialog.viewer img")).to_have_js_property("complete", value=True)
    assert page.locator("dialog.viewer img").evaluate("image => image.naturalWidth") > 0


def test_on_paper_there_is_no_viewer(demo_site: Served, page: Page) -> None:
    """Printed while a photo is open, the page is whole and the viewer is away."""
    opened(page, demo_site)
    page.emulate_media(media="print")
    expect(page.locator("dialog.viewer")).to_be_hidden()
    assert page.evaluate("getComputedStyle(document.documentElement).overflowY") == "visible"


@pytest.mark.parametrize("scheme", ["light", pytest.param("dark", marks=pytest.mark.slow)])
@pytest.mark.parametrize(
    "width", [WIDTHS[0], *(pytest.param(width, marks=pytest.mark.slow) for width in WIDTHS[1:])]
)
def test_the_viewer_is_plain_to_all(
    demo_site: Served, page: Page, axe_faults: AxeFaults, width: int, scheme: Literal["light", "dark"]
) -> None:
    """With a photo open, and closed again, none of axe-core's rules is broken."""
    page.emulate_media(color_scheme=scheme)
    opened(page, demo_site, width)
    assert axe_faults(page) == ()
    page.keyboard.press("End")
    assert axe_faults(page) == ()
    page.keyboard.press("Escape")
    assert axe_faults(page) == ()
