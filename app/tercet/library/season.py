"""The season as the screens show it: sessions in weeks in blocks, sums, build-up, traces."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from tercet import language, week_days
from tercet.domain import Block
from tercet.engine.shades import Shade, Thresholds, easy_share
from tercet.language import tr
from tercet.library import plans
from tercet.library.dated import in_force
from tercet.library.engine_words import worded
from tercet.library.planned_rows import planned_views
from tercet.library.session_rows import session_views
from tercet.library.views import (
    ZERO,
    BlockView,
    BuildUp,
    Five,
    PlannedView,
    RaceView,
    SeasonView,
    SessionView,
    WeekView,
)
from tercet.store import queries
from tercet.store.database import Store

if TYPE_CHECKING:
    import numpy as np

    from tercet.engine import Judgement
    from tercet.library.trace import SessionTrace

DAY = timedelta(days=1)
UNPLANNED_TARGET = 0.8
#: The blocks as they were last laid out, by their first day, with all they were made of.
_made: WeakKeyDictionary[Store, dict[date, tuple[Any, BlockView]]] = WeakKeyDictionary()
#: The build-up of blocks by unit, as long as they are the same objects.
_built: dict[str, dict[int, tuple[BlockView, date, BuildUp]]] = {}


@dataclass(frozen=True)
class SessionDetail:
    """All that a session's page shows beside its trace."""

    trace: SessionTrace
    evidence: tuple[int, ...]
    scale: tuple[float, ...]
    mends: dict[str, int]
    remarks: tuple[str, ...]
    thresholds: Thresholds | None
    threshold_words: str
    estimated: bool
    damage: str
    file_name: str
    by_words: bool  # from a paper log: shaded by the words
    probability: tuple[float, ...] = ()  # of each second's shade; empty if not known
    intervals: tuple[tuple[float, float], ...] = ()  # 90 %, seconds of easy, moderate, hard
    said: int = 0  # how many stretches the runner has spoken for
    typed: str = ""  # the words of a paper log, as they stand there


def _sum(parts: Sequence[Five]) -> Five:
    if not parts:
        return ZERO
    easy, moderate, hard, still, unjudged = map(math.fsum, zip(*parts, strict=True))
    return easy, moderate, hard, still, unjudged


def season(store: Store, today: date | None = None) -> SeasonView:
    """Lay out everything in the store: blocks, the unplanned stretches between, weeks, sums."""
    today = today or date.today()
    sessions = sorted(session_views(store), key=lambda view: view.day)
    running: dict[date, list[SessionView]] = {}
    for view in sessions:
        if view.sport == "running":
            running.setdefault(view.day, []).append(view)
    races = queries.races(store)
    planned = planned_views(store, running, today)
    days = [view.day for view in sessions]
    ahead = sorted(planned)
    blocks = _stretches(queries.blocks(store), days + ahead)
    race_days = [race.day for race in races]
    before, made = _made.get(store, {}), {}
    for block, meant in blocks:
        # A block of which nothing has changed is the same object as before.
        inside = sessions[bisect_left(days, block.start) : bisect_right(days, block.end)]
        asked = [
            planned[day]
            for day in ahead[bisect_left(ahead, block.start) : bisect_right(ahead, block.end)]
        ]
        key = (block, meant, inside, asked, race_days, week_days.first_weekday())
        held = before.get(block.start)
        if held is None or held[0] != key:
            held = key, block_view(block, meant, inside, asked, race_days)
        made[block.start] = held
    _made[store] = made
    count = sum(map(len, running.values()))
    return SeasonView(
        blocks=tuple(view for _, view in made.values()),
        races=tuple(
            RaceView(race.id or 0, race.day, race.name, race.distance_m, race.goal_s, race.main)
            for race in races
        ),
        today=today,
        session_count=count,
        other_sports=len(sessions) - count,
        estimated=any(view.estimated for _, view in made.values()),
    )


