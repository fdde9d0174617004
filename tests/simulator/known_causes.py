"""Runs whose moderate minutes have one known cause, beside the kinds of a season.

Apart from ``prescribe``, so that what seeds of a season draw stays as it is.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from tests.simulator.record import Simulated, simulate
from tests.simulator.runner import draw_runner
from tests.simulator.sessions import Session, Step, prescribe

PLAIN: dict[str, object] = {
    "ground": 1.0, "soft_share": 0.0, "hr_source": "strap", "hr_fault": "", "waits": 0,
    "gps": "open", "gps_gaps": 0, "gps_spikes": 0,
}  # fmt: skip
#: Cause to the ways it is made.
WAYS = {
    "start": ("fast throughout", "fast, then eased"),
    "late": ("easy_crept", "fast end"),
    "climb": ("hilly", "one climb"),
    "drift": ("warm",),
    "around": ("reps_200", "reps_400", "thirty_thirty", "fast jogs"),
    "meant": ("tempo", "long_race_pace", "tempo in two"),
}


def known_cause(way: str, seed: int) -> Simulated:
    """Simulate a run of one way to run moderate; level ground unless hills are the cause."""
    rng = np.random.default_rng([seed, 77])
    runner = draw_runner(rng)
    drawn = PLAIN | {"terrain": "level", "altitude": "baro", "wind": 0.0}

    def between(low: float, high: float) -> float:
        return low + (high - low) * float(rng.random())

    def minutes(low: float, high: float) -> float:
        return round(60 * between(low, high))

    if way == "fast throughout":
        steps = [Step(factor=between(1.04, 1.12), seconds=minutes(35, 60))]
    elif way == "fast, then eased":
        steps = [Step(factor=between(1.06, 1.14), seconds=minutes(18, 28)),
                 Step(factor=between(0.84, 0.88), seconds=minutes(20, 30))]  # fmt: skip
    elif way == "fast end":
        steps = [Step(factor=between(0.86, 0.92), seconds=minutes(28, 40)),
                 Step(factor=0.93, ramp_to=1.09, seconds=minutes(8, 12)),
                 Step(factor=1.09, seconds=minutes(8, 14))]  # fmt: skip
    elif way == "hilly":
        steps = [Step(factor=between(0.91, 0.95), seconds=minutes(50, 80))]
        drawn |= {"terrain": "hilly", "loop_m": 8100.0}
    elif way == "one climb":
        steps = [Step(factor=between(0.88, 0.93), seconds=minutes(45, 60))]
        drawn |= {"terrain": "hilly", "loop_m": 11300.0}
    elif way == "warm":
        steps = [Step(factor=between(0.90, 0.96), seconds=minutes(60, 100))]
        drawn |= {"temperature": 29.0, "drift": between(10.0, 15.0), "day_shift": 1.0}
    elif way == "fast jogs":
        made = prescribe("reps_400", rng)
        steps = [
            replace(s, gait="run", factor=between(1.04, 1.10), seconds=80.0)
            if not s.work and 0 < k < len(made.steps) - 1
            else s
            for k, s in enumerate(made.steps)
        ]
        return simulate(runner, replace(made, steps=steps), seed, **drawn)
    elif way == "tempo in two":
        bout = Step(of="lt2", factor=between(0.94, 0.98), seconds=minutes(10, 14), work=True)
        easy = Step(factor=0.85, seconds=minutes(12, 18))
        steps = [easy, bout, replace(easy, seconds=240.0), bout, easy]
    else:
        return simulate(runner, prescribe(way, rng), seed, **drawn)
    return simulate(runner, Session(way, steps), seed, **drawn)
