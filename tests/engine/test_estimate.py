"""Estimated thresholds: in order, in range, honest about how little is known."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulator import Simulated, season

from tercet.engine import check_thresholds, estimate, judge, physiology
from tercet.engine.fingerprint import EFFORT_S, Fingerprint
from tercet.engine.fingerprint import fingerprint as take_fingerprint

SEEDS = range(300, 312)
FIRST_WEEK = 6


def streams_of(run: Simulated) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    time = run.samples["time"]
    known = {name: np.isfinite(values) for name, values in run.samples.items() if name != "time"}
    return {name: (time[at], run.samples[name][at]) for name, at in known.items() if at.any()}


@cache
def simulated(seed: int) -> tuple[float, tuple[Fingerprint, ...]]:
    """True LT2 speed of a drawn runner, and what the first sixteen runs of a season show."""
    runs = season(seed, 16)
    prints = tuple(
        take_fingerprint(judge(streams_of(run), run.samples["time"], None, stops=run.stops))
        for run in runs
    )
    return runs[0].runner.lt2_speed, prints


def fingerprint(**change: object) -> Fingerprint:
    values: dict[str, object] = {
        "best_m": tuple(3.0 * s if s <= 1800 else 0.0 for s in EFFORT_S),
        "steady_hr": (140.0, 142.0),
        "steady_speed": (2.9, 2.95),
        "hr_top": 160.0,
        "hr_low": 90.0,
        "typical_speed": 2.9,
        "running_s": 2400.0,
    }
    return Fingerprint(**(values | change))  # type: ignore[arg-type]


# From a race -----------------------------------------------------------------------------


def test_a_race_of_an_hour_was_run_at_lt2() -> None:
    # common practice, no source: both models say that an hour's race is an hour's race
    guess = estimate.from_race(16_000, 3600)
    assert guess.values.lt2_speed == pytest.approx(16_000 / 3600, rel=1e-6)


@pytest.mark.parametrize(
    ("distance", "time"), [(5_000, 1200), (10_000, 2400), (21_097.5, 5400), (3_000, 540)]
)
def test_a_race_puts_lt2_between_the_two_models(distance: float, time: float) -> None:
    guess = estimate.from_race(distance, time)
    by_power_law = physiology.speed_for_duration(time, distance, 3600)
    lt1, lt2 = guess.values.lt1_speed, guess.values.lt2_speed
    assert lt1 is not None and lt2 is not None
    # what the second model says lies as far on the other side, and takes an hour's share
    other = 2 * lt2 - by_power_law
    capacity = physiology.aerobic_capacity(distance, time)
    assert physiology.aerobic_capacity(other * 3600, 3600) == pytest.approx(capacity, rel=1e-6)
    assert abs(lt2 - by_power_law) <= guess.interval["lt2_speed"]
    # Condello et al. 2014, J Sports Sci Med 13:309-314: 67 and 84 % of maximal speed
    assert lt1 / lt2 == pytest.approx(67 / 84)
    check_thresholds(guess.values)
    assert guess.values.lt1_hr is None and guess.values.lt2_hr is None


@given(st.floats(250, 10_000), st.floats(2.1, 7.0), st.floats(1.01, 1.3))
def test_a_faster_race_never_gives_a_lower_line(time: float, speed: float, factor: float) -> None:
    faster = estimate.from_race(speed * time, time).values
    slower = estimate.from_race(speed * time, time * factor).values
    assert faster.lt1_speed > slower.lt1_speed  # type: ignore[operator]
    assert faster.lt2_speed > slower.lt2_speed  # type: ignore[operator]


@pytest.mark.parametrize(
    ("distance", "time", "words"),
    [
        (800, 120, "3.5 to 230 minutes"),  # Riegel's range
        (42_195, 4 * 3600, "3.5 to 230 minutes"),
        (10_000, 600, "no running speed"),
        (1_000, 3600, "no running speed"),
        (0, 1200, "no running speed"),
        (5_000, float("nan"), "3.5 to 230 minutes"),
    ],
)
def test_what_is_no_race_is_refused_in_words(distance: float, time: float, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        estimate.from_race(distance, time)


# From the maximum ------------------------------------------------------------------------


def test_heart_rates_from_the_maximum() -> None:
    # Swain 1994 at 67 and 84 % (Condello 2014): 0.64 x + 0.37 of 190
    guess = estimate.heart_rates_from_maximum(190.0)
    assert guess.values.lt1_hr == pytest.approx(190 * 0.7988)
    assert guess.values.lt2_hr == pytest.approx(190 * 0.9076)
    # 90 % of runners spread by 9 points of speed alone: 1.645 * 0.64 * 0.09 * 190
    assert guess.interval["lt1_hr"] >= 1.645 * 0.64 * 0.09 * 190
    assert guess.interval["lt1_hr"] > guess.interval["lt2_hr"] > 5.0


# From recordings -------------------------------------------------------------------------


def test_nothing_gives_nothing() -> None:
    assert estimate.from_runs([]) is None
    empty = fingerprint(
        best_m=(0.0,) * len(EFFORT_S), steady_hr=(), steady_speed=(),
        hr_top=0.0, hr_low=0.0, typical_speed=0.0, running_s=0.0,
    )  # fmt: skip
    assert estimate.from_runs([empty]) is None


def test_one_known_thing_is_enough() -> None:
    by_maximum = estimate.from_runs([], maximum=190.0)
    assert by_maximum is not None
    assert by_maximum.values.by_heart_rate and not by_maximum.values.by_speed
    by_race = estimate.from_runs([], race=estimate.from_race(10_000, 2400))
    assert by_race is not None
    assert by_race.values.by_speed and not by_race.values.by_heart_rate


def test_a_race_is_believed_before_anything_recorded() -> None:
    race = estimate.from_race(10_000, 2400)
    guess = estimate.from_runs([fingerprint()], race=race)
    assert guess is not None
    assert guess.values.lt2_speed == race.values.lt2_speed
    assert guess.values.by_heart_rate and "one race" in guess.source


def test_a_lone_artefact_is_not_the_maximal_heart_rate() -> None:
    runs = [fingerprint(hr_top=top) for top in (231.0, 205.0, 181.0, 180.0, 179.5, 179.0)]
    guess = estimate.from_runs(runs)
    assert guess is not None and guess.values.hr_max == pytest.approx(183.0)


def test_a_maximum_that_nobody_reached_is_said_to_be_a_usual_one() -> None:
    for tops in ((150.0, 149.0), (240.0,)):
        guess = estimate.from_runs([fingerprint(hr_top=top) for top in tops])
        assert guess is not None and "a usual maximal heart rate" in guess.source
        assert guess.interval["hr_max"] >= 17.0  # [memory] 90 % of adults


def test_usual_pace_alone_gives_speeds_with_easy_running_easy() -> None:
    without = fingerprint(steady_hr=(), steady_speed=(), hr_top=0.0, hr_low=0.0)
    guess = estimate.from_runs([without] * 5)
    assert guess is not None and guess.source == "usual pace alone"
    assert not guess.values.by_heart_rate
    assert guess.values.lt1_speed is not None and guess.values.lt1_speed > 2.9


def test_the_order_of_runs_does_not_matter() -> None:
    _, prints = simulated(SEEDS[0])
    assert estimate.from_runs(prints) == estimate.from_runs(prints[::-1])


def test_lt2_lies_in_its_interval_for_nine_simulated_runners_of_ten() -> None:
    # no race, no test, a first fortnight of base training: what a new user brings
    held = 0
    for seed in SEEDS:
        truth, prints = simulated(seed)
        guess = estimate.from_runs(prints)
        assert guess is not None and guess.values.lt2_speed is not None
        held += abs(guess.values.lt2_speed - truth) <= guess.interval["lt2_speed"]
        check_thresholds(guess.values)
    assert held >= 0.9 * len(SEEDS) - 1


def test_lt2_is_not_pulled_down_by_training_that_was_never_all_out() -> None:
    errors = []
    for seed in SEEDS:
        truth, prints = simulated(seed)
        guess = estimate.from_runs(prints)
        assert guess is not None and guess.values.lt2_speed is not None
        errors.append(guess.values.lt2_speed / truth - 1)
    assert abs(float(np.median(errors))) < 0.08


def test_a_few_runs_are_enough_for_an_estimate() -> None:
    for seed in SEEDS[:4]:
        _, prints = simulated(seed)
        for count in range(1, FIRST_WEEK):
            guess = estimate.from_runs(prints[:count])
            assert guess is not None
            check_thresholds(guess.values)


def _floats(low: float, high: float) -> st.SearchStrategy[float]:
    return st.just(0.0) | st.floats(low, high)


@st.composite
def any_prints(draw: st.DrawFn) -> Fingerprint:
    """Whatever judged recordings can show, broken sensors included."""
    pieces = draw(st.lists(st.tuples(st.floats(30, 250), st.floats(1.5, 9)), max_size=5))
    paces = draw(st.lists(_floats(0.5, 12), min_size=10, max_size=10))
    return Fingerprint(
        best_m=tuple(pace * s for pace, s in zip(paces, EFFORT_S, strict=True)),
        steady_hr=tuple(rate for rate, _ in pieces),
        steady_speed=tuple(speed for _, speed in pieces),
        hr_top=draw(_floats(30, 250)),
        hr_low=draw(_floats(25, 200)),
        typical_speed=draw(_floats(0.3, 6)),
        running_s=draw(_floats(1, 20_000)),
    )


@given(st.lists(any_prints(), max_size=6), st.none() | st.floats(120, 225))
def test_no_recording_makes_an_estimate_that_cannot_be(
    prints: list[Fingerprint], maximum: float | None
) -> None:
    guess = estimate.from_runs(prints, maximum=maximum)
    if guess is None:
        return
    check_thresholds(guess.values)
    assert guess.source
    for name, half_width in guess.interval.items():
        assert half_width > 0 and getattr(guess.values, name) is not None


# Fingerprints ----------------------------------------------------------------------------


def test_a_fingerprint_of_a_steady_run() -> None:
    time = np.arange(0.0, 3001.0)
    streams = {
        "speed": (time, 3.0 + 0.02 * np.sin(time / 7)),
        # a rate that never moves would be taken for a sensor that hangs
        "heart_rate": (time, np.round(145.0 + 1.4 * np.sin(time / 11))),
    }
    found = take_fingerprint(judge(streams, time, None))
    assert found.typical_speed == pytest.approx(3.0, abs=0.02)
    assert found.hr_top == pytest.approx(145, abs=2) and found.hr_low == pytest.approx(145, abs=2)
    assert found.running_s == pytest.approx(3000, abs=5)
    assert len(found.steady_hr) == len(found.steady_speed) >= 5
    assert found.steady_speed == pytest.approx([3.0] * len(found.steady_speed), abs=0.02)
    assert found.steady_hr == pytest.approx([145] * len(found.steady_hr), abs=0.5)
    for seconds, metres in zip(EFFORT_S, found.best_m, strict=True):
        assert metres == pytest.approx(3.0 * seconds if seconds <= 3000 else 0.0, rel=0.01)


def test_a_fingerprint_of_next_to_nothing() -> None:
    found = take_fingerprint(judge({}, [0.0, 1.0], None))
    assert found.hr_top == found.hr_low == found.typical_speed == 0.0
    assert set(found.best_m) == {0.0}
