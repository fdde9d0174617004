"""The runner's word over a judgement: it wins, and the sums still add up."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Evidence, Judgement, Shade, judge
from tercet.engine.corrections import Correction, apply_corrections, whole_run


@lru_cache(maxsize=1)
def judged() -> Judgement:
    run = simulate(Runner(), prescribe("reps_400", stream(5, 0)), 5, timer="manual")
    return judge(streams_of(run), run.samples["time"], thresholds_of(run), stops=run.stops)


def test_a_stretch_gets_its_shade_and_nothing_else_changes() -> None:
    before = judged()
    after = apply_corrections(before, [Correction(60.0, 180.0, Shade.MODERATE)])
    inside = slice(60, 180)
    ran = before.shades[inside] != Shade.NOT_RUNNING
    assert set(after.shades[inside][ran].tolist()) == {Shade.MODERATE}
    assert set(after.evidence[inside][ran].tolist()) == {Evidence.WORD}
    assert ((after.scale[inside][ran] >= 1) & (after.scale[inside][ran] < 2)).all()
    np.testing.assert_array_equal(after.shades[180:], before.shades[180:])
    np.testing.assert_array_equal(after.metres, before.metres)


def test_a_run_left_out_is_not_running_at_all_and_has_no_repetitions() -> None:
    after = apply_corrections(judged(), [whole_run(None)])
    assert after.seconds_by_shade()[Shade.NOT_RUNNING] == pytest.approx(after.elapsed_s)
    assert after.metres_by_shade()[Shade.NOT_RUNNING] == pytest.approx(judged().metres.sum())
    assert after.repetitions == ()
    assert np.isnan(after.scale).all()
    assert all(high == 0.0 for _, high in after.intervals)


def test_the_last_word_wins_and_repetitions_take_their_new_shade() -> None:
    before = judged()
    first = before.repetitions[0]
    end = first.start_s + first.duration_s
    words = [
        Correction(first.start_s, end, Shade.EASY),
        Correction(first.start_s, end, Shade.MODERATE),
    ]
    after = apply_corrections(before, words)
    assert after.repetitions[0].shade == Shade.MODERATE
    assert after.repetitions[1:] == before.repetitions[1:]


def test_a_repetition_left_out_makes_the_recovery_before_it_longer() -> None:
    before = judged()
    first, second, third = before.repetitions[:3]
    gone = Correction(second.start_s, second.start_s + second.duration_s, None)
    after = apply_corrections(before, [gone])
    assert len(after.repetitions) == len(before.repetitions) - 1
    assert after.repetitions[0].recovery_s == third.start_s - first.start_s - first.duration_s


def test_where_no_running_was_seen_the_word_makes_it_running() -> None:
    streams = {"heart_rate": (np.arange(600.0), np.full(600, 80.0))}
    still = judge(
        streams | {"speed": (np.arange(600.0), np.full(600, 0.3))}, np.arange(600.0), None
    )
    assert still.seconds_by_shade()[Shade.NOT_RUNNING] == 599
    told = apply_corrections(still, [whole_run(Shade.HARD)])
    assert told.seconds_by_shade()[Shade.HARD] == 599


@pytest.mark.parametrize(
    ("start", "end", "shade"),
    [(10.0, 10.0, Shade.EASY), (20.0, 10.0, None), (-1.0, 10.0, Shade.EASY),
     (math.nan, 10.0, Shade.EASY), (0.0, 10.0, Shade.NOT_RUNNING)],
)  # fmt: skip
def test_what_cannot_be_is_refused(start: float, end: float, shade: Shade | None) -> None:
    with pytest.raises(ValueError, match="stretch"):
        apply_corrections(judged(), [Correction(start, end, shade)])


spans = st.tuples(st.floats(0, 4000), st.floats(0.1, 4000)).map(lambda p: (p[0], p[0] + p[1]))
shades = st.sampled_from([Shade.EASY, Shade.MODERATE, Shade.HARD, None])


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(spans, shades), max_size=5))
def test_the_five_sums_stay_elapsed_time_and_distance(
    words: list[tuple[tuple[float, float], Shade | None]],
) -> None:
    before = judged()
    after = apply_corrections(before, [Correction(a, b, shade) for (a, b), shade in words])
    assert after.seconds_by_shade().sum() == pytest.approx(before.elapsed_s, abs=1e-6)
    assert after.metres_by_shade().sum() == pytest.approx(before.metres_by_shade().sum())
    for k, (low, high) in enumerate(after.intervals):
        assert low - 1 <= after.seconds_by_shade()[k] <= high + 1
