"""The page for the table: a document with its scripts, and what keeps it on a phone.

Its scripts are classic ones, joined to one file; so it runs where a folder is opened, too. On the web
a worker keeps all of it under a name that follows from what is in it: equal pages have equal names,
and a page that changed is fetched anew.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from typing import Final

from markupsafe import Markup

from batchleaf.render.html import ENVIRONMENT, TEMPLATES, THEME
from batchleaf.render.look import STANDARD, Look, look_style
from batchleaf.views import site_map
from batchleaf.views.pages.at_the_table import TablePage

SCRIPTS: Final = (
    "fractions", "lengths", "trees", "points", "one_size", "cut_out", "moves", "sets", "question",
    "words", "drawing", "kept", "address", "form", "page", "offline",
)  # fmt: skip
"""By subject; each knows only those before it."""
ICONS: Final = {"icon-192.png": 192, "icon-512.png": 512}
"""They lie in the theme's folder ``table/``, from where MkDocs takes them: file → pixels."""
_PAGE, _SCRIPT, _ABOUT, _WORKER = "index.html", "table.js", "about.webmanifest", "keep.js"


def table_files(page: TablePage, look: Look) -> Iterator[tuple[str, str]]:
    """Every file of the page but its icons, with its address on the site."""
    files = {_PAGE: _document(page, look), _SCRIPT: _scripts(), _ABOUT: _about(page, look)}
    for name, text in files.items():
        yield f"{site_map.TABLE}{name}", text
    kept = ["./", *(name for name in files if name != _PAGE), *ICONS]
    worker = ENVIRONMENT.get_template("table/keep.js").render(kept=kept, name=_name(files))
    yield f"{site_map.TABLE}{_WORKER}", worker


def _document(page: TablePage, look: Look) -> str:
    chosen = Markup(look_style(look, "table/look.css") if look != STANDARD else "")  # noqa: S704
    return ENVIRONMENT.get_template("table/page.html").render(page=page, chosen=chosen)


def _scripts() -> str:
    folder = TEMPLATES / "table" / "scripts"
    return "\n".join((folder / f"{name}.js").read_text(encoding="utf-8") for name in SCRIPTS)


def _about(page: TablePage, look: Look) -> str:
    """What a phone asks before it puts the page among its programs (W3C, Web Application Manifest)."""
    icons = [
        {"src": name, "sizes": f"{pixels}x{pixels}", "type": "image/png", "purpose": purpose}
        for name, pixels in ICONS.items()
        for purpose in ("any", "maskable")
    ]
    about = {
        "id": "./",
        "name": f"At the table · {page.site}",
        "short_name": "At the table",
        "lang": "en",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": str(look.ground),
        "theme_color": str(look.ground),
        "icons": icons,
    }
    return json.dumps(about, ensure_ascii=False, indent=2) + "\n"


def _name(files: dict[str, str]) -> str:
    """A hash of all that is kept."""
    digest = hashlib.sha256()
    for name in sorted(files):
        digest.update(f"{name}\n{files[name]}\n".encode())
    for name in ICONS:
        digest.update((THEME / "table" / name).read_bytes())
    return digest.hexdigest()[:16]
