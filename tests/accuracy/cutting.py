"""Say what cutting a recording in two changes, as each half is judged by what it shows itself.

``python -m tests.accuracy.cutting`` cuts simulated runs at five places each. But for a
gap there nothing is lost; what moves is what a half cannot know of the other: heart, ground, lag.
"""

from __future__ import annotations

import argparse
from datetime import UTC, datetime

import numpy as np
from numpy.typing import NDArray

from tercet.domain import Recording, Stream
from tercet.engine import LETTERS, Judgement, Shade, judge
from tercet.library.parting import parted
from tercet.library.reading import engine_streams
from tests.accuracy.methods import streams_of, thresholds_of
from tests.simulator import Simulated, season

PLACES = (0.1, 0.3, 0.5, 0.7, 0.9)


def recording_of(run: Simulated) -> Recording:
    """A simulated run as the app holds it."""
    streams = {name: Stream(time, values) for name, (time, values) in streams_of(run).items()}
    start = datetime(2026, 5, 1, tzinfo=UTC)
    return Recording(start, run.samples["time"], streams, "simulated", stops=tuple(run.stops))


def moved(run: Simulated, share: float) -> tuple[NDArray[np.float64], float, float]:
    """Seconds that each of the five sums moves, and shares right of the whole and of the halves."""
    whole, lines = recording_of(run), thresholds_of(run)

    def judged(piece: Recording) -> Judgement:
        return judge(engine_streams(dict(piece.streams)), piece.time, lines, stops=piece.stops)

    one, two = (judged(piece) for piece in parted(whole, share * whole.elapsed_s))
    all_of_it = judged(whole)
    truth = np.array([LETTERS.index(letter) for letter in run.truth])
    halves = np.concatenate((one.shades, two.shades))
    right = []
    for shades in (all_of_it.shades, halves):
        n = min(len(shades), len(truth))
        ran = truth[:n] <= Shade.HARD
        right.append(float(np.mean(shades[:n][ran] == truth[:n][ran])))
    sums = one.seconds_by_shade() + two.seconds_by_shade() - all_of_it.seconds_by_shade()
    return sums, right[0], right[1]


def main() -> None:
    """Print it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, nargs="+", default=[401, 402])
    parser.add_argument("--runs", type=int, default=20)
    told = parser.parse_args()
    runs = [run for seed in told.seeds for run in season(seed, told.runs)]
    cuts = [moved(run, share) for run in runs for share in PLACES]
    most = np.array([np.abs(sums[:3]).max() for sums, _, _ in cuts]) / 60.0
    right = 100 * np.mean([pair[1:] for pair in cuts], axis=0)
    print(
        f"{len(cuts)} cuts; the shade that moves most, min: median {np.median(most):.2f}, "
        f"mean {most.mean():.2f}, 9 in 10 to {np.quantile(most, 0.9):.2f}, largest {most.max():.2f}"
    )
    print(f"right: {right[0]:.1f} % of the whole, {right[1]:.1f} % of the halves")


if __name__ == "__main__":
    main()
