"""Load and spacing: plain sums with a source each; none of them predicts an injury."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

#: A run longer than the longest of the days before by this share stands out [1]_ of
#: :func:`longer_than_before`, over so many days.
SPIKE, SPIKE_DAYS = 0.10, 30
#: A day counts as hard from so much hard running, or so much moderate and hard together. [s]
#: (this program's own; strides alone make no hard day)
HARD_DAY_S, WORK_DAY_S = 300.0, 1200.0
#: A session counts by its work: hard from so much hard, else moderate from so much moderate. [s]
HARD_SESSION_S, MODERATE_SESSION_S = 300.0, 600.0


@dataclass(frozen=True)
class WeekLoad:
    """A week's session-RPE load; monotony and strain are None where they are not defined."""

    total: float
    monotony: float | None
    strain: float | None


def session_load(effort: float, seconds: float) -> float:
    """Session-RPE load: effort on CR-10 times minutes [1]_.

    Parameters
    ----------
    effort : float
        As said by the runner, 0 to 10.
    seconds : float
        Length of the session. [s]

    References
    ----------
    .. [1] C. Foster et al., J. Strength Cond. Res. 15:109-115, 2001.
    """
    return effort * seconds / 60.0


def week_load(daily: ArrayLike) -> WeekLoad:
    """Monotony and strain of a week [1]_.

    Parameters
    ----------
    daily : array_like, shape (7,)
        Session-RPE load of each day, days off zero.

    Returns
    -------
    WeekLoad
        Monotony is mean over standard deviation (of the seven days themselves, not a sample;
        papers seldom say which), strain the sum times monotony. Seven equal days have none.

    Raises
    ------
    ValueError
        Unless there are seven finite loads, none negative.

    References
    ----------
    .. [1] C. Foster, Med. Sci. Sports Exerc. 30:1164-1168, 1998.
    """
    load = np.asarray(daily, dtype=np.float64)
    if load.shape != (7,) or not np.isfinite(load).all() or (load < 0).any():
        raise ValueError("give seven daily loads, none negative")
    total, spread = float(load.sum()), float(load.std())
    if spread <= 1e-9 * max(total, 1.0):
        return WeekLoad(total, None, None)
    monotony = float(load.mean()) / spread
    return WeekLoad(total, monotony, total * monotony)


def three_zone_load(seconds: ArrayLike) -> float:
    """Minutes easy, moderate, hard weighed 1, 2, 3 [1]_.

    Parameters
    ----------
    seconds : array_like, shape (3,)
        Easy, moderate, hard. [s]

    References
    ----------
    .. [1] A. Lucia et al., Med. Sci. Sports Exerc. 35:872-878, 2003 (weights from memory).
    """
    return float(np.asarray(seconds, dtype=np.float64) @ np.array([1.0, 2.0, 3.0]) / 60.0)


def longer_than_before(days: Sequence[int], metres: ArrayLike) -> Floats:
    """How much longer each run is than the longest of the 30 days before it [1]_.

    Parameters
    ----------
    days : sequence of int, length n
        Day number of each run, not falling.
    metres : array_like, shape (n,)
        Distance of each run. [m]

    Returns
    -------
    ndarray of float64, shape (n,)
        0.12 for 12 % longer, negative for shorter; NaN without a run in the 30 days before.

    References
    ----------
    .. [1] J. Schuster Brandt Frandsen et al., Br. J. Sports Med. 59:1203-1210, 2025: 5205
       runners; above 10 % more injuries were reported. Observed, not tested.
    """
    day = np.asarray(days, dtype=np.int64)
    distance = np.asarray(metres, dtype=np.float64)
    out = np.full(len(day), np.nan)
    low = np.searchsorted(day, day - SPIKE_DAYS, "left").tolist()
    ran = distance.tolist()
    for k, first in enumerate(low):
        longest = max(ran[first:k], default=0.0)
        if longest > 0:
            out[k] = ran[k] / longest - 1.0
    return out


def spike_size(share: float) -> str:
    """Name how far a run exceeds the longest of 30 days: "", "small", "moderate" or "large".

    Parameters
    ----------
    share : float
        From :func:`longer_than_before`; more than 0.10, 0.30 and 1.00 are the borders there.
    """
    if not share > SPIKE + 1e-9:
        return ""
    return "small" if share <= 0.30 + 1e-9 else "moderate" if share <= 1.0 + 1e-9 else "large"


def hard_days(days: Sequence[int], seconds: ArrayLike) -> list[int]:
    """Days that count as hard, in order.

    Parameters
    ----------
    days : sequence of int, length n
        Day number of each run.
    seconds : array_like, shape (n, 3) or wider
        Easy, moderate, hard of each run. [s]
    """
    table = np.asarray(seconds, dtype=np.float64)
    if not len(days):
        return []
    day, at = np.unique(np.asarray(days, dtype=np.int64), return_inverse=True)
    hard = np.bincount(at, weights=table[:, 2], minlength=len(day))
    work = hard + np.bincount(at, weights=table[:, 1], minlength=len(day))
    found: list[int] = day[(hard >= HARD_DAY_S) | (work >= WORK_DAY_S)].tolist()
    return found


def too_close(hard: Sequence[int], spacing: int) -> list[tuple[int, int]]:
    """Pairs of neighbouring hard days that lie closer than the spacing.

    Parameters
    ----------
    hard : sequence of int
        Day numbers, rising.
    spacing : int
        Least number of days from one hard day to the next; 2 leaves one day between.
    """
    return [(a, b) for a, b in pairwise(hard) if b - a < spacing]


def longest_without_rest(days: Sequence[int]) -> tuple[int, int]:
    """The longest row of days with running: its last day and its length; (0, 0) without any."""
    best, length, before = (0, 0), 0, -10
    for day in sorted(set(days)):
        length = length + 1 if day == before + 1 else 1
        before = day
        if length > best[1]:
            best = (day, length)
    return best


def session_shade(moderate_s: float, hard_s: float) -> int:
    """What a whole session counts as, by its work, not its time: 0 easy, 1 moderate, 2 hard.

    Parameters
    ----------
    moderate_s, hard_s : float
        Seconds moderate and hard. [s]
    """
    return 2 if hard_s >= HARD_SESSION_S else 1 if moderate_s >= MODERATE_SESSION_S else 0
