"""The plan of the week to come against what that week asks for: what is named, and what is not."""

from __future__ import annotations

from datetime import date, timedelta

from tercet.library import operations, plan_against, planning, season
from tercet.library.figures import spans
from tercet.library.library import Library
from tercet.library.next_week import next_week
from tercet.library.views import PlannedView

MONDAY = date(2026, 6, 1)
ZERO = (0.0, 0.0, 0.0, 0.0, 0.0)


def planned(day: int, easy: float, moderate: float = 0.0, hard: float = 0.0) -> PlannedView:
    """A planned session of some minutes on a day of the week."""
    seconds = (60.0 * easy, 60.0 * moderate, 60.0 * hard, 0.0, 0.0)
    return PlannedView(day, MONDAY + timedelta(days=day), 0, "", seconds, ZERO, "to run")


def told(items: list[PlannedView], *, free: int = 0, races: tuple[int, ...] = ()) -> list[str]:
    return plan_against.sentences(
        items,
        {MONDAY + timedelta(days=day) for day in races},
        (3 * 3600.0, 600.0, 1200.0),
        MONDAY + timedelta(days=free),
        2,
    )


def test_a_plan_within_the_week_s_bounds_is_not_remarked_upon() -> None:
    assert told([planned(1, 30, 0, 10), planned(3, 50), planned(5, 40, 10, 10)]) == []


def test_hard_days_before_hard_running_is_free_again() -> None:
    (said,) = told([planned(1, 30, 0, 10), planned(4, 30, 0, 10)], free=3)
    assert said == "The plan has a hard day before that: 2 June. Move it, or make it easy."
    (said,) = told([planned(0, 30, 0, 8), planned(1, 30, 0, 8)], free=3)
    assert said.startswith("The plan has 2 hard days before that: 1 June, 2 June.")


def test_a_race_stays_where_it_is() -> None:
    assert told([planned(6, 15, 0, 40)], free=7, races=(6,)) == []


def test_hard_days_too_close_and_too_much_of_a_shade() -> None:
    said = told([planned(1, 30, 24, 10), planned(2, 30, 0, 16)])
    assert said == [
        "The plan's hard days 2 June and 3 June lie closer than 2 days.",
        "The plan holds 0:24 moderate, 0:14 more than the week asks for.",
        "The plan holds 0:26 hard, 0:06 more than the week asks for.",
    ]


def test_next_week_reads_the_plan_of_the_store(season_library: Library) -> None:
    today = date(2026, 5, 10)
    day = date(2026, 5, 13)

    def lines() -> tuple[str, ...]:
        view = season_library.call(season.season, today)
        record = tuple(run for run in spans(view)[0].runs if run.day <= today)
        return next_week(view, record, 2).lines

    before = lines()
    assert not any("The plan holds" in line for line in before)
    season_library.call(planning.add_planned, day, "15 min easy, 2 x 20 min threshold, 10 min easy")
    assert any(line.startswith("The plan holds 0:40 moderate") for line in lines())
    season_library.call(operations.undo)
    assert lines() == before
