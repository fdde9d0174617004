"""Questions of runs that are put together or cut: where their streams may lie."""

from __future__ import annotations

from tercet.store.database import Row, Store

#: Parts from here on were made by the runner, not read from the file.
FIRST_MADE = 1000


def free_part(store: Store, sha256: str) -> int:
    """A part of a file under which no streams lie yet."""
    found = store.rows("SELECT MAX(part) AS last FROM stream WHERE sha256 = ?", (sha256,))
    last = found[0]["last"]
    return max(FIRST_MADE, 0 if last is None else last + 1)


def corrections_of(store: Store, run_id: int) -> list[Row]:
    """Whole rows of what was said about a run's stretches."""
    found = store.rows("SELECT * FROM correction WHERE run_id = ? ORDER BY id", (run_id,))
    return [dict(row) for row in found]
