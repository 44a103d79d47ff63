"""The reference of keys holds every key, and says of each what it means and how it is written."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import html5lib
import pytest
from markdown import markdown
from pydantic import BaseModel

from batchleaf.cli import main
from batchleaf.records.kinds import KINDS, keys_of, models_of
from batchleaf.records.written import Written
from batchleaf.records.written.jobs import JobWritten
from batchleaf.writing.keys_page import keys_page
from browsing import SUB_PATH, Served

ROOT = Path(__file__).parents[2]
MODELS = sorted({model for kind in KINDS.values() for model in models_of(kind.model)}, key=str)
KEYS = [(model, key.name) for model in MODELS for key in keys_of(model)]

every_key = pytest.mark.parametrize(("model", "key"), KEYS, ids=lambda one: getattr(one, "__name__", one))


def test_every_model_belongs_to_a_kind_of_record() -> None:
    """None is forgotten by the schemas and the reference; a job is no record: the README has its keys."""

    def below(model: type[BaseModel]) -> set[type[BaseModel]]:
        return {model}.union(*(below(one) for one in model.__subclasses__()))

    # Models that tests make for themselves stand elsewhere.
    real = {one for one in below(Written) - {Written} if one.__module__.startswith("batchleaf.")}
    assert real - set(models_of(JobWritten)) == set(MODELS)


@every_key
def test_every_key_is_explained(model: type[BaseModel], key: str) -> None:
    """It has a description of whole words, and an example to copy."""
    field = next(one.field for one in keys_of(model) if one.name == key)
    assert re.search(r"\w{2}", field.description or ""), "write a description"
    assert field.description == " ".join((field.description or "").split())
    assert field.examples, "write an example"


@every_key
def test_every_key_is_on_the_page(model: type[BaseModel], key: str) -> None:
    """In the table of its model, with its description, as a reader of Markdown sees it."""
    tables = [
        {cells[0]: cells for row in table.iter("tr") if len(cells := words(row)) == 3} for table in parsed()
    ]
    own = [one.name for one in keys_of(model)]
    table = next(one for one in tables if list(one)[1:] == own)
    field = next(one.field for one in keys_of(model) if one.name == key)
    assert table[key][1].startswith(field.description or "")
    assert ("It must be there." in table[key][1]) == field.is_required()
    if isinstance(field.default, str):
        assert f"If left out, {field.default}." in table[key][1]


def parsed() -> list[Any]:
    """The tables of the page, read as the site reads it."""
    html = markdown(keys_page(), extensions=["tables", "toc"])
    return list(html5lib.parse(html, namespaceHTMLElements=False).iter("table"))


def words(row: Any) -> list[str]:
    """The text of each cell of a row."""
    return ["".join(cell.itertext()) for cell in row]


def test_every_link_of_the_page_leads_to_a_heading() -> None:
    """A key that holds keys leads to their table."""
    html = markdown(keys_page(), extensions=["tables", "toc"])
    elements = list(html5lib.parse(html, namespaceHTMLElements=False).iter())
    named = [one.get("id") for one in elements if one.get("id")]
    assert {one.get("href") for one in elements if one.tag == "a"} == {
        f"#{name}" for name in named if name != "every-key"
    }
    assert len(set(named)) == len(named)


def test_the_demos_page_is_that_of_the_models() -> None:
    """What `batchleaf keys` wrote into the demo is not out of date."""
    assert (ROOT / "site_src" / "keys.md").read_text(encoding="utf-8") == keys_page()


def test_every_page_of_the_site_leads_to_it(demo_site: Served) -> None:
    """Pages that were written, and not made from records, stand in the foot of each page."""
    for page in demo_site.pages():
        tree: Any = html5lib.parse(page.read_text(encoding="utf-8"), namespaceHTMLElements=False)
        links = {one.text: one.get("href") for one in tree.find(".//footer").iter("a")}
        assert {"About the bench", "Every key"} <= set(links)
        way = links["Every key"].replace(SUB_PATH, f"{demo_site.folder.as_posix()}/")
        assert (page.parent / way / "index.html").is_file()


def test_a_new_archive_brings_its_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Beside README from the start; `schema` writes it anew, and `keys` makes a page of the site."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive)]) == 0
    beside, page = archive / "KEYS.md", archive / "site_src" / "keys.md"
    assert beside.read_text(encoding="utf-8") == keys_page()
    beside.write_text("old", encoding="utf-8")
    assert main(["schema", "--archive", str(archive)]) == 0
    assert beside.read_bytes() == keys_page().encode()
    assert not page.exists()
    assert main(["keys", "--archive", str(archive)]) == 0
    assert page.read_bytes() == keys_page().encode()
    assert capsys.readouterr().out.splitlines()[-2:] == [f"Wrote {beside}", f"Wrote {page}"]


def test_an_archive_without_the_reference_gets_none_unasked(tmp_path: Path) -> None:
    """Nothing is written beside README that was not there."""
    archive = tmp_path / "my paper"
    assert main(["start", str(archive)]) == 0
    (archive / "KEYS.md").unlink()
    assert main(["schema", "--archive", str(archive)]) == 0
    assert not (archive / "KEYS.md").exists()
