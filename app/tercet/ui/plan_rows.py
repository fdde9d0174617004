"""The weeks of the season plan, one row each, with the block each belongs to; no Qt."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from tercet import week_days
from tercet.engine.countback import preparation_weeks
from tercet.engine.shades import easy_share
from tercet.language import mark, tr
from tercet.library.planning import SEASON_DAYS
from tercet.library.views import BlockView, Five, RaceView, SeasonView, WeekView

DAY = timedelta(days=1)
#: Longer seasons show their last weeks.
MOST_WEEKS = 60
#: So many weeks after all that is planned are there to plan on, once the race is run.
ROOM_WEEKS = 4
#: More weeks of preparation than this are remarked (common practice, no source).
COMMON_WEEKS = 12
#: Shorter gaps between blocks are not named. [days]
LEAST_GAP = 4
#: Taken for a runner's speed where nothing was run yet, to turn metres into time. [m/s]
USUAL_SPEED = 2.8

#: What a kind of block is called, by its key.
KIND_WORDS = {
    "base": mark("base"),
    "support": mark("support"),
    "specific": mark("specific"),
    "taper": mark("taper"),
    "race week": mark("race week"),
    "recovery": mark("recovery"),
}


def kind_words(kind: str) -> str:
    """What a kind of block is called."""
    return tr(KIND_WORDS.get(kind, kind))


@dataclass(frozen=True)
class Span:
    """A block's days on the plan; gaps between blocks are spans without an id."""

    id: int | None
    name: str
    kind: str
    start: date
    end: date


@dataclass(frozen=True)
class WeekRow:
    """One week of the plan: what was run, what is planned by line, what is wanted."""

    first_day: date
    to_go: int | None  # weeks to the main race, 0 in its week; None after it or without one
    run: Five
    planned: Five
    planned_s: float
    wanted_s: float | None
    wanted: tuple[float, float, float]  # wanted shares
    races: tuple[str, ...]
    state: str  # "run", "now", "to come"
    by_day: tuple[Five, ...]  # run on each of the seven days

    @property
    def run_s(self) -> float:
        """Running time [s]."""
        return sum(self.run[:3]) + self.run[4]

    @property
    def plan_s(self) -> float:
        """What the week should come to: its planned sessions, else the block's volume [s]."""
        return self.planned_s or self.wanted_s or 0.0

    @property
    def plan(self) -> Five:
        """The same by shade."""
        if self.planned_s:
            return self.planned
        easy, moderate, hard = (share * (self.wanted_s or 0.0) for share in self.wanted)
        return easy, moderate, hard, 0.0, 0.0


@dataclass(frozen=True)
class PlanRows:
    """All that the plan's list draws."""

    weeks: tuple[WeekRow, ...]
    spans: tuple[Span, ...]  # oldest first, without gaps
    race: RaceView | None
    today: date

    def span_at(self, day: date) -> Span | None:
        """The span that holds a day."""
        return next((span for span in self.spans if span.start <= day <= span.end), None)

    def span_of(self, week: WeekRow) -> Span | None:
        """The span that holds most of a week: that of its middle day, else of any of its days."""
        days = (week.first_day + k * DAY for k in (3, 0, 6))
        return next((span for day in days if (span := self.span_at(day)) is not None), None)

    def moved(self, first: int, weeks: int) -> PlanRows:
        """The same with the edge after a span moved by whole weeks.

        A block keeps a day at least, a gap none.
        """
        one, two = self.spans[first], self.spans[first + 1]
        low = one.start + (DAY if one.id is not None else 0 * DAY)
        high = two.end + (DAY if two.id is None else 0 * DAY)
        edge = _toward(two.start, weeks, low, high)
        spans = list(self.spans)
        spans[first], spans[first + 1] = replace(one, end=edge - DAY), replace(two, start=edge)
        return replace(self, spans=tuple(spans))

    def shifted(self, block_id: int, weeks: int) -> PlanRows:
        """The same with a block moved whole by weeks; its neighbours end before and begin after."""
        at = next(k for k, span in enumerate(self.spans) if span.id == block_id)
        before, span, after = self.spans[:at], self.spans[at], self.spans[at + 1 :]
        first, last = self.weeks[0].first_day, self.weeks[-1].first_day + 6 * DAY
        length = span.end - span.start
        low = _room(before[-1:], lambda one: one.start, DAY) or min(first, span.start)
        high = (_room(after[:1], lambda one: one.end, -DAY) or max(last, span.end)) - length
        start = _toward(span.start, weeks, low, high)
        moved = replace(span, start=start, end=start + length)
        left = (*before[:-1], *(replace(one, end=start - DAY) for one in before[-1:]))
        right = (*(replace(one, start=moved.end + DAY) for one in after[:1]), *after[1:])
        if not before and start > span.start:
            left = (Span(None, tr("unplanned"), "", span.start, start - DAY),)
        if not after and start < span.start:
            right = (Span(None, tr("unplanned"), "", moved.end + DAY, span.end),)
        return replace(self, spans=(*left, moved, *right))

    def run_in(self, span: Span) -> Five:
        """Seconds by shade run within a span."""
        return _sum(
            day
            for week in self.weeks
            for k, day in enumerate(week.by_day)
            if span.start <= week.first_day + k * DAY <= span.end
        )

    def easy_in(self, span: Span) -> float | None:
        """Share of easy run within a span."""
        return easy_share(self.run_in(span))

    def remark(self) -> str:
        """What rule the plan passes, in a sentence; nothing if none."""
        if self.race is None:
            return ""
        spans = [(s.kind, s.start, s.end) for s in self.spans if s.id is not None]
        count = preparation_weeks(spans, self.race.day, week_days.first_weekday())
        if count > COMMON_WEEKS:
            return tr("{n} weeks after base; {common} is common.", n=count, common=COMMON_WEEKS)
        return ""


