"""What the session page draws: a session second by second, and its shades made calm to look at."""

from __future__ import annotations

import heapq
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from tercet.engine.judgement import Repetition
from tercet.engine.parts import Part
from tercet.engine.scale import Floats

#: Shorter stretches take their longer neighbour's shade, in the drawing only.
SHORTEST_DRAWN_S = 20


@dataclass(frozen=True, eq=False)
class SessionTrace:
    """A session second by second; arrays have one entry a second and NaN in gaps.

    ``seconds`` are timer seconds from the first sample, ``shades`` values of Shade, speeds in
    m/s, heart rate in beats/min, altitude in m, running power in W. The boundaries are those that
    judged this session, ``None`` where not known. ``last_second_s`` is the last second's length.
    """

    seconds: Floats  # (n,)
    shades: NDArray[np.uint8]  # (n,)
    level_speed: Floats  # (n,)
    speed: Floats  # (n,)
    heart_rate: Floats  # (n,)
    altitude: Floats  # (n,)
    lt1_speed: float | None = None
    lt2_speed: float | None = None
    lt1_hr: float | None = None
    lt2_hr: float | None = None
    repetitions: tuple[Repetition, ...] = ()
    last_second_s: float = 1.0
    parts: tuple[Part, ...] = ()  # empty where there was no work
    power: Floats = field(default_factory=lambda: np.zeros(0))  # (n,), or empty without any
    lt1_power: float | None = None
    lt2_power: float | None = None

    @property
    def elapsed_s(self) -> float:
        """Length of the timer's line [s]."""
        return float(self.seconds[-1]) + self.last_second_s if len(self.seconds) else 0.0


@dataclass(frozen=True)
class Stretch:
    """Entries ``first`` up to, not including, ``stop`` of one shade."""

    first: int
    stop: int
    shade: int


def drawn_stretches(
    shades: NDArray[np.uint8], shortest: int = SHORTEST_DRAWN_S
) -> tuple[Stretch, ...]:
    """Cut a session into stretches of one shade none of which is too short to see.

    Parameters
    ----------
    shades : ndarray of uint8, shape (n,)
        One shade a second.
    shortest : int
        Stretches under this many seconds take the shade of their longer neighbour, the
        shortest first and the earlier of two equal neighbours. [s]

    Returns
    -------
    tuple of Stretch
        In order, without holes; a session shorter than ``shortest`` is one stretch.
    """
    if not len(shades):
        return ()
    cuts = np.flatnonzero(np.diff(shades)) + 1
    first = [0, *cuts.tolist()]
    stop = [*cuts.tolist(), len(shades)]
    shade = shades[first].tolist()
    count = len(first)
    before = list(range(-1, count - 1))
    after = [*range(1, count), -1]
    alive = [True] * count

    def join(left: int, right: int) -> None:
        stop[left] = stop[right]
        alive[right] = False
        after[left] = after[right]
        if after[left] >= 0:
            before[after[left]] = left

    heap = [(stop[k] - first[k], k) for k in range(count) if stop[k] - first[k] < shortest]
    heapq.heapify(heap)
    while heap:
        length, k = heapq.heappop(heap)
        if not alive[k] or length != stop[k] - first[k]:
            continue
        near = [n for n in (before[k], after[k]) if n >= 0]
        if not near:
            break
        shade[k] = shade[max(near, key=lambda n: stop[n] - first[n])]
        if before[k] >= 0 and shade[before[k]] == shade[k]:
            k = before[k]
            join(k, after[k])
        if after[k] >= 0 and shade[after[k]] == shade[k]:
            join(k, after[k])
        if stop[k] - first[k] < shortest:
            heapq.heappush(heap, (stop[k] - first[k], k))
    return tuple(Stretch(first[k], stop[k], shade[k]) for k in range(count) if alive[k])


@dataclass(frozen=True)
class Minute:
    """One minute of a session, or what is left of it; means are NaN where nothing was measured."""

    start_s: float
    seconds: tuple[float, ...]  # by shade, in the order of Shade
    level_speed: float
    heart_rate: float
    altitude: float
    power: float


def minutes(trace: SessionTrace) -> tuple[Minute, ...]:
    """Sum a session up minute by minute, for reading it as a table."""
    rows = []
    for first in range(0, len(trace.seconds), 60):
        part = slice(first, first + 60)
        weights = np.ones(len(trace.shades[part]))
        if first + 60 >= len(trace.seconds):
            weights[-1] = trace.last_second_s
        sums = np.bincount(trace.shades[part], weights=weights, minlength=5)
        rows.append(
            Minute(
                float(trace.seconds[first]),
                tuple(sums.tolist()),
                _mean(trace.level_speed[part]),
                _mean(trace.heart_rate[part]),
                _mean(trace.altitude[part]),
                _mean(trace.power[part]),
            )
        )
    return tuple(rows)


def _mean(values: Floats) -> float:
    known = values[np.isfinite(values)]
    return float(known.mean()) if len(known) else float("nan")
