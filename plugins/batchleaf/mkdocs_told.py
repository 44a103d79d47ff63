"""``mkdocs``, which says in a sentence what it could not write."""

from __future__ import annotations

import sys

from mkdocs.__main__ import cli


def main() -> int:
    """Run MkDocs with the arguments of this process."""
    try:
        cli()
    except OSError as error:
        where = f" to {error.filename}" if error.filename else ""
        print(  # noqa: T201  as MkDocs tells what it meets
            f"Nothing more can be written{where}: {error.strerror or error}. "
            "Make room, or let this folder be written to, and build again.",
            file=sys.stderr,
        )
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
