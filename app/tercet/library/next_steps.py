"""What stands out, answered by one line of the plan for the week to come; never written twice."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import timedelta
from statistics import median

from tercet.domain import Changes, Planned
from tercet.engine import load
from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.library import operations, suggested
from tercet.library.figures import Span
from tercet.library.next_week import LATELY, NextWeek
from tercet.library.standing import Remark, Step
from tercet.library.views import PlannedView, SeasonView, SessionView
from tercet.store import plan_queries
from tercet.store.database import Store

#: A first dose of hard running, two minutes of it (common practice, no source).
STRIDES, STRIDES_S = "6 x 20 s fast / 60 s jog", 480.0
#: Hard running planned from which a week holds its strides. [s]
HARD_S = 60.0
#: Easy running before strides at least, and after them. [s]
BEFORE_S, AFTER_S = 900.0, 300.0
REST = "rest"


def with_plans(
    remarks: Sequence[Remark],
    span: Span,
    view: SeasonView,
    week: NextWeek,
    record: Sequence[SessionView],
    spacing: int,
) -> tuple[Remark, ...]:
    """Give remarks a step that writes their answer into the plan, where one makes sense.

    Only what goes on is answered: the stretch holds the latest run, and that is of late. Where the
    plan holds the answer already, the step leads there instead.

    Parameters
    ----------
    remarks : sequence of Remark
        Of the stretch.
    span : Span
    view : SeasonView
    week : NextWeek
        What the week to come asks for.
    record : sequence of SessionView
        All running, oldest first.
    spacing : int
        Least days from one hard day to the next.
    """
    lately = [run for run in record if 0 <= (view.today - run.day).days < LATELY]
    if not lately or not span.runs or span.runs[-1].id != lately[-1].id:
        return tuple(remarks)
    ahead = _Ahead(view, week, lately, spacing)
    return tuple(_answered(remark, ahead) for remark in remarks)


def plan(store: Store, step: Step) -> Changes:
    """Write a step's line into the plan, as one undo step; a line that its day has is left out."""
    fresh = [line for line in step.lines if line.id is None]
    longer = {line.id: line for line in step.lines if line.id is not None}
    with store.atomic(step.words):
        operations.plan_fresh(store, fresh)
        for old in plan_queries.planned(store, list(longer)) if longer else ():
            line = longer[old.id or 0]
            if line.notation.startswith(old.notation):  # as it was when the step was offered
                store.put("planned", plan_queries.planned_row(line))
    return Changes(plan=True, step=step.words)


class _Ahead:
    """The week to come: what it holds, which days are usual and free, how long runs are lately."""

    def __init__(
        self, view: SeasonView, week: NextWeek, lately: Sequence[SessionView], spacing: int
    ) -> None:
        self.today, self.first_day, self.amounts = view.today, week.first_day, week.amounts
        self.lately, self.spacing = lately, spacing
        last = self.first_day + timedelta(days=6)
        self.planned = [item for item in view.planned if self.today < item.day <= last]
        self.races = {race.day for race in view.races}
        block = next((b for b in view.blocks if b.start <= self.first_day <= b.end), None)
        self.recovers = block is not None and block.kind == "recovery"
        taken = {item.day for item in self.planned} | self.races
        self.usual = suggested.usual_days(self.first_day, lately)
        self.free = [day for day in self.usual if day not in taken]
        soon = [self.today + timedelta(days=k) for k in range(1, (last - self.today).days + 1)]
        self.open_days = [day for day in soon if day not in taken]

    @property
    def of_week(self) -> list[PlannedView]:
        """What the week itself holds, without the days before it."""
        return [item for item in self.planned if item.day >= self.first_day]

    @property
    def easy_s(self) -> float:
        """How long easy runs are lately, in steps, and no more than the week still asks for. [s]"""
        calm = [run.running_s for run in self.lately if run.seconds[2] < load.HARD_SESSION_S]
        length = median(calm or [run.running_s for run in self.lately])
        if self.amounts is not None:
            length = min(length, self.amounts.easy - sum(item.seconds[0] for item in self.of_week))
        return length // suggested.STEP_S * suggested.STEP_S


