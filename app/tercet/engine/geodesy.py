"""Distances on the WGS84 ellipsoid between neighbouring fixes."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

#: WGS84: equatorial radius [m] and flattening.
SEMI_MAJOR_M = 6378137.0
FLATTENING = 1 / 298.257223563


def step_lengths(latitude: ArrayLike, longitude: ArrayLike) -> Floats:
    """Length of each step between consecutive fixes.

    Parameters
    ----------
    latitude, longitude : array_like, shape (n,)
        Fixes on WGS84; NaN gives NaN steps. [degrees]

    Returns
    -------
    ndarray of float64, shape (max(n - 1, 0),)
        Step lengths. [m]

    Notes
    -----
    Uses the ellipsoid's radii of curvature at the step's middle latitude [1]_, which is exact
    to the third order in the step: up to 10 km its relative error is under 1e-6 below 60
    degrees of latitude and under 5e-6 below 80, for steps of a second under 1e-8. A plain
    sphere would be wrong by up to 0.56 %.

    References
    ----------
    .. [1] H. Moritz, Geodetic Reference System 1980, J. Geodesy 74:128-133, 2000.
    """
    lat = np.radians(np.asarray(latitude, dtype=np.float64))
    lon = np.radians(np.asarray(longitude, dtype=np.float64))
    if lat.size < 2:
        return np.zeros(0)
    middle = (lat[1:] + lat[:-1]) / 2
    d_lat = lat[1:] - lat[:-1]
    d_lon = (lon[1:] - lon[:-1] + np.pi) % (2 * np.pi) - np.pi
    e2 = FLATTENING * (2 - FLATTENING)
    w2 = 1 - e2 * np.sin(middle) ** 2
    meridian = SEMI_MAJOR_M * (1 - e2) / w2**1.5
    prime_vertical = SEMI_MAJOR_M / np.sqrt(w2)
    north = meridian * d_lat
    east = prime_vertical * np.cos(middle) * d_lon
    return np.asarray(np.hypot(north, east), dtype=np.float64)
