"""Two seasons or blocks side by side, weeks counted back from the race, and years at a glance."""

from __future__ import annotations

import math
import statistics
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from tercet import week_days
from tercet.engine import load
from tercet.language import month, number, tr
from tercet.library.standing import hours
from tercet.library.views import ZERO, BlockView, Five, RaceView, SeasonView, SessionView

DAY = timedelta(days=1)
#: A season reaches back from its race no further than this, and no further than a race before.
MOST_WEEKS = 52
#: A season ends where nothing was run for so long. [days]
BREAK_DAYS = 42
#: A race so near to a main one ends no season. [days]
HALF_YEAR = 182
#: A recording longer than this part of its race holds a warm-up too.
MORE_THAN_RACE = 1.05
#: Years at a glance.
YEARS = 10


@dataclass(frozen=True)
class Past:
    """A season or a block to be laid beside another; ``end`` is its race day where it has one."""

    key: str
    name: str
    start: date
    end: date
    race: RaceView | None
    runs: tuple[SessionView, ...]
    blocks: tuple[BlockView, ...]

    @property
    def seconds(self) -> Five:
        """Sums by shade."""
        return _sum(self.runs)

    @property
    def weeks(self) -> int:
        """Weeks from its first day's to its last day's."""
        return (week_days.start_of(self.end) - week_days.start_of(self.start)).days // 7 + 1


@dataclass(frozen=True)
class WeekBack:
    """A week counted back from the end, 0 the last; ``why`` tells from notes why none was run."""

    to_go: int
    first_day: date
    seconds: Five
    races: tuple[RaceView, ...]
    block: str
    why: str = ""


@dataclass(frozen=True)
class Differs:
    """One difference: the pair of numbers, and a sentence."""

    title: str
    text: str


@dataclass(frozen=True)
class Year:
    """A calendar year's running."""

    year: int
    seconds: Five
    metres: float
    sessions: int
    easy_share: float | None


def pasts(view: SeasonView, by: str = "season") -> list[Past]:
    """Seasons (each up to a race or a long break) or blocks, oldest first.

    Parameters
    ----------
    view : SeasonView
    by : {"season", "block"}
    """
    running = [run for run in view.sessions if run.sport == "running"]
    if not running:
        return []
    if by == "block":
        often = Counter(block.name for block in view.blocks)
        return [
            _past(f"block {block.start.isoformat()}", block.name if often[block.name] == 1 else
                  f"{block.name} {block.start.year}", block.start, block.end, None, running,
                  view.blocks)
            for block in view.blocks
            if any(block.start <= run.day <= block.end for run in running)
        ]  # fmt: skip
    return [
        _past(f"season {end.isoformat()}", _name(race, end), start, end, race, running, view.blocks)
        for start, end, race in _seasons(view, running)
    ]


def _past(
    key: str, name: str, start: date, end: date, race: RaceView | None,
    running: Sequence[SessionView], blocks: Sequence[BlockView],
) -> Past:  # fmt: skip
    return Past(
        key,
        name,
        start,
        end,
        race,
        tuple(run for run in running if start <= run.day <= end),
        tuple(block for block in blocks if block.start <= end and block.end >= start),
    )


def _name(race: RaceView | None, end: date) -> str:
    if race is not None:
        return f"{race.name} {race.day.year}"
    if (end.month, end.day) == (12, 31):
        return str(end.year)
    return tr("To {month} {year}", month=month(end.month), year=end.year)


def _seasons(
    view: SeasonView, running: Sequence[SessionView]
) -> list[tuple[date, date, RaceView | None]]:
    """Spans that end with a main race (any race where none is main), a long break, or a year."""
    marked = [race.day for race in view.races if race.main]
    main = [
        race
        for race in view.races
        if race.main or not any(abs((day - race.day).days) <= HALF_YEAR for day in marked)
    ]
    last = running[-1].day
    # Of several races close together the last one ends the season, unless one is the main one.
    main = [
        race
        for k, race in enumerate(main)
        if race.main or k + 1 == len(main) or (main[k + 1].day - race.day).days > 7 * 12
    ]
    ends: list[tuple[date, RaceView | None]] = [(race.day, race) for race in main]
    ends += [
        (a.day, None)
        for a, b in pairwise(running)
        if (b.day - a.day).days > BREAK_DAYS
        and not any(a.day <= race.day <= b.day for race in main)
    ]
    if not ends or max(end for end, _ in ends) < last:
        ends.append((max(last, min(view.today, last + 7 * DAY)), None))
    out: list[tuple[date, date, RaceView | None]] = []
    begin = running[0].day
    for end, race in sorted(ends, key=lambda pair: pair[0]):
        inside = [run.day for run in running if begin <= run.day <= end]
        if inside:
            out += _whole_or_years(inside, end, race)
        begin = end + DAY
    return out


def _whole_or_years(
    days: Sequence[date], end: date, race: RaceView | None
) -> list[tuple[date, date, RaceView | None]]:
    """A season of at most a year; what lies before it, and long running to no race, by years."""
    most = end - MOST_WEEKS * 7 * DAY + DAY
    if days[0] >= most:
        return [(days[0], end, race)]
    last = end if race is None else most - DAY
    out: list[tuple[date, date, RaceView | None]] = []
    for year in range(days[0].year, last.year + 1):
        first = max(days[0], date(year, 1, 1))
        to = min(last, date(year, 12, 31))
        if any(first <= day <= to for day in days):
            out.append((first, to, None))
    return out if race is None else [*out, (most, end, race)]


