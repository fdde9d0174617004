"""The one scale of intensity: 0 at rest, 1 at LT1, 2 at LT2, continuous above."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields
from enum import IntEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]


class Shade(IntEnum):
    """What a second of the timer was; the order is that of every five-column sum."""

    EASY = 0
    MODERATE = 1
    HARD = 2
    NOT_RUNNING = 3
    UNJUDGED = 4


#: One letter a shade, in the order of :class:`Shade`.
LETTERS = "EMHRU"


@dataclass(frozen=True)
class Thresholds:
    """A runner's two lines, each as heart rate and as level-ground speed.

    ``None`` means not known. Heart rates in beats/min, speeds in m/s.
    """

    lt1_hr: float | None = None
    lt2_hr: float | None = None
    lt1_speed: float | None = None
    lt2_speed: float | None = None
    hr_rest: float | None = None
    hr_max: float | None = None

    @property
    def by_speed(self) -> bool:
        """Whether speed can be judged."""
        return self.lt1_speed is not None and self.lt2_speed is not None

    @property
    def by_heart_rate(self) -> bool:
        """Whether heart rate can be judged."""
        return self.lt1_hr is not None and self.lt2_hr is not None


def check_thresholds(thresholds: Thresholds) -> None:
    """Raise ``ValueError`` naming the pair that cannot be.

    Parameters
    ----------
    thresholds : Thresholds
        Heart rates in beats/min, speeds in m/s.

    Raises
    ------
    ValueError
        If a value is not finite or outside what people can do, if only one of a pair is
        given, or if rest < LT1 < LT2 <= maximum does not hold.
    """
    for field in fields(thresholds):
        value = getattr(thresholds, field.name)
        if value is None:
            continue
        low, high = (0.8, 9.0) if field.name.endswith("speed") else (25.0, 250.0)
        if not (math.isfinite(value) and low <= value <= high):
            unit = "m/s" if field.name.endswith("speed") else "beats/min"
            raise ValueError(
                f"{field.name} must lie between {low:g} and {high:g} {unit}: {value:g}"
            )
    for first, second in (
        ("hr_rest", "lt1_hr"),
        ("hr_rest", "lt2_hr"),
        ("lt1_hr", "lt2_hr"),
        ("lt1_speed", "lt2_speed"),
        ("hr_rest", "hr_max"),
        ("lt1_hr", "hr_max"),
    ):
        low_value, high_value = getattr(thresholds, first), getattr(thresholds, second)
        if low_value is not None and high_value is not None and not low_value < high_value:
            raise ValueError(f"{first} must be below {second}: {low_value:g} and {high_value:g}")
    if (
        thresholds.lt2_hr is not None
        and thresholds.hr_max is not None
        and thresholds.lt2_hr > thresholds.hr_max
    ):
        raise ValueError(
            f"lt2_hr must not exceed hr_max: {thresholds.lt2_hr:g} and {thresholds.hr_max:g}"
        )
    for first, second in (("lt1_hr", "lt2_hr"), ("lt1_speed", "lt2_speed")):
        if (getattr(thresholds, first) is None) != (getattr(thresholds, second) is None):
            raise ValueError(f"{first} and {second} belong together: give both or neither")
    if not (thresholds.by_speed or thresholds.by_heart_rate):
        raise ValueError("give LT1 and LT2 as heart rate, as speed, or as both")


def intensity(values: ArrayLike, *, rest: float, lt1: float, lt2: float) -> Floats:
    """Put a channel on the scale that all channels share.

    Parameters
    ----------
    values : array_like, shape (n,)
        Heart rate [beats/min] or level-equivalent speed [m/s]; NaN stays NaN.
    rest, lt1, lt2 : float
        The channel's value at rest, at LT1 and at LT2, in the same unit.

    Returns
    -------
    ndarray of float64, shape (n,)
        0 at rest, 1 at LT1, 2 at LT2, straight between them and on above LT2 with the same
        slope as between LT1 and LT2; below rest it is negative, so that wrong settings show.

    Raises
    ------
    ValueError
        Unless rest < lt1 < lt2.

    Notes
    -----
    The scale is this program's own; the two lines are the borders of the three domains
    (moderate, heavy and severe in physiology; easy, moderate and hard here).
    """
    if not rest < lt1 < lt2:
        raise ValueError(f"rest, LT1 and LT2 must rise: {rest:g}, {lt1:g}, {lt2:g}")
    x = np.asarray(values, dtype=np.float64)
    return np.where(x <= lt1, (x - rest) / (lt1 - rest), 1.0 + (x - lt1) / (lt2 - lt1))


def shade_of(scale: ArrayLike) -> NDArray[np.uint8]:
    """Name the shade of points on the scale: easy < 1 <= moderate < 2 <= hard; NaN is unjudged.

    Parameters
    ----------
    scale : array_like, shape (n,)
        Points on the scale of :func:`intensity`. [unitless]

    Returns
    -------
    ndarray of uint8, shape (n,)
        Values of :class:`Shade`.
    """
    x = np.asarray(scale, dtype=np.float64)
    shades = np.full(x.shape, Shade.UNJUDGED, dtype=np.uint8)
    shades[x < 1.0] = Shade.EASY
    shades[(x >= 1.0) & (x < 2.0)] = Shade.MODERATE
    shades[x >= 2.0] = Shade.HARD
    return shades
