"""What the heart-rate sensor makes of the heart: strap, wrist, and their faults.

Chest strap against electrocardiogram: concordance 0.98; wrist 0.89-0.96 (Pasadyn et al. 2019,
Cardiovasc Diagn Ther 9:379-385). The single causes below are [guess], sized so that the wrist
is off by some 5-7 beats/min on the whole and the strap by 1-2.
"""

from __future__ import annotations

import numpy as np

from tests.simulator.conditions import Conditions
from tests.simulator.noise import Floats, lagged, stream, wander


def _span(rng: np.random.Generator, n: int, low: int, high: int) -> slice:
    length = int(rng.integers(low, high + 1))
    start = int(rng.integers(0, max(1, n - length)))
    return slice(start, start + length)


def _optical(hr: Floats, rng: np.random.Generator) -> Floats:
    """Wrist sensor: slower, wandering, low at the start, off for a while now and then."""
    n = len(hr)
    out = lagged(hr, 3.0 + 7.0 * float(rng.random())) + wander(rng, n, 2.2, 35.0)
    if rng.random() < 0.35:
        length = int(rng.integers(40, 200))
        fade = np.clip(1.0 - np.arange(n) / length, 0.0, 1.0)
        out = out - (8.0 + 22.0 * float(rng.random())) * fade
    for _ in range(int(rng.poisson(n / 1800.0))):
        span = _span(rng, n, 25, 150)
        size = len(out[span])
        ramp = np.clip(np.minimum(np.arange(size), np.arange(size)[::-1]) / 10.0, 0.0, 1.0)
        out[span] += ramp * (-26.0 + 40.0 * float(rng.random()))
    return out


def _lock(out: Floats, cadence: Floats, rng: np.random.Generator) -> Floats:
    """Cadence lock: step rate reported as heart rate for minutes, with a step at its start."""
    span = _span(rng, len(out), 150, 720)
    steps = cadence[span] + wander(rng, len(out[span]), 0.8, 6.0)
    out[span] = np.where(steps > 130.0, steps, out[span])
    return out


def _dry(out: Floats, rng: np.random.Generator) -> Floats:
    """Dry electrodes: wild readings in the first minutes."""
    for _ in range(int(rng.integers(4, 14))):
        start, length = int(rng.integers(5, 300)), int(rng.integers(3, 25))
        out[start : start + length] += 15.0 + 45.0 * float(rng.random())
    return out


def sense(hr: Floats, cadence: Floats, conditions: Conditions, seed: int) -> Floats:
    """Heart rate as shown every second, whole beats, NaN where nothing; shape as ``hr``."""
    rng = stream(seed, 3)
    n = len(hr)
    if conditions.hr_source == "none":
        return np.full(n, np.nan)
    optical = conditions.hr_source == "optical"
    out = _optical(hr, rng) if optical else lagged(hr, 1.5) + wander(rng, n, 0.6, 5.0)
    fault = conditions.hr_fault
    if fault == "cadence lock":
        out = _lock(out, cadence, rng)
    elif fault == "dry start":
        out = _dry(out, rng)
    elif fault == "dead":
        out[int(n * (0.1 + 0.7 * float(rng.random()))) :] = np.nan
    elif fault == "stuck":
        start = int(n * (0.1 + 0.6 * float(rng.random())))
        out[start:] = out[start]
    elif fault == "dropouts":
        for _ in range(2 + int(rng.poisson(n / 700.0))):
            out[_span(rng, n, 5, 70)] = np.nan
    return np.rint(np.clip(out, 38.0, 225.0))
