"""A watch's scale against positions: found on gentle ways, left alone on bends and without any."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine.way import scale_of

METRES_A_DEGREE = 111_200.0


def on_a_circle(radius: float, speed: float, noise: float) -> tuple[np.ndarray, np.ndarray]:
    """Positions of 40 minutes round a circle on the equator; errors drift over two minutes."""
    rng = np.random.default_rng(5)
    turn = (np.arange(2400) + 0.5) * speed / radius
    place = radius * np.stack((np.sin(turn), np.cos(turn)))
    keep = np.exp(-1 / 120)
    off = np.zeros_like(place)
    for k in range(1, place.shape[1]):
        off[:, k] = keep * off[:, k - 1] + noise * np.sqrt(1 - keep**2) * rng.standard_normal(2)
    north, east = (place + off) / METRES_A_DEGREE
    return north, east


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