def _stretches(blocks: list[Block], days: list[date]) -> list[tuple[Block, bool]]:
    """Blocks in order, with the gaps that hold sessions cut into calendar months."""
    out = [(block, True) for block in blocks]
    covered = [(block.start, block.end) for block in blocks]
    starts = [start for start, _ in covered]
    months: dict[tuple[int, int], list[date]] = {}
    after, at_month = date.min, (0, 0)
    for day in sorted(set(days)):
        if (at := bisect_right(starts, day)) and day <= covered[at - 1][1]:
            continue
        if day >= after:
            # A week belongs to the month of its middle day, so that weeks stay whole.
            week = week_days.start_of(day)
            middle = week_days.middle_of(week)
            after, at_month = week + 7 * DAY, (middle.year, middle.month)
        months.setdefault(at_month, []).append(day)
    for (year, month), inside in sorted(months.items()):
        start = _first_of_month(year, month)
        end = _first_of_month(*((year, month + 1) if month < 12 else (year + 1, 1))) - DAY
        for part_start, part_end in _outside(start, end, covered):
            if any(part_start <= day <= part_end for day in inside):
                name = f"{language.month(month)} {year}"
                out.append(
                    (Block(part_start, part_end, name, "unplanned", UNPLANNED_TARGET), False)
                )
    return sorted(out, key=lambda item: item[0].start)


def _first_of_month(year: int, month: int) -> date:
    """First day of the first week whose middle day lies in the month."""
    start = week_days.start_of(date(year, month, 1))
    return start if week_days.middle_of(start).month == month else start + 7 * DAY


def _outside(start: date, end: date, covered: list[tuple[date, date]]) -> list[tuple[date, date]]:
    """Parts of a span that lie in none of the (ordered) covered spans."""
    parts = []
    at = start
    for a, b in covered:
        if b < at or a > end:
            continue
        if a > at:
            parts.append((at, a - DAY))
        at = max(at, b + DAY)
    if at <= end:
        parts.append((at, end))
    return parts


def block_view(
    block: Block,
    meant: bool,
    sessions: list[SessionView],
    asked: list[tuple[PlannedView, ...]],
    races: list[date],
) -> BlockView:
    """Lay a block out in its weeks; ``sessions`` and ``asked`` are those of its days."""
    by_day: dict[date, list[SessionView]] = {}
    for view in sessions:
        by_day.setdefault(view.day, []).append(view)
    planned = {items[0].day: items for items in asked}
    laid = []
    for first_day, wanted in plans.wanted_weeks(block, races):
        days = [first_day + k * DAY for k in range(7)]
        inside = tuple([block.start <= day <= block.end for day in days])
        held = tuple(
            [tuple(by_day.get(day, ())) if ok else () for day, ok in zip(days, inside, strict=True)]
        )
        runs = [view for day in held for view in day if view.sport == "running"]
        laid.append(
            WeekView(
                first_day,
                held,
                inside,
                _sum([view.seconds for view in runs]),
                _sum([view.metres for view in runs]),
                tuple(
                    planned.get(day, ()) if ok else () for day, ok in zip(days, inside, strict=True)
                ),
                wanted,
            )
        )
    runs = [view for week in laid for day in week.days for view in day if view.sport == "running"]
    seconds = _sum([view.seconds for view in runs])
    return BlockView(
        id=block.id if meant else None,
        name=block.name,
        kind=block.kind,
        start=block.start,
        end=block.end,
        easy_target=block.easy_target,
        weeks=tuple(laid),
        seconds=seconds,
        metres=_sum([view.metres for view in runs]),
        easy_share=easy_share(seconds),
        estimated=any(view.estimated for view in runs),
        shares=plans.shares_of(block),
        measure=block.measure,
        volume=block.volume,
        longest=block.longest,
    )


def build_up(view: SeasonView, unit: str = "time") -> list[BuildUp]:
    """Cumulative easy, moderate and hard of every block, by day, up to today.

    Parameters
    ----------
    view : SeasonView
    unit : {"time", "metres"}
        Seconds or metres.
    """
    before, kept = _built.get(unit, {}), {}
    for block in view.blocks:
        held = before.get(id(block))
        if held is None or held[0] is not block or held[1] != view.today:
            held = block, view.today, block_build_up(block, view.today, unit)
        kept[id(block)] = held
    _built[unit] = kept
    return [built for _, _, built in kept.values()]


