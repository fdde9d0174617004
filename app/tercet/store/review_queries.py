"""What the pages of a review ask of the judgements of its runs, in one go each."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable

from tercet.store.database import Store


def repetitions(store: Store, ids: Iterable[int]) -> dict[int, str]:
    """The repetitions of those of these runs that have a set of them, as JSON."""
    found = store.rows(
        "SELECT run_id, repetitions FROM judgement "
        "WHERE run_id IN (SELECT value FROM json_each(?)) AND words != ''",
        (json.dumps(list(ids)),),
    )
    return {row["run_id"]: row["repetitions"] for row in found}


def middles(store: Store, ids: Iterable[int]) -> list[sqlite3.Row]:
    """Causes (JSON) and seconds by intensity of these runs where judged, and whether meant."""
    return store.rows(
        "SELECT j.run_id, j.causes, j.spread, r.meant FROM judgement j "
        "JOIN run r ON r.id = j.run_id "
        "WHERE r.id IN (SELECT value FROM json_each(?)) AND r.sport = 'running'",
        (json.dumps(list(ids)),),
    )
