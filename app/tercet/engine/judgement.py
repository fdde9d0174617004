"""What judging a recording gives: a shade, metres and evidence for every second, and sums."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from tercet.engine.scale import LETTERS, Floats, Shade


class Evidence(IntEnum):
    """What a second was judged by."""

    NONE = 0
    SPEED = 1
    HEART_RATE = 2
    BOTH = 3
    POWER = 4
    WORD = 5


@dataclass(frozen=True)
class Repetition:
    """One bout of work; times in seconds from the recording's start.

    ``recovery_s`` is the time to the next bout of the same set, ``None`` after the last.
    """

    start_s: float
    duration_s: float
    distance_m: float
    level_speed: float  # mean level-equivalent speed [m/s]
    shade: Shade
    recovery_s: float | None = None


@dataclass(frozen=True, eq=False)
class Judgement:
    """Every second of the timer from the first sample to the last, judged.

    All arrays have one entry a second, ``n = ceil(elapsed_s)``; second ``k`` spans ``k`` to
    ``k + 1`` seconds after the first sample, the last one only up to the end
    (``last_second_s`` long). ``speed``, ``level_speed`` [m/s], ``heart_rate`` [beats/min] and
    ``altitude`` [m] are what the judging saw after cleaning, NaN where there was nothing.
    """

    shades: NDArray[np.uint8]  # (n,) of Shade
    metres: Floats  # (n,) distance covered in the second [m]
    evidence: NDArray[np.uint8]  # (n,) of Evidence
    scale: Floats  # (n,) point on the scale of intensity, NaN where unjudged
    speed: Floats
    level_speed: Floats
    heart_rate: Floats
    altitude: Floats
    last_second_s: float
    repetitions: tuple[Repetition, ...] = ()
    #: What was mended, by plain name, with the number of seconds or samples touched.
    mends: Mapping[str, int] = field(default_factory=dict)
    #: Plain remarks beside the judgement.
    remarks: tuple[str, ...] = ()
    #: (n,) probability of the shade given, 0 where nothing was weighed; empty if not known.
    probability: Floats = field(default_factory=lambda: np.zeros(0))
    #: 90 % intervals of the running seconds that are easy, moderate and hard; empty if not known.
    intervals: tuple[tuple[float, float], ...] = ()
    #: (n,) running power [W], calmed as it was judged, NaN where none; empty if there is none.
    power: Floats = field(default_factory=lambda: np.zeros(0))

    @property
    def elapsed_s(self) -> float:
        """Length of the timer's line [s]."""
        return len(self.shades) - 1 + self.last_second_s if len(self.shades) else 0.0

    @property
    def letters(self) -> str:
        """One letter a second: E, M, H, R (not running), U (unjudged)."""
        return "".join(LETTERS[s] for s in self.shades.tolist())

    def seconds_by_shade(self) -> Floats:
        """Seconds in each shade, shape (5,), in the order of Shade; sums to ``elapsed_s``. [s]"""
        weights = np.ones(len(self.shades))
        if len(weights):
            weights[-1] = self.last_second_s
        return np.bincount(self.shades, weights=weights, minlength=5).astype(np.float64)

    def metres_by_shade(self) -> Floats:
        """Metres in each shade, shape (5,), in the order of Shade. [m]"""
        return np.bincount(self.shades, weights=self.metres, minlength=5).astype(np.float64)
