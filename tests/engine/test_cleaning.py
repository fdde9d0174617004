"""Each fault is taken out and counted; what is sound is left as it is."""

from __future__ import annotations

import numpy as np

from tercet.engine import cleaning


def test_a_spike_of_speed_goes_and_a_stride_sampled_every_few_seconds_stays() -> None:
    time = np.arange(100.0)
    speed = np.full(100, 3.0)
    speed[40] = 7.0
    speed[60:75] = 5.0
    assert np.flatnonzero(cleaning.spikes_in(time, speed)).tolist() == [40]
    slow = np.arange(0, 200, 5.0)
    strides = np.where((slow >= 100) & (slow < 112), 5.5, 3.0)
    assert not cleaning.spikes_in(slow, strides).any()


def test_a_lost_signal_is_run_on_and_a_stop_is_not() -> None:
    time = np.arange(200.0)
    run_on = 3.0 * time
    run_on[80:120] = run_on[80]
    assert cleaning.lost_signal(time, run_on) == [(80.0, 120.0)]
    waited = np.where(time < 80, 3 * time, np.maximum(240, 3 * (time - 40)))
    assert cleaning.lost_signal(time, waited) == []
    speed = np.where((time > 80) & (time < 120), 0.0, 3.0)
    out, mends = cleaning.mend_samples({"distance": (time, run_on), "speed": (time, speed)})
    t, v = out["speed"]
    np.testing.assert_allclose(v[(t > 82) & (t < 118)], 3.0)
    assert list(mends.values()) == [40]


def test_copies_and_damage_are_left_out() -> None:
    time = np.array([0.0, 1, 1, 2, 3])
    out, mends = cleaning.mend_samples({"altitude": (time, [10, 11, 11, 1e9, np.nan])})
    np.testing.assert_array_equal(out["altitude"][0], [0, 1])
    assert sum(mends.values()) == 1


def test_moving_windows() -> None:
    x = np.array([1.0, 9, 1, 1, 1])
    np.testing.assert_array_equal(cleaning.moving_median(x, 3), [1, 1, 1, 1, 1])
    np.testing.assert_allclose(cleaning.moving_mean(np.arange(5.0), 3), [0.5, 1, 2, 3, 3.5])
    assert cleaning.run_lengths(np.array([True, True, False, True])) == [(0, 2), (3, 4)]