def weeks_back(past: Past, races: Sequence[RaceView]) -> list[WeekBack]:
    """A past's weeks, the race's (or last) week first."""
    by_week: dict[date, list[SessionView]] = {}
    for run in past.runs:
        by_week.setdefault(week_days.start_of(run.day), []).append(run)
    last = week_days.start_of(past.end)
    out = []
    for k in range(past.weeks):
        first_day = last - 7 * k * DAY
        runs = by_week.get(first_day, [])
        block = next(
            (b for b in past.blocks if b.start <= first_day + 6 * DAY and b.end >= first_day), None
        )
        out.append(
            WeekBack(
                k,
                first_day,
                _sum(runs),
                tuple(race for race in races if week_days.start_of(race.day) == first_day),
                block.name if block is not None else "",
                "" if runs else _why(past, first_day),
            )
        )
    return out


def _why(past: Past, first_day: date) -> str:
    """A note near a lost week that names an illness or a hurt, in the runner's own words."""
    words = ("flu", "ill", "sick", "cold", "injur", "pain", "covid", "hurt", "fever", "strain")
    for run in past.runs:
        note = run.note.strip()
        if note and abs((run.day - first_day).days - 3) <= 10:
            lower = note.lower()
            if any(f" {word}" in f" {lower}" for word in words):
                return note if len(note) <= 40 else f"{note[:39].rstrip()}…"
    return ""


def differs(a: Past, b: Past, spacing: int = 2) -> list[Differs]:
    """At most five plain differences from one past to another; no better and no worse."""
    out = []
    sa, sb = a.seconds, b.seconds
    ra, rb = sum(sa[:3]), sum(sb[:3])
    if ra <= 0 or rb <= 0:
        return []
    pa, pb = (int(100 * s[0] / r + 0.5) for s, r in ((sa, ra), (sb, rb)))
    out.append(
        Differs(
            tr("Easy share: {before} to {after} %", before=pa, after=pb),
            tr(
                "The middle went from {before} to {after}.",
                before=hours(sa[1]),
                after=hours(sb[1]),
            ),
        )
    )
    more = round(100 * (rb / ra - 1))
    if abs(more) < 3:
        change = tr("About the same")
    elif more > 0:
        change = tr("Up {percent} %", percent=more)
    else:
        change = tr("Down {percent} %", percent=-more)
    if a.weeks == b.weeks:
        lasted = tr("{n} weeks both times", n=a.weeks)
    else:
        lasted = tr("{before} and {after} weeks", before=a.weeks, after=b.weeks)
    longest = [max((run.running_s for run in past.runs), default=0.0) for past in (a, b)]
    out.append(
        Differs(
            tr("Hours: {before} to {after}", before=hours(ra), after=hours(rb)),
            tr(
                "{change}, {weeks}. Longest run {times}.",
                change=change,
                weeks=lasted,
                times=_both(hours(longest[0]), hours(longest[1])),
            ),
        )
    )
    counts = [sum(run.seconds[2] >= 60 for run in past.runs) for past in (a, b)]
    if counts[0] == counts[1]:
        held = tr("In {n} sessions both times.", n=counts[0])
    else:
        held = tr("In {before} and {after} sessions.", before=counts[0], after=counts[1])
    out.append(
        Differs(
            tr("Hard: {before} to {after}", before=hours(sa[2]), after=hours(sb[2])),
            held,
        )
    )
    apart = [_apart(past) for past in (a, b)]
    if apart[0] is not None and apart[1] is not None:
        out.append(
            Differs(
                tr(
                    "Hard days apart: {before} to {after}",
                    before=number(apart[0], 1),
                    after=number(apart[1], 1),
                ),
                tr(
                    "Median days between two hard ones. Set for this runner: {n} or more.",
                    n=spacing,
                ),
            )
        )
    raced = [_raced(past) for past in (a, b)]
    alike = a.race and b.race and a.race.distance_m == b.race.distance_m
    if a.race is not None and b.race is not None and alike and raced[0] and raced[1]:
        out.append(
            Differs(
                tr("Race: {before} to {after}", before=raced[0], after=raced[1]),
                tr(
                    "{races}, as recorded. One race tells little; course and weather differ.",
                    races=_both(a.race.name, b.race.name),
                ),
            )
        )
    return out[:5]


def _both(a: str, b: str) -> str:
    return tr("{it} both times", it=a) if a == b else tr("{first} and {second}", first=a, second=b)


def _apart(past: Past) -> float | None:
    hard = load.hard_days(
        [run.day.toordinal() for run in past.runs], [run.seconds[:3] for run in past.runs]
    )
    gaps = [b - a for a, b in pairwise(hard)]
    return float(statistics.median(gaps)) if gaps else None


def _raced(past: Past) -> str:
    """Recorded time of race day's longest run, or nothing if it held more than the race."""
    if past.race is None:
        return ""
    runs = [run for run in past.runs if run.day == past.race.day]
    if not runs:
        return ""
    raced = max(runs, key=lambda run: run.moving_s)
    if past.race.distance_m and raced.distance_m > MORE_THAN_RACE * past.race.distance_m:
        return ""
    return hours(raced.moving_s)


def years(view: SeasonView) -> list[Year]:
    """The last ten calendar years with running, oldest first."""
    by_year: dict[int, list[SessionView]] = {}
    for run in view.sessions:
        if run.sport == "running":
            by_year.setdefault(run.day.year, []).append(run)
    out = []
    for year in sorted(by_year)[-YEARS:]:
        runs = by_year[year]
        seconds = _sum(runs)
        judged = sum(seconds[:3])
        out.append(
            Year(
                year,
                seconds,
                math.fsum(run.distance_m for run in runs),
                len(runs),
                seconds[0] / judged if judged > 0 else None,
            )
        )
    return out


def _sum(runs: Sequence[SessionView]) -> Five:
    if not runs:
        return ZERO
    a, b, c, d, e = (math.fsum(column) for column in zip(*(r.seconds for r in runs), strict=True))
    return a, b, c, d, e
