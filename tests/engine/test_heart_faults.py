"""Each fault of heart rate is taken out and counted; what is sound is left as it is."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine import Shade, Thresholds, heart_faults, judge
from tercet.engine.kinetics import follow, settled

LINES = Thresholds(146, 167, 2.95, 3.6, 48, 186)


def heart(n: int = 1200) -> np.ndarray:
    rng = np.random.default_rng(3)
    return np.rint(140 + 8 * np.sin(np.arange(n) / 90) + rng.standard_normal(n))


def test_a_sound_heart_rate_is_left_alone() -> None:
    x = heart()
    cleaned, mends = heart_faults.clean_heart_rate(x, np.full(len(x), 168.0))
    np.testing.assert_array_equal(cleaned, x)
    assert mends == {}


def test_frozen_spiked_and_impossible_heart_rate_goes() -> None:
    x = heart()
    x[300:420] = 133.0
    x[700:703] += 40
    x[900] = 250
    cleaned, mends = heart_faults.clean_heart_rate(x, None)
    assert np.isnan(cleaned[[350, 701, 900]]).all()
    assert len(mends) >= 3 and sum(mends.values()) == np.isnan(cleaned).sum()
    assert np.isnan(cleaned).sum() < 160


def test_heart_rate_that_jumps_to_the_steps_is_not_believed_but_one_that_drifts_there_is() -> None:
    """Sign of cadence lock: near the step rate for minutes with a step at its onset (Davis,
    blog of a biomechanics researcher, 2021; no standard rule exists)."""
    steps = np.full(1200, 168.0)
    locked = heart()
    locked[400:800] = 168 + np.rint(np.random.default_rng(1).standard_normal(400))
    cleaned, _ = heart_faults.clean_heart_rate(locked, steps)
    assert np.isnan(cleaned[420:780]).mean() > 0.95
    assert np.isfinite(cleaned[:380]).all()
    drifting = heart() + np.interp(np.arange(1200), [0, 500, 700, 1200], [0, 0, 25, 25])
    cleaned, _ = heart_faults.clean_heart_rate(drifting, steps)
    assert np.isfinite(cleaned).mean() > 0.95


@pytest.mark.parametrize("value", [95.0, 112.0, 165.0, 190.0])
def test_a_false_start_is_left_out_and_makes_no_second_harder(value: float) -> None:
    """Four minutes at some other value, then a step to the true one, as from a loose strap."""
    clock = np.arange(2401.0)
    speed = np.full(2401, 2.7)
    rng = np.random.default_rng(2)
    heart = follow(settled(speed, LINES)[:, None], [50.0], 1.0, 95.0)[0, :, 0]
    heart = heart + rng.normal(0, 0.5, 2401)
    heart[:240] = value + rng.normal(0, 0.5, 240)
    steps = np.full(2401, 168.0) if value != 165.0 else np.full(2401, 180.0)
    streams = {"speed": speed, "distance": 2.7 * clock, "heart_rate": heart, "cadence": steps}
    judged = judge({k: (clock, v) for k, v in streams.items()}, clock, LINES)
    assert judged.mends == pytest.approx({"heart rate of a false start, left out": 240}, abs=4)
    assert judged.seconds_by_shade()[Shade.EASY] == 2400


def test_a_heart_that_begins_to_run_or_dips_makes_no_false_start() -> None:
    """From 70 to 160 beats/min by the quickest time constant published: 58 - 24 s and less."""
    quick = 160 - 90 * np.exp(-np.arange(900) / 30.0)
    assert heart_faults.clean_heart_rate(quick, None)[1] == {}
    waiting = np.concatenate((np.full(200, 75.0) + np.arange(200) % 2, quick))
    steps = np.where(np.arange(1100) < 200, 0.0, 168.0)
    assert heart_faults.clean_heart_rate(waiting, steps)[1] == {}
    dip = heart()
    dip[200:260] -= 26
    assert (
        "heart rate of a false start, left out" not in heart_faults.clean_heart_rate(dip, None)[1]
    )


def test_what_was_missing_for_a_moment_is_counted() -> None:
    clock = np.arange(301.0)
    there = (clock < 100) | (clock >= 112)
    heard = clock[there & ((clock < 200) | (clock >= 250))]
    assert heart_faults.bridged(heard, clock, 30.0) == 13
    # A watch that keeps few samples lacks nothing.
    assert heart_faults.bridged(clock[::7], clock[::7], 30.0) == 0
    assert heart_faults.bridged(clock[::7], clock, 30.0) == 0, "nor does one that keeps it rarely"
    assert heart_faults.bridged(np.zeros(0), clock, 30.0) == 0


def test_heart_rate_that_no_pace_explains_is_counted() -> None:
    """A strap that came loose shows 45 beats/min too few for five minutes, in slow ways there."""
    clock = np.arange(2401.0)
    rng = np.random.default_rng(4)
    heart = follow(settled(np.full(2401, 2.7), LINES)[:, None], [50.0], 1.0, 95.0)[0, :, 0]
    loose = np.interp(clock, [1200, 1240, 1540, 1580], [0.0, 45.0, 45.0, 0.0])
    heart = heart + rng.normal(0, 0.5, 2401) - loose
    streams = {"speed": np.full(2401, 2.7), "distance": 2.7 * clock, "heart_rate": heart}
    judged = judge({k: (clock, v) for k, v in streams.items()}, clock, LINES)
    assert judged.mends["heart rate far from what the pace asks, left out"] >= 240
    assert judged.seconds_by_shade()[Shade.EASY] == 2400
