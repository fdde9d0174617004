"""A watch's scale against positions: found on gentle ways, left alone on bends and without any."""

from __future__ import annotations

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tercet.engine.way import scale_of


def on_a_circle(
    radius: float, speed: float, noise: float, latitude: float = 60.0
) -> tuple[np.ndarray, np.ndarray]:
    """Positions of 40 minutes round a circle; errors drift over two minutes.

    The circle is laid on the ellipsoid by geographiclib (Karney 2013, J. Geodesy 87:43-55).
    """
    rng = np.random.default_rng(5)
    keep, off, out = np.exp(-1 / 120), np.zeros(2), []
    for k in range(2400):
        off = keep * off + noise * np.sqrt(1 - keep**2) * rng.standard_normal(2)
        turn = (k + 0.5) * speed / radius
        east, north = radius * np.array([np.sin(turn), np.cos(turn)]) + off
        place = Geodesic.WGS84.Direct(
            latitude, 179.999, np.degrees(np.arctan2(east, north)), np.hypot(east, north)
        )
        out.append((place["lat2"], place["lon2"]))
    return tuple(np.array(out).T)


@pytest.mark.parametrize("latitude", [0.0, -60.0])
def test_the_earth_is_no_sphere(latitude: float) -> None:
    # 111.2 km a degree would be off by 0.0025 at the equator and by 0.002 there
    north, east = on_a_circle(900.0, 3.0, 0.0, latitude)
    found = scale_of(north, east, np.full(2400, 3.0), np.ones(2400, dtype=bool))
    assert found == pytest.approx(1.0, abs=3e-4)


@pytest.mark.parametrize("share", [0.97, 1.0, 1.03])
def test_a_scale_is_found_on_a_gentle_way(share: float) -> None:
    north, east = on_a_circle(900.0, 3.0, 2.0)
    shown = np.full(2400, 3.0 / share)
    assert scale_of(north, east, shown, np.ones(2400, dtype=bool)) == pytest.approx(share, abs=5e-3)


def test_a_track_tells_little_and_nothing_nothing() -> None:
    north, east = on_a_circle(36.8, 3.0, 2.0)
    running = np.ones(2400, dtype=bool)
    assert scale_of(north, east, np.full(2400, 3.0), running) == pytest.approx(1.0, abs=5e-3)
    assert scale_of(None, None, np.full(2400, 3.0), running) == 1.0
    nowhere = np.full(2400, np.nan)
    assert scale_of(nowhere, nowhere, np.full(2400, 3.0), running) == 1.0


def test_standing_tells_nothing() -> None:
    north, east = on_a_circle(900.0, 3.0, 2.0)
    assert scale_of(north, east, np.full(2400, 2.5), np.zeros(2400, dtype=bool)) == 1.0
