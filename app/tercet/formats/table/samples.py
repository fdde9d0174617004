"""Reads a table of a run's samples: a line a sample, a column a channel."""

from __future__ import annotations

import math
from datetime import UTC, datetime, timedelta, tzinfo

import numpy as np

from tercet.domain import Failed, Recording
from tercet.engine.scale import Floats
from tercet.formats.assemble import COLUMN, COLUMNS, MAX_SAMPLES, Draft, assemble
from tercet.formats.table.cells import clock_of, day_of, moment_of, number_reader, parse_length
from tercet.formats.table.columns import Column, Naming
from tercet.formats.table.sheet import Sheet
from tercet.language import grouped, mark, tr

FORMAT = "CSV"
WHICH_DAY = mark("Its samples carry no day: when did the run start?")
#: Positions past a full circle are whole parts of half of one, as watches keep them. [degrees]
SEMICIRCLE = 180.0 / 2**31
#: Speeds without a unit are m/s where their middle is under this. [m/s]
MOST_MS = 7.0
_SCALES = {"km/h": 1 / 3.6, "mi/h": 0.44704, "m/s": 1.0, "ft": 0.3048, "km": 1000.0,
           "mi": 1609.344, "m": 1.0, "": 1.0}  # fmt: skip
_PER_PACE = {"min/km": 1000.0, "min/mi": 1609.344}
_DAY_S = 86_400.0


def read_samples(
    sheet: Sheet,
    naming: Naming,
    name: str = "",
    start: datetime | None = None,
    zone: tzinfo | None = None,
) -> Recording | Failed:
    """Read the samples of one run.

    Parameters
    ----------
    sheet : Sheet
    naming : Naming
        With a column of moments, or of seconds elapsed, or of days and clocks.
    name : str
        For the recording.
    start : datetime or None
        When it began, where the table counts from its start; local wall clock if naive.
    zone : tzinfo or None
        Zone of clocks without an offset; None for the computer's.

    Returns
    -------
    Recording or Failed
    """
    if len(sheet.rows) > MAX_SAMPLES:
        return Failed(
            tr("It holds more than {most} samples.", most=grouped(MAX_SAMPLES)), format=FORMAT
        )
    samples = np.full((len(sheet.rows), len(COLUMNS)), np.nan)
    times = _times(sheet, naming, start, zone)
    if times is None:
        return Failed(tr(WHICH_DAY), format=FORMAT)
    samples[:, 0], offset = times
    for column in naming.columns:
        stream = "speed" if column.role == "pace" else column.role.replace(" ", "_")
        if stream not in COLUMN or stream == "time":
            continue
        values = _values(sheet, column)
        if column.role != "pace" or not np.isfinite(samples[:, COLUMN["speed"]]).any():
            samples[:, COLUMN[stream]] = values
    return assemble(Draft(FORMAT, name=name, utc_offset_s=offset), list(samples.T))


def _values(sheet: Sheet, column: Column) -> Floats:
    cells = sheet.column(column.index)
    if column.role == "pace":
        metres = _PER_PACE.get(column.unit, 1000.0)
        pace = [parse_length(cell, "min") or math.nan for cell in cells]
        return np.asarray([metres / p if p > 0 else math.nan for p in pace])
    read = number_reader(cells, sheet.delimiter)
    values = np.array([read(cell) for cell in cells]) * _SCALES.get(column.unit, 1.0)
    if column.role in ("latitude", "longitude") and np.nanmax(np.abs(values), initial=0.0) > 360.0:
        return values * SEMICIRCLE
    if column.unit:
        return values
    known = values[np.isfinite(values)]
    moving = known[known > 0]
    if column.role == "speed" and len(moving) and np.median(moving) > MOST_MS:
        return values / 3.6
    if column.role == "distance" and len(known) and known.max() < 300.0 and len(known) > 300:
        return values * 1000.0  # five minutes of samples within 300 m: kilometres
    return values


def _times(
    sheet: Sheet, naming: Naming, start: datetime | None, zone: tzinfo | None
) -> tuple[Floats, int | None] | None:
    """Unix seconds of every sample and the offset from UTC, where one is told."""
    moment, elapsed = naming.find("moment"), naming.find("elapsed")
    day, clock = naming.find("day"), naming.find("clock")
    if moment is not None:
        return _moments(sheet, moment, zone)
    if day is not None and clock is not None:
        days = [day_of(cell, day.unit) for cell in sheet.column(day.index)]
        clocks = [clock_of(cell) for cell in sheet.column(clock.index)]
        both = [
            _unix(datetime.combine(d, c), zone) if d is not None and c is not None else math.nan
            for d, c in zip(days, clocks, strict=True)
        ]
        return np.array(both), _offset(np.array(both), zone)
    if elapsed is None or start is None:
        return None
    seconds = _elapsed(sheet, elapsed)
    began = start if start.tzinfo is not None or zone is None else start.replace(tzinfo=zone)
    began = began.astimezone() if began.tzinfo is None else began
    offset = began.utcoffset() or timedelta()
    return seconds + began.timestamp(), int(offset.total_seconds())


def _unix(moment: datetime, zone: tzinfo | None) -> float:
    """Unix seconds of a moment; a wall clock is taken for the zone's."""
    if moment.tzinfo is None and zone is not None:
        moment = moment.replace(tzinfo=zone)
    return moment.astimezone(UTC).timestamp()


def _moments(sheet: Sheet, column: Column, zone: tzinfo | None) -> tuple[Floats, int | None]:
    cells = sheet.column(column.index)
    first = next((cell for cell in cells if cell), "")
    read = number_reader(cells, sheet.delimiter)
    value = read(first) if first else math.nan
    if value > 1e8 and len(first.split(".")[0]) >= 9:
        return np.array([read(cell) for cell in cells]) * (0.001 if value > 1e11 else 1.0), None
    found = [moment_of(cell, column.unit) if cell else None for cell in cells]
    told = next((m[0].utcoffset() for m in found if m is not None), None)
    times = [math.nan if m is None else _unix(m[0], zone) for m in found]
    if told is None and any(m is not None for m in found):
        return np.array(times), _offset(np.array(times), zone)
    # "Z" says nothing of the runner's clock
    offset = int(told.total_seconds()) or None if told is not None else None
    return np.array(times), offset


def _offset(times: Floats, zone: tzinfo | None) -> int | None:
    """What a wall clock was read by, so that it is shown as it was written."""
    known = times[np.isfinite(times)]
    if not len(known):
        return None
    began = datetime.fromtimestamp(float(known[0]), UTC).astimezone(zone)
    return int((began.utcoffset() or timedelta()).total_seconds())


def _elapsed(sheet: Sheet, column: Column) -> Floats:
    cells = sheet.column(column.index)
    if any(":" in cell for cell in cells):
        lengths = [parse_length(cell, "") for cell in cells]
        return np.array([math.nan if value is None else value for value in lengths])
    read = number_reader(cells, sheet.delimiter)
    scale = {"min": 60.0, "ms": 0.001}.get(column.unit, 1.0)
    return np.array([read(cell) for cell in cells]) * scale
