"""The season plan's weeks in words: a block's, a week's as it is heard, and the table of all."""

from __future__ import annotations

from tercet import week_days
from tercet.language import mark, several, tr
from tercet.ui import words
from tercet.ui.plan_rows import PlanRows, Span, WeekRow, kind_words

HEADINGS = (
    mark("Week of"),
    mark("To go"),
    mark("Block"),
    mark("Hours run"),
    mark("Planned"),
    mark("Easy"),
    mark("Moderate"),
    mark("Hard"),
)


def table_rows(rows: PlanRows) -> list[tuple[str, ...]]:
    """All weeks, a row each, under :data:`HEADINGS`; the shades are those run."""
    out = []
    for week in rows.weeks:
        span = rows.span_of(week)
        to_go = "" if week.to_go is None else str(week.to_go)
        planned = words.hours(week.plan_s) if week.plan_s else ""
        shades = [words.hours(value) if week.run_s else "" for value in week.run[:3]]
        name = span.name if span is not None else ""
        run = words.hours(week.run_s) if week.run_s else ""
        out.append((words.short_day(week.first_day), to_go, name, run, planned, *shades))
    return out


def week_spoken(shown: PlanRows, week: WeekRow) -> str:
    """A week for a screen reader."""
    span = shown.span_of(week)
    parts = [tr("Week of {day}", day=words.long_day(week.first_day))]
    if span is not None:
        parts.append(span.name if span.id is None else f"{span.name}, {kind_words(span.kind)}")
    if week.to_go:
        parts.append(
            several(week.to_go, mark("{n} week to the race"), mark("{n} weeks to the race"))
        )
    if week.run_s:
        parts.append(tr("{time} run", time=words.spoken(week.run_s)))
    if week.plan_s:
        parts.append(tr("{time} planned", time=words.spoken(week.plan_s)))
    parts += [tr("race {name}", name=name) for name in week.races]
    return ", ".join(parts)


def span_words(shown: PlanRows, span: Span) -> tuple[str, ...]:
    """What stands under a block's name: its kind and weeks, then hours and share of easy."""
    weeks = len(week_days.starts(span.start, span.end))
    run = shown.run_in(span)
    easy = shown.easy_in(span)
    hours = sum(run[:3]) + run[4]
    kind = kind_words(span.kind)
    length = several(weeks, mark("{kind}, {n} week"), mark("{kind}, {n} weeks"), kind=kind)
    if easy is None:
        return (length,)
    told = tr("{time}, {share} easy", time=words.hours(hours), share=words.share(easy))
    return length, told
