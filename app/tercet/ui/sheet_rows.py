"""What stands in each row of the season sheet, with its words; made once for each season."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from PySide6.QtCore import QDate, QLocale

from tercet.language import code, mark, several, tr
from tercet.library.views import BlockView, PlannedView, SeasonView, SessionView, WeekView
from tercet.ui import words

#: Days longer than this share of all days are cut, so that one of them can't shrink the rest.
#: Bars are cut only if the longest is this much longer than the cap.
WORTH_CUTTING = 1.4
CAP_SHARE = 0.98
#: Rows of blocks as last laid out, with what they were made of; an edit makes few of them anew.
_laid: dict[int, tuple[BlockView, object, list[Row]]] = {}


@dataclass(frozen=True)
class Cell:
    """One day of one week row."""

    day: date
    inside: bool  # whether the day belongs to the row's block
    today: bool
    sessions: tuple[SessionView, ...] = ()
    race: str = ""
    planned: tuple[PlannedView, ...] = ()

    # Reckoned once: a day that did not change is the same object after an edit.
    @cached_property
    def ahead_s(self) -> tuple[float, ...]:
        """Length of each session still to run [s]."""
        return tuple(item.running_s for item in self.planned if item.state == "to run")

    @cached_property
    def lengths(self) -> tuple[float, ...]:
        """Drawn length of each session [s]."""
        return tuple(session_length(session) for session in self.sessions)

    @cached_property
    def total_s(self) -> float:
        """Length of all of them [s]."""
        return sum(self.lengths)


@dataclass(frozen=True)
class Row:
    """A block's heading (no week), or one of its weeks."""

    block: BlockView
    current: bool  # whether today lies in the block
    week: WeekView | None = None
    cells: tuple[Cell, ...] = ()
    first: bool = False  # of the block's weeks
    last: bool = False
    future: bool = False

    @property
    def this_week(self) -> bool:
        """Whether today lies in this row."""
        return any(cell.today for cell in self.cells)


@dataclass(frozen=True)
class Sheet:
    """All rows, where each day stands, and the length [s] over which a bar is cut."""

    rows: tuple[Row, ...]
    places: dict[date, tuple[int, int]]  # day -> row, column; column 1 is Monday
    sessions: dict[int, tuple[int, int, int]]  # id -> row, column, part of the day
    cap_s: float
    today: date
    has_unjudged: bool
    has_other: bool
    has_cut: bool
    has_planned: bool = False

    @cached_property
    def weekdays(self) -> tuple[Weekday, ...]:
        """What the days of each column ask for, whatever the size of the text."""
        plain: list[set[tuple[float, int]]] = [set() for _ in range(7)]
        more: list[list[tuple[float, int, Cell]]] = [[] for _ in range(7)]
        for row in self.rows:
            for column, cell in enumerate(row.cells):
                if not (cell.sessions or cell.race or cell.ahead_s):
                    continue
                length, ahead = cell.total_s, cell.ahead_s
                shown = min(length + sum(ahead), self.cap_s or sum(ahead))
                parts = len(cell.sessions) + len(ahead)
                if cell.race or length > self.cap_s:
                    more[column].append((shown, parts, cell))
                else:
                    plain[column].add((shown, parts))
        return tuple(map(Weekday, plain, more))


@dataclass(frozen=True)
class Weekday:
    """Days of one weekday: length [s] and number of bars, each once, and those with words too."""

    plain: set[tuple[float, int]]
    worded: list[tuple[float, int, Cell]]


def session_length(session: SessionView) -> float:
    """Length a session is drawn with [s]: running time, or moving time of other sports."""
    return session.running_s if session.sport == "running" else session.moving_s


