"""Which thresholds a day is judged by, with steps and straight lines between tests."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.domain import DatedThresholds
from tercet.engine import Thresholds, check_thresholds
from tercet.library.dated import in_force

MARCH, MAY = date(2026, 3, 1), date(2026, 5, 1)


def entries(change: str) -> list[DatedThresholds]:
    return [
        DatedThresholds(MARCH, Thresholds(140, 160, 2.8, 3.4), id=1),
        DatedThresholds(MAY, Thresholds(146, 166, 3.0, 3.6, hr_max=190), id=2, change=change),
    ]


def test_a_step_holds_until_the_next() -> None:
    for day in (MARCH, MARCH + timedelta(days=30), MAY - timedelta(days=1)):
        assert in_force(entries("step"), day) == entries("step")[0]
    assert in_force(entries("step"), MAY) == entries("step")[1]


def test_a_straight_line_goes_from_one_to_the_other() -> None:
    middle = in_force(entries("linear"), date(2026, 3, 31))  # 30 of 61 days
    assert middle is not None and middle.id == 1
    assert middle.values.lt1_speed == pytest.approx(2.8 + 0.2 * 30 / 61)
    assert middle.values.lt2_hr == pytest.approx(160 + 6 * 30 / 61)
    assert middle.values.hr_max is None  # only the later one knows it
    for day in (date(2026, 1, 1), MARCH):
        assert in_force(entries("linear"), day) == entries("linear")[0]
    for day in (MAY, date(2027, 1, 1)):
        assert in_force(entries("linear"), day) == entries("linear")[1]


@given(st.integers(0, 61))
def test_every_day_on_the_way_is_possible(days: int) -> None:
    found = in_force(entries("linear"), MARCH + timedelta(days=days))
    assert found is not None
    check_thresholds(found.values)
    assert found.values.lt1_speed is not None and 2.8 <= found.values.lt1_speed <= 3.0


def test_nothing_is_in_force_without_any() -> None:
    assert in_force([], MAY) is None
