"""What stands out in a stretch of the season: at most five lines, the weightiest first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

from tercet import units, week_days
from tercet.domain import Changes, Planned
from tercet.engine import faults, load
from tercet.engine.causes import Cause
from tercet.language import mark, month, number, several, tr
from tercet.library.figures import Span
from tercet.library.middle import NAMES, Middle, inside
from tercet.library.views import SessionView
from tercet.store import season_queries
from tercet.store.database import Store

MOST = 5
#: What was put away comes back when it has grown by this share.
GROWN = 0.1
#: Unmeant moderate running that stands out though enough was easy: share, and seconds.
MIDDLE_SHARE, MIDDLE_S = 0.04, 1200.0
#: Easy shares are judged once so much was run; they are short by at least this.
LEAST_S, SHORT = 7200.0, 0.005
#: Days of running in a row that stand out (common practice, no source), and monotony that does.
IN_A_ROW, MONOTONOUS = 14, 2.0
#: A run counts as longer than before only with so many days of record before it.
RECORD_DAYS = 21
#: Blocks that ask for nothing hard.
RESTFUL = frozenset({"recovery", "taper", "race week"})

CAUTION = mark(
    "Pain, illness, signs of the heart or a way back from injury go before any of this: stop, and "
    "ask a professional. A coach's or doctor's word counts more than these lines."
)


@dataclass(frozen=True)
class Step:
    """A next step: what the button says and where it leads ("runs", a cause, a page, "write")."""

    words: str
    to: str
    lines: tuple[Planned, ...] = ()  # written into the plan


@dataclass(frozen=True)
class Remark:
    """One line: the number, what it counts, a sentence or two, the runs, the next steps."""

    key: str
    number: str
    title: str
    text: str
    runs: tuple[int, ...]
    steps: tuple[Step, ...]
    weight: float  # of consequence
    size: float  # by which a remark that was put away has grown
    source: str = ""


def hours(seconds: float) -> str:
    """Hours and minutes, ``1:20``."""
    minutes = int(abs(seconds) / 60.0 + 0.5)
    return f"{minutes // 60}:{minutes % 60:02d}"


def short_day(day: date) -> str:
    """Day and month, ``7 June``."""
    return tr("{day} {month}", day=day.day, month=month(day.month))


def stands_out(
    span: Span,
    middle: Middle,
    record: tuple[SessionView, ...],
    spacing: int,
    put_away: Mapping[str, float],
) -> tuple[Remark, ...]:
    """Give at most five remarks on a stretch, the weightiest first; often there are none.

    Parameters
    ----------
    span : Span
    middle : Middle
        Of the same stretch.
    record : tuple of SessionView
        All running of the season, oldest first: what came before the stretch counts too.
    spacing : int
        Least days from one hard day to the next.
    put_away : mapping of str to float
        Remarks the runner put away, with their size then.
    """
    found = [
        *_faults(span),
        *_balance(span, middle),
        *_longer(span, record),
        *_spacing(span, spacing),
        *_rest(span),
        *_monotony(span),
    ]
    shown = [
        remark
        for remark in found
        if remark.key not in put_away or remark.size > put_away[remark.key] * (1 + GROWN)
    ]
    return tuple(sorted(shown, key=lambda remark: -remark.weight)[:MOST])


def _seconds(span: Span) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    return np.array([run.seconds[:3] for run in span.runs], dtype=np.float64).reshape(-1, 3)


def _faults(span: Span) -> Iterator[Remark]:
    meant = [run.id in span.meant for run in span.runs]
    easy = faults.never_easy(_seconds(span), meant, span.weeks)
    if easy.shown:
        ids = tuple(
            run.id
            for run, was_meant in zip(span.runs, meant, strict=True)
            if not was_meant
            and run.seconds[2] < load.HARD_SESSION_S
            and run.seconds[0] < faults.STAYED_EASY * sum(run.seconds[:3])
        )
        yield Remark(
            "never easy", tr("{n} of {whole}", n=easy.count, whole=easy.of),
            tr("runs without work stayed easy"),
            tr("The others left easy for more than a tenth of their time. Never truly easy is one "
               "of two common faults (common practice)."),
            ids, (Step(tr("The runs"), "runs"), Step(tr("Easy ceiling"), "thresholds")), 100.0,
            1.0 - easy.count / easy.of,
        )  # fmt: skip
    hard = faults.never_hard(_seconds(span), span.weeks)
    if hard.shown and span.kind not in RESTFUL:
        yield Remark(
            "never hard", hours(hard.hard_s), tr("hard in {n} weeks", n=span.weeks),
            tr("Never truly hard is the other common fault (common practice). A few short fast "
               "repetitions, well rested, are the usual beginning."),
            tuple(run.id for run in span.runs if run.seconds[2] > 0),
            (Step(tr("Repetition book"), "repetitions"),), 70.0, 1.0,
        )  # fmt: skip


def _balance(span: Span, middle: Middle) -> Iterator[Remark]:
    easy, moderate, hard = _seconds(span).sum(axis=0).tolist()
    total = easy + moderate + hard
    if total < LEAST_S:
        return
    wanted, share = span.shares[0], easy / total
    unmeant = [view for view in middle.causes if view.cause != Cause.MEANT]
    unmeant_s = sum(view.seconds for view in unmeant)
    first = unmeant[0] if unmeant else None
    steps = (
        (Step(tr("{cause}: the runs", cause=tr(NAMES[first.cause])), first.cause.name),)
        if first
        else ()
    )
    ids = tuple(entry.session.id for view in unmeant for entry in view.runs)
    season = span.key == "season"
    if share < wanted - SHORT:
        short = wanted * total - easy
        text = tr("{time} too little easy.", time=hours(short))
        if unmeant_s >= short:
            more = tr(
                "{time} of the middle was not meant; run easy, that would do.",
                time=hours(unmeant_s),
            )
        else:
            more = tr(
                "Of the middle {meant} was meant, {unmeant} was not.",
                meant=hours(middle.meant_s),
                unmeant=hours(unmeant_s),
            )
            if unmeant_s < 600:
                ids = tuple(run.id for run in span.runs if run.seconds[1] >= 60)
                steps = (Step(tr("The runs"), "runs"),)
        title = tr("easy in {stretch}, wanted {share}", stretch=span.name, share=_percent(wanted))
        if season:
            title = tr("easy in the season, wanted {share}", share=_percent(wanted))
        yield Remark(
            "easy short", f"{_percent(share)} %", title, f"{text} {more}",
            ids, steps, 90.0, wanted - share,
            tr("Four fifths easy: common practice, seen in elite runners (Seiler 2010; Haugen "
               "2022)."),
        )  # fmt: skip
    elif unmeant_s >= max(MIDDLE_S, MIDDLE_SHARE * total) and first is not None:
        title = tr("moderate in {stretch} that was not meant", stretch=span.name)
        if season:
            title = tr("moderate in the season that was not meant")
        yield Remark(
            "middle", hours(unmeant_s), title,
            tr("Most of it: {cause}, {time}.", cause=inside(tr(NAMES[first.cause])),
               time=hours(first.seconds)),
            ids, steps, 50.0, unmeant_s,
        )  # fmt: skip


def _percent(share: float) -> int:
    return int(100 * share + 0.5)


def _longer(span: Span, record: tuple[SessionView, ...]) -> Iterator[Remark]:
    began = record[0].day if record else span.start
    first = span.start - timedelta(days=load.SPIKE_DAYS)
    record = tuple(run for run in record if first <= run.day <= span.end)
    days = [run.day.toordinal() for run in record]
    share = load.longer_than_before(days, [run.distance_m for run in record])
    best: tuple[float, SessionView] | None = None
    ids = []
    within = {run.id for run in span.runs}
    for more, run in zip(share.tolist(), record, strict=True):
        old = (run.day - began).days >= RECORD_DAYS
        if run.id in within and old and load.spike_size(more):
            ids.append(run.id)
            best = max(best or (more, run), (more, run), key=lambda pair: pair[0])
    if best is not None:
        more, run = best
        longest = run.distance_m / (1.0 + more)
        text = [
            tr(
                "The longest of the 30 days before was {distance}.",
                distance=units.distance(longest),
            )
        ]
        text += [tr("{n} such runs.", n=len(ids))] if len(ids) > 1 else []
        text += [tr("It was meant.")] if run.id in span.meant else []
        text.append(
            tr("Among 5,205 runners more injuries were reported above 10 %; observed, not tested.")
        )
        yield Remark(
            "longer", units.distance(run.distance_m),
            tr("on {day}, {percent} % over the month before", day=short_day(run.day),
               percent=_percent(more)),
            " ".join(text),
            tuple(ids), (Step(tr("The run") if len(ids) == 1 else tr("The runs"), "runs"),), 80.0,
            more,
            "Schuster Brandt Frandsen et al., Br. J. Sports Med. 59:1203, 2025.",
        )  # fmt: skip


def _spacing(span: Span, spacing: int) -> Iterator[Remark]:
    hard = load.hard_days([run.day.toordinal() for run in span.runs], _seconds(span))
    pairs = load.too_close(hard, spacing)
    if not pairs:
        return
    days = {day for pair in pairs for day in pair}
    ids = tuple(run.id for run in span.runs if run.day.toordinal() in days)
    a, b = pairs[-1]
    title = several(
        spacing, mark("hard days closer than a day"), mark("hard days closer than {n} days")
    )
    yield Remark(
        "spacing", tr("{n} times", n=len(pairs)), title,
        tr("Last: {first} and {second}. Full recovery after hard work is put at 48 h or more, "
           "longer for many over 40.", first=short_day(date.fromordinal(a)),
           second=short_day(date.fromordinal(b))),
        ids, (Step(tr("The sessions"), "runs"), Step(tr("Set spacing"), "spacing")), 60.0,
        float(len(pairs)),
        tr("Stanley, Peake & Buchheit, Sports Med. 43:1259, 2013 (hours from memory)."),
    )  # fmt: skip


def _rest(span: Span) -> Iterator[Remark]:
    last, length = load.longest_without_rest([run.day.toordinal() for run in span.runs])
    if length >= IN_A_ROW:
        first = last - length + 1
        yield Remark(
            "no rest", f"{length}", tr("days of running without one off"),
            tr("{first} to {last}. A day off each week or two is common practice.",
               first=short_day(date.fromordinal(first)), last=short_day(date.fromordinal(last))),
            tuple(run.id for run in span.runs if first <= run.day.toordinal() <= last),
            (Step(tr("The runs"), "runs"),), 45.0, float(length),
        )  # fmt: skip


def _monotony(span: Span) -> Iterator[Remark]:
    for first_day, week in weekly_loads(span):
        if week is not None and week.monotony is not None and week.monotony > MONOTONOUS:
            ids = tuple(run.id for run in span.runs if 0 <= (run.day - first_day).days < 7)
            yield Remark(
                "monotony", number(week.monotony, 1),
                tr("monotony, week of {day}", day=short_day(first_day)),
                tr("The days were much alike by effort times minutes. Foster (1998) saw illness "
                   "oftener in weeks of high monotony and strain; a hint, no forecast."),
                ids, (Step(tr("The runs"), "runs"),), 30.0, week.monotony,
                "Foster, Med. Sci. Sports Exerc. 30:1164, 1998.",
            )  # fmt: skip
            return


def weekly_loads(span: Span) -> list[tuple[date, load.WeekLoad | None]]:
    """Each week's session-RPE load, latest first; None where a run has no effort said."""
    by_week: dict[date, list[SessionView]] = {}
    for run in span.runs:
        by_week.setdefault(week_days.start_of(run.day), []).append(run)
    out: list[tuple[date, load.WeekLoad | None]] = []
    for first_day, runs in sorted(by_week.items(), reverse=True):
        daily = [0.0] * 7
        for run in runs:
            daily[week_days.column_of(run.day)] += load.session_load(run.effort or 0, run.running_s)
        told = all(run.effort is not None for run in runs)
        out.append((first_day, load.week_load(daily) if told else None))
    return out


def put_away(store: Store, span_key: str, remark: Remark) -> Changes:
    """Put a remark away for a stretch; it comes back if it grows."""
    step = tr("Put a line away")
    entries = {**season_queries.put_away(store, span_key), remark.key: remark.size}
    with store.atomic(step):
        store.put("setting", season_queries.put_away_row(span_key, entries))
    return Changes(settings=True, step=step)


def bring_back(store: Store, span_key: str) -> Changes:
    """Show again what was put away for a stretch."""
    step = tr("Bring lines back")
    with store.atomic(step):
        store.put("setting", season_queries.put_away_row(span_key, {}))
    return Changes(settings=True, step=step)


def set_spacing(store: Store, days: int) -> Changes:
    """Set the least days from one hard day to the next.

    Raises
    ------
    ValueError
        Outside 1 to 7.
    """
    if not 1 <= days <= 7:
        raise ValueError(tr("spacing lies between 1 and 7 days"))
    step = tr("Set spacing of hard days")
    with store.atomic(step):
        store.put("setting", {"name": "spacing", "value": str(days)})
    return Changes(settings=True, step=step)
