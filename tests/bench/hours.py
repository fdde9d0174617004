"""``python -m tests.bench.hours FOLDER [RUNS]``: one-hour runs at one second, as FIT files."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from tests.simulator.noise import stream
from tests.simulator.record import Simulated, simulate
from tests.simulator.runner import draw_runner
from tests.simulator.season import MIDDLE_DISTANCE_MIX, PHASES
from tests.simulator.sessions import Step, prescribe
from tests.simulator.write_fit import fit_bytes

HOUR_S, RUNS, SEED = 3600, 1_000, 20_261_125
FIRST_DAY = datetime(2023, 4, 3, 5, 30, tzinfo=UTC)


def an_hour(number: int) -> Simulated:
    """One run of a season's kinds, gone on easily until an hour is full; same number, same run."""
    rng = stream(SEED, number)
    shares = [PHASES["base"], PHASES["support"], PHASES["specific"], MIDDLE_DISTANCE_MIX][
        number % 4
    ]
    kinds, weights = list(shares), list(shares.values())
    kind = kinds[int(rng.choice(len(kinds), p=[w / sum(weights) for w in weights]))]
    session = prescribe(kind, rng)
    session = replace(session, steps=[*session.steps, Step(seconds=float(HOUR_S))])
    run = simulate(
        draw_runner(stream(SEED, RUNS)),
        session,
        int(rng.integers(1, 2**31)),
        start=FIRST_DAY + timedelta(days=number, seconds=int(rng.integers(36_000))),
        sampling="1s",
    )
    kept = run.samples["time"] < HOUR_S
    return replace(
        run,
        samples={name: values[kept] for name, values in run.samples.items()},
        truth=run.truth[:HOUR_S],
        stops=[(a, min(b, HOUR_S)) for a, b in run.stops if a < HOUR_S],
        laps=[(a, min(n, HOUR_S - a), m, how) for a, n, m, how in run.laps if a < HOUR_S],
    )


def _encoded(number: int) -> bytes:
    return fit_bytes(an_hour(number))


def write(folder: Path, runs: int = RUNS) -> Iterator[Path]:
    """Write them into an existing folder."""
    with ProcessPoolExecutor() as pool:
        for number, data in enumerate(pool.map(_encoded, range(runs), chunksize=4)):
            place = folder / f"hour-{number:04}.fit"
            place.write_bytes(data)
            yield place


if __name__ == "__main__":
    for written in write(Path(sys.argv[1]), int(sys.argv[2]) if sys.argv[2:] else RUNS):
        print(written)
