"""From a table's headings and values to a naming of its columns, or a question."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from tercet.formats.table.cells import (
    ORDERS,
    clock_of,
    day_of,
    moment_of,
    number_reader,
    orders_of,
    parse_length,
)
from tercet.formats.table.columns import Column, Naming, headings
from tercet.formats.table.sheet import Sheet
from tercet.language import mark, tr

#: Mean speeds of whole runs lie between these. [m/s] Common practice, no source.
SPEEDS = (0.9, 8.0)
#: Share of the rows that must make sense one way, and may at most make sense another way.
FITS, FITS_NOT = 0.95, 0.5
LOOKED_AT = 2_000
#: Samples lie no further apart than this, in the middle. [s]
SAMPLES_APART_S = 120.0
PER_UNIT = {"km": 1000.0, "mi": 1609.344, "m": 1.0}
_SAMPLE_ROLES = {"latitude", "longitude", "speed", "pace", "altitude", "cadence", "power",
                 "heart rate", "distance", "temperature"}  # fmt: skip


class Question(Exception):
    """What must be asked before a table can be read; ``naming`` is as far as it is known."""

    def __init__(self, text: str, naming: Naming | None = None) -> None:
        super().__init__(text)
        self.naming = naming


def naming_of(sheet: Sheet) -> Naming:
    """Tell what the columns of a table hold.

    Raises
    ------
    Question
        Where that cannot be told for certain.
    """
    if not sheet.header:
        raise Question(tr("Its first row has {n} columns without names.", n=sheet.width))
    found = headings(sheet)
    samples = _samples(sheet, found)
    if samples is not None:
        return samples
    return _runs(sheet, found)


def _by_role(columns: Sequence[Column]) -> dict[str, Column]:
    return {column.role: column for column in columns}


def _values(sheet: Sheet, column: Column) -> list[str]:
    return [cell for cell in sheet.column(column.index)[:LOOKED_AT] if cell]


# Samples ---------------------------------------------------------------------------------


def _samples(sheet: Sheet, found: Sequence[Column]) -> Naming | None:
    """The naming of a run's samples, None if the rows do not follow each other like samples."""
    roles = _by_role(found)
    if not _SAMPLE_ROLES & roles.keys() or len(sheet.rows) < 3:
        return None
    if "day" in roles and _days_apart(_values(sheet, roles["day"])):
        return None
    for role in ("moment", "elapsed", "time", "clock", "day"):
        column = roles.get(role)
        if column is None:
            continue
        settled = _clock_of_samples(sheet, column, roles)
        if settled:
            taken = {part.role for part in settled}
            rest = [c for c in found if c.role in _SAMPLE_ROLES and c.role not in taken]
            return Naming("samples", (*settled, *rest))
    return None


def _days_apart(cells: Sequence[str]) -> bool:
    """Whether a row or two has a day of its own, as runs have and samples never do."""
    orders = orders_of(cells)
    days = {day_of(cell, orders[0]) for cell in cells} if orders else set()
    return 2 * len(days) >= len(cells)


def _clock_of_samples(sheet: Sheet, column: Column, roles: dict[str, Column]) -> tuple[Column, ...]:
    cells = _values(sheet, column)
    orders = orders_of(cells) if column.role != "elapsed" else []
    if orders:
        moments = [moment_of(cell, orders[0]) for cell in cells]
        seconds = [m[0].timestamp() for m in moments if m is not None and m[1]]
        if len(seconds) > len(cells) // 2 and _follow(seconds):
            if len(orders) > 1:
                raise Question(
                    tr('"{name}": is the day first or the month?', name=sheet.header[column.index]),
                    Naming("samples", (replace(column, role="moment"),)),
                )
            return (replace(column, role="moment", unit=orders[0]),)
        return ()
    plain = number_reader(cells, sheet.delimiter)
    numbers = [plain(cell) for cell in cells]
    if all(map(math.isfinite, numbers)) and numbers:
        scale = {"min": 60.0, "ms": 0.001}.get(column.unit, 1.0)
        epoch = numbers[0] > 1e8
        if not _follow([value * (0.001 if numbers[0] > 1e11 else scale) for value in numbers]):
            return ()
        return (replace(column, role="moment" if epoch else "elapsed"),)
    clocks = [clock_of(cell) for cell in cells]
    day = roles.get("day")
    if all(clocks) and day is not None and column.role in ("time", "clock"):
        seconds = [c.hour * 3600.0 + c.minute * 60 + c.second for c in clocks if c is not None]
        if _follow(seconds):
            orders = orders_of(_values(sheet, day))
            if len(orders) != 1:
                raise Question(
                    tr('"{name}": is the day first or the month?', name=sheet.header[day.index])
                )
            return (replace(day, unit=orders[0]), replace(column, role="clock"))
        return ()
    lengths = [parse_length(cell, "") for cell in cells]
    if all(length is not None for length in lengths) and _follow([x or 0.0 for x in lengths]):
        return (replace(column, role="elapsed"),)
    return ()


