"""Field tests recognised in a run that is pointed at."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine.estimate import LT2_OVER_CRITICAL
from tercet.engine.field_test import FieldTest, recognise


def run_of(*parts: tuple[float, int]) -> np.ndarray:
    rng = np.random.default_rng(5)
    speed = np.concatenate([np.full(seconds, pace) for pace, seconds in parts])
    return speed * (1 + 0.02 * rng.standard_normal(len(speed)))


def found(speed: np.ndarray, heart: np.ndarray | None = None) -> FieldTest:
    beats = np.full(len(speed), np.nan) if heart is None else heart
    return recognise(speed, speed > 1.8, beats)


def test_half_an_hour_is_recognised_with_its_heart_rate() -> None:
    speed = run_of((2.7, 900), (4.0, 1800), (2.5, 600))
    heart = np.concatenate([np.full(900, 135.0), np.linspace(150, 175, 1800), np.full(600, 140.0)])
    test = found(speed, heart)
    assert "30 minutes" in test.words and test.estimate.source == "30 min trial"
    assert test.estimate.values.lt2_speed == pytest.approx(4.0, rel=0.01)
    # the last 20 minutes of a rise from 150 to 175
    assert test.estimate.values.lt2_hr == pytest.approx(166.7, abs=1)
    assert test.estimate.values.lt1_hr is None


def test_three_and_twelve_minutes_give_critical_speed() -> None:
    # CS 4 m/s, D' 200 m
    short, long = (4 * 180 + 200) / 180, (4 * 720 + 200) / 720
    speed = run_of((2.6, 900), (short, 180), (1.2, 1200), (2.4, 300), (long, 720), (2.4, 600))
    test = found(speed)
    assert "3 and 12 minutes" in test.words
    assert test.estimate.values.lt2_speed == pytest.approx(4.0 * LT2_OVER_CRITICAL, rel=0.02)


@pytest.mark.parametrize(
    "parts",
    [
        [(2.8, 3600)],
        [(2.8, 900), (4.2, 240), (2.2, 120), (4.2, 240), (2.2, 120), (4.2, 240), (2.4, 600)],
        [(2.8, 900), (3.6, 2700), (2.5, 600)],
        [(2.8, 60)],
    ],
)
def test_other_running_is_no_test(parts: list[tuple[float, int]]) -> None:
    with pytest.raises(ValueError, match="No field test was recognised"):
        found(run_of(*parts))
