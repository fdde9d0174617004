"""Repetitions found in the speed trace: bouts of work that stand out from what lies between."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tercet.engine.cleaning import run_lengths
from tercet.engine.judgement import Repetition
from tercet.engine.motion import Motion
from tercet.engine.scale import Floats, Shade

#: Bouts closer together than this are one. [s]
JOIN_S = 6
#: Shortest and longest bout. [s], [m]
SHORTEST_S = 8
LONGEST_M = 3200.0
#: A bout is faster than its recoveries by this share of its own speed.
CONTRAST = 0.12
#: Fewer bouts than this are no repetitions.
LEAST_COUNT = 3


def find(level_speed: Floats, moved: Motion, work_speed: float) -> list[tuple[int, int]]:
    """Find the bouts of work.

    Parameters
    ----------
    level_speed : ndarray, shape (n,)
        Level-equivalent speed, followed; NaN where unknown. [m/s]
    moved : Motion
        Running told from walking, and metres.
    work_speed : float
        Slower than this is never work. [m/s]

    Returns
    -------
    list of (int, int)
        Begin and end (exclusive) of each bout in seconds; empty if fewer than three.
    """
    n = len(level_speed)
    walked = np.minimum(np.nan_to_num(moved.speed), 1.5)
    fast = np.where(moved.running, np.nan_to_num(level_speed), np.where(moved.clock, walked, 0.0))
    merged: list[list[int]] = []
    for begin, end in run_lengths(fast >= work_speed):
        if merged and begin - merged[-1][1] < JOIN_S:
            merged[-1][1] = end
        else:
            merged.append([begin, end])
    covered = np.concatenate(([0.0], np.cumsum(moved.metres)))
    bouts: list[tuple[int, int]] = []
    for begin, end in merged:
        core = float(np.median(fast[begin:end]))
        before = fast[max(begin - 25, 0) : max(begin - 3, 0)]
        after = fast[min(end + 3, n) : min(end + 25, n)]
        rests = [float(np.median(side)) for side in (before, after) if len(side) >= 5]
        if not rests or max(rests) > core * (1 - CONTRAST):
            continue
        if end - begin >= SHORTEST_S and covered[end] - covered[begin] <= LONGEST_M:
            bouts.append((begin, end))
    return bouts if len(bouts) >= LEAST_COUNT else []


def describe(
    bouts: Sequence[tuple[int, int]], level_speed: Floats, metres: Floats, shades: Sequence[Shade]
) -> tuple[Repetition, ...]:
    """Give each bout its figures.

    Parameters
    ----------
    bouts : sequence of (int, int)
        From :func:`find`. [s]
    level_speed, metres : ndarray, shape (n,)
        Level-equivalent speed [m/s] and metres in each second [m].
    shades : sequence of Shade
        One a bout.

    Returns
    -------
    tuple of Repetition
    """
    found = []
    for k, ((begin, end), shade) in enumerate(zip(bouts, shades, strict=True)):
        recovery = float(bouts[k + 1][0] - end) if k + 1 < len(bouts) else None
        inside = level_speed[begin:end]
        mean = float(np.nanmean(inside)) if np.isfinite(inside).any() else 0.0
        found.append(
            Repetition(
                float(begin),
                float(end - begin),
                float(metres[begin:end].sum()),
                mean,
                shade,
                recovery,
            )
        )
    return tuple(found)


def in_words(repetitions: Sequence[Repetition]) -> str:
    """Name the largest set in words: "20 x 200 m", "6 x 3 min", or nothing.

    Parameters
    ----------
    repetitions : sequence of Repetition

    Returns
    -------
    str
        Lengths are rounded to what a runner would have meant; sets of uneven bouts (spread
        over 15 %) give the count and the range of times.
    """
    if len(repetitions) < LEAST_COUNT:
        return ""
    durations = np.array([r.duration_s for r in repetitions])
    distances = np.array([r.distance_m for r in repetitions])
    count = len(repetitions)
    middle_s, middle_m = float(np.median(durations)), float(np.median(distances))
    by_time = float(np.median(np.abs(durations / middle_s - 1)))
    by_distance = float(np.median(np.abs(distances / max(middle_m, 1) - 1)))
    if min(by_time, by_distance) > 0.15 or middle_m < 20:
        return f"{count} fast stretches, {durations.min():.0f}-{durations.max():.0f} s"
    usual_m = np.array([60, 80, 100, 150, 200, 300, 400, 500, 600, 800, 1000, 1200, 1600, 2000])
    usual_s = np.array([10, 15, 20, 30, 40, 45, 60, 90, 120, 150, 180, 240, 300, 360])
    nearest_m = float(usual_m[np.argmin(np.abs(np.log(usual_m / middle_m)))])
    nearest_s = float(usual_s[np.argmin(np.abs(np.log(usual_s / middle_s)))])
    miss_m = abs(middle_m / nearest_m - 1) + by_distance
    miss_s = abs(middle_s / nearest_s - 1) + by_time
    if miss_s < miss_m:
        length = f"{nearest_s / 60:g} min" if nearest_s >= 60 else f"{nearest_s:.0f} s"
    elif miss_m < 0.12:
        length = f"{nearest_m:.0f} m"
    else:
        length = f"{round(middle_m / 10) * 10:.0f} m"
    return f"{count} \N{MULTIPLICATION SIGN} {length}"
