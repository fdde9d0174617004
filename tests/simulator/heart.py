"""The true heart rate: first-order kinetics, slow component, drift, and the day."""

from __future__ import annotations

import math

import numpy as np

from tests.simulator.conditions import Conditions
from tests.simulator.motion import Motion
from tests.simulator.noise import Floats, clipped_normal, stream, wander
from tests.simulator.runner import Runner

#: Slow component at LT2 and at most, and its time constant; size and time [guess], that there
#: is none below LT1 and one above is common knowledge of the three domains (dossier, 1.1).
SLOW_AT_LT2, SLOW_MOST, SLOW_TAU_S = 2.5, 6.0, 240.0
OFF_OVER_ON = 54.4 / 57.5  # Hunt, Fankhauser & Saengsuwan 2015: downward and upward steps
DRIFT_AFTER_S = 600.0  # Coyle & Gonzalez-Alonso 2001: after 10-20 min
TAU_SPREAD = 0.12  # from run to run, as a share [guess]
NOISE, NOISE_TAU_S = 1.1, 20.0  # breathing, mood, terrain underfoot [guess]


def heart_rate(motion: Motion, runner: Runner, conditions: Conditions, seed: int) -> Floats:
    """Heart rate at every point of time, shape (n + 1,). [beats/min]"""
    rng = stream(seed, 2)
    n = len(motion.speed)
    noise = wander(rng, n + 1, NOISE, NOISE_TAU_S)
    tau = runner.tau_s * clipped_normal(rng, 1.0, TAU_SPREAD, 0.7, 1.3)
    fast = runner.hr_rest + clipped_normal(rng, 34.0, 8.0, 15.0, 55.0)
    slow = 0.0
    start = fast
    span = runner.lt1_hr - runner.hr_rest
    out = [start]
    for t, effort in enumerate(motion.effort.tolist()):
        goal = runner.steady_hr(effort)
        fast += (goal - fast) * (1.0 - math.exp(-1.0 / (tau if goal > fast else tau * OFF_OVER_ON)))
        above = max(0.0, runner.scale(effort) - 1.0)
        slow += (min(SLOW_MOST, SLOW_AT_LT2 * above) - slow) / SLOW_TAU_S
        late = max(0.0, t - DRIFT_AFTER_S) / 3600.0
        lift = (conditions.day_shift + conditions.drift * late) * (fast - runner.hr_rest) / span
        if lift > 0:  # nothing lifts the heart above its maximum [shape: guess]
            lift *= min(1.0, max(0.0, (runner.hr_max - fast) / (runner.hr_max - runner.lt1_hr)))
        out.append(fast + slow + lift)
    return np.minimum(np.array(out) + noise, runner.hr_max + 1.0)
