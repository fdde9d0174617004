"""The way by positions against the watch's own distance: whose scale is off, and by how much.

A watch's speed and distance may be off by a constant share; a position's error does not grow
with the way. So long straight pieces between positions tell the share, wherever the way is not
too winding.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import fill_short, moving_mean
from tercet.engine.geodesy import plane
from tercet.engine.scale import Floats

#: Straight pieces of this length and of twice it are laid along the way. [s]
PIECE_S = 20
#: Positions are calmed over so long. [s]
CALM_S = 5
#: Pieces off by more than this share tell of a turn or a jump, not of a scale.
MOST_OFF = 0.2
#: Less of the run than this says nothing. [s]
LEAST_S = 600
#: Spread of the share by which watches are off, and of what positions cannot tell. [trial]
WATCH_SPREAD, LEAST_DOUBT = 0.02, 0.004
#: A share that is off by this much is remarked beside the judgement: 1.5 s on 5:00 a kilometre.
WORTH_SAYING = 0.005


def scale_of(
    latitude: Floats | None, longitude: Floats | None, speed: Floats, running: NDArray[np.bool_]
) -> float:
    """Share by which speed is to be multiplied, as far as positions tell.

    Parameters
    ----------
    latitude, longitude : ndarray, shape (n,), or None
        [degrees], NaN where unknown.
    speed : ndarray, shape (n,)
        As the watch gives it, its lag undone. [m/s]
    running : ndarray of bool, shape (n,)

    Returns
    -------
    float
        1 where positions do not tell. A straight piece falls short of a bend by the square of
        its length [1]_, so pieces of two lengths give the way without either; the more they
        differ, the less is believed. Within a few per cent of 1.

    References
    ----------
    .. [1] L. F. Richardson, Phil. Trans. R. Soc. A 210:307-357, 1911: from two lengths of step to
       none (from memory).
    """
    if latitude is None or longitude is None or len(speed) < LEAST_S:
        return 1.0
    known = np.isfinite(latitude) & np.isfinite(longitude)
    if np.count_nonzero(known) < LEAST_S:
        return 1.0
    north, east = (moving_mean(fill_short(x), CALM_S) for x in plane(latitude, longitude))
    good = known & running & np.isfinite(speed)
    span = 2 * PIECE_S
    covered = np.concatenate(([0.0], np.cumsum(np.where(good, speed, 0.0))))
    count = np.concatenate(([0], np.cumsum(good)))
    whole = np.flatnonzero(count[span:] - count[:-span] == span)
    # A position is where the runner was at the middle of its second.
    whole = whole[whole + span < len(speed)]
    if len(whole) < LEAST_S / 2:
        return 1.0
    half, end = whole + PIECE_S, whole + span
    long = np.hypot(east[end] - east[whole], north[end] - north[whole])
    short = np.hypot(east[half] - east[whole], north[half] - north[whole])
    short += np.hypot(east[end] - east[half], north[end] - north[half])
    middle = 0.5 * (covered[:-1] + covered[1:])
    way = middle[end] - middle[whole]
    kept = np.abs(short / np.maximum(way, 1.0) - 1.0) < MOST_OFF
    if np.count_nonzero(kept) < LEAST_S / 2:
        return 1.0
    by_short = float(short[kept].sum() / way[kept].sum())
    by_long = float(long[kept].sum() / way[kept].sum())
    bend = by_short - by_long
    doubt = LEAST_DOUBT + abs(bend)
    share = WATCH_SPREAD**2 / (WATCH_SPREAD**2 + doubt**2)
    return float(1.0 + share * (by_short + bend / 3.0 - 1.0))
