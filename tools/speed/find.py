"""How fast a batch is found among 5,000, on a slow machine: a browser at a quarter of its speed.

Builds the page and its data from the batches of the demo, copied under other names, days and
numbers, into the frame of a built site, and opens it in Chromium. Prints the size of the data, when the
first list stands, and how long choices, words and another order take until they are painted.

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
ROUNDS: Final = 9
PAINTED: Final = """(act) => new Promise(done => {
  const began = performance.now();
  new Function(act)();
  requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
})"""
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
    page.goto(place.as_uri(), wait_until="commit")
    page.wait_for_function("document.querySelector('.listed .told')?.textContent")
    print(f"first list after {page.evaluate('performance.now()') / 1000:.2f} s")
    for name, act in ACTIONS.items():
        spent = [page.evaluate(PAINTED, act) for _ in range(ROUNDS)]
        print(f"{name}: {statistics.median(spent):.0f} ms, at most {max(spent):.0f} ms")


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
