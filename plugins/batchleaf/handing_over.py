"""What MkDocs is handed: the files of a site, and what their frame shows around them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, InclusionLevel

from batchleaf.made_batch import MadeFile, MadePage
from batchleaf.made_site import MadeSite
from batchleaf.render.html import THEME
from batchleaf.render.look import STANDARD, STYLE_SHEET, Look, look_style
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead

PALETTE: Final = [
    {
        "media": "(prefers-color-scheme: light)",
        "scheme": "default",
        "toggle": {"icon": "material/weather-night", "name": "Switch to dark"},
    },
    {
        "media": "(prefers-color-scheme: dark)",
        "scheme": "slate",
        "toggle": {"icon": "material/weather-sunny", "name": "Switch to light"},
    },
]


def dress(config: MkDocsConfig, site: MadeSite, masthead: Masthead, look: Look) -> None:
    """Batchleaf's templates go before the theme's, and the frame of every page learns what it needs.

    Fonts from another host are always off; light and dark are there unless the maker chose a palette.
    """
    if str(THEME) not in config.theme.dirs:
        config.theme.dirs.insert(0, str(THEME))
    config.theme["font"] = False
    if not config.theme.get("palette"):
        config.theme["palette"] = PALETTE
    nav = [{"title": title, "url": address, "section": section} for title, address, section in site.sections]
    config.extra["batchleaf"] = {
        "nav": nav,
        "more": [{"title": one.title, "url": one.address} for one in site.more],
        "feed": next((one.address for one in site.data if one.address == site_map.FEED), ""),
        "look": STYLE_SHEET if look != STANDARD else "",
        "licence": masthead.licence and {"name": masthead.licence.name, "deed": masthead.licence.deed},
    }


def _front_matter(page: MadePage) -> str:
    meta = {"title": page.title, "section": page.section, "description": page.description, **page.meta}
    # JSON is YAML, with every text in quotes.
    return f"---\n{json.dumps(meta)}\n---\n"


def files_of(site: MadeSite, look: Look, config: MkDocsConfig) -> list[File]:
    """Pages, which MkDocs frames, and all that lies beside them as it is."""
    pages = [
        File.generated(
            config,
            site_map.source(page.address),
            content=_front_matter(page),
            inclusion=InclusionLevel.NOT_IN_NAV,
        )
        for page in site.pages
    ]
    data = [_data(one, config) for one in site.data]
    photos = [
        File.generated(config, f"{site_map.PHOTOS}{photo.name}", abs_src_path=str(photo.path))
        for photo in site.photos
    ]
    chosen = [File.generated(config, STYLE_SHEET, content=look_style(look))] if look != STANDARD else []
    return [*pages, *data, *photos, *chosen]


def _data(one: MadeFile, config: MkDocsConfig) -> File:
    if isinstance(one.text, Path):
        return File.generated(config, one.address, abs_src_path=str(one.text))
    # As bytes, since text would get the line ends of the machine.
    return File.generated(config, one.address, content=one.text.encode())
