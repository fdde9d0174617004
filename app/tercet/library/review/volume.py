"""Volume, long runs, spacing of hard days, rests, and gaps with what the notes say of them."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from datetime import date, timedelta
from itertools import pairwise

import numpy as np

from tercet.engine import load
from tercet.language import mark, several, tr
from tercet.library.review import figures
from tercet.library.review.content import Page, Table
from tercet.library.review.overview import runs_of, three
from tercet.library.review.pictures import Column, Three, VolumePicture
from tercet.library.views import SeasonView, SessionView

DAY = timedelta(days=1)
#: Days in a row without running that make a gap worth a word.
GAP_DAYS = 4
#: Fewer weeks with running than this have no usual week.
USUAL_FROM = 4
#: Notes this close to a gap are read for its reason.
NEAR = timedelta(days=3)
#: Only the word of the reason goes on the page, never the note itself.
REASONS = (
    (mark("ill"), r"\b(ill|flu|fever|sick|covid|virus|infection|(?:a|bad|head) cold)\b"),
    (mark("hurt"), r"\b(injur\w+|hurt|pain\w*|strain\w*|sprain\w*)\b"),
    (mark("away"), r"\b(travel\w*|holiday\w*|vacation|trip|flight|away)\b"),
    (mark("busy"), r"\b(busy|work|exam\w*)\b"),
)
NO_RUNS = mark("no runs")


def volume(view: SeasonView) -> Page:
    """Weeks as columns, the longest run of each marked, gaps in words."""
    weeks: dict[date, list[SessionView]] = {}
    planned: dict[date, float] = {}
    spans: list[tuple[int, int, str]] = []
    for block in view.blocks:
        at = [week.first_day for week in block.weeks if week.first_day <= view.today]
        for first_day, week in zip(at, block.weeks, strict=False):
            weeks.setdefault(first_day, []).extend(runs_of(week))
            planned[first_day] = planned.get(first_day, 0.0) + week.planned_s
        if at:
            order = list(weeks)
            spans.append((order.index(at[0]), order.index(at[-1]), block.name))
    first_days = list(weeks)
    sessions = [s for runs in weeks.values() for s in runs]
    hard = hard_days(sessions)
    columns, rows, behind = [], [], []
    for first_day in first_days:
        runs = weeks[first_day]
        seconds = _sum(runs)
        ran = sum(session.running_s for session in runs)
        longest = max((session.running_s for session in runs), default=0.0)
        columns.append(Column(seconds, longest, planned[first_day]))
        days = {session.day for session in runs}
        rows.append(
            (
                figures.short_day(first_day),
                figures.hours(ran),
                figures.hours(planned[first_day]) if planned[first_day] else figures.NOTHING,
                figures.hours(longest),
                str(len(days)),
                str(7 - len(days)),
                str(len(days.intersection(hard))),
            )
        )
        behind.append(tuple(session.id for session in runs))
    gaps = [gap for gap in find_gaps(sessions, view) if _inside(gap, view)]
    for first, last, reason in gaps:
        long = (last - first).days + 1
        said = tr("no runs: {reason}", reason=tr(reason)) if reason else tr("no runs")
        since = tr("from {day}", day=figures.short_day(first))
        rows.append((since, said, "", "", "", str(long), ""))
        behind.append(())
    return Page(
        "volume",
        tr("Volume, long runs and rests"),
        _title(first_days, columns, weeks),
        _line(hard, gaps, any(planned.values())),
        VolumePicture(
            tuple(columns),
            tuple(spans),
            tuple(
                (_column(first_days, first + (last - first) / 2), tr(reason or NO_RUNS))
                for first, last, reason in gaps
            ),
            _labels(columns, weeks, first_days),
        ),
        Table(
            (
                tr("week of"),
                tr("hours"),
                tr("planned"),
                tr("longest run"),
                tr("days run"),
                tr("days without"),
                tr("hard days"),
            ),
            tuple(rows),
            frozenset({0}),
            tuple(behind),
        ),
        missing="" if sessions else tr(figures.NOTHING_RUN),
    )


def find_gaps(sessions: Sequence[SessionView], view: SeasonView) -> list[tuple[date, date, str]]:
    """Stretches of four days and more without running: first and last day, and the reason."""
    days = sorted({session.day for session in sessions})
    noted = [(s.day, s.note) for s in view.sessions if s.note]
    out = []
    for before, after in pairwise(days):
        first, last = before + DAY, after - DAY
        if (last - first).days + 1 >= GAP_DAYS:
            near = [note for day, note in noted if first - NEAR <= day <= last + NEAR]
            out.append((first, last, reason_in(near)))
    return out


def reason_in(notes: Sequence[str]) -> str:
    """The first reason that notes name, in one word; empty for none."""
    for word, pattern in REASONS:
        if any(re.search(pattern, note, re.IGNORECASE) for note in notes):
            return word
    return ""


def hard_days(sessions: Sequence[SessionView]) -> list[date]:
    """Days that count as hard, in order."""
    days = [session.day.toordinal() for session in sessions]
    hard = load.hard_days(days, [three(session.seconds) for session in sessions])
    return [date.fromordinal(day) for day in hard]


def _inside(gap: tuple[date, date, str], view: SeasonView) -> bool:
    """Whether every day of a gap lies in a block: between two blocks nothing was to be run."""
    days = (gap[1] - gap[0]).days + 1
    return all(
        any(block.start <= gap[0] + k * DAY <= block.end for block in view.blocks)
        for k in range(days)
    )


def _column(first_days: Sequence[date], day: date) -> float:
    """The place of a day among the columns of weeks."""
    at = max(sum(first_day <= day for first_day in first_days) - 1, 0)
    return at + ((day - first_days[at]).days + 0.5) / 7.0


def _sum(runs: Sequence[SessionView]) -> Three:
    sums = [math.fsum([s.seconds[k] for s in runs]) for k in range(3)]
    return (sums[0], sums[1], sums[2])


def _line(hard: Sequence[date], gaps: Sequence[tuple[date, date, str]], planned: bool) -> str:
    parts = [
        tr("Hours by week, the longest run of each as a bar, the plan as a rule.")
        if planned
        else tr("Hours by week, the longest run of each as a bar.")
    ]
    if len(hard) > 1:
        between = np.array([(b - a).days for a, b in pairwise(hard)])
        close = int((between == 1).sum())
        told = {"n": len(hard), "apart": int(np.median(between)), "close": close}
        if close == 1:
            words = mark("{n} hard days, usually {apart} days apart, 1 time on two days running.")
        elif close:
            words = mark(
                "{n} hard days, usually {apart} days apart, {close} times on two days running."
            )
        else:
            words = mark("{n} hard days, usually {apart} days apart.")
        parts.append(tr(words, **told))
    if gaps:
        parts.append(
            several(
                len(gaps),
                mark("{n} gap of {days} days or more."),
                mark("{n} gaps of {days} days or more."),
                days=GAP_DAYS,
            )
        )
    return " ".join(parts)


def _title(
    first_days: Sequence[date], columns: Sequence[Column], weeks: dict[date, list[SessionView]]
) -> str:
    if not columns:
        return tr("Volume, long runs and rests")
    ran = [sum(s.running_s for s in weeks[first_day]) for first_day in first_days]
    without = any(value <= 0.0 for value in ran)
    ran = [value for value in ran if value > 0.0]
    longest = figures.hours(max(column.longest for column in columns))
    if len(ran) < USUAL_FROM:
        return tr("The longest run took {time}", time=longest)
    middle = figures.hours(float(np.median(ran)))
    if without:
        return tr(
            "A usual week with running held {week}, the longest run took {run}",
            week=middle,
            run=longest,
        )
    return tr("A usual week held {week}, the longest run took {run}", week=middle, run=longest)


def _labels(
    columns: Sequence[Column], weeks: dict[date, list[SessionView]], first_days: Sequence[date]
) -> tuple[tuple[int, str], ...]:
    """Hours over the longest week, and the longest run beside its bar."""
    if not columns:
        return ()
    ran = [sum(s.running_s for s in weeks[first_day]) for first_day in first_days]
    most = int(np.argmax(ran))
    return ((most, figures.hours(ran[most])),)
