"""The demo's pages are there for everyone: by keyboard, by ear, without scripts, in any light and width."""

from __future__ import annotations

from itertools import pairwise
from typing import Any, Final, Literal

import pytest
from playwright.sync_api import Browser, Page

from browsing import SVG, AxeFaults, Served, parsed, texts_of

NARROW, TABLET, WIDE = 320, 768, 1400
Scheme = Literal["light", "dark"]
WALKED: Final = ("home", "batch made", "drawer/")

# --- axe-core -------------------------------------------------------------------


def _faults(
    site: Served, page: Page, axe_faults: AxeFaults, kinds: tuple[str, ...]
) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    names = site.kinds()
    for kind in kinds:
        site.stay(page, names[kind])
        found[kind] = axe_faults(page)
    return {kind: faults for kind, faults in found.items() if faults}


def _set(page: Page, scheme: Scheme, width: int) -> None:
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    page.set_viewport_size({"width": width, "height": 900})


def test_every_kind_of_page_is_looked_at(demo_site: Served) -> None:
    """The kinds that the tests below go through are all that the demo has."""
    assert set(demo_site.kinds()) == {
        "home", "batch made", "batch planned", "moved", "other sheets",
        "drawer/", "item", "pad", "colours/", "offcuts/", "bench/",
        "series/", "one of series", "find/", "one of find", "side-by-side/", "one of designs", "today/",
        "could-become/", "to-make/", "year/", "how/", "finished/", "prices/", "about/", "keys/", "404.html",
    }  # fmt: skip


def test_the_pages_most_read_are_plain_to_all(demo_site: Served, page: Page, axe_faults: AxeFaults) -> None:
    """None of axe-core's rules is broken on them."""
    _set(page, "light", NARROW)
    most_read = ("home", "batch made", "batch planned", "item", "find/")
    assert _faults(demo_site, page, axe_faults, most_read) == {}


@pytest.mark.slow
@pytest.mark.parametrize(
    ("scheme", "width"),
    [("light", NARROW), ("light", TABLET), ("light", WIDE), ("dark", NARROW), ("dark", WIDE)],
)
def test_pages_are_plain_to_all(
    demo_site: Served, page: Page, axe_faults: AxeFaults, scheme: Scheme, width: int
) -> None:
    """On every kind of page, on a phone, a tablet and a wide screen; in the dark on the first and last."""
    _set(page, scheme, width)
    assert _faults(demo_site, page, axe_faults, tuple(demo_site.kinds())) == {}


@pytest.mark.parametrize("scheme", ["light", pytest.param("dark", marks=pytest.mark.slow)])
@pytest.mark.parametrize("width", [NARROW, pytest.param(TABLET, marks=pytest.mark.slow), WIDE])
def test_the_page_of_problems_is_plain_to_all(
    faulty_site: Served, page: Page, axe_faults: AxeFaults, scheme: Scheme, width: int
) -> None:
    """What stands in the way can be read by everybody who made the mistake."""
    _set(page, scheme, width)
    page.goto(faulty_site.url)
    assert page.locator(".problems pre").count() > 0
    assert axe_faults(page) == ()


# --- drawings in words ------------------------------------------------------------


def test_every_drawing_is_told_in_words(demo_site: Served) -> None:
    """A title of its own on its page, and a description in words that knows each letter in the drawing."""
    told = 0
    for path in demo_site.pages():
        page = parsed(path)
        # One that is drawn again in the other unit is hidden, and tells the same.
        again = {e for f in page.iter("figure") if f.get("data-drawn") == "other" for e in f.iter()}
        drawings = [e for e in page.iter(f"{SVG}svg") if e.get("role") == "img" and e not in again]
        words = [
            [" ".join(d.find(SVG + tag).itertext()).split() for tag in ("title", "desc")] for d in drawings
        ]
        titles = [tuple(title) for title, _ in words]
        assert len(set(titles)) == len(titles)
        assert all(len(title) >= 3 and len(description) >= 3 for title, description in words)
        for drawing, (_, description) in zip(drawings, words, strict=True):
            assert _letters_in(drawing) <= {word.strip(",;.") for word in description}
        told += len(words)
    assert told > 0


def _letters_in(drawing: Any) -> set[str]:
    """The letters of parts and shares that are drawn."""
    labels = [e for e in drawing.iter(f"{SVG}text") if {"letter", "key"} & set(e.get("class").split())]
    return {"".join(label.itertext()).split()[0] for label in labels}


# --- by keyboard --------------------------------------------------------------------

STOP: Final = """() => {
  const at = document.activeElement;
  if (!at || at === document.body) return null;
  // The colours' own buttons are shown as the words beside them.
  const shown = at.closest(".palette")?.querySelector("label:not([hidden])") || at;
  const style = getComputedStyle(shown), box = shown.getBoundingClientRect();
  const middle = [Math.min(box.right, innerWidth) + Math.max(box.left, 0), box.top + box.bottom];
  const hit = document.elementFromPoint(middle[0] / 2, middle[1] / 2);
  let ground = shown.parentElement;
  while (getComputedStyle(ground).backgroundColor === "rgba(0, 0, 0, 0)") ground = ground.parentElement;
  window.stops = window.stops || [];
  const last = window.stops.at(-1);
  window.stops.push(at);
  return {
    what: (at.textContent.trim() || at.getAttribute("aria-label") || at.outerHTML).slice(0, 90),
    visible: box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight
      && box.right > 0 && box.left < innerWidth,
    free: !!hit && (shown.contains(hit) || hit.contains(shown)),
    outline: style.outlineStyle === "none" ? 0 : parseFloat(style.outlineWidth),
    colours: [style.outlineColor, getComputedStyle(ground).backgroundColor],
    top: box.top + scrollY, bottom: box.bottom + scrollY,
    follows: !last || !!(last.compareDocumentPosition(at) & Node.DOCUMENT_POSITION_FOLLOWING),
  };
}"""


