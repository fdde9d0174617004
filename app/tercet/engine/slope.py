"""Hills: slope from altitude, and the level speed that would cost the same."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

#: Range of slopes in which the cost of running was measured.
VALID_SLOPE = 0.45
_COST = (155.4, -30.4, -43.3, 46.3, 19.5, 3.6)

#: Altitude is sampled along the way in steps of this length [m].
_STEP_M = 10.0
#: Slopes are taken over about this many metres (one standard deviation of the smoothing).
_SMOOTHING_M = 45.0
#: Altitude that jitters more than this [m] is noise of positioning, and hills are left out.
NOISE_LIMIT_M = 1.5


def running_cost(slope: ArrayLike) -> Floats:
    """Energy cost of running on a slope, per metre of the way [1]_.

    Parameters
    ----------
    slope : array_like, shape (n,)
        Rise over horizontal run; clamped to +-0.45, the range tested. [unitless]

    Returns
    -------
    ndarray of float64, shape (n,)
        Cost. [J/(kg m)] On the level the polynomial gives 3.6.

    References
    ----------
    .. [1] A. E. Minetti et al., J. Appl. Physiol. 93:1039-1046, 2002.
    """
    i = np.clip(np.asarray(slope, dtype=np.float64), -VALID_SLOPE, VALID_SLOPE)
    return np.asarray(np.polyval(_COST, i), dtype=np.float64)


def level_speed(speed: ArrayLike, slope: ArrayLike) -> Floats:
    """Speed on the level at the same metabolic power.

    Parameters
    ----------
    speed : array_like, shape (n,)
        Speed along the way. [m/s]
    slope : array_like, shape (n,)
        Rise over run; NaN counts as level. [unitless]

    Returns
    -------
    ndarray of float64, shape (n,)
        ``speed * cost(slope) / cost(0)``. [m/s]
    """
    i = np.nan_to_num(np.asarray(slope, dtype=np.float64), nan=0.0)
    return np.asarray(speed, dtype=np.float64) * running_cost(i) / _COST[-1]


def slope_along(altitude: ArrayLike, distance: ArrayLike) -> tuple[Floats, bool]:
    """Slope under every sample, from altitude smoothed to what an altimeter can know.

    Parameters
    ----------
    altitude : array_like, shape (n,)
        Altitude, NaN where missing. [m]
    distance : array_like, shape (n,)
        Distance covered, not falling. [m]

    Returns
    -------
    slope : ndarray of float64, shape (n,)
        Rise over run, zero where it cannot be known. [unitless]
    used : bool
        False if altitude is missing or too noisy, so that hills were left out.
    """
    z = np.asarray(altitude, dtype=np.float64)
    x = np.asarray(distance, dtype=np.float64)
    flat = np.zeros(len(x))
    known = np.isfinite(z) & np.isfinite(x)
    if np.count_nonzero(known) < 30 or np.ptp(x[known]) < 300.0:
        return flat, False
    xk, zk = x[known], z[known]
    along = np.arange(xk[0], xk[-1] + _STEP_M, _STEP_M)
    if len(along) > 200_000:
        return flat, False
    raw = np.interp(along, xk, zk)
    reach = int(3 * _SMOOTHING_M / _STEP_M)
    offsets = np.arange(-reach, reach + 1) * _STEP_M
    kernel = np.exp(-0.5 * (offsets / _SMOOTHING_M) ** 2)
    kernel /= kernel.sum()
    # Mirrored about the end points, so that a slope is kept there.
    padded = np.concatenate(
        (
            2 * raw[0] - raw[reach:0:-1] if len(raw) > reach else np.full(reach, raw[0]),
            raw,
            2 * raw[-1] - raw[-2 : -reach - 2 : -1]
            if len(raw) > reach + 1
            else np.full(reach, raw[-1]),
        )
    )
    smooth = np.convolve(padded, kernel, mode="valid")[: len(raw)]
    jitter = float(np.std(raw - smooth))
    if jitter > NOISE_LIMIT_M:
        return flat, False
    gradient = np.gradient(smooth, _STEP_M)
    return np.where(np.isfinite(x), np.interp(x, along, gradient), 0.0), True
