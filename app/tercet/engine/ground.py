"""Cost that the watch cannot see, from how heart rate answers to the speed of the run."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tercet.engine.kinetics import follow, settled
from tercet.engine.scale import Floats, Thresholds

#: Candidates of added cost (natural log): a watch's scale error goes both ways, ground and wind
#: only add.
COSTS = np.arange(-0.105, 0.271, 0.015)
#: Candidates of the time constant of heart rate; published 57.6 +- 23.6 s. [s]
TAUS = np.array([28.0, 40.0, 55.0, 75.0, 105.0])
_TAU_BELIEF = np.array([0.14, 0.24, 0.28, 0.22, 0.12])
#: Heart rate is followed in steps of this length. [s]
STEP_S = 5
#: Steps taken together when what is left is regressed.
POOL = 3
#: Warmth, fatigue and the day: shift [beats/min] and drift after ten minutes [beats/min per
#: hour], mean and spread. [trial]
SHIFT = (0.5, 5.0)
DRIFT = (5.0, 5.0)
DRIFT_AFTER_S = 600.0
#: The runner's own rise of heart rate with speed against the one assumed, as a share. [trial]
GAIN_ERROR = (0.03, 0.10)
#: Rounds of robust regression.
ROUNDS = 3
#: One independent error of this size ... [beats/min] [trial]
ERROR_BPM = 2.5
#: ... in this time. [s] [trial]
INDEPENDENT_S = 45.0
#: All of a run's heart rate never counts for more such errors than this: the model itself is
#: off. [trial]
MOST = 16.0
#: Degrees of freedom of the errors' law. [trial]
DEGREES = 4.0
#: Heart rate in the first minutes says little: where it started from is not known. [s]
START_S, START_TRUST = 120.0, 0.3


@dataclass(frozen=True, eq=False)
class Ground:
    """Belief about the added cost, and what heart rate should have been."""

    costs: Floats  # (m,) natural log of added cost
    belief: Floats  # (m,) sums to one
    expected: Floats  # (k,) heart rate in steps of STEP_S [beats/min], NaN unless heard
    shift: float  # of the day [beats/min]
    heard: bool  # whether heart rate had a say


def prior(*, indoor: bool) -> Floats:
    """Belief about the added cost before heart rate is heard, shape of :data:`COSTS`.

    Outdoors: mostly near nothing (and watches measure short rather than long), with a broad
    upper part for soft ground and wind. Indoors a belt's speed is guessed by the watch.
    """
    c = COSTS
    if indoor:
        p = np.exp(-0.5 * (c / 0.06) ** 2)
        return np.asarray(p / p.sum())
    near = np.exp(-0.5 * ((c - 0.012) / 0.018) ** 2)
    broad = np.where(c >= 0, np.exp(-0.5 * (c / 0.09) ** 2), np.exp(-0.5 * (c / 0.02) ** 2))
    p = 0.65 * near / near.sum() + 0.35 * broad / broad.sum()
    return np.asarray(p / p.sum())


def without_heart_rate(*, indoor: bool) -> Ground:
    """What is believed where heart rate is missing."""
    return Ground(COSTS, prior(indoor=indoor), np.zeros(0), 0.0, heard=False)


def listen(
    demand: Floats, heart: Floats, thresholds: Thresholds, *, indoor: bool, trust: Floats
) -> Ground:
    """Weigh every added cost by how well heart rate then follows.

    Parameters
    ----------
    demand : ndarray, shape (k,)
        Level-equivalent speed as seen, in steps of :data:`STEP_S`; walking and standing at
        their lower cost. [m/s]
    heart : ndarray, shape (k,)
        Mean heart rate of each step, NaN where not trusted. [beats/min]
    thresholds : Thresholds
        With both lines known as speed and as heart rate.
    indoor : bool
        Whether speed is a belt's, guessed by the watch.
    trust : ndarray, shape (k,)
        0 to 1, weight of each step's heart rate.

    Returns
    -------
    Ground
        For every added cost and time constant, heart rate is followed from the first step on;
        what is left is regressed robustly on a day's shift and a drift with broad priors.
    """
    known = np.isfinite(heart)
    weight = np.where(known, trust, 0.0) * (STEP_S / INDEPENDENT_S)
    late = np.arange(len(heart)) * STEP_S
    weight[late < START_S] *= START_TRUST
    weight *= 1.0 / (1.0 + weight.sum() / MOST)
    if weight.sum() < 2.0:
        return without_heart_rate(indoor=indoor)
    goal = settled(demand[:, None] * np.exp(COSTS)[None, :], thresholds)
    first = int(np.argmax(known))
    start = float(np.mean(heart[first : first + 4][known[first : first + 4]]))
    model = follow(goal[first:], TAUS, float(STEP_S), start)
    every_hour = np.maximum(late[first:] - DRIFT_AFTER_S, 0.0) / 3600.0
    seen, followed, w, hours = _pooled(heart[first:], model, weight[first:], every_hour)
    left = seen[None, :, None] - followed
    bases = np.empty((*left.shape, 3))
    bases[..., 0], bases[..., 1] = 1.0, hours[None, :, None]
    bases[..., 2] = followed - (thresholds.lt1_hr or 0.0)
    mean, spread = np.array([SHIFT, DRIFT, GAIN_ERROR]).T
    stiff = ERROR_BPM**2 / spread**2
    fit = np.broadcast_to(mean, (len(TAUS), len(COSTS), 3))
    off = left - np.einsum("tnmi,tmi->tnm", bases, fit)
    for _ in range(ROUNDS):
        pull = w[None, :, None] * (DEGREES + 1) / (DEGREES + (off / ERROR_BPM) ** 2)
        pulled = bases * pull[..., None]
        square = np.einsum("tnmi,tnmj->tmij", pulled, bases) + np.diag(stiff)
        right = np.einsum("tnmi,tnm->tmi", pulled, left) + stiff * mean
        fit = np.linalg.solve(square, right[..., None])[..., 0]
        off = left - np.einsum("tnmi,tmi->tnm", bases, fit)
    likely = -0.5 * (DEGREES + 1) * np.einsum(
        "n,tnm->tm", w, np.log1p((off / ERROR_BPM) ** 2 / DEGREES)
    )
    likely -= 0.5 * (((fit - mean) / spread) ** 2).sum(axis=2)
    likely -= 0.5 * np.linalg.slogdet(square)[1]
    likely += np.log(prior(indoor=indoor))[None, :] + np.log(_TAU_BELIEF)[:, None]
    joint = np.exp(likely - likely.max())
    joint /= joint.sum()
    tau, cost = np.unravel_index(int(joint.argmax()), joint.shape)
    expected = np.full(len(heart), np.nan)
    shift, drift, gain = fit[tau, cost].tolist()
    best = model[tau, :, cost]
    expected[first:] = best + shift + drift * every_hour + gain * (best - (thresholds.lt1_hr or 0))
    return Ground(COSTS, joint.sum(axis=0), expected, shift, heard=True)


def _pooled(
    heart: Floats, model: Floats, weight: Floats, hours: Floats
) -> tuple[Floats, Floats, Floats, Floats]:
    """Heart rate seen, followed, its weight and its hours, in means over POOL steps."""
    k = len(heart) // POOL * POOL
    if k < POOL:
        k = len(heart)
    shape = (-1, min(POOL, k))
    w = weight[:k].reshape(shape)
    total = w.sum(axis=1)
    share = w / np.maximum(total, 1e-9)[:, None]
    seen = (np.nan_to_num(heart[:k]).reshape(shape) * share).sum(axis=1)
    followed = np.einsum("tngm,ng->tnm", model[:, :k].reshape(len(model), *share.shape, -1), share)
    good = total > 0
    middle = hours[:k].reshape(shape).mean(axis=1)[good]
    return seen[good], followed[:, good], total[good], middle
