"""Cost of slopes as published, and slopes from altitude that may be mostly noise."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine.slope import level_speed, running_cost, slope_along

#: Minetti et al. 2002, J Appl Physiol 93:1039-1046: cost of running by the published polynomial.
PUBLISHED = {
    -0.45: 4.0323, -0.30: 2.4622, -0.20: 1.8000, -0.10: 2.1517, -0.05: 2.7459, 0.0: 3.6,
    0.01: 3.7996, 0.05: 4.6852, 0.10: 5.9682, 0.20: 9.0067, 0.30: 12.5793, 0.45: 19.4260,
}  # fmt: skip


@pytest.mark.parametrize(("slope", "cost"), PUBLISHED.items())
def test_cost_at_the_published_grades(slope: float, cost: float) -> None:
    assert float(running_cost(slope)) == pytest.approx(cost, abs=5e-4)


def test_slopes_beyond_those_tested_cost_no_more() -> None:
    assert float(running_cost(0.8)) == float(running_cost(0.45))
    assert float(running_cost(-0.8)) == float(running_cost(-0.45))


def test_equal_power_on_the_level() -> None:
    """Worked from the same polynomial: 3.00 m/s at +-10 %."""
    assert float(level_speed(3.0, 0.10)) == pytest.approx(4.974, abs=1e-3)
    assert float(level_speed(3.0, -0.10)) == pytest.approx(1.793, abs=1e-3)
    assert float(level_speed(3.0, np.nan)) == 3.0


def rolling(n: int = 3600) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    way = 3.0 * np.arange(n)
    wave = 2 * np.pi / 900.0
    return way, 30.0 / (2 * np.pi) * np.sin(wave * way) * 5, 30.0 / 900.0 * 5 * np.cos(wave * way)


def test_a_good_altimeter_shows_the_hills() -> None:
    rng = np.random.default_rng(3)
    way, height, true = rolling()
    found = slope_along(np.round(height + 0.2 * rng.standard_normal(len(way)), 1), way)
    assert found.used
    assert np.sqrt(np.mean((found.slope - true) ** 2)) < 0.15 * np.sqrt(np.mean(true**2))


def test_noise_of_positioning_is_not_taken_for_hills() -> None:
    """Satellite height +-5-10 m is common; errors here wander over a minute [guess]."""
    rng = np.random.default_rng(4)
    way, _, _ = rolling()
    keep = np.exp(-1 / 60.0)
    noise = np.zeros(len(way))
    for k in range(1, len(way)):
        noise[k] = keep * noise[k - 1] + 4.5 * np.sqrt(1 - keep**2) * rng.standard_normal()
    found = slope_along(noise, way)
    assert np.sqrt(np.mean(found.slope**2)) < 0.012
    assert found.height_error > 1.5


def test_without_altitude_or_way_there_are_no_hills() -> None:
    way, height, _ = rolling()
    for altitude, distance in ((np.full(len(way), np.nan), way), (height, 0.01 * way)):
        found = slope_along(altitude, distance)
        assert not found.used and not found.slope.any()
