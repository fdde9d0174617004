"""What is known of a run beside its samples: pressed laps, a belt's speed, the runner's effort."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tercet.engine.scale import Shade
from tercet.engine.timeline import Timeline

#: Session RPE (CR-10) up to which a run was easy, and from which it was hard [1]_ of
#: :func:`shade_of_effort`.
LIGHT_EFFORT, HARD_EFFORT = 4, 7
#: With this share of the run on a belt of known speed, its speed is no guess of the watch.
MOSTLY = 0.8


@dataclass(frozen=True)
class Belt:
    """A stretch on a treadmill whose speed the runner read off; from the start, [s], [m/s]."""

    start_s: float
    end_s: float
    speed: float


@dataclass(frozen=True)
class Known:
    """What a recording's channels do not hold; everything may be missing."""

    laps: tuple[float, ...] = ()  # moments at which the runner pressed lap [s from the start]
    belts: tuple[Belt, ...] = ()
    effort: int | None = None  # session RPE, CR-10


NOTHING = Known()


def shade_of_effort(effort: int) -> Shade:
    """Shade of a whole session by its session RPE: up to 4 easy, from 7 hard [1]_.

    Parameters
    ----------
    effort : int
        0 to 10 (CR-10). [unitless]

    Returns
    -------
    Shade

    References
    ----------
    .. [1] K. S. Seiler, G. O. Kjerland, Scand. J. Med. Sci. Sports 16:49-56, 2006 (bounds from
       memory).
    """
    if effort <= LIGHT_EFFORT:
        return Shade.EASY
    return Shade.HARD if effort >= HARD_EFFORT else Shade.MODERATE


def on_belts(
    line: Timeline, belts: Sequence[Belt], begin_s: int = 0
) -> tuple[Timeline, NDArray[np.bool_]]:
    """Put belt speeds in place of what a watch guessed.

    Parameters
    ----------
    line : Timeline
    belts : sequence of Belt
        Later ones win where they overlap.
    begin_s : int
        Where the line begins in the run. [s]

    Returns
    -------
    line : Timeline
        Speed and metres follow the belt while the timer ran. A belt leads nowhere: places and
        heights that a watch shows there are noise, and left out.
    told : ndarray of bool, shape (n,)
        Where they do.
    """
    n = len(line)
    told = np.zeros(n, dtype=bool)
    good = [b for b in belts if np.isfinite(b.speed) and b.speed >= 0]
    if not good or not n:
        return line, told
    speed = line.channels.get("speed", np.full(n, np.nan)).copy()
    metres = line.metres.copy()
    middle = np.arange(begin_s, begin_s + n) + 0.5
    for belt in good:
        inside = (middle >= belt.start_s) & (middle < belt.end_s) & line.running_clock
        speed[inside], metres[inside] = belt.speed, belt.speed
        if inside[-1:].any():
            metres[-1] *= line.last_second_s
        told |= inside
    covered = line.covered[0] + np.concatenate(([0.0], np.cumsum(metres)))
    channels = {**line.channels, "speed": speed}
    for name in ("altitude", "latitude", "longitude"):
        if name in channels:
            channels[name] = np.where(told, np.nan, channels[name])
    return replace(line, channels=channels, metres=metres, covered=covered), told
