"""Judging in pieces: sums exact, and what it says the same as of a whole, but near the seams."""

from __future__ import annotations

import math

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Judgement, judge, long_lines
from tercet.engine.known import Known


def judged(seconds: float, monkeypatch: pytest.MonkeyPatch) -> Judgement:
    run = simulate(Runner(), prescribe("reps_400", stream(11, 0)), 11)
    samples = run.samples["time"] + np.where(run.samples["time"] > 3_000, 0.4, 0.0)
    monkeypatch.setattr(long_lines, "LONGEST_S", seconds)
    monkeypatch.setattr(long_lines, "PIECE_S", seconds)
    return judge(streams_of(run), samples, thresholds_of(run), stops=[(300.0, 340.0)])


def test_pieces_say_what_the_whole_says(monkeypatch: pytest.MonkeyPatch) -> None:
    whole, pieces = judged(math.inf, monkeypatch), judged(1_000, monkeypatch)
    assert len(whole.shades) > 2_000
    assert pieces.last_second_s == whole.last_second_s
    assert pieces.elapsed_s == whole.elapsed_s == pieces.seconds_by_shade().sum()
    assert pieces.metres.sum() == pytest.approx(whole.metres.sum())
    assert np.mean(pieces.shades == whole.shades) > 0.9
    for shade, (low, high) in enumerate(pieces.intervals):
        assert low <= high and high >= 0.5 * pieces.seconds_by_shade()[shade]
    starts = [rep.start_s for rep in pieces.repetitions]
    assert starts == sorted(starts) and starts[-1] > 2 * len(whole.shades) / 3
    for name in ("metres", "evidence", "scale", "speed", "level_speed", "heart_rate", "altitude"):
        assert len(getattr(pieces, name)) == len(pieces.shades)
    assert len(pieces.probability) == len(pieces.shades)


def test_days_with_a_sample_now_and_then_are_judged_within_bounds() -> None:
    time = np.arange(0.0, 240 * 3600, 7_000.0)
    found = judge({"distance": (time, time)}, time, None, beside=Known(laps=(10.0, 800_000.0)))
    assert found.elapsed_s == time[-1] == found.seconds_by_shade()[3]
    assert found.metres.sum() == pytest.approx(time[-1]) and found.intervals == ()


def test_power_that_one_piece_lacks_is_unknown_there() -> None:
    time = np.arange(0.0, 40 * 3600, 10.0)
    early = time[time < 3 * 3600]
    found = judge({"distance": (time, 3 * time), "power": (early, 0 * early + 250.0)}, time, None)
    assert len(found.power) == len(found.shades)
    assert np.nanmedian(found.power[:10_000]) == pytest.approx(250.0)
    assert np.isnan(found.power[20 * 3600 :]).all()
