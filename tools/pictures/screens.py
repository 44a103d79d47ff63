"""Takes the README's pictures of the demo's pages: ``python tools/pictures/screens.py``, after a build.

They show the fonts of the machine that takes them, so they differ from one to the next.
"""

from __future__ import annotations

import io
import os
import shutil
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from PIL import Image
from playwright.sync_api import Browser, ViewportSize, sync_playwright

ROOT: Final = Path(__file__).resolve().parents[2]
SITE: Final = ROOT / "site"
PICTURES: Final = ROOT / ".github" / "pictures"
QUALITY: Final = 82


@dataclass(frozen=True, slots=True)
class Screen:
    """A page, where it is scrolled to, and how large the window is in px."""

    name: str
    page: str
    width: int
    height: int
    scheme: Literal["light", "dark"] = "light"
    start: str = "body"


SCREENS: Final = (
    Screen("home", "index.html", 1400, 1460),
    Screen("plan", "projects/hawthorn-boxes/index.html", 1400, 1100, start=".plan"),
    Screen("phone-batch", "projects/ivy-gate-cards/index.html", 390, 844),
    Screen("phone-plan", "projects/ivy-gate-cards/index.html", 390, 844, start=".plan >> nth=2"),
    Screen("phone-drawer", "drawer/index.html", 390, 844, scheme="dark"),
)


def main() -> None:
    """Writes each picture over the one before."""
    chromium = os.environ.get("CHROMIUM") or shutil.which("chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-gpu"])
        taken = {screen.name: _taken(browser, screen) for screen in SCREENS}
        browser.close()
    phones = [taken.pop(name) for name in list(taken) if name.startswith("phone-")]
    for name, image in {**taken, "phone": _side_by_side(phones)}.items():
        image.save(PICTURES / f"{name}.jpg", quality=QUALITY, optimize=True, progressive=True)


def _taken(browser: Browser, screen: Screen) -> Image.Image:
    context = browser.new_context(
        viewport=ViewportSize(width=screen.width, height=screen.height),
        color_scheme=screen.scheme,
        reduced_motion="reduce",
    )
    page = context.new_page()
    page.goto((SITE / screen.page).as_uri())
    page.locator(screen.start).first.evaluate("e => e.scrollIntoView()")
    page.wait_for_load_state("networkidle")
    image = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    context.close()
    return image


def _side_by_side(images: list[Image.Image]) -> Image.Image:
    gap = 32
    wide = sum(image.width for image in images) + gap * (len(images) - 1)
    whole = Image.new("RGB", (wide, max(image.height for image in images)), "white")
    for n, image in enumerate(images):
        whole.paste(image, (n * (image.width + gap), 0))
    return whole


if __name__ == "__main__":
    main()
