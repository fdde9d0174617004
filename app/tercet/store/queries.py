"""Every named question to the store; rows become domain objects here."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from tercet.domain import Block, DatedThresholds, Race
from tercet.engine.countback import Volume
from tercet.engine.shades import Thresholds
from tercet.store.database import Row, Store

FIELDS = (
    "lt1_hr", "lt2_hr", "lt1_speed", "lt2_speed", "hr_rest", "hr_max", "top_speed", "lt1_power",
    "lt2_power",
)  # fmt: skip
SECONDS = ("easy_s", "moderate_s", "hard_s", "not_running_s", "unjudged_s")
METRES = ("easy_m", "moderate_m", "hard_m", "not_running_m", "unjudged_m")


@dataclass(frozen=True)
class FileRow:
    """A file that was once dropped, and what became of it."""

    sha256: str
    name: str
    folder: str
    format: str
    status: str
    problem: str
    taken_in: str
    put_away: bool


def setting(store: Store, name: str, default: str = "") -> str:
    """A setting's value, or the default."""
    found = store.rows("SELECT value FROM setting WHERE name = ?", (name,))
    return str(found[0]["value"]) if found else default


def settings_like(store: Store, beginning: str) -> dict[str, str]:
    """Settings whose names begin alike, by name."""
    found = store.rows(
        "SELECT name, value FROM setting WHERE substr(name, 1, ?) = ?", (len(beginning), beginning)
    )
    return {row["name"]: row["value"] for row in found}


def thresholds(store: Store) -> list[DatedThresholds]:
    """The dated thresholds, oldest first."""
    return [
        DatedThresholds(
            start=date.fromisoformat(row["start"]),
            values=Thresholds(**{name: row[name] for name in FIELDS}),
            source=row["source"],
            estimated=bool(row["estimated"]),
            interval=json.loads(row["interval"]),
            id=row["id"],
            change=row["change"],
            found=date.fromisoformat(row["found"]) if row["found"] else None,
        )
        for row in store.rows("SELECT * FROM threshold ORDER BY start, id")
    ]


def threshold_row(entry: DatedThresholds) -> Row:
    """A row to put for dated thresholds."""
    return {
        "id": entry.id,
        "start": entry.start.isoformat(),
        **{name: getattr(entry.values, name) for name in FIELDS},
        "source": entry.source,
        "estimated": int(entry.estimated),
        "interval": json.dumps(dict(entry.interval)),
        "change": entry.change,
        "found": entry.found.isoformat() if entry.found is not None else "",
    }


def blocks(store: Store) -> list[Block]:
    """The season's blocks, oldest first."""
    return [
        Block(
            date.fromisoformat(row["start"]),
            date.fromisoformat(row["end"]),
            row["name"],
            row["kind"],
            row["easy_target"],
            row["id"],
            row["moderate_target"],
            row["hard_target"],
            row["measure"],
            _volume(row),
            row["longest"],
        )
        for row in store.rows("SELECT * FROM block ORDER BY start")
    ]


def races(store: Store) -> list[Race]:
    """The races, oldest first."""
    return [
        Race(
            date.fromisoformat(row["day"]),
            row["name"],
            row["distance_m"],
            row["id"],
            row["goal_s"],
            bool(row["main"]),
        )
        for row in store.rows("SELECT * FROM race ORDER BY day")
    ]


def _volume(row: sqlite3.Row) -> Volume | None:
    if row["weekly"] is None:
        return None
    plain = Volume(row["weekly"])
    told = {
        name: row[name] if row[name] is not None else getattr(plain, name)
        for name in ("growth", "easier_every", "easier_share")
    }
    return Volume(row["weekly"], most_s=row["most"], **told)


_SESSION_COLUMNS = (
    "r.id, r.day, r.start_utc, r.utc_offset_s, r.name, r.sport, r.kind, r.elapsed_s, r.moving_s, "
    "r.distance_m, r.hr_mean, r.climb_m, r.effort, r.note, r.channels, r.format, r.sha256, r.part, "
    "r.device, r.damage, r.zone_from, r.clock, j.threshold_id, j.words, t.estimated, "
    + ", ".join(f"j.{name}" for name in (*SECONDS, *METRES))
)
_SESSIONS = (
    f"SELECT {_SESSION_COLUMNS} FROM run r LEFT JOIN judgement j ON j.run_id = r.id "
    "LEFT JOIN threshold t ON t.id = j.threshold_id"
)


