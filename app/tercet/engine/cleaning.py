"""Mending of single channels before judging; every mend is counted, none is silent."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import ArrayLike, NDArray

from tercet.engine.leaps import TOP_SPEED, astray
from tercet.engine.scale import Floats

#: Values outside are damage of the file, not measurement.
POSSIBLE = {
    "heart_rate": (0.0, 300.0),
    "speed": (-1.0, 100.0),
    "distance": (-1.0, 1e7),
    "latitude": (-90.0, 90.0),
    "longitude": (-360.0, 360.0),
    "altitude": (-1000.0, 10_000.0),
    "cadence": (0.0, 400.0),
}
#: Up to three samples standing this far above both neighbours are no running. [m/s] [trial]
SPIKE_SPEED = 1.6
#: A spike is over after this long. [s]
SPIKE_S = 9.0
#: A counter that stands still and then leaps had lost its signal; between these speeds the way
#: was run. [m/s]
LOST_SPEED = (1.3, 8.0)
_AT_ONCE = 2**13  # windows


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
    middle = np.empty(len(x))
    for begin in range(0, len(x), _AT_ONCE):  # windows are copied: a day of them takes 40 MB
        part = slice(begin, begin + _AT_ONCE)
        middle[part] = np.partition(windows[part], half, axis=1)[:, half]
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


def spikes_in(time: Floats, values: Floats) -> NDArray[np.bool_]:
    """Samples that stand above both neighbours for a moment, before anything is interpolated.

    Parameters
    ----------
    time : ndarray, shape (n,)
        Not falling. [s]
    values : ndarray, shape (n,)
        Speed. [m/s]

    Returns
    -------
    ndarray of bool, shape (n,)
        One to three neighbouring samples more than 1.6 m/s above those before and after, and
        every sample faster than anybody runs or below zero.
    """
    bad = (values > TOP_SPEED) | (values < 0)
    n = len(values)
    for length in (1, 2, 3):
        if n < length + 2:
            break
        before, after = values[: n - length - 1], values[length + 1 :]
        inside = sliding_window_view(values[1:-1], length).min(axis=1)
        # Between two samples a spike takes seconds; a stride sampled every few seconds lasts.
        quick = time[length + 1 :] - time[1 : n - length] <= min(SPIKE_S, 1.5 * length)
        spike = (inside - np.maximum(before, after) > SPIKE_SPEED) & quick
        for k in range(length):
            bad[1 + k : n - length + k] |= spike
    return bad


def lost_signal(time: Floats, distance: Floats) -> list[tuple[float, float]]:
    """Spans in which a distance counter stood still although its owner ran on.

    Parameters
    ----------
    time, distance : ndarray, shape (n,)
        Distance covered. [s], [m]

    Returns
    -------
    list of (begin, end)
        Standing for 8 s or more, then a leap nobody runs, the two together at running speed.
    """
    dt, dd = np.diff(time), np.diff(distance)
    spans = []
    for begin, end in run_lengths((dd <= 0.05 * dt) & (dt > 0)):
        if end >= len(dd) or time[end] - time[begin] < 8.0:
            continue
        mean = (distance[end + 1] - distance[begin]) / (time[end + 1] - time[begin])
        if dd[end] > TOP_SPEED * dt[end] and LOST_SPEED[0] <= mean <= LOST_SPEED[1]:
            spans.append((float(time[begin]), float(time[end + 1])))
    return spans


def mend_samples(
    streams: Mapping[str, tuple[ArrayLike, ArrayLike]],
) -> tuple[dict[str, tuple[Floats, Floats]], dict[str, int]]:
    """Take out single samples that cannot be, before anything is interpolated.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        As the recording has them; anything not finite is left out.

    Returns
    -------
    streams : dict of str to (time, values)
        Where the signal was lost, speed is the way over the time.
    mends : dict of str to int
        Samples taken out, by plain name.
    """
    out: dict[str, tuple[Floats, Floats]] = {}
    mends: dict[str, int] = {}
    impossible = 0
    for name, (times, values) in streams.items():
        time = np.asarray(times, dtype=np.float64)
        value = np.asarray(values, dtype=np.float64)
        good = np.isfinite(time) & np.isfinite(value)
        if name in POSSIBLE:
            low, high = POSSIBLE[name]
            can_be = (value >= low) & (value <= high)
            impossible += int(np.count_nonzero(good & ~can_be))
            good &= can_be
        if not good.all():
            time, value = time[good], value[good]
        # One sample a moment, in order: a copy of a sample must change nothing.
        if not (np.diff(time) > 0).all():
            time, first = np.unique(time, return_index=True)
            value = value[first]
        out[name] = (time, value)
    if impossible:
        mends["values that cannot be, left out"] = impossible
    places = [out[name] for name in ("latitude", "longitude") if name in out]
    if len(places) == 2 and np.array_equal(places[0][0], places[1][0]):
        (time, latitude), (_, longitude) = places
        gone = astray(time, latitude, longitude)
        if gone.any():
            mends["positions that leap away and back, left out"] = int(gone.sum())
            out["latitude"] = time[~gone], latitude[~gone]
            out["longitude"] = time[~gone], longitude[~gone]
    lost: list[tuple[float, float]] = []
    if "distance" in out and len(out["distance"][0]) > 10:
        time, distance = out["distance"]
        lost = lost_signal(time, distance)
        out["distance"] = _without(time, distance, lost)
    if "speed" in out:
        time, speed = out["speed"]
        spikes = spikes_in(time, speed)
        if spikes.any():
            mends["speed spikes, left out"] = int(spikes.sum())
        time, speed = _without(time[~spikes], speed[~spikes], lost)
        for begin, end in lost:
            d_time, d = out["distance"]
            way = float(np.diff(np.interp([begin, end], d_time, d))[0])
            inner = np.arange(begin + 1.0, end - 0.5)
            at = np.searchsorted(time, inner)
            time = np.insert(time, at, inner)
            speed = np.insert(speed, at, way / (end - begin))
        out["speed"] = (time, speed)
    if lost:
        mends["seconds without signal, run on by the distance"] = round(sum(b - a for a, b in lost))
    return out, mends


def _without(
    time: Floats, values: Floats, spans: list[tuple[float, float]]
) -> tuple[Floats, Floats]:
    keep = np.ones(len(time), dtype=bool)
    for begin, end in spans:
        keep &= ~((time > begin) & (time < end))
    return time[keep], values[keep]
