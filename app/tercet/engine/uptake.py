"""Oxygen uptake and heart rate predicted for sets of repetitions: a model, not a measurement."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine import kinetics
from tercet.engine.physiology import oxygen_cost, share_of_maximal_heart_rate
from tercet.engine.scale import Floats, Thresholds

#: Speed at LT2 as a share of the highest speed of a treadmill test: 84 +- 6 %, G. Condello et
#: al., J. Sports Sci. Med. 13:309-314, 2014.
LT2_OVER_TOP = 0.84
#: Uptake standing about, as a share of the highest. [guess]
STANDING = 0.10
#: A jog between repetitions as a share of LT1 speed [guess], and walking [m/s] [guess].
JOG_OVER_LT1, WALK_SPEED = 0.75, 1.4
#: "Near the highest" begins here (common practice, no source).
NEAR = 0.90
#: Easy jogging before the first repetition is part of the picture. [s]
LEAD_S = 60


@dataclass(frozen=True)
class Kinetics:
    """Constants of the uptake's answer to a step.

    References
    ----------
    .. [1] N. J. A. Berger et al., Int. J. Sports Med. 27:1005-1012, 2006: 25 +- 6 s in runners
       and other endurance athletes of 46 to 65 years. Nine trained runners had 17.9 to 19.1 s:
       H. Carter et al., Eur. J. Appl. Physiol. 86:347-354, 2002.
    .. [2] K. J. Hunt, S. E. Fankhauser, J. Saengsuwan, BioMed. Eng. OnLine 14:117, 2015:
       heart rate 57.6 +- 23.6 s, rising and falling alike.
    .. [3] F. Ozyener et al., J. Physiol. 533:891-902, 2001: slower falling than rising after
       work above LT, and a slow component that begins after 90 to 180 s (from memory).
    .. [4] Between muscle and mouth lie stores, the oxygen of venous blood and of myoglobin, which
       bridge short bouts: I. Astrand et al., Acta Physiol. Scand. 48:454-460, 1960; E. H.
       Christensen, R. Hedman, B. Saltin, 50:269-286, 1960. They are taken as one well-mixed
       store in place of a pure delay of 10 to 20 s (from memory), its time constant amid it.
    """

    on_s: float = 25.0  # [1]_
    off_s: float = 33.0  # [3]_
    mixing_s: float = 15.0  # [4]_
    slow_after_s: int = 100  # of unbroken work above LT1 [3]_
    slow_s: float = 180.0  # [3]_
    slow_gain: float = 0.25  # of what is asked for above LT1 [guess]
    heart_s: float = 57.6  # [2]_


@dataclass(frozen=True, eq=False)
class Predicted:
    """What a set is predicted to ask, second by second from one minute before it.

    ``uptake`` is a share of the highest, ``heart_rate`` in beats/min, ``work`` marks the
    repetitions; all of shape (n,).
    """

    uptake: Floats
    heart_rate: Floats
    work: NDArray[np.bool_]

    @property
    def near_s(self) -> float:
        """Seconds at 90 % of the highest uptake or above."""
        return float(np.count_nonzero(self.uptake >= NEAR))

    @property
    def highest(self) -> float:
        """Highest uptake reached, as a share of the runner's highest."""
        return float(self.uptake.max())

    @property
    def highest_heart_rate(self) -> float:
        """[beats/min] NaN where it cannot be told."""
        return float(self.heart_rate.max())


def answer(asked: ArrayLike, above: float, start: float, constants: Kinetics) -> Floats:
    """Follow what is asked for with on and off time constants, a store and a slow component.

    Parameters
    ----------
    asked : array_like, shape (n,)
        Uptake that each second's work would settle to, as a share of the highest; may pass 1.
    above : float
        What is asked for at LT1; work beyond it brings the slow component.
    start : float
        Uptake before the first second.
    constants : Kinetics

    Returns
    -------
    ndarray of float64, shape (n,)
        Never above 1.
    """
    goal = np.asarray(asked, dtype=np.float64)
    rise, fall = np.exp(-1 / constants.on_s), np.exp(-1 / constants.off_s)
    creep = np.exp(-1 / constants.slow_s)
    mixing = np.exp(-1 / constants.mixing_s) if constants.mixing_s > 0 else 0.0
    fast, slow, unbroken, mouth = start, 0.0, 0, start
    out = np.empty(len(goal))
    for k, target in enumerate(goal.tolist()):
        keep = rise if target > fast else fall
        fast = target + (fast - target) * keep
        unbroken = unbroken + 1 if target > above else 0
        more = constants.slow_gain * (target - above) if unbroken > constants.slow_after_s else 0.0
        slow = more + (slow - more) * creep
        muscle = min(fast + slow, 1.0)
        mouth = muscle + (mouth - muscle) * mixing
        out[k] = mouth
        fast = min(fast, 1.0)  # what the body cannot take up does not wait for the recovery
    return out


