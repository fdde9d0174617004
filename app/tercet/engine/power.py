"""Running power as a stand-in for speed: put on its scale by what both say in the same run."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import moving_mean
from tercet.engine.scale import Floats, Thresholds, intensity

#: Less running with both tells too little of their relation. [s]
LEAST_S = 300
#: Power that a running person shows. [W]
POSSIBLE = (60.0, 1200.0)
#: Meters of power are calmed over this long. [s]
CALM_S = 5
#: The speed that LT2 watts stand for where no pace is known. [m/s] [guess]
LT2_STANDS_FOR = 4.0
#: What is slower is not running on a way. [m/s]
LEAST_SPEED = 1.8


def told_by_power(power: Floats | None) -> NDArray[np.bool_] | None:
    """Where power tells of a running person, shape (n,); None without power [W]."""
    if power is None:
        return None
    low, high = POSSIBLE
    return np.asarray(np.isfinite(power) & (power >= low) & (power <= high), dtype=np.bool_)


def calmed(power: Floats | None) -> Floats:
    """Power as it is judged: what a running person shows, calmed.

    Parameters
    ----------
    power : ndarray, shape (n,), or None
        [W], NaN where unknown.

    Returns
    -------
    ndarray of float64, shape (n,)
        [W], NaN where it tells of no running; shape (0,) where it never does.
    """
    there = told_by_power(power)
    if power is None or there is None or not there.any():
        return np.zeros(0)
    calm = moving_mean(np.where(there, power, np.nan), CALM_S)
    return np.asarray(np.where(there, calm, np.nan), dtype=np.float64)


def level_speed_by_lines(power: Floats | None, t: Thresholds | None) -> Floats | None:
    """Level-equivalent speed from power by the runner's two lines in watts.

    Parameters
    ----------
    power : ndarray, shape (n,), or None
        [W], NaN where unknown.
    t : Thresholds or None

    Returns
    -------
    ndarray of float64, shape (n,), or None
        [m/s]: LT1 and LT2 power stand at LT1 and LT2 speed, straight through both above LT1,
        towards standing below it: power rises with speed in proportion (common practice, no
        source). NaN where power is missing; None without lines in watts.
    """
    if power is None or t is None or not (t.by_power and t.by_speed):
        return None
    assert t.lt1_speed and t.lt2_speed and t.lt1_power and t.lt2_power
    calm = calmed(power)
    if not len(calm):
        return np.full(len(power), np.nan)
    scale = intensity(calm, rest=0.0, lt1=t.lt1_power, lt2=t.lt2_power)
    speed = np.where(
        scale <= 1.0, scale * t.lt1_speed, t.lt1_speed + (scale - 1.0) * (t.lt2_speed - t.lt1_speed)
    )
    return np.asarray(speed, dtype=np.float64)


def level_speed_by_power(
    power: Floats | None, level_speed: Floats, running: NDArray[np.bool_]
) -> Floats:
    """Level-equivalent speed from power, by their relation in this run.

    Parameters
    ----------
    power : ndarray, shape (n,), or None
        [W], NaN where unknown.
    level_speed : ndarray, shape (n,)
        [m/s], NaN or near zero where speed is lost.
    running : ndarray of bool, shape (n,)

    Returns
    -------
    ndarray of float64, shape (n,)
        NaN where power is missing, and everywhere if five minutes of both are not there.

    Notes
    -----
    The cost of running a metre on the level hardly depends on speed (di Prampero et al., J. Exp.
    Biol. 208:2809-2816, 2005: 3.8 J/(kg m)), so level-equivalent speed goes with power; meters
    differ in scale, so each run tells its own.
    """
    nothing = np.full(len(level_speed), np.nan)
    there = told_by_power(power)
    if power is None or there is None:
        return nothing
    share = share_between(level_speed, np.where(there, power, np.nan), running)
    return np.asarray(share * calmed(power), dtype=np.float64) if share > 0 else nothing


def share_between(speed: Floats, other: Floats, running: NDArray[np.bool_]) -> float:
    """What speed is to another channel in this run: the median of their ratio.

    Parameters
    ----------
    speed, other : ndarray, shape (n,)
        NaN or near zero where unknown; the one that is a speed in m/s, or both.
    running : ndarray of bool, shape (n,)

    Returns
    -------
    float
        NaN where five minutes of both are not there.
    """
    both = running & (np.nan_to_num(speed) > LEAST_SPEED) & (np.nan_to_num(other) > LEAST_SPEED)
    if np.count_nonzero(both) < LEAST_S:
        return float("nan")
    return float(np.median(speed[both] / other[both]))


def in_speeds(t: Thresholds) -> Thresholds:
    """Lines that are watts alone, as speeds in proportion to them; others as they are.

    Parameters
    ----------
    t : Thresholds

    Returns
    -------
    Thresholds
        LT2 speed is :data:`LT2_STANDS_FOR`, LT1 speed as far below it as the watts are. They
        serve judging alone: nobody ran them.
    """
    if t.by_speed or not t.by_power:
        return t
    assert t.lt1_power and t.lt2_power
    lt1 = LT2_STANDS_FOR * t.lt1_power / t.lt2_power
    return replace(t, lt1_speed=lt1, lt2_speed=LT2_STANDS_FOR, top_speed=None)
