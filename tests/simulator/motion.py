"""What the runner really does, second by second: speed, place, gait and demand."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from tests.simulator.conditions import Conditions
from tests.simulator.noise import Floats, stream, wander
from tests.simulator.runner import Runner
from tests.simulator.sessions import Session, Step
from tests.simulator.terrain import Route, cost_ratio, route

WALK, RIDE = 1.45, 7.6  # usual speeds [m/s], [guess]
SLOWEST_RUN = 1.95
RUNNING = 1.8  # below this a second is "not running" unless the climb makes it hard work
HILL_GRADE, HILL_M = 0.08, 120.0
#: Share of body work that still air takes at v: 0.0022 v^2 (Pugh 1971, from memory: 8 % at 6 m/s).
AIR = 0.0022
#: How much of an added cost the runner answers by slowing: 0 keeps the speed, 1 the effort.
#: [guess], downhill less because legs brake.
YIELD_UP, YIELD_DOWN, YIELD_HIDDEN = 0.60, 0.40, 0.50
#: Spread and correlation of pace within a step [guess].
PACE_SPREAD, PACE_TAU_S = 0.022, 45.0


@dataclass(frozen=True, eq=False)
class Motion:
    """True state; second k spans k to k + 1 s, points hold the state at its start (n + 1)."""

    speed: Floats  # (n,) m/s along the ground
    demand: Floats  # (n,) level-equivalent running speed [m/s]
    effort: Floats  # (n,) the speed of running that loads the heart alike [m/s]
    gait: list[str]  # (n,)
    step: list[int]  # (n,) index into the steps run
    waiting: list[bool]  # (n,) standing at a crossing
    distance: Floats  # (n + 1,) m
    along: Floats  # (n + 1,) m on the loop
    height: Floats  # (n + 1,) m
    route: Route
    repetitions: list[tuple[int, int, float]]  # start_s, duration_s, metres
    marks: list[int]  # seconds at which a structured step begins


def _with_waits(steps: list[Step], waits: int, rng: np.random.Generator) -> list[tuple[Step, bool]]:
    """Cut steady steps open for waits of 8 to 75 s [guess]."""
    out = [(s, False) for s in steps]
    for _ in range(waits):
        places = [
            i
            for i, (s, _) in enumerate(out)
            if not s.work and s.gait in ("run", "ride") and (s.seconds or 0) > 300 and not s.ramp_to
        ]
        share, wait = 0.15 + 0.7 * float(rng.random()), int(rng.integers(8, 76))
        if not places:
            continue
        i = places[int(rng.integers(len(places)))]
        step = out[i][0]
        first = round((step.seconds or 0) * share)
        out[i : i + 1] = [
            (replace(step, seconds=first), False),
            (Step(gait="stand", seconds=wait), True),
            (replace(step, seconds=(step.seconds or 0) - first), False),
        ]
    return out


def _soft(along: float, length: float, share: float) -> bool:
    """Whether this place is soft: up to four stretches round the loop."""
    return share > 0 and (along / length * 4.0) % 1.0 < share


def move(runner: Runner, session: Session, conditions: Conditions, seed: int) -> Motion:
    """Run the session over its route."""
    c = conditions
    rng = stream(seed, 1)
    way = route("track" if session.track else c.terrain, c.loop_m, c.loop)
    steps = _with_waits(session.steps, c.waits, rng)
    pace = wander(rng, 30000, PACE_SPREAD, PACE_TAU_S).tolist()
    speeds, demands, efforts, gaits, indices, waiting = [], [], [], [], [], []
    distances, places, lanes = [0.0], [0.0], [0.0]
    repetitions: list[tuple[int, int, float]] = []
    marks: list[int] = []
    distance = along = lane = speed = 0.0
    t = 0
    for index, (step, is_wait) in enumerate(steps):
        begin, begin_m = t, distance
        if index and (step.work or steps[index - 1][0].work):
            marks.append(t)
        base = runner.lt1_speed if step.of == "lt1" else runner.lt2_speed
        while True:
            done = (
                (step.seconds is not None and t - begin >= round(step.seconds))
                or (step.metres is not None and distance - begin_m >= step.metres - speed / 2)
                or (step.hill < 0 and lane <= 0.5)
            )
            if done or t >= 29000:
                break
            factor = step.factor
            if step.ramp_to is not None and step.seconds:
                factor += (step.ramp_to - factor) * min(1.0, (t - begin) / step.seconds)
            cell = int(along / way.length_m * way.cells) % way.cells
            direction = -1.0 if step.hill < 0 else 1.0
            slope = way.slope[cell]
            if step.hill:
                slope += HILL_GRADE * min(1.0, max(0.0, min(lane + 2.0, HILL_M - lane) / 10.0))
            slope *= direction
            east = way.heading[cell][0] * direction
            grade = 1.0 if session.indoor else cost_ratio(slope)
            head = speed + c.wind * east
            hidden = 1.0 if session.indoor else 1.0 + AIR * (head * abs(head) - speed * speed)
            if _soft(along, way.length_m, c.soft_share):
                hidden *= c.ground
            if step.gait == "stand":
                target, quick = 0.0, 1.2
            elif step.gait == "walk":
                target, quick = WALK * (1.0 + pace[t]), 1.6
            elif step.gait == "ride":
                target, quick = RIDE * (1.0 + 2.0 * pace[t]) / grade**0.9, 9.0
            else:
                target = base * factor * (1.0 + pace[t])
                if not step.hill:
                    target /= grade ** (YIELD_UP if slope > 0 else YIELD_DOWN)
                target /= hidden**YIELD_HIDDEN
                target, quick = max(SLOWEST_RUN, target), 1.8
            before = speed
            speed += (target - speed) * (1.0 - math.exp(-1.0 / quick))
            if step.gait == "stand" and speed < 0.25:
                speed = 0.0
            metres = 0.5 * (before + speed)
            demand = metres * grade * hidden
            distance += metres
            along = (along + direction * metres) % way.length_m
            lane = max(0.0, lane + direction * metres) if step.hill else 0.0
            speeds.append(metres)
            demands.append(demand)
            walked = step.gait in ("walk", "stand")
            if step.gait == "ride":
                efforts.append(0.82 * base)  # heart rate well below LT1 [guess]
            else:
                efforts.append(demand * 0.75 if walked and metres < RUNNING else demand)
            gaits.append(step.gait)
            indices.append(index)
            waiting.append(is_wait)
            distances.append(distance)
            places.append(along)
            lanes.append(lane)
            t += 1
        if step.work and t > begin:
            repetitions.append((begin, t - begin, round(distance - begin_m, 1)))
    where = np.array(places)
    rise = HILL_GRADE * np.clip(np.array(lanes) - 3.0, 0.0, HILL_M - 8.0)
    return Motion(
        speed=np.array(speeds), demand=np.array(demands), effort=np.array(efforts), gait=gaits,
        step=indices, waiting=waiting, distance=np.array(distances), along=where,
        height=way.at(where, way.height) + rise, route=way, repetitions=repetitions, marks=marks,
    )  # fmt: skip


def truth(motion: Motion, runner: Runner) -> str:
    """One letter a second, from demand against the runner's own threshold speeds.

    E below LT1 speed, M from there to below LT2 speed, H from LT2 speed on. R (not running)
    while riding, standing, and while moving slower than 1.8 m/s, which is walking, unless a
    climb lifts its demand to LT1. U never: the simulator always knows.
    """
    letters = []
    for speed, demand, gait in zip(
        motion.speed.tolist(), motion.demand.tolist(), motion.gait, strict=True
    ):
        if gait == "ride" or (speed < RUNNING and demand < runner.lt1_speed):
            letters.append("R")
        elif demand < runner.lt1_speed:
            letters.append("E")
        else:
            letters.append("M" if demand < runner.lt2_speed else "H")
    return "".join(letters)
