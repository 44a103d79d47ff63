"""Other processes that help to make batches, so that all cores have something to do.

A helper is started with its own command line and told what to make through its input: unlike a copy of
this process it has none of its threads, and unlike one of the standard pools it never runs the program
that was started again.
"""

from __future__ import annotations

import os
import pickle
import struct
import subprocess
import sys
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from pathlib import Path
from queue import SimpleQueue
from typing import IO, Any, Final, Self

AT_ONCE: Final = 8
"""So many are handed over together."""
_LENGTH: Final = struct.Struct(">Q")


class NoHelpError(Exception):
    """A helper could not be started, or ended before its time."""


class Helpers:
    """A process for each core, begun with the first question; ``folder``: the store they work with."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._open = ExitStack()
        self._idle: SimpleQueue[_Helper] | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._open.close()

    def made(self, asked: Sequence[object]) -> list[str]:
        """The answers, in the order of what was asked. Raises :class:`NoHelpError`."""
        cores = os.cpu_count() or 1
        idle = self._idle = self._idle or self._begun(cores)
        groups = [asked[at : at + AT_ONCE] for at in range(0, len(asked), AT_ONCE)]

        def answer(group: Sequence[object]) -> list[str]:
            helper = idle.get()
            try:
                return helper.ask(group)
            finally:
                idle.put(helper)

        with ThreadPoolExecutor(cores) as threads:
            return [one for answers in threads.map(answer, groups) for one in answers]

    def _begun(self, cores: int) -> SimpleQueue[_Helper]:
        idle: SimpleQueue[_Helper] = SimpleQueue()
        for _ in range(cores):
            idle.put(self._open.enter_context(_Helper(self._folder)))
        return idle


class _Helper:
    """One process."""

    def __init__(self, folder: Path) -> None:
        command = [sys.executable, "-m", "batchleaf.kept_batches", str(folder)]
        # It finds the same house, wherever this process found it.
        house = os.pathsep.join((str(Path(__file__).parents[1]), *filter(None, sys.path)))
        environment = {**os.environ, "PYTHONPATH": house}
        try:
            self._process = subprocess.Popen(
                command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=environment
            )
        except OSError as error:
            raise NoHelpError(str(error)) from error

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        with self._process as process:
            process.communicate()

    def ask(self, asked: Sequence[object]) -> list[str]:
        """What is made of each."""
        asks, answered = self._process.stdin, self._process.stdout
        if asks is None or answered is None:
            raise NoHelpError("a helper has no pipe")
        try:
            send(asks, asked)
            answers: list[str] = receive(answered)
        except (OSError, EOFError) as error:
            raise NoHelpError("a helper ended before its time") from error
        return answers


def send(to: IO[bytes], thing: object) -> None:
    """Hand ``thing`` over to the process at the other end."""
    content = pickle.dumps(thing, pickle.HIGHEST_PROTOCOL)
    to.write(_LENGTH.pack(len(content)))
    to.write(content)
    to.flush()


def receive(of: IO[bytes]) -> Any:
    """What our own process at the other end hands over. Raises :class:`EOFError` where it has ended."""
    head = of.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        raise EOFError
    (length,) = _LENGTH.unpack(head)
    content = of.read(length)
    if len(content) < length:
        raise EOFError
    return pickle.loads(content)  # noqa: S301  a pipe between two processes of one build
