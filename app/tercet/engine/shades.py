"""The three shades, the sums by shade, and a runner's two lines: plain values, no arrays."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields
from enum import IntEnum


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

    ``None`` means not known. Heart rates in beats/min, speeds in m/s, running power in W as the
    runner's own meter shows it.
    """

    lt1_hr: float | None = None
    lt2_hr: float | None = None
    lt1_speed: float | None = None
    lt2_speed: float | None = None
    hr_rest: float | None = None
    hr_max: float | None = None
    top_speed: float | None = None  # that a sprint reaches
    lt1_power: float | None = None
    lt2_power: float | None = None

    @property
    def by_speed(self) -> bool:
        """Whether speed can be judged."""
        return self.lt1_speed is not None and self.lt2_speed is not None

    @property
    def by_heart_rate(self) -> bool:
        """Whether heart rate can be judged."""
        return self.lt1_hr is not None and self.lt2_hr is not None

    @property
    def by_power(self) -> bool:
        """Whether running power can be judged by its own two lines."""
        return self.lt1_power is not None and self.lt2_power is not None


def whole_shares(shares: Sequence[float]) -> tuple[int, int, int]:
    """Whole per cents of easy, moderate and hard that add up to 100.

    Easy is rounded as it is where it stands alone; what is left goes to the other two, with the
    odd one to the larger remainder.

    Parameters
    ----------
    shares : sequence of 3 floats
        They add up to 1; all zero gives zeros. [unitless]
    """
    if not any(shares):
        return 0, 0, 0
    easy = math.floor(100.0 * shares[0] + 0.5)
    rest = 100 - easy
    moderate = min(math.floor(100.0 * shares[1] + 0.5), rest)
    hard = min(math.floor(100.0 * shares[2] + 0.5), rest)
    if moderate + hard != rest:
        off = (100.0 * shares[1] - moderate) - (100.0 * shares[2] - hard)
        if (off > 0) == (moderate + hard < rest):
            moderate = rest - hard
        else:
            hard = rest - moderate
    return easy, moderate, hard


def check_thresholds(thresholds: Thresholds) -> None:
    """Raise ``ValueError`` naming the pair that cannot be.

    Parameters
    ----------
    thresholds : Thresholds
        Heart rates in beats/min, speeds in m/s, power in W.

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
        low, high, unit = 25.0, 250.0, "beats/min"
        if field.name.endswith("speed"):
            low, high, unit = 0.8, 13.0 if field.name == "top_speed" else 9.0, "m/s"
        elif field.name.endswith("power"):
            low, high, unit = 60.0, 1200.0, "W"
        if not (math.isfinite(value) and low <= value <= high):
            raise ValueError(
                f"{field.name} must lie between {low:g} and {high:g} {unit}: {value:g}"
            )
    for first, second in (
        ("hr_rest", "lt1_hr"),
        ("hr_rest", "lt2_hr"),
        ("lt1_hr", "lt2_hr"),
        ("lt1_speed", "lt2_speed"),
        ("lt2_speed", "top_speed"),
        ("hr_rest", "hr_max"),
        ("lt1_hr", "hr_max"),
        ("lt1_power", "lt2_power"),
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
    for first, second in (
        ("lt1_hr", "lt2_hr"),
        ("lt1_speed", "lt2_speed"),
        ("lt1_power", "lt2_power"),
    ):
        if (getattr(thresholds, first) is None) != (getattr(thresholds, second) is None):
            raise ValueError(f"{first} and {second} belong together: give both or neither")
    if not (thresholds.by_speed or thresholds.by_heart_rate or thresholds.by_power):
        raise ValueError("give LT1 and LT2 as heart rate, as speed, or as power")


def easy_share(seconds: Sequence[float]) -> float | None:
    """Share of easy in what was judged easy, moderate or hard; None where nothing was.

    Parameters
    ----------
    seconds : sequence of float, shape (5,) or (3,)
        In the order of :class:`Shade`. [s or m]
    """
    total = math.fsum(seconds[:3])
    return float(seconds[0] / total) if total > 0 else None
