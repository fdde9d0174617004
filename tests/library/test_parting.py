"""Recordings of days: what is no run and lies hours away is left out, and told."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from tercet.domain import Lap, Recording, Stream
from tercet.library.parting import RUN_S, at_long_gaps

START = datetime(2026, 6, 9, 6, 0, tzinfo=UTC)
HOUR = 3600.0


def recording(*spans: tuple[float, float]) -> Recording:
    """A sample a second in each span; it counts them as metres."""
    time = np.concatenate([np.arange(a, b + 1) for a, b in spans])
    counted = Stream(time, np.arange(len(time), dtype=np.float64))
    return Recording(START, time, {"distance": counted}, "GPX", laps=(Lap(0.0, 60.0),))


@pytest.mark.parametrize("far", [40.0, 216.0])
def test_a_stray_time_days_away_is_left_out_and_told(far: float) -> None:
    (run,) = at_long_gaps([recording((0, 1800), (far * HOUR, far * HOUR))])
    assert (run.start, run.elapsed_s, run.records) == (START, 1800, 1801)
    assert run.damage == "Samples left out, hours away from any run: 1."
    (run,) = at_long_gaps([recording((0, 3), (far * HOUR, far * HOUR + 1800))])
    assert run.start == START + timedelta(hours=far)
    assert (run.elapsed_s, run.records, run.laps) == (1800, 1801, ())
    assert run.streams["distance"].values[0] == 0 and run.damage.endswith(": 4.")


def test_within_a_day_and_a_half_a_short_stretch_stays_with_its_run() -> None:
    whole = recording((0, 1800), (20 * HOUR, 20 * HOUR + RUN_S - 1))
    assert at_long_gaps([whole]) == [whole]


def test_runs_of_days_are_parted_and_nothing_of_them_is_lost() -> None:
    spans = [(k * 24 * HOUR, k * 24 * HOUR + 900) for k in range(9)]
    runs = at_long_gaps([recording(*spans)])
    assert [run.start for run in runs] == [START + timedelta(days=k) for k in range(9)]
    assert all((run.elapsed_s, run.records, run.damage) == (900, 901, "") for run in runs)


def test_of_single_samples_over_days_the_longest_stretch_stays() -> None:
    spans = [(k * 7 * HOUR, k * 7 * HOUR + (5 if k == 4 else 0)) for k in range(30)]
    (run,) = at_long_gaps([recording(*spans)])
    assert (run.elapsed_s, run.records) == (5, 6) and run.damage.endswith(": 29.")


def test_a_recording_of_days_without_long_gaps_is_one() -> None:
    time = np.arange(0.0, 200 * HOUR, HOUR)
    (run,) = at_long_gaps([Recording(START, time, {}, "GPX")])
    assert run.records == 200 and run.damage == ""
