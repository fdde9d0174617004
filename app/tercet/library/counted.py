"""How the totals of a stretch of days came about: runs by what judged them, and in how much doubt.

Sessions are counted beside time and metres as coaches and papers do: one shade a session, by its
work (:func:`tercet.engine.load.session_shade`).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from tercet.engine import load
from tercet.language import mark
from tercet.library.held import HeldRuns
from tercet.library.views import BlockView, SessionView
from tercet.store import season_queries
from tercet.store.database import Store

Counts = tuple[int, int, int]

#: Why time, distance and sessions give three answers.
DIFFER = mark(
    "The three counts differ because a session counts whole by its work though most of its "
    "minutes are easy, and because faster running covers more ground in a minute."
)


@dataclass(frozen=True)
class Behind:
    """What stands behind a total; numbers of runs where nothing else is said.

    ``low`` and ``high`` are the ends of the runs' 90 % intervals added up [s]: easy, moderate,
    hard of the ``ranged`` runs that have one. Added ends hold even if all runs err alike.
    """

    runs: int = 0
    both: int = 0  # by pace and heart rate
    pace: int = 0  # by pace alone
    power: int = 0  # by running power, without a pace
    heart: int = 0  # by heart rate alone
    words: int = 0  # by what was written
    unjudged: int = 0  # nothing of them
    unjudged_s: float = 0.0  # of all runs [s]
    said: int = 0  # with a stretch that the runner spoke for
    known: int = 0  # judged by thresholds
    estimated: int = 0  # of these by thresholds that nobody has confirmed
    ranged: int = 0
    low: tuple[float, float, float] = (0.0, 0.0, 0.0)
    high: tuple[float, float, float] = (0.0, 0.0, 0.0)


def sessions(runs: Iterable[SessionView]) -> Counts:
    """Sessions that count as easy, moderate and hard; those without a judged second count not."""
    counts = [0, 0, 0]
    for run in runs:
        easy, moderate, hard = run.seconds[:3]
        if run.sport == "running" and easy + moderate + hard > 0:
            counts[load.session_shade(moderate, hard)] += 1
    return counts[0], counts[1], counts[2]


def sessions_of(block: BlockView) -> Counts:
    """The same of a block."""
    return sessions(run for week in block.weeks for day in week.days for run in day)


def behind(store: Store, first: date, last: date) -> Behind:
    """What stands behind the total of some days, both included."""
    held = _told.of(store)
    low, high = first.isoformat(), last.isoformat()
    inside = [told for day, told in held.values() if low <= day <= high]
    if not inside:
        return Behind()
    sums = [math.fsum(column) for column in zip(*inside, strict=True)]
    named = dict(zip(_COUNTS, map(int, sums), strict=False))
    ends = sums[len(_COUNTS) + 1 :]
    return Behind(
        **named,
        unjudged_s=sums[len(_COUNTS)],
        low=(ends[0], ends[1], ends[2]),
        high=(ends[3], ends[4], ends[5]),
    )


def _read(store: Store, ids: Sequence[int] | None) -> dict[int, tuple[str, tuple[float, ...]]]:
    return {
        row["id"]: (
            row["day"],
            tuple(row[name] or 0.0 for name in (*_COUNTS, "unjudged_s", *_ENDS)),
        )
        for row in season_queries.behind(store, ids)
    }


_COUNTS = (
    "runs", "both", "pace", "power", "heart", "words", "unjudged", "said", "known", "estimated",
    "ranged",
)  # fmt: skip
_ENDS = ("low_e", "low_m", "low_h", "high_e", "high_m", "high_h")
_told = HeldRuns(_read, ("threshold", "correction"))