def sessions(store: Store) -> list[sqlite3.Row]:
    """All sessions with their sums, oldest first."""
    return store.rows(f"{_SESSIONS} ORDER BY r.start_utc, r.id")


def session(store: Store, run_id: int) -> sqlite3.Row | None:
    """One session with its sums."""
    found = store.rows(f"{_SESSIONS} WHERE r.id = ?", (run_id,))
    return found[0] if found else None


def run(store: Store, run_id: int) -> sqlite3.Row | None:
    """A run's whole row."""
    found = store.rows("SELECT * FROM run WHERE id = ?", (run_id,))
    return found[0] if found else None


def run_ids(store: Store, sport: str = "running") -> list[int]:
    """Ids of all runs of a sport, oldest first."""
    found = store.rows("SELECT id FROM run WHERE sport = ? ORDER BY start_utc", (sport,))
    return [row["id"] for row in found]


_JUDGED_OTHERWISE = (
    "FROM run r JOIN judgement j ON j.run_id = r.id WHERE r.sport = 'running' "
    "AND (j.method != COALESCE(?, j.method) OR j.threshold_id IS NOT COALESCE("
    "(SELECT id FROM threshold WHERE start <= r.day ORDER BY start DESC, id DESC LIMIT 1), "
    "(SELECT id FROM threshold ORDER BY start, id LIMIT 1)))"
)


def judged_otherwise(store: Store, method: int) -> list[int]:
    """Ids of running judged by thresholds not of its day, or another method; newest first."""
    found = store.rows(f"SELECT r.id {_JUDGED_OTHERWISE} ORDER BY r.start_utc DESC", (method,))
    return [row["id"] for row in found]


def judged_by_others(store: Store, method: int | None = None) -> bool:
    """Whether some running is judged by thresholds not of its day, or by another method."""
    return bool(store.rows(f"SELECT 1 {_JUDGED_OTHERWISE} LIMIT 1", (method,)))


def elapsed(store: Store, ids: Sequence[int]) -> float:
    """How long these runs last together. [s]"""
    marks = ",".join("?" * len(ids))
    found = store.rows(f"SELECT SUM(elapsed_s) AS whole FROM run WHERE id IN ({marks})", ids)
    return found[0]["whole"] or 0.0


def first_day(store: Store) -> date | None:
    """Local day of the first running session."""
    found = store.rows("SELECT MIN(day) AS first FROM run WHERE sport = 'running'")[0]["first"]
    return date.fromisoformat(found) if found else None


def last_day(store: Store) -> date | None:
    """Local day of the last running session."""
    found = store.rows("SELECT MAX(day) AS last FROM run WHERE sport = 'running'")[0]["last"]
    return date.fromisoformat(found) if found else None


def fingerprints(store: Store) -> list[str]:
    """The stored fingerprints of all running, oldest first."""
    found = store.rows("SELECT fingerprint FROM run WHERE sport = 'running' ORDER BY start_utc")
    return [row["fingerprint"] for row in found if row["fingerprint"]]


def runs_between(store: Store, low_utc: float, high_utc: float) -> list[sqlite3.Row]:
    """Recorded runs that start in a span of UTC seconds."""
    return store.rows(
        "SELECT id, sha256, part, start_utc, utc_offset_s, elapsed_s, distance_m, records, "
        "channels, format, name, sport FROM run WHERE notation = '' AND start_utc BETWEEN ? AND ?",
        (low_utc, high_utc),
    )


def runs_of_day(store: Store, day: str) -> list[sqlite3.Row]:
    """Running of a local day, recorded or from paper."""
    return store.rows(
        "SELECT * FROM run WHERE sport = 'running' AND day = ? ORDER BY start_utc, id", (day,)
    )


