"""What the trace of a session draws, reckoned before painting; no Qt."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from tercet.engine.scale import Floats, Shade
from tercet.library.trace import SessionTrace

#: What the main trace may be.
Channel = Literal["pace", "power", "heart"]
#: A session whose pace is known for less of its time is drawn by power or heart rate.
LEAST_KNOWN = 0.05


@dataclass(frozen=True)
class Range:
    """Lower and upper end of an axis."""

    low: float
    high: float


def drawn_by(trace: SessionTrace) -> Channel:
    """What the main trace is: pace, else power (or where only it has lines), else heart rate."""

    def known(values: Floats) -> bool:
        return bool(len(values)) and float(np.isfinite(values).mean()) >= LEAST_KNOWN

    by_watts = trace.lt1_power is not None and trace.lt1_speed is None
    if known(trace.power) and (by_watts or not known(trace.speed)):
        return "power"
    return "pace" if known(trace.level_speed) else "heart"


def main_channel(trace: SessionTrace) -> tuple[Floats, tuple[float | None, float | None]]:
    """Values of the main trace, with its two boundaries."""
    by = drawn_by(trace)
    if by == "power":
        return trace.power, (trace.lt1_power, trace.lt2_power)
    if by == "pace":
        return trace.level_speed, (trace.lt1_speed, trace.lt2_speed)
    return trace.heart_rate, (trace.lt1_hr, trace.lt2_hr)


def on_level_ground(trace: SessionTrace) -> bool:
    """Whether the trace's pace is another than the plain one, because hills were taken out."""
    both = np.isfinite(trace.level_speed) & np.isfinite(trace.speed) & (trace.speed > 0.5)
    if not both.any():
        return False
    ratio = trace.level_speed[both] / trace.speed[both]
    return bool((np.abs(ratio - 1.0) > 0.01).mean() > 0.05)


def trace_range(
    values: Floats, shades: np.ndarray, lines: Iterable[float | None], margin: float
) -> Range:
    """Ends of the main axis: what was run, and both boundaries, with some room around.

    Parameters
    ----------
    values : ndarray, shape (n,)
        Speed or heart rate; NaN in gaps.
    shades : ndarray of uint8, shape (n,)
        Standing still is left out, so that a stop doesn't squeeze the running.
    lines : iterable of float or None
        Boundaries that must lie inside.
    margin : float
        Room below and above as a part of the span.
    """
    running = np.isfinite(values) & (shades != Shade.NOT_RUNNING)
    seen = values[running] if running.any() else values[np.isfinite(values)]
    ends = [float(line) for line in lines if line is not None]
    if len(seen):
        ends += [float(np.percentile(seen, 2.0)), float(np.percentile(seen, 99.8))]
    if not ends:
        return Range(0.0, 1.0)
    low, high = min(ends), max(ends)
    span = max(high - low, 0.05 * abs(high), 1e-6)
    return Range(max(0.0, low - 2.0 * margin * span), high + margin * span)


def columns(x: Floats, y: Floats, count: int) -> tuple[Floats, Floats]:
    """Lowest and highest value of each of at most ``count`` columns, in the order they came.

    Parameters
    ----------
    x, y : ndarray, shape (n,)
        Points of a line; ``y`` may hold NaN, ``x`` not.
    count : int
        Columns of pixels at hand.

    Returns
    -------
    tuple of ndarray
        The line itself where it has no more than two points a column, else two points for each
        column, NaN where a whole column has none.
    """
    n = len(x)
    if count < 1 or n <= 2 * count:
        return x, y
    size = -(-n // count)
    whole = n // size * size
    starts = np.arange(0, n, size)
    low, high = np.fmin.reduceat(y, starts), np.fmax.reduceat(y, starts)
    filled = np.where(np.isfinite(y), y, -np.inf)
    first_high = np.zeros(len(starts), dtype=bool)
    blocks = filled[:whole].reshape(-1, size)
    lows = np.where(np.isfinite(blocks), blocks, np.inf)
    first_high[: len(blocks)] = blocks.argmax(axis=1) < lows.argmin(axis=1)
    out_x, out_y = np.empty(2 * len(starts)), np.empty(2 * len(starts))
    out_x[0::2], out_x[1::2] = x[starts], x[np.minimum(starts + size - 1, n - 1)]
    out_y[0::2] = np.where(first_high, high, low)
    out_y[1::2] = np.where(first_high, low, high)
    return out_x, out_y


def middles(x: Floats, y: Floats, count: int) -> tuple[Floats, Floats]:
    """The same columns, but of each its first place and the middle of its ends, to be filled."""
    n = len(x)
    if count < 1 or n <= 2 * count:
        return x, y
    starts = np.arange(0, n, -(-n // count))
    between = (np.fmin.reduceat(y, starts) + np.fmax.reduceat(y, starts)) / 2.0
    places = x[starts]
    places[-1] = x[-1]
    return places, between


def finite_runs(y: Floats) -> list[tuple[int, int]]:
    """First and past-last entries of the stretches without NaN."""
    known = np.concatenate(([False], np.isfinite(y), [False]))
    edges = np.flatnonzero(known[1:] != known[:-1])
    return [(int(a), int(b)) for a, b in zip(edges[0::2], edges[1::2], strict=True)]


def pace_marks(ends: Range, metres: float, pixels: float, least: float) -> tuple[float, ...]:
    """Speeds [m/s] whose pace is round, at least ``least`` pixels apart on an axis of speed.

    Whole minutes go before halves, halves before quarters; finer ones only where there is none of
    these. ``metres`` is the pace's unit.
    """
    taken: list[float] = []
    per_unit = pixels / (ends.high - ends.low)
    slowest = min(metres / max(ends.low, 0.05), 1800.0)
    for step in (60, 30, 15, 5, 1):
        if taken and step < 15:
            break
        for seconds in range(step, int(slowest) + 1, step):
            speed = metres / seconds
            if not ends.low <= speed <= ends.high:
                continue
            if all(abs(speed - other) * per_unit >= least for other in taken):
                taken.append(speed)
    return tuple(sorted(taken))


def even_marks(ends: Range, pixels: float, least: float, steps: Sequence[float]) -> list[float]:
    """Multiples of the smallest step that keeps the marks ``least`` pixels apart."""
    span = ends.high - ends.low
    for step in steps:
        if span > 0.0 and step / span * pixels >= least:
            first = int(np.ceil(ends.low / step))
            return [k * step for k in range(first, int(np.floor(ends.high / step)) + 1)]
    return []
