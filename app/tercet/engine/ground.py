"""Cost that the watch cannot see, from how heart rate answers to the speed of the run.

What lies between the level speed seen and the true demand - a watch's scale error, soft ground,
wind, hills the altimeter missed - is a constant for the run plus a part that comes and goes.
Heart rate follows demand through first-order kinetics, which is linear in a small change of
demand; so with Gaussian processes for the part that comes and goes and for the errors of heart
rate, the rest has a closed form, and the constant may keep a one-sided prior.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np

from tercet.engine.kinetics import follow, settled
from tercet.engine.scale import Floats, Thresholds

Source = Literal["way", "guess", "belt"]

#: Candidates of the constant (natural log): a watch's scale error goes both ways, ground and
#: wind only add.
COSTS = np.arange(-0.12, 0.286, 0.015)
#: Candidates of the time constant of heart rate; published 57.6 +- 23.6 s. [s]
TAUS = np.array([30.0, 45.0, 65.0, 95.0])
_TAU_BELIEF = np.array([0.2, 0.3, 0.3, 0.2])
USUAL_TAU = float(TAUS[1:3].mean())
#: Heart rate is followed in short steps and weighed in longer ones. [s]
STEP_S, POOL = 5, 6
#: The time constant is sought in steps longer by this factor.
COARSER = 2
#: Less heart rate than this says nothing. [s]
LEAST_S = 180
#: No more long steps than this: in very long runs they grow.
MOST_STEPS = 400
#: How long the part that comes and goes lasts. [s] [trial]
LASTING_S = 60.0
#: Spread of a steady wind at a runner's height, along each axis. [m/s] [trial]
WIND = 2.0
#: Warmth, fatigue and the day: shift [beats/min] and drift after ten minutes [beats/min per
#: hour], mean and spread. [trial]
SHIFT = (0.0, 4.0)
DRIFT = (5.0, 5.0)
DRIFT_AFTER_S = 600.0
#: The runner's own rise of heart rate with speed against the one assumed, as a share. [trial]
GAIN_ERROR = (0.0, 0.10)
#: Where heart rate started from may be off. [beats/min]
START_BPM = 15.0
#: Errors of heart rate: from step to step, and slow ones with their time. [trial]
QUICK_BPM, SLOW_BPM, SLOW_S = 1.2, 3.0, 60.0
TRUST = 0.4
TAU_TRUST = 0.1
#: Left over more than this many spreads, heart rate is believed less.
ROBUST = 2.0
#: Heart rate this far below or above what speed foretells is the sensor's fault. [beats/min]
#: [trial]
IMPLAUSIBLE_BPM = (22.0, 40.0)


@dataclass(frozen=True, eq=False)
class Ground:
    """Belief about the unseen cost (natural log).

    The cost at a step is ``along`` plus the constant's deviation from its mean times
    ``bearing``, with a normal error of ``spread``.
    """

    belief: Floats  # of the constant, shape of COSTS, sums to one
    along: Floats  # (k,) expected cost in even steps
    spread: Floats  # (k,)
    bearing: float  # 1 where heart rate says nothing of the parts, towards 0 where all
    step_s: int
    heard: bool  # whether heart rate had a say
    disbelieved_s: int = 0  # of heart rate too far from what speed foretells [s]

    @property
    def constant(self) -> float:
        """Expected constant."""
        return float(self.belief @ COSTS)


def source_of(*, indoor: bool, told: bool) -> Source:
    """Name where a run's speed comes from; ``told``: read off a belt by the runner."""
    return "belt" if told else "guess" if indoor else "way"


def prior(source: Source = "way") -> Floats:
    """Belief about the constant before heart rate is heard, shape of :data:`COSTS`.

    On a way outdoors: mostly near nothing (and watches measure short rather than long), with a
    broad upper part for soft ground and wind. Indoors a watch guesses a belt's speed; what a
    runner reads off the belt is near the truth.
    """
    c = COSTS
    if source != "way":
        p = np.exp(-0.5 * (c / (0.06 if source == "guess" else 0.02)) ** 2)
        return np.asarray(p / p.sum(), dtype=np.float64)
    near = np.exp(-0.5 * ((c - 0.012) / 0.018) ** 2)
    broad = np.where(c >= 0, np.exp(-0.5 * (c / 0.09) ** 2), np.exp(-0.5 * (c / 0.02) ** 2))
    p = 0.55 * near / near.sum() + 0.45 * broad / broad.sum()
    return np.asarray(p / p.sum(), dtype=np.float64)


def unheard(seconds: int, spread: float, source: Source = "way") -> Ground:
    """What is believed where heart rate is missing."""
    belief = prior(source)
    steps = max(seconds, 1)
    mean = np.full(1, float(belief @ COSTS))
    return Ground(belief, mean, np.full(1, spread), 1.0, steps, heard=False)


