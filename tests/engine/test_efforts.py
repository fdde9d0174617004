"""Hard efforts: found alone, with their ends, and not among repetitions."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine.efforts import find_efforts


def run_of(*parts: tuple[float, int]) -> np.ndarray:
    rng = np.random.default_rng(3)
    speed = np.concatenate([np.full(seconds, pace) for pace, seconds in parts])
    return speed * (1 + 0.02 * rng.standard_normal(len(speed)))


def efforts_of(speed: np.ndarray, heart: np.ndarray | None = None, *, alone: bool = True):  # type: ignore[no-untyped-def]
    beats = np.full(len(speed), np.nan) if heart is None else heart
    return find_efforts(speed, speed > 1.8, beats, alone=alone)


@pytest.mark.parametrize("seconds", [130, 180, 300, 720, 1150])
def test_an_effort_alone_is_found_with_its_length(seconds: int) -> None:
    speed = run_of((2.8, 900), (1.0, 120), (4.4, seconds), (1.0, 120), (2.7, 600))
    (found,) = efforts_of(speed)
    assert found.seconds == pytest.approx(seconds, abs=8)
    assert found.metres == pytest.approx(4.4 * seconds, rel=0.01 + 8 / seconds)
    assert found.elsewhere == pytest.approx(2.8 / 4.4, abs=0.03)
    assert found.heart_rate == 0.0


def test_its_heart_rate_is_that_of_the_end() -> None:
    speed = run_of((2.8, 900), (4.4, 300), (2.7, 600))
    heart = np.concatenate([np.full(900, 140.0), np.linspace(140, 186, 300), np.full(600, 150.0)])
    (found,) = efforts_of(speed, heart)
    assert found.heart_rate == pytest.approx(184, abs=2)


def test_repetitions_are_no_efforts() -> None:
    sets = [(4.2, 240), (2.2, 120)] * 5
    assert efforts_of(run_of((2.8, 900), *sets, (2.7, 600))) == ()


def test_three_trials_of_a_visit_are_three_efforts() -> None:
    # Galbraith et al. 2014, Int J Sports Physiol Perform 9:931-935: 3600, 2400 and 1200 m with
    # half an hour between; speeds of a runner with 4 m/s and 200 m.
    trials = [(3600, 850), (2400, 550), (1200, 250)]
    parts: list[tuple[float, int]] = [(2.5, 600)]
    for metres, seconds in trials:
        parts += [(metres / seconds, seconds), (1.2, 900), (2.3, 900)]
    found = efforts_of(run_of(*parts), alone=False)
    assert [round(item.metres, -2) for item in found] == [3600, 2400, 1200]


def test_easy_running_standing_and_nothing_give_none() -> None:
    assert efforts_of(np.zeros(1000)) == ()
    assert efforts_of(np.zeros(0)) == ()
    assert efforts_of(run_of((2.8, 3600))) == ()
