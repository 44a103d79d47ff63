"""The three colours that a maker chooses, and those that follow from them."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Page

from batchleaf.cli import main
from batchleaf.measure.colours import READABLE, WHITE, Colour
from batchleaf.render.html import THEME
from batchleaf.render.look import AT_EASE, STANDARD, Look, look_style
from batchleaf.writing.archive import start_archive
from browsing import AxeFaults

COLOURS = st.builds(Colour, *(st.integers(0, 255) for _ in range(3)))
NIGHT = Colour.of("#171a1f")


@st.composite
def sound_looks(draw: st.DrawFn) -> Look:
    """Any three colours, of which ink and accent are mended where they cannot be read."""
    ground, ink, accent = draw(COLOURS), draw(COLOURS), draw(COLOURS)
    extreme = max(Colour(0, 0, 0), WHITE, key=ground.contrast)
    return Look(ground, ink.until(READABLE, ground, extreme), accent.until(READABLE, ground, extreme))


def variables(style: str) -> list[tuple[str, Colour]]:
    """The colours that a style sheet sets, in their order."""
    return [(name, Colour.of(text)) for name, text in re.findall(r"--([a-z]+): (#[0-9a-f]{6})", style)]


def test_the_house_has_its_own_colours() -> None:
    """What is taken where nothing is chosen is what the style sheet says first."""
    house = dict(reversed(variables((THEME / "assets" / "batchleaf.css").read_text(encoding="utf-8"))[:7]))
    assert (house["ground"], house["ink"], house["red"]) == (STANDARD.ground, STANDARD.ink, STANDARD.accent)
    follows = dict(reversed(variables(look_style(STANDARD))[:7]))
    assert follows["blue"] == house["blue"]
    assert follows["quiet"].contrast(STANDARD.ground) >= AT_EASE


@given(sound_looks())
def test_whatever_is_chosen_can_be_read(look: Look) -> None:
    """All text stands out from the ground by 4.5 to 1 and more, by day, by night and printed."""
    day = variables(look_style(look))
    colours = dict(day[:7])
    for name in ("ink", "quiet", "red", "blue"):
        assert colours[name].contrast(look.ground) >= READABLE, name
    assert colours["ink"].contrast(colours["sheet"]) >= READABLE
    by_night, no_script, printed = (colour for _, colour in day[7:])
    assert by_night == no_script
    assert by_night.contrast(NIGHT) >= AT_EASE
    assert printed.contrast(WHITE) >= AT_EASE


@given(st.builds(Look, COLOURS, COLOURS, COLOURS))
def test_what_cannot_be_read_is_told_with_what_would_do(look: Look) -> None:
    """A sentence for each colour below 4.5 to 1, and the colour it names is none of them."""
    wrong = [colour for colour in (look.ink, look.accent) if colour.contrast(look.ground) < READABLE]
    told = list(look.mistakes())
    assert len(told) == len(wrong)
    for sentence in told:
        better = Colour.of(re.findall("#[0-9a-f]{6}", sentence)[-1])
        assert better.contrast(look.ground) >= READABLE


@pytest.fixture(scope="module")
def dressed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new archive in violet ink on rose paper, built."""
    root = tmp_path_factory.mktemp("dressed") / "paper"
    start_archive(root)
    config = root / "mkdocs.yml"
    chosen = '      ground: "#f6e9e6"\n      ink: "#3b1f4d"\n      accent: "#0a4f3d"\n'
    config.write_text(config.read_text(encoding="utf-8") + "\n" + chosen, encoding="utf-8")
    assert main(["build", "--archive", str(root)]) == 0
    return root / "site"


FIRST: Final = "projects/first-batch/index.html"
GROUND: Final = "getComputedStyle(document.body).backgroundColor"


@pytest.mark.parametrize("scripts", ["with scripts", pytest.param("without", marks=pytest.mark.slow)])
@pytest.mark.parametrize(("scheme", "seen"), [("light", "rgb(246, 233, 230)"), ("dark", "rgb(23, 26, 31)")])
def test_pages_wear_what_is_chosen(
    dressed: Path,
    page: Page,
    axe_faults: AxeFaults,
    scheme: Literal["light", "dark"],
    seen: str,
    scripts: str,
) -> None:
    """By day in the colours of the archive, by night on the house's own ground; all can be read."""
    if scripts == "without":
        page.route("**/*.js", lambda route: route.abort())
    page.emulate_media(color_scheme=scheme)
    page.goto((dressed / FIRST).as_uri())
    assert page.evaluate(GROUND) == seen
    assert axe_faults(page) == ()


def test_print_is_black_on_white(dressed: Path, page: Page) -> None:
    """Whatever is chosen; the pencil is dark enough for paper."""
    page.emulate_media(media="print")
    page.goto((dressed / FIRST).as_uri())
    assert page.evaluate(GROUND) == "rgb(255, 255, 255)"
    of_body = "name => getComputedStyle(document.body).getPropertyValue(`--${name}`)"
    assert [page.evaluate(of_body, name) for name in ("ground", "ink")] == ["#fff", "#000"]
    assert Colour.of(page.evaluate(of_body, "red")).contrast(WHITE) >= AT_EASE
