"""Weeks as the user counts them: the weekday they begin on, asked by all that lays out weeks."""

from __future__ import annotations

from datetime import date, timedelta

from tercet.engine import countback

MONDAY, SATURDAY, SUNDAY = 0, 5, 6
_first = MONDAY


def begin_on(weekday: int) -> None:
    """Begin weeks on a weekday from here on, 0 is Monday; what is shown must be laid anew."""
    global _first
    if not 0 <= weekday <= 6:
        raise ValueError("a weekday is a number from 0 to 6")
    _first = weekday


def first_weekday() -> int:
    """The weekday that weeks begin on, 0 is Monday."""
    return _first


def start_of(day: date) -> date:
    """First day of a day's week."""
    return countback.week_start(day, _first)


def starts(first: date, last: date) -> list[date]:
    """First days of all weeks that hold a day from ``first`` to ``last``, both included."""
    return countback.week_starts(first, last, _first)


def column_of(day: date) -> int:
    """Place of a day in its week, 0 to 6."""
    return (day - start_of(day)).days


def weekdays() -> tuple[int, ...]:
    """The seven weekdays, 0 is Monday, in the order in which they stand in a week."""
    return tuple((_first + k) % 7 for k in range(7))


def middle_of(start: date) -> date:
    """The day that says which month or block a week belongs to where it lies in two."""
    return start + timedelta(days=3)
