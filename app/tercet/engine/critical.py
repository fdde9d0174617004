"""Critical speed and D' from a runner's hard efforts: the line most of them share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from tercet.engine.efforts import LONGEST_S, SHORTEST_S, Effort

#: An effort was hard if it was faster than usual running by this factor. [trial]
HARD = 1.2
#: What D' is taken for before anything is known, and its spread: road runners lie about there
#: [memory]; wide, so that a few efforts outweigh it. [m]
USUAL_RESERVE, RESERVE_SPREAD = 200.0, 80.0
#: Spread of an all-out effort's distance, as a share: form, pacing and position error. [trial]
SPREAD = 0.02
#: Efforts belong to one line within this share; none may lie farther above it. [trial]
WITHIN = 0.05
#: D' of a pair of efforts must be possible. [m]
POSSIBLE_RESERVE = (30.0, 500.0)
#: The longest effort lasts at least so many times the shortest.
FEWEST, REACH = 3, 2.0
#: Half of a 90 % interval in standard errors.
NINE_OF_TEN = 1.645


@dataclass(frozen=True)
class Critical:
    """Critical speed and the distance above it with half-widths of 90 % intervals."""

    speed: float  # [m/s]
    speed_half: float
    reserve: float  # D' [m]
    reserve_half: float
    efforts: tuple[Effort, ...]  # those on the line, shortest first


def hard_efforts(efforts: Iterable[Effort], usual_speed: float) -> tuple[Effort, ...]:
    """Those efforts that were clearly faster than usual running, shortest first.

    Parameters
    ----------
    efforts : iterable of Effort
    usual_speed : float
        Median level speed of all running. [m/s]
    """
    return tuple(
        sorted(
            effort
            for effort in efforts
            if effort.metres > HARD * usual_speed * effort.seconds
            and SHORTEST_S <= effort.seconds <= LONGEST_S
        )
    )


def critical_speed(efforts: Sequence[Effort]) -> Critical:
    """Fit ``distance = speed * time + reserve`` to the efforts that agree with one line.

    Parameters
    ----------
    efforts : sequence of Effort
        Hard ones, of 2 to 20 min, any order.

    Returns
    -------
    Critical

    Raises
    ------
    ValueError
        With the plain reason why nothing can be told.

    Notes
    -----
    An effort that was not all out lies below the line, a fault of position above or below: of
    all lines through two efforts that no other lies above, the one that most efforts share is
    taken, and fitted to those by least squares with a weak guess of D'. The linear model:
    R. L. Hughson, C. J. Orok, L. E. Staudt, Int. J. Sports Med. 5:23-25, 1984.
    """
    if len(efforts) == 0:
        raise ValueError("There was no hard effort of 2 to 20 minutes.")
    time = np.array([effort.seconds for effort in efforts])
    metres = np.array([effort.metres for effort in efforts])
    if len(efforts) < FEWEST:
        raise ValueError(
            f"{len(efforts)} hard effort{'s' if len(efforts) > 1 else ''} of 2 to 20 minutes: "
            f"{FEWEST} are needed, short and long ones."
        )
    if time.max() < REACH * time.min():
        raise ValueError(
            "The hard efforts all lasted about as long: a short and a long one are needed."
        )
    on_line = _shared(time, metres)
    if on_line is None:
        raise ValueError("The hard efforts do not agree on one line: not all were all out.")
    t, d = time[on_line], metres[on_line]
    weight = 1.0 / (SPREAD * d)
    rows = np.vstack([np.stack([t * weight, weight], axis=1), [0.0, 1.0 / RESERVE_SPREAD]])
    aim = np.append(d * weight, USUAL_RESERVE / RESERVE_SPREAD)
    normal = rows.T @ rows
    speed, reserve = np.linalg.solve(normal, rows.T @ aim).tolist()
    spread = np.sqrt(np.diag(np.linalg.inv(normal)))
    used = sorted(effort for effort, on in zip(efforts, on_line.tolist(), strict=True) if on)
    return Critical(
        speed,
        NINE_OF_TEN * float(spread[0]),
        reserve,
        NINE_OF_TEN * float(spread[1]),
        tuple(used),
    )


def _shared(time: np.ndarray, metres: np.ndarray) -> np.ndarray | None:
    """Which efforts lie on the line that most of them share; None if fewer than three do."""
    best: tuple[int, float] = (FEWEST - 1, 0.0)
    chosen = None
    for i, j in combinations(range(len(time)), 2):
        if max(time[i], time[j]) < REACH * min(time[i], time[j]):
            continue
        speed = (metres[i] - metres[j]) / (time[i] - time[j])
        reserve = metres[i] - speed * time[i]
        if not POSSIBLE_RESERVE[0] <= reserve <= POSSIBLE_RESERVE[1]:
            continue
        off = metres / (speed * time + reserve) - 1.0
        if off.max() > WITHIN:
            continue
        on = np.abs(off) <= WITHIN
        score = (int(on.sum()), -float(np.abs(off[on]).sum()))
        if score[0] >= FEWEST and (chosen is None or score > best):
            best, chosen = score, on
    return chosen
