"""Weeks that begin on another weekday: other rows, the same days, sums and plans."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet import week_days
from tercet.domain import Block
from tercet.engine.countback import Volume, count_back
from tercet.library import plans, season

DAYS = st.dates(date(2015, 1, 1), date(2035, 12, 31))


@pytest.fixture(autouse=True)
def mondays_again():
    yield
    week_days.begin_on(week_days.MONDAY)


@given(day=DAYS, first=st.integers(0, 6))
def test_a_day_stands_in_its_week_at_its_place(day: date, first: int) -> None:
    week_days.begin_on(first)
    start = week_days.start_of(day)
    assert start.weekday() == first and 0 <= (day - start).days <= 6
    assert week_days.weekdays()[week_days.column_of(day)] == day.weekday()


@given(
    start=DAYS,
    length=st.integers(1, 120),
    first=st.sampled_from([0, 5, 6]),
    every=st.sampled_from([0, 3, 4]),
)
def test_what_a_block_wants_stays_its_sum(start: date, length: int, first: int, every: int) -> None:
    volume = Volume(20_000.0, 0.08, None, every)
    # Laid in weeks from Monday, as most plans are.
    start -= timedelta(days=start.weekday())
    block = Block(start, start + timedelta(days=length - 1), "Base", "base", 0.9, volume=volume)
    week_days.begin_on(0)
    before = plans.wanted_weeks(block, [])
    week_days.begin_on(first)
    after = plans.wanted_weeks(block, [])
    assert sum(w or 0.0 for _, w in after) == pytest.approx(sum(w or 0.0 for _, w in before))
    assert all(day.weekday() == first for day, _ in after)
    assert all(w is not None and w > 0.0 for _, w in after)


@pytest.mark.parametrize("first", [0, 5, 6])
def test_a_season_counted_back_begins_its_blocks_with_a_week(first: int) -> None:
    day = date(2026, 1, 1)
    laid = count_back(date(2026, 8, 2), day, day, 20_000.0, first=first)
    assert [block.start.weekday() for block in laid[1:]] == [first] * (len(laid) - 1)


@pytest.mark.parametrize("first", [5, 6])
def test_unplanned_months_hold_whole_weeks(first: int) -> None:
    week_days.begin_on(first)
    day = date(2025, 12, 1)
    days = [day + timedelta(days=k) for k in range(120)]
    blocks = [block for block, _ in season._stretches([], days)]
    assert all(block.start.weekday() == first for block in blocks)
    assert all(b.start - a.end == timedelta(days=1) for a, b in pairwise(blocks))
