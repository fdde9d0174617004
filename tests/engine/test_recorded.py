"""Both lines from recordings, on a few fixed simulated runners, with a margin.

The whole measurement: ``python -m tests.accuracy.thresholds``.
"""

from __future__ import annotations

from functools import cache

import pytest
from tests.accuracy.thresholds import Result, measure, summary

from tercet.engine.fingerprint import Fingerprint
from tercet.engine.recorded import from_recordings, usual_speed

SEEDS = range(901, 905)


@cache
def results() -> list[Result]:
    return [measure(seed) for seed in SEEDS]


def test_critical_speed_and_lines_are_near_the_truth() -> None:
    for name, most in (
        ("critical", 0.035),
        ("lt1_speed", 0.06),
        ("lt2_hr", 5.0),
        ("ceiling", 0.04),
    ):
        said, size, _, held = summary([getattr(item, name) for item in results()])
        assert said >= len(SEEDS) - 1, name
        assert size <= most, name
        assert held >= 0.6, name


def test_without_hard_efforts_nothing_is_said() -> None:
    assert all(item.refused_without for item in results())


def test_nothing_recorded_is_refused_in_words() -> None:
    with pytest.raises(ValueError, match="no hard effort"):
        from_recordings([])
    assert usual_speed([]) == 0.0


def test_old_fingerprints_say_nothing_but_do_no_harm() -> None:
    old = Fingerprint((0.0,) * 10, (140.0,), (2.8,), 180.0, 80.0, 2.8, 3000.0)
    with pytest.raises(ValueError, match="no hard effort"):
        from_recordings([old, old])
