"""Hills: slope from altitude, and the level speed that would cost the same."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import product

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

#: Range of slopes in which the cost of running was measured.
VALID_SLOPE = 0.45
_COST = (155.4, -30.4, -43.3, 46.3, 19.5, 3.6)

#: Altitude is sampled along the way in steps of this length [m].
STEP_M = 20.0
#: Altitude this many steps to each side is used for the slope at a place.
REACH = 40
#: Hills of these lengths (one standard deviation of the covariance) are told apart. [m] [trial]
_HILL_LENGTHS = (100.0, 350.0)
#: Root mean square slopes of country from a plain to mountains. [trial]
_ROUGHNESS = (0.002, 0.006, 0.015, 0.035, 0.08)
#: Altimeters: jitter [m], then slow error [m] and the way over which it wanders [m]: a barometer,
#: a poor one, and positioning, good and bad (+-5-10 m is common; published spread in
#: Ammann et al., Sports Eng 19, 2016, for barometers). [trial]
_ALTIMETERS = (
    (0.15, 0.3, 60.0), (0.4, 0.8, 60.0), (0.4, 1.8, 170.0), (0.4, 2.7, 170.0), (0.4, 3.8, 170.0),
    (0.4, 5.5, 170.0), (0.4, 8.0, 170.0),
)  # fmt: skip
#: Neighbouring surprises hang together, so likelihoods are taken to this power. [trial]
TEMPER = 0.3
#: Weather moves a barometer by metres over a run.
_WEATHER = (6.0, 4000.0)


@dataclass(frozen=True, eq=False)
class Slopes:
    """Slope under every sample, how far it can be trusted, and whether hills were used."""

    slope: Floats  # rise over run
    spread: Floats  # standard deviation of its error
    used: bool
    height_error: float  # of the altimeter from place to place [m]


def running_cost(slope: ArrayLike) -> Floats:
    """Energy cost of running on a slope, per metre of the way [1]_.

    Parameters
    ----------
    slope : array_like, shape (n,)
        Rise over horizontal run; clamped to +-0.45, the range tested. [unitless]

    Returns
    -------
    ndarray of float64, shape (n,)
        Cost. [J/(kg m)] On the level the polynomial gives 3.6.

    References
    ----------
    .. [1] A. E. Minetti et al., J. Appl. Physiol. 93:1039-1046, 2002.
    """
    i = np.clip(np.asarray(slope, dtype=np.float64), -VALID_SLOPE, VALID_SLOPE)
    return np.asarray(np.polyval(_COST, i), dtype=np.float64)


def level_speed(speed: ArrayLike, slope: ArrayLike) -> Floats:
    """Speed on the level at the same metabolic power.

    Parameters
    ----------
    speed : array_like, shape (n,)
        Speed along the way. [m/s]
    slope : array_like, shape (n,)
        Rise over run; NaN counts as level. [unitless]

    Returns
    -------
    ndarray of float64, shape (n,)
        ``speed * cost(slope) / cost(0)``. [m/s]
    """
    i = np.nan_to_num(np.asarray(slope, dtype=np.float64), nan=0.0)
    return np.asarray(speed, dtype=np.float64) * running_cost(i) / _COST[-1]


@lru_cache(maxsize=64)
def _filters(
    roughness: float, altimeter: tuple[float, float, float]
) -> tuple[Floats, Floats, tuple[float, float]]:
    """Best linear estimates for one kind of country and altimeter.

    Altitude is a stationary Gaussian process (hills of two lengths, weather) seen with white
    and wandering noise; on an even grid its estimates are fixed weights.
    """
    at = np.arange(-REACH, REACH + 1) * STEP_M
    lag = np.abs(at[:, None] - at[None, :])
    cross = np.zeros(len(at))
    cov = _WEATHER[0] ** 2 * np.exp(-0.5 * (lag / _WEATHER[1]) ** 2)
    for length in _HILL_LENGTHS:
        part = roughness / np.sqrt(len(_HILL_LENGTHS))
        cov += (part * length) ** 2 * np.exp(-0.5 * (lag / length) ** 2)
        cross += part**2 * at * np.exp(-0.5 * (at / length) ** 2)
    jitter, slow, length = altimeter
    # The wandering error as it is after averaging over the cells of the grid.
    cell = STEP_M / length
    wander = np.exp(-lag / length) * 2 * (np.cosh(cell) - 1) / cell**2
    np.fill_diagonal(wander, 2 * (cell - 1 + np.exp(-cell)) / cell**2)
    cov += slow**2 * wander + (jitter**2 + 1e-4) * np.eye(len(at))
    weights = np.linalg.solve(cov, cross)
    spread = np.sqrt(max(roughness**2 - float(cross @ weights), 1e-10))
    past = np.linalg.solve(cov[:REACH, :REACH], cov[:REACH, REACH])
    surprise = float(cov[REACH, REACH] - cov[:REACH, REACH] @ past)
    return (
        np.asarray(weights, dtype=np.float64),
        np.asarray(past, dtype=np.float64),
        (float(spread), surprise),
    )


def slope_along(altitude: ArrayLike, distance: ArrayLike) -> Slopes:
    """Slope under every sample, from altitude smoothed to what this altimeter can know.

    Parameters
    ----------
    altitude : array_like, shape (n,)
        Altitude, NaN where missing. [m]
    distance : array_like, shape (n,)
        Distance covered, not falling. [m]

    Returns
    -------
    Slopes
        Zero where altitude is missing. How rough the country and how good the altimeter is are
        chosen by likelihood (how well the altitude so far foretells the next), so noise alone
        shrinks the slope towards zero by itself.
    """
    z = np.asarray(altitude, dtype=np.float64)
    x = np.asarray(distance, dtype=np.float64)
    nothing = Slopes(np.zeros(len(x)), np.zeros(len(x)), used=False, height_error=np.inf)
    known = np.isfinite(z) & np.isfinite(x)
    if np.count_nonzero(known) < 30 or np.ptp(x[known]) < 300.0:
        return nothing
    xk, zk = x[known], z[known]
    first, last = xk[0], xk[-1]
    cells = int((last - first) / STEP_M) + 1
    if cells > 30_000:
        return nothing
    cell = np.minimum(((xk - first) / STEP_M).astype(np.int64), cells - 1)
    count = np.bincount(cell, minlength=cells)
    have = np.flatnonzero(count)
    middle = np.bincount(cell, weights=xk, minlength=cells)[have] / count[have]
    height = np.bincount(cell, weights=zk, minlength=cells)[have] / count[have]
    along = first + (np.arange(cells) + 0.5) * STEP_M
    raw = np.interp(along, middle, height)
    raw = raw - raw.mean()
    # Mirrored about the end points, so that a slope is kept there.
    reach = np.minimum(np.arange(REACH, 0, -1), cells - 1)
    padded = np.concatenate((2 * raw[0] - raw[reach], raw, 2 * raw[-1] - raw[-1 - reach[::-1]]))
    fits, likely = [], []
    for roughness, altimeter in product(_ROUGHNESS, _ALTIMETERS):
        weights, past, (spread, surprise) = _filters(roughness, altimeter)
        miss = padded[REACH:-REACH] - np.convolve(padded, past[::-1], mode="valid")[: len(raw)]
        fits.append((weights, spread**2))
        likely.append(-0.5 * (float(miss @ miss) / surprise + len(raw) * np.log(surprise)))
    belief = np.exp(TEMPER * (np.array(likely) - max(likely)))
    belief /= belief.sum()
    mean = np.sum([p * w for p, (w, _) in zip(belief, fits, strict=True)], axis=0)
    spread = float(np.sqrt(sum(p * v for p, (_, v) in zip(belief, fits, strict=True))))
    heights = [np.hypot(a[0], a[1]) for _, a in product(_ROUGHNESS, _ALTIMETERS)]
    error = float(belief @ np.array(heights))
    slope = np.convolve(padded, mean[::-1], mode="valid")
    inside = np.where(np.isfinite(x), np.interp(x, along, slope), 0.0)
    return Slopes(inside, np.full(len(x), spread), used=True, height_error=error)
