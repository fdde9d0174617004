"""How true thresholds from recordings are: ``python -m tests.accuracy.thresholds``.

Each simulated runner trains for twelve weeks, four runs a week, and runs three to five times as
hard as possible. Then the same without those efforts, which must be refused.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace

import numpy as np

from tercet.engine import judge, steady
from tercet.engine.fingerprint import Fingerprint, fingerprint
from tercet.engine.recorded import from_recordings
from tests.accuracy.methods import streams_of
from tests.accuracy.runners import twelve_weeks

#: Never used for choosing anything in the engine.
FIRST_SEED = 2001
#: The easy ceiling is drawn from the last weeks only.
LAST_DAYS = 42


@dataclass(frozen=True)
class Result:
    """Errors of one runner; (error, half-width) or None where nothing was said."""

    critical: tuple[float, float] | None  # as shares
    lt1_speed: tuple[float, float] | None  # as shares
    lt2_hr: tuple[float, float] | None  # [beats/min]
    lt1_hr: tuple[float, float] | None
    ceiling: tuple[float, float] | None  # as shares
    refused_without: bool
    refusal: str = ""


def prints_of(seed: int) -> tuple[object, list[tuple[int, bool, Fingerprint]]]:
    """The runner's truth, and day, whether all out, and fingerprint of each outdoor run."""
    known, runs = twelve_weeks(seed)
    out = []
    for item in runs:
        run = item.run
        if run.session.indoor:
            continue
        judged = judge(streams_of(run), run.samples["time"], None, stops=run.stops)
        warmth = run.conditions.temperature
        out.append((item.day, item.all_out, fingerprint(judged, warmth)))
    return known, out


def measure(seed: int) -> Result:
    """Find one runner's lines and compare."""
    known, dated = prints_of(seed)
    runner = known.runner  # type: ignore[attr-defined]
    everything = [item for _, _, item in dated]
    without = [replace(item, efforts=()) if hard else item for _, hard, item in dated]
    refused = False
    try:
        from_recordings(without)
    except ValueError:
        refused = True
    late = [item for day, _, item in dated if day >= 84 - LAST_DAYS]
    try:
        met = steady.meeting(steady.pieces_of(late), runner.lt1_hr)
        ceiling = (met.speed / runner.lt1_speed - 1, met.half / runner.lt1_speed)
    except ValueError:
        ceiling = None
    try:
        found = from_recordings(everything)
    except ValueError as error:
        return Result(None, None, None, None, ceiling, refused, str(error))
    values, half = found.estimate.values, found.estimate.interval
    truth = known.critical  # type: ignore[attr-defined]
    assert values.lt1_speed is not None

    def beats(name: str) -> tuple[float, float] | None:
        value = getattr(values, name)
        return None if value is None else (value - getattr(runner, name), half[name])

    return Result(
        (found.critical.speed / truth - 1, found.critical.speed_half / truth),
        (values.lt1_speed / runner.lt1_speed - 1, half["lt1_speed"] / runner.lt1_speed),
        beats("lt2_hr"),
        beats("lt1_hr"),
        ceiling,
        refused,
    )


def summary(pairs: Sequence[tuple[float, float] | None]) -> tuple[int, float, float, float]:
    """How many said something, median size of the error, its median, share held."""
    known = np.array([pair for pair in pairs if pair is not None])
    if len(known) == 0:
        return 0, float("nan"), float("nan"), float("nan")
    size = np.abs(known[:, 0])
    held = float(np.mean(size <= known[:, 1]))
    return len(known), float(np.median(size)), float(np.median(known[:, 0])), held


def main(arguments: Sequence[str] | None = None) -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(prog="python -m tests.accuracy.thresholds")
    parser.add_argument("--runners", type=int, default=200)
    parser.add_argument("--first", type=int, default=FIRST_SEED)
    chosen = parser.parse_args(arguments)
    with ProcessPoolExecutor(2) as pool:
        results = list(pool.map(measure, range(chosen.first, chosen.first + chosen.runners)))
    print(f"{len(results)} runners{'':22}said   median |error|   median error   interval holds")
    for name, scale, unit in (
        ("critical", 100, "%"),
        ("lt1_speed", 100, "%"),
        ("lt2_hr", 1, "beats/min"),
        ("lt1_hr", 1, "beats/min"),
        ("ceiling", 100, "%"),
    ):
        count, size, middle, held = summary([getattr(result, name) for result in results])
        print(f"{name + ', ' + unit:32}{count:6}{scale * size:13.2f}{scale * middle:17.2f}"
              f"{100 * held:17.1f} %")  # fmt: skip
    refused = sum(result.refused_without for result in results)
    print(f"without the hard efforts refused: {refused} of {len(results)}")
    for result in results:
        if result.refusal:
            print(f"  refused with them: {result.refusal}")


if __name__ == "__main__":
    main()
