"""How bench work is said: ``Round the top corners of A``, ``about 25 min``."""

from __future__ import annotations

from typing import Final

from batchleaf.core.bench.times import STROKE_SECONDS
from batchleaf.facts import CORNERS, Wait, Waiting, Work, WorkKind
from batchleaf.measure.display import NBSP, show_length
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.lengths import Unit
from batchleaf.views.words import capitalised, listed

STEP: Final = 5
"""An estimate is told in steps of so many minutes, rounded up."""
_ALL: Final = 4


def work_in_words(work: Work, unit: Unit) -> str:
    """``Score B at 30 mm across``; the letters of its parts as they follow one another."""
    letters = listed(work.letters)
    match work.kind:
        case WorkKind.ROUND if CORNERS[work.where] == _ALL:
            return f"Round the corners of {letters}"
        case WorkKind.ROUND:
            corners = "corner" if CORNERS[work.where] == 1 else "corners"
            return f"Round the {work.where} {corners} of {letters}"
        case WorkKind.SCORE if work.at:
            at = listed([show_length(one, unit) for one in work.at])
            return f"Score {letters} at {at}{NBSP}{unit.word} {'down' if work.runs_down else 'across'}"
    return f"{capitalised(work.kind.value)} {letters}{f', {work.where}' if work.where else ''}"


def wait_in_words(wait: Wait | None) -> str:
    """``dry 20 min``."""
    return f"{wait.what}{NBSP}{show_minutes(wait.minutes)}" if wait else ""


def about_minutes(seconds: int) -> str:
    """``about 25 min``: in steps, so that nobody takes it for a measurement."""
    minutes = -(-seconds // 60)
    return f"about {show_minutes(-(-minutes // STEP) * STEP)}"


def waiting_in_words(waits: tuple[Wait, ...]) -> str:
    """``20 min of drying``, ``30 min of waiting``, or both."""
    said = []
    for what, called in ((Waiting.DRY, "drying"), (Waiting.WAIT, "waiting")):
        minutes = sum(wait.minutes for wait in waits if wait.what is what)
        if minutes:
            said.append(f"{show_minutes(minutes)} of {called}")
    return listed(said)


def stroke_seconds_in_words() -> str:
    """``5 seconds to punch or round, 8 to fold``: the figures of the house, the shortest first."""
    alike: dict[int, list[str]] = {}
    for kind, seconds in STROKE_SECONDS.items():
        alike.setdefault(seconds, []).append(kind.value)
    said = [f"{seconds} to {listed(works, 'or')}" for seconds, works in sorted(alike.items())]
    return listed([said[0].replace(" to ", " seconds to "), *said[1:]])
