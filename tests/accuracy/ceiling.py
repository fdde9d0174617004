"""Say how much of the error is owed to what no recording shows: the same seasons without it.

``python -m tests.accuracy.ceiling`` judges seasons from which one unknown after another has been
taken away. The engine is not told; what it gains is what that unknown costs it.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from itertools import product

from tests.accuracy.__main__ import EVERY_KIND, merged
from tests.accuracy.methods import engine
from tests.accuracy.score import Score
from tests.simulator import season

#: Apart from those of the accuracy table.
SEEDS = (301, 302, 303)
FIRM: dict[str, object] = {"ground": 1.0, "soft_share": 0.0, "wind": 0.0}
LEVEL: dict[str, object] = {"terrain": "level", "altitude": "baro"}
USUAL: dict[str, object] = {"day_shift": 0.0, "drift": 5.0, "temperature": 16.0}
STRAP: dict[str, object] = {"hr_source": "strap", "hr_fault": ""}
SKY: dict[str, object] = {"gps": "open", "gps_gaps": 0, "gps_spikes": 0}
#: What is taken away, and the conditions that all runs then have.
WITHOUT: dict[str, dict[str, object]] = {
    "nothing taken away": {},
    "without soft ground and wind": FIRM,
    "without hills": LEVEL,
    "without days of another heart": USUAL,
    "without faults of heart rate": STRAP,
    "without trees, towns and gaps": SKY,
    "without ground, wind and hills": FIRM | LEVEL,
    "without days and faults of heart": USUAL | STRAP,
    "without any of these": FIRM | LEVEL | USUAL | STRAP | SKY,
}
#: No kind of session is to have fewer seconds right than this. [%]
LEAST_RIGHT = 90.0


def judged_without(what: str, seed: int, runs: int) -> tuple[Score, Score]:
    """Score the engine on one season, and on every kind alike, without one unknown."""
    out = []
    for mix, number, first in (
        (None, runs, seed),
        (EVERY_KIND, 4 * len(EVERY_KIND), seed + 1000),
    ):
        score = Score()
        for run in season(first, number, mix=mix, **WITHOUT[what]):
            score.add(run, engine(run))
        out.append(score)
    return out[0], out[1]


def row(what: str, seasons: Sequence[Score], alike: Sequence[Score]) -> str:
    """One line of the table."""
    whole, kinds = merged(seasons), merged(alike)
    worst = max(abs(one.share_errors()).max() for one in seasons)
    weak = sorted((kinds.right([kind]), kind) for kind in kinds.confusion)
    names = ", ".join(f"{kind} {right:.0f}" for right, kind in weak if right < LEAST_RIGHT)
    return f"{what:34}{whole.right():8.2f}{worst:8.2f}{kinds.right():8.2f}   {names or 'none'}"


def main(arguments: Sequence[str] | None = None) -> None:
    """Print everything."""
    parser = argparse.ArgumentParser(prog="python -m tests.accuracy.ceiling")
    parser.add_argument("--seeds", type=int, nargs="+", default=SEEDS)
    parser.add_argument("--runs", type=int, default=150)
    chosen = parser.parse_args(arguments)
    jobs = list(product(WITHOUT, chosen.seeds))
    with ProcessPoolExecutor(2) as pool:
        whats, seeds = zip(*jobs, strict=True)
        scores = dict(
            zip(
                jobs, pool.map(judged_without, whats, seeds, [chosen.runs] * len(jobs)), strict=True
            )
        )
    print(f"Seasons {[*chosen.seeds]}, {chosen.runs} runs each; every kind alike beside them")
    print(f"{'':34}{'right %':>8}{'worst':>8}{'alike %':>8}   kinds below {LEAST_RIGHT:.0f} %")
    print(f"{'':34}{'':8}{'share':>8}")
    for what in WITHOUT:
        both = [scores[what, seed] for seed in chosen.seeds]
        print(row(what, [one for one, _ in both], [one for _, one in both]))


if __name__ == "__main__":
    main()
