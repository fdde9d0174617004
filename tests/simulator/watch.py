"""What the watch makes of speed, place, height and steps, every second.

Distance error by surroundings: mean absolute 3.2-6.1 % on short urban, forest and track courses,
mostly short (Gilgen-Ammann, Schweizer & Wyss 2020, JMIR mHealth uHealth 8:e17118); median
0.6-1.9 % on the road (Johansson et al. 2020). Barometer: resolution 0.1-0.5 m, weather drift;
satellite height +-5-10 m (dossier, 10). Per-second speed error: none published found; sized so
that speed from neighbouring positions steps by 0.3-0.6 m/s and shown speed by 0.03-0.07 m/s, as in
the few public recordings looked at [guess].
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tests.simulator.conditions import Conditions
from tests.simulator.motion import Motion
from tests.simulator.noise import Floats, clipped_normal, lagged, stream, wander
from tests.simulator.runner import Runner
from tests.simulator.terrain import degrees

#: Scale error (mean, spread), place error slow and quick [m], speed noise [m/s].
SKY = {
    "open": (-0.004, 0.008, 1.8, 0.50, 0.11),
    "trees": (-0.018, 0.012, 3.6, 0.80, 0.18),
    "town": (-0.020, 0.022, 6.0, 1.10, 0.26),
}


@dataclass(frozen=True, eq=False)
class Shown:
    """What the watch holds at every point of time, shape (n + 1,); NaN where it has nothing."""

    speed: Floats
    distance: Floats
    latitude: Floats
    longitude: Floats
    altitude: Floats
    cadence: Floats  # steps/min, even numbers: one foot is counted


def true_cadence(motion: Motion, runner: Runner, seed: int) -> Floats:
    """Steps/min at every point: running by speed, walking near 112, none standing [guess]."""
    rng = stream(seed, 4)
    speed = np.append(motion.speed, motion.speed[-1])
    ride = [g == "ride" for g in motion.gait]
    running = np.minimum(216.0, runner.cadence + 7.0 * (speed - 3.0))
    walking = 112.0 + 18.0 * (speed - 1.45)
    steps = np.where(speed >= 1.8, running, np.where(speed > 0.4, walking, 0.0))
    steps = np.where(np.append(ride, ride[-1]), np.where(speed > 1.0, 172.0, 0.0), steps)
    return np.where(steps > 0, steps + wander(rng, len(steps), 1.6, 12.0), 0.0)


def _height(motion: Motion, conditions: Conditions, rng: np.random.Generator) -> Floats:
    n = len(motion.height)
    if conditions.altitude == "baro":
        weather = clipped_normal(rng, 0.0, 2.0, -8.0, 8.0) * np.arange(n) / 3600.0
        offset = clipped_normal(rng, 0.0, 6.0, -20.0, 20.0)
        quick = wander(rng, n, 0.20, 4.0)
        shown = lagged(motion.height, 4.0) + wander(rng, n, 0.30, 25.0) + quick + weather + offset
        return np.rint(shown * 5.0) / 5.0
    if conditions.altitude == "gps":
        shown = motion.height + wander(rng, n, 4.5, 60.0) + clipped_normal(rng, 0, 10, -30, 30)
        return np.rint(shown * 5.0) / 5.0
    return np.full(n, np.nan)


def _belt(motion: Motion, rng: np.random.Generator, cadence: Floats) -> tuple[Floats, Floats]:
    """Belt speed guessed from arm swing: wrong scale, flattened contrast, slow [guess]."""
    true = np.append(motion.speed, motion.speed[-1])
    usual = float(np.median(true))
    guess = usual * clipped_normal(rng, 1.0, 0.05, 0.88, 1.12) + 0.75 * (true - usual)
    guess = np.where(cadence > 130.0, guess, np.minimum(true, guess))
    shown = np.clip(lagged(guess + wander(rng, len(guess), 0.10, 20.0), 4.0, 2), 0.0, None)
    return shown, np.concatenate([[0.0], np.cumsum(shown[1:])])


def watch(motion: Motion, runner: Runner, conditions: Conditions, seed: int) -> Shown:
    """Show the motion as a watch would."""
    c, rng = conditions, stream(seed, 5)
    n = len(motion.distance)
    cadence = true_cadence(motion, runner, seed)
    even = np.rint(lagged(cadence, 1.5) / 2.0) * 2.0
    none = np.full(n, np.nan)
    altitude = _height(motion, c, rng)
    if c.gps == "none":
        speed, distance = _belt(motion, rng, cadence)
        return Shown(speed, distance, none, none.copy(), altitude, even)
    bias, spread, slow, quick, hiss = SKY[c.gps]
    true = np.append(motion.speed, motion.speed[-1])
    scale = 1.0 + clipped_normal(rng, bias, spread, -0.08, 0.06)
    noise = (wander(rng, n, hiss, 4.0) + wander(rng, n, 0.4 * hiss, 40.0)) * np.clip(true, 0.05, 1)
    speed = np.clip(
        lagged(np.clip(true * scale + noise, 0, None), c.smoothing_s, c.delay_s), 0, None
    )
    speed = np.where(speed < 0.2, 0.0, speed)
    east = motion.route.at(motion.along, motion.route.east)
    north = motion.route.at(motion.along, motion.route.north)
    place = [
        lagged(line + wander(rng, n, slow, 120.0) + wander(rng, n, quick, 4.0), 1.5)
        for line in (east, north)
    ]
    for _ in range(c.gps_spikes):
        at, length = int(rng.integers(30, n - 30)), int(rng.integers(1, 4))
        for line in place:
            line[at : at + length] += float(rng.choice([-1.0, 1.0])) * (15 + 45 * rng.random())
        speed[at] += 2.0 + 5.0 * float(rng.random())
    distance = np.concatenate([[0.0], np.cumsum(speed[1:])])
    for _ in range(c.gps_gaps):
        length = int(rng.integers(15, 75))
        at = int(rng.integers(60, n - 120))
        gap = slice(at, min(n - 2, at + length))
        for line in place:
            line[gap] = np.nan
        speed[gap] = 0.0 if rng.random() < 0.5 else np.nan
        distance[gap] = distance[at - 1]
    latitude, longitude = degrees(*place)
    return Shown(speed, distance, latitude, longitude, altitude, even)
