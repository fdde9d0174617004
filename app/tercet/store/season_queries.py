"""Questions behind the season's figures: causes, intensities and starting places of runs."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping, Sequence
from datetime import date

from tercet.store.database import Store
from tercet.store.queries import METRES, SECONDS

_NAME = "put away"


def sessions(store: Store, ids: Sequence[int] | None = None) -> list[sqlite3.Row]:
    """Sessions, oldest first: what the season's rows need and no more, ten sums at the end.

    All of them, or those with the given ids.
    """
    sums = ", ".join(f"j.{name}" for name in (*SECONDS, *METRES))
    chosen = "" if ids is None else f"WHERE r.id IN ({', '.join('?' for _ in ids)}) "
    return store.rows(
        "SELECT r.id, r.day, r.start_utc, r.utc_offset_s, r.name, r.sport, r.kind, r.elapsed_s, "
        "r.moving_s, r.distance_m, r.hr_mean, r.climb_m, r.effort, r.note, r.clock, "
        "j.words, t.estimated, "
        f"{sums} FROM run r LEFT JOIN judgement j ON j.run_id = r.id "
        f"LEFT JOIN threshold t ON t.id = j.threshold_id {chosen}ORDER BY r.start_utc, r.id",
        tuple(ids or ()),
    )


def figures(store: Store, first: date, last: date) -> list[sqlite3.Row]:
    """Running of a span of local days: ids with what is kept about their moderate seconds."""
    return store.rows(
        "SELECT r.id, r.meant, r.place, j.causes, j.spread FROM run r "
        "JOIN judgement j ON j.run_id = r.id "
        "WHERE r.sport = 'running' AND r.day BETWEEN ? AND ? ORDER BY r.start_utc, r.id",
        (first.isoformat(), last.isoformat()),
    )


def put_away(store: Store, span: str) -> Mapping[str, float]:
    """What the runner put away for a stretch of the season, with how much it was then."""
    found = store.rows("SELECT value FROM setting WHERE name = ?", (f"{_NAME} {span}",))
    return dict(json.loads(found[0]["value"])) if found else {}


def put_away_row(span: str, entries: Mapping[str, float]) -> dict[str, str]:
    """The setting to put for it."""
    return {"name": f"{_NAME} {span}", "value": json.dumps(dict(entries))}


def spacing(store: Store) -> int:
    """Least days from one hard day to the next that this runner wants."""
    found = store.rows("SELECT value FROM setting WHERE name = 'spacing'")
    return int(found[0]["value"]) if found else 2
