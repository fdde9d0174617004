"""What the plan says in words, without a window: allowance, amounts, goals, rows and remarks."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from tercet.engine.allowance import Allowance
from tercet.library.views import BlockView, RaceView, SeasonView, WeekView
from tercet.ui.amounts import amount_of, amount_words
from tercet.ui.goals import goal_of, goal_words
from tercet.ui.plan_allowance import sentences
from tercet.ui.plan_rows import build, main_race

DAY = timedelta(days=1)
MIN = 60.0


@pytest.mark.parametrize(
    ("wanted", "run", "first", "rest"),
    [
        (
            (318, 16, 52),
            (128, 16, 34),
            "18 min hard left this week.",
            "Moderate used up. 3 h 10 easy to go.",
        ),
        ((318, 16, 52), (128, 28, 52), "Hard used up this week.", "Moderate 0:12 over. 3 h 10"),
        ((300, 0, 0), (300, 0, 0), "No hard running is wanted this week.", "Easy is done."),
        ((300, 10, 20), (0, 0, 25), "Hard 0:05 over this week.", "10 min moderate left. 5 h 00"),
    ],
)
def test_a_week_in_words(wanted, run, first: str, rest: str) -> None:
    week = Allowance(tuple(MIN * w for w in wanted), tuple(MIN * r for r in run))
    said = sentences(week, "time")
    assert said[0] == first
    assert rest in said[1]


def test_a_week_in_kilometres() -> None:
    said = sentences(Allowance((50_000, 1_000, 6_000), (30_000, 0, 1_800)), "metres")
    assert said == ("4.2 km hard left this week.", "1.0 km moderate left. 20.0 km easy to go.")


def test_amounts_and_goals_are_read_and_written() -> None:
    assert amount_of("6:20", "time") == 22_800
    assert amount_of("6", "time") == 21_600
    assert amount_of("62,5 km", "metres") == 62_500
    assert amount_of("a lot", "time") is None
    assert amount_words(22_800, "time") == "6:20"
    assert (goal_of("1:24:00"), goal_of("38:30"), goal_of("soon")) == (5040, 2310, None)
    assert goal_words(5040.0) == "1:24:00"


def _block(number: int, kind: str, start: date, weeks: int) -> BlockView:
    made = tuple(
        WeekView(start + 7 * k * DAY, ((),) * 7, (True,) * 7, (0.0,) * 5, (0.0,) * 5)
        for k in range(weeks)
    )
    end = start + (7 * weeks - 1) * DAY
    zero = (0.0,) * 5
    return BlockView(number, kind, kind, start, end, 0.8, made, zero, zero, None)


def test_of_a_main_race_a_year_the_next_one_is_led_to() -> None:
    years = [RaceView(k, date(2025 + k, 6, 1), str(2025 + k), main=True) for k in range(3)]
    side = RaceView(9, date(2026, 5, 1), "On the way")
    races = (years[0], side, *years[1:])

    def led_to(today: date, among: tuple[RaceView, ...]) -> str:
        found = main_race(SeasonView((), among, today, 0, 0, False))
        assert found is not None
        return found.name

    assert led_to(date(2026, 4, 1), races) == "2026"
    assert led_to(date(2028, 1, 1), races) == "2027"
    # A main race of a season before gives way to what is to come, one of this season does not.
    assert led_to(date(2026, 4, 1), races[:2]) == "On the way"
    assert led_to(date(2026, 8, 1), races[:2]) == "On the way"
    late = RaceView(10, date(2026, 7, 1), "Summer mile")
    assert led_to(date(2026, 6, 9), (*races[:3], late)) == "2026"
    assert led_to(date(2026, 4, 1), (side,)) == "On the way"


def test_a_plan_that_passes_twelve_weeks_says_so() -> None:
    start = date(2026, 3, 2)
    base = _block(1, "base", start, 5)
    long = _block(2, "specific", start + 35 * DAY, 12)
    taper = _block(3, "taper", long.end + DAY, 2)
    race = RaceView(1, taper.end, "Half", main=True)
    view = SeasonView((base, long, taper), (race,), start, 0, 0, False)
    rows = build(view)
    assert rows.remark() == "14 weeks after base; 12 is common."
    assert [week.to_go for week in rows.weeks] == list(range(18, -1, -1))
    shorter = rows.moved(0, 2)
    assert shorter.remark() == ""
    assert shorter.spans[1].start == shorter.spans[0].end + DAY
    # An edge never passes the next one.
    assert rows.moved(0, 99).spans[1].end == long.end
