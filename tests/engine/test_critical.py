"""Critical speed from hard efforts: right, robust, and silent where it cannot be told."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import optimize

from tercet.engine.critical import (
    RESERVE_SPREAD,
    SPREAD,
    USUAL_RESERVE,
    critical_speed,
    hard_efforts,
)
from tercet.engine.efforts import Effort


def efforts(*pairs: tuple[float, float]) -> list[Effort]:
    return [Effort(seconds, metres, 0.6, 180.0) for metres, seconds in pairs]


EXACT = ((1200, 250), (2400, 550), (3600, 850), (5000, 1200))  # CS 4 m/s, D' 200 m


def test_an_error_free_set_gives_its_line() -> None:
    found = critical_speed(efforts(*EXACT))
    assert found.speed == pytest.approx(4.0, abs=1e-6)
    assert found.reserve == pytest.approx(200.0, abs=1e-3)
    assert len(found.efforts) == 4


def test_the_fit_is_the_weighted_least_squares_of_another_library() -> None:
    # scipy.optimize.least_squares on the same rows
    given_efforts = efforts((1230, 255), (2380, 548), (3580, 848), (4950, 1199))
    time = np.array([item.seconds for item in given_efforts])
    metres = np.array([item.metres for item in given_efforts])

    def residuals(x: np.ndarray) -> np.ndarray:
        off = (x[0] * time + x[1] - metres) / (SPREAD * metres)
        return np.append(off, (x[1] - USUAL_RESERVE) / RESERVE_SPREAD)

    other = optimize.least_squares(residuals, [3.5, 100.0], x_scale=[1.0, 100.0]).x
    found = critical_speed(given_efforts)
    assert found.speed == pytest.approx(other[0], abs=1e-5)
    assert found.reserve == pytest.approx(other[1], abs=0.01)


def test_an_effort_not_all_out_is_left_out() -> None:
    found = critical_speed(efforts(*EXACT, (3000, 840)))
    assert found.speed == pytest.approx(4.0, abs=0.01)
    assert all(effort.metres != 3000 for effort in found.efforts)


def test_a_fault_of_position_does_not_lift_the_line() -> None:
    found = critical_speed(efforts((1200, 250), (2400, 550), (3600, 850), (5000, 1200)))
    with pytest.raises(ValueError, match="do not agree"):
        critical_speed(efforts((1200, 250), (2400, 700), (4600, 850)))
    assert found.speed_half > 0.05


@pytest.mark.parametrize(
    ("pairs", "words"),
    [
        ((), "no hard effort"),
        (((1200, 250),), "1 hard effort of"),
        (((1200, 250), (2400, 550)), "2 hard efforts of"),
        (((1200, 250), (1250, 262), (1300, 275)), "about as long"),
    ],
)
def test_what_cannot_be_told_is_refused_in_words(
    pairs: tuple[tuple[float, float], ...], words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        critical_speed(efforts(*pairs))


@given(
    st.floats(2.5, 5.5),
    st.floats(120, 320),
    st.lists(st.floats(0.985, 1.0), min_size=4, max_size=4),
)
def test_the_interval_holds_the_line_for_small_errors(
    speed: float, reserve: float, form: list[float]
) -> None:
    pairs = [
        ((speed * t + reserve) * f, t) for t, f in zip((180, 360, 720, 1100), form, strict=True)
    ]
    found = critical_speed(efforts(*pairs))
    assert abs(found.speed - speed) < found.speed_half
    assert 0 < found.reserve_half < 2 * RESERVE_SPREAD


def test_hard_is_clearly_faster_than_usual() -> None:
    kept = hard_efforts(efforts((1200, 300), (1000, 300), (9000, 2400)), usual_speed=3.0)
    assert [item.metres for item in kept] == [1200]
