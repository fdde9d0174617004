"""A stretch of the season's days: what was run in it by shade, and how much of it was easy."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date

from tercet.engine.shades import easy_share
from tercet.library.counted import Counts
from tercet.library.counted import sessions as sessions_that_count
from tercet.library.views import ZERO, Five, SeasonView


@dataclass(frozen=True)
class Stretch:
    """Sums of a stretch; ``seconds`` and ``metres`` by shade in the order of Shade."""

    first: date
    last: date  # included
    runs: int
    seconds: Five
    metres: Five
    share: float | None  # easy of judged running time; None where none was run
    estimated: bool
    sessions: Counts = (0, 0, 0)  # that count as easy, moderate and hard

    @property
    def weeks(self) -> int:
        """Whole weeks it holds."""
        return ((self.last - self.first).days + 1) // 7


def stretch(view: SeasonView, first: date, last: date) -> Stretch:
    """Sum the runs of a season from one day to another, both included.

    Parameters
    ----------
    view : SeasonView
    first, last : date
        In either order.
    """
    first, last = min(first, last), max(first, last)
    runs = [
        session
        for block in view.blocks
        if block.start <= last and block.end >= first
        for week in block.weeks
        for day in week.days
        for session in day
        if session.sport == "running" and first <= session.day <= last
    ]
    seconds = _sum([session.seconds for session in runs])
    return Stretch(
        first,
        last,
        len(runs),
        seconds,
        _sum([session.metres for session in runs]),
        easy_share(seconds),
        any(session.estimated for session in runs),
        sessions_that_count(runs),
    )


def _sum(parts: list[Five]) -> Five:
    if not parts:
        return ZERO
    easy, moderate, hard, still, unjudged = map(math.fsum, zip(*parts, strict=True))
    return easy, moderate, hard, still, unjudged
