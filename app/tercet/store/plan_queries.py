"""Named questions to the store about planned sessions and repetitions."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING

from tercet.domain import Planned
from tercet.engine.shades import Shade
from tercet.store.database import Row, Store
from tercet.store.season_queries import among

if TYPE_CHECKING:
    from tercet.engine.judgement import Repetition


def planned(store: Store, ids: Sequence[int] | None = None) -> list[Planned]:
    """All planned sessions, or those with the given ids, by day and their order in it."""
    chosen = "" if ids is None else f"WHERE id IN ({', '.join('?' for _ in ids)}) "
    return [
        Planned(
            date.fromisoformat(row["day"]), row["notation"], row["place"], row["note"], row["id"]
        )
        for row in store.rows(
            f"SELECT * FROM planned {chosen}ORDER BY day, place, id", tuple(ids or ())
        )
    ]


def next_place(store: Store, day: date) -> int:
    """Place after all that is planned on a day."""
    found = store.rows("SELECT MAX(place) FROM planned WHERE day = ?", (day.isoformat(),))
    return 0 if found[0][0] is None else int(found[0][0]) + 1


def planned_row(entry: Planned) -> Row:
    """A row to put for a planned session."""
    return {
        "id": entry.id,
        "day": entry.day.isoformat(),
        "place": entry.place,
        "notation": entry.notation,
        "note": entry.note,
    }


def repetitions(
    store: Store, ids: Sequence[int] | None = None
) -> list[tuple[int, float, date, str, tuple[Repetition, ...]]]:
    """Id, start (UTC) [s], local day, words and repetitions of running sessions that have some.

    Of all of them, or of those with the given ids.
    """
    found = store.rows(
        "SELECT r.id, r.start_utc, r.day, j.words, j.repetitions FROM run r "
        "JOIN judgement j ON j.run_id = r.id "
        f"WHERE r.sport = 'running' AND j.repetitions NOT IN ('', '[]') AND {among(ids)}",
        tuple(ids or ()),
    )
    return [
        (
            row["id"],
            row["start_utc"],
            date.fromisoformat(row["day"]),
            row["words"],
            _read(row["repetitions"]),
        )
        for row in found
    ]


@lru_cache(maxsize=8192)
def _read(text: str) -> tuple[Repetition, ...]:
    """Repetitions as they are kept; the same text is read once."""
    from tercet.engine.judgement import Repetition

    return tuple(Repetition(**{**item, "shade": Shade(item["shade"])}) for item in json.loads(text))
