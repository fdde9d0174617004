"""``python -m tests.bench.record FOLDER [RUNS]``: a record of distinct runs out, in, and in again.

FOLDER keeps the recordings and the first store for another run; the copies are made anew.
"""

from __future__ import annotations

import cProfile
import os
import pstats
import shutil
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from tercet.domain import Block, Race
from tercet.library import corrections, operations, record, record_merge, season
from tercet.library.library import Library
from tercet.store import queries, record_queries
from tercet.store.database import Store
from tests.simulator.noise import stream
from tests.simulator.record import simulate
from tests.simulator.runner import draw_runner
from tests.simulator.sessions import Step, prescribe
from tests.simulator.write_fit import fit_bytes

RUNS, SEED, SHORTEST_S = 3_000, 20_261_126, 600
FIRST_DAY = datetime(2012, 4, 2, 5, 30, tzinfo=UTC)


def short_run(number: int) -> bytes:
    """A run of 10 to 20 minutes, no two alike; two days in three have one."""
    rng = stream(SEED, number)
    seconds = float(SHORTEST_S + rng.integers(SHORTEST_S))
    session = replace(prescribe("easy", rng), steps=[Step(seconds=seconds)])
    start = FIRST_DAY + timedelta(days=number * 3 // 2, seconds=int(rng.integers(36_000)))
    runner = draw_runner(stream(SEED, RUNS))
    run = simulate(runner, session, int(rng.integers(1, 2**31)), start=start, sampling="1s")
    return fit_bytes(run)


def write(folder: Path, runs: int) -> None:
    """Write the recordings that an existing folder lacks."""
    missing = [n for n in range(runs) if not (folder / f"run-{n:05}.fit").exists()]
    with ProcessPoolExecutor() as pool:
        for number, data in zip(missing, pool.map(short_run, missing, chunksize=8), strict=True):
            (folder / f"run-{number:05}.fit").write_bytes(data)


def speak(library: Library) -> None:
    """Say something about many of the runs, shade some by hand, and plan two blocks."""
    ids = library.call(queries.run_ids)
    for place, number in enumerate(ids):
        if place % 3 == 0:
            library.call(operations.set_effort, number, 2 + place % 7)
        if place % 5 == 0:
            library.call(operations.set_note, number, f"Said of run {place}")
        if place % 50 == 0:
            library.call(corrections.shade_stretch, number, 60.0, 180.0, "M")
    start = FIRST_DAY.date() + timedelta(days=7)
    middle, end = start + timedelta(days=84), start + timedelta(days=210)
    blocks = [Block(start, middle - timedelta(days=1), "Base"), Block(middle, end, "Support")]
    library.call(operations.set_plan, blocks, [Race(end, "Half of the bench", 21_097.5)])


def originals(folder: Path) -> dict[str, bytes]:
    """Every original that a store keeps, by name."""
    return {at.name: at.read_bytes() for at in (folder / "originals").rglob("*") if at.is_file()}


def told(store: Store) -> tuple[object, ...]:
    """All that a record says but what other copies are known to have said, and every total."""
    parts = record.parts_of(store)
    view = season.season(store)
    totals = [
        (block.name, block.seconds, [week.seconds for week in block.weeks]) for block in view.blocks
    ]
    files = [{k: v for k, v in row.items() if k != "taken_in"} for row in parts.files]
    return files, parts.runs, parts.plan, parts.settings, totals


def timed(words: str, call: Callable[[], object], *, profiled: bool = False) -> None:
    """Say how long a call took, and where it spent it."""
    profile = cProfile.Profile() if profiled else None
    began = time.perf_counter()
    if profile is not None:
        profile.runcall(call)
    else:
        call()
    print(f"{words}: {time.perf_counter() - began:.1f} s", flush=True)
    if profile is not None:
        pstats.Stats(profile).sort_stats("cumulative").print_stats(25)


def measure(folder: Path, runs: int = RUNS, *, profiled: bool = False) -> Iterator[str]:
    """Out of one store and into another, twice; gives what was equal."""
    recordings = folder / "recordings"
    recordings.mkdir(parents=True, exist_ok=True)
    timed("recordings written", lambda: write(recordings, runs))
    first = Library(folder / f"first-{runs}")
    if not first.call(record_queries.files):
        places = [recordings / f"run-{number:05}.fit" for number in range(runs)]
        timed("taken in as files", lambda: first.take_in(places))
        timed("notes, efforts, shadings and blocks said", lambda: speak(first))
    archive = folder / "record.zip"
    timed("record out", lambda: record.write(first, archive))
    mine = first.call(told)
    how_many = len(first.call(queries.run_ids))
    hours = sum(sum(block.seconds) for block in first.call(season.season).blocks) / 3600
    first.close()
    size = archive.stat().st_size / 1e6
    yield f"archive: {size:.0f} MB, {how_many:,} runs, {hours:.0f} h in blocks"
    copy = folder / "copy"
    shutil.rmtree(copy, ignore_errors=True)
    second = Library(copy)
    timed("record in", lambda: record_merge.take_in(second, archive))
    once = second.call(told)
    held, kept = originals(folder / f"first-{runs}"), originals(copy)
    yield f"originals byte-equal: {held == kept} ({len(kept):,})"
    for name, a, b in zip(("files", "runs", "plan", "settings", "totals"), mine, once, strict=True):
        yield f"{name} equal: {a == b}"
    state, shared = second.call(told), second.call(record_queries.shared)
    again = []
    timed(
        "record in again",
        lambda: again.append(record_merge.take_in(second, archive)),
        profiled=profiled,
    )
    yield f"said: {again[0].words}; step: {again[0].changes.step!r}"
    yield f"in again changed nothing: {state == second.call(told)}"
    yield f"what is known of copies is as it was: {shared == second.call(record_queries.shared)}"
    second.close()


if __name__ == "__main__":
    print(f"load: {os.getloadavg()[0]:.1f}")
    how_many = int(sys.argv[2]) if sys.argv[2:] else RUNS
    for line in measure(Path(sys.argv[1]), how_many, profiled="--profile" in sys.argv):
        print(line, flush=True)
