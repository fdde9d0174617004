"""Short sprints out of a walk: over before a watch's smoothed speed has shown all of them."""

from __future__ import annotations

import numpy as np

from tercet.engine.cleaning import run_lengths
from tercet.engine.motion import Motion
from tercet.engine.scale import Floats
from tercet.engine.slope import VALID_SLOPE, Slopes

#: Shortest and longest sprint. [s]
SHORTEST_S, LONGEST_S = 5, 25
#: A walk of this length parts sprints. [s]
WALK_S = 6
#: Peak of the recorded speed against LT2, and against the jog before. [trial]
PEAK, OVER_JOG = 0.8, 1.25
#: An altimeter worse than this does not show the rise of a sprint. [m]
HEIGHT_ERROR_M = 1.2
#: Way a sprint takes at least, for its slope to mean anything. [m]
LEAST_WAY_M = 15.0


def find_sprints(moved: Motion, lt2_speed: float) -> list[tuple[int, int]]:
    """Short fast running that ends in a walk, from a walk or from a jog.

    Parameters
    ----------
    moved : Motion
    lt2_speed : float
        [m/s]

    Returns
    -------
    list of (int, int)
        Begin and end (exclusive) in seconds.
    """
    speed = np.nan_to_num(moved.speed)
    walks = run_lengths(~moved.running)
    walked = {end for begin, end in walks if end - begin >= WALK_S}
    walks_on = {begin for begin, end in walks if end - begin >= WALK_S}
    sprints = []
    for begin, end in run_lengths(moved.running):
        if end not in walks_on or end - begin < SHORTEST_S:
            continue
        peak = float(speed[max(begin, end - LONGEST_S) : end].max())
        if peak < PEAK * lt2_speed:
            continue
        if end - begin <= LONGEST_S:
            if begin in walked:
                sprints.append((begin, end))
            continue
        jog = float(np.median(speed[max(begin, end - LONGEST_S - 60) : end - LONGEST_S]))
        last = speed[end - LONGEST_S : end]
        slow = np.flatnonzero(last[: int(last.argmax()) + 1] < 0.5 * (peak + jog))
        start = end - LONGEST_S + (int(slow[-1]) + 1 if len(slow) else 0)
        if peak >= OVER_JOG * jog and len(slow) and end - start >= SHORTEST_S:
            sprints.append((start, end))
    return sprints


def with_sprints(
    hills: Slopes, sprints: list[tuple[int, int]], altitude: Floats, metres: Floats
) -> Slopes:
    """Give each sprint the slope of its own rise, which hills of usual length smooth away.

    Parameters
    ----------
    hills : Slopes
    sprints : list of (int, int)
        From :func:`find_sprints`.
    altitude, metres : ndarray, shape (n,)
        Altitude, its lag undone [m], and metres of each second.

    Returns
    -------
    Slopes
        The same where the altimeter is too rough.
    """
    if not hills.used or hills.height_error > HEIGHT_ERROR_M or not sprints:
        return hills
    slope = hills.slope.copy()
    for begin, end in sprints:
        way = float(metres[begin:end].sum())
        top = altitude[min(end, len(altitude) - 1)]
        rise = float(top - altitude[begin])
        if way >= LEAST_WAY_M and np.isfinite(rise):
            # Drawn to what the hills say, by how well this altimeter knows a short rise.
            doubt = hills.height_error * np.sqrt(2.0) / way
            share = 0.05**2 / (0.05**2 + doubt**2)
            own = float(np.clip(rise / way, -VALID_SLOPE, VALID_SLOPE))
            slope[begin:end] = share * own + (1 - share) * slope[begin:end]
    return Slopes(slope, hills.spread, hills.used, hills.height_error)
