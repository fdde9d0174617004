"""Runs put together, cut in two, and parted again from the run they were taken for."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime

import numpy as np

from tercet.domain import Changes, Lap, Recording, Stream
from tercet.language import number, tr
from tercet.library import localtime, reading
from tercet.library.parting import parted
from tercet.library.rejudge import judge_one
from tercet.library.sources import Source
from tercet.store import packing, queries
from tercet.store.database import Row, Store
from tercet.store.piece_queries import FIRST_MADE, corrections_of, free_part

#: Two runs are joined over a break of at most this. [s]
LONGEST_BREAK_S = 6 * 3600.0
#: A clock may run over so much where one watch stopped and another started. [s]
OVERLAP_S = 2.0
#: Samples may lie so far apart within a run; a longer break is a stop. [s]
SAMPLES_APART_S = 15.0
#: A piece shorter than this is none. [s]
SHORTEST_S = 10.0
#: What of a run's row its file does not say.
_SAID = ("name", "sport", "kind", "note", "effort", "device", "format", "utc_offset_s", "damage",
         "zone_from")  # fmt: skip


@dataclass(frozen=True)
class Correctable:
    """A session in the list of those that can be put right."""

    id: int
    start: datetime  # local wall clock, naive
    sport: str
    kind: str
    name: str
    elapsed_s: float
    distance_m: float
    #: What was taken for the same run: content, part and the file's name.
    attached: tuple[tuple[str, int, str], ...] = ()
    zone_from: str = ""  # what its local clock follows, as the store has it
    clock: str = ""  # "day", "am" or "pm" where nobody wrote a time of day


def correctable(store: Store) -> list[Correctable]:
    """All sessions, the newest first."""
    found = []
    for row in reversed(queries.sessions(store)):
        attached = []
        for sha256, part in queries.attachments(store, row["id"]):
            file = queries.file(store, sha256)
            attached.append((sha256, part, file.name if file is not None else ""))
        start = localtime.local_time(row["start_utc"], row["utc_offset_s"])
        told = (row["sport"], row["kind"], row["name"], row["elapsed_s"], row["distance_m"])
        clocked = (row["zone_from"], row["clock"])
        found.append(Correctable(row["id"], start, *told, tuple(attached), *clocked))
    return found


def stored(store: Store, run_id: int) -> tuple[Row, Recording]:
    """A run's row, and its recording as it was stored.

    Raises
    ------
    ValueError
        If it has no samples: a line of a diary or of a table.
    """
    row = queries.run(store, run_id)
    if row is None:
        raise ValueError(tr("this session is gone"))
    packed = queries.streams(store, row["sha256"], row["part"])
    if "time" not in packed:
        raise ValueError(tr("a session without samples can be neither joined nor cut"))
    clock, streams = packing.unpack_streams(packed)
    return dict(row), Recording(
        start=datetime.fromtimestamp(row["start_utc"], UTC),
        time=clock,
        streams=streams,
        format=row["format"],
        sport=row["sport"],
        kind=row["kind"],
        utc_offset_s=row["utc_offset_s"],
        device=row["device"],
        name=row["name"],
        laps=tuple(Lap(**lap) for lap in json.loads(row["laps"])),
        stops=tuple((float(a), float(b)) for a, b in json.loads(row["stops"])),
        damage=row["damage"],
    )


def join(store: Store, first_id: int, second_id: int) -> Changes:
    """Make one run of two that belong together; the break between them is no running.

    Raises
    ------
    ValueError
        If they overlap, lie too far apart in two files, or one has no samples.
    """
    one, two = sorted((stored(store, first_id), stored(store, second_id)), key=_start)
    (row, before), (other, after) = one, two
    gap = (after.start - before.start).total_seconds() - before.elapsed_s
    if gap < -OVERLAP_S:
        raise ValueError(
            tr(
                "they overlap by {minutes} min: they are not two pieces of one run",
                minutes=number(-gap / 60),
            )
        )
    if gap > LONGEST_BREAK_S and row["sha256"] != other["sha256"]:
        raise ValueError(
            tr("there are {hours} h between them: too long for one run", hours=number(gap / 3600))
        )
    step = tr("Join two sessions")
    with store.atomic(step):
        _attach(store, row, row["id"])
        _attach(store, other, row["id"])
        for kept in queries.attachments(store, other["id"]):
            store.put("attachment", {"sha256": kept[0], "part": kept[1], "run_id": row["id"]})
        shift = (after.start - before.start).total_seconds()
        for said in corrections_of(store, other["id"]):
            moved = {"start_s": said["start_s"] + shift, "end_s": said["end_s"] + shift}
            store.put("correction", {**said, **moved, "run_id": row["id"]})
        store.remove("judgement", other["id"])
        store.remove("run", other["id"])
        notes = " / ".join(note for note in (row["note"], other["note"]) if note)
        _put(store, {**row, "note": notes}, joined(before, after), row["id"])
    return Changes(runs=True, files=True, step=step)


def cut(store: Store, run_id: int, at_s: float) -> Changes:
    """Cut a run in two, ``at_s`` seconds after its start.

    Raises
    ------
    ValueError
        If a piece would be too short, or the run has no samples.
    """
    row, whole = stored(store, run_id)
    if not SHORTEST_S <= at_s <= whole.elapsed_s - SHORTEST_S:
        raise ValueError(tr("both pieces must have some seconds: choose another place"))
    before, after = parted(whole, at_s)
    at_s = (after.start - whole.start).total_seconds()  # of the sample there
    step = tr("Cut a session in two")
    with store.atomic(step):
        _attach(store, row, run_id)
        said = corrections_of(store, run_id)
        _put(store, row, before, run_id)
        number = _put(store, {**row, "note": ""}, after, None)
        for item in said:
            end = item["end_s"]
            if end is not None and end > at_s:
                start = max(item["start_s"] - at_s, 0.0)
                new = {**item, "start_s": start, "end_s": end - at_s, "run_id": number}
                if item["start_s"] < at_s:
                    store.put("correction", {**item, "end_s": at_s})
                    new.pop("id")
                store.put("correction", new)
        judge_one(store, run_id)
        judge_one(store, number)
    return Changes(runs=True, step=step)


def part_again(store: Store, run_id: int, sha256: str, part: int) -> Changes:
    """Make a run of its own of what was taken for the same run.

    Raises
    ------
    ValueError
        If its file cannot be read any more, or is part of a run that was put together.
    """
    row = queries.run(store, run_id)
    if row is None:
        raise ValueError(tr("this session is gone"))
    if row["part"] >= FIRST_MADE:
        raise ValueError(tr("it was joined or cut: take that back first"))
    terms = reading.Terms(tuple(queries.thresholds(store)), queries.setting(store, "zone"))
    read = reading.read_file(Source(str(store.originals.path(sha256))), terms)
    found = next((item for item in read.runs if item.run["part"] == part), None)
    if found is None:
        raise ValueError(
            tr(
                "its file cannot be read any more: {reason}",
                reason=read.problem or tr("no such part"),
            )
        )
    step = tr("Part two recordings of one run")
    with store.atomic(step):
        store.remove("attachment", sha256, part)
        number = store.put("run", {**found.run, "sha256": sha256})
        store.put("judgement", {**found.judgement, "run_id": number})
        file = queries.file(store, sha256)
        if file is not None and file.status == "same run":
            store.put("file", {"sha256": sha256, "status": "run", "problem": ""})
    return Changes(runs=True, files=True, step=step)


def joined(before: Recording, after: Recording) -> Recording:
    """Two recordings as one; ``after`` starts no earlier than ``before`` ends.

    Where it starts with the sample that ends ``before``, as what was cut does, that counts once.
    """
    gap, end = (after.start - before.start).total_seconds(), before.elapsed_s
    shift = max(gap, end + 0.001)
    far = before.streams.get("distance")
    reached = float(far.values[-1]) if far is not None and len(far.values) else 0.0
    if abs(gap - end) < 0.002:
        shift = end
        before = replace(before, time=before.time[:-1], streams=_before(before.streams, end))
    streams: dict[str, Stream] = {}
    for name in sorted({*before.streams, *after.streams}):
        parts = []
        for recording, by in ((before, 0.0), (after, shift)):
            stream = recording.streams.get(name)
            if stream is not None:
                lift = reached if name == "distance" and by else 0.0
                parts.append((stream.time + by, stream.values + lift))
        if name == "distance" and len(parts) == 1:
            continue  # a distance that covers one of two pieces would count too little
        streams[name] = Stream(
            np.concatenate([time for time, _ in parts]), np.concatenate([v for _, v in parts])
        )
    laps = [replace(lap, start_s=lap.start_s + shift) for lap in after.laps]
    stops = [(a + shift, b + shift) for a, b in after.stops]
    pause = (end, shift)
    paused = [pause] if pause[1] - pause[0] > SAMPLES_APART_S else []
    return replace(
        before,
        time=np.concatenate((before.time, after.time + shift)),
        streams=streams,
        laps=(*before.laps, *laps),
        stops=(*before.stops, *paused, *stops),
        damage=" ".join(text for text in (before.damage, after.damage) if text),
    )


def _before(streams: Mapping[str, Stream], end: float) -> dict[str, Stream]:
    """What of them is earlier."""
    kept = {name: stream.time < end - 0.0005 for name, stream in streams.items()}
    return {
        name: Stream(stream.time[kept[name]], stream.values[kept[name]])
        for name, stream in streams.items()
    }


def _start(item: tuple[Row, Recording]) -> datetime:
    return item[1].start


def _attach(store: Store, row: Row, run_id: int) -> None:
    """Keep the file that a run came from with it."""
    if row["part"] < FIRST_MADE:
        store.put("attachment", {"sha256": row["sha256"], "part": row["part"], "run_id": run_id})


def _put(store: Store, row: Row, recording: Recording, run_id: int | None) -> int:
    """Put a recording made from others in a run's place, with what its runner had said of it."""
    recording = packing.rounded(recording)
    part = free_part(store, row["sha256"])
    made = reading.prepare(
        recording, part, tuple(queries.thresholds(store)), queries.setting(store, "zone")
    )
    store.put_streams(row["sha256"], part, made.streams)
    said = {name: row[name] for name in _SAID}
    number = store.put("run", {**made.run, **said, "sha256": row["sha256"], "id": run_id})
    store.put("judgement", {**made.judgement, "run_id": number})
    judge_one(store, number)
    return number


__all__ = ["cut", "join", "joined", "part_again", "parted", "stored"]
