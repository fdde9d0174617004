"""Heart rate against speed in steady running, and where it meets a line."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine import steady
from tercet.engine.fingerprint import Fingerprint


def runs_of(
    count: int = 12, *, gain: float = 24.0, warm: float = 0.0, seed: int = 4
) -> list[Fingerprint]:
    """Runs of a runner with 145 beats/min at 3 m/s, two pieces each."""
    rng = np.random.default_rng(seed)
    out = []
    for _ in range(count):
        day = 3.0 * rng.standard_normal()
        degrees = float(rng.uniform(5, 30))
        speeds = rng.uniform(2.6, 3.05, 2)
        beats = (
            145 + gain * (speeds - 3.0) + day + 1.5 * rng.standard_normal(2)
            + warm * max(0.0, degrees - 18.0)
        )  # fmt: skip
        out.append(
            Fingerprint(
                (),
                tuple(beats),
                tuple(speeds),
                180.0,
                80.0,
                2.8,
                3000.0,
                (),
                (630.0, 930.0),
                degrees,
            )
        )
    return out


def test_the_relation_is_found_again() -> None:
    found = steady.relation(steady.pieces_of(runs_of(40)), 3.0, 0.15)
    assert found.heart_rate == pytest.approx(145, abs=2.0)
    assert abs(found.heart_rate - 145) < found.half
    assert found.gain == pytest.approx(24, abs=6)


def test_the_speed_of_a_heart_rate() -> None:
    met = steady.meeting(steady.pieces_of(runs_of(40)), 142.0)
    assert met.speed == pytest.approx(2.875, abs=0.06)
    assert met.half < 0.15 and met.runs == 40


def test_warmth_is_told_apart() -> None:
    met = steady.meeting(steady.pieces_of(runs_of(60, warm=0.7)), 142.0)
    assert met.warm == pytest.approx(0.7, abs=0.25)
    assert met.in_warmth(28.0) < met.speed == met.in_warmth(10.0)


def test_a_grade_costs_its_published_share() -> None:
    # Minetti et al. 2002, J Appl Physiol 93:1039-1046: Cr(0.05) / Cr(0) = 1.3014
    met = steady.meeting(steady.pieces_of(runs_of(40)), 142.0)
    assert met.speed / met.on_grade(0.05) == pytest.approx(1.3014, abs=0.0005)
    assert met.on_grade(-0.02) > met.speed


def test_a_broken_sensor_hardly_counts() -> None:
    plain = runs_of(30)
    odd = [
        Fingerprint(
            (), (185.0, 186.0), (2.8, 2.8), 188.0, 80.0, 2.8, 3000.0, (), (630.0, 930.0), 15.0
        )
    ] * 3
    before = steady.meeting(steady.pieces_of(plain), 142.0).speed
    after = steady.meeting(steady.pieces_of(plain + odd), 142.0).speed
    assert after == pytest.approx(before, abs=0.05)


def test_too_little_and_too_far_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="Fewer than 3 runs"):
        steady.meeting(steady.pieces_of(runs_of(2)), 142.0)
    with pytest.raises(ValueError, match="came near"):
        steady.meeting(steady.pieces_of(runs_of(20)), 185.0)
    with pytest.raises(ValueError, match="Fewer than 3 runs"):
        steady.relation(steady.pieces_of([]), 3.0, 0.1)
