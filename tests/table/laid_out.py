"""The page for the table laid out in a folder, as a site has it, without the rest of the site."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, Final

from playwright.sync_api import Page

from batchleaf.core.cutting.plan import Axis, CuttingPlan, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.measure.lengths import Unit
from batchleaf.render.at_the_table import ICONS, table_files
from batchleaf.render.html import THEME
from batchleaf.render.look import STANDARD
from batchleaf.views.at_the_table import table_page
from batchleaf.views.masthead import Masthead

NAME: Final = "Thornwick Paper Table"


def lay_out_table(folder: Path, unit: Unit = Unit.INCH) -> Path:
    """Write the page below ``folder``; its document."""
    for address, text in table_files(table_page(unit, Masthead(NAME)), STANDARD):
        (folder / address).parent.mkdir(parents=True, exist_ok=True)
        (folder / address).write_text(text, encoding="utf-8")
    for icon in ICONS:
        shutil.copy(THEME / "table" / icon, folder / "table")
    return folder / "table" / "index.html"


Asked = dict[str, Any]

ASK: Final = """(jobs) => jobs.map(({pieces, kinds, turns, unit}) => {
  const read = ([text, count]) => ({...lengths.readSize(text, unit), count});
  const found = question.answered({pieces: pieces.map(read), kinds: kinds.map(read), turns});
  const bare = (node) => node.axis
    ? {axis: node.axis, at: node.at, first: bare(node.first), second: bare(node.second)} : node;
  const settings = ({tree, piece}) => {
    const {width, height} = found.pieces[piece];
    const told = (move) => [move.axis, move.at, move.many * move.alike, move.from, move.to];
    return tree && moves.of(tree, width, height, 1).map(told);
  };
  const plans = found.plans.map((plan) =>
    ({...plan, tree: plan.tree && bare(plan.tree), settings: settings(plan)}));
  const unitOf = [found.unit.top.toString(), found.unit.bottom.toString()];
  const {each, wanted, atMost} = found;
  return {found: found.found, atMost, each, wanted, plans, unit: unitOf};
})"""


def asked(page: Page, jobs: list[Asked]) -> list[dict[str, Any]]:
    """What the page's own scripts answer to ``jobs``, all in one call."""
    found: list[dict[str, Any]] = page.evaluate(ASK, jobs)
    return found


def unit_of(answer: dict[str, Any]) -> Fraction:
    """The mm that one whole number of an answer is."""
    return Fraction(*(int(one) for one in answer["unit"]))


def tree_of(node: dict[str, Any], unit: Fraction, ids: list[str]) -> Node:
    """A tree of the page as the house's own, in mm."""
    if "axis" in node:
        first, second = (tree_of(node[half], unit, ids) for half in ("first", "second"))
        return ThroughCut(Axis(node["axis"]), node["at"] * unit, first, second)
    return PartLeaf(ids[node["part"]], node["turned"]) if "part" in node else Leftover()


def plan_of(answer: dict[str, Any], ids: list[str], stocks: list[str], spares: dict[str, int]) -> CuttingPlan:
    """An answer of the page as a plan that the house's checker can look over."""
    unit = unit_of(answer)
    sheets = tuple(
        SheetPlan(stocks[plan["piece"]], plan["times"], tree_of(plan["tree"], unit, ids))
        for plan in answer["plans"]
    )
    return CuttingPlan(answer["found"], answer["atMost"], "", sheets, tuple(spares.items()))


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Keep the test's output readable."""


@dataclass(frozen=True, slots=True)
class ServedTable:
    """Where the page is; ``close`` takes the server away."""

    url: str
    close: Callable[[], None]


@contextmanager
def served_table(folder: Path) -> Iterator[ServedTable]:
    """Serve what lies in ``folder``, which has the page below ``archive/``, as below a path on a host."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()

    def close() -> None:
        server.shutdown()
        server.server_close()
        thread.join()

    yield ServedTable(f"http://127.0.0.1:{server.server_address[1]}/archive/table/", close)
    close()
