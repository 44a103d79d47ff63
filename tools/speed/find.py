"""How fast a batch is found among 5,000, on a slow machine: a browser at a quarter of its speed.

Builds the page and its data from the batches of the demo, copied under other names, days and
numbers, into the frame of a built site, and opens it in Chromium. Prints the size of the data, when the
first list stands, and how long choices, words and another order take until what was found is painted,
and until the counts beside all choices and the rest of the list are.

    .venv/bin/python run.py site && .venv/bin/python tools/speed/find.py site
"""

from __future__ import annotations

import datetime as dt
import random
import shutil
import statistics
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Final

from playwright.sync_api import Page, sync_playwright

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.render.html import render
from batchleaf.views.find.find_data import find_data
from batchleaf.views.find.finding import find_pages
from batchleaf.views.find.indexed import indexed
from batchleaf.workflow import read_and_work_out

BATCHES: Final = 5000
SLOWER: Final = 4
ROUNDS: Final = 15
PAUSE: Final = 800
PAINTED: Final = """(act) => new Promise(done => {
  const began = performance.now(), spent = [];
  const painted = next => requestAnimationFrame(() => setTimeout(() => {
    spent.push(performance.now() - began);
    next();
  }));
  new Function(act)();
  painted(() => painted(() => done(spent)));
})"""
"""How long until the list is painted, and until the counts and the rest of the list are."""
LISTED: Final = """new MutationObserver((_, seen) => {
  if (!document.querySelector('.listed .told')?.textContent) return;
  seen.disconnect();
  requestAnimationFrame(() => setTimeout(() => { window.listed = performance.now(); }));
}).observe(document, {subtree: true, childList: true})"""
"""Notes when the first list is painted, without asking the page while it is busy."""
CLICK: Final = "document.querySelector('.finding input[name={}]').click()"
ACTIONS: Final = {
    "a choice": CLICK.format("thing"),
    "a second one": CLICK.format("technique"),
    "a rung": CLICK.format("cost"),
    "words": "const q = document.querySelector('.finding [name=q]'); q.value = q.value ? '' : 'card gre';"
    " q.dispatchEvent(new Event('input', {bubbles: true}))",
    "another order": "const s = document.querySelector('.finding select'); s.selectedIndex ^= 2;"
    " s.dispatchEvent(new Event('input', {bubbles: true}))",
}


def many(figures: Figures) -> Figures:
    """The batches of an archive over and over, each a little different, over thirty years."""
    dice = random.Random(11)
    found: dict[str, BatchFigures] = {}
    templates = list(figures.batches.values())
    for number in range(BATCHES):
        batch = templates[number % len(templates)]
        slug = f"{batch.project.slug}-{number}"
        project = replace(
            batch.project,
            slug=slug,
            title=f"{batch.project.title} {number}",
            date=dt.date(1996, 1, 1) + dt.timedelta(days=number * 11_000 // BATCHES),
            minutes=dice.randint(20, 600),
            photos=(),
        )
        found[slug] = replace(batch, project=project, one=dice.randint(5, 400))
    return replace(figures, batches=found)


def lay_out(site: Path, folder: Path) -> tuple[Path, int]:
    """The page within the frame of the built page, with its data beside it; also the size of these."""
    shutil.copytree(site, folder, dirs_exist_ok=True)
    archive = open_archive(Path())
    worked = read_and_work_out(archive.projects, archive.settings, archive.planner())
    if worked.figures is None:
        raise SystemExit("The records cannot be read.")
    figures = many(worked.figures)
    index = indexed(figures)
    data = find_data(index, figures, {})
    _, page = next(find_pages(index, figures))
    frame = (folder / "find" / "index.html").read_text(encoding="utf-8")
    head, foot = frame.split('<div class="made find">')[0], frame.split("</main>")[1]
    body = f"{head}{render(page)}</main>{foot}"
    place = folder / "find" / "index.html"
    place.write_text(body, encoding="utf-8")
    (folder / "find" / "batches.js").write_text(data, encoding="utf-8")
    return place, len(data.encode())


def measured(page: Page, place: Path) -> None:
    """Open the page slowly and act on it."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    page.add_init_script(LISTED)
    page.goto(place.as_uri(), wait_until="commit")
    listed = page.wait_for_function("window.listed").json_value()
    (shown,) = page.evaluate(
        "performance.getEntriesByName('first-contentful-paint').map(paint => paint.startTime)"
    )
    print(f"newest year painted after {shown / 1000:.2f} s, all batches found after {listed / 1000:.2f} s")
    for name, act in ACTIONS.items():
        spent = [_after_a_pause(page, act) for _ in range(ROUNDS)]
        first, rest = zip(*spent, strict=True)
        print(
            f"{name}: {statistics.median(first):.0f} ms, at most {max(first):.0f} ms;"
            f" with all counts {statistics.median(rest):.0f} ms, at most {max(rest):.0f} ms"
        )


def _after_a_pause(page: Page, act: str) -> list[float]:
    """As a person acts: when the last answer is read and the address has followed."""
    page.wait_for_timeout(PAUSE)
    spent: list[float] = page.evaluate(PAINTED, act)
    return spent


def main() -> None:
    """For the site that is named."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        place, size = lay_out(Path(sys.argv[1]), Path(folder))
        print(f"{BATCHES} batches, {size / 1e6:.2f} MB of data, slowed {SLOWER} times")
        browser = playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
        )
        measured(browser.new_page(), place)
        browser.close()


if __name__ == "__main__":
    main()
