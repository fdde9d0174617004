"""What a runner's own pace tells of cost that is not seen: people slow where it is hard.

A runner who means to run evenly answers an unseen hill, wind or soft ground by slowing for part
of its cost. So where pace wavers about what it is held at for minutes, some of the wavering is
unseen cost of the other sign, the more the less of the cost is known.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tercet.engine.scale import Floats

#: Share of a cost that is taken in pace. [trial]
YIELDED = 0.5
#: Spread of pace that has no reason, over about a minute (natural log). [trial]
OWN = 0.025
#: The correction is never more than this share of the wavering, nor than so much. [trial]
MOST, MOST_LOG = 1.5, 0.20
#: At least this share of the variance of the unseen cost stays in doubt. [guess]
LEAST_LEFT = 0.1
#: Pace is held over about so long, by seconds that differ by no more than so much. [s], [trial]
HELD_S, ALIKE = 240.0, 0.10
#: Pace is compared in steps of this length. [s]
STEP_S = 10
#: Longer runs are worked in longer steps.
MOST_STEPS = 720
_AT_ONCE = 64  # rows


def unseen_by_pace(even: Floats, seen: NDArray[np.bool_], spread: float) -> tuple[Floats, float]:
    """Expect unseen cost where pace wavers about what it is held at.

    Parameters
    ----------
    even : ndarray, shape (n,)
        Natural log of speed, freed of what known hills do to it.
    seen : ndarray of bool, shape (n,)
        Where it is running.
    spread : float
        Prior spread of the unseen cost (natural log).

    Returns
    -------
    cost : ndarray of float64, shape (n,)
        Expected unseen cost (natural log), of the sign against the wavering: the regression of
        the cost on what it does to pace. 0 where not seen.
    spread : float
        What is left of its spread.
    """
    share = min(MOST, YIELDED * spread**2 / ((YIELDED * spread) ** 2 + OWN**2))
    cost = np.clip(-share * wavering(even, seen), -MOST_LOG, MOST_LOG)
    return cost, spread * float(np.sqrt(max(1.0 - YIELDED * share, LEAST_LEFT)))


def wavering(even: Floats, seen: NDArray[np.bool_]) -> Floats:
    """Log of pace over the pace held about it; steps from one pace to another do not count.

    Parameters
    ----------
    even : ndarray, shape (n,)
        Natural log of speed, freed of what known hills do to it.
    seen : ndarray of bool, shape (n,)
        Where it is running.

    Returns
    -------
    ndarray of float64, shape (n,)
        0 where not seen.
    """
    n = len(even)
    if n == 0:
        return np.zeros(0)
    step = max(STEP_S, -(-n // MOST_STEPS))
    count = -(-n // step)
    filled = np.zeros(count * step)
    filled[:n] = np.where(seen, even, 0.0)
    there = np.zeros(count * step)
    there[:n] = seen
    weight = there.reshape(count, step).sum(axis=1)
    pace = filled.reshape(count, step).sum(axis=1) / np.maximum(weight, 1.0)
    time = step * np.arange(count)
    past, alike = (time / HELD_S).astype(np.float32), (pace / ALIKE).astype(np.float32)
    near = np.empty((count, count))
    for begin in range(0, count, _AT_ONCE):  # all at once it would take four times the memory
        some = slice(begin, begin + _AT_ONCE)
        like = alike[some, None] - alike[None, :]
        like *= np.float32(-0.5) * like
        like -= np.abs(past[some, None] - past[None, :])
        near[some] = np.exp(like, out=like)
    near *= weight[None, :]
    held = (near @ pace) / np.maximum(near.sum(axis=1), 1e-9)
    off = np.where(weight > 0, pace - held, 0.0)
    smooth = np.interp(np.arange(n) + 0.5, time + step / 2, off)
    return np.where(seen, smooth, 0.0)
