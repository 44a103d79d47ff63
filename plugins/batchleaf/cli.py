"""The command ``batchleaf``: the same functions without a browser."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import ConfigurationError

from batchleaf.build import build_aside
from batchleaf.measure.errors import MeasureError
from batchleaf.plugin import BatchleafPlugin, projects_folder
from batchleaf.telling import told, told_in_short
from batchleaf.workflow import read_and_work_out


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    asked = _parser().parse_args(arguments)
    config_file = Path(asked.archive) / "mkdocs.yml"
    if not config_file.is_file():
        print(f"There is no mkdocs.yml in {asked.archive}; name the archive’s folder.", file=sys.stderr)
        return 2
    match asked.command:
        case "check":
            return check(config_file)
        case _:
            return build_aside(config_file, config_file.resolve().parent / "site")


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="batchleaf", description="A page for every batch.")
    commands = parser.add_subparsers(dest="command", required=True)
    for name, about in (
        ("check", "read all records and tell what is wrong with them"),
        ("build", "make the site aside and put it in place when it is whole"),
    ):
        command = commands.add_parser(name, help=about, description=about)
        command.add_argument("--archive", default=".", help="folder with mkdocs.yml (default: this one)")
    return parser


def check(config_file: Path) -> int:
    """Print every problem of every record; 1 where one of them stops the build."""
    try:
        config = load_config(str(config_file))
        plugin = _plugin_of(config)
        worked = read_and_work_out(projects_folder(config, plugin.config), plugin.config.settings())
    except (ConfigurationError, MeasureError) as error:
        print(f"{config_file.name}: {error}", file=sys.stderr)
        return 2
    for problem in worked.problems:
        print(told(problem))
    if worked.errors:
        return 1
    print(told_in_short(worked.archive))
    return 0


def _plugin_of(config: MkDocsConfig) -> BatchleafPlugin:
    found = config.plugins.get("batchleaf")
    if not isinstance(found, BatchleafPlugin):
        raise ConfigurationError("the plugin batchleaf is not in its list of plugins")
    return found
