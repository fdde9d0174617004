"""Reads a table of one run a line: days, lengths, and what the runner said of each run."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, time

from tercet.domain import Failed
from tercet.engine.notation import WORDS
from tercet.formats.sports import kind_of, sport_of
from tercet.formats.table.cells import clock_of, day_of, number_reader, parse_length
from tercet.formats.table.columns import Column, Naming
from tercet.formats.table.naming import PER_UNIT
from tercet.formats.table.sheet import Sheet
from tercet.language import grouped, mark, tr

FORMAT = "table"
MAX_RUNS = 100_000
#: Where a table knows no time of day, a run stands at noon. [local time]
NOON = time(12)
#: A run is longer than nothing and shorter than these. [m], [s]
MAX_METRES, MAX_SECONDS = 500_000.0, 5 * 86_400.0
#: Fastest and slowest mean speed that is believed. [m/s]
FASTEST, SLOWEST = 9.0, 0.3
_NAMED = 4
_FEET = 0.3048
_OTHER_SPORTS = re.compile(r"\b(cycl|bik|swim|walk|hik|row|ski|gym|strength|yoga|rad|schwimm)")


@dataclass(frozen=True)
class TableRun:
    """One line of a table; what it does not say is ``None`` or empty.

    ``start`` is the local wall clock, naive; ``timed`` says whether the table knows the time of
    day. ``word`` is a key of :data:`tercet.engine.notation.WORDS`.
    """

    start: datetime
    line: int
    timed: bool = False
    seconds: float | None = None
    metres: float | None = None
    word: str = ""
    effort: int | None = None
    heart_rate: float | None = None
    heart_rate_max: float | None = None
    climb_m: float | None = None
    sport: str = "running"
    kind: str = ""
    name: str = ""
    note: str = ""


@dataclass(frozen=True)
class Table:
    """The runs of a table, and a plain sentence on what of it was not read."""

    runs: tuple[TableRun, ...]
    problem: str = ""


@dataclass
class _Notes:
    """Lines by what was the matter with them, as it is marked."""

    lines: dict[str, list[int]] = field(default_factory=dict)

    def add(self, what: str, line: int) -> None:
        self.lines.setdefault(what, []).append(line)

    def words(self) -> str:
        said = []
        for what, lines in self.lines.items():
            named = ", ".join(str(line) for line in lines[:_NAMED])
            if len(lines) == 1:
                said.append(tr("{what}: line {line}.", what=tr(what), line=named))
            elif len(lines) <= _NAMED:
                said.append(tr("{what}: lines {lines}.", what=tr(what), lines=named))
            else:
                more = len(lines) - _NAMED
                said.append(
                    tr(
                        "{what}: lines {lines} and {more} more.",
                        what=tr(what),
                        lines=named,
                        more=more,
                    )
                )
        return " ".join(said)


def read_runs(sheet: Sheet, naming: Naming) -> Table | Failed:
    """Read the runs of a table whose columns are named.

    Parameters
    ----------
    sheet : Sheet
    naming : Naming
        With a column of days and at least one of distances or lengths of time.

    Returns
    -------
    Table or Failed
        A line without a day, or with neither distance nor time, is no run: sums and rest days.
        A missing time or distance stays missing.
    """
    reader = _Reader(sheet, naming)
    if len(sheet.rows) > MAX_RUNS:
        return Failed(tr("It has more than {most} lines.", most=grouped(MAX_RUNS)), format="CSV")
    runs = list(reader.runs())
    if not runs:
        return Failed(tr("No line of it is a run with a day."), format="CSV")
    return Table(tuple(runs), reader.notes.words())


class _Reader:
    """Goes down the lines of one table."""

    def __init__(self, sheet: Sheet, naming: Naming) -> None:
        self._sheet, self._naming = sheet, naming
        self.notes = _Notes()
        self._cells: dict[str, Sequence[str]] = {}
        self._read: dict[str, Callable[[str], float]] = {}
        for column in naming.columns:
            cells = sheet.column(column.index)
            self._cells[column.role] = cells
            self._read[column.role] = number_reader(cells, sheet.delimiter)

    def runs(self) -> Iterator[TableRun]:
        for place in range(len(self._sheet.rows)):
            run = self._run(place, self._sheet.first_line + place)
            if run is not None:
                yield run

    def _text(self, role: str, place: int) -> str:
        cells = self._cells.get(role)
        return cells[place] if cells is not None else ""

    def _number(self, role: str, place: int, low: float, high: float) -> float | None:
        text = self._text(role, place)
        value = self._read[role](text) if text else math.nan
        return value if low <= value <= high else None

    def _column(self, role: str) -> Column:
        found = self._naming.find(role)
        assert found is not None
        return found

    def _run(self, place: int, line: int) -> TableRun | None:
        written = self._text("day", place)
        day = day_of(written, self._column("day").unit) if written else None
        if day is None:
            if any(cell.strip() for cell in self._sheet.rows[place]):
                self.notes.add(mark("No day, left out"), line)
            return None
        metres, seconds = self._metres(place, line), self._seconds(place, line)
        if not metres and not seconds:
            return None  # a day of rest
        if metres and seconds and not SLOWEST <= metres / seconds <= FASTEST:
            self.notes.add(mark("Distance and time do not fit each other, the time left out"), line)
            seconds = None
        said = " ".join(self._text(role, place) for role in ("sport", "kind", "name"))
        sport, kind = _sport(said, self._text("sport", place) or self._text("kind", place))
        clock, timed = self._clock(place, written, day)
        effort = self._number("effort", place, 0.0, 10.0)
        climb = self._number("climb", place, 0.0, 20_000.0)
        if climb is not None and self._column("climb").unit == "ft":
            climb *= _FEET
        return TableRun(
            start=datetime.combine(day, clock),
            line=line,
            timed=timed,
            seconds=seconds or None,
            metres=metres or None,
            word=_word(f"{self._text('kind', place)} {self._text('sport', place)}"),
            effort=None if effort is None else round(effort),
            heart_rate=self._number("heart rate", place, 25.0, 250.0),
            heart_rate_max=self._number("highest heart rate", place, 25.0, 250.0),
            climb_m=climb,
            sport=sport,
            kind=kind,
            name=self._text("name", place)[:200],
            note=self._note(place),
        )

    def _metres(self, place: int, line: int) -> float | None:
        text = self._text("distance", place)
        if not text:
            return None
        column = self._column("distance")
        unit = column.unit
        if not unit:
            unit = next((u for u in ("km", "mi", "m") if u in text.casefold()), "")
        metres = self._read["distance"](text) * PER_UNIT.get(unit, math.nan)
        if 0.0 <= metres <= MAX_METRES:
            return metres
        self.notes.add(mark("A distance that could not be read"), line)
        return None

    def _seconds(self, place: int, line: int) -> float | None:
        text = self._text("duration", place)
        if not text:
            return None
        unit = self._column("duration").unit
        seconds = parse_length(text, unit)
        if seconds is None and unit == "m:ss":
            seconds = parse_length(text, "h:mm:ss")
        if seconds is not None and seconds <= MAX_SECONDS:
            return seconds
        self.notes.add(mark("A time that could not be read"), line)
        return None

    def _clock(self, place: int, written: str, day: date) -> tuple[time, bool]:
        text = self._text("clock", place)
        if not text and re.search(r"\d[:h]\d\d", written):
            text = written
        clock = clock_of(text) if text else None
        return (NOON, False) if clock is None else (clock, True)

    def _note(self, place: int) -> str:
        said = [self._text("note", place)]
        kind = self._text("kind", place)
        if kind and not kind_of(kind) and kind.casefold() not in WORDS:
            said.insert(0, kind)
        return "; ".join(text for text in said if text)[:5_000]


def _sport(said: str, first: str) -> tuple[str, str]:
    """Running, unless another sport is named; its kind where one is."""
    sport = sport_of(first)
    if sport not in ("running", "unknown") and _OTHER_SPORTS.search(said.casefold()):
        return sport, ""
    words = re.findall(r"[^\W\d_]+", said.casefold())
    kind = next((kind_of(word) for word in words if kind_of(word)), "")
    return "running", kind


def _word(text: str) -> str:
    """The one word that says how hard a run was, nothing where several disagree."""
    plain = text.casefold()
    said = [word for word in WORDS if re.search(rf"(?<![^\W_]){re.escape(word)}(?![^\W_])", plain)]
    said = [word for word in said if word not in ("walk", "rest")]
    return said[0] if len({WORDS[word] for word in said}) == 1 else ""
