"""A whole season of one runner: what kinds of session, when, and how many."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from tests.simulator.noise import stream
from tests.simulator.record import Simulated, simulate
from tests.simulator.runner import Runner, draw_runner
from tests.simulator.sessions import prescribe

#: Shares of session kinds by phase: common practice, no source.
PHASES: dict[str, dict[str, float]] = {
    "base": {
        "easy": 30, "easy_crept": 4, "easy_strides": 18, "recovery": 8, "long": 16, "reps_100": 4,
        "reps_200": 5, "reps_300": 3, "hill_sprints": 4, "fartlek": 3, "treadmill_easy": 4,
        "thirty_thirty": 1,
    },
    "support": {
        "easy": 28, "easy_crept": 4, "easy_strides": 12, "recovery": 9, "long": 13, "reps_400": 6,
        "thirty_thirty": 4, "reps_1000": 5, "three_minutes": 5, "fartlek": 4, "tempo": 4,
        "treadmill_easy": 3, "treadmill_reps": 2, "race_10k": 1,
    },
    "specific": {
        "easy": 28, "easy_crept": 4, "easy_strides": 10, "recovery": 9, "long": 8,
        "long_race_pace": 7, "reps_1000": 4, "reps_2000": 6, "tempo": 9, "progression": 6,
        "reps_200": 3, "three_minutes": 2, "treadmill_easy": 3, "race_half": 1,
    },
}  # fmt: skip
SPLIT = (("base", 0.50), ("support", 0.25), ("specific", 0.25))

#: A mix whose true make-up by speed is near that of the 14 middle-distance runners of Bellinger,
#: Arnold & Minahan 2020 (79.9 / 5.3 / 14.7 % easy / moderate / hard). Chosen for that make-up.
MIDDLE_DISTANCE_MIX: dict[str, float] = {
    "easy": 18, "easy_strides": 6, "recovery": 3, "long": 3, "reps_100": 5, "reps_200": 19,
    "reps_300": 12, "reps_400": 13, "thirty_thirty": 4, "fartlek": 4, "reps_1000": 8,
    "three_minutes": 3, "reps_2000": 3, "tempo": 4,
}  # fmt: skip


def _phase(share: float) -> dict[str, float]:
    for name, width in SPLIT:
        share -= width
        if share < 0:
            return PHASES[name]
    return PHASES[SPLIT[-1][0]]


def season(
    seed: int,
    runs: int = 150,
    runner: Runner | None = None,
    *,
    mix: dict[str, float] | None = None,
    first_day: datetime = datetime(2026, 4, 13, tzinfo=UTC),
    **conditions: object,
) -> list[Simulated]:
    """Simulate a season of one runner, five or six runs a week, in the order of their dates.

    ``mix`` replaces the phases by one set of shares; ``conditions`` hold for every run.
    """
    rng = stream(seed, 200)
    runner = runner or draw_runner(rng)
    out: list[Simulated] = []
    week = 0
    while len(out) < runs:
        days = sorted(rng.permutation(7)[: int(rng.integers(5, 7))].tolist())
        for day in days[: runs - len(out)]:
            shares = mix or _phase(len(out) / runs)
            names = list(shares)
            total = sum(shares.values())
            kind = names[int(rng.choice(len(names), p=[shares[k] / total for k in names]))]
            hour = 5.0 + 13.0 * float(rng.random())
            start = first_day + timedelta(days=7 * week + day, seconds=round(hour * 3600))
            out.append(
                simulate(
                    runner,
                    prescribe(kind, rng),
                    int(rng.integers(1, 2**31)),
                    start=start,
                    **conditions,
                )
            )
        week += 1
    return out
