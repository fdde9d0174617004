"""When runs were: starts and zones put right, one or many at once."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any

from tercet.domain import Changes
from tercet.language import tr
from tercet.library import localtime
from tercet.library.rejudge import judge_one
from tercet.store import packing, queries
from tercet.store.database import Store

if TYPE_CHECKING:
    from zoneinfo import ZoneInfo

Row = Any

DAY_S = 86_400.0


def shift(store: Store, run_ids: Sequence[int], seconds: float) -> Changes:
    """Move starts by so many seconds; days follow, and the thresholds of the new days judge."""
    step = tr("Correct a start") if len(run_ids) == 1 else tr("Correct {n} starts", n=len(run_ids))
    with store.atomic(step):
        for run_id in run_ids:
            row = queries.run(store, run_id)
            if row is not None:
                told = {} if seconds % DAY_S == 0 else {"clock": ""}
                _place(store, run_id, row["start_utc"] + seconds, row["utc_offset_s"], **told)
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
        raise ValueError(
            tr(
                'no time zone is called "{zone_name}"; an example is Europe/Madrid',
                zone_name=zone_name,
            )
        )
    step = tr("Correct a zone") if len(run_ids) == 1 else tr("Correct {n} zones", n=len(run_ids))
    with store.atomic(step):
        for run_id in run_ids:
            row = queries.run(store, run_id)
            if row is not None:
                _to_zone(store, row, zone, f"{localtime.SAID} {zone_name}")
    return Changes(runs=True, step=step)


def by_place(store: Store, run_ids: Sequence[int]) -> Changes:
    """Let local clocks follow the places of runs; those without a place stay as they are.

    Raises
    ------
    ValueError
        If none of them has a place on land.
    """
    found = {}
    for run_id in run_ids:
        row = queries.run(store, run_id)
        if row is not None:
            name = _zone_of(store, row)
            if name:
                found[run_id] = (row, name)
    if not found:
        raise ValueError(tr("no position was recorded from which a zone could be told"))
    count = len(found)
    step = (
        tr("Take a zone from its place")
        if count == 1
        else tr("Take {count} zones from their places", count=count)
    )
    with store.atomic(step):
        for row, name in found.values():
            _to_zone(store, row, localtime.zone_named(name), f"{localtime.PLACE} {name}")
    return Changes(runs=True, step=step)


def follow_runner(store: Store, zone_name: str) -> None:
    """Inside an open step: runs taken in before any zone was told follow the first one told."""
    zone, source = localtime.zone_named(zone_name), f"{localtime.RUNNER} {zone_name}"
    if zone is None:
        return
    for row in queries.sessions(store):
        if row["zone_from"] == localtime.RUNNER:
            _to_zone(store, row, zone, source)


def _zone_of(store: Store, row: Row) -> str:
    packed = queries.streams(store, row["sha256"], row["part"])
    if not {"time", "latitude", "longitude"} <= packed.keys():
        return ""
    _, streams = packing.unpack_streams(packed)
    latitude, longitude = streams["latitude"].values, streams["longitude"].values
    middle = len(latitude) // 2, len(longitude) // 2
    return localtime.zone_of_place(float(latitude[middle[0]]), float(longitude[middle[1]]))


def _to_zone(store: Store, row: Row, zone: ZoneInfo | None, source: str) -> None:
    """A recorded moment stays and its clock follows; where only a day is known, the day stays."""
    start_utc = row["start_utc"]
    if row["clock"]:
        wall = localtime.local_time(start_utc, row["utc_offset_s"])
        start_utc = wall.replace(tzinfo=zone).timestamp()
    start = datetime.fromtimestamp(start_utc, UTC)
    _place(store, row["id"], start_utc, localtime.offset_at(start, None, zone), zone_from=source)


def _place(store: Store, run_id: int, start_utc: float, offset_s: int, **more: str) -> None:
    day = localtime.local_time(start_utc, offset_s).date().isoformat()
    moved = {"id": run_id, "start_utc": start_utc, "utc_offset_s": offset_s, "day": day}
    before = queries.run(store, run_id)
    store.put("run", {**moved, **more})
    if before is None or before["day"] != day:
        judge_one(store, run_id)
