"""Lactate step tests against published worked tables, and what is refused.

Table A: demonstration data of the R library lactater 0.2.0 (MIT), results as its README prints
them. Table B: example data of the Python library lactate-thresholds 0.3.8 (MIT), results as it
printed them when run once on Python 3.13. Both are cycling tests: W stands for speed here.
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import lactate

A = ([50, 75, 100, 125, 150, 175, 191], [0.98, 1.23, 1.88, 2.80, 4.21, 6.66, 8.64])
A_HEART = [114, 134, 154, 170, 182, 193, 198]
B = ([100, 140, 180, 220, 260, 300, 340], [1.0, 1.0, 0.9, 1.0, 1.9, 3.8, 7.5])
B_FOUR_MINUTES = [1.0, 1.0, 0.9, 1.0, 1.9, 3.3, 6.4]
#: Brings W into the range of running speeds.
SCALE = 50.0


def found(watts: list[int], values: list[float], **more: object) -> dict[str, lactate.Candidate]:
    test = lactate.step_test(np.array(watts) / SCALE, values, **more)  # type: ignore[arg-type]
    return {item.method: item for item in lactate.candidates(test)}


@pytest.mark.parametrize(
    ("method", "watts", "beats", "within"),
    [
        # Fixed values: lactater takes chords of its curve and the resting row, 1.3 W at most.
        ("fixed 2.0", 105, 153, 1.3),
        ("fixed 4.0", 145, 176, 1.3),
        ("baseline + 0.5", 82.5, 139, 0.6),
        ("baseline + 1.0", 104, 152, 0.6),
        ("Dmax", 132, 168, 0.5),
        ("modified Dmax", 140, 173, 0.5),
    ],
)
def test_worked_table_a(method: str, watts: float, beats: float, within: float) -> None:
    item = found(*A, heart_rates=A_HEART, resting=0.93)[method]
    assert item.speed * SCALE == pytest.approx(watts, abs=within)
    assert item.heart_rate == pytest.approx(beats, abs=1.0)


@pytest.mark.parametrize(
    ("values", "method", "watts", "within"),
    [
        (B[1], "fixed 2.0", 264.3, 0.1),
        (B[1], "fixed 4.0", 302.1, 0.1),
        (B[1], "modified Dmax", 285.02, 0.01),
        (B_FOUR_MINUTES, "fixed 2.0", 267.7, 0.1),
        (B_FOUR_MINUTES, "fixed 4.0", 309.6, 0.1),
        (B_FOUR_MINUTES, "modified Dmax", 285.55, 0.01),
        # published-values dossier, computed with numpy from the method's definition
        (B[1], "Dmax", 250.5, 0.05),
        # that library fits its two lines to its curve, not to the steps
        (B[1], "log-log", 221.55, 7.0),
        (B_FOUR_MINUTES, "log-log", 222.25, 7.0),
        # and takes the mean of the curve's first fifth for baseline
        (B[1], "baseline + 1.0", 265.3, 6.0),
    ],
)
def test_worked_table_b(values: list[float], method: str, watts: float, within: float) -> None:
    assert found(B[0], values)[method].speed * SCALE == pytest.approx(watts, abs=within)


def test_two_methods_of_one_name_may_lie_far_apart() -> None:
    # published-values dossier, table B: 250.5 and 285.0 W
    items = found(*B)
    assert (items["modified Dmax"].speed - items["Dmax"].speed) * SCALE > 30


def test_log_log_finds_the_break_of_two_power_laws() -> None:
    speeds = np.array([2.5, 2.75, 3.0, 3.25, 3.5, 3.75, 4.0, 4.25])
    values = np.where(speeds < 3.4, (speeds / 3.4) ** 0.5, (speeds / 3.4) ** 6.0)
    items = {c.method: c for c in lactate.candidates(lactate.step_test(speeds, values))}
    assert items["log-log"].speed == pytest.approx(3.4, abs=0.01)


def test_a_step_broken_off_counts_by_what_was_run() -> None:
    # table A's last step: 2 of 3 min at 25 W more make 191 W
    test = lactate.step_test(
        np.array([50, 75, 100, 125, 150, 175, 200]) / SCALE, A[1], lengths=[180] * 6 + [120]
    )
    assert test.speeds[-1] * SCALE == pytest.approx(191.67, abs=0.01)
    whole = lactate.step_test(np.array(A[0]) / SCALE, A[1], lengths=[180] * 7)
    assert whole.speeds[-1] * SCALE == pytest.approx(191)


@pytest.mark.parametrize(
    ("speeds", "values", "words"),
    [
        ([3, 3.3, 3.6, 3.9], [1, 1.2, 2, 4], "4 steps are too few"),
        ([3, 3.3, 3.3, 3.9, 4.2], [1, 1.2, 2, 3, 4], "step 3 is not faster"),
        ([3, 3.3, 3.6, 3.9, 4.2], [1, 1.1, 1.0, 1.2, 1.4], "rises by less than 1"),
        ([3, 3.3, 3.6, 3.9, 14.2], [1, 1.1, 1.0, 1.2, 4], "step 5: no running speed"),
        ([3, 3.3, 3.6, 3.9, 4.2], [1, 1.1, 0.0, 1.2, 4], "step 3: lactate must lie"),
        ([3, 3.3, 3.6, 3.9, 4.2], [1, 1.1, float("nan"), 1.2, 4], "step 3: lactate must lie"),
        ([3, 3.3, 3.6, 3.9, 4.2], [1, 1.1, 2, 3], "its speed and its lactate"),
    ],
)
def test_what_is_no_step_test_is_refused_in_words(
    speeds: list[float], values: list[float], words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        lactate.step_test(speeds, values)


def test_heart_rates_and_lengths_are_checked_too() -> None:
    speeds, values = np.array(A[0]) / SCALE, A[1]
    with pytest.raises(ValueError, match="step 2: heart rate"):
        lactate.step_test(speeds, values, [114, 1340, 154, 170, 182, 193, 198])
    with pytest.raises(ValueError, match="needs its length"):
        lactate.step_test(speeds, values, lengths=[180, 180])


def test_nothing_is_extrapolated() -> None:
    short = found([50, 75, 100, 125, 150], [1.2, 1.3, 1.6, 2.3, 3.3])
    assert np.isnan(short["fixed 4.0"].speed)
    assert short["fixed 4.0"].reason == "4.0 mmol/L was not reached"
    high = found([50, 75, 100, 125, 150], [2.6, 2.7, 3.0, 3.9, 5.3])
    assert "already above 2.0" in high["fixed 2.0"].reason


def test_the_middle_one_is_offered() -> None:
    items = tuple(found(*A, resting=0.93).values())
    offered = lactate.middle(items, "LT2")
    assert offered is not None and offered.method == "modified Dmax"
    assert lactate.middle([], "LT1") is None


@given(
    st.lists(st.floats(0.5, 20), min_size=5, max_size=10),
    st.floats(1.5, 3.0),
    st.floats(0.1, 0.4),
)
def test_every_candidate_lies_within_the_test(
    values: list[float], first: float, step: float
) -> None:
    speeds = first + step * np.arange(len(values))
    try:
        test = lactate.step_test(speeds, values)
    except ValueError:
        return
    for item in lactate.candidates(test):
        if item.reason:
            assert np.isnan(item.speed)
        else:
            assert speeds[0] <= item.speed <= speeds[-1]
            assert np.isfinite(item.lactate)


def test_heart_rate_stays_unknown_without_any() -> None:
    assert all(np.isnan(item.heart_rate) for item in found(*A).values())
