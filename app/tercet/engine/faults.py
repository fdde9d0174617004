"""The two common faults of a stretch of training: never truly easy, never truly hard."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.load import HARD_SESSION_S

#: A run stayed easy if this share of it was.
STAYED_EASY = 0.90
#: Never easy: fewer than this share of the runs without work stayed easy. Never hard: less hard
#: running than this a week. [s] (limits are this program's own; that the two faults are the
#: common ones is common practice, no source)
FEW, HARD_A_WEEK_S = 0.5, 60.0
#: Fewer weeks, runs or hours than this show nothing yet.
LEAST_WEEKS, LEAST_RUNS, LEAST_S = 3, 6, 4 * 3600.0


@dataclass(frozen=True)
class Evidence:
    """What of a stretch's runs says so; ``shown`` is whether the fault is."""

    shown: bool
    count: int  # runs without work that stayed easy; or sessions with hard running
    of: int  # runs without work; or all runs
    hard_s: float


def never_easy(seconds: ArrayLike, meant: ArrayLike, weeks: int) -> Evidence:
    """Whether runs without work in them hardly ever stayed easy.

    Parameters
    ----------
    seconds : array_like, shape (n, 3) or wider
        Easy, moderate, hard of each run. [s]
    meant : array_like, shape (n,)
        Runs whose moderate running was set out for.
    weeks : int
        Length of the stretch.
    """
    table = _table(seconds)
    plain = ~np.asarray(meant, dtype=np.bool_) & (table[:, 2] < HARD_SESSION_S)
    plain &= table.sum(axis=1) > 0
    stayed = plain & (table[:, 0] >= STAYED_EASY * table.sum(axis=1))
    count, of = int(stayed.sum()), int(plain.sum())
    enough = weeks >= LEAST_WEEKS and of >= LEAST_RUNS
    return Evidence(enough and count < FEW * of, count, of, float(table[:, 2].sum()))


def never_hard(seconds: ArrayLike, weeks: int) -> Evidence:
    """Whether hardly anything was run hard.

    Parameters
    ----------
    seconds : array_like, shape (n, 3) or wider
        Easy, moderate, hard of each run. [s]
    weeks : int
        Length of the stretch.
    """
    table = _table(seconds)
    hard = float(table[:, 2].sum())
    enough = weeks >= LEAST_WEEKS and len(table) >= LEAST_RUNS and table.sum() >= LEAST_S
    count = int(np.count_nonzero(table[:, 2] >= HARD_A_WEEK_S))
    return Evidence(enough and hard < HARD_A_WEEK_S * weeks, count, len(table), hard)


def _table(seconds: ArrayLike) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    table = np.asarray(seconds, dtype=np.float64)
    return table.reshape(len(table), -1)[:, :3] if len(table) else np.zeros((0, 3))
