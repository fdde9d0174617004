"""Cost that pace tells of: a runner slows on a hill that nobody saw, and holds on else."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine import steadiness

SEEN = np.ones(3000, dtype=bool)


def test_a_slow_stretch_of_even_running_is_taken_for_unseen_cost() -> None:
    pace = np.full(3000, np.log(3.0))
    pace[1000:1090] += np.log(0.95)  # a climb at half of its cost of ten percent
    cost, left = steadiness.unseen_by_pace(pace, SEEN, 0.06)
    assert 0.04 < cost[1045] < 0.12
    assert abs(cost[2000]) < 0.005
    assert left < 0.06


def test_the_less_is_unseen_the_less_is_read_into_pace() -> None:
    pace = np.log(3.0) + 0.03 * np.sin(np.arange(3000) / 40.0)
    sizes = [
        float(np.abs(steadiness.unseen_by_pace(pace, SEEN, spread)[0]).max())
        for spread in (0.0, 0.01, 0.03, 0.1)
    ]
    assert sizes[0] == 0.0
    assert sizes == sorted(sizes)


def test_a_step_of_pace_is_meant() -> None:
    pace = np.where(np.arange(3000) < 1500, np.log(2.6), np.log(3.6))
    cost, _ = steadiness.unseen_by_pace(pace, SEEN, 0.05)
    assert np.abs(cost).max() < 0.01


def test_standing_tells_nothing() -> None:
    pace = np.full(3000, np.log(3.0))
    seen = SEEN.copy()
    seen[500:800] = False
    cost, _ = steadiness.unseen_by_pace(np.where(seen, pace, np.log(0.3)), seen, 0.05)
    assert cost == pytest.approx(0.0, abs=1e-9)
    assert len(steadiness.wavering(np.zeros(0), np.zeros(0, dtype=bool))) == 0
