"""Random series: one generator per purpose, so that one choice does not shift the others."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def stream(seed: int, purpose: int) -> np.random.Generator:
    """Give the generator of one purpose within one seed."""
    return np.random.Generator(np.random.PCG64([seed, purpose]))


def clipped_normal(
    rng: np.random.Generator, mean: float, sd: float, low: float, high: float
) -> float:
    """Draw from a normal law, kept within limits."""
    return min(high, max(low, mean + sd * float(rng.standard_normal())))


def wander(rng: np.random.Generator, n: int, sd: float, tau_s: float) -> Floats:
    """Give n seconds of first-order noise with this spread and correlation time [s]."""
    keep = math.exp(-1.0 / tau_s)
    fresh = sd * math.sqrt(1.0 - keep * keep)
    shocks = rng.standard_normal(n).tolist()
    value = sd * float(rng.standard_normal())
    out = []
    for shock in shocks:
        value = keep * value + fresh * shock
        out.append(value)
    return np.array(out)


def lagged(values: Floats, tau_s: float, delay_s: int = 0) -> Floats:
    """Smooth with a first-order lag and a whole-second delay, as a watch's filter does."""
    if delay_s:
        values = np.concatenate([np.full(delay_s, values[0]), values[:-delay_s]])
    if tau_s <= 0:
        return values.copy()
    take = 1.0 - math.exp(-1.0 / tau_s)
    value = float(values[0])
    out = []
    for x in values.tolist():
        value += take * (x - value)
        out.append(value)
    return np.array(out)
