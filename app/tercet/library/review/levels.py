"""Thresholds over time and the races run, and the best of the season."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from tercet.domain import DatedThresholds, Race
from tercet.language import tr
from tercet.library.engine_words import worded
from tercet.library.review import figures
from tercet.library.review.blocks import months
from tercet.library.review.content import Page, Table
from tercet.library.review.overview import runs_of
from tercet.library.review.pictures import Facts, Level, LevelPicture
from tercet.library.review.work import Set, fastest
from tercet.library.views import SeasonView, SessionView
from tercet.store.database import Store

#: A run this much longer than the race holds warm-up, and its fastest stretch was the race.
CLOSE = 0.03


@dataclass(frozen=True)
class Result:
    """A race that was run: its time [s], exact as the recording or the fastest stretch of it."""

    run_id: int
    race: Race
    seconds: float
    exact: bool

    @property
    def words(self) -> str:
        """The time as it is written."""
        return figures.about(figures.duration(self.seconds), estimated=not self.exact)


def results(store: Store, view: SeasonView, races: Sequence[Race]) -> dict[int, Result]:
    """Times of races by their id: the longest run of the day, if it is long enough."""
    out = {}
    for race in races:
        runs = [s for s in view.sessions if s.day == race.day and s.sport == "running"]
        longest = max(runs, key=lambda session: session.distance_m, default=None)
        if longest is None or race.distance_m is None or race.id is None:
            continue
        if abs(longest.distance_m / race.distance_m - 1.0) <= CLOSE:
            out[race.id] = Result(longest.id, race, longest.elapsed_s, True)
            continue
        seconds = fastest(store, longest.id, race.distance_m)
        if seconds is not None:
            out[race.id] = Result(longest.id, race, seconds, False)
    return out


def levels(
    view: SeasonView,
    entries: Sequence[DatedThresholds],
    races: Sequence[Race],
    ran: Mapping[int, Result],
    units: str,
) -> Page:
    """LT1 and LT2 as flat steps, a race where its pace stood."""
    first = view.blocks[0].start if view.blocks else view.today
    last = min(view.blocks[-1].end, view.today) if view.blocks else view.today
    last = max(last, first)
    used = _in_view(entries, first, last)
    rows: list[tuple[str, ...]] = []
    behind: list[tuple[int, ...]] = []
    for entry in used:
        values = entry.values
        rows.append(
            (
                figures.day(entry.start),
                tr("thresholds, {source}", source=worded(entry.source)),
                *(
                    figures.NOTHING
                    if speed is None
                    else figures.about(figures.pace(speed, units), estimated=entry.estimated)
                    for speed in (values.lt1_speed, values.lt2_speed)
                ),
                *(
                    figures.NOTHING
                    if beats is None
                    else figures.about(f"{beats:.0f} /min", estimated=entry.estimated)
                    for beats in (values.lt1_hr, values.lt2_hr)
                ),
                figures.NOTHING,
            )
        )
        behind.append(())
    marks = []
    for race in races:
        if not first <= race.day <= last:
            continue
        found = ran.get(race.id or 0)
        time = figures.NOTHING if found is None else found.words
        speed = None
        if found is not None and race.distance_m is not None:
            speed = race.distance_m / found.seconds
        said = "" if found is None else time
        marks.append((race.day.toordinal() + 0.5, speed, race.name, said, len(rows)))
        rows.append((figures.day(race.day), race.name, *(figures.NOTHING,) * 4, time))
        behind.append(() if found is None else (found.run_id,))
    levels = tuple(_level(name, field, used, first, units) for name, field in _FIELDS)
    drawable = any(level.steps for level in levels) or any(mark[1] is not None for mark in marks)
    return Page(
        "levels",
        tr("Thresholds and races"),
        _title(used, marks, units),
        tr("The paces of both thresholds, faster is higher. A dot is a race at its pace."),
        LevelPicture(
            float(first.toordinal()),
            float(last.toordinal() + 1),
            levels,
            tuple(marks),
            months(first, last),
        )
        if drawable
        else None,
        Table(
            (
                tr("day"),
                tr("what"),
                tr("LT1 pace"),
                tr("LT2 pace"),
                tr("LT1 heart rate"),
                tr("LT2 heart rate"),
                tr("time"),
            ),
            tuple(rows),
            frozenset({0, 1}),
            tuple(behind),
        ),
        missing=""
        if any(entry.values.lt2_speed or entry.values.lt1_speed for entry in used)
        else tr("This page needs thresholds with a pace."),
    )


_FIELDS = (("LT1", "lt1_speed"), ("LT2", "lt2_speed"))


def _in_view(entries: Sequence[DatedThresholds], first: date, last: date) -> list[DatedThresholds]:
    ordered = sorted(entries, key=lambda entry: entry.start)
    before = [entry for entry in ordered if entry.start <= first]
    return [*before[-1:], *(entry for entry in ordered if first < entry.start <= last)]


def _level(
    name: str, field: str, used: Sequence[DatedThresholds], first: date, units: str
) -> Level:
    steps = []
    for entry in used:
        speed = getattr(entry.values, field)
        if speed is not None:
            words = figures.about(figures.pace(speed, units), estimated=entry.estimated)
            day = float(max(entry.start, first).toordinal())
            steps.append((day, float(speed), words))
    return Level(name, tuple(steps))


def _title(
    used: Sequence[DatedThresholds],
    marks: Sequence[tuple[float, float | None, str, str, int]],
    units: str,
) -> str:
    known = [entry for entry in used if entry.values.lt2_speed is not None]
    if len(known) >= 2:
        a, b = known[0], known[-1]
        before = figures.pace(a.values.lt2_speed or 0.0, units)
        after = figures.pace(b.values.lt2_speed or 0.0, units)
        estimated = a.estimated or b.estimated
        last = figures.about(after, estimated=estimated)
        if before != after:
            first = figures.about(before.partition(" ")[0], estimated=estimated)
            return tr("LT2 went from {first} to {last}", first=first, last=last)
        return tr("LT2 stayed at {pace}", pace=last)
    if known:
        only = figures.pace(known[0].values.lt2_speed or 0.0, units)
        only = figures.about(only, estimated=known[0].estimated)
        return tr("LT2 stood at {pace}", pace=only)
    return tr("Thresholds and races")


def best(view: SeasonView, found: Sequence[Set], ran: Mapping[int, Result], units: str) -> Page:
    """Longest run and week, the fastest session of each kind of repetition, races by their time."""
    rows: list[tuple[str, str, str]] = []
    behind: list[tuple[int, ...]] = []
    sessions = [s for s in view.sessions if s.sport == "running"]
    if sessions:
        longest = max(sessions, key=lambda s: s.running_s)
        rows.append(
            (figures.hours(longest.running_s), tr("longest run by time"), figures.day(longest.day))
        )
        behind.append((longest.id,))
        farthest = max(sessions, key=lambda s: s.distance_m)
        rows.append(
            (
                figures.distance(farthest.distance_m, units),
                tr("longest run by distance"),
                figures.day(farthest.day),
            )
        )
        behind.append((farthest.id,))
        weeks = _whole_weeks(view)
        first_day = max(weeks, key=lambda day: sum(s.running_s for s in weeks[day]))
        rows.append(
            (
                figures.hours(sum(s.running_s for s in weeks[first_day])),
                tr("longest week"),
                tr("week of {day}", day=figures.day(first_day)),
            )
        )
        behind.append(tuple(s.id for s in weeks[first_day]))
    kinds: dict[str, list[Set]] = {}
    for item in found:
        kinds.setdefault(item.kind, []).append(item)
    for kind, items in sorted(kinds.items(), key=lambda pair: -len(pair[1]))[:3]:
        quick = max(items, key=lambda item: item.speed)
        words = tr("mean of {n} × {kind}", n=len(quick.metres), kind=kind)
        rows.append((figures.pace(quick.speed, units), words, figures.day(quick.day)))
        behind.append((quick.run_id,))
    for made in ran.values():
        rows.append((made.words, made.race.name, figures.day(made.race.day)))
        behind.append((made.run_id,))
    title = tr("Best of the season")
    if rows:
        title = tr(
            "The longest run took {run}, the longest week {week}",
            run=rows[0][0],
            week=rows[2][0],
        )
    return Page(
        "best",
        tr("Best of the season"),
        title,
        tr("The most and the fastest of these weeks, each with its day."),
        Facts(tuple(rows[:8])),
        Table(
            (tr("figure"), tr("what"), tr("when")),
            tuple(rows[:8]),
            frozenset({1, 2}),
            tuple(behind[:8]),
        ),
        missing="" if rows else tr(figures.NOTHING_RUN),
    )


def _whole_weeks(view: SeasonView) -> dict[date, list[SessionView]]:
    """Running by Monday, weeks that two blocks share put together."""
    out: dict[date, list[SessionView]] = {}
    for block in view.blocks:
        for week in block.weeks:
            out.setdefault(week.first_day, []).extend(runs_of(week))
    return out
