"""Runs that a file alone does not give, joined, cut or typed: carried whole by a record."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from datetime import UTC, date, datetime
from hashlib import sha256
from typing import Any

import numpy as np

from tercet.domain import Lap, Recording, Stream
from tercet.formats.assemble import MAX_SAMPLES
from tercet.formats.paper import FORMAT as PAPER
from tercet.language import tr
from tercet.library import reading, rejudge, written
from tercet.library.intake import keep_said
from tercet.library.pieces import stored
from tercet.store import packing, queries
from tercet.store import record_queries as rows
from tercet.store.database import Row, Store
from tercet.store.piece_queries import FIRST_MADE

#: What a recording put together or cut has beside what every run has.
MADE_COLUMNS = ("device", "format", "damage")
#: What of a carried run's row holds on every computer; its sums are reckoned there.
CARRIED = (*(name for name in rows.RUN_COLUMNS if name not in ("sha256", "part")), "format")
_UTC_RANGE = (-2e9, 5e9)


@dataclass(frozen=True)
class Piece:
    """A run that is carried whole: its row with what is attached, and its samples if it has any."""

    row: Row
    recording: Recording | None = None

    @property
    def place(self) -> tuple[str, int]:
        """Content and part."""
        return self.row["sha256"], self.row["part"]

    @property
    def files(self) -> set[str]:
        """Contents that it comes from."""
        made = self.recording is not None
        return {self.row["sha256"], *(a for a, _ in self.row["attached"] if made)}

    def told(self) -> Row:
        """As a line of ``pieces.jsonl``."""
        return self.row if self.recording is None else {**self.row, **_samples(self.recording)}

    def print(self) -> list[Any]:
        """What tells it from another piece."""
        row = self.row
        if self.recording is None:
            return [row["sha256"], row["day"], row["notation"], row["typed"]]
        attached = sorted(map(list, row["attached"]))
        return [row["sha256"], attached, fingerprint(_samples(self.recording))]


def fingerprint(value: Any) -> str:
    """A short name for what is said: equal for equal values, on every computer."""
    text = json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return sha256(text.encode()).hexdigest()[:20]


def _samples(recording: Recording) -> Row:
    clock = recording.time.tolist()
    streams = {}
    for name, stream in recording.streams.items():
        own = stream.time.tolist()
        streams[name] = {
            "values": stream.values.tolist(),
            **({} if own == clock else {"time": own}),
        }
    return {
        "time": clock,
        "streams": streams,
        "stops": [list(stop) for stop in recording.stops],
        "laps": [asdict(lap) for lap in recording.laps],
    }


def pieced(store: Store) -> list[Piece]:
    """Every run that is carried whole, as it is stored."""
    found, numbers = [], rows.run_numbers(store)
    for run in rows.runs(store):
        if run["part"] >= FIRST_MADE and not run["notation"]:
            row, recording = stored(store, numbers[run["sha256"], run["part"]])
            more = {name: row[name] for name in MADE_COLUMNS}
            found.append(Piece(_plain(run) | more, recording))
        elif run["format"] == PAPER:
            found.append(Piece(_plain(run)))
    return found


def _plain(run: Row) -> Row:
    return {name: value for name, value in run.items() if name != "corrections"}


def read(line: Mapping[str, Any]) -> Piece:
    """A line of ``pieces.jsonl``, checked.

    Raises
    ------
    ValueError, TypeError, KeyError
        If it cannot be one.
    """
    row = {name: line[name] for name in (*rows.RUN_COLUMNS, "attached")}
    row["format"] = str(line["format"])
    date.fromisoformat(row["day"])
    if not isinstance(row["part"], int) or len(str(row["sha256"])) != 64:
        raise ValueError(tr("a piece of no file"))
    if not _UTC_RANGE[0] < float(row["start_utc"]) < _UTC_RANGE[1]:
        raise ValueError(tr("a piece of no time"))
    if "time" not in line:
        if not row["notation"]:
            raise ValueError(tr("a piece without samples and words"))
        return Piece(row)
    row |= {name: str(line[name]) for name in MADE_COLUMNS}
    clock = _rising(line["time"])
    streams = {str(name): _stream(told, clock) for name, told in line["streams"].items()}
    return Piece(
        row,
        Recording(
            start=datetime.fromtimestamp(float(row["start_utc"]), UTC),
            time=clock,
            streams=streams,
            format=row["format"],
            sport=str(row["sport"]),
            kind=str(row["kind"]),
            utc_offset_s=int(row["utc_offset_s"]),
            device=row["device"],
            name=str(row["name"]),
            laps=tuple(Lap(**lap) for lap in line["laps"]),
            stops=tuple((float(a), float(b)) for a, b in line["stops"]),
            damage=row["damage"],
        ),
    )


def _stream(told: Mapping[str, Any], clock: np.ndarray[Any, Any]) -> Stream:
    values = np.asarray(told["values"], dtype=np.float64)
    own = _rising(told["time"]) if "time" in told else clock
    if values.shape != own.shape or not np.isfinite(values).all():
        raise ValueError(tr("a channel that is not whole"))
    return Stream(own, values)


def _rising(told: Sequence[float]) -> np.ndarray[Any, Any]:
    clock = np.asarray(told, dtype=np.float64)
    if clock.ndim != 1 or not 1 <= len(clock) <= MAX_SAMPLES:
        raise ValueError(tr("a piece without samples, or with too many"))
    if not np.isfinite(clock).all() or (np.diff(clock) < 0).any() or clock[0] < 0:
        raise ValueError(tr("a clock that does not rise"))
    return clock


def groups(pieces: Iterable[Piece]) -> list[tuple[set[str], list[Piece]]]:
    """Pieces that belong together because they come from the same files."""
    found: list[tuple[set[str], list[Piece]]] = []
    for piece in pieces:
        files, held = set(piece.files), [piece]
        for other in [item for item in found if item[0] & files]:
            found.remove(other)
            files |= other[0]
            held = [*other[1], *held]
        found.append((files, held))
    return found


def saying(files: Collection[str], pieces: Sequence[Piece]) -> tuple[str, list[Any]]:
    """What a group is about and what it says; equal on every computer."""
    return f"pieces:{min(files)}", sorted((piece.print() for piece in pieces), key=json.dumps)


def replace_by(store: Store, mine: Sequence[Piece], theirs: Sequence[Piece]) -> None:
    """Put another copy's pieces in place of what comes from the same parts, in an open step."""
    numbers = rows.run_numbers(store)
    sources = {(str(a), int(b)) for piece in theirs for a, b in piece.row["attached"]}
    places = sources | {piece.place for piece in (*mine, *theirs)}
    gone: dict[int, tuple[Row, list[tuple[str, int]]]] = {}
    for place in places & numbers.keys():
        number = numbers[place]
        row = queries.run(store, number)
        if row is not None and (row["sha256"], row["part"]) in places:
            gone[number] = (dict(row), queries.attachments(store, number))
    for number in gone:
        for held in rows.correction_ids(store, number):
            store.remove("correction", held)
        store.remove("judgement", number)
        store.remove("run", number)
    made = {piece.place: _put(store, piece) for piece in theirs}
    for before, attached in gone.values():
        number = _heir(before, theirs, made)
        for content, part in attached:
            if (content, part) not in sources:
                store.put("attachment", {"sha256": content, "part": part, "run_id": number})
        keep_said(store, number, before["note"], before["effort"])


