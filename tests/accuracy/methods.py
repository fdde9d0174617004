"""The engine, and three naive ways to judge the same recordings."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from tercet import engine as tercet_engine
from tercet.engine import Repetition, Thresholds
from tercet.engine.known import Known
from tests.simulator import Simulated
from tests.simulator.terrain import cost_ratio

Shades = NDArray[np.uint8]
EASY, MODERATE, HARD, NOT_RUNNING, UNJUDGED = range(5)


@dataclass(frozen=True, eq=False)
class Judged:
    """One shade a second; the engine also finds repetitions and gives intervals."""

    shades: Shades
    repetitions: tuple[Repetition, ...] = ()
    intervals: tuple[tuple[float, float], ...] = field(default=())  # of E, M, H seconds


def streams_of(run: Simulated) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    """Streams as the engine takes them: every channel with its own times, nothing missing."""
    out = {}
    time = run.samples["time"]
    for name, values in run.samples.items():
        known = np.isfinite(values)
        if name != "time" and known.any():
            out[name] = (time[known], values[known])
    return out


def thresholds_of(run: Simulated) -> Thresholds:
    """The runner's true thresholds; gain and time constant stay unknown to every method."""
    r = run.runner
    return Thresholds(r.lt1_hr, r.lt2_hr, r.lt1_speed, r.lt2_speed, r.hr_rest, r.hr_max)


def known_of(run: Simulated) -> Known:
    """Laps that the runner pressed, as the recording keeps them."""
    return Known(tuple(float(a + n) for a, n, _, how in run.laps if how == "manual"))


def engine(run: Simulated) -> Judged:
    """The program's own judgement."""
    judged = tercet_engine.judge(
        streams_of(run),
        run.samples["time"],
        thresholds_of(run),
        stops=run.stops,
        beside=known_of(run),
    )
    return Judged(judged.shades, judged.repetitions, getattr(judged, "intervals", ()))


def _second(run: Simulated, name: str) -> np.ndarray:
    time, values = run.samples["time"], run.samples[name]
    known = np.isfinite(values)
    middle = np.arange(run.elapsed_s) + 0.5
    if not known.any():
        return np.full(run.elapsed_s, np.nan)
    return np.interp(middle, time[known], values[known])


def _running(run: Simulated) -> np.ndarray:
    """The simulator's own rule by recorded speed: below 1.8 m/s is walking; stops are stops."""
    running = ~(_second(run, "speed") < 1.8)
    for begin, end in run.stops:
        running[begin:end] = False
    return running


def _zones(values: np.ndarray, lt1: float, lt2: float, running: np.ndarray) -> Shades:
    shades = (values >= lt1).astype(np.uint8) + (values >= lt2).astype(np.uint8)
    shades[~np.isfinite(values)] = UNJUDGED
    shades[~running] = NOT_RUNNING
    return shades


def heart_rate_alone(run: Simulated) -> Judged:
    """Recorded heart rate against the two thresholds, as it is."""
    r = run.runner
    return Judged(_zones(_second(run, "heart_rate"), r.lt1_hr, r.lt2_hr, _running(run)))


def speed_alone(run: Simulated) -> Judged:
    """Recorded speed against the two thresholds, as it is."""
    r = run.runner
    return Judged(_zones(_second(run, "speed"), r.lt1_speed, r.lt2_speed, _running(run)))


def graded_speed_alone(run: Simulated) -> Judged:
    """Speed times the cost of the slope, from altitude over 30 s."""
    r = run.runner
    altitude, distance = _second(run, "altitude"), _second(run, "distance")
    speed = _second(run, "speed")
    if np.isfinite(altitude).any():
        k = np.arange(len(speed))
        low, high = np.maximum(k - 15, 0), np.minimum(k + 15, len(k) - 1)
        way = distance[high] - distance[low]
        rise = altitude[high] - altitude[low]
        slope = np.divide(rise, way, out=np.zeros_like(way), where=way > 10.0)
        speed = speed * np.array([cost_ratio(s) for s in slope.tolist()])
    return Judged(_zones(speed, r.lt1_speed, r.lt2_speed, _running(run)))


METHODS: dict[str, Callable[[Simulated], Judged]] = {
    "engine": engine,
    "heart rate": heart_rate_alone,
    "speed": speed_alone,
    "graded speed": graded_speed_alone,
}