def _walk(page: Page) -> list[dict[str, Any]]:
    """Every stop of the Tab key, from the top of the page until it leaves it."""
    stops: list[dict[str, Any]] = []
    page.keyboard.press("Tab")
    while stop := page.evaluate(STOP):
        stops.append(stop)
        page.keyboard.press("Tab")
    return stops


def _contrast(colours: list[str]) -> float:
    """The contrast of two opaque colours as WCAG 2.2 defines it, 1 to 21."""
    darker, lighter = sorted(_luminance(colour) for colour in colours)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    assert colour.startswith("rgb("), "see-through colours have no contrast of their own"
    parts = [int(part) / 255 for part in colour.removeprefix("rgb(").rstrip(")").split(",")]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("scheme", ["light", pytest.param("dark", marks=pytest.mark.slow)])
@pytest.mark.parametrize("kind", WALKED)
def test_the_keyboard_leads_through_the_page(
    demo_site: Served, page: Page, kind: str, scheme: Scheme
) -> None:
    """Each stop is seen, marked by an outline of 3 to 1 or more, and none lies above the one before."""
    _set(page, scheme, WIDE)
    page.goto(demo_site.url + demo_site.kinds()[kind])
    stops = _walk(page)
    assert len(stops) > 8
    assert stops[0]["what"] == "To the page"
    unseen = [s["what"] for s in stops if not (s["visible"] and s["free"] and s["outline"] >= 2)]
    faint = [s["what"] for s in stops if _contrast(s["colours"]) < 3]
    # A line of the header, of a table, of the gallery is walked from left to right.
    back = [b["what"] for a, b in pairwise(stops[1:]) if b["bottom"] < a["top"]]
    assert (unseen, faint, back) == ([], [], [])
    assert [s["what"] for s in stops if not s["follows"]] == []


def test_on_a_phone_too_the_keyboard_follows_the_eye(demo_site: Served, page: Page) -> None:
    """Where the sections stand below the search, Tab comes to them after it."""
    _set(page, "light", NARROW)
    page.goto(demo_site.url)
    stops = _walk(page)
    back = [b["what"] for a, b in pairwise(stops[1:]) if b["bottom"] < a["top"]]
    assert back == []


def test_the_skip_link_skips(demo_site: Served, page: Page) -> None:
    """Enter on the first stop leads past the header: the next stop is in the page."""
    page.goto(demo_site.url)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.closest('#content') !== null")


def test_who_wants_no_motion_gets_none(demo_site: Served, page: Page) -> None:
    """Nothing slides, fades or scrolls by itself where the device asks for that."""
    page.emulate_media(reduced_motion="reduce")
    kinds = demo_site.kinds()
    for kind in WALKED:
        page.goto(demo_site.url + kinds[kind])
        moving = page.evaluate(
            """() => [...document.querySelectorAll("*")].filter((e) => {
              const style = getComputedStyle(e);
              const slow = (times) => times.split(",").some((time) => parseFloat(time) > 0.001);
              return style.scrollBehavior === "smooth" || slow(style.transitionDuration)
                || (style.animationName !== "none" && slow(style.animationDuration));
            }).map((e) => e.outerHTML.slice(0, 90))"""
        )
        assert moving == []


# --- without scripts --------------------------------------------------------------------

UNSEEN: Final = """() => {
  // A dialog opens by a script, and shows what a link leads to without one.
  const meant = "[hidden], dialog, .said, title, desc, script, style, noscript, picture source";
  const own = (e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim());
  const gone = (e) => !e.checkVisibility({opacityProperty: true, visibilityProperty: true})
    || !e.getClientRects().length;
  return [...document.querySelectorAll("main *")]
    .filter((e) => own(e) && !e.closest(meant) && gone(e)).map((e) => e.outerHTML.slice(0, 90));
}"""


def test_without_scripts_everything_is_there(demo_site: Served, browser: Browser) -> None:
    """All text of every kind of page is shown, and a link from the first page leads on."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    for name in demo_site.kinds().values():
        demo_site.stay(page, name)
        # What is folded away opens without a script.
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        assert page.evaluate(UNSEEN) == []
        main = next(parsed(demo_site.file(name)).iter("main"))
        fields = page.evaluate("[...document.querySelectorAll('main textarea')].map((one) => one.value)")
        shown = "".join("".join([page.locator("main").inner_text(), *fields]).split())
        assert [text for text in texts_of(main) if "".join(text.split()) not in shown] == []
    page.goto(demo_site.url)
    assert not page.locator(".md-search, .palette").first.is_visible(), "what would do nothing is away"
    link = page.locator(".gallery a").first
    title = link.locator("h2").inner_text()
    link.click()
    assert page.locator("h1").inner_text() == title
    context.close()
