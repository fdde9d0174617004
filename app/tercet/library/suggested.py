"""Next week's advice as planned sessions: days, lines in the paper log's notation, one step."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date, timedelta

from tercet.domain import Changes, Planned
from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.library import operations
from tercet.library.next_week import LATELY, Amounts, NextWeek
from tercet.library.plan_against import planned_in
from tercet.library.views import PlannedView, SeasonView, SessionView
from tercet.store.database import Store

#: Warm-up, cool-down; the least easy run and the least hard or moderate worth a line. [s]
#: All from here to the weight of a long run: common practice, no source.
BEFORE_S, AFTER_S, LEAST_EASY_S, LEAST_WORK_S = 900.0, 600.0, 1200.0, 240.0
#: A repetition, short as a base asks for, and the easy running after it. [s]
FAST_S, EASE_S = 40.0, 80.0
#: Most of one session, the rest stays undone: repetitions, sets in the week, moderate running [s].
MOST_FAST, MOST_SETS, MOST_STEADY_S = 15, 2, 1800.0
#: Easy lengths are written in steps of this. [s]
STEP_S = 300.0
#: A long run is this many times an even share of the easy running.
LONG = 1.5
MOST_DAYS = 6
NAME = mark("Plan the week as suggested")


def lines(
    amounts: Amounts,
    lately: Sequence[SessionView],
    planned: Sequence[PlannedView],
    spacing: int,
) -> tuple[Planned, ...]:
    """Lay next week's amounts on the days usually run.

    Days that hold a plan stay as they are, and what they hold is taken off first: laid a second
    time, nothing is left to lay.

    Parameters
    ----------
    amounts : Amounts
        Of the week [s].
    lately : sequence of SessionView
        The last four weeks of running.
    planned : sequence of PlannedView
        What the week already holds.
    spacing : int
        Least days from one hard day to the next.
    """
    easy, moderate, hard = (
        wanted - sum(item.seconds[k] for item in planned)
        for k, wanted in enumerate((amounts.easy, amounts.moderate, amounts.hard))
    )
    taken = {item.day for item in planned}
    worked = [item.day for item in planned if item.seconds[1] + item.seconds[2] >= LEAST_WORK_S]
    usual = usual_days(amounts.first_day, lately)
    free = [day for day in usual if day not in taken]
    out: list[Planned] = []
    most = 1.1 * max(run.running_s for run in lately) - BEFORE_S - AFTER_S
    count = int(min(hard, MOST_SETS * MOST_FAST * FAST_S) / FAST_S)
    sets = [min(count, MOST_FAST), max(0, count - MOST_FAST)]
    for fast, steady in [(reps, 0.0) for reps in sets] + [(0, min(moderate, MOST_STEADY_S))]:
        room = easy - BEFORE_S - AFTER_S
        fast = min(fast, int(room / EASE_S), int(most / (FAST_S + EASE_S)))
        seconds = fast * FAST_S or min(steady, most) // 60 * 60
        usual_first = by_work(free, lately, Shade.HARD if fast else Shade.MODERATE)
        day = day_for_work(usual_first, worked, amounts.not_before, spacing)
        if seconds < LEAST_WORK_S or day is None or room < 0:
            continue
        work = f"{fast} x {FAST_S:.0f} s fast / {EASE_S:.0f} s jog"
        work = work if fast else f"{seconds / 60:.0f} min moderate"
        out.append(Planned(day, f"15 min easy, {work}, 10 min easy"))
        free.remove(day)
        worked.append(day)
        easy -= BEFORE_S + AFTER_S + fast * EASE_S
    return tuple(sorted([*out, *_easy(easy, free, lately)], key=lambda item: item.day))


def of_week(
    view: SeasonView, week: NextWeek, record: Sequence[SessionView], spacing: int
) -> tuple[Planned, ...]:
    """Lines for the week to come of a season; none where nothing is suggested, or on race days."""
    lately = [run for run in record if 0 <= (view.today - run.day).days < LATELY]
    if week.amounts is None or not lately:
        return ()
    last = week.first_day + timedelta(days=6)
    planned = planned_in(view, week.first_day, last)
    races = {race.day for race in view.races}
    wanted = lines(week.amounts, lately, planned, spacing)
    return tuple(item for item in wanted if item.day not in races)


def plan(store: Store, wanted: Sequence[Planned]) -> Changes:
    """Put lines into the plan, in one undo step; a line that its day has is left out."""
    step = tr(NAME)
    with store.atomic(step):
        operations.plan_fresh(store, wanted)
    return Changes(plan=True, step=step)


def by_work(free: Sequence[date], lately: Sequence[SessionView], shade: Shade) -> list[date]:
    """Days by how much of a shade was run on their weekday lately, the most first."""
    run = dict.fromkeys(range(7), 0.0)
    for item in lately:
        run[item.day.weekday()] += item.seconds[shade]
    return sorted(free, key=lambda day: (-run[day.weekday()], day))


def day_for_work(
    free: Sequence[date], worked: Sequence[date], not_before: date, spacing: int
) -> date | None:
    """The first of the days that lies far enough from every day of work; None where none does."""
    far = max(2, spacing)
    fit = (
        day
        for day in free
        if day >= not_before and all(abs((day - other).days) >= far for other in worked)
    )
    return next(fit, None)


def usual_days(first: date, lately: Sequence[SessionView]) -> list[date]:
    """Days of the week from ``first`` on which running is usual, as many as there usually are."""
    counts = Counter(day.weekday() for day in {run.day for run in lately})
    wanted = max(1, min(MOST_DAYS, round(sum(counts.values()) * 7 / LATELY)))
    days = [first + timedelta(days=k) for k in range(7)]
    return sorted(sorted(days, key=lambda day: (-counts[day.weekday()], day))[:wanted])


def _easy(seconds: float, free: Sequence[date], lately: Sequence[SessionView]) -> list[Planned]:
    """Easy runs on the days that are left: one longer, none over a tenth above the longest."""
    count = min(len(free), int(seconds / LEAST_EASY_S))
    if count <= 0:
        return []
    most = 1.1 * max(run.running_s for run in lately)
    longest = long_day(free, lately)
    days = sorted([longest, *[day for day in free if day != longest][: count - 1]])
    long = min(most, LONG * seconds / (count + LONG - 1.0))
    other = min(most, (seconds - long) / (count - 1)) if count > 1 else 0.0
    out = []
    for day in days:
        length = (long if day == longest else other) // STEP_S * STEP_S
        if length >= LEAST_EASY_S:
            out.append(Planned(day, f"{length / 60:.0f} min easy"))
    return out


def long_day(free: Sequence[date], lately: Sequence[SessionView]) -> date:
    """The free day whose runs were the longest lately."""
    longest = {
        day: max((run.running_s for run in lately if run.day.weekday() == day.weekday()), default=0)
        for day in free
    }
    return max(free, key=lambda day: (longest[day], day))