def _toward(day: date, weeks: int, low: date, high: date) -> date:
    """A day moved by whole weeks, as many of them as stay within two days."""
    step = 7 * DAY if weeks > 0 else -7 * DAY
    for _ in range(abs(weeks)):
        if not low <= day + step <= high:
            break
        day += step
    return day


def _room(beside: Sequence[Span], end: Callable[[Span], date], least: timedelta) -> date | None:
    """How far a neighbour gives way: a block keeps a day, a gap none; ``None`` without one."""
    for one in beside:
        return end(one) + (least if one.id is not None else 0 * DAY)
    return None


def _sum(parts: object) -> Five:
    total = [0.0] * 5
    for part in parts:  # type: ignore[attr-defined]
        total = [a + b for a, b in zip(total, part, strict=True)]
    a, b, c, d, e = total
    return a, b, c, d, e


def main_race(view: SeasonView) -> RaceView | None:
    """The race the season leads to: the one marked, else the last one to come, else the last.

    Of several marked, one a season, it is the next to come, else the last, unless a race of
    a later season is known.
    """
    marked = [race for race in view.races if race.main]
    to_come = [race for race in marked if race.day >= view.today][:1]
    known = [race for race in view.races if race.day >= view.today] or view.races
    run = [race for race in marked[-1:] if known[-1].day - race.day < SEASON_DAYS]
    return next(iter((*to_come, *run, *known[-1:])), None)


def build(view: SeasonView) -> PlanRows:
    """Lay the plan out from the season: every week from its first block to its last or the race."""
    race = main_race(view)
    blocks = [block for block in view.blocks if block.id is not None]
    starts = [block.start for block in view.blocks] + [view.today]
    last = _last_day(view, blocks, race)
    first = max(
        week_days.start_of(min(starts)), week_days.start_of(last) - (MOST_WEEKS - 1) * 7 * DAY
    )
    by_week: dict[date, list[tuple[BlockView, WeekView]]] = {}
    for block in view.blocks:
        for week in block.weeks:
            by_week.setdefault(week.first_day, []).append((block, week))
    speed = _speed(view)
    races: dict[date, list[str]] = {}
    for item in view.races:
        races.setdefault(week_days.start_of(item.day), []).append(item.name)
    rows = tuple(
        _row(first_day, by_week.get(first_day, ()), view.today, race, races, speed)
        for first_day in week_days.starts(first, last)
    )
    end = rows[-1].first_day + 6 * DAY
    return PlanRows(rows, _spans(blocks, first, end), race, view.today)


def _last_day(view: SeasonView, blocks: Sequence[BlockView], race: RaceView | None) -> date:
    """The end of all that is planned; where no race is ahead, with room to plan on."""
    ends = [block.end for block in blocks] + [view.today + 7 * DAY]
    ends += [
        week.first_day + k * DAY
        for block in view.blocks
        if block.end > view.today
        for week in block.weeks
        for k, items in enumerate(week.planned)
        if items
    ]
    if race is not None and race.day > view.today:
        return max(*ends, race.day)
    return max(ends) + ROOM_WEEKS * 7 * DAY


def _speed(view: SeasonView) -> float:
    seconds = sum(sum(block.seconds[:3]) for block in view.blocks)
    metres = sum(sum(block.metres[:3]) for block in view.blocks)
    return metres / seconds if seconds > 0 and metres > 0 else USUAL_SPEED


def _row(
    first_day: date,
    parts: Sequence[tuple[BlockView, WeekView]],
    today: date,
    race: RaceView | None,
    races: Mapping[date, Sequence[str]],
    speed: float,
) -> WeekRow:
    run = _sum(week.seconds for _, week in parts)
    planned = [item for _, week in parts for day in week.planned for item in day]
    wanted = [
        week.wanted if block.measure == "time" else week.wanted / speed
        for block, week in parts
        if week.wanted is not None
    ]
    held = max(parts, key=lambda part: sum(part[1].inside), default=None)
    days = tuple(
        _sum(
            session.seconds
            for _, week in parts
            for session in week.days[k]
            if session.sport == "running"
        )
        for k in range(7)
    )
    this = week_days.start_of(today)
    to_go = (week_days.start_of(race.day) - first_day).days // 7 if race is not None else -1
    return WeekRow(
        first_day,
        to_go if to_go >= 0 else None,
        run,
        _sum(item.seconds for item in planned),
        sum(item.running_s for item in planned),
        sum(wanted) if wanted else None,
        held[0].shares if held is not None else (0.8, 0.05, 0.15),
        tuple(races.get(first_day, ())),
        "now" if first_day == this else "run" if first_day < this else "to come",
        days,
    )


def _spans(blocks: Sequence[BlockView], first: date, end: date) -> tuple[Span, ...]:
    spans: list[Span] = []
    at = first
    for block in blocks:
        if block.end < first:
            continue
        if (block.start - at).days >= LEAST_GAP:
            spans.append(Span(None, tr("unplanned"), "", at, block.start - DAY))
        start = max(block.start, first)
        spans.append(Span(block.id, block.name, block.kind, start, block.end))
        at = block.end + DAY
    if (end - at).days + 1 >= 7:
        spans.append(Span(None, tr("unplanned"), "", at, end))
    return tuple(spans)
