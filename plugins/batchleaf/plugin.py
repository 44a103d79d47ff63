"""Batchleaf inside MkDocs: hooks that translate, and nothing else.

All reading, working out and picture making happens in ``on_config``, before
MkDocs clears anything, so that a faulty record leaves the old site alone.
"""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Literal

from jinja2 import Environment
from mkdocs.config import config_options as c
from mkdocs.config.base import ConfigErrors, ConfigWarnings
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc
from mkdocs.utils.templates import TemplateContext

from batchleaf.core.figures import Figures, with_the_drawer
from batchleaf.core.remembered import Remembered
from batchleaf.edition import Edition, edition_in
from batchleaf.facts import CostFlow, Problem, Settings, Weight
from batchleaf.facts.archive import DISCLOSURE, VIDEO_TEXT
from batchleaf.handing_over import dress, files_of
from batchleaf.kept_batches import Making, making
from batchleaf.made_batch import Text, said
from batchleaf.made_site import NOTHING_MADE, MadeSite, made_site, problem_site
from batchleaf.measure.colours import Colour
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import WRITTEN, Unit, parse_size
from batchleaf.measure.licences import Licence
from batchleaf.measure.money import Currency
from batchleaf.own_files import bare_pictures, loops_in, without_odd_files
from batchleaf.render.html import toc_tokens
from batchleaf.render.look import STANDARD, Look
from batchleaf.searching import Searching
from batchleaf.settings import (
    FILE,
    Characters,
    ColourOfLook,
    CurrencyCode,
    DayOf,
    LicenceOf,
    SheetsOf,
    SizeOf,
    ToldSettings,
    sheets_named,
)
from batchleaf.store import CannotKeepError, Store
from batchleaf.telling import told
from batchleaf.views import site_map
from batchleaf.views.edition import Told, as_told, handed_out, public_edition
from batchleaf.views.masthead import Masthead
from batchleaf.views.video_text import told_of_length, video_texts
from batchleaf.workflow import read_and_work_out

log = get_plugin_logger("batchleaf")


class BatchleafConfig(ToldSettings):
    """What a maker may set in ``mkdocs.yml``; the bare name of the plugin is enough."""

    projects = c.Type(str, default="projects")
    unit = c.Choice([unit.value for unit in WRITTEN], default=Unit.MM.value)
    currency = CurrencyCode(str, default="EUR")
    cost = c.Choice([flow.value for flow in CostFlow], default=CostFlow.AVERAGE.value)
    as_of = DayOf()
    least_kept = SizeOf(str, default="20 x 20 mm")
    disclosure = c.Type(str, default=DISCLOSURE)
    other_sheets = SheetsOf(str, default="A4, letter, 12 x 12 in, 30.5 x 30.5 cm")
    video_text = Characters(default=VIDEO_TEXT)
    licence = LicenceOf()
    ground = ColourOfLook(str, default=str(STANDARD.ground))
    ink = ColourOfLook(str, default=str(STANDARD.ink))
    accent = ColourOfLook(str, default=str(STANDARD.accent))
    public_cost = c.Type(bool, default=True)
    public_supplies = c.Type(bool, default=True)

    def validate(self) -> tuple[ConfigErrors, ConfigWarnings]:
        """Colours that cannot be read on each other are mistakes as well."""
        told = super().validate()
        self.mistakes += tuple(self.look().mistakes())
        return told

    def settings(self) -> Settings:
        """The settings as facts. Raises :class:`MeasureError` where one of them is wrong."""
        self.check()
        unit = Unit(self.unit)
        return Settings(
            unit=unit,
            currency=Currency.of(self.currency),
            cost_flow=CostFlow(self.cost),
            as_of=dt.date.fromisoformat(self.as_of) if self.as_of else None,
            least_kept=parse_size(self.least_kept, unit),
            disclosure=self.disclosure.strip() or DISCLOSURE,
            other_sheets=sheets_named(self.other_sheets, unit),
            video_text=self.video_text,
        )

    def look(self) -> Look:
        """The colours of the pages."""
        return Look(Colour.of(self.ground), Colour.of(self.ink), Colour.of(self.accent))

    def told(self) -> Told:
        """What the public edition may tell besides."""
        return Told(cost=self.public_cost, supplies=self.public_supplies)


def projects_folder(config: MkDocsConfig, plugin: BatchleafConfig) -> Path:
    """The folder of records, beside ``mkdocs.yml`` unless it is set otherwise."""
    return Path(config.config_file_path or ".").resolve().parent / plugin.projects


def cache_folder(config: MkDocsConfig) -> Path:
    """Where pictures and the like are kept, beside ``mkdocs.yml``."""
    return Path(config.config_file_path or ".").resolve().parent / ".cache" / "batchleaf"