def block_build_up(block: BlockView, today: date, unit: str = "time") -> BuildUp:
    """The same of one block alone, which is not kept."""
    import numpy as np

    from tercet.engine import tally

    last = block.end if block.end <= today else max(today, block.start)
    runs = [
        session
        for week in block.weeks
        for day in week.days
        for session in day
        if session.sport == "running"
    ]
    amounts = np.array(
        [session.seconds if unit == "time" else session.metres for session in runs]
    ).reshape(len(runs), 5)
    table = tally.cumulative_by_day([session.day for session in runs], amounts, block.start, last)
    first = block.start.toordinal()
    return BuildUp(
        block,
        tuple(range(first, first + len(table))),
        tuple(table[:, Shade.EASY].tolist()),
        tuple(table[:, Shade.MODERATE].tolist()),
        tuple(table[:, Shade.HARD].tolist()),
        plans.easy_ahead(block, today, unit, float(table[-1, Shade.EASY])),
    )


def block_table(view: SeasonView) -> list[tuple[str, Five, Five, float | None]]:
    """Each block's name, seconds and metres by shade, and share of easy."""
    return [(block.name, block.seconds, block.metres, block.easy_share) for block in view.blocks]


def session_detail(store: Store, run_id: int) -> SessionDetail | None:
    """A session second by second; judged afresh from the stored streams, which gives the same."""
    import numpy as np

    from tercet.library.beside import known_of
    from tercet.library.stored import stored_judgement
    from tercet.store.correction_queries import belts, correction_ids, corrections
    from tercet.store.packing import unpack_shades

    row = queries.run(store, run_id)
    if row is None:
        return None
    kept = queries.judgement(store, run_id)
    entries = queries.thresholds(store)
    entry = in_force(entries, date.fromisoformat(row["day"]))
    by = kept["threshold_id"] if kept is not None else None
    if entry is None or entry.id != by:
        entry = next((candidate for candidate in entries if candidate.id == by), None)
    said = None
    if row["notation"]:  # the readers of words are not loaded for a recording
        from tercet.library.written import said_by

        said = said_by(row)
    judged = stored_judgement(
        queries.streams(store, row["sha256"], row["part"]),
        row["stops"],
        entry,
        said,
        corrections(store, run_id),
        known_of(row["laps"], row["effort"], belts(store, run_id)),
    )
    shades = unpack_shades(kept["shades"]) if kept is not None else judged.shades
    values = entry.values if entry is not None else None
    if row["sport"] != "running":
        values, shades = None, np.full_like(shades, Shade.NOT_RUNNING)
        judged = replace(judged, repetitions=(), shades=shades)
    file = queries.file(store, row["sha256"])
    return SessionDetail(
        trace=_trace(judged, shades, values),
        evidence=tuple(judged.evidence.tolist()),
        scale=tuple(judged.scale.tolist()),
        mends=dict(judged.mends),
        remarks=(
            *(
                [tr("Not judged until you say: {question}", question=row["asks"])]
                if row["asks"]
                else []
            ),
            *map(worded, judged.remarks),
            *([tr("Read as: {words}.", words=row["notation"])] if row["typed"] else []),
        ),
        thresholds=values,
        threshold_words=""
        if entry is None
        else tr(
            "{source}, in force from {day} {month} {year}",
            source=worded(entry.source),
            day=entry.start.day,
            month=language.month(entry.start.month),
            year=entry.start.year,
        ),
        estimated=entry is not None and entry.estimated,
        damage=row["damage"],
        file_name=file.name if file is not None else "",
        by_words=bool(row["notation"]),
        typed=(row["typed"] or row["notation"]) if row["format"] == "paper" else "",
        probability=tuple(judged.probability.tolist()),
        intervals=judged.intervals,
        said=len(correction_ids(store, run_id)),
    )


def _trace(judged: Judgement, shades: np.ndarray, values: Thresholds | None) -> SessionTrace:
    import numpy as np

    from tercet.engine.parts import parts
    from tercet.library.trace import SessionTrace

    known = values or Thresholds()
    return SessionTrace(
        seconds=np.arange(len(shades), dtype=np.float64),
        shades=shades,
        level_speed=judged.level_speed,
        speed=judged.speed,
        heart_rate=judged.heart_rate,
        altitude=judged.altitude,
        lt1_speed=known.lt1_speed,
        lt2_speed=known.lt2_speed,
        lt1_hr=known.lt1_hr,
        lt2_hr=known.lt2_hr,
        repetitions=judged.repetitions,
        last_second_s=judged.last_second_s,
        parts=parts(judged),
        power=judged.power,
        lt1_power=known.lt1_power,
        lt2_power=known.lt2_power,
    )
