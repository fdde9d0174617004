"""Twelve weeks of a simulated runner who trains and now and then runs as hard as possible."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from tests.simulator import Runner, Session, Simulated, Step, draw_runner, prescribe, simulate
from tests.simulator.noise import clipped_normal, stream
from tests.simulator.season import PHASES

FIRST_DAY = datetime(2026, 4, 13, tzinfo=UTC)
#: Lengths of the trials; every runner runs a short one and a long one. [s], metres are races.
SHORT, LONG = ((180, 0), (240, 0), (0, 1609.344)), ((720, 0), (0, 3000.0), (900, 0))
OTHER = ((360, 0), (480, 0), (300, 0), (1080, 0))


@dataclass(frozen=True)
class Known:
    """What the simulator knows of a runner beside its two lines."""

    runner: Runner
    critical: float  # [m/s]
    reserve: float  # [m]


@dataclass(frozen=True, eq=False)
class Run:
    """One of its runs."""

    day: int  # from the first
    all_out: bool
    run: Simulated


def draw_known(seed: int) -> Known:
    """Draw a runner. Critical speed over LT2 1.038 +- 0.012, D' 200 +- 55 m [guess]."""
    rng = stream(seed, 300)
    runner = draw_runner(stream(seed, 200))
    critical = runner.lt2_speed * clipped_normal(rng, 1.038, 0.012, 1.01, 1.07)
    return Known(runner, critical, clipped_normal(rng, 200.0, 55.0, 90.0, 350.0))


def _all_out(known: Known, seconds: float, metres: float, form: float) -> Session:
    """Warm up, wait, run at the speed that lasts just so long, walk, jog."""
    time = seconds or (metres - known.reserve) / known.critical
    speed = form * (known.critical + known.reserve / time)
    lt2 = known.runner.lt2_speed
    return Session(
        "all_out",
        [
            Step(factor=0.84, seconds=840.0),
            Step(gait="stand", seconds=120.0),
            Step(
                of="lt2", factor=speed / lt2, seconds=seconds or None, metres=metres or None,
                work=True,
            ),
            Step(gait="walk", seconds=150.0),
            Step(factor=0.80, seconds=420.0),
        ],
        race=metres > 0,
        structured=True,
    )  # fmt: skip


def twelve_weeks(seed: int, a_week: int = 4) -> tuple[Known, Iterator[Run]]:
    """Simulate training without races, and three to five runs as hard as possible.

    Those are run on firm level ground in little wind; a day's form is 1 +- 0.008 [guess].
    """
    known = draw_known(seed)
    return known, _runs(seed, known, a_week)


def _runs(seed: int, known: Known, a_week: int) -> Iterator[Run]:
    rng = stream(seed, 301)
    weeks = rng.permutation(12)[: int(rng.integers(3, 6))].tolist()
    lengths = [SHORT[int(rng.integers(3))], LONG[int(rng.integers(3))]]
    lengths += [OTHER[int(k)] for k in rng.integers(0, 4, len(weeks) - 2)]
    trials = dict(zip(weeks, lengths, strict=True))
    for week in range(12):
        mix = PHASES["support" if week < 6 else "specific"]
        names = [name for name in mix if not name.startswith("race")]
        total = sum(mix[name] for name in names)
        shares = [mix[name] / total for name in names]
        days = sorted(rng.permutation(6)[:a_week].tolist())
        for day in days:
            session = prescribe(names[int(rng.choice(len(names), p=shares))], rng)
            yield _run(known, session, 7 * week + day, int(rng.integers(1, 2**31)))
        if week in trials:
            form = clipped_normal(rng, 1.0, 0.008, 0.97, 1.02)
            session = _all_out(known, *trials[week], form)
            calm = abs(clipped_normal(rng, 0.0, 1.2, -3.0, 3.0))
            yield _run(
                known, session, 7 * week + 6, int(rng.integers(1, 2**31)),
                terrain="level", ground=1.0, soft_share=0.0, wind=calm, waits=0,
            )  # fmt: skip


def _run(known: Known, session: Session, day: int, seed: int, **conditions: object) -> Run:
    start = FIRST_DAY + timedelta(days=day, hours=7)
    run = simulate(known.runner, session, seed, start=start, **conditions)
    return Run(day, session.kind == "all_out", run)
