"""What the pages of a review ask of the judgements, in one go each."""

from __future__ import annotations

import sqlite3

from tercet.store.database import Store


def repetitions(store: Store) -> dict[int, str]:
    """The repetitions of every run that has a set of them, as JSON."""
    found = store.rows("SELECT run_id, repetitions FROM judgement WHERE words != ''")
    return {row["run_id"]: row["repetitions"] for row in found}


def middles(store: Store) -> list[sqlite3.Row]:
    """Of every judged run its causes (JSON), its seconds by intensity, and whether it was meant."""
    return store.rows(
        "SELECT j.run_id, j.causes, j.spread, r.meant FROM judgement j "
        "JOIN run r ON r.id = j.run_id WHERE r.sport = 'running' ORDER BY r.start_utc, r.id"
    )
