"""Hard efforts in a run: one even stretch, far faster than all else, with its ends found."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import moving_mean
from tercet.engine.scale import Floats

#: Stretches of these lengths are tried, each 16 % longer than the one before. [s]
TRIED_S = tuple(round(110 * 1.16**k) for k in range(17))
#: Efforts last from about 2 to 20 minutes. [s]
SHORTEST_S, LONGEST_S = 105, 1210
#: The slowest quarter of an effort keeps this share of its mean speed. [trial]
EVEN = 0.92
#: An effort ends where speed falls below this share of its mean. [trial]
EDGE = 0.9
#: Speed is calmed over so many seconds to find the ends, which costs half of them. [s]
CALM_S = 9
#: Elsewhere in the run no stretch of half its length came nearer than this share: repetitions
#: come in sets, all-out efforts alone. [trial]
ALONE = 0.8


class Effort(NamedTuple):
    """One hard effort."""

    seconds: float
    metres: float  # level-equivalent
    elsewhere: float  # fastest of the rest of the run, as a share of its speed
    heart_rate: float  # at its end, 0 without [beats/min]


def find_efforts(
    level: Floats, running: NDArray[np.bool_], heart: Floats, *, alone: bool = True
) -> tuple[Effort, ...]:
    """Find the hard efforts of a run.

    Parameters
    ----------
    level : ndarray, shape (n,)
        Level-equivalent speed, NaN where not known. [m/s]
    running : ndarray of bool, shape (n,)
    heart : ndarray, shape (n,)
        [beats/min], NaN where not known.
    alone : bool
        Whether to leave out those with others nearly as fast in the run, as in sets of
        repetitions; a visit with several trials is read without.

    Returns
    -------
    tuple of Effort
        Longest first. Whether one was hard is for the caller to say, who knows the runner.
    """
    speed = np.where(running, np.nan_to_num(level), 0.0)
    n = len(speed)
    covered = np.concatenate(([0.0], np.cumsum(speed)))
    calm = moving_mean(speed, CALM_S) if n > CALM_S else speed
    found: list[tuple[int, int, Effort]] = []
    for length in reversed(TRIED_S):
        if length > n:
            continue
        begin = int((covered[length:] - covered[:-length]).argmax())
        marks = begin + np.linspace(0, length, 5).astype(np.int64)
        quarters = np.diff(covered[marks]) / np.diff(marks)
        mean = float(covered[begin + length] - covered[begin]) / length
        if mean <= 0 or quarters.min() < EVEN * mean:
            continue
        slow = np.flatnonzero(calm < EDGE * mean)
        place = int(np.searchsorted(slow, begin + length // 2))
        first = int(slow[place - 1]) + 1 if place > 0 else 0
        last = int(slow[place]) if place < len(slow) else n
        if not 0.9 * length <= last - first <= 1.3 * length:
            continue
        if any(first < b and a < last for a, b, _ in found):
            continue
        elsewhere = _elsewhere(covered, first, last)
        first, last = max(0, first - CALM_S // 3), min(n, last + CALM_S // 3)
        metres = float(covered[last] - covered[first])
        share = elsewhere * (last - first) / metres
        if SHORTEST_S <= last - first <= LONGEST_S and (share < ALONE or not alone):
            end = heart[max(first, last - 30) : last]
            beats = float(np.nanmean(end)) if np.isfinite(end).any() else 0.0
            effort = Effort(float(last - first), round(metres, 1), round(share, 3), round(beats, 1))
            found.append((first, last, effort))
    return tuple(effort for _, _, effort in found)


def _elsewhere(covered: Floats, first: int, last: int) -> float:
    """Fastest stretch of half the length before or after. [m/s]"""
    half = max(60, (last - first) // 2)
    if half >= len(covered):
        return 0.0
    stretches = covered[half:] - covered[:-half]
    before = stretches[: max(0, first - half)].max(initial=0.0)
    return float(max(before, stretches[last:].max(initial=0.0))) / half
