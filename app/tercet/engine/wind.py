"""What a steady wind of unknown strength and direction would add to the cost of each second."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import fill_short, moving_mean
from tercet.engine.geodesy import plane
from tercet.engine.scale import Floats

#: Share of the body's work that still air takes, times speed squared [1]_ of :func:`bearings`.
#: [1/(m/s)^2]
AIR = 0.0022
#: Positions are calmed over this long before a heading is taken from them. [s]
CALM_S = 15
#: Slower than this by positions there is no heading. [m/s]
LEAST_SPEED = 0.8


def bearings(
    latitude: Floats | None, longitude: Floats | None, speed: Floats, running: NDArray[np.bool_]
) -> Floats | None:
    """Log of cost added by each m/s of wind from the east and from the north.

    Parameters
    ----------
    latitude, longitude : ndarray, shape (n,), or None
        [degrees], NaN where unknown.
    speed : ndarray, shape (n,)
        [m/s]
    running : ndarray of bool, shape (n,)

    Returns
    -------
    ndarray of float64, shape (n, 2), or None
        None without positions. To first order in the wind: ``2 * AIR * velocity``.

    References
    ----------
    .. [1] L. G. C. E. Pugh, J. Physiol. 213:255-276, 1971 (from memory: 8 % at 6 m/s).
    """
    if latitude is None or longitude is None:
        return None
    known = np.isfinite(latitude) & np.isfinite(longitude)
    if np.count_nonzero(known) < 60:
        return None
    north, east = (
        np.gradient(moving_mean(fill_short(x), CALM_S)) for x in plane(latitude, longitude)
    )
    placed = np.hypot(east, north)
    moving = running & known & np.isfinite(speed) & (placed > LEAST_SPEED)
    share = np.where(moving, 2 * AIR * np.nan_to_num(speed) / np.maximum(placed, LEAST_SPEED), 0.0)
    return np.asarray(np.stack((east * share, north * share), axis=1), dtype=np.float64)
