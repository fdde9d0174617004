"""Warm-up, work, recovery and cool-down, on sessions of which the prescription is known."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, Simulated, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Judgement, Shade, judge
from tercet.engine.judgement import Repetition
from tercet.engine.parts import parts, summed


def judged_run(kind: str, seed: int) -> tuple[Simulated, Judgement]:
    run = simulate(Runner(), prescribe(kind, stream(seed, 0)), seed)
    lines = thresholds_of(run)
    return run, judge(streams_of(run), run.samples["time"], lines, stops=run.stops)


def made(letters: str, *repetitions: tuple[float, float]) -> Judgement:
    """A judgement of these seconds, 3 m each."""
    n = len(letters)
    nothing = np.full(n, np.nan)
    shades = np.array(["EMHRU".index(letter) for letter in letters], dtype=np.uint8)
    return Judgement(
        shades, np.full(n, 3.0), shades, nothing, nothing, nothing, nothing, nothing, 0.5,
        repetitions=tuple(Repetition(a, b - a, 0.0, 5.0, Shade.HARD) for a, b in repetitions),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "before"),
    [("reps_1000", "warm-up"), ("tempo", "warm-up"), ("easy_strides", "easy running")],
)
def test_parts_are_those_that_were_prescribed(kind: str, before: str) -> None:
    run, judged = judged_run(kind, 3)
    found = parts(judged)
    begin, _, _ = run.repetitions[0]
    last, last_length, _ = run.repetitions[-1]
    assert [found[0].label, found[-1].label] == [before, "cool-down"]
    # Within what two smoothed speeds leave of an edge.
    assert found[0].end_s == pytest.approx(begin, abs=15)
    assert found[-1].start_s == pytest.approx(last + last_length, abs=15)
    middle = [part.label for part in found[1:-1]]
    assert middle == ["work", *["recovery", "work"] * (len(run.repetitions) - 1)]
    work = next(total for total in summed(found) if total.label == "work")
    assert work.count == len(run.repetitions)
    true_s = sum(seconds for _, seconds, _ in run.repetitions)
    assert work.duration_s == pytest.approx(true_s, rel=0.06)
    assert work.distance_m == pytest.approx(sum(m for _, _, m in run.repetitions), rel=0.06)


@pytest.mark.parametrize("kind", ["reps_400", "progression", "race_10k"])
def test_parts_follow_one_another_and_hold_every_second_and_metre(kind: str) -> None:
    _, judged = judged_run(kind, 4)
    found = parts(judged)
    assert (found[0].start_s, found[-1].end_s) == (0.0, judged.elapsed_s)
    assert all(a.end_s == b.start_s for a, b in pairwise(found))
    for name in ("seconds", "metres"):
        whole = getattr(judged, f"{name}_by_shade")()
        for told in (found, summed(found)):
            np.testing.assert_allclose(sum(np.array(getattr(p, name)) for p in told), whole)
    assert all(sum(p.seconds) == pytest.approx(p.duration_s) for p in found)


def test_an_easy_run_has_no_parts() -> None:
    assert parts(judged_run("easy", 5)[1]) == ()
    assert parts(made("")) == ()
    # A hill of six minutes makes no work of an easy run; six minutes hard do.
    assert parts(made("E" * 900 + "M" * 360 + "E" * 900)) == ()
    told = parts(made("E" * 900 + "H" * 200 + "E" * 40 + "H" * 160 + "E" * 900))
    assert [(p.start_s, p.end_s) for p in told if p.label == "work"] == [(900.0, 1300.0)]


def test_work_at_the_very_ends_leaves_nothing_before_or_after_it() -> None:
    told = parts(made("E" * 60, (0.0, 59.5)))
    assert [(p.label, p.start_s, p.end_s) for p in told] == [("work", 0.0, 59.5)]
    told = parts(made("E" * 60, (2.0, 20.0), (21.0, 40.0)))
    assert [(p.label, p.end_s) for p in told] == [
        ("work", 21.0),
        ("work", 40.0),
        ("cool-down", 59.5),
    ]
    assert told[0].metres[0] == pytest.approx(63.0)


def test_sustained_work_beside_repetitions_is_work_as_well() -> None:
    letters = "E" * 600 + "M" * 400 + "E" * 200 + "H" * 30 + "E" * 60 + "H" * 30 + "E" * 300
    told = parts(made(letters, (1200.0, 1230.0), (1290.0, 1320.0)))
    assert [p.start_s for p in told if p.label == "work"] == [600.0, 1200.0, 1290.0]
