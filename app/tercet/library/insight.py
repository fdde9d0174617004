"""All that the pages of curve and middle show, read from the store in one call each."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from tercet.domain import DatedThresholds, Planned
from tercet.engine import load
from tercet.library import counted, next_steps, next_week, shape, standing, suggested
from tercet.library import figures as kept
from tercet.library import middle as middles
from tercet.library.counted import Behind
from tercet.library.figures import Span
from tercet.library.middle import Middle
from tercet.library.next_week import NextWeek
from tercet.library.shape import Drawn, Shape
from tercet.library.standing import Remark
from tercet.library.views import SeasonView
from tercet.store import season_queries
from tercet.store.database import Store

#: Weeks listed with their load, the latest first.
WEEKS = 8


@dataclass(frozen=True, eq=False)
class CurvePage:
    """The curves of one stretch and of every block."""

    spans: tuple[Span, ...]
    shown: Span | None
    drawn: Drawn | None
    shapes: tuple[Shape, ...]
    blocks: tuple[Drawn, ...]
    thresholds: DatedThresholds | None  # whose paces stand at the boundaries
    behind: Behind | None = None  # the totals of the stretch shown


@dataclass(frozen=True)
class WeekRow:
    """A week's running, its session-RPE load where every effort was said, and its days off."""

    first_day: date
    seconds: float
    metres: float
    load: load.WeekLoad | None
    days_off: int


@dataclass(frozen=True, eq=False)
class MiddlePage:
    """One stretch: its middle by cause, what stands out, its weeks, and the week to come."""

    spans: tuple[Span, ...]
    shown: Span | None
    middle: Middle | None
    remarks: tuple[Remark, ...]
    put_away: int
    next_week: NextWeek
    weeks: tuple[WeekRow, ...]
    spacing: int
    suggested: tuple[Planned, ...] = ()  # next week as lines, less what its plan holds


def chosen(spans: list[Span], key: str, today: date) -> Span | None:
    """The stretch of a key or a first day; else today's block, or the last one with runs."""
    found = next(
        (span for span in spans[1:] if key in (span.key, span.start.isoformat())),
        spans[0] if spans and key == spans[0].key else None,
    )
    return found or kept.span_at(spans, today)


def curve_page(store: Store, view: SeasonView, key: str) -> CurvePage:
    """Read the curves; ``key`` "season" is the whole season."""
    spans = kept.spans(view)
    entry = shape.in_force_now(store)
    if not spans:
        return CurvePage((), None, None, (), (), entry)
    shown = next((span for span in spans if span.key == key), spans[0])
    figures = kept.read(store)
    ratio = shape.ratio_of(entry)
    blocks = [shape.drawn(span, figures, ratio) for span in spans[1:]]
    return CurvePage(
        tuple(spans),
        shown,
        shape.drawn(shown, figures, ratio),
        shape.shapes(shown),
        tuple(item for item in blocks if item is not None),
        entry,
        counted.behind(store, shown.start, shown.end),
    )


def middle_page(store: Store, view: SeasonView, key: str) -> MiddlePage:
    """Read one stretch's causes and remarks; ``key`` "" is today's block."""
    spans = kept.spans(view)
    spacing = season_queries.spacing(store)
    shown = chosen(spans, key, view.today)
    if shown is None:
        return MiddlePage((), None, None, (), 0, NextWeek(view.today, ()), (), spacing)
    figures = kept.read(store)
    found = middles.middle(shown, figures)
    record = spans[0].runs
    put_away = season_queries.put_away(store, shown.key)
    week = next_week.next_week(view, record, spacing)
    remarks = standing.stands_out(shown, found, record, spacing, put_away)
    return MiddlePage(
        tuple(spans),
        shown,
        found,
        next_steps.with_plans(remarks, shown, view, week, record, spacing),
        len(put_away),
        week,
        week_rows(shown),
        spacing,
        suggested.of_week(view, week, record, spacing),
    )


def week_rows(span: Span) -> tuple[WeekRow, ...]:
    """The latest weeks of a stretch with runs, the latest first."""
    loads = dict(standing.weekly_loads(span))
    out = []
    for first_day in sorted(loads, reverse=True)[:WEEKS]:
        runs = [run for run in span.runs if timedelta() <= run.day - first_day < timedelta(days=7)]
        out.append(
            WeekRow(
                first_day,
                sum(run.running_s for run in runs),
                sum(run.distance_m for run in runs),
                loads[first_day],
                7 - len({run.day for run in runs}),
            )
        )
    return tuple(out)
