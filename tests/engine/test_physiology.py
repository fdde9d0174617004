"""Published formulas against published figures.

Where a paper prints only a formula, the figures were computed from it apart from this program,
to the digits shown.
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import physiology

HALF, MARATHON = 21_097.5, 42_195.0


def clock(text: str) -> float:
    seconds = 0.0
    for part in text.split(":"):
        seconds = 60 * seconds + float(part)
    return seconds


# Heart rate ------------------------------------------------------------------------------


@pytest.mark.parametrize(("age", "beats"), [(20, 194), (40, 180), (60, 166)])
def test_maximal_heart_rate_from_age(age: int, beats: float) -> None:
    # Tanaka, Monahan & Seals 2001, J Am Coll Cardiol 37:153-156: 208 - 0.7 age
    assert physiology.maximal_heart_rate(age) == pytest.approx(beats, abs=1e-9)


def test_the_formula_crosses_220_minus_age_at_forty() -> None:
    # Fox, Naughton & Haskell 1971 (from memory): the two agree at 40 and part on either side
    assert physiology.maximal_heart_rate(40) == pytest.approx(220 - 40)
    assert physiology.maximal_heart_rate(25) < 220 - 25
    assert physiology.maximal_heart_rate(60) > 220 - 60


@pytest.mark.parametrize("age", [9.9, 101, -1, float("nan")])
def test_an_age_out_of_range_is_refused(age: float) -> None:
    with pytest.raises(ValueError, match="age"):
        physiology.maximal_heart_rate(age)


@pytest.mark.parametrize(
    ("rest", "maximum", "share", "beats"),
    [(50, 190, 0.60, 134), (50, 190, 0.85, 169), (70, 180, 0.50, 125), (70, 180, 0.85, 163.5)],
)
def test_heart_rate_reserve(rest: float, maximum: float, share: float, beats: float) -> None:
    # Karvonen, Kentala & Mustala 1957, Ann Med Exp Biol Fenn 35:307-315
    assert physiology.heart_rate_at_reserve(share, rest=rest, maximum=maximum) == pytest.approx(
        beats
    )


def test_a_share_of_the_reserve_is_not_a_share_of_the_maximum() -> None:
    # Easily mixed up: 60 % of the reserve at 190/50 is 70.5 % of the maximum
    beats = float(physiology.heart_rate_at_reserve(0.6, rest=50, maximum=190))
    assert beats / 190 == pytest.approx(0.705, abs=5e-4)


def test_rest_above_the_maximum_is_refused() -> None:
    with pytest.raises(ValueError, match="rest"):
        physiology.heart_rate_at_reserve(0.5, rest=190, maximum=190)


@pytest.mark.parametrize(("uptake", "share"), [(0.50, 0.690), (0.70, 0.818), (0.85, 0.914)])
def test_share_of_maximal_heart_rate(uptake: float, share: float) -> None:
    assert physiology.share_of_maximal_heart_rate(uptake) == pytest.approx(share, abs=1e-9)


def test_share_of_maximal_heart_rate_meets_the_published_means() -> None:
    # Swain et al. 1994, Med Sci Sports Exerc 26:112-116: 63/76/89/92 % at 40/60/80/85 %
    shares = physiology.share_of_maximal_heart_rate([0.40, 0.60, 0.80, 0.85])
    assert np.abs(shares - [0.63, 0.76, 0.89, 0.92]).max() <= 0.01


# Races -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("known", "distance", "target", "exponent", "expected"),
    [
        ("20:00", 5_000, 10_000, 1.06, 2501.92),
        ("40:00", 10_000, HALF, 1.06, 5295.37),
        ("40:00", 10_000, MARATHON, 1.06, 11040.48),
        ("1:30:00", HALF, MARATHON, 1.06, 11258.63),
        ("40:00", 10_000, MARATHON, 1.08, 11363.00),
    ],
)
def test_power_law(
    known: str, distance: float, target: float, exponent: float, expected: float
) -> None:
    # Riegel 1981, American Scientist 69:285-290; computed figures, 0.05 s
    time = physiology.equivalent_time(clock(known), distance, target, exponent)
    assert time == pytest.approx(expected, abs=0.05)


def test_power_law_of_doubling() -> None:
    assert physiology.equivalent_time(1000, 5_000, 10_000) == pytest.approx(2084.93, abs=0.01)


@given(st.floats(210, 13_800), st.floats(1_000, 50_000), st.floats(210, 13_800))
def test_speed_for_a_duration_is_the_power_law_turned_round(
    time: float, distance: float, duration: float
) -> None:
    speed = physiology.speed_for_duration(time, distance, duration)
    assert physiology.equivalent_time(time, distance, speed * duration) == pytest.approx(duration)


@pytest.mark.parametrize("bad", [(0, 5000, 10_000), (1200, -1, 10_000), (1200, 5000, 0)])
def test_power_law_refuses_what_cannot_be(bad: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="positive"):
        physiology.equivalent_time(*bad)
    with pytest.raises(ValueError, match="positive"):
        physiology.speed_for_duration(*bad)


# Daniels & Gilbert 1979, Oxygen Power; coefficients seen in ten public files that agree.


@pytest.mark.parametrize(("per_minute", "cost"), [(200, 36.012), (250, 47.465), (300, 59.437)])
def test_oxygen_cost(per_minute: float, cost: float) -> None:
    assert physiology.oxygen_cost(per_minute / 60) == pytest.approx(cost, abs=0.001)


def test_oxygen_cost_is_near_the_books_inverse() -> None:
    # its own regression, v = 29.54 + 5.000663 C - 0.007546 C^2, gives 217.493 / 260.708 / 302.414
    for cost, per_minute in ((40, 217.672), (50, 260.772), (60, 302.297)):
        assert physiology.oxygen_cost(per_minute / 60) == pytest.approx(cost, abs=0.001)
        regression = 29.54 + 5.000663 * cost - 0.007546 * cost**2
        assert regression == pytest.approx(per_minute, rel=1e-3)


@pytest.mark.parametrize(
    ("minutes", "share"),
    [
        (0, 1.28840), (5, 1.09146), (10, 1.01000), (20, 0.95298), (40, 0.91376), (60, 0.88801),
        (120, 0.84088), (240, 0.80882),
    ],
)  # fmt: skip
def test_sustainable_share(minutes: float, share: float) -> None:
    # seconds taken for minutes would give 0.8 for every race
    assert physiology.sustainable_share(minutes * 60) == pytest.approx(share, abs=1e-5)


def test_all_of_the_uptake_can_be_held_for_eleven_minutes() -> None:
    assert physiology.sustainable_share(11.03 * 60) == pytest.approx(1.0, abs=1e-4)


@pytest.mark.parametrize(
    ("distance", "time", "estimate"),
    [
        (1609.344, "5:00", 59.404),
        (3_000, "10:00", 58.849),
        (5_000, "20:00", 49.806),
        (10_000, "40:00", 51.944),
        (HALF, "1:30:00", 50.977),
        (MARATHON, "3:00:00", 53.528),
        (MARATHON, "4:00:00", 37.904),
    ],
)
def test_aerobic_capacity(distance: float, time: str, estimate: float) -> None:
    assert physiology.aerobic_capacity(distance, clock(time)) == pytest.approx(estimate, abs=0.001)


@pytest.mark.parametrize(
    ("distance", "time"),
    [(3_000, "11:35.1"), (10_000, "41:27.9"), (HALF, "1:31:49.7"), (MARATHON, "3:11:17.2")],
)
def test_races_equal_to_five_kilometres_in_twenty_minutes(distance: float, time: str) -> None:
    known = physiology.aerobic_capacity(5_000, 1200)
    # the equal times were solved for to 0.2 s: the answer lies between
    assert physiology.aerobic_capacity(distance, clock(time) - 0.2) > known
    assert physiology.aerobic_capacity(distance, clock(time) + 0.2) < known
    found = physiology.equal_capacity_time(5_000, 1200, distance)
    assert found == pytest.approx(clock(time), abs=0.2)


def test_the_two_ways_to_compare_races_agree_within_one_percent() -> None:
    by_power_law = physiology.equivalent_time(1200, 5_000, 10_000)
    assert clock("41:27.9") == pytest.approx(by_power_law, rel=0.01)
    assert by_power_law - clock("41:27.9") == pytest.approx(14, abs=0.5)


@pytest.mark.parametrize("bad", [(0, 100), (100, 0), (-5000, 1200)])
def test_aerobic_capacity_refuses_what_cannot_be(bad: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="positive"):
        physiology.aerobic_capacity(*bad)


# Critical speed --------------------------------------------------------------------------


def test_critical_speed_of_an_error_free_set() -> None:
    # made up from CS 4 m/s and D' 200 m
    fit = physiology.critical_speed([1200, 2400, 3600, 5000], [250, 550, 850, 1200])
    assert fit.speed == pytest.approx(4.0, abs=1e-9)
    assert fit.reserve == pytest.approx(200.0, abs=1e-9)
    assert fit.speed_error == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("distances", "times", "speed", "reserve"),
    [
        ([1200, 2400, 3600], [240, 520, 800], 4.28571, 171.43),
        ([1200, 3600], [240, 780], 4.44444, 133.33),
        ([1500, 3000, 5000], [300, 640, 1110], 4.31695, 216.75),
        ([400, 800, 5000], [80, 175, 1250], 3.92138, 99.44),
    ],
)
def test_critical_speed_of_worked_sets(
    distances: list[float], times: list[float], speed: float, reserve: float
) -> None:
    # linear distance-time fit; 1e-4 m/s and 0.01 m
    fit = physiology.critical_speed(distances, times)
    assert fit.speed == pytest.approx(speed, abs=1e-4)
    assert fit.reserve == pytest.approx(reserve, abs=0.01)


efforts = st.lists(
    st.tuples(st.floats(120, 1800), st.floats(-50, 50)),
    min_size=4, max_size=10, unique_by=lambda effort: round(effort[0]),
)  # fmt: skip


@given(efforts, st.floats(2.5, 6.0), st.floats(50, 400))
def test_critical_speed_is_least_squares(
    spread: list[tuple[float, float]], speed: float, reserve: float
) -> None:
    times = np.array([time for time, _ in spread])
    distances = speed * times + reserve + np.array([error for _, error in spread])
    fit = physiology.critical_speed(distances, times)
    # numpy's own line, and its covariance scaled by the residuals with n - 2
    (slope, intercept), covariance = np.polyfit(times, distances, 1, cov=True)
    assert fit.speed == pytest.approx(slope, rel=1e-6)
    assert fit.reserve == pytest.approx(intercept, rel=1e-6, abs=1e-5)
    assert fit.speed_error == pytest.approx(np.sqrt(covariance[0, 0]), rel=1e-4, abs=1e-7)


def test_two_efforts_say_nothing_of_their_error() -> None:
    assert np.isnan(physiology.critical_speed([1200, 3600], [240, 780]).speed_error)


@pytest.mark.parametrize("times", [[240.0], [240.0, 240.0], []])
def test_critical_speed_needs_two_different_efforts(times: list[float]) -> None:
    with pytest.raises(ValueError, match="at least two"):
        physiology.critical_speed([1200.0] * len(times), times)