def _follow(seconds: Sequence[float]) -> bool:
    """Whether most values rise, by less than minutes."""
    steps = sorted(b - a for a, b in pairwise(seconds))
    if len(steps) < 2:
        return False
    return 0.0 < steps[len(steps) // 2] <= SAMPLES_APART_S and steps[len(steps) // 10] >= 0.0


# Runs ------------------------------------------------------------------------------------


def _runs(sheet: Sheet, found: Sequence[Column]) -> Naming:
    roles = _by_role(found)
    day = roles.get("day") or roles.get("moment") or _day_by_values(sheet, roles.get("clock"))
    if day is None:
        named = ", ".join(f'"{name}"' for name in sheet.header[:6] if name)
        raise Question(
            tr("No column of days could be told among {names}.", names=named), Naming("runs", ())
        )
    settled = {**roles, "day": replace(day, role="day")}
    settled.pop("moment", None)
    if settled.get("clock") is not None and settled["clock"].index == day.index:
        settled.pop("clock")
    plain_time = settled.pop("time", None)
    if plain_time is not None and plain_time.index != day.index:
        as_length = _is_length(sheet, plain_time)
        if as_length and "duration" not in settled:
            settled["duration"] = replace(plain_time, role="duration")
        elif not as_length and "clock" not in settled:
            settled["clock"] = replace(plain_time, role="clock")
    for role in ("elapsed", "speed", "pace", "latitude", "longitude", "altitude", "temperature"):
        settled.pop(role, None)
    so_far = Naming("runs", tuple(settled.values()))
    if "duration" not in settled and "distance" not in settled:
        raise Question(tr("No column of distances or of times taken could be told."), so_far)
    orders = orders_of(_values(sheet, settled["day"])) or _most(_values(sheet, settled["day"]))
    if len(orders) != 1:
        name = sheet.header[day.index]
        unread = mark('"{name}": its days could not be read.')
        why = mark('"{name}": is the day first or the month?') if orders else unread
        raise Question(tr(why, name=name), so_far)
    settled["day"] = replace(settled["day"], unit=orders[0])
    for role in ("distance", "duration"):
        if role in settled and not settled[role].unit:
            settled[role] = _with_unit(sheet, settled, role)
    return Naming("runs", tuple(sorted(settled.values(), key=lambda c: c.index)))


def _most(cells: Sequence[str]) -> list[str]:
    """The one order in which nearly every cell is a day: sums and remarks may stand below."""
    counts = {o: sum(day_of(cell, o) is not None for cell in cells) for o in ("", *ORDERS)}
    best = max(counts.values(), default=0)
    if best < 2 or len(cells) - best > max(2, 0.1 * len(cells)):
        return []
    return [order for order, count in counts.items() if count == best][
        : 1 if counts[""] == best else 3
    ]


def _day_by_values(sheet: Sheet, column: Column | None) -> Column | None:
    if column is not None and (orders_of(_values(sheet, column))):
        return column
    return None


def _is_length(sheet: Sheet, column: Column) -> bool:
    """Whether "time" holds how long runs took, not when they began."""
    if column.unit in ("min", "s", "h"):
        return True
    cells = _values(sheet, column)
    if any(("am" in cell.casefold() or "pm" in cell.casefold()) for cell in cells):
        return False
    return any(clock_of(cell) is None or parse_length(cell, "") is None for cell in cells) or (
        sum(bool((length := parse_length(cell, "")) and length < 5 * 3600) for cell in cells)
        > 0.9 * len(cells)
    )


def _with_unit(sheet: Sheet, roles: dict[str, Column], role: str) -> Column:
    """Give a column the one unit in which its values make sense; ask where there are more."""
    column = roles[role]
    cells = _values(sheet, column)
    if role == "distance":
        units = [unit for unit in PER_UNIT if all(unit in cell.casefold() for cell in cells)]
        if len(units) == 1 or "km" in units:
            return replace(column, unit="km" if "km" in units else units[0])
        wanted: tuple[str, ...] = ("km", "mi", "m")
    elif all(parse_length(cell, "") is not None and ":" not in cell for cell in cells):
        return column  # every cell says its units
    elif any(":" in cell for cell in cells):
        three = any(cell.count(":") == 2 for cell in cells)
        wanted = ("h:mm:ss", "m:ss", "h:mm") if three else ("m:ss", "h:mm")
        if all(cell.count(":") == 2 for cell in cells):
            wanted = ("h:mm:ss", "m:ss")
        if all(cell.count(":") == 2 and cell[:1] in "01" for cell in cells):
            return replace(column, unit="h:mm:ss")
    else:
        wanted = ("min", "s", "h", "days")
    shares = {unit: _share(sheet, {**roles, role: replace(column, unit=unit)}) for unit in wanted}
    fit = [unit for unit, share in shares.items() if share >= FITS]
    if len(fit) == 1 and all(s <= FITS_NOT for unit, s in shares.items() if unit not in fit):
        return replace(column, unit=fit[0])
    name = sheet.header[column.index]
    asked = tr('"{name}": in {units}?', name=name, units=tr(" or ", "between units").join(wanted))
    raise Question(asked, Naming("runs", tuple(roles.values())))


def _share(sheet: Sheet, roles: dict[str, Column]) -> float:
    """Share of the rows whose mean speed a runner may have; 0 where it cannot be told."""
    distance, duration = roles.get("distance"), roles.get("duration")
    if distance is None or duration is None:
        return 0.0
    lengths, times = sheet.column(distance.index), sheet.column(duration.index)
    read = number_reader(lengths, sheet.delimiter)
    seen = good = 0
    for length, taken in zip(lengths[:LOOKED_AT], times, strict=False):
        metres = read(length) * PER_UNIT.get(distance.unit, math.nan)
        if not taken or not metres > 0:
            continue
        seconds = parse_length(taken, duration.unit)
        seen += 1
        good += bool(seconds and SPEEDS[0] <= metres / seconds <= SPEEDS[1])
    return good / seen if seen else 0.0
