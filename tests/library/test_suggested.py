"""Next week's advice as lines of the plan: no more than advised, nothing doubled."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.library.spans import MONDAY, run, view_of

from tercet.library import insight, operations, season, suggested
from tercet.library.library import Library
from tercet.library.next_week import Amounts, next_week
from tercet.library.plans import understand
from tercet.store import plan_queries

WEEK = MONDAY + timedelta(days=28)


def lately(days: tuple[int, ...] = (0, 2, 4, 6)) -> list:
    return [
        run(10 * week + k, 7 * week + day, 80 if day == 6 else 45)
        for week in range(4)
        for k, day in enumerate(days)
    ]


@settings(max_examples=60, deadline=None)
@given(
    st.integers(0, 20), st.integers(0, 60), st.integers(0, 60), st.integers(1, 4),
    st.sets(st.integers(0, 6), min_size=1),
)  # fmt: skip
def test_never_more_than_advised_and_on_usual_days(
    quarters: int, moderate: int, hard: int, spacing: int, days: set[int]
) -> None:
    free = WEEK + timedelta(days=2)
    amounts = Amounts(WEEK, 900.0 * quarters, 60.0 * moderate, 60.0 * hard, free)
    runs = lately(tuple(sorted(days)))
    made = suggested.lines(amounts, runs, (), spacing)
    told = [(item.day, understand(item.notation, None)) for item in made]
    assert all(not sense.unclear for _, sense in told)
    assert sum(sense.seconds[0] for _, sense in told) <= amounts.easy + 1
    assert sum(sense.seconds[1] for _, sense in told) <= amounts.moderate + 1
    assert sum(sense.seconds[2] for _, sense in told) <= amounts.hard + 1
    assert all(day.weekday() in days for day, _ in told)
    assert len({day for day, _ in told}) == len(told)
    longest = max(item.running_s for item in runs)
    assert all(sum(sense.seconds[:3]) <= 1.1 * longest + 1 for _, sense in told)
    worked = sorted(day for day, sense in told if sense.seconds[1] + sense.seconds[2] > 0)
    assert all((b - a).days >= max(2, spacing) for a, b in pairwise(worked))
    assert all(day >= free for day in worked)


def test_no_block_asks_for_easy_running_alone() -> None:
    runs = lately()
    told = next_week(view_of(runs), tuple(runs), 2)
    assert told.amounts is not None
    made = suggested.lines(told.amounts, runs, (), 2)
    assert [item.notation for item in made][-1].endswith("min easy")
    assert all(" x " not in item.notation for item in made)


def test_pressed_twice_nothing_is_doubled_and_one_undo_takes_it_back(
    season_library: Library,
) -> None:
    today = date(2026, 5, 10)

    def page() -> insight.MiddlePage:
        view = season_library.call(season.season, today)
        return season_library.call(insight.middle_page, view, "")

    first = page()
    assert first.suggested
    before = season_library.call(plan_queries.planned)
    season_library.call(suggested.plan, first.suggested)
    season_library.call(suggested.plan, first.suggested)
    planned = season_library.call(plan_queries.planned)
    assert len(planned) == len(before) + len(first.suggested)
    assert page().suggested == ()
    season_library.call(operations.undo)
    assert season_library.call(plan_queries.planned) == before
