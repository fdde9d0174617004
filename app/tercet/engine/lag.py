"""How far the watch's recorded speed lags behind what its owner did."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import moving_mean
from tercet.engine.scale import Floats

#: Assumed where the recording does not tell. [s] [trial]
USUAL_S = 3
#: Longest lag looked for. [s]
LONGEST_S = 9
#: Position and cadence are smoothed by the watch too, by about this much. [s] [trial]
REFERENCE_LAG_S = 1
#: Best correlation of the changes below which nothing is concluded. [trial]
CLEAR = 0.45


def lag_of(speed: Floats, reference: Floats, usable: NDArray[np.bool_]) -> int:
    """Lag of a smoothed speed behind a quicker trace of the same running.

    Parameters
    ----------
    speed : ndarray, shape (n,)
        Recorded speed. [m/s]
    reference : ndarray, shape (n,)
        Speed from positions, or cadence; any unit.
    usable : ndarray of bool, shape (n,)
        Where both are real.

    Returns
    -------
    int
        Whole seconds, 0 to 10; :data:`USUAL_S` if the correlation of their changes is unclear.
    """
    good = usable & np.isfinite(speed) & np.isfinite(reference)
    if np.count_nonzero(good) < 300:
        return USUAL_S
    fast = np.where(good, speed, np.nan)
    quick = np.where(good, reference, np.nan)
    # Changes against a slow mean: pace itself must not decide, its edges must.
    a = np.nan_to_num(fast - moving_mean(fast, 61))
    b = np.nan_to_num(quick - moving_mean(quick, 61))
    b = np.clip(b, *(np.percentile(b, [0.5, 99.5])))
    scale = float(np.sqrt((a @ a) * (b @ b)))
    if scale <= 0.0:
        return USUAL_S
    n = len(a)
    by_lag = [float(a[k:] @ b[: n - k]) / scale for k in range(LONGEST_S + 1)]
    best = int(np.argmax(by_lag))
    return best + REFERENCE_LAG_S if by_lag[best] >= CLEAR else USUAL_S


def earlier(values: Floats, seconds: int) -> Floats:
    """Shift a channel back in time; its last value stands for what is then missing.

    Parameters
    ----------
    values : ndarray, shape (n,)
    seconds : int
        Not negative.

    Returns
    -------
    ndarray of float64, shape (n,)
    """
    if seconds <= 0 or len(values) <= seconds:
        return values.copy()
    return np.concatenate((values[seconds:], np.full(seconds, values[-1])))
