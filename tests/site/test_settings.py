"""A slip in the plugin's settings is told in a maker's sentence, whatever is typed."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from batchleaf.cli import main
from batchleaf.plugin import BatchleafConfig
from batchleaf.writing.archive import start_archive

KEYS = ", ".join(key for key, _ in BatchleafConfig._schema if key != "enabled")


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive."""
    start_archive(tmp_path / "paper")
    return tmp_path / "paper"


def set_to(archive: Path, *lines: str) -> None:
    """Write the settings of the plugin anew."""
    config = archive / "mkdocs.yml"
    before = config.read_text(encoding="utf-8").partition("  - batchleaf:\n")[0]
    below = "".join(f"      {line}\n" for line in lines)
    config.write_text(f"{before}  - batchleaf:\n{below}", encoding="utf-8")


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("unit: inch", "“inch” is no unit; write mm, cm or in"),
        ("unit: 5", "“5” is no unit; write mm, cm or in"),
        ("unit: [mm, in]", "“unit” takes one value, and a list stands here"),
        ("unit: {mm: in}", "“unit” takes one value, and a group of keys stands here"),
        ("cost: fifo", "“fifo” is no choice for cost; write average or oldest first"),
        ("currency: GOLD", "“GOLD” is no currency; write a code of ISO 4217 such as EUR or USD"),
        ("currency: no", "“no” is no currency; write a code of ISO 4217 such as EUR or USD"),
        ("projects: [a, b]", "“projects” takes one value, and a list stands here"),
        ("as_of: 30.9.2026", "“30.9.2026” is not a date; write the year first, like 2026-03-14"),
        ("as_of: 2026-09-31", "a value in it cannot be read: day is out of range for month"),
        ('as_of: "2026-09-31"', "“2026-09-31” is not a day of the calendar"),
        ("as_of: [2026-09-30]", "“as_of” takes one value, and a list stands here"),
        ("least_kept: small", "“small” is not a size; write two lengths with x between, like 44 x 70"),
        (
            "licence: all mine",
            "“all mine” is no licence of Creative Commons; write its short name, like CC-BY-4.0 or CC0-1.0,"
            " or leave the setting out",
        ),
        ("licence: [CC-BY-4.0]", "“licence” takes one value, and a list stands here"),
        (
            "video_text: short",
            "“short” is no length of a text; write how many characters it may have, at least 500",
        ),
        ("video_text: 499", "“499” is no length of a text; write how many characters it may have, at least 500"),
        ("video_text: yes", "“yes” is no length of a text; write how many characters it may have, at least 500"),
        ("ink: red", "“red” is not a colour; write # and six figures, like #c3d6cf, in quotes"),
        ("ink: #1d2631", '“ink” is empty; write it in quotes, like "#1d2631": # begins a remark'),
        (
            'accent: "#c86464"',
            "the accent “#c86464” is hard to read on the ground “#f2f1ea”: its contrast is 3.3 to 1, "
            "and text needs 4.5 (WCAG 2.2); “#a85454” would do",
        ),
        ("curency: USD", "“curency” is no setting of batchleaf; did you mean “currency”?"),
        ("zebra: 1", f"“zebra” is no setting of batchleaf; the settings are {KEYS}"),
    ],
)
def test_a_wrong_setting_is_one_sentence(
    archive: Path, capsys: pytest.CaptureFixture[str], line: str, told: str
) -> None:
    """It says what was read and what to write."""
    set_to(archive, line)
    assert main(["check", "--archive", str(archive)]) == 2
    assert capsys.readouterr().err == f"mkdocs.yml: {told}\n"


TWO = (
    "mkdocs.yml: “inch” is no unit; write mm, cm or in\n"
    "mkdocs.yml: “US$” is no currency; write a code of ISO 4217 such as EUR or USD\n"
)


def test_all_wrong_settings_are_told_at_once(archive: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """Check and build say the same, and nothing of the programs below."""
    set_to(archive, "unit: inch", "currency: US$")
    assert main(["check", "--archive", str(archive)]) == 2
    assert capfd.readouterr().err == TWO
    assert main(["build", "--archive", str(archive)]) != 0
    told = capfd.readouterr().err
    assert TWO in told
    assert "Traceback" not in told
    assert "Config value" not in told


def test_serving_says_it_too(archive: Path) -> None:
    """And ends, since nothing can be shown."""
    set_to(archive, "unit: inch", "currency: US$")
    command = [sys.executable, "-m", "mkdocs", "serve", "--dev-addr", "127.0.0.1:0", "--config-file"]
    done = subprocess.run(
        [*command, str(archive / "mkdocs.yml")],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )
    assert done.returncode != 0
    assert TWO in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("lines", [(), ("unit:", "currency:", "projects:"), ("currency: usd",), ("enabled: true",), ("licence:", "video_text:")])
def test_what_is_left_out_is_the_default(archive: Path, lines: tuple[str, ...]) -> None:
    """An empty value is none, and small letters make no other currency."""
    set_to(archive, *lines)
    assert main(["check", "--archive", str(archive)]) == 0
