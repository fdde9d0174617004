"""Repetitions found in the speed trace: bouts of work that stand out from what lies between."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import run_lengths
from tercet.engine.judgement import Repetition
from tercet.engine.motion import Motion
from tercet.engine.scale import Floats, Shade

Marks = NDArray[np.int64]

#: Bouts closer together than this are one. [s]
JOIN_S = 6
#: Edges are sought so far from where the level jumps. [s]
EDGE_S = 6
#: Shortest and longest bout. [s], [m]
SHORTEST_S = 6
LONGEST_M = 3200.0
#: A bout is faster than its recoveries by this share of its own speed.
CONTRAST = 0.12
#: Less will do for bouts and recoveries of this length. [trial], [s]
LONG_CONTRAST, LONG_S = 0.08, 100
#: With this share of bouts of like length, odd ones are no part of the set.
ALIKE = 0.65
#: A lap pressed so near an edge is meant for it. [s] [guess]
LAP_S = 5
#: With this share of edges within so many seconds of a lap, laps part the bouts. [guess]
MOSTLY_PRESSED, LAP_NEAR_S = 0.6, 12
#: Fewer bouts than this are no repetitions.
LEAST_COUNT = 3


def find(
    even_speed: Floats, moved: Motion, work_speed: float, sprints: Sequence[tuple[int, int]] = ()
) -> list[tuple[int, int]]:
    """Find the bouts of work.

    Parameters
    ----------
    even_speed : ndarray, shape (n,)
        Speed followed, freed of most of the slowing on hills; NaN where unknown. [m/s]
    moved : Motion
        Running told from walking, and metres.
    work_speed : float
        Slower than this is never work. [m/s]
    sprints : sequence of (int, int)
        Short bouts found otherwise; they stand.

    Returns
    -------
    list of (int, int)
        Begin and end (exclusive) of each bout in seconds; empty if fewer than three.

    Notes
    -----
    What lies between two fast stretches parts them only if it is slower by a clear share;
    a dip within a long bout joins them.
    """
    walked = np.minimum(np.nan_to_num(moved.speed), 1.5)
    fast = np.where(moved.running, np.nan_to_num(even_speed), np.where(moved.clock, walked, 0.0))
    work = fast >= work_speed
    for begin, end in sprints:
        work[begin:end] = False
    pieces = [list(piece) for piece in run_lengths(work)]
    bouts = _joined(pieces, fast)
    covered = np.concatenate(([0.0], np.cumsum(moved.metres)))
    speed = np.nan_to_num(moved.speed)
    kept = list(sprints)
    for begin, end in bouts:
        core = _middle(fast[begin:end])
        rests = [
            _middle(side)
            for side in (fast[max(begin - 25, 0) : max(begin - 2, 0)], fast[end + 2 : end + 25])
            if len(side) >= 5
        ]
        if not rests or max(rests) > core * (1 - _contrast(end - begin)):
            continue
        begin, end = _sharp(begin, end, core, rests, speed)
        if end - begin >= SHORTEST_S and covered[end] - covered[begin] <= LONGEST_M:
            kept.append((begin, end))
    kept = _of_a_set(sorted(kept))
    return kept if len(kept) >= LEAST_COUNT else []


def _of_a_set(bouts: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Leave out what is far shorter or longer than bouts that are otherwise alike."""
    if len(bouts) <= LEAST_COUNT:
        return bouts
    off = np.log([end - begin for begin, end in bouts])
    off = np.abs(off - np.median(off))
    if np.count_nonzero(off < np.log(1.3)) < ALIKE * len(bouts):
        return bouts
    return [bout for bout, far in zip(bouts, off.tolist(), strict=True) if far < np.log(3.5)]


def _contrast(seconds: int) -> float:
    """Share by which work and recovery differ at least: less is plain enough if it lasts."""
    return LONG_CONTRAST if seconds >= LONG_S else CONTRAST


def _middle(values: Floats) -> float:
    """The median of finite values; a day asks for thousands, and numpy's own checks first."""
    half = len(values) // 2
    if len(values) % 2:
        return float(np.partition(values, half)[half])
    below, above = np.partition(values, (half - 1, half))[half - 1 : half + 1].tolist()
    return float((below + above) / 2)


