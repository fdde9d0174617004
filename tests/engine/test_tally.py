"""Sums by run, day, week, block and season: against pandas, and against each other."""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine.tally import (
    block_sums,
    cumulative_by_day,
    easy_share,
    season_sums,
    sums_by,
    week_key,
)

FIRST = date(2024, 12, 1)
days = st.integers(0, 500).map(lambda k: FIRST + timedelta(days=k))
five = st.tuples(*[st.floats(0, 20_000)] * 5)
runs = st.lists(st.tuples(days, five), max_size=40)
#: Lengths of blocks and of the gaps before them, in days.
spans = st.lists(st.tuples(st.integers(0, 40), st.integers(1, 90)), max_size=6)


def split(season: list[tuple[date, tuple[float, ...]]]) -> tuple[list[date], np.ndarray]:
    return [day for day, _ in season], np.array([row for _, row in season]).reshape(-1, 5)


def blocks_of(lengths: list[tuple[int, int]]) -> list[tuple[date, date]]:
    out, at = [], FIRST
    for gap, length in lengths:
        begin = at + timedelta(days=gap)
        end = begin + timedelta(days=length - 1)
        out.append((begin, end))
        at = end + timedelta(days=1)
    return out


@given(runs, spans)
def test_every_way_to_cut_a_season_has_the_same_total(
    season: list[tuple[date, tuple[float, ...]]], lengths: list[tuple[int, int]]
) -> None:
    when, table = split(season)
    total = table.sum(axis=0)
    for by in ("run", "day", "week", "season"):
        parts = list(season_sums(when, table, by).values())
        assert np.sum(parts, axis=0) == pytest.approx(total) or not parts
    assert block_sums(when, table, blocks_of(lengths)).sum(axis=0) == pytest.approx(total)


@given(runs, spans, st.randoms(use_true_random=False))
def test_sums_do_not_depend_on_the_order_of_files(
    season: list[tuple[date, tuple[float, ...]]], lengths: list[tuple[int, int]], chance: object
) -> None:
    other = list(season)
    chance.shuffle(other)  # type: ignore[attr-defined]
    (when, table), (when2, table2) = split(season), split(other)
    for by in ("day", "week", "season"):
        one, two = season_sums(when, table, by), season_sums(when2, table2, by)
        assert one.keys() == two.keys()
        assert all((one[key] == two[key]).all() for key in one)  # to the last digit
    blocks = blocks_of(lengths)
    assert (block_sums(when, table, blocks) == block_sums(when2, table2, blocks)).all()


@given(st.lists(st.tuples(days, five), min_size=1, max_size=40))
def test_weeks_are_those_of_pandas(season: list[tuple[date, tuple[float, ...]]]) -> None:
    when, table = split(season)
    ours = season_sums(when, table, "week")
    frame = pd.DataFrame(table, index=pd.DatetimeIndex([pd.Timestamp(day) for day in when]))
    iso = frame.index.isocalendar()
    by_number = frame.groupby([iso["year"].to_numpy(), iso["week"].to_numpy()]).sum()
    assert set(ours) == {(int(year), int(week)) for year, week in by_number.index}
    for key, amounts in ours.items():
        assert amounts == pytest.approx(by_number.loc[key].to_numpy())
    # resample labels a week by its Sunday
    for sunday, row in frame.sort_index().resample("W-SUN").sum().iterrows():
        assert ours.get(week_key(sunday.date()), np.zeros(5)) == pytest.approx(row.to_numpy())


@pytest.mark.parametrize(
    ("day", "key"),
    [
        # ISO 8601: week 1 holds the year's first Thursday
        (date(2024, 12, 29), (2024, 52)),
        (date(2024, 12, 30), (2025, 1)),
        (date(2026, 12, 31), (2026, 53)),
        (date(2027, 1, 3), (2026, 53)),
        (date(2027, 1, 4), (2027, 1)),
    ],
)
def test_weeks_at_the_turn_of_the_year(day: date, key: tuple[int, int]) -> None:
    assert week_key(day) == key


@given(runs, spans)
def test_a_block_holds_its_first_and_last_day_and_no_other(
    season: list[tuple[date, tuple[float, ...]]], lengths: list[tuple[int, int]]
) -> None:
    when, table = split(season)
    blocks = blocks_of(lengths)
    sums = block_sums(when, table, blocks)
    frame = pd.DataFrame(table, index=pd.DatetimeIndex([pd.Timestamp(day) for day in when]))
    frame = frame.sort_index()
    for (begin, end), row in zip(blocks, sums, strict=False):
        # pandas slices by label with both ends included
        inside = frame.loc[pd.Timestamp(begin) : pd.Timestamp(end)]
        assert row == pytest.approx(inside.sum().to_numpy())


def test_blocks_that_overlap_are_refused() -> None:
    blocks = [(date(2026, 5, 1), date(2026, 5, 31)), (date(2026, 4, 1), date(2026, 5, 1))]
    with pytest.raises(ValueError, match="overlap on 2026-05-01"):
        block_sums([], [], blocks)


def test_blocks_that_touch_do_not_overlap() -> None:
    blocks = [(date(2026, 5, 1), date(2026, 5, 31)), (date(2026, 6, 1), date(2026, 6, 1))]
    assert block_sums([date(2026, 6, 1)], [[1, 2, 3, 4, 5]], blocks)[:, 0].tolist() == [0, 1, 0]


@given(runs, st.integers(0, 400), st.integers(0, 120))
def test_a_build_up_starts_at_zero_never_falls_and_ends_at_the_blocks_sum(
    season: list[tuple[date, tuple[float, ...]]], begin: int, length: int
) -> None:
    when, table = split(season)
    first = FIRST + timedelta(days=begin)
    last = first + timedelta(days=length)
    rising = cumulative_by_day(when, table, first, last)
    assert rising.shape == (length + 2, 5)
    assert (rising[0] == 0).all()
    assert (np.diff(rising, axis=0) >= 0).all()
    assert rising[-1] == pytest.approx(block_sums(when, table, [(first, last)])[0])
    by_day = season_sums(when, table, "day")
    for k in range(length + 1):
        step = by_day.get(first + timedelta(days=k), np.zeros(5))
        assert rising[k + 1] - rising[k] == pytest.approx(step, abs=1e-6)


def test_sums_by_any_key() -> None:
    sums = sums_by(["b", "a", "b"], [[1, 10], [2, 20], [4, 40]])
    assert list(sums) == ["b", "a"]
    assert sums["b"].tolist() == [5, 50]


def test_a_season_without_runs() -> None:
    assert season_sums([], np.zeros((0, 5)), "week") == {}
    assert block_sums([], np.zeros((0, 5)), [(FIRST, FIRST)]).tolist() == [[0] * 5] * 2
    assert cumulative_by_day([], np.zeros((0, 5)), FIRST, FIRST).tolist() == [[0] * 5] * 2


def test_share_of_easy_leaves_out_what_was_not_judged() -> None:
    assert easy_share([80, 5, 15, 1000, 1000]) == pytest.approx(0.8)
    assert easy_share([80, 5, 15]) == pytest.approx(0.8)
    assert easy_share([0, 0, 0, 60, 60]) is None
