"""The watch's lag, from edges that another channel shows earlier."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine.lag import REFERENCE_LAG_S, USUAL_S, earlier, lag_of


def edges(n: int = 1500) -> np.ndarray:
    return np.where(np.arange(n) % 120 < 45, 4.5, 2.7)


@pytest.mark.parametrize("late", [0, 2, 5, 8])
def test_a_known_lag_is_found(late: int) -> None:
    rng = np.random.default_rng(1)
    true = edges()
    recorded = np.concatenate((np.full(late, true[0]), true[: len(true) - late]))
    reference = true + 0.4 * rng.standard_normal(len(true))
    found = lag_of(recorded, reference, np.ones(len(true), dtype=bool))
    assert found == late + REFERENCE_LAG_S


def test_steady_running_tells_nothing_and_the_usual_lag_is_taken() -> None:
    rng = np.random.default_rng(2)
    noise = rng.standard_normal((2, 1500))
    usable = np.ones(1500, dtype=bool)
    assert lag_of(3 + 0.05 * noise[0], 3 + 0.4 * noise[1], usable) == USUAL_S
    assert lag_of(np.full(1500, 3.0), np.full(1500, 3.0), usable) == USUAL_S
    assert lag_of(edges(), np.full(1500, np.nan), usable) == USUAL_S


def test_a_shift_keeps_the_length() -> None:
    np.testing.assert_array_equal(earlier(np.array([1.0, 2, 3, 4]), 2), [3, 4, 4, 4])
    np.testing.assert_array_equal(earlier(np.array([1.0, 2]), 5), [1, 2])
