"""The season in a line, and the season week by week."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from tercet import language, week_days
from tercet.engine import tally
from tercet.language import mark, several, tr
from tercet.library.review import figures
from tercet.library.review.content import Page, Table
from tercet.library.review.pictures import (
    LinePart,
    SeasonLine,
    Three,
    Value,
    WeekBlock,
    WeekRow,
    Weeks,
)
from tercet.library.views import BlockView, SeasonView, SessionView, WeekView

#: Fewer weeks with running than this show no habit.
HABIT_FROM = 4


def running(block: BlockView) -> list[SessionView]:
    """The running of a block, oldest first."""
    return [s for week in block.weeks for day in week.days for s in day if s.sport == "running"]


def runs_of(week: WeekView) -> list[SessionView]:
    """The running of a week, oldest first."""
    return [s for day in week.days for s in day if s.sport == "running"]


def three(seconds: Sequence[float]) -> Three:
    """Easy, moderate and hard of the five."""
    return (seconds[0], seconds[1], seconds[2])


def exact(seconds: Sequence[float]) -> tuple[float, ...]:
    """Easy, moderate, hard and unjudged seconds for the file of numbers."""
    return (*(round(value, 3) for value in seconds[:3]), round(seconds[4], 3))


def total(blocks: Sequence[BlockView]) -> Three:
    """Easy, moderate and hard seconds of blocks."""
    sums = [sum(block.seconds[k] for block in blocks) for k in range(3)]
    return (sums[0], sums[1], sums[2])


def run_seconds(view: SeasonView) -> float:
    """Running time, that which could not be judged included."""
    return sum(sum(block.seconds[:3]) + block.seconds[4] for block in view.blocks)


def season_line(view: SeasonView, units: str) -> Page:
    """Hours, sessions, share of easy and races, and the blocks as one line."""
    name = tr("Season in a line")
    blocks = [block for block in view.blocks if sum(block.seconds[:3]) > 0.0]
    amounts = total(view.blocks)
    share = tally.easy_share((*amounts, 0.0, 0.0))
    ran = run_seconds(view)
    metres = sum(sum(block.metres[:3]) + block.metres[4] for block in view.blocks)
    percent = figures.share(share, estimated=view.estimated)
    values = [
        Value(figures.hours(ran), tr("hours run")),
        Value(figures.distance(metres, units), tr("distance")),
        Value(
            str(view.session_count), tr("session") if view.session_count == 1 else tr("sessions")
        ),
        Value(percent, tr("easy")),
        Value(str(len(view.races)), tr("race") if len(view.races) == 1 else tr("races")),
    ]
    rows, behind = [], []
    for block in view.blocks:
        ran_block = sum(block.seconds[:3]) + block.seconds[4]
        rows.append(
            (
                block.name,
                figures.span(block.start, block.end),
                figures.hours(ran_block),
                *(figures.hours(value) for value in block.seconds[:3]),
                figures.share(block.easy_share, estimated=block.estimated),
            )
        )
        behind.append(tuple(session.id for session in running(block)))
    rows.append(
        (tr("All"), "", figures.hours(ran), *(figures.hours(value) for value in amounts), percent)
    )
    behind.append(tuple(run for runs in behind for run in runs))
    table = Table(
        (
            tr("block"),
            tr("days"),
            tr("hours"),
            tr("easy"),
            tr("moderate"),
            tr("hard"),
            tr("easy share"),
        ),
        tuple(rows),
        frozenset({0, 1}),
        tuple(behind),
        exact=tuple(exact(block.seconds) for block in view.blocks),
    )
    parts = tuple(
        LinePart(
            block.name,
            three(block.seconds),
            figures.hours(sum(block.seconds[:3]) + block.seconds[4]),
            tr("{share} easy", share=figures.share(block.easy_share, estimated=block.estimated)),
            row,
            block.estimated,
        )
        for row, block in enumerate(view.blocks)
        if block in blocks
    )
    races = []
    for race in view.races:
        for k, block in enumerate(blocks):
            if block.start <= race.day <= block.end:
                days = (block.end - block.start).days + 1
                races.append((k, ((race.day - block.start).days + 0.5) / days, race.name))
    start = view.blocks[0].start if view.blocks else view.today
    end = min(view.blocks[-1].end, view.today) if view.blocks else view.today
    line = tr(
        "{days}. One hour has one length in every block.",
        days=figures.span(start, max(start, end)),
    )
    return Page(
        "line",
        name,
        several(
            view.session_count,
            mark("{hours} hours in {n} session, {share} easy"),
            mark("{hours} hours in {n} sessions, {share} easy"),
            hours=figures.hours(ran),
            share=percent,
        ),
        line,
        SeasonLine(tuple(values), parts, tuple(races), len(view.blocks)),
        table,
        missing="" if blocks else tr(figures.NOTHING_RUN),
    )


def weeks(view: SeasonView) -> Page:
    """The sheet without gutters: which days carry what."""
    race_days = {race.day for race in view.races}
    blocks, rows, behind, sums = [], [], [], []
    hard_by_day, long_by_day = [0.0] * 7, [0] * 7
    month = 0
    for block in view.blocks:
        kept = []
        for week in block.weeks:
            runs = runs_of(week)
            for k, day in enumerate(week.days):
                hard_by_day[k] += sum(s.seconds[2] for s in day if s.sport == "running")
            if runs:
                longest = max(runs, key=lambda session: session.running_s)
                long_by_day[week_days.column_of(longest.day)] += 1
            if week.first_day > view.today:
                continue
            first = week.first_day.month != month
            month = week.first_day.month
            kept.append(
                WeekRow(
                    tuple(
                        tuple(three(s.seconds) for s in day if s.sport == "running")
                        for day in week.days
                    ),
                    tuple(week.first_day + timedelta(days=k) in race_days for k in range(7)),
                    language.short_month(month) if first else "",
                )
            )
            ran = sum(week.seconds[:3]) + week.seconds[4]
            rows.append(
                (
                    block.name,
                    figures.short_day(week.first_day),
                    figures.hours(ran),
                    *(figures.hours(value) for value in week.seconds[:3]),
                    figures.share(tally.easy_share(week.seconds), estimated=block.estimated),
                    str(len(runs)),
                )
            )
            behind.append(tuple(session.id for session in runs))
            sums.append(exact(week.seconds))
        if kept:
            ran = sum(block.seconds[:3]) + block.seconds[4]
            share = figures.share(block.easy_share, estimated=block.estimated)
            words = tr("{hours}, {share} easy", hours=figures.hours(ran), share=share)
            blocks.append(WeekBlock(block.name, words, tuple(kept)))
    ran_weeks = sum(bool(ids) for ids in behind)
    hard = hard_by_day.index(max(hard_by_day))
    longest_day = long_by_day.index(max(long_by_day))
    names = [language.weekday(k) for k in week_days.weekdays()]
    title = tr("The long run fell on {weekday}", weekday=names[longest_day])
    if ran_weeks < HABIT_FROM:
        told = several(sum(map(len, behind)), mark("{n} run"), mark("{n} runs"))
        title = several(
            ran_weeks, mark("{runs} in {n} week"), mark("{runs} in {n} weeks"), runs=told
        )
    elif max(hard_by_day) > 0.0:
        title = (
            tr(
                "{hard} was the hard day, {long} the long one",
                hard=names[hard],
                long=names[longest_day],
            )
            if hard != longest_day
            else tr("{weekday} was the hard day and the long one", weekday=names[hard])
        )
    return Page(
        "weeks",
        tr("Week by week"),
        title,
        tr("Every line a week, every stair a run: low easy, middle moderate, high hard."),
        Weeks(tuple(blocks), tuple(language.short_weekday(k) for k in week_days.weekdays())),
        Table(
            (
                tr("block"),
                tr("week of"),
                tr("hours"),
                tr("easy"),
                tr("moderate"),
                tr("hard"),
                tr("easy share"),
                tr("runs"),
            ),
            tuple(rows),
            frozenset({0, 1}),
            tuple(behind),
            exact=tuple(sums),
        ),
        missing="" if any(behind) else tr(figures.NOTHING_RUN),
    )
