"""The archive of marks with texts that mean harm in place of its words, and the same with plain ones.

Marks that are addresses, or name what another record has, stay as they are; every other
one is a word of the maker's, whichever field it stands in, and a text goes before it.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from typing import Any, Final

import yaml

from public.marked import MARK, STATUSES, lay_out
from records.seeds import tree_in

PUBLISHED: Final = ("cut", "made")
HOST: Final = "hit.example.org"
"""A host that nobody asks unless a text was taken for markup."""

TAGS: Final = "\"'><img src=x onerror=__hit=1><svg/onload=__hit=2></textarea></title></style>"
SCRIPT: Final = "</script><script>__hit=3</script><!--<script>"
MARKDOWN: Final = f"[a](javascript:__hit=4)![b](//{HOST}/p.png)<javascript:__hit=4>**b**&#60;i&#62;"
TEMPLATES: Final = "{{7*7}}{% raw %}${__hit=5}`;__hit=6//\\\"\u2028\u2029'-__hit=7-']]>&hit;"
SHEET: Final = (
    *("=cmd|' /C calc'!A0", "@SUM(1+1)", "+1+1", "-1-1", "\uff1d1+1"),
    *("javascript:__hit=8", "data:text/html;base64;PHNjcmlwdD4=", "vbscript:__hit"),
)
"""What does harm where a cell begins with it (OWASP, “CSV Injection”), or an address."""
SHORT: Final = "<svg/onload=h()>"
"""For fields that take forty letters."""


@dataclass(frozen=True, slots=True)
class Words:
    """What goes before each word of the maker's, by the number of the word, and whether it is to be short."""

    of: Callable[[int, bool], str]


PLAIN: Final = Words(lambda _, __: "")


def harmful(*texts: str) -> Words:
    """``texts`` in one, each time after another beginning of :data:`SHEET`."""
    return Words(lambda number, short: SHORT if short else SHEET[number % len(SHEET)] + "".join(texts))


def lay_out_with(words: Words, root: Path, batches: Sequence[str] = STATUSES) -> Path:
    """Write the archive below ``root`` with these of its batches; those that are made are published."""
    lay_out(root)
    for status in STATUSES:
        folder = root / "projects" / f"{MARK}-{status}"
        if status not in batches:
            shutil.rmtree(folder)
        elif status in PUBLISHED:
            record = folder / "project.yml"
            text = record.read_text("utf-8").replace(f"status: {status}", "status: published")
            record.write_text(text, "utf-8")
    spoilt = _Spoilt(words)
    for path in sorted((root / "projects").rglob("*.yml")):
        tree: Any = spoilt.tree(tree_in(path.read_bytes()))
        path.write_text(yaml.safe_dump(tree, sort_keys=False, width=10_000), "utf-8")
    for path in sorted((root / "projects").rglob("notes.md")):
        path.write_text(spoilt.text(path.read_text("utf-8"), short=False), "utf-8")
    return root


@dataclass
class _Spoilt:
    words: Words

    def __post_init__(self) -> None:
        self._numbers: dict[str, int] = {}
        self._next = count()

    def tree(self, tree: Any, key: str = "") -> Any:
        """The record with texts before the maker's words, in keys as in values."""
        match tree:
            case dict():
                return {self.text(name, short=False): self.tree(value, name) for name, value in tree.items()}
            case list():
                return [self.tree(item, key) for item in tree]
            case _:
                return self.text(tree, short=key == "occasion")

    def text(self, text: str, *, short: bool) -> str:
        """Each word gets the same text before it wherever it stands."""
        return WORD.sub(lambda found: self._before(found[0], short=short) + found[0], text)

    def _before(self, word: str, *, short: bool) -> str:
        number = self._numbers.setdefault(word.lower(), next(self._next))
        return self.words.of(number, short)


_NAMES: Final = (
    *("card", "tape", "foam", "bag", "unused", "ribbon", "glue", "star", "trimmer", "hole", "stamps", "dies"),
    *("series", "design", "photo.jpg", "role", "made", "uncle", "idea", "planned", "cut"),
    *("unit", "units"),
)
"""What must be an address, or a single word of letters."""
WORD: Final = re.compile(
    rf"(?<![\w/.-]){MARK}-(?!(?:{'|'.join(map(re.escape, _NAMES))})(?![\w-]))(?!old-)[a-z-]*[a-z]",
    re.IGNORECASE,
)


def words_of(text: str) -> set[str]:
    """The maker's words in a text, in small letters."""
    return {word.lower() for word in WORD.findall(text)}