def listen(
    demand: Floats,
    heart: Floats,
    thresholds: Thresholds,
    spread: float,
    source: Source = "way",
    wind: Floats | None = None,
) -> Ground:
    """Weigh every unseen cost by how well heart rate then follows.

    Parameters
    ----------
    demand : ndarray, shape (k,)
        Level-equivalent speed as seen, in steps of :data:`STEP_S`; walking and standing at
        their lower cost. [m/s]
    heart : ndarray, shape (k,)
        Mean heart rate of each step, NaN where not trusted. [beats/min]
    thresholds : Thresholds
        With both lines known as speed and as heart rate.
    spread : float
        Prior spread of the part that comes and goes (natural log).
    source : {"way", "guess", "belt"}
        Where speed comes from, see :func:`prior`.
    wind : ndarray, shape (k, 2), or None
        What each m/s of wind from two sides adds (natural log), in the same steps.

    Returns
    -------
    Ground
    """
    deaf = unheard(len(demand) * STEP_S, spread, source)
    pool = max(POOL, -(-len(demand) // MOST_STEPS))
    course = _Course(demand, heart, thresholds, spread, pool, wind)
    coarse = _Course(demand, heart, thresholds, spread, COARSER * pool, wind)
    if course.heard_s < LEAST_S or coarse.heard_s < LEAST_S:
        return deaf
    believed = _log_prior(source)
    # In coarse steps a first pass finds what cannot be believed, a second the time constant.
    coarse.relax(coarse.weigh(USUAL_TAU, believed, full=False))
    fits = [coarse.weigh(float(tau), believed, full=False) for tau in TAUS]
    evidence = TAU_TRUST * np.array([fit.evidence for fit in fits]) + np.log(_TAU_BELIEF)
    best = int(np.argmax(evidence))
    course.total = np.repeat(fits[best].along, COARSER)[: course.k]
    course.total = np.pad(course.total, (0, course.k - len(course.total)), mode="edge")
    all_s = course.heard_s
    course.relax(course.weigh(float(TAUS[best]), believed, full=False))
    last = course.weigh(float(TAUS[best]), believed, full=True)
    weights = np.exp(evidence - evidence.max())
    weights[best] = 0.0
    belief = last.belief + np.sum(
        [w * f.belief for w, f in zip(weights, fits, strict=True)], axis=0
    )
    return Ground(
        belief / belief.sum(),
        last.along,
        last.spread,
        last.bearing,
        pool * STEP_S,
        heard=True,
        disbelieved_s=all_s - course.heard_s,
    )


def likelihood(
    demand: Floats, heart: Floats, thresholds: Thresholds, spread: float, source: Source = "way"
) -> float:
    """Log likelihood of the heart rate, to compare readings of one run's speed; 0 if unheard.

    Parameters and units as in :func:`listen`, in coarse steps and with the usual time constant.
    """
    pool = COARSER * max(POOL, -(-len(demand) // MOST_STEPS))
    course = _Course(demand, heart, thresholds, spread, pool)
    if course.heard_s < LEAST_S:
        return 0.0
    believed = _log_prior(source)
    course.relax(course.weigh(USUAL_TAU, believed, full=False))
    return course.weigh(USUAL_TAU, believed, full=False).evidence


def _log_prior(source: Source) -> Floats:
    return np.asarray(np.log(np.maximum(prior(source), 1e-30)), dtype=np.float64)


@dataclass(frozen=True, eq=False)
class _Fit:
    belief: Floats
    along: Floats
    spread: Floats
    bearing: float
    left: Floats  # heart rate less what all of the model explains, in its quick spreads
    off: Floats  # heart rate less what demand, shift and drift explain [beats/min]
    evidence: float  # log likelihood, up to a constant where ``full``


class _Course:
    """One run's heart rate against its demand, in long steps; keeps what passes share."""

    def __init__(
        self,
        demand: Floats,
        heart: Floats,
        t: Thresholds,
        spread: float,
        pool: int,
        wind: Floats | None = None,
    ) -> None:
        self.k = k = len(demand) // pool
        self.t, self.pool, self.step = t, pool, pool * STEP_S
        self.asked = demand[: k * pool]
        beats = heart[: k * pool].reshape(k, pool)
        there = np.isfinite(beats)
        count = there.sum(axis=1)
        self.seen = np.where(there, beats, 0.0).sum(axis=1) / np.maximum(count, 1)
        self.heard = np.flatnonzero(2 * count >= pool)
        self.start = float(heart[np.isfinite(heart)][0]) if there.any() else 0.0
        self.quick = np.full(len(self.heard), QUICK_BPM**2)
        ages = self.step * np.arange(k)
        apart = np.abs(np.arange(k)[:, None] - np.arange(k)[None, :])
        self.prior = (spread**2 * np.exp(-ages / LASTING_S))[apart]
        if wind is not None:
            # The same wind meets the runner from the other side after a turn.
            side = WIND * wind[: k * pool].reshape(k, pool, 2).mean(axis=1)
            self.prior = self.prior + side @ side.T
        self.slow = (SLOW_BPM**2 * np.exp(-ages / SLOW_S))[apart]
        self.time = (np.arange(k) + 0.5) * self.step
        self.hours = np.maximum(self.time - DRIFT_AFTER_S, 0.0) / 3600.0
        self.total = np.full(k, 0.02)

    @property
    def heard_s(self) -> int:
        """Seconds with heart rate."""
        return len(self.heard) * self.step

    def relax(self, fit: _Fit) -> None:
        """Take over a fit's cost, and believe less of what it could not explain."""
        self.total = fit.along
        far = np.abs(fit.left) > ROBUST
        self.quick = np.where(far, QUICK_BPM**2 * (2 * fit.left / ROBUST) ** 2, QUICK_BPM**2)
        low, high = IMPLAUSIBLE_BPM
        keep = (fit.off > -low) & (fit.off < high)
        if np.count_nonzero(keep) >= 9:
            self.heard, self.quick = self.heard[keep], self.quick[keep]

    def weigh(self, tau: float, believed: Floats, *, full: bool) -> _Fit:
        """Fit for one time constant, linear about the cost found so far."""
        t, k, at = self.t, self.k, self.heard
        fine = self.asked * np.exp(np.repeat(self.total, self.pool))
        model = follow(settled(fine, t)[:, None], [tau], float(STEP_S), self.start)[0, :, 0]
        model = model.reshape(k, self.pool).mean(axis=1)
        middle = fine.reshape(k, self.pool).mean(axis=1)
        rise = (settled(middle * 1.03, t) - settled(middle * 0.97, t)) / 0.06
        answer = _pulse(k, self.step, tau)[at]
        answer *= rise[None, :]
        above = model[at] - (t.lt1_hr or 0.0)
        mean = SHIFT[0] + DRIFT[0] * self.hours[at] + GAIN_ERROR[0] * above
        r = self.seen[at] - model[at] - mean + answer @ self.total
        whole = answer.sum(axis=1)
        cross = self.prior @ answer.T
        bases = np.column_stack((
            np.full(len(at), SHIFT[1]), DRIFT[1] * self.hours[at], GAIN_ERROR[1] * above,
            START_BPM * np.exp(-self.time[at] / tau),
        ))  # fmt: skip
        cov = answer @ cross
        cov += self.slow[np.ix_(at, at)]
        cov += bases @ bases.T
        cov[np.diag_indices(len(at))] += self.quick
        known = np.column_stack((r, whole, cross.T)) if full else np.column_stack((r, whole))
        solved = np.linalg.solve(cov, known)
        a, b = float(whole @ solved[:, 1]), float(whole @ solved[:, 0])
        likely = believed - 0.5 * TRUST * (a * COSTS**2 - 2 * b * COSTS)
        belief = np.exp(likely - likely.max())
        evidence = float(likely.max() + np.log(belief.sum()) - 0.5 * (r @ solved[:, 0]))
        if not full:
            evidence -= 0.5 * float(np.linalg.slogdet(cov)[1])
        belief /= belief.sum()
        c = float(belief @ COSTS)
        pull = solved[:, 0] - c * solved[:, 1]
        answered = cross @ solved[:, 1]
        along = c + cross @ pull
        spread = np.zeros(0)
        if full:
            var = np.diag(self.prior) - np.einsum("ij,ji->i", cross, solved[:, 2:])
            spread = np.sqrt(np.maximum(var, 1e-6))
        left = self.quick * pull / QUICK_BPM
        off = r - answer @ along - bases @ (bases.T @ pull)
        bearing = float(np.clip(1.0 - np.median(answered), 0.0, 1.0))
        return _Fit(belief, along, spread, bearing, left, off, evidence)


@lru_cache(maxsize=16)
def _pulse(k: int, step: float, tau: float) -> Floats:
    """Mean answer in each step to a unit of heart rate asked in each step alone, shape (k, k)."""
    keep = np.exp(-step / tau)
    ages = np.arange(k)
    answer = (tau / step) * (1 - keep) ** 2 * keep ** np.maximum(ages - 1.0, 0.0)
    answer[0] = 1 - (tau / step) * (1 - keep)
    back = ages[:, None] - ages[None, :]
    return np.where(back >= 0, answer[np.maximum(back, 0)], 0.0)
