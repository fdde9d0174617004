"""The second-by-second line: irregular samples onto a one-second grid, pauses never bridged."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine.geodesy import step_lengths
from tercet.engine.scale import Floats

#: Samples further apart than this are a gap, not a slow recording. [s]
GAP_S = 30.0
#: Slower than this is standing. [m/s]
MOVING_SPEED = 0.5
#: A distance counter that shows no more than this at the first sample started at zero. [m]
COUNTER_START_M = 50.0

Streams = Mapping[str, tuple[ArrayLike, ArrayLike]]


@dataclass(frozen=True, eq=False)
class Timeline:
    """Channels on the grid; second ``k`` spans ``k`` to ``k + 1`` after the first sample."""

    channels: Mapping[str, Floats]  # each (n,), NaN where nothing is known
    metres: Floats  # (n,) distance covered in each second [m]
    covered: Floats  # (n + 1,) distance at the edges of the seconds [m]
    running_clock: NDArray[np.bool_]  # (n,) False inside timer stops and gaps
    last_second_s: float

    def __len__(self) -> int:
        return len(self.metres)

    def piece(self, begin: int, end: int) -> Timeline:
        """Seconds ``begin`` to ``end`` as a line of their own, its distance still the whole's."""
        return Timeline(
            {name: values[begin:end] for name, values in self.channels.items()},
            self.metres[begin:end],
            self.covered[begin : end + 1],
            self.running_clock[begin:end],
            self.last_second_s if end == len(self) else 1.0,
        )


@dataclass(frozen=True)
class Summary:
    """Plain figures of a recording, taken from its samples as they are."""

    elapsed_s: float
    moving_s: float
    distance_m: float
    hr_mean: float  # NaN without heart rate
    hr_max: float


def _pair(stream: tuple[ArrayLike, ArrayLike] | None) -> tuple[Floats, Floats]:
    if stream is None:
        return np.zeros(0), np.zeros(0)
    time = np.asarray(stream[0], dtype=np.float64)
    values = np.asarray(stream[1], dtype=np.float64)
    good = np.isfinite(time) & np.isfinite(values)
    return (time, values) if good.all() else (time[good], values[good])


def distance_track(streams: Streams) -> tuple[Floats, Floats]:
    """Distance covered at its own times: the recording's own, else along the ellipsoid.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        ``distance`` [m], or ``latitude`` and ``longitude`` [degrees], or ``speed`` [m/s].

    Returns
    -------
    time, distance : ndarray of float64, shape (m,)
        Seconds from the start, and metres, not falling. Empty if nothing tells. A distance
        that falls (a counter set back) goes on from where it stood.
    """
    time, distance = _pair(streams.get("distance"))
    if len(time) >= 2:
        steps = np.maximum(np.diff(distance), 0.0)
        return time, distance[0] + np.concatenate(([0.0], np.cumsum(steps)))
    if "latitude" in streams and "longitude" in streams:
        time, lat = _pair(streams["latitude"])
        time_lon, lon = _pair(streams["longitude"])
        if len(time) >= 2 and len(time) == len(time_lon) and bool(np.all(time == time_lon)):
            return time, np.concatenate(([0.0], np.cumsum(step_lengths(lat, lon))))
    time, speed = _pair(streams.get("speed"))
    if len(time) >= 2:
        dt = np.diff(time)
        steps = np.where(dt <= GAP_S, dt * np.maximum(speed[1:], 0.0), 0.0)
        return time, np.concatenate(([0.0], np.cumsum(steps)))
    return np.zeros(0), np.zeros(0)


def _counter_start(distance: Floats) -> float:
    """Where the counter began: what it shows at the first sample was run if it is little."""
    return 0.0 if distance[0] <= COUNTER_START_M else float(distance[0])


def summary(streams: Streams, sample_time: ArrayLike) -> Summary:
    """Elapsed and moving time, distance and heart rate, from the samples as recorded.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        As in :func:`distance_track`, with ``heart_rate`` [beats/min].
    sample_time : array_like, shape (n,)
        Times of all samples. [s]

    Returns
    -------
    Summary
        Elapsed is last minus first time; moving counts steps of at most 30 s at 0.5 m/s or
        more; distance is the last of the track, less its start where the counter did not start
        near zero; heart rate is over the samples that have one.
    """
    samples = np.asarray(sample_time, dtype=np.float64)
    elapsed = float(samples[-1] - samples[0]) if len(samples) else 0.0
    time, distance = distance_track(streams)
    moving = 0.0
    if len(time) >= 2:
        dt, dd = np.diff(time), np.diff(distance)
        counted = (dt > 0) & (dt <= GAP_S) & (dd >= MOVING_SPEED * dt)
        moving = float(dt[counted].sum())
    _, hr = _pair(streams.get("heart_rate"))
    total = float(distance[-1] - _counter_start(distance)) if len(distance) else 0.0
    return Summary(
        elapsed,
        moving,
        total,
        float(hr.mean()) if len(hr) else math.nan,
        float(hr.max()) if len(hr) else math.nan,
    )


def _on_grid(time: Floats, values: Floats, n: int, gap: float) -> Floats:
    """Linear at the middle of each second; NaN further than the gap allows."""
    middle = np.arange(n) + 0.5
    out = np.full(n, np.nan)
    if not len(time):
        return out
    after = np.searchsorted(time, middle, side="left")
    left = np.clip(after - 1, 0, len(time) - 1)
    right = np.clip(after, 0, len(time) - 1)
    inside = (after > 0) & (after < len(time)) & (time[right] - time[left] <= gap)
    near = np.minimum(np.abs(middle - time[left]), np.abs(time[right] - middle)) <= 1.0
    out[inside | near] = np.interp(middle, time, values)[inside | near]
    return out


def build(
    streams: Streams, sample_time: ArrayLike, stops: Iterable[tuple[float, float]] = ()
) -> Timeline:
    """Put a recording on the one-second grid.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        Channels with their own clocks. [s from the first sample; SI units]
    sample_time : array_like, shape (n,)
        Times of all samples, not falling. [s]
    stops : iterable of (begin, end)
        Spans in which the timer stood still. [s]

    Returns
    -------
    Timeline
        ``ceil(elapsed)`` seconds. Seconds mostly inside a timer stop or inside a gap of more
        than 30 s between samples are off the running clock.
    """
    samples = np.asarray(sample_time, dtype=np.float64)
    samples = samples[np.isfinite(samples)]
    origin = float(samples[0]) if len(samples) else 0.0
    elapsed = float(samples[-1] - origin) if len(samples) else 0.0
    n = math.ceil(elapsed)
    last = elapsed - (n - 1) if n else 0.0
    channels: dict[str, Floats] = {}
    for name, stream in streams.items():
        time, values = _pair(stream)
        channels[name] = _on_grid(time - origin, values, n, GAP_S)
    time, distance = distance_track(streams)
    edges = np.minimum(np.arange(n + 1, dtype=np.float64), elapsed)
    covered = np.interp(edges, time - origin, distance) if len(time) else np.zeros(n + 1)
    if n and len(time):
        covered[0] = _counter_start(distance)
    clock = np.ones(n, dtype=bool)
    middle = np.arange(n) + 0.5
    still = list(stops)
    gaps = np.flatnonzero(np.diff(samples) > GAP_S)
    still += zip(samples[gaps].tolist(), samples[gaps + 1].tolist(), strict=True)
    for begin, end in still:
        off = np.searchsorted(middle, (begin - origin, end - origin))
        clock[off[0] : off[1]] = False
    return Timeline(channels, np.diff(covered), covered, clock, last)
