"""The one-second grid: exact sums, pauses never bridged."""

from __future__ import annotations

import time as time_module
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from tercet.engine import timeline

Stops = Sequence[tuple[float, float]]


def laid_out(
    streams: timeline.Streams, time: NDArray[np.float64], stops: Stops = ()
) -> timeline.Timeline:
    grid = timeline.Grid(streams, time, stops)
    return grid.stretch(0, len(grid))


def test_irregular_samples_keep_time_and_way() -> None:
    time = np.array([0.0, 2, 3, 7, 8, 12.4])
    line = laid_out({"distance": (time, 3 * time)}, time)
    assert len(line) == 13 and line.last_second_s == pytest.approx(0.4)
    assert line.metres.sum() == pytest.approx(3 * 12.4)
    assert line.running_clock.all()


def test_stops_and_gaps_are_off_the_clock_and_not_bridged() -> None:
    time = np.concatenate((np.arange(0.0, 61), np.arange(200.0, 261)))
    heart = np.where(time < 100, 140.0, 150.0)
    line = laid_out({"heart_rate": (time, heart)}, time, [(20.0, 30.0)])
    clock = line.running_clock
    assert not clock[20:30].any() and not clock[60:200].any()
    assert clock.sum() == 260 - 10 - 140
    assert np.isnan(line.channels["heart_rate"][65:195]).all()


def test_a_counter_set_back_goes_on() -> None:
    time, track = timeline.distance_track({"distance": ([0, 1, 2, 3], [0, 3, 0, 3])})
    np.testing.assert_array_equal(track, [0, 3, 3, 6])
    assert len(time) == 4


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.1, 40.0), min_size=1, max_size=60), st.floats(0, 5))
def test_metres_add_up_whatever_the_sampling(gaps: list[float], speed: float) -> None:
    time = np.concatenate(([0.0], np.cumsum(gaps)))
    line = laid_out({"distance": (time, speed * time)}, time)
    assert line.metres.sum() == pytest.approx(speed * time[-1], abs=1e-6)
    assert len(line) - 1 + line.last_second_s == pytest.approx(time[-1])


def test_summary_is_of_the_samples_as_they_are() -> None:
    time = np.arange(0.0, 101)
    plain = timeline.summary(
        {"distance": (time, 2.5 * time), "heart_rate": (time, np.full(101, 140.0))}, time
    )
    assert (plain.elapsed_s, plain.moving_s, plain.distance_m) == (100.0, 100.0, 250.0)
    assert plain.hr_mean == plain.hr_max == 140.0


def test_days_of_gaps_are_laid_out_at_once() -> None:
    time = np.arange(0.0, 240 * 3600.0, 31.0)  # each a gap: quadratic work would take a minute
    began = time_module.process_time()
    line = laid_out({}, time, [(100.4, 100.4)])
    assert time_module.process_time() - began < 2.0
    assert not line.running_clock.any() and len(line) == time[-1]


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.sampled_from([0.3, 1.0, 2.5, 29.0, 31.0, 90.0]), min_size=2, max_size=40),
    st.integers(1, 200),
)
def test_stretches_put_together_are_the_whole(gaps: list[float], length: int) -> None:
    time = np.concatenate(([0.0], np.cumsum(gaps)))
    heart = time[1::2], 120.0 + time[1::2] % 7
    grid = timeline.Grid(
        {"distance": (time, 60.0 + 3 * time), "heart_rate": heart}, time, [(5.2, 19.0)]
    )
    whole = grid.stretch(0, len(grid))
    pieces = [grid.stretch(k, min(k + length, len(grid))) for k in range(0, len(grid), length)]
    assert pieces[-1].last_second_s == whole.last_second_s
    for name in ("metres", "running_clock"):
        together = np.concatenate([getattr(piece, name) for piece in pieces])
        np.testing.assert_array_equal(together, getattr(whole, name))
    together = np.concatenate([piece.channels["heart_rate"] for piece in pieces])
    np.testing.assert_array_equal(together, whole.channels["heart_rate"])
    assert pieces[0].covered[0] == whole.covered[0] and pieces[-1].covered[-1] == whole.covered[-1]


@pytest.mark.parametrize("step", [1.0, 0.1, 1e-7, 0.001, 1 / 3])
def test_many_samples_are_kept_in_less_memory_and_stay_what_they_are(
    monkeypatch: pytest.MonkeyPatch, step: float
) -> None:
    time = np.arange(500) * 1.5
    values = np.random.default_rng(3).integers(-900, 2000, 500) * step
    plain = timeline.Grid({"altitude": (time, values)}, time)
    monkeypatch.setattr(timeline, "MANY", 100)
    narrow = timeline.Grid({"altitude": (time, values)}, time)
    assert (narrow._streams["altitude"][1] is values) == (step == 1 / 3)
    for begin, end in ((0, 300), (300, len(plain))):
        np.testing.assert_array_equal(
            narrow.stretch(begin, end).channels["altitude"],
            plain.stretch(begin, end).channels["altitude"],
        )