def _heir(row: Row, theirs: Sequence[Piece], made: Mapping[tuple[str, int], int]) -> int:
    """The new run that a run of before lives on in."""
    place = [row["sha256"], row["part"]]
    for piece in theirs:
        if piece.place == tuple(place) or place in [list(item) for item in piece.row["attached"]]:
            return made[piece.place]
    return next(iter(made.values()))


def _put(store: Store, piece: Piece) -> int:
    """Put a piece, judged by the thresholds that are here."""
    row, thresholds = piece.row, tuple(queries.thresholds(store))
    zone = queries.setting(store, "zone")
    carried = {name: row[name] for name in CARRIED}
    if piece.recording is None:
        said = written.said_by(row)
        assert said is not None
        entry = reading.in_force(thresholds, date.fromisoformat(row["day"]))
        judged = written.judge(said, entry)
        run = {**_WORDED, **carried, **written.figures(said, judged, entry)}
        judgement = reading.judgement_row(judged, entry)
    else:
        recording = packing.rounded(piece.recording)
        made = reading.prepare(recording, row["part"], thresholds, zone)
        store.put_streams(row["sha256"], row["part"], made.streams)
        run, judgement = {**made.run, **carried}, made.judgement
    number = store.put("run", {**run, "sha256": row["sha256"], "part": row["part"]})
    store.put("judgement", {**judgement, "run_id": number})
    for content, part in row["attached"]:
        store.put("attachment", {"sha256": str(content), "part": int(part), "run_id": number})
    rejudge.judge_one(store, number)
    return int(number)


#: What a run in words has none of.
_WORDED: Row = {"device": "", "records": 0, "channels": "", "fingerprint": "", "stops": "[]",
                "laps": "[]", "damage": ""}  # fmt: skip
