"""The repetition book by hand."""

from __future__ import annotations

import pytest

from tercet.engine.judgement import Repetition
from tercet.engine.repetition_book import LONG, class_of, in_one_run, metres_by_class, sets_of
from tercet.engine.scale import Shade


def _rep(metres: float, seconds: float, rest: float | None = 60.0, shade: Shade = Shade.HARD):
    return Repetition(0.0, seconds, metres, metres / seconds, shade, rest)


@pytest.mark.parametrize(
    ("metres", "place"),
    [(60, 0), (104, 0), (196, 1), (210, 1), (305, 2), (388, 3), (412, 3), (800, LONG)],
)
def test_lengths(metres: float, place: int) -> None:
    assert class_of(metres) == place


def test_a_run_of_two_sets() -> None:
    run = [_rep(200, 40), _rep(198, 38), _rep(202, 40, None), _rep(1000, 200)]
    run += [_rep(400, 100, shade=Shade.MODERATE)]
    short, long = sets_of(run)
    assert (short.length, short.total_m, short.recovery_s) == (1, 600, 60.0)
    speeds = [5.0, 198 / 38, 5.05]
    mean = sum(speeds) / 3
    spread = (sum((v - mean) ** 2 for v in speeds) / 3) ** 0.5
    assert short.unevenness == pytest.approx(spread / mean)
    assert (long.length, long.unevenness) == (LONG, 0.0)
    assert metres_by_class((short, long)) == (0.0, 600.0, 0.0, 0.0, 1000.0)


def test_spread_over_the_week() -> None:
    assert in_one_run([3000.0]) == 1.0
    assert in_one_run([1500.0, 900.0, 800.0]) is None
    assert in_one_run([800.0]) is None
    assert in_one_run([]) is None
