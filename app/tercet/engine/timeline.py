"""The second-by-second line: irregular samples onto a one-second grid, pauses never bridged."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine.geodesy import step_lengths
from tercet.engine.leaps import astray, leaps
from tercet.engine.scale import Floats

#: Samples further apart than this are a gap, not a slow recording. [s]
GAP_S = 30.0
#: Slower than this is standing. [m/s]
MOVING_SPEED = 0.5
#: A distance counter that shows no more than this at the first sample started at zero. [m]
COUNTER_START_M = 50.0
#: A channel of more samples is kept as whole steps of one of these sizes if it consists of such.
MANY, STEPS = 2**17, (0.1, 1e-7, 0.001)

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
        that falls (a counter set back) goes on from where it stood, and so does one that leaps;
        positions that leap away and back are left out.
    """
    time, first, steps = _steps(streams)
    if not len(time):
        return time, steps
    steps[leaps(time, steps)] = 0.0
    way = _summed(steps)
    way += first
    return time, way


def leapt(streams: Streams) -> float:
    """Metres that :func:`distance_track` leaves out, as nobody runs so. Streams as there."""
    time, _, steps = _steps(streams)
    return float(steps[leaps(time, steps)].sum()) if len(time) else 0.0


def _steps(streams: Streams) -> tuple[Floats, float, Floats]:
    """Times, the distance at the first of them, and the way from each to the next."""
    time, distance = _pair(streams.get("distance"))
    if len(time) >= 2:
        return time, float(distance[0]), np.maximum(np.diff(distance), 0.0)
    if "latitude" in streams and "longitude" in streams:
        time, lat = _pair(streams["latitude"])
        time_lon, lon = _pair(streams["longitude"])
        if len(time) >= 2 and len(time) == len(time_lon) and bool(np.all(time == time_lon)):
            gone = astray(time, lat, lon)
            if gone.any():  # else nothing is copied, for a recording may be long
                time, lat, lon = time[~gone], lat[~gone], lon[~gone]
            return time, 0.0, step_lengths(lat, lon)
    time, speed = _pair(streams.get("speed"))
    if len(time) >= 2:
        dt = np.diff(time)
        return time, 0.0, np.where(dt <= GAP_S, dt * np.maximum(speed[1:], 0.0), 0.0)
    return np.zeros(0), 0.0, np.zeros(0)


def _summed(steps: Floats) -> Floats:
    """Where steps lead from zero, shape (n + 1,)."""
    way = np.zeros(len(steps) + 1)
    np.cumsum(steps, out=way[1:])
    return way


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


def _on_grid(time: Floats, values: Floats, begin: int, end: int, gap: float) -> Floats:
    """Linear at the middle of seconds ``begin`` to ``end``; NaN further than the gap allows."""
    middle = np.arange(begin, end) + 0.5
    out = np.full(len(middle), np.nan)
    if not len(time):
        return out
    after = np.searchsorted(time, middle, side="left")
    left = np.clip(after - 1, 0, len(time) - 1)
    right = np.clip(after, 0, len(time) - 1)
    inside = (after > 0) & (after < len(time)) & (time[right] - time[left] <= gap)
    near = np.minimum(np.abs(middle - time[left]), np.abs(time[right] - middle)) <= 1.0
    out[inside | near] = np.interp(middle, time, values)[inside | near]
    return out


class _Steps:
    """Values of a long recording as whole steps: exactly what they are, in half the memory."""

    def __init__(self, whole: NDArray[np.int32], step: float) -> None:
        self._whole, self._step = whole, step

    def __getitem__(self, part: slice) -> Floats:
        return np.asarray(self._whole[part] * self._step, dtype=np.float64)


def _kept(values: Floats) -> Floats | _Steps:
    """The values, of many as steps where that changes none."""
    for step in STEPS if len(values) > MANY else ():
        whole = np.rint(values / step)
        if np.abs(whole).max() < 2**31 and np.array_equal(whole * step, values):
            return _Steps(whole.astype(np.int32), step)
    return values


class Grid:
    """A recording's one-second grid, of which any stretch can be laid out on its own.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        Channels with their own clocks. [s from the first sample; SI units]
    sample_time : array_like, shape (n,)
        Times of all samples, not falling. [s]
    stops : iterable of (begin, end)
        Spans in which the timer stood still. [s]
    """

    def __init__(
        self,
        streams: Streams,
        sample_time: ArrayLike,
        stops: Iterable[tuple[float, float]] = (),
    ) -> None:
        samples = np.asarray(sample_time, dtype=np.float64)
        known = np.isfinite(samples)
        self._samples = samples if known.all() else samples[known]
        self._origin = float(self._samples[0]) if len(self._samples) else 0.0
        self._elapsed = float(self._samples[-1] - self._origin) if len(self._samples) else 0.0
        self._track = distance_track(streams)
        pairs = {name: _pair(stream) for name, stream in streams.items()}
        self._streams = {name: (time, _kept(values)) for name, (time, values) in pairs.items()}
        self._stops = list(stops)
        self._seconds = math.ceil(self._elapsed)

    def __len__(self) -> int:
        return self._seconds

    def stretch(self, begin: int, end: int) -> Timeline:
        """Lay out seconds ``begin`` to ``end`` as a line, its distance still the whole's.

        Returns
        -------
        Timeline
            Of ``end - begin`` seconds. Seconds mostly inside a timer stop or inside a gap of
            more than 30 s between samples are off the running clock.
        """
        channels = {
            name: _on_grid(*self._near(time, values, begin, end), begin, end, GAP_S)
            for name, (time, values) in self._streams.items()
        }
        edges = np.minimum(np.arange(begin, end + 1, dtype=np.float64), self._elapsed)
        if len(self._track[0]):
            covered = np.interp(edges, *self._near(*self._track, begin, end))
        else:
            covered = np.zeros(len(edges))
        if begin == 0 < end and len(self._track[0]):
            covered[0] = _counter_start(self._track[1])
        last = 1.0 if end < len(self) else self._elapsed - max(len(self) - 1, 0)
        clock = self._running_clock(begin, end)
        return Timeline(channels, np.diff(covered), covered, clock, last)

    def _near(
        self, time: Floats, values: Floats | _Steps, begin: int, end: int
    ) -> tuple[Floats, Floats]:
        """Samples of a stretch from the last one before it to the first one behind it."""
        low = int(np.searchsorted(time, self._origin + begin, side="right")) - 1
        high = int(np.searchsorted(time, self._origin + end, side="left")) + 1
        inside = slice(max(low, 0), high)
        return time[inside] - self._origin, values[inside]

    def _running_clock(self, begin: int, end: int) -> NDArray[np.bool_]:
        clock = np.ones(end - begin, dtype=bool)
        middle = np.arange(begin, end) + 0.5
        first, last = begin + self._origin, end + self._origin
        still = [stop for stop in self._stops if stop[0] < last and stop[1] > first]
        _, samples = self._near(self._samples, self._samples, begin, end)
        gaps = np.flatnonzero(np.diff(samples) > GAP_S)
        still += zip(samples[gaps].tolist(), samples[gaps + 1].tolist(), strict=True)
        for a, b in still:
            off = np.searchsorted(middle, (a - self._origin, b - self._origin))
            clock[off[0] : off[1]] = False
        return clock
