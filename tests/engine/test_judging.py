"""Judging as a whole: true on a simulated season, exact in its sums, calm on any input."""

from __future__ import annotations

import itertools
from functools import lru_cache

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.accuracy import METHODS, Score, score, streams_of, thresholds_of
from tests.simulator import KINDS, Runner, Simulated, prescribe, season, simulate
from tests.simulator.noise import stream

from tercet.engine import Judgement, Shade, Thresholds, judge

LINES = Thresholds(146, 167, 2.95, 3.60, 48, 186)
CHANNELS = ("heart_rate", "speed", "distance", "latitude", "longitude", "altitude", "cadence")


@lru_cache(maxsize=1)
def small_season() -> tuple[Simulated, ...]:
    """One of each kind and 40 more; seeds not used for any choice in the engine."""
    runs = [
        simulate(Runner(), prescribe(kind, stream(900 + k, 0)), 900 + k)
        for k, kind in enumerate(KINDS)
        if kind != "ride"
    ]
    return (*runs, *season(905, 40))


@lru_cache(maxsize=8)
def scored(method: str) -> Score:
    return score((run, METHODS[method](run)) for run in small_season())


def one(kind: str, seed: int = 3, **conditions: object) -> tuple[Simulated, Judgement]:
    run = simulate(Runner(), prescribe(kind, stream(seed, 0)), seed, **conditions)
    lines = thresholds_of(run)
    return run, judge(streams_of(run), run.samples["time"], lines, stops=run.stops)


def test_most_seconds_of_a_season_are_right() -> None:
    ours = scored("engine")
    assert ours.right() > 91.0
    assert np.abs(ours.share_errors()).max() < 2.0
    assert abs(ours.hard_ratio()) < 15.0
    assert ours.wrongly_moderate() < 2.5
    exact, of = ours.exact()
    assert exact >= 0.9 * of and ours.false_finds <= 2
    assert 0.82 < np.mean(ours.covered) <= 1.0


@pytest.mark.parametrize("method", ["heart rate", "speed", "graded speed"])
def test_the_engine_is_better_than_every_naive_way(method: str) -> None:
    assert scored("engine").right() > scored(method).right() + 2.0


def test_short_repetitions_are_hard_though_the_heart_never_says_so() -> None:
    run, judged = one("reps_200", terrain="level", hr_source="strap", hr_fault="")
    assert len(judged.repetitions) == len(run.repetitions)
    assert {rep.shade for rep in judged.repetitions} == {Shade.HARD}


def test_without_heart_rate_speed_judges_and_without_speed_heart_rate() -> None:
    run, _ = one("tempo")
    streams, clock = streams_of(run), run.samples["time"]
    lines = thresholds_of(run)
    deaf = judge({k: v for k, v in streams.items() if k != "heart_rate"}, clock, lines)
    assert set(np.unique(deaf.evidence)) <= {0, 1}
    blind = judge({"heart_rate": streams["heart_rate"]}, clock, lines)
    assert set(np.unique(blind.evidence)) <= {0, 2}
    assert blind.seconds_by_shade()[Shade.UNJUDGED] < 0.3 * blind.elapsed_s


def test_without_thresholds_running_is_unjudged_but_repetitions_are_found() -> None:
    run, _ = one("reps_400", terrain="level")
    judged = judge(streams_of(run), run.samples["time"], None, stops=run.stops)
    assert set(np.unique(judged.shades)) <= {Shade.NOT_RUNNING, Shade.UNJUDGED}
    assert len(judged.repetitions) == len(run.repetitions)


def test_stops_are_not_running() -> None:
    run, judged = one("easy", waits=3, timer="auto", sampling="1s")
    for begin, end in run.stops:
        assert (judged.shades[begin:end] == Shade.NOT_RUNNING).all()


@pytest.mark.parametrize("kind", ["easy", "fartlek", "tempo"])
def test_copies_of_samples_change_nothing(kind: str) -> None:
    run, judged = one(kind)
    streams = {k: (np.repeat(t, 2), np.repeat(v, 2)) for k, (t, v) in streams_of(run).items()}
    again = judge(streams, np.repeat(run.samples["time"], 2), thresholds_of(run), stops=run.stops)
    np.testing.assert_array_equal(judged.shades, again.shades)
    np.testing.assert_array_equal(judged.metres, again.metres)


@pytest.mark.parametrize("kind", ["progression", "fartlek", "long"])
def test_higher_thresholds_never_make_a_run_harder(kind: str) -> None:
    run, _ = one(kind)
    easy, hard = [], []
    for factor in (0.85, 0.9, 0.95, 1.0, 1.05, 1.1, 1.15):
        lines = Thresholds(lt1_speed=2.95 * factor, lt2_speed=3.6 * factor)
        sums = judge(streams_of(run), run.samples["time"], lines).seconds_by_shade()
        easy.append(sums[Shade.EASY])
        hard.append(sums[Shade.HARD])
    assert all(b >= a - 1 for a, b in itertools.pairwise(easy))
    assert all(b <= a + 1 for a, b in itertools.pairwise(hard))


def test_scale_probability_and_intervals_agree_with_the_shades() -> None:
    _, judged = one("fartlek")
    for shade, low, high in ((0, -np.inf, 1), (1, 1, 2), (2, 2, np.inf)):
        scale = judged.scale[judged.shades == shade]
        assert ((scale >= low) & (scale < high)).all()
    running = judged.shades <= Shade.HARD
    assert (judged.probability[running] > 1 / 3 - 1e-6).all() and judged.probability.max() <= 1
    for shade, (low, high) in enumerate(judged.intervals):
        assert low <= (judged.shades == shade).sum() <= high


values = st.one_of(
    st.floats(allow_nan=True, allow_infinity=True), st.floats(-10, 250), st.just(150.0)
)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(st.sampled_from([0.0, 0.4, 1.0, 1.0, 2.0, 5.0, 45.0]), max_size=90),
    st.dictionaries(st.sampled_from(CHANNELS), st.lists(values, max_size=90)),
    st.sampled_from([
        None, LINES, Thresholds(lt1_speed=3.0, lt2_speed=3.6), Thresholds(lt1_hr=140, lt2_hr=160),
    ]),
    st.lists(st.tuples(st.floats(0, 50), st.floats(0, 90)), max_size=2),
)  # fmt: skip
def test_any_streams_are_judged_and_the_five_sums_are_the_elapsed_time(
    steps: list[float],
    channels: dict[str, list[float]],
    lines: Thresholds | None,
    stops: list[tuple[float, float]],
) -> None:
    time = np.cumsum(steps)
    streams = {}
    for name, given_values in channels.items():
        n = min(len(time), len(given_values))
        streams[name] = (time[:n], np.array(given_values[:n]))
    judged = judge(streams, time, lines, stops=stops)
    elapsed = float(time[-1] - time[0]) if len(time) else 0.0
    assert judged.seconds_by_shade().sum() == pytest.approx(elapsed, abs=1e-6)
    assert judged.metres_by_shade().sum() == pytest.approx(judged.metres.sum())