def build(season: SeasonView, cap_s: float | None = None) -> Sheet:
    """Lay a season out in rows; ``cap_s`` is given where only a part of the season is known."""
    races: dict[date, list[str]] = defaultdict(list)
    for race in season.races:
        races[race.day].append(race.name)
    rows: list[Row] = []
    before, kept = dict(_laid), {}
    for block in season.blocks:
        named = {day: names for day, names in races.items() if block.start <= day <= block.end}
        key = (season.today, named, code())
        held = before.get(id(block))
        if held is None or held[0] is not block or held[1] != key:
            held = block, key, _rows_of(block, season.today, named)
        kept[id(block)] = held
        rows += held[2]
    _laid.clear()
    _laid.update(kept)
    places: dict[date, tuple[int, int]] = {}
    sessions: dict[int, tuple[int, int, int]] = {}
    for place, row in enumerate(rows):
        for column, cell in enumerate(row.cells, 1):
            if cell.inside:
                places[cell.day] = (place, column)
            for part, session in enumerate(cell.sessions):
                sessions[session.id] = (place, column, part)
    days = [cell.total_s for row in rows for cell in row.cells if cell.sessions]
    cap = _nearest_rank(days, CAP_SHARE)
    # Cutting a bar that is hardly longer costs more room for its words than it saves.
    if days and max(days) <= WORTH_CUTTING * cap:
        cap = max(days)
    if cap_s is not None:
        cap = cap_s
    every = season.sessions
    return Sheet(
        tuple(rows),
        places,
        sessions,
        cap,
        season.today,
        has_unjudged=any(s.seconds[4] > 0.0 and s.sport == "running" for s in every),
        has_other=any(s.sport != "running" for s in every),
        has_cut=any(day > cap for day in days),
        has_planned=any(any(week.planned) for block in season.blocks for week in block.weeks),
    )


def _rows_of(block: BlockView, today: date, races: Mapping[date, Sequence[str]]) -> list[Row]:
    """A block's heading and weeks."""
    current = block.start <= today <= block.end
    rows = [Row(block, current)]
    for number, week in enumerate(block.weeks):
        cells = []
        for weekday in range(7):
            day = week.first_day + timedelta(days=weekday)
            inside = week.inside[weekday]
            cells.append(
                Cell(
                    day,
                    inside,
                    inside and day == today,
                    week.days[weekday],
                    words.listed(races[day]) if inside and day in races else "",
                    week.planned[weekday],
                )
            )
        rows.append(
            Row(
                block,
                current,
                week,
                tuple(cells),
                first=number == 0,
                last=number == len(block.weeks) - 1,
                future=week.first_day > today,
            )
        )
    return rows


def week_words(row: Row) -> tuple[str, str]:
    """Monday's date, and the hours run; no hours for a week to come without any."""
    if row.week is None:
        return "", ""
    seconds = row.week.seconds
    run = sum(seconds[:3]) + seconds[4]
    return words.short_day(row.week.first_day), "" if row.future and run == 0 else words.hours(run)


def length_words(block: BlockView) -> str:
    """How long a block is: ``5 weeks``, ``10 days``, ``2 weeks 3 days``."""
    days = (block.end - block.start).days + 1
    weeks, rest = divmod(days, 7)
    if days < 14 and rest:
        return several(days, mark("{n} day"), mark("{n} days"))
    whole = several(weeks, mark("{n} week"), mark("{n} weeks"))
    over = several(rest, mark("{n} day"), mark("{n} days"))
    return f"{whole} {over}" if rest else whole


def run_words(block: BlockView) -> str:
    """Hours run in a block: ``28:24 run``; nothing if none."""
    run = sum(block.seconds[:3]) + block.seconds[4]
    return tr("{hours} run", hours=words.hours(run)) if run > 0 else ""


def share_words(block: BlockView) -> tuple[str, bool]:
    """Share of easy, and whether it is short of what the block wants (then the words say so)."""
    if block.easy_share is None:
        return "", False
    share = words.share(block.easy_share, estimated=block.estimated)
    wanted = math.floor(block.easy_target * 100.0 + 0.5)
    # In a stretch that nobody has planned no share was wanted.
    if block.id is not None and math.floor(block.easy_share * 100.0 + 0.5) < wanted:
        few = words.number(wanted)
        return tr("{share} easy, short of {wanted}", share=share, wanted=few), True
    return tr("{share} easy", share=share), False


