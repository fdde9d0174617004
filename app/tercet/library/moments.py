"""When runs were: starts and zones put right, one or many at once; watches without a clock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from tercet.domain import Changes, Recording
from tercet.library import localtime
from tercet.store import queries
from tercet.store.database import Store

#: What a clock says that was never set: where watches, their chips and computers begin to count,
#: with the turns of their counters (from memory), and for so long after.
BEGINNINGS = tuple(
    datetime(*day, tzinfo=UTC)
    for day in ((1970, 1, 1), (1980, 1, 6), (1989, 12, 30), (1999, 8, 21), (2000, 1, 1))
)
NEW_FOR = timedelta(days=30)
#: Clocks are believed up to so long after now.
AHEAD = timedelta(days=2)
DEAD = "Its clock was not set"


def dead_clock(start: datetime, now: datetime) -> bool:
    """Whether a start is one that only a watch without a clock tells."""
    return start > now + AHEAD or any(day <= start < day + NEW_FOR for day in BEGINNINGS)


def question(start: datetime) -> str:
    """What is asked of a runner whose watch had no clock."""
    return f"{DEAD}: it says {start.day} {start:%B %Y, %H:%M} UTC. Say when the run started."


def started_at(recordings: Sequence[Recording], start: datetime, zone_name: str) -> list[Recording]:
    """The recordings of one file, moved so that the first of them starts then.

    A naive start is the runner's wall clock.
    """
    zone = localtime.zone_named(zone_name)
    if start.tzinfo is None:
        start = start.astimezone() if zone is None else start.replace(tzinfo=zone)
    by = start - min(recording.start for recording in recordings)
    return [
        replace(recording, start=(recording.start + by).astimezone(UTC), utc_offset_s=None)
        for recording in recordings
    ]


def shift(store: Store, run_ids: Sequence[int], seconds: float) -> Changes:
    """Move starts by so many seconds; days follow, and the thresholds of the new days judge."""
    step = "Correct a start" if len(run_ids) == 1 else f"Correct {len(run_ids)} starts"
    with store.atomic(step):
        for run_id in run_ids:
            row = queries.run(store, run_id)
            if row is not None:
                _place(store, run_id, row["start_utc"] + seconds, row["utc_offset_s"])
    return Changes(runs=True, step=step)


def set_zone(store: Store, run_ids: Sequence[int], zone_name: str) -> Changes:
    """Say in which zone runs were; their local days follow.

    Raises
    ------
    ValueError
        If no such zone is known.
    """
    zone = localtime.zone_named(zone_name)
    if zone is None:
        raise ValueError(f'no time zone is called "{zone_name}"; an example is Europe/Madrid')
    step = "Correct a zone" if len(run_ids) == 1 else f"Correct {len(run_ids)} zones"
    with store.atomic(step):
        for run_id in run_ids:
            row = queries.run(store, run_id)
            if row is not None:
                start = datetime.fromtimestamp(row["start_utc"], UTC)
                _place(store, run_id, row["start_utc"], localtime.offset_at(start, None, zone))
    return Changes(runs=True, step=step)


def _place(store: Store, run_id: int, start_utc: float, offset_s: int) -> None:
    from tercet.library.rejudge import judge_one

    day = localtime.local_time(start_utc, offset_s).date().isoformat()
    store.put(
        "run",
        {"id": run_id, "start_utc": start_utc, "utc_offset_s": offset_s, "day": day},
    )
    judge_one(store, run_id)
