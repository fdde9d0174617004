"""Print the accuracy table: ``python -m tests.accuracy [--seeds 101 102] [--runs 150]``."""

from __future__ import annotations

import argparse
import time
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from statistics import median

import numpy as np

from tercet.engine import judge
from tests.accuracy.methods import METHODS, streams_of, thresholds_of
from tests.accuracy.score import Score
from tests.simulator import KINDS, Runner, prescribe, season, simulate
from tests.simulator.noise import stream

#: Never used for choosing anything in the engine.
SEEDS = (101, 102, 103, 104)
EVERY_KIND = {kind: 1.0 for kind in KINDS if kind != "ride"}


def judge_season(seed: int, runs: int, mix: dict[str, float] | None) -> dict[str, Score]:
    """Simulate one season and score every method on it."""
    scores = {name: Score() for name in METHODS}
    for run in season(seed, runs, mix=mix):
        for name, method in METHODS.items():
            scores[name].add(run, method(run))
    return scores


def merged(scores: Sequence[Score]) -> Score:
    """Scores of several seasons as one."""
    out = Score()
    for one in scores:
        for kind, pairs in one.confusion.items():
            out.confusion[kind] = out.confusion.get(kind, np.zeros((5, 5))) + pairs
        for kind, exact in one.counts.items():
            out.counts.setdefault(kind, []).extend(exact)
        out.false_finds += one.false_finds
        out.without += one.without
        out.length_errors += one.length_errors
        out.duration_errors += one.duration_errors
        out.covered += one.covered
        out.per_run += one.per_run
        out.clear += one.clear
    return out


def milliseconds_an_hour() -> float:
    """Median of nine judgings of a 60-minute run with every channel, one sample a second."""
    session = prescribe("easy", stream(1, 0), minutes=60)
    run = simulate(
        Runner(), session, 1, terrain="rolling", sampling="1s", timer="running", waits=0,
        altitude="baro", hr_source="strap", hr_fault="", gps="open",
    )  # fmt: skip
    streams, clock, lines = streams_of(run), run.samples["time"], thresholds_of(run)
    took = []
    for _ in range(9):
        begin = time.perf_counter()
        judge(streams, clock, lines, stops=run.stops)
        took.append(1000 * (time.perf_counter() - begin))
    return median(took) * 3600 / run.elapsed_s


def print_table(title: str, seasons: Sequence[dict[str, Score]]) -> None:
    """One block of the table."""
    whole = {name: merged([s[name] for s in seasons]) for name in METHODS}
    ours = whole["engine"]
    print(f"\n{title}")
    print(f"{'':34}" + "".join(f"{name:>16}" for name in METHODS))

    def row(label: str, cells: Sequence[str]) -> None:
        print(f"{label:34}" + "".join(f"{cell:>16}" for cell in cells))

    row("seconds right %", [f"{s.right():.2f}" for s in whole.values()])
    row("... more than 2 % from a line, %", [f"{s.clearly_right():.2f}" for s in whole.values()])
    errors = [s.share_errors() for s in whole.values()]
    row("share error E/M/H, points", ["/".join(f"{e:+.1f}" for e in x) for x in errors])
    worst = [max(abs(s[name].share_errors()).max() for s in seasons) for name in METHODS]
    row("worst share error of a season", [f"{w:.2f}" for w in worst])
    row(
        "hard in short repetitions, error %",
        [f"{s.hard_ratio():+.1f}" for s in whole.values()],
    )
    row(
        "wrongly moderate in easy runs %",
        [f"{s.wrongly_moderate():.2f}" for s in whole.values()],
    )
    row("worst tenth of runs, right %",
        [f"{100 * np.percentile(s.per_run, 10):.1f}" for s in whole.values()])  # fmt: skip
    exact, of = ours.exact()
    print(f"repetitions exact {exact} of {of} ({100 * exact / max(of, 1):.1f} %), "
          f"false finds {ours.false_finds} of {ours.without}")  # fmt: skip
    if ours.length_errors:
        print(f"repetition length off (median of sizes): "
              f"{100 * np.median(np.abs(ours.length_errors)):.1f} % metres, "
              f"{100 * np.median(np.abs(ours.duration_errors)):.1f} % seconds")  # fmt: skip
    if ours.covered:
        print(f"90 % intervals hold the truth in {100 * np.mean(ours.covered):.1f} %")
    print("by kind: seconds right %" + " " * 10 + "".join(f"{name:>16}" for name in METHODS)
          + "   share error E/M/H   repetitions")  # fmt: skip
    for kind in (k for k in KINDS if k in ours.confusion):
        cells = "".join(f"{s.right([kind]):16.1f}" for s in whole.values())
        error = "/".join(f"{e:+.1f}" for e in ours.share_errors([kind]))
        counted = "{} of {}".format(*ours.exact(kind)) if kind in ours.counts else ""
        print(f"  {kind:32}{cells}   {error:>17}   {counted}")


def main(arguments: Sequence[str] | None = None) -> None:
    """Print everything."""
    parser = argparse.ArgumentParser(prog="python -m tests.accuracy")
    parser.add_argument("--seeds", type=int, nargs="+", default=SEEDS)
    parser.add_argument("--runs", type=int, default=150)
    chosen = parser.parse_args(arguments)
    with ProcessPoolExecutor(2) as pool:
        plain = list(pool.map(partial(judge_season, runs=chosen.runs, mix=None), chosen.seeds))
        alike = list(
            pool.map(
                partial(judge_season, runs=len(EVERY_KIND) * 4, mix=EVERY_KIND),
                [seed + 1000 for seed in chosen.seeds],
            )
        )
    print_table(f"Seasons {[*chosen.seeds]}, {chosen.runs} runs each", plain)
    print_table(f"Every kind alike, seeds {[s + 1000 for s in chosen.seeds]}", alike)
    print(f"\n60-minute run judged in {milliseconds_an_hour():.1f} ms (median of 9)")


if __name__ == "__main__":
    main()
