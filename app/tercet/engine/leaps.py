"""Leaps of position and of distance that nobody runs: found, so that they count for nothing."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tercet.engine.geodesy import plane, step_lengths
from tercet.engine.scale import Floats

#: Nobody runs faster. [m/s]
TOP_SPEED = 12.5
#: Nor does anything that is recorded as sport move so far and so fast. [m], [m/s]
LEAP_M, LEAP_SPEED = 100.0, 30.0
#: A position may be off by so much for a moment. [m]
USUAL_M = 10.0
#: What leaps away is back within this long. [s] [guess]
AWAY_S = 60.0
#: The leap back makes up for the one away but for this share. [guess]
ALIKE = 0.5
#: Where more leap than these, and than this share, there is no way to come back to.
MOST, MOST_SHARE = 200, 0.05


def astray(time: Floats, latitude: Floats, longitude: Floats) -> NDArray[np.bool_]:
    """Fixes that leap away from the way and back to it.

    Parameters
    ----------
    time : ndarray, shape (n,)
        Not falling. [s]
    latitude, longitude : ndarray, shape (n,)
        Finite. [degrees]

    Returns
    -------
    ndarray of bool, shape (n,)
        Those between two leaps of opposite ways, each faster than anybody runs, that are at most
        :data:`AWAY_S` apart; none where most of it leaps.
    """
    bad = np.zeros(len(time), dtype=bool)
    if len(time) < 3:
        return bad
    fast = np.flatnonzero(step_lengths(latitude, longitude) > TOP_SPEED * np.diff(time) + USUAL_M)
    if not 2 <= len(fast) <= MOST + MOST_SHARE * len(time):
        return bad
    north, east = plane(latitude, longitude)
    steps = np.diff(north) + 1j * np.diff(east)
    gone = -1
    for place, away in enumerate(fast.tolist()):
        if away <= gone:
            continue
        for back in fast[place + 1 :].tolist():
            if time[back] - time[away] > AWAY_S:
                break
            if abs(steps[away] + steps[back]) <= ALIKE * abs(steps[away]):
                bad[away + 1 : back + 1] = True
                gone = back
                break
    return bad


def leaps(time: Floats, steps: Floats) -> NDArray[np.bool_]:
    """Steps of a way that nothing explains.

    Parameters
    ----------
    time : ndarray, shape (n,)
        Not falling. [s]
    steps : ndarray, shape (n - 1,)
        Way between one moment and the next. [m]

    Returns
    -------
    ndarray of bool, shape (n - 1,)
        Longer than :data:`LEAP_M` and faster than :data:`LEAP_SPEED`, also if the time is
        counted for which the way had stood still before.
    """
    past = np.diff(time)
    found = steps > np.maximum(LEAP_M, LEAP_SPEED * past)
    for place in np.flatnonzero(found).tolist():
        begin = place
        while begin and steps[begin - 1] <= 0.05 * past[begin - 1]:
            begin -= 1
        found[place] = steps[place] > LEAP_SPEED * (time[place + 1] - time[begin])
    return found
