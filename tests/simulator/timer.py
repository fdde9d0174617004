"""When the timer stands still, which samples are kept, and where laps begin."""

from __future__ import annotations

import itertools

import numpy as np

from tests.simulator.conditions import Conditions
from tests.simulator.motion import Motion
from tests.simulator.noise import Floats, stream

Lap = tuple[int, int, float, str]  # start_s, duration_s, metres, trigger


def stops(motion: Motion, conditions: Conditions, seed: int) -> list[tuple[int, int]]:
    """Spans (from, to) in seconds during which the timer stood still.

    Auto-pause needs 3-5 s of standing and 1-3 s of running to notice; by hand only waits are
    stopped, within seconds [guess].
    """
    rng = stream(seed, 6)
    if conditions.timer == "running":
        return []
    auto = conditions.timer == "auto"
    still = [
        v < 0.7 and (auto or wait)
        for v, wait in zip(motion.speed.tolist(), motion.waiting, strict=True)
    ]
    out: list[tuple[int, int]] = []
    start: int | None = None
    for t, stands in enumerate([*still, False]):
        if stands and start is None:
            start = t
        elif not stands and start is not None:
            late = int(rng.integers(3, 6)) if auto else int(rng.integers(0, 4))
            after = int(rng.integers(1, 4)) if auto else int(rng.integers(-1, 4))
            first, last = start + late, min(t + after, len(still) - 2)
            if last - first >= 2 and first > 2:
                out.append((first, last))
            start = None
    return out


def kept(
    motion: Motion, speed: Floats, pauses: list[tuple[int, int]], c: Conditions, seed: int
) -> Floats:
    """Times of the samples kept: every second, or every 2-6 s, closer where speed changes."""
    rng = stream(seed, 7)
    n = len(motion.speed)
    held = np.zeros(n + 1, dtype=bool)
    for first, last in pauses:
        held[first + 1 : last] = True
    if c.sampling == "1s":
        return np.flatnonzero(~held).astype(np.float64)
    gaps = rng.choice([2, 3, 4, 5, 6], p=[0.08, 0.17, 0.30, 0.28, 0.17], size=n).tolist()
    edges = {0, n, *(a for a, _ in pauses), *(b for _, b in pauses)}
    values = np.nan_to_num(speed).tolist()
    times, last_kept, gap = [], -10, 1
    for t in range(n + 1):
        moved = t > 0 and abs(values[t] - values[last_kept]) > 0.6
        if held[t] or not (t in edges or t - last_kept >= gap or moved):
            continue
        times.append(t)
        last_kept, gap = t, gaps[min(t, n - 1)]
    return np.array(times, dtype=np.float64)


def laps(motion: Motion, distance: Floats, pauses: list[tuple[int, int]], mode: str) -> list[Lap]:
    """Laps as the watch keeps them; the last one ends with the session."""
    n = len(motion.speed)
    if mode == "pressed":
        cuts, trigger = motion.marks, "manual"
    elif mode == "auto":
        whole = np.floor(distance / 1000.0)
        cuts, trigger = np.flatnonzero(np.diff(whole) > 0).tolist(), "distance"
    else:
        cuts, trigger = [], "manual"
    held = {t for a, b in pauses for t in range(a, b)}
    edges = [0, *(int(t) for t in cuts if 2 < t < n - 2 and t not in held), n]
    out = []
    for k, (a, b) in enumerate(itertools.pairwise(edges)):
        metres = round(float(distance[b] - distance[a]), 2)
        out.append((a, b - a, metres, trigger if k < len(edges) - 2 else "session_end"))
    return out
