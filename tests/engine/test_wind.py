"""A steady wind: what it would add by heading, and that heart rate then tells it from the day."""

from __future__ import annotations

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tercet.engine import ground, wind
from tercet.engine.kinetics import follow, settled
from tercet.engine.scale import Thresholds

LINES = Thresholds(146, 167, 2.95, 3.60, 48, 186)


def test_still_air_takes_eight_percent_at_six_metres_a_second() -> None:
    """Pugh 1971, J Physiol 213:255-276 (from memory)."""
    assert pytest.approx(0.08, abs=0.002) == wind.AIR * 6.0**2


def circuit(seconds: int, speed: float, lap_s: float) -> tuple[np.ndarray, np.ndarray]:
    """Latitude and longitude of laps round a circle, first to the east."""
    angle = 2 * np.pi * np.arange(seconds) / lap_s
    radius = speed * lap_s / (2 * np.pi)
    east, north = radius * np.sin(angle), radius * (1 - np.cos(angle))
    # laid on the ellipsoid by geographiclib (Karney 2013, J. Geodesy 87:43-55)
    found = [
        Geodesic.WGS84.Direct(40.2, 6.1, np.degrees(np.arctan2(x, y)), np.hypot(x, y))
        for x, y in zip(east, north, strict=True)
    ]
    return np.array([p["lat2"] for p in found]), np.array([p["lon2"] for p in found])


def test_bearings_are_the_velocity_by_its_cost() -> None:
    speed = np.full(1200, 3.0)
    lat, lon = circuit(1200, 3.0, 600.0)
    found = wind.bearings(lat, lon, speed, np.ones(1200, dtype=bool))
    assert found is not None
    np.testing.assert_allclose(np.hypot(*found.T)[20:-20], 2 * wind.AIR * 3.0, rtol=1e-3)
    assert found[20, 0] > 0.012 and found[150, 1] > 0.012 and found[300, 0] < -0.012
    still = wind.bearings(lat, lon, speed, np.zeros(1200, dtype=bool))
    assert still is not None and not still.any()
    assert wind.bearings(None, lon, speed, speed > 0) is None
    assert wind.bearings(np.full(1200, np.nan), lon, speed, speed > 0) is None


def test_a_wind_that_turns_with_the_runner_is_placed_by_heart_rate() -> None:
    lat, lon = circuit(4800, 2.7, 600.0)
    speed = np.full(4800, 2.7)
    sides = wind.bearings(lat, lon, speed, np.ones(4800, dtype=bool))
    assert sides is not None
    cost = 4.0 * sides[:, 0]  # four metres a second from the east
    heart = follow(settled(speed * np.exp(cost), LINES)[:, None], [50.0], 1.0, 110.0)[0, :, 0]
    heart += np.random.default_rng(3).normal(0.0, 2.0, len(heart))
    asked, beats, steps = (x.reshape(960, 5, -1).mean(axis=1) for x in (speed, heart, sides))
    off = {}
    for name, given in (("told", steps), ("untold", None)):
        heard = ground.listen(asked[:, 0], beats[:, 0], LINES, 0.03, wind=given)
        at = (np.arange(len(heard.along)) + 0.5) * heard.step_s
        true = np.interp(at, np.arange(4800), cost)
        found = heard.along - heard.along.mean()
        off[name] = float(np.sqrt(np.mean((found - true) ** 2)))
    assert off["told"] < 0.75 * off["untold"]
    assert off["told"] < 0.5 * cost.std()
