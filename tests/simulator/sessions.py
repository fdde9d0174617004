"""What a runner sets out to do: sessions as lists of steps, paces as multiples of thresholds.

Rep lengths, paces and recoveries are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np


@dataclass(frozen=True)
class Step:
    """One piece; ends after seconds, metres, or (``hill`` -1) back at the hill's foot."""

    gait: str = "run"  # run, walk, stand, ride
    of: str = "lt1"  # the threshold speed that ``factor`` multiplies
    factor: float = 0.88
    seconds: float | None = None
    metres: float | None = None
    work: bool = False  # a repetition, or the one bout of a tempo or race
    ramp_to: float | None = None
    hill: int = 0  # +1 up the steep lane, -1 back down


@dataclass(frozen=True)
class Session:
    """Steps in order. ``indoor`` is a belt; ``track`` asks for the 400 m oval."""

    kind: str
    steps: list[Step]
    sport: str = "running"
    indoor: bool = False
    track: bool = False
    race: bool = False
    structured: bool = False  # a runner would press lap


class _Coach:
    """Draws sizes and paces; a size given by the caller wins."""

    def __init__(self, rng: np.random.Generator, size: dict[str, float]) -> None:
        self.rng = rng
        self.size = size
        self.easy_factor = self.between(0.80, 0.92)

    def between(self, low: float, high: float) -> float:
        return low + (high - low) * float(self.rng.random())

    def whole(self, low: int, high: int) -> int:
        return int(self.rng.integers(low, high + 1))

    def minutes(self, low: float, high: float) -> float:
        drawn = self.between(low, high)
        return 60.0 * self.size.get("minutes", drawn)

    def count(self, low: int, high: int) -> int:
        drawn = self.whole(low, high)
        return int(self.size.get("reps", drawn))

    def easy(self, seconds: float, factor: float | None = None) -> Step:
        return Step(factor=factor or self.easy_factor, seconds=seconds)

    def warm_up(self) -> Step:
        return self.easy(60.0 * self.between(11, 19), self.easy_factor - 0.02)

    def cool_down(self) -> Step:
        return self.easy(60.0 * self.between(7, 14), self.easy_factor - 0.05)

    def repeat(self, n: int, work: Step, rest: Step) -> list[Step]:
        """Bouts with a pace spread of 1.2 % and slowly rising or falling pace [guess]."""
        trend = self.between(-0.012, 0.012)
        steps = []
        for k in range(n):
            pace = work.factor * (
                1.0 + 0.012 * float(self.rng.standard_normal()) + trend * (k / max(1, n - 1) - 0.5)
            )
            steps.append(replace(work, factor=pace))
            if k < n - 1:
                steps.append(rest)
        return steps

    def rest(self, jog_s: float, walk_s: float, stand_s: float) -> Step:
        """A recovery by jogging, walking or standing, in the shares 6 : 3 : 1 [guess]."""
        drawn = float(self.rng.random())
        if drawn < 0.6:
            return Step(factor=0.78, seconds=round(jog_s))
        if drawn < 0.9:
            return Step(gait="walk", seconds=round(walk_s))
        return Step(gait="stand", seconds=round(stand_s))


def _reps(
    metres: float, low: int, high: int, slow: float, fast: float, rest_s: float
) -> Callable[[_Coach], list[Step]]:
    def steps(c: _Coach) -> list[Step]:
        bout = Step(of="lt2", factor=c.between(slow, fast), metres=metres, work=True)
        r = rest_s * c.between(0.8, 1.25)
        sets = c.repeat(c.count(low, high), bout, c.rest(r, r, 0.8 * r))
        return [c.warm_up(), *sets, c.cool_down()]

    return steps


def _timed(
    seconds: float, low: int, high: int, slow: float, fast: float, rest_s: float
) -> Callable[[_Coach], list[Step]]:
    def steps(c: _Coach) -> list[Step]:
        bout = Step(of="lt2", factor=c.between(slow, fast), seconds=seconds, work=True)
        jog = Step(factor=0.78, seconds=rest_s)
        return [c.warm_up(), *c.repeat(c.count(low, high), bout, jog), c.cool_down()]

    return steps


def _easy(low: float, high: float, add: float = 0.0) -> Callable[[_Coach], list[Step]]:
    return lambda c: [c.easy(c.minutes(low, high), c.easy_factor + add)]


def _easy_strides(c: _Coach) -> list[Step]:
    bout = Step(of="lt2", factor=c.between(1.22, 1.38), metres=100, work=True)
    strides = c.repeat(c.count(6, 10), bout, c.rest(55, 65, 50))
    return [c.easy(c.minutes(32, 48)), *strides, c.easy(60.0 * c.between(3, 8))]


def _long_race_pace(c: _Coach) -> list[Step]:
    bout = Step(of="lt2", factor=c.between(0.93, 0.97), metres=2000, work=True)
    bouts = c.repeat(c.count(3, 4), bout, c.easy(c.between(180, 300)))
    return [c.easy(c.minutes(38, 55)), *bouts, c.easy(60.0 * c.between(8, 18))]


