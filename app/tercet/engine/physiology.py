"""Published formulas: heart rate from age, race equivalence, critical speed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats


def maximal_heart_rate(age_years: float) -> float:
    """Predict maximal heart rate from age: 208 - 0.7 age [1]_.

    Parameters
    ----------
    age_years : float
        10 to 100. [years]

    Returns
    -------
    float
        [beats/min] One person in three is more than about 10 beats/min away from it.

    Raises
    ------
    ValueError
        If the age is outside 10 to 100.

    References
    ----------
    .. [1] H. Tanaka, K. D. Monahan, D. R. Seals, J. Am. Coll. Cardiol. 37:153-156, 2001.
    """
    if not 10 <= age_years <= 100:
        raise ValueError(f"age must lie between 10 and 100 years: {age_years:g}")
    return 208.0 - 0.7 * age_years


def heart_rate_at_reserve(share: ArrayLike, *, rest: float, maximum: float) -> Floats:
    """Heart rate at a share of the heart-rate reserve [1]_.

    Parameters
    ----------
    share : array_like
        0 at rest, 1 at maximum. [unitless]
    rest, maximum : float
        [beats/min]

    Returns
    -------
    ndarray of float64
        [beats/min]

    Raises
    ------
    ValueError
        Unless ``rest < maximum``.

    References
    ----------
    .. [1] M. J. Karvonen, E. Kentala, O. Mustala, Ann. Med. Exp. Biol. Fenn. 35:307-315, 1957.
    """
    if not rest < maximum:
        raise ValueError(f"rest must be below maximum: {rest:g} and {maximum:g}")
    return rest + np.asarray(share, dtype=np.float64) * (maximum - rest)


def share_of_maximal_heart_rate(share_of_uptake: ArrayLike) -> Floats:
    """Share of maximal heart rate at a share of maximal oxygen uptake: 0.64 x + 0.37 [1]_.

    Parameters
    ----------
    share_of_uptake : array_like
        0.4 to 1. [unitless]

    Returns
    -------
    ndarray of float64
        [unitless]

    References
    ----------
    .. [1] D. P. Swain et al., Med. Sci. Sports Exerc. 26:112-116, 1994.
    """
    return 0.64 * np.asarray(share_of_uptake, dtype=np.float64) + 0.37


def equivalent_time(
    known_time: float, known_distance: float, distance: float, exponent: float = 1.06
) -> float:
    """Race time at another distance by the power law [1]_.

    Parameters
    ----------
    known_time : float
        [s] The law was fitted to races of 3.5 to 230 min.
    known_distance, distance : float
        [m]
    exponent : float
        1.06 by default; optimistic for recreational marathons from short races. [unitless]

    Returns
    -------
    float
        [s]

    Raises
    ------
    ValueError
        Unless all are positive.

    References
    ----------
    .. [1] P. S. Riegel, American Scientist 69:285-290, 1981.
    """
    if min(known_time, known_distance, distance, exponent) <= 0:
        raise ValueError("times, distances and the exponent must be positive")
    return float(known_time * (distance / known_distance) ** exponent)


def speed_for_duration(
    known_time: float, known_distance: float, duration: float, exponent: float = 1.06
) -> float:
    """Race speed that could be held for a duration, by the power law of :func:`equivalent_time`.

    Parameters
    ----------
    known_time, duration : float
        [s]
    known_distance : float
        [m]
    exponent : float
        [unitless]

    Returns
    -------
    float
        [m/s]
    """
    if min(known_time, known_distance, duration, exponent) <= 0:
        raise ValueError("times, distances and the exponent must be positive")
    return float(known_distance * (duration / known_time) ** (1 / exponent) / duration)


def oxygen_cost(speed: ArrayLike) -> Floats:
    """Oxygen cost of level running [1]_.

    Parameters
    ----------
    speed : array_like
        [m/s]

    Returns
    -------
    ndarray of float64
        [mL/(kg min)]

    References
    ----------
    .. [1] J. Daniels, J. Gilbert, Oxygen Power, Tempe (AZ), 1979.
    """
    v = np.asarray(speed, dtype=np.float64) * 60.0
    return -4.60 + 0.182258 * v + 0.000104 * v**2


def sustainable_share(duration: ArrayLike) -> Floats:
    """Share of maximal oxygen uptake that can be held for a duration, source as above.

    Parameters
    ----------
    duration : array_like
        [s] Made for 3.5 min to 4 h.

    Returns
    -------
    ndarray of float64
        [unitless]
    """
    t = np.asarray(duration, dtype=np.float64) / 60.0
    return 0.8 + 0.1894393 * np.exp(-0.012778 * t) + 0.2989558 * np.exp(-0.1932605 * t)


def aerobic_capacity(distance: float, time: float) -> float:
    """Aerobic capacity estimate from a race; not a measured maximal oxygen uptake.

    Parameters
    ----------
    distance : float
        [m]
    time : float
        [s]

    Returns
    -------
    float
        [mL/(kg min)]

    Raises
    ------
    ValueError
        Unless both are positive.
    """
    if distance <= 0 or time <= 0:
        raise ValueError("distance and time must be positive")
    return float(oxygen_cost(distance / time) / sustainable_share(time))


def equal_capacity_time(known_distance: float, known_time: float, distance: float) -> float:
    """Race time at another distance for the same aerobic capacity, source as above.

    Parameters
    ----------
    known_distance, distance : float
        [m]
    known_time : float
        [s]

    Returns
    -------
    float
        [s]

    Raises
    ------
    ValueError
        Unless all are positive.
    """
    if distance <= 0:
        raise ValueError("distances and times must be positive")
    wanted = aerobic_capacity(known_distance, known_time)
    low, high = distance / 12.0, distance / 0.5
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if aerobic_capacity(distance, middle) > wanted else (low, middle)
    return (low + high) / 2


@dataclass(frozen=True)
class CriticalSpeed:
    """A fit of distance against time: ``distance = speed * time + reserve``."""

    speed: float  # [m/s]
    reserve: float  # distance above critical speed, D' [m]
    speed_error: float  # standard error [m/s], NaN with two points


def critical_speed(distances: ArrayLike, times: ArrayLike) -> CriticalSpeed:
    """Fit critical speed to best efforts by the linear distance-time model [1]_.

    Parameters
    ----------
    distances, times : array_like, shape (n,)
        Best efforts of about 2 to 20 min. [m], [s]

    Returns
    -------
    CriticalSpeed

    Raises
    ------
    ValueError
        With fewer than two different times.

    References
    ----------
    .. [1] R. L. Hughson, C. J. Orok, L. E. Staudt, Int. J. Sports Med. 5:23-25, 1984.
    """
    d = np.asarray(distances, dtype=np.float64)
    t = np.asarray(times, dtype=np.float64)
    if len(np.unique(t)) < 2 or len(d) != len(t):
        raise ValueError("critical speed needs at least two efforts of different length")
    centred = t - t.mean()
    slope = float((centred * d).sum() / (centred**2).sum())
    reserve = float(d.mean() - slope * t.mean())
    residual = d - slope * t - reserve
    error = float("nan")
    if len(t) > 2:
        error = float(np.sqrt((residual**2).sum() / (len(t) - 2) / (centred**2).sum()))
    return CriticalSpeed(slope, reserve, error)
