"""A runner's whole record as plain rows, for handing it over; numbers of rows are left out."""

from __future__ import annotations

from typing import Any

from tercet.store.database import Row, Store

#: Parts of a record that belong to no single run, with the order of their rows.
PLAN_PARTS = {
    "threshold": "start, id",
    "block": "start",
    "race": "day, name",
    "planned": "day, place, id",
    "test": "day, id",
}
#: What is told of a file; its folder is this computer's own affair.
FILE_COLUMNS = ("sha256", "name", "size", "format", "status", "problem", "taken_in", "put_away")
#: What is the same on every computer, once a run's file is read there.
RUN_COLUMNS = (
    "sha256",
    "part",
    "start_utc",
    "utc_offset_s",
    "day",
    "sport",
    "kind",
    "name",
    "note",
    "effort",
    "meant",
    "notation",
    "typed",
    "race_s",
    "race_m",
    "known_s",
    "known_m",
    "format",
    "zone_from",
    "clock",
    "asks",
)
#: Columns that records of earlier versions do not hold, and what they mean then.
LATER = {"format": "", "zone_from": "", "clock": "", "asks": ""}
#: Columns of a plan that earlier versions do not write: left out where they say nothing, so that
#: what earlier copies said is known again.
LATER_PLAN = frozenset({"lt1_power", "lt2_power"})


def plan_part(store: Store, table: str) -> list[Row]:
    """The rows of a part, in order, without their numbers."""
    return [
        {
            name: value
            for name, value in dict(row).items()
            if name != "id" and not (name in LATER_PLAN and value is None)
        }
        for row in store.rows(f"SELECT * FROM {table} ORDER BY {PLAN_PARTS[table]}")
    ]


def plan_ids(store: Store, table: str) -> list[int]:
    """The numbers of a part's rows."""
    return [row["id"] for row in store.rows(f"SELECT id FROM {table}")]


def files(store: Store) -> list[Row]:
    """Every file that was taken in, by name of its content."""
    names = ", ".join(FILE_COLUMNS)
    return [dict(row) for row in store.rows(f"SELECT {names} FROM file ORDER BY sha256")]


def runs(store: Store) -> list[Row]:
    """Every run with what was said about it; attached files and corrections as lists."""
    names = ", ".join(RUN_COLUMNS)
    found = {
        row["id"]: {**{name: row[name] for name in RUN_COLUMNS}, "attached": [], "corrections": []}
        for row in store.rows(f"SELECT id, {names} FROM run ORDER BY start_utc, id")
    }
    for row in store.rows("SELECT * FROM attachment ORDER BY sha256, part"):
        if row["run_id"] in found:
            found[row["run_id"]]["attached"].append([row["sha256"], row["part"]])
    for row in store.rows("SELECT * FROM correction ORDER BY start_s, end_s, id"):
        if row["run_id"] in found:
            kept = {name: row[name] for name in dict(row) if name not in ("id", "run_id")}
            found[row["run_id"]]["corrections"].append(kept)
    return list(found.values())


def run_numbers(store: Store) -> dict[tuple[str, int], int]:
    """The number of the run that shows a file's part, or that it is attached to."""
    out = {
        (row["sha256"], row["part"]): row["run_id"]
        for row in store.rows("SELECT * FROM attachment")
    }
    for row in store.rows("SELECT id, sha256, part FROM run"):
        out[row["sha256"], row["part"]] = row["id"]
    return out


def correction_ids(store: Store, run_id: int) -> list[int]:
    """The numbers of a run's corrections."""
    found = store.rows("SELECT id FROM correction WHERE run_id = ?", (run_id,))
    return [row["id"] for row in found]


def shared(store: Store) -> set[tuple[str, str]]:
    """What copies that were handed over or taken in are known to say."""
    return {(row["what"], row["hash"]) for row in store.rows("SELECT what, hash FROM shared")}


def settings(store: Store, names: tuple[str, ...]) -> dict[str, Any]:
    """Those of the settings that are set."""
    marks = ", ".join("?" for _ in names)
    found = store.rows(f"SELECT name, value FROM setting WHERE name IN ({marks})", names)
    return {row["name"]: row["value"] for row in found}


def settings_like(store: Store, start: str) -> dict[str, Any]:
    """Settings whose names begin so."""
    found = store.rows("SELECT name, value FROM setting WHERE name GLOB ?", (f"{start}*",))
    return {row["name"]: row["value"] for row in found}


def columns(store: Store, table: str) -> set[str]:
    """The names of a table's columns."""
    return {row["name"] for row in store.rows("SELECT name FROM pragma_table_info(?)", (table,))}
