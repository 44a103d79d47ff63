"""The licences of all packages that a site needs, from what they say of themselves, as a table.

    .venv/bin/python tools/licences.py          # writes LICENCES.md anew

The packages are those of ``locks/site.txt``; what each says stands in its installed
metadata (Core Metadata 2.4: License-Expression, else License, else its classifiers).
"""

from __future__ import annotations

import re
from importlib.metadata import PackageMetadata, files, metadata
from pathlib import Path
from typing import Final

ROOT: Final = Path(__file__).resolve().parents[1]
LOCK: Final = ROOT / "locks" / "site.txt"
PAGE: Final = ROOT / "LICENCES.md"
PERMISSIVE: Final = frozenset(
    {
        "0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "CC0-1.0", "MIT", "MIT-CMU", "PSF-2.0",
        "public domain", "Zlib",
    }
)  # fmt: skip
"""Identifiers of the SPDX licence list, and one that has none."""
WEAK_COPYLEFT: Final = frozenset({"MPL-2.0"})
"""Whoever changes the package itself has to share the change; what only uses it is not touched."""
_SPELT: Final = {
    "Apache Software License": "Apache-2.0",
    "MIT License": "MIT",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
    "Public Domain": "public domain",
}
_HEAD: Final = """\
# Licences of what Batchleaf needs

Batchleaf itself is under the [MIT licence](LICENSE). A site is made with the packages below, those of
`locks/site.txt`; none is part of Batchleaf, and pip fetches each from its own authors. The table is
written by `tools/licences.py` from what the packages say of themselves.

Wheels with compiled parts hold libraries with notices of their own, which lie in the package’s `dist-info`
folder: that of numpy for Linux, for one, has the runtime of GCC’s Fortran, GPL-3.0-or-later with the
exception that lets any program use it. A built site holds files of MkDocs, of Material for MkDocs and of
their scripts, all under permissive licences.

"""
_FOOT: Final = """
Weak copyleft (MPL-2.0): {weak}. Who changes one of these and passes it on shares the changed files; nothing
else follows from using them. None of the packages says that it is under a strong copyleft.
"""


def locked() -> tuple[str, ...]:
    """The names of all packages in the lock, each once."""
    names = re.findall(r"^([A-Za-z0-9._-]+)==", LOCK.read_text(encoding="utf-8"), re.MULTILINE)
    return tuple(dict.fromkeys(names))


def licence_of(name: str) -> str:
    """What an installed package says, as an expression of SPDX identifiers.

    Raises :class:`importlib.metadata.PackageNotFoundError`, and :class:`ValueError` where it says nothing.
    """
    about = metadata(name)
    if "License-Expression" in about:
        return about["License-Expression"]
    text = about["License"].strip() if "License" in about else ""
    short = _SPELT.get(text, text)
    if short in PERMISSIVE | WEAK_COPYLEFT:
        return short
    return _by_classifier(name, about)


def _by_classifier(name: str, about: PackageMetadata) -> str:
    for classifier in about.get_all("Classifier") or []:
        if classifier.startswith("License ::"):
            last = classifier.rpartition(" :: ")[2]
            return _bsd_of(name) if last == "BSD License" else _SPELT.get(last, last)
    raise ValueError(f"{name} does not say under which licence it is")


def _bsd_of(name: str) -> str:
    """The third clause forbids to use the names of its authors for praise."""
    texts = [file.read_text() for file in files(name) or () if "licen" in file.name.lower()]
    return "BSD-3-Clause" if "Neither the name" in " ".join("".join(texts).split()) else "BSD-2-Clause"


def identifiers_in(expression: str) -> frozenset[str]:
    """The licences that an expression names."""
    words = re.split(r"\s+(?:AND|OR)\s+", expression.replace("(", " ").replace(")", " ").strip())
    return frozenset(word.strip() for word in words)


def page() -> str:
    """The whole page."""
    licences = {name: licence_of(name) for name in locked()}
    rows = "".join(f"| {name} | {licence} |\n" for name, licence in licences.items())
    weak = [name for name, licence in licences.items() if identifiers_in(licence) & WEAK_COPYLEFT]
    foot = _FOOT.format(weak=", ".join(weak))
    return f"{_HEAD}| package | licence |\n| --- | --- |\n{rows}{foot}"


if __name__ == "__main__":
    PAGE.write_bytes(page().encode())
    print(f"Wrote {PAGE}")
