"""Judging one stored run anew, with the runner's corrections over it."""

from __future__ import annotations

from datetime import date

from tercet.library import reading
from tercet.library.beside import known_of
from tercet.library.written import said_by
from tercet.store import queries
from tercet.store.correction_queries import belts, corrections
from tercet.store.database import Row, Store


def judge_one(store: Store, run_id: int) -> None:
    """Judge a run anew inside an open step: what is said about it has changed."""
    row = queries.run(store, run_id)
    if row is None or row["sport"] != "running":
        return
    entry = reading.in_force(queries.thresholds(store), date.fromisoformat(row["day"]))
    packed = queries.streams(store, row["sha256"], row["part"])
    judged: Row = reading.judge_again(
        packed,
        row["stops"],
        entry,
        said_by(row),
        corrections(store, run_id),
        known_of(row["laps"], row["effort"], belts(store, run_id)),
    )
    changed = judged.pop("run", None)
    if changed is not None:
        store.put("run", {**changed, "id": run_id})
    store.put("judgement", {**judged, "run_id": run_id})
