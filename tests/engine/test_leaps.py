"""What leaps away and back is left out, what leaps for good counts no way, what ran on stays."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import Shade, Thresholds, judge, timeline
from tercet.engine.leaps import astray, leaps

N = 1801
CLOCK = np.arange(float(N))
LINES = Thresholds(lt1_speed=2.95, lt2_speed=3.6)
#: Metres of a degree of latitude near 40 degrees north: WGS84, geographiclib.
DEGREE = 111_035.0


def northward(speed: float = 2.7) -> np.ndarray:
    return 40.0 + speed * CLOCK / DEGREE


def placed(latitude: np.ndarray) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    return {"latitude": (CLOCK, latitude), "longitude": (CLOCK, np.full(N, 6.1))}


@given(st.integers(1, N - 60), st.integers(1, 40), st.sampled_from([35.0, 300.0, 5e4, 4e6]))
def test_a_fix_that_leaps_away_and_back_costs_no_metre(at: int, long: int, far: float) -> None:
    latitude = northward()
    whole = timeline.distance_track(placed(latitude))[1][-1]
    latitude[at : at + long] += far / DEGREE
    bad = astray(CLOCK, latitude, np.full(N, 6.1))
    assert np.flatnonzero(bad).tolist() == list(range(at, at + long))
    assert timeline.distance_track(placed(latitude))[1][-1] == pytest.approx(whole, abs=0.5)


@pytest.mark.parametrize("turn", [0.0, 1.5, np.pi])
def test_two_leaps_that_do_not_make_up_for_each_other_are_no_way_back(turn: float) -> None:
    """A tunnel left 60 m off and one entered 200 m off: what lies between was run."""
    north, east = 2.7 * CLOCK, np.zeros(N)
    north[600:] += 60.0
    north[640:] += 200.0 * np.cos(turn)
    east[640:] += 200.0 * np.sin(turn)
    assert not astray(CLOCK, 40 + north / DEGREE, 6 + east / (DEGREE * np.cos(0.7))).any()


def test_a_leap_for_good_is_counted_and_is_no_way() -> None:
    latitude = northward()
    latitude[900:] += 2000.0 / DEGREE
    judged = judge(placed(latitude), CLOCK, LINES)
    assert judged.mends["metres of leaps that nobody runs, left out"] == pytest.approx(2003, abs=2)
    assert judged.metres.sum() == pytest.approx(2.7 * (N - 2), abs=2)
    assert judged.seconds_by_shade()[Shade.EASY] == N - 1
    counter = 2.7 * CLOCK + 5000.0 * (CLOCK >= 700)
    judged = judge({"distance": (CLOCK, counter)}, CLOCK, LINES)
    assert judged.metres.sum() == pytest.approx(2.7 * (N - 2), abs=2)
    plain = timeline.summary({"distance": (CLOCK, counter)}, CLOCK)
    assert plain.distance_m == pytest.approx(judged.metres.sum())


def test_a_counter_that_stood_still_catches_up() -> None:
    """Sixty seconds without a signal, then the way in one leap: it was run, at 2.7 m/s."""
    counter = 2.7 * CLOCK
    counter[300:360] = counter[300]
    assert not leaps(CLOCK, np.diff(counter)).any()
    assert timeline.leapt({"distance": (CLOCK, counter)}) == 0.0


def test_a_ride_downhill_is_no_leap() -> None:
    assert not leaps(CLOCK, np.full(N - 1, 22.0)).any()
    assert not astray(CLOCK, northward(22.0), np.full(N, 6.1)).any()


def test_where_all_of_it_leaps_nothing_is_looked_for() -> None:
    """A damaged file of half a million fixes is done at once."""
    n = 500_000
    rng = np.random.default_rng(1)
    latitude, longitude = rng.uniform(-80, 80, n), rng.uniform(-180, 180, n)
    assert not astray(np.arange(float(n)), latitude, longitude).any()
