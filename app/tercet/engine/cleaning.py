"""Mending of single channels before judging; every mend is counted, none is silent."""

from __future__ import annotations

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import ArrayLike, NDArray

from tercet.engine.scale import Floats

#: What a running human's heart does. [beats/min]
HEART_RATE_RANGE = (35.0, 230.0)
#: Nobody runs faster. [m/s]
TOP_SPEED = 12.5
#: A heart rate that stays the very same for longer is a frozen sensor. [s]
FROZEN_S = 75
#: A heart rate this close to the step rate ... [beats/min]
LOCK_WITHIN = 4.0
#: ... for most of this long follows the steps. [s]
LOCK_S = 45


def moving_median(values: ArrayLike, width: int) -> Floats:
    """Median over a centred window, edges by repetition, NaN ignored where others are known.

    Parameters
    ----------
    values : array_like, shape (n,)
        One value a second.
    width : int
        Window, odd. [s]

    Returns
    -------
    ndarray of float64, shape (n,)
        NaN where the middle value is NaN.
    """
    x = np.asarray(values, dtype=np.float64)
    if len(x) == 0 or width < 3:
        return x.copy()
    half = width // 2
    filled = fill_short(x)
    windows = sliding_window_view(np.pad(filled, half, mode="edge"), 2 * half + 1)
    middle = np.partition(windows, half, axis=1)[:, half]
    return np.where(np.isfinite(x), middle, np.nan)


def moving_mean(values: ArrayLike, width: int) -> Floats:
    """Mean over a centred window, shorter at the ends; NaN filled from neighbours.

    Parameters
    ----------
    values : array_like, shape (n,)
        One value a second.
    width : int
        Window. [s]

    Returns
    -------
    ndarray of float64, shape (n,)
    """
    x = fill_short(np.asarray(values, dtype=np.float64))
    n = len(x)
    if n == 0:
        return x
    total = np.concatenate(([0.0], np.cumsum(x)))
    k = np.arange(n)
    low = np.maximum(k - width // 2, 0)
    high = np.minimum(k + width // 2 + 1, n)
    return np.asarray((total[high] - total[low]) / (high - low), dtype=np.float64)


def fill_short(values: Floats) -> Floats:
    """Fill NaN by straight lines between neighbours; all zeros if nothing is known."""
    known = np.isfinite(values)
    if known.all():
        return values
    if not known.any():
        return np.zeros_like(values)
    k = np.arange(len(values))
    return np.interp(k, k[known], values[known])


def run_lengths(same: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """Begin and end (exclusive) of every stretch of True.

    Parameters
    ----------
    same : ndarray of bool, shape (n,)

    Returns
    -------
    list of (int, int)
    """
    edges = np.flatnonzero(np.diff(np.concatenate(([False], same, [False])).astype(np.int8)))
    return list(zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True))


def clean_heart_rate(values: Floats, cadence: Floats | None) -> tuple[Floats, dict[str, int]]:
    """Take out what cannot be a heart: out of range, frozen, or following the steps.

    Parameters
    ----------
    values : ndarray, shape (n,)
        Heart rate on the grid. [beats/min]
    cadence : ndarray, shape (n,), or None
        Step rate. [steps/min]

    Returns
    -------
    cleaned : ndarray of float64, shape (n,)
        NaN where nothing can be trusted. [beats/min]
    mends : dict of str to int
        Seconds touched, by plain name.
    """
    x = values.copy()
    mends: dict[str, int] = {}
    low, high = HEART_RATE_RANGE
    out = np.isfinite(x) & ((x < low) | (x > high))
    if out.any():
        mends["heart rate outside what a heart does, left out"] = int(out.sum())
        x[out] = np.nan
    spikes = np.isfinite(x) & (np.abs(x - moving_median(x, 31)) > 25.0)
    if spikes.any():
        mends["heart-rate spikes, left out"] = int(spikes.sum())
        x[spikes] = np.nan
    frozen = np.zeros(len(x), dtype=bool)
    still = np.isfinite(x[1:]) & np.isfinite(x[:-1]) & (x[1:] == x[:-1])
    for begin, end in run_lengths(still):
        if end - begin >= FROZEN_S:
            frozen[begin : end + 1] = True
    if frozen.any():
        mends["heart rate frozen, left out"] = int(frozen.sum())
        x[frozen] = np.nan
    if cadence is not None:
        near = np.isfinite(x) & np.isfinite(cadence) & (np.abs(x - cadence) <= LOCK_WITHIN)
        share = moving_mean(near.astype(np.float64), LOCK_S)
        locked = np.zeros(len(x), dtype=bool)
        for begin, end in run_lengths(share >= 0.8):
            before = x[max(begin - 40, 0) : max(begin - 25, 0)]
            jump = before[np.isfinite(before)]
            inside = np.nanmedian(x[begin:end]) if np.isfinite(x[begin:end]).any() else np.nan
            # A runner's heart may rightly beat at the step rate: only a jump at its start tells.
            if len(jump) and inside - np.median(jump) > 15.0:
                locked[begin:end] = True
        if locked.any():
            mends["heart rate following the steps, left out"] = int(locked.sum())
            x[locked] = np.nan
    return x, mends


def clean_speed(values: Floats) -> tuple[Floats, dict[str, int]]:
    """Take out speeds that nobody runs and spikes of one to three seconds.

    Parameters
    ----------
    values : ndarray, shape (n,)
        Speed on the grid. [m/s]

    Returns
    -------
    cleaned : ndarray of float64, shape (n,)
        Spikes replaced by the straight line between their neighbours. [m/s]
    mends : dict of str to int
        Seconds touched, by plain name.
    """
    x = values.copy()
    known = np.isfinite(x)
    spikes = known & ((x > TOP_SPEED) | (x < 0) | (x - moving_median(x, 9) > 2.5))
    if not spikes.any():
        return x, {}
    x[spikes] = np.nan
    filled = fill_short(x) if np.isfinite(x).any() else x
    x[spikes] = filled[spikes]
    return x, {"speed spikes, smoothed over": int(spikes.sum())}