def _answered(remark: Remark, ahead: _Ahead) -> Remark:
    answer = _ANSWERS.get(remark.key)
    if answer is None:
        return remark
    words, find = answer
    found = find(remark, ahead)
    if found is None:
        return remark
    step = Step(tr(words), "write", tuple(found))
    if not found:
        step = Step(tr("Open the plan"), f"plan:{ahead.first_day}")
    return replace(remark, steps=(*remark.steps, step))


#: Lines to write; none where the plan holds the answer, None where there is nothing to plan.
_Lines = list[Planned] | None


def _easy_run(remark: Remark, ahead: _Ahead) -> _Lines:
    """An easy run on the weekday on which most moderate running was done lately."""
    if any(item.state != "rest" and not _work(item) for item in ahead.of_week):
        return []
    if not ahead.free or ahead.easy_s < suggested.LEAST_EASY_S:
        return [] if ahead.of_week else None
    day = suggested.by_work(ahead.free, ahead.lately, Shade.MODERATE)[0]
    return [Planned(day, f"{ahead.easy_s / 60:.0f} min easy")]


def _strides(remark: Remark, ahead: _Ahead) -> _Lines:
    """Strides after easy running, on a day far enough from other hard ones."""
    if ahead.recovers:
        return None
    if any(item.seconds[2] >= HARD_S for item in ahead.planned):
        return []
    worked = [item.day for item in ahead.planned if _work(item)] + [
        race for race in ahead.races if ahead.today < race
    ]
    not_before = ahead.amounts.not_before if ahead.amounts is not None else ahead.first_day
    day = suggested.day_for_work(ahead.free, worked, not_before, ahead.spacing)
    if day is not None:
        length = max(ahead.easy_s - STRIDES_S - AFTER_S, BEFORE_S) // 300 * 300
        return [Planned(day, f"{length / 60:.0f} min easy, {STRIDES}, {AFTER_S / 60:.0f} min easy")]
    alone = {
        item.day: item
        for item in ahead.of_week
        if item.seconds[0] >= BEFORE_S and not _work(item) and item.day not in ahead.races
    }
    day = suggested.day_for_work(sorted(alone), worked, not_before, ahead.spacing)
    if day is None:
        return None
    old = alone[day]
    return [Planned(day, f"{old.notation}, {STRIDES}", old.place, old.note, old.id)]


def _long_run(remark: Remark, ahead: _Ahead) -> _Lines:
    """The next long run as long as the longest before the leap; a race is followed by none."""
    leaps = [run for run in ahead.lately if run.id in remark.runs and run.day not in ahead.races]
    before = [run.running_s for run in ahead.lately if run.id not in remark.runs]
    if not leaps or not before:
        return None
    length = max(before) // suggested.STEP_S * suggested.STEP_S
    if any(item.running_s >= length for item in ahead.of_week):
        return []
    if not ahead.free or length < suggested.LEAST_EASY_S:
        return None
    day = suggested.long_day(ahead.free, ahead.lately)
    return [Planned(day, f"{length / 60:.0f} min easy")]


def _day_off(remark: Remark, ahead: _Ahead) -> _Lines:
    """The next day without a plan, where running has gone on until now."""
    last = max(run.day for run in ahead.lately)
    if remark.key == "no rest" and not (
        ahead.lately[-1].id in remark.runs and (ahead.today - last).days <= 1
    ):
        return None
    if any(item.state == "rest" for item in ahead.planned):
        return []
    return [Planned(ahead.open_days[0], REST)] if ahead.open_days else None


def _work(item: PlannedView) -> bool:
    return item.seconds[1] + item.seconds[2] >= suggested.LEAST_WORK_S


_ANSWERS: dict[str, tuple[str, Callable[[Remark, _Ahead], _Lines]]] = {
    "never easy": (mark("Plan an easy run"), _easy_run),
    "easy short": (mark("Plan an easy run"), _easy_run),
    "middle": (mark("Plan an easy run"), _easy_run),
    "never hard": (mark("Plan strides"), _strides),
    "longer": (mark("Plan a long run as before"), _long_run),
    "no rest": (mark("Plan a day off"), _day_off),
    "monotony": (mark("Plan a day off"), _day_off),
}
