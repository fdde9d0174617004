"""How heart rate follows what the running asks: first order, on and off alike."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats, Thresholds

#: Rise of heart rate with level speed below LT1 [1]_. [beats/min per m/s]
GAIN = 24.2
#: Standing about between efforts settles this far above rest. [beats/min] [guess]
STANDING_ABOVE_REST = 30.0
#: Below this speed heart rate falls off towards standing. [m/s] [guess]
KNEE_SPEED = 2.0
#: Weight of the runner's own gain between LT1 and LT2 against the published one below LT1.
OWN_GAIN = 0.75
#: Slope above LT2 as a share of that between LT1 and LT2, up to the maximum. [trial]
ABOVE_LT2 = 0.7
_BLOCK = 48


def follow(goal: ArrayLike, tau: ArrayLike, step: float, start: ArrayLike) -> Floats:
    """Follow a goal with first-order kinetics [1]_, several goals and time constants at once.

    Parameters
    ----------
    goal : array_like, shape (n, m)
        What each of m traces would settle to, constant within a step. [beats/min]
    tau : array_like, shape (k,)
        Time constants. [s]
    step : float
        Length of a step. [s]
    start : array_like, broadcastable to (k, m)
        State before the first step. [beats/min]

    Returns
    -------
    ndarray of float64, shape (k, n, m)
        State at the end of every step. [beats/min]

    References
    ----------
    .. [1] K. J. Hunt, S. E. Fankhauser, J. Saengsuwan, BioMed Eng OnLine 14:117, 2015:
       tau 57.6 +- 23.6 s, gain 24.2 +- 8.3 beats/min per m/s.
    """
    g = np.asarray(goal, dtype=np.float64)
    keep = np.exp(-step / np.asarray(tau, dtype=np.float64))
    n, m = g.shape
    ages = np.arange(_BLOCK)[:, None] - np.arange(_BLOCK)[None, :]
    # Within a block the answer is one product; blocks are chained by their last state.
    weights = np.where(ages >= 0, keep[:, None, None] ** np.maximum(ages, 0), 0.0)
    weights *= (1 - keep)[:, None, None]
    fade = keep[:, None, None] ** (np.arange(_BLOCK) + 1)[None, :, None]
    blocks = -(-n // _BLOCK)
    padded = np.concatenate((g, np.repeat(g[-1:], blocks * _BLOCK - n, axis=0)))
    state = np.broadcast_to(np.asarray(start, dtype=np.float64), (len(keep), m))
    out = np.empty((len(keep), blocks * _BLOCK, m))
    for b in range(blocks):
        part = slice(b * _BLOCK, (b + 1) * _BLOCK)
        out[:, part] = weights @ padded[part] + fade * state[:, None, :]
        state = out[:, part.stop - 1]
    return out[:, :n]


def settled(demand: Floats, thresholds: Thresholds) -> Floats:
    """Heart rate that a level-equivalent speed leads to after some minutes.

    Parameters
    ----------
    demand : ndarray
        Level-equivalent speed, walking at its lower cost. [m/s]
    thresholds : Thresholds
        With both lines known as speed and as heart rate.

    Returns
    -------
    ndarray of float64, same shape
        Straight between LT1 and LT2; below LT1 by the runner's own gain drawn towards the
        published one; above LT2 bending towards the maximum; below 2 m/s down to standing.
        [beats/min]
    """
    t = thresholds
    assert t.lt1_hr and t.lt2_hr and t.lt1_speed and t.lt2_speed
    above = (t.lt2_hr - t.lt1_hr) / (t.lt2_speed - t.lt1_speed)
    below = float(np.clip(above, 0.5 * GAIN, 1.8 * GAIN)) ** OWN_GAIN * GAIN ** (1 - OWN_GAIN)
    rest = t.hr_rest if t.hr_rest is not None else min(60.0, t.lt1_hr - 60.0)
    top = t.hr_max if t.hr_max is not None else t.lt2_hr + 0.5 * (t.lt2_hr - t.lt1_hr) + 8.0
    room = max(top - t.lt2_hr, 4.0)
    standing = rest + STANDING_ABOVE_REST
    knee = min(KNEE_SPEED, 0.8 * t.lt1_speed)
    at_knee = max(standing + 5.0, t.lt1_hr - (t.lt1_speed - knee) * below)
    at_knee = min(at_knee, t.lt1_hr - 1.0)
    standing = min(standing, at_knee - 1.0)
    beyond = t.lt2_speed + np.array([1.0, 1.01]) * room / (ABOVE_LT2 * above)
    bent = np.array([top, top])
    knots = np.interp(
        demand,
        np.concatenate(([0.0, knee, t.lt1_speed, t.lt2_speed], beyond)),
        np.concatenate(([standing, at_knee, t.lt1_hr, t.lt2_hr], bent)),
    )
    return np.asarray(knots, dtype=np.float64)
