"""The repetition book: fast metres by length of repetition, sets with their times and evenness."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np

from tercet.engine.judgement import Repetition
from tercet.engine.scale import Shade

#: Names of the lengths; the last has no end. [m]
LENGTHS = (100, 200, 300, 400)
CLASSES = ("to 100 m", "200 m", "300 m", "400 m", "longer")
#: What still counts as each length, for watches measure some metres more or less. [m] [guess]
_UP_TO = (125.0, 250.0, 350.0, 450.0)
#: Longer ones do not belong in a base block (common practice, no source).
LONG = len(LENGTHS)
#: From this many fast metres a week, more than this share of them in one run is pointed out
#: (common practice to spread them, no source; the numbers are guesses).
SPREAD_M, ONE_RUN = 2000.0, 0.75


@dataclass(frozen=True)
class Set:
    """One run's repetitions of one length."""

    length: int  # place in CLASSES
    metres: tuple[float, ...]  # of each repetition, in order [m]
    seconds: tuple[float, ...]  # of each repetition, in order [s]
    recovery_s: float | None  # median to the next one [s]

    @property
    def total_m(self) -> float:
        """Metres of all its repetitions."""
        return float(sum(self.metres))

    @property
    def unevenness(self) -> float:
        """Standard deviation of the speeds over their mean [unitless]; 0 for one alone."""
        speeds = np.array(self.metres) / np.array(self.seconds)
        return float(speeds.std() / speeds.mean())


def class_of(metres: float) -> int:
    """Place in :data:`CLASSES` of a repetition of so many metres."""
    return bisect_left(_UP_TO, metres)


def sets_of(repetitions: Sequence[Repetition]) -> tuple[Set, ...]:
    """Sort a run's fast repetitions into sets by length.

    Parameters
    ----------
    repetitions : sequence of Repetition
        Only hard ones of some metres are counted.

    Returns
    -------
    tuple of Set
        Shortest length first.
    """
    out = []
    fast = [r for r in repetitions if r.shade == Shade.HARD and r.distance_m > 0 < r.duration_s]
    places = [class_of(r.distance_m) for r in fast]
    for place in sorted(set(places)):
        inside = [r for r, at in zip(fast, places, strict=True) if at == place]
        rests = [r.recovery_s for r in inside if r.recovery_s is not None]
        out.append(
            Set(
                place,
                tuple(r.distance_m for r in inside),
                tuple(r.duration_s for r in inside),
                float(median(rests)) if rests else None,
            )
        )
    return tuple(out)


def metres_by_class(sets: Sequence[Set]) -> tuple[float, ...]:
    """Fast metres of each length. [m]"""
    return tuple(
        float(sum(item.total_m for item in sets if item.length == place))
        for place in range(len(CLASSES))
    )


def in_one_run(metres_by_run: Sequence[float]) -> float | None:
    """Share of a week's fast metres that were run in one run, where that is worth a word.

    Parameters
    ----------
    metres_by_run : sequence of float
        Fast metres of each run of the week. [m]

    Returns
    -------
    float or None
        None below 2000 m a week, or where no run has more than three quarters of them.
    """
    total = sum(metres_by_run)
    if total < SPREAD_M:
        return None
    share = max(metres_by_run) / total
    return share if share > ONE_RUN else None