def heading_spoken(row: Row) -> str:
    """A block's heading for a screen reader."""
    block = row.block
    parts = [block.name, length_words(block)]
    run = sum(block.seconds[:3]) + block.seconds[4]
    if run > 0:
        parts.append(tr("{hours} run", hours=words.spoken(run)))
    share, _ = share_words(block)
    parts += [share] if share else []
    parts += [tr("current block")] if row.current else []
    return ", ".join(parts)


def week_spoken(row: Row) -> str:
    """A week's gutter for a screen reader."""
    assert row.week is not None
    first_day = _date(row.week.first_day, tr("d MMMM yyyy", "pattern of a date, as Qt reads it"))
    run = sum(row.week.seconds[:3]) + row.week.seconds[4]
    if not run:
        return tr("Week of {day}, nothing run", day=first_day)
    return tr("Week of {day}, {hours} run", day=first_day, hours=words.spoken(run))


def cell_spoken(cell: Cell) -> str:
    """A day for a screen reader, with everything that its picture tells."""
    parts = [_date(cell.day, tr("dddd d MMMM", "pattern of a date, as Qt reads it"))]
    if not cell.inside:
        return tr("{day}, in another block", day=parts[0])
    if cell.today:
        parts.append(tr("today"))
    if cell.race:
        parts.append(tr("race {name}", name=cell.race))
    parts.append("; ".join(map(session_spoken, cell.sessions)) or tr("no run"))
    return ", ".join(parts)


def session_spoken(session: SessionView) -> str:
    """One session for a screen reader: ``6 x 3 min uphill, run 1 hour 13: easy 49, ...``."""
    if session.sport != "running":
        sport = tr(session.sport)
        return f"{session.name}, {sport} {_long(session.moving_s)}"
    shown = [(mark("easy"), 0), (mark("moderate"), 1), (mark("hard"), 2)]
    if session.seconds[4] > 0.0:
        shown.append((mark("unjudged"), 4))
    minutes = whole_minutes([session.seconds[index] for _, index in shown])
    parts = [" ".join((tr(name), str(m))) for (name, _), m in zip(shown, minutes, strict=True)]
    shades = ", ".join(parts)
    return tr(
        "{name}, run {length}: {shades} minutes",
        name=session.name,
        length=_long(session.running_s),
        shades=tr("about {value}", value=shades) if session.estimated else shades,
    )


def whole_minutes(seconds: list[float]) -> list[int]:
    """Round to whole minutes that add up to the rounded sum (largest remainder)."""
    exact = [value / 60.0 for value in seconds]
    floors = [math.floor(value) for value in exact]
    missing = math.floor(sum(exact) + 0.5) - sum(floors)
    order = sorted(range(len(exact)), key=lambda i: floors[i] - exact[i])
    for index in order[:missing]:
        floors[index] += 1
    return floors


def _long(seconds: float) -> str:
    """A length as it is said before its parts: ``1 hour 13``, or ``49 minutes``."""
    hour, minute = divmod(math.floor(seconds / 60.0 + 0.5), 60)
    if not (hour and minute):
        return words.spoken(seconds)
    return several(hour, mark("{n} hour {minutes}"), mark("{n} hours {minutes}"), minutes=minute)


def _date(day: date, pattern: str) -> str:
    return QLocale().toString(QDate(day.year, day.month, day.day), pattern)


def _nearest_rank(values: list[float], share: float) -> float:
    """Smallest value that at least ``share`` of the values don't exceed; 0 of none."""
    ordered = sorted(values)
    return ordered[max(0, math.ceil(share * len(ordered)) - 1)] if ordered else 0.0
