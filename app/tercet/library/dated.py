"""Which thresholds a day is judged by: those in force, or between two tests a straight line."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import fields, replace
from datetime import date

from tercet.domain import DatedThresholds
from tercet.engine.shades import Thresholds


def in_force(entries: Sequence[DatedThresholds], day: date) -> DatedThresholds | None:
    """The thresholds of a day: the last that start on or before it, else the first of all.

    If the next ones are reached by a straight line (``change`` is "linear"), the values are
    those of the day on that line; they stay the entry that began it.
    """
    if not entries:
        return None
    ordered = sorted(entries, key=lambda entry: entry.start)
    at = max(bisect_right([entry.start for entry in ordered], day) - 1, 0)
    entry = ordered[at]
    if at + 1 == len(ordered) or ordered[at + 1].change != "linear" or day <= entry.start:
        return entry
    later = ordered[at + 1]
    share = (day - entry.start).days / (later.start - entry.start).days
    return replace(entry, values=_between(entry.values, later.values, share))


def _between(first: Thresholds, second: Thresholds, share: float) -> Thresholds:
    """A point on the way; what only one of them knows stays as the first has it."""
    found: dict[str, float | None] = {}
    for field in fields(Thresholds):
        a, b = getattr(first, field.name), getattr(second, field.name)
        found[field.name] = a if a is None or b is None else a + share * (b - a)
    return Thresholds(**found)


def with_new(
    before: Sequence[DatedThresholds], new: DatedThresholds, *, everything: bool
) -> list[DatedThresholds]:
    """All dated thresholds as they would be then.

    Parameters
    ----------
    before : sequence of DatedThresholds
        As they are now.
    new : DatedThresholds
        Takes the place of one from the same day.
    everything : bool
        Whether runs before it are judged by it too, which replaces all that began earlier.
    """
    if everything:
        first = min([new.start, *(entry.start for entry in before)])
        found = new.found or new.start
        return [
            replace(new, start=first, found=found),
            *(entry for entry in before if entry.start > new.start),
        ]
    return [*(entry for entry in before if entry.start != new.start), new]
