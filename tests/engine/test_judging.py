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
from tercet.engine.kinetics import follow, settled

LINES = Thresholds(146, 167, 2.95, 3.60, 48, 186)
CHANNELS = ("heart_rate", "speed", "distance", "latitude", "longitude", "altitude", "cadence",
            "power")  # fmt: skip


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
    assert ours.right() > 95.2
    assert np.abs(ours.share_errors()).max() < 0.7
    assert abs(ours.hard_ratio()) < 5.0
    assert ours.wrongly_moderate() < 1.5
    exact, of = ours.exact()
    assert exact >= 0.95 * of and ours.false_finds <= 2
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
        Thresholds(lt1_power=100, lt2_power=150),
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


def noise_free(pieces: list[tuple[float, int]]) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    """A run of steady pieces (speed, seconds) on the level, its heart where they lead it."""
    speed = np.concatenate([np.full(seconds, v) for v, seconds in pieces])
    speed = np.append(speed, speed[-1])
    clock = np.arange(float(len(speed)))
    heart = follow(settled(speed, LINES)[:, None], [50.0], 1.0, 110.0)[0, :, 0]
    way = np.concatenate(([0.0], np.cumsum(speed[1:])))
    return {"speed": (clock, speed), "distance": (clock, way), "heart_rate": (clock, heart),
            "cadence": (clock, np.where(speed > 2, 168.0, 0.0)),
            "latitude": (clock, 40.2 + way / 111_200), "longitude": (clock, np.full(len(way), 6.1)),
            "altitude": (clock, np.full(len(way), 60.0))}  # fmt: skip


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.tuples(st.sampled_from([2.45, 2.6, 3.25, 3.3, 4.1, 4.3]), st.integers(120, 500)),
        min_size=1,
        max_size=4,
    ),
    st.integers(0, 3),
    st.floats(0.1, 0.9),
)
def test_splitting_a_noise_free_run_changes_no_total_by_more_than_a_second(
    pieces: list[tuple[float, int]], which: int, share: float
) -> None:
    """Speed alone, pieces away from the lines, cut within a piece: a second, and two a change.

    A part of less than five minutes does not tell the watch's lag, so the usual one is undone
    there and each change of pace may move by two seconds. Closer it cannot hold: a cut at a
    change of pace leaves no room to undo the lag, and near a line, or with heart rate, each half
    is judged by less than the whole was.
    """
    which %= len(pieces)
    streams = {k: v for k, v in noise_free(pieces).items() if k != "heart_rate"}
    clock = streams["speed"][0]
    before = sum(seconds for _, seconds in pieces[:which])
    cut = before + int(share * pieces[which][1])
    whole = judge(streams, clock, LINES)
    halves = []
    for inside in (clock <= cut, clock >= cut):
        part = {k: (t[inside], v[inside]) for k, (t, v) in streams.items()}
        # A new file's counter starts at zero.
        part["distance"] = (part["distance"][0], part["distance"][1] - part["distance"][1][0])
        halves.append(judge(part, clock[inside], LINES))
    allowed = 1.0 + 2.0 * (len(pieces) - 1)
    sums = halves[0].seconds_by_shade() + halves[1].seconds_by_shade()
    np.testing.assert_allclose(sums, whole.seconds_by_shade(), atol=allowed)
    metres = halves[0].metres_by_shade() + halves[1].metres_by_shade()
    np.testing.assert_allclose(metres, whole.metres_by_shade(), atol=5.0 * allowed)


@pytest.mark.parametrize("speed", [2.5, 3.27, 4.2])
@pytest.mark.parametrize("share", [0.15, 0.5, 0.8])
def test_splitting_a_steady_run_with_heart_rate_changes_nothing(speed: float, share: float) -> None:
    streams = noise_free([(speed, 2400)])
    clock = streams["speed"][0]
    cut = int(share * 2400)
    sums = np.zeros(5)
    for inside in (clock <= cut, clock >= cut):
        part = {k: (t[inside], v[inside]) for k, (t, v) in streams.items()}
        sums += judge(part, clock[inside], LINES).seconds_by_shade()
    np.testing.assert_allclose(sums, judge(streams, clock, LINES).seconds_by_shade(), atol=1.0)