def schedule(count: int, work_s: float, recovery_s: float) -> NDArray[np.bool_]:
    """Which seconds are work: a minute before, then ``count`` times work and recovery.

    Parameters
    ----------
    count : int
    work_s, recovery_s : float
        [s] A second is work if its middle is.

    Returns
    -------
    ndarray of bool, shape (n,)

    Raises
    ------
    ValueError
        Unless 1 to 200 repetitions of 1 s to 2 h, with recoveries of 0 to 1 h.
    """
    if not (1 <= count <= 200 and 1 <= work_s <= 7200 and 0 <= recovery_s <= 3600):
        raise ValueError("give 1 to 200 repetitions of 1 s to 2 h, with recoveries up to 1 h")
    edges = LEAD_S + np.arange(count + 1) * (work_s + recovery_s)
    seconds = np.arange(round(float(edges[-1]))) + 0.5
    turn = np.searchsorted(edges, seconds, side="right") - 1
    inside = turn >= 0
    return inside & (seconds - edges[np.maximum(turn, 0)] < work_s)


def share_asked(speed: ArrayLike, thresholds: Thresholds) -> Floats:
    """Uptake that a level speed would settle to, as a share of this runner's highest.

    Parameters
    ----------
    speed : array_like
        [m/s] Standing is 0.
    thresholds : Thresholds
        With speeds.

    Returns
    -------
    ndarray of float64
        Above 1 for speeds that cannot be kept up. The highest uptake is taken at LT2 speed
        / 0.84; the cost of running is that of :func:`tercet.engine.physiology.oxygen_cost`.

    Raises
    ------
    ValueError
        Without a speed at LT2.
    """
    if thresholds.lt2_speed is None:
        raise ValueError("the highest uptake is reckoned from the speed at LT2")
    top = float(oxygen_cost(thresholds.lt2_speed / LT2_OVER_TOP))
    return np.maximum(oxygen_cost(speed) / top, STANDING)


def recovery_speed(how: str, thresholds: Thresholds) -> float:
    """Speed [m/s] of a recovery spent "jog", "walk" or "stand"."""
    if how == "jog" and thresholds.lt1_speed is not None:
        return JOG_OVER_LT1 * thresholds.lt1_speed
    return 0.0 if how == "stand" else WALK_SPEED


def predict(
    count: int,
    work_s: float,
    speed: float,
    recovery_s: float,
    how: str,
    thresholds: Thresholds,
    constants: Kinetics | None = None,
) -> Predicted:
    """Predict a runner's oxygen uptake and heart rate through a set of repetitions.

    Parameters
    ----------
    count : int
    work_s, recovery_s : float
        [s]
    speed : float
        Of the repetitions, level. [m/s]
    how : {"jog", "walk", "stand"}
        How the recovery is spent.
    thresholds : Thresholds
        With speeds; without heart rates the heart rate is NaN unless a maximum is known.
    constants : Kinetics or None
        None for the published ones.

    Returns
    -------
    Predicted
    """
    known, slow = constants or Kinetics(), recovery_speed(how, thresholds)
    work = schedule(count, work_s, recovery_s)
    lead = recovery_speed("jog", thresholds)
    asked_speed = np.where(work, speed, slow)
    asked_speed[:LEAD_S] = lead
    asked = share_asked(asked_speed, thresholds)
    above = float(share_asked(thresholds.lt1_speed or 0.0, thresholds))
    uptake = answer(asked, above, float(asked[0]), known)
    if thresholds.by_heart_rate and thresholds.by_speed:
        goal = kinetics.settled(asked_speed, thresholds)
    elif thresholds.hr_max is not None:
        goal = heart_asked(asked, thresholds.hr_max)
    else:
        return Predicted(uptake, np.full(len(work), np.nan), work)
    heart = kinetics.follow(goal[:, None], [known.heart_s], 1.0, goal[0])[0, :, 0]
    return Predicted(uptake, heart, work)


def heart_asked(asked: ArrayLike, maximum: float) -> Floats:
    """Heart rate [beats/min] that a share of the highest uptake settles to, up to the maximum.

    See Also
    --------
    tercet.engine.physiology.share_of_maximal_heart_rate : the line and its source.
    """
    return np.minimum(share_of_maximal_heart_rate(asked), 1.0) * maximum