def streams(store: Store, sha256: str, part: int) -> dict[str, bytes]:
    """The packed streams of a file's part."""
    found = store.rows(
        "SELECT name, data FROM stream WHERE sha256 = ? AND part = ?", (sha256, part)
    )
    return {row["name"]: row["data"] for row in found}


def attachments(store: Store, run_id: int) -> list[tuple[str, int]]:
    """Content and part of what is attached to a run."""
    found = store.rows("SELECT sha256, part FROM attachment WHERE run_id = ?", (run_id,))
    return [(row["sha256"], row["part"]) for row in found]


def is_used(store: Store, sha256: str) -> bool:
    """Whether any run or attachment still comes from this content."""
    return bool(
        store.rows(
            "SELECT 1 FROM run WHERE sha256 = :s "
            "UNION ALL SELECT 1 FROM attachment WHERE sha256 = :s",
            {"s": sha256},
        )
    )


def judgement(store: Store, run_id: int) -> sqlite3.Row | None:
    """A run's whole judgement row."""
    found = store.rows("SELECT * FROM judgement WHERE run_id = ?", (run_id,))
    return found[0] if found else None


def file(store: Store, sha256: str) -> FileRow | None:
    """A file by its content."""
    found = store.rows("SELECT * FROM file WHERE sha256 = ?", (sha256,))
    return _file(found[0]) if found else None


def known_files(store: Store) -> set[str]:
    """Contents that were taken in before."""
    return {row["sha256"] for row in store.rows("SELECT sha256 FROM file")}


def places_of_files(store: Store) -> list[tuple[str, str, int]]:
    """Folder, name and size of every file that was taken in or refused."""
    found = store.rows("SELECT folder, name, size FROM file")
    return [(row["folder"], row["name"], row["size"]) for row in found]


def files_to_look_at(store: Store) -> list[FileRow]:
    """Files refused or read only in part and not put away, refused ones first, then by date."""
    found = store.rows(
        "SELECT * FROM file WHERE put_away = 0 AND (status = 'refused' "
        "OR (problem != '' AND status = 'run')) ORDER BY status != 'refused', taken_in, name"
    )
    return [_file(row) for row in found]


def last_taken_in(store: Store) -> str:
    """When the last file came in, ISO 8601, or nothing."""
    return str(store.rows("SELECT MAX(taken_in) AS last FROM file")[0]["last"] or "")


def counts(store: Store) -> dict[str, int]:
    """How many files ended in each status."""
    found = store.rows("SELECT status, COUNT(*) AS n FROM file GROUP BY status")
    return {row["status"]: row["n"] for row in found}


def _file(row: Mapping[str, Any] | sqlite3.Row) -> FileRow:
    return FileRow(
        row["sha256"],
        row["name"],
        row["folder"],
        row["format"],
        row["status"],
        row["problem"],
        row["taken_in"],
        bool(row["put_away"]),
    )


def block_rows(entries: Sequence[Block]) -> list[Row]:
    """Rows to put for blocks."""
    return [
        {
            "id": block.id,
            "start": block.start.isoformat(),
            "end": block.end.isoformat(),
            "name": block.name,
            "kind": block.kind,
            "easy_target": block.easy_target,
            "moderate_target": block.moderate_target,
            "hard_target": block.hard_target,
            "measure": block.measure,
            **_volume_row(block.volume),
            "longest": block.longest,
        }
        for block in entries
    ]


def _volume_row(volume: Volume | None) -> Row:
    named = {
        "weekly": "first_s",
        "growth": "growth",
        "most": "most_s",
        "easier_every": "easier_every",
        "easier_share": "easier_share",
    }
    return {column: getattr(volume, name, None) for column, name in named.items()}


def race_rows(entries: Sequence[Race]) -> list[Row]:
    """Rows to put for races."""
    return [
        {
            "id": race.id,
            "day": race.day.isoformat(),
            "name": race.name,
            "distance_m": race.distance_m,
            "goal_s": race.goal_s,
            "main": int(race.main),
        }
        for race in entries
    ]
