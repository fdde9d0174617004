"""A goal time as it is typed and written: ``1:24:00`` or ``38:30``."""

from __future__ import annotations

import re

from tercet.ui import words

_TIME = re.compile(r"\s*(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d)\s*")


def goal_of(text: str) -> float | None:
    """Seconds of a goal time; None if it is none."""
    found = _TIME.fullmatch(text)
    if found is None:
        return None
    seconds = int(found[1] or 0) * 3600 + int(found[2]) * 60 + int(found[3])
    return float(seconds) or None


def goal_words(seconds: float | None) -> str:
    """A goal time as its field shows it, or nothing."""
    return words.duration(seconds) if seconds else ""
