"""How sure the sums are: intervals of the seconds in each shade."""

from __future__ import annotations

import numpy as np

from tercet.engine.scale import Floats

#: Half a 90 % interval in spreads of a normal law.
NINETY = 1.645
#: Errors of neighbouring seconds hang together over about this long. [s] [trial]
TOGETHER_S = 20.0
#: Every sum may be off by this much, and by this much for each change of shade. [s] [trial]
SUM_S, CHANGE_S = 6.0, 0.5


def intervals(
    log_demand: Floats, chances: Floats, lines: tuple[float, float], run_spread: float
) -> tuple[tuple[float, float], tuple[float, float], tuple[float, float]]:
    """Give 90 % intervals of the seconds that are easy, moderate and hard.

    Parameters
    ----------
    log_demand : ndarray, shape (n,)
        Expected natural log of demand in the running seconds.
    chances : ndarray, shape (n, 3)
        Probability of each shade in them.
    lines : (float, float)
        Natural log of LT1 and LT2 speed.
    run_spread : float
        Spread of an error that all seconds share (natural log).

    Returns
    -------
    tuple of three (low, high)
        [s]. The shared error is moved through its 90 % range; the errors of single seconds are
        added, then a fixed allowance for edges.
    """
    order = np.sort(log_demand)
    shifts = NINETY * run_spread * np.linspace(-1.0, 1.0, 9)
    n = len(order)
    under = [np.searchsorted(order, line - shifts) for line in lines]
    counts = np.stack((under[0], under[1] - under[0], n - under[1]), axis=1).astype(np.float64)
    judged = chances.argmax(axis=1)
    changes = int(np.count_nonzero(np.diff(judged)))
    own = NINETY * np.sqrt(TOGETHER_S * (chances * (1 - chances)).sum(axis=0))
    own += SUM_S + CHANGE_S * changes
    middle = np.bincount(judged, minlength=3)[:3]
    low = np.maximum(np.minimum(counts.min(axis=0), middle) - own, 0.0)
    high = np.minimum(np.maximum(counts.max(axis=0), middle) + own, n)
    easy, moderate, hard = zip(low.tolist(), high.tolist(), strict=True)
    return easy, moderate, hard
