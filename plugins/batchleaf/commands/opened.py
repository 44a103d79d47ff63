"""An archive as commands find it: where its records are, and its settings."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import ConfigurationError

from batchleaf.core.batch_cutting import PLANNER, Planner
from batchleaf.facts import Settings
from batchleaf.kept_plans import keeping
from batchleaf.measure.errors import MeasureError
from batchleaf.plugin import BatchleafPlugin, cache_folder, masthead_of, projects_folder
from batchleaf.settings import FILE
from batchleaf.store import Store
from batchleaf.views.edition import Told
from batchleaf.views.masthead import Masthead
from batchleaf.workflow import Worked, read_and_work_out


class CannotOpenError(ValueError):
    """Why the settings of an archive cannot be read, as a sentence."""


@dataclass(frozen=True, slots=True)
class Opened:
    """The folder with ``mkdocs.yml``, and what stands in that file."""

    root: Path
    projects: Path
    pages: Path
    """Pages that the maker writes."""
    cache: Path
    settings: Settings
    masthead: Masthead
    told: Told
    """What the public edition may tell besides."""

    def planner(self) -> Planner:
        """Works plans out, or takes them from the store."""
        return keeping(PLANNER, Store(self.cache))

    def worked(self) -> Worked:
        """All records as they stand now, and their figures."""
        return read_and_work_out(self.projects, self.settings, self.planner())


def open_archive(root: Path) -> Opened:
    """The archive in ``root``. Raises :class:`CannotOpenError`."""
    try:
        config = load_config(str(root / "mkdocs.yml"))
        plugin = _plugin_of(config)
        settings = plugin.config.settings()
    except (ConfigurationError, MeasureError) as error:
        raise CannotOpenError(f"{FILE}: {error}") from None
    except ValueError as error:  # YAML takes 2026-09-31 for a date before anybody can look at it
        raise CannotOpenError(f"{FILE}: a value in it cannot be read: {error}") from None
    return Opened(
        root=root,
        projects=projects_folder(config, plugin.config),
        pages=Path(config.docs_dir),
        cache=cache_folder(config),
        settings=settings,
        masthead=masthead_of(config, plugin.config),
        told=plugin.config.told(),
    )


def _plugin_of(config: MkDocsConfig) -> BatchleafPlugin:
    plugin = config.plugins.get("batchleaf")
    if not isinstance(plugin, BatchleafPlugin):
        raise ConfigurationError("the plugin batchleaf is not in its list of plugins")
    return plugin
