"""Where a key leads on the season sheet; pure functions of the rows."""

from __future__ import annotations

from datetime import date, timedelta

from tercet import week_days
from tercet.ui.sheet_rows import Sheet


def today(sheet: Sheet) -> date | None:
    """Today, or the season's last day if today lies outside it."""
    if sheet.today in sheet.places:
        return sheet.today
    return max(sheet.places, default=None)


def sideways(sheet: Sheet, day: date, part: int, step: int) -> tuple[date, int] | None:
    """The day's next session (``step`` 1 or -1), else the next day's first or last."""
    count = len(_sessions(sheet, day))
    if 0 <= part + step < count:
        return day, part + step
    other = day + timedelta(days=step)
    if other not in sheet.places:
        return None
    return other, 0 if step > 0 else max(0, len(_sessions(sheet, other)) - 1)


def by_weeks(sheet: Sheet, day: date, weeks: int) -> date | None:
    """The same weekday some weeks on or back, or as many of them as there are."""
    step = 1 if weeks > 0 else -1
    while weeks:
        other = day + timedelta(weeks=weeks)
        if other in sheet.places:
            return other
        weeks -= step
    return None


def week_end(sheet: Sheet, day: date, *, last: bool) -> date:
    """First or last day of the week that the season has."""
    days = [week_start(day) + timedelta(days=n) for n in range(7)]
    return [d for d in days if d in sheet.places][-1 if last else 0]


def week_start(day: date) -> date:
    """First day of a day's week."""
    return week_days.start_of(day)


def by_block(sheet: Sheet, row: int, column: int, step: int) -> date | None:
    """The same weekday (``column`` 1 to 7) in the first week of the next or previous block."""
    headings = [n for n, entry in enumerate(sheet.rows) if entry.week is None]
    target = sum(1 for n in headings if n <= row) - 1 + step
    if not 0 <= target < len(headings):
        return None
    for entry in sheet.rows[headings[target] + 1 :]:
        if entry.week is None:
            return None
        if entry.cells[column - 1].inside:
            return entry.cells[column - 1].day
    return None


def _sessions(sheet: Sheet, day: date) -> tuple[object, ...]:
    row, column = sheet.places[day]
    return sheet.rows[row].cells[column - 1].sessions