def _hill_sprints(c: _Coach) -> list[Step]:
    up = Step(of="lt2", factor=c.between(1.0, 1.12), seconds=c.whole(8, 12), work=True, hill=1)
    steps: list[Step] = [c.easy(c.minutes(28, 42))]
    for k in range(c.count(6, 10)):
        steps.append(replace(up, factor=up.factor * (1 + 0.015 * float(c.rng.standard_normal()))))
        steps.append(Step(gait="walk", hill=-1))
        if k % 2:
            steps.append(Step(gait="stand", seconds=c.whole(15, 40)))
    return [*steps, c.cool_down()]


def _tempo(c: _Coach) -> list[Step]:
    bout = Step(of="lt2", factor=c.between(0.945, 1.0), seconds=c.minutes(20, 30), work=True)
    return [c.warm_up(), bout, c.cool_down()]


def _progression(c: _Coach) -> list[Step]:
    total = c.minutes(45, 65)
    end = Step(factor=0.90, ramp_to=c.between(1.16, 1.26), seconds=0.5 * total)
    return [c.easy(0.5 * total), end, c.easy(60.0 * c.between(3, 6), 0.80)]


def _fartlek(c: _Coach) -> list[Step]:
    steps: list[Step] = [c.warm_up()]
    for _ in range(c.count(7, 12)):
        seconds = (20, 30, 45, 60, 90, 120, 180)[c.whole(0, 6)]
        pace = 1.22 - 0.08 * min(1.0, seconds / 120) + c.between(-0.04, 0.04)
        steps.append(Step(of="lt2", factor=pace, seconds=seconds, work=True))
        steps.append(c.easy(round(c.between(50, 170)), 0.84))
    return [*steps, c.cool_down()]


def _crept(c: _Coach) -> list[Step]:
    total = c.minutes(45, 65)
    creep = Step(factor=0.95, ramp_to=c.between(1.03, 1.07), seconds=0.3 * total)
    last = Step(factor=c.between(1.04, 1.09), seconds=0.22 * total)
    return [c.easy(0.48 * total, 0.93), creep, last]


def _race(metres: float, slow: float, fast: float) -> Callable[[_Coach], list[Step]]:
    def steps(c: _Coach) -> list[Step]:
        warm = [c.easy(60.0 * c.between(9, 14)), Step(gait="stand", seconds=c.whole(60, 240))]
        race = Step(of="lt2", factor=c.between(slow, fast), metres=metres, work=True)
        return [*warm, race, Step(gait="walk", seconds=c.whole(60, 200))]

    return steps


def _ride(c: _Coach) -> list[Step]:
    return [Step(gait="ride", factor=0.80, seconds=c.minutes(60, 100))]


_STEPS: dict[str, Callable[[_Coach], list[Step]]] = {
    "easy": _easy(35, 65),
    "easy_crept": _crept,
    "easy_strides": _easy_strides,
    "recovery": _easy(22, 36, -0.07),
    "long": _easy(80, 125, -0.01),
    "long_race_pace": _long_race_pace,
    "reps_100": _reps(100, 10, 20, 1.20, 1.34, 55),
    "reps_200": _reps(200, 12, 20, 1.15, 1.24, 75),
    "reps_300": _reps(300, 8, 8, 1.13, 1.20, 100),
    "reps_400": _reps(400, 8, 10, 1.09, 1.15, 90),
    "reps_1000": _reps(1000, 5, 6, 1.03, 1.08, 150),
    "reps_2000": _reps(2000, 4, 4, 1.00, 1.035, 120),
    "thirty_thirty": _timed(30, 16, 24, 1.10, 1.18, 30),
    "three_minutes": _timed(180, 6, 6, 1.03, 1.08, 120),
    "hill_sprints": _hill_sprints,
    "tempo": _tempo,
    "progression": _progression,
    "fartlek": _fartlek,
    "treadmill_easy": _easy(30, 50),
    "treadmill_reps": _timed(120, 6, 8, 1.06, 1.12, 90),
    "race_10k": _race(10000, 1.01, 1.035),
    "race_half": _race(21097.5, 0.955, 0.98),
    "ride": _ride,
}

#: Every kind of session there is; all but ``ride`` are runs.
KINDS = tuple(_STEPS)
_UNSTRUCTURED = {"easy", "easy_crept", "recovery", "long", "treadmill_easy", "ride", "progression"}


def prescribe(kind: str, rng: np.random.Generator, **size: float) -> Session:
    """Draw one session; ``minutes`` and ``reps`` set the size where the kind has one."""
    return Session(
        kind,
        _STEPS[kind](_Coach(rng, size)),
        sport="cycling" if kind == "ride" else "running",
        indoor=kind.startswith("treadmill"),
        track=kind in {"reps_200", "reps_300", "reps_400"} and bool(rng.random() < 0.6),
        race=kind.startswith("race"),
        structured=kind not in _UNSTRUCTURED,
    )