def _sharp(begin: int, end: int, core: float, rests: list[float], speed: Floats) -> tuple[int, int]:
    """Move the edges to where speed crosses half way between the bout and what lies beside it."""
    share = 0.5 * (1.0 + np.array([rests[0], rests[-1]]) / core)
    half = share * _middle(speed[begin:end])
    first = max(begin - EDGE_S, 0)
    slow = np.flatnonzero(speed[first : min(begin + EDGE_S, end)] < half[0])
    start = first + int(slow[-1]) + 1 if len(slow) else begin
    last = max(end - EDGE_S, start)
    slow = np.flatnonzero(speed[last : end + EDGE_S] < half[1])
    stop = last + int(slow[0]) if len(slow) else end
    return (start, stop) if stop - start >= SHORTEST_S else (begin, end)


def _joined(pieces: list[list[int]], fast: Floats) -> list[tuple[int, int]]:
    """Join fast stretches with no recovery between them, the slightest dips first."""
    cores = [_middle(fast[a:b]) for a, b in pieces]

    def dip(k: int) -> float:
        """How deep it goes down behind a stretch, over what parts two."""
        (_, b), (c, _) = pieces[k : k + 2]
        if c - b < JOIN_S:
            return 0.0
        return (1.0 - _middle(fast[b:c]) / min(cores[k : k + 2])) / _contrast(c - b)

    # A join changes its own two dips alone: to look at all again would take minutes for a day.
    dips = [dip(k) for k in range(len(pieces) - 1)]
    while dips and min(dips) < 1.0:
        least = dips.index(min(dips))
        joined = [pieces[least][0], pieces[least + 1][1]]
        pieces[least : least + 2] = [joined]
        cores[least : least + 2] = [_middle(fast[joined[0] : joined[1]])]
        del dips[least]
        for k in range(max(least - 1, 0), min(least + 1, len(dips))):
            dips[k] = dip(k)
    return [(a, b) for a, b in pieces]


def at_laps(bouts: list[tuple[int, int]], laps: Sequence[float]) -> list[tuple[int, int]]:
    """Move the edges of bouts to laps that the runner pressed at both of them.

    Parameters
    ----------
    bouts : list of (int, int)
        From :func:`find`. [s]
    laps : sequence of float
        Moments of pressing. [s]

    Returns
    -------
    list of (int, int)
        A bout is moved only if a lap was pressed within :data:`LAP_S` of its begin and another
        of its end: then the runner's thumb says where it was, else laps are of something else.
        Where most edges were pressed, two bouts with no lap near the gap between them are one.
    """
    marks = np.unique(np.round([lap for lap in laps if np.isfinite(lap)]).astype(np.int64))
    if not len(marks):
        return bouts
    bouts = _joined_by_laps(bouts, marks)
    out: list[tuple[int, int]] = []
    for k, bout in enumerate(bouts):
        begin, end = (int(marks[np.abs(marks - edge).argmin()]) for edge in bout)
        near = abs(begin - bout[0]) <= LAP_S and abs(end - bout[1]) <= LAP_S
        free = (not out or begin >= out[-1][1]) and (k + 1 == len(bouts) or end <= bouts[k + 1][0])
        out.append((begin, end) if near and free and end - begin >= SHORTEST_S else bout)
    return out


def _joined_by_laps(bouts: list[tuple[int, int]], marks: Marks) -> list[tuple[int, int]]:
    def pressed(edge: int) -> bool:
        return bool(np.abs(marks - edge).min() <= LAP_NEAR_S)

    edges = [pressed(edge) for bout in bouts for edge in bout]
    if np.count_nonzero(edges) < MOSTLY_PRESSED * len(edges):
        return bouts
    out = bouts[:1]
    for begin, end in bouts[1:]:
        if pressed(out[-1][1]) or pressed(begin):
            out.append((begin, end))
        else:
            out[-1] = (out[-1][0], end)
    return out if len(out) >= LEAST_COUNT else bouts


def describe(
    bouts: Sequence[tuple[int, int]],
    level_speed: Floats,
    metres: Floats,
    shades: Sequence[Shade],
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