class BatchleafPlugin(BasePlugin[BatchleafConfig]):
    """Reads the records, hands the pages to MkDocs."""

    def __init__(self) -> None:
        self._serving = False
        # The plugin outlives the rebuilds of a live server: only what changed is planned anew.
        self._making: dict[Path, Making] = {}
        self._bodies: dict[str, Text] = {}
        self._searching: Searching | None = None
        self._site = self._last_sound = NOTHING_MADE

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether somebody is watching: then a faulty record is shown, not raised."""
        self._serving = command == "serve"
        self._last_sound = NOTHING_MADE

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read, work out, make the pictures: all before MkDocs touches the old site."""
        if config.theme.name != "material":
            raise PluginError(
                "Batchleaf’s pages need the theme material; write in mkdocs.yml\ntheme:\n  name: material"
            )
        _refuse(loops_in(Path(config.docs_dir)), "These links cannot be followed")
        projects = projects_folder(config, self.config)
        config.watch.append(str(projects))
        masthead = masthead_of(config, self.config)
        with _cache_told():
            self._site = self._made(projects, cache_folder(config), masthead)
        self._bodies = {site_map.source(page.address): page.body for page in self._site.pages}
        dress(config, self._site, masthead, self.config.look())
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Hand the pages, data and photos over; no record as it is, wherever the maker keeps them."""
        for notice in without_odd_files(files, config):
            log.info(told(notice))
        records = projects_folder(config, self.config).resolve()
        for file in [one for one in files if _lies_in(one, records)]:
            files.remove(file)
        for file in files_of(self._site, self.config.look(), config):
            if existing := files.get_file_from_path(file.src_uri):
                log.info(f"{file.src_uri} is made from the records; your own page of that name is left out")
                files.remove(existing)
            files.append(file)
        if _edition() is Edition.PUBLIC:
            with _cache_told():
                _make_bare(files, config)
        return files

    @event_priority(-100)
    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment | None:
        """All plugins are ready, and pages are about to be written."""
        self._searching = Searching(config, Store(cache_folder(config)))
        return env

    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """The body of a page made from records, with its headings."""
        body = self._bodies.get(page.file.src_uri)
        if body is None:
            return html
        html = said(body)
        page.toc = get_toc(toc_tokens(html))
        return html

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """What no build has asked for in a long time leaves the cache."""
        Store(cache_folder(config)).sweep()

    @event_priority(100)
    def _before_the_search(
        self, context: TemplateContext, /, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext | None:
        """The search is spared what it is not to find, and what it knows."""
        if self._searching and page.file.src_uri in self._bodies:
            self._searching.before(page)
        return context

    @event_priority(-100)
    def _after_the_search(
        self, context: TemplateContext, /, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext | None:
        """Readers get the whole body."""
        if self._searching:
            self._searching.after(page)
        return context

    on_page_context = CombinedEvent(_before_the_search, _after_the_search)

    def _made(self, projects: Path, cache: Path, masthead: Masthead) -> MadeSite:
        try:
            settings = self.config.settings()
        except MeasureError as error:
            raise PluginError(f"{FILE}: {error}") from None
        edition = _edition()
        store = Store(cache)
        how = self._making.setdefault(cache, making(store, Remembered()))
        planner, remembered = how.planner, how.remembered
        worked = read_and_work_out(projects, settings, planner, remembered)
        for notice in worked.notices:
            log.info(told(notice))
        if worked.figures is None:
            return self._refused(worked.errors, worked.slugs)
        figures, tell = worked.figures, self.config.told()
        videos = video_texts(as_told(figures, tell, planner, remembered), masthead)
        for notice in told_of_length(videos, worked.archive.projects, settings.video_text):
            log.info(told(notice))
        hand_outs: Figures | None = None
        match edition:
            case Edition.PUBLIC:
                figures = public_edition(figures, tell, planner, remembered)
            case Edition.PRIVATE:
                # An address on the web can be guessed; so hand-outs lie on the maker's machine alone.
                hand_outs = handed_out(figures, tell, planner, remembered)
        figures = with_the_drawer(figures, planner)
        site, problems = made_site(figures, masthead, self.config.look(), store, hand_outs, videos, how)
        if store.damaged:
            log.info(f"{len(store.damaged)} damaged entries of {cache} were dropped and made again")
        if problems:
            return self._refused(problems, worked.slugs)
        self._last_sound = site
        return site

    def _refused(self, problems: tuple[Problem, ...], slugs: tuple[str, ...]) -> MadeSite:
        sentences = "\n".join(told(problem) for problem in problems)
        if self._serving:
            log.warning("The records cannot be read:\n%s", sentences)
            return problem_site(problems, slugs, self._last_sound)
        raise PluginError(f"The records cannot be read:\n{sentences}")


@contextmanager
def _cache_told() -> Iterator[None]:
    """A cache that cannot be written stops the build with a sentence."""
    try:
        yield
    except CannotKeepError as error:
        raise PluginError(str(error)) from None


def _make_bare(files: Files, config: MkDocsConfig) -> None:
    """The maker's own pictures say nothing besides; one that cannot be taken apart is not published."""
    problems = list(bare_pictures(files, config, Store(cache_folder(config))))
    for notice in (one for one in problems if one.weight is not Weight.ERROR):
        log.info(told(notice))
    _refuse((one for one in problems if one.weight is Weight.ERROR), "These pictures cannot be published")


def _refuse(problems: Iterable[Problem], why: str) -> None:
    if sentences := "\n".join(map(told, problems)):
        raise PluginError(f"{why}:\n{sentences}")


def _lies_in(file: File, folder: Path) -> bool:
    return file.abs_src_path is not None and Path(file.abs_src_path).resolve().is_relative_to(folder)


def _edition() -> Edition:
    try:
        return edition_in(os.environ)
    except ValueError as error:
        raise PluginError(str(error)) from None


def masthead_of(config: MkDocsConfig, plugin: BatchleafConfig) -> Masthead:
    """What the site is called, where it will stand, and under which licence."""
    licence = Licence.of(plugin.licence) if plugin.licence else None
    return Masthead(config.site_name, config.site_url or "", config.site_author or "", licence)
