"""Watches whose clock was never set: known by their start, asked for, and given one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from tercet.domain import Recording
from tercet.language import in_every_language, mark, month, tr
from tercet.library import localtime

#: What a clock says that was never set: where watches, their chips and computers begin to count,
#: with the turns of their counters (from memory), and for so long after.
BEGINNINGS = tuple(
    datetime(*day, tzinfo=UTC)
    for day in ((1970, 1, 1), (1980, 1, 6), (1989, 12, 30), (1999, 8, 21), (2000, 1, 1))
)
NEW_FOR = timedelta(days=30)
#: Clocks are believed up to so long after now.
AHEAD = timedelta(days=2)
DEAD = mark("Its clock was not set")


def asks_for_start(problem: str) -> bool:
    """Whether a file was refused because its clock was not set, in whatever language it is kept."""
    return problem.startswith(in_every_language(DEAD))


def dead_clock(start: datetime, now: datetime) -> bool:
    """Whether a start is one that only a watch without a clock tells."""
    return start > now + AHEAD or any(day <= start < day + NEW_FOR for day in BEGINNINGS)


def question(start: datetime) -> str:
    """What is asked of a runner whose watch had no clock."""
    return tr(
        "{fault}: it says {day} {month} {year}, {clock} UTC. Say when the run started.",
        fault=tr(DEAD),
        day=start.day,
        month=month(start.month),
        year=start.year,
        clock=f"{start:%H:%M}",
    )


def started_at(recordings: Sequence[Recording], start: datetime, zone_name: str) -> list[Recording]:
    """The recordings of one file, moved so that the first of them starts then.

    A naive start is the runner's wall clock.
    """
    zone = localtime.zone_named(zone_name)
    if start.tzinfo is None:
        start = start.astimezone() if zone is None else start.replace(tzinfo=zone)
    by = start - min(recording.start for recording in recordings)
    offset = localtime.offset_at(start, None, zone)  # as it was told, so it is shown
    return [
        replace(recording, start=(recording.start + by).astimezone(UTC), utc_offset_s=offset)
        for recording in recordings
    ]
