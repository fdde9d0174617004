"""What paper logs ask the store: a runner's shorthand, and results of races."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import date

from tercet.domain import RaceResult
from tercet.store import queries
from tercet.store.database import Row, Store

SHORTHAND = "shorthand"
#: A recording is the race of its day if it is as long as the race to this share.
SAME_LENGTH = 0.05
#: Shorter recordings are no race to reckon from. [m]
LEAST_METRES = 1000.0


def shorthand(store: Store) -> tuple[dict[str, str], str]:
    """This runner's own words with their meaning, and the unit of a number alone."""
    kept = json.loads(queries.setting(store, SHORTHAND, "{}"))
    return dict(kept.get("words", {})), str(kept.get("bare", ""))


def shorthand_row(words: Mapping[str, str], bare: str) -> Row:
    """A row to put for them."""
    kept = {"words": dict(sorted(words.items())), "bare": bare}
    return {"name": SHORTHAND, "value": json.dumps(kept, ensure_ascii=False)}


def race_results(store: Store) -> list[RaceResult]:
    """Races with a result, oldest first: named on paper, or recorded.

    A recording is a result if it is of the kind race, or of a stored race's day and as long as
    that race to 5 %; where the race's length is known it is taken for the distance.
    """
    found = []
    for row in store.rows(
        "SELECT r.day, r.kind, r.elapsed_s, r.distance_m, r.notation, r.race_s, r.race_m, "
        "c.distance_m AS length, c.name FROM run r LEFT JOIN race c ON c.day = r.day "
        "WHERE r.sport = 'running' AND (r.kind = 'race' OR c.id IS NOT NULL) ORDER BY r.start_utc"
    ):
        day, name = date.fromisoformat(row["day"]), row["name"] or ""
        if row["race_s"] and row["race_m"]:
            found.append(RaceResult(day, row["race_s"], row["race_m"], name))
            continue
        length, run = row["length"], row["distance_m"]
        if row["notation"] or row["elapsed_s"] <= 0 or run < LEAST_METRES:
            continue
        if length and abs(run / length - 1.0) <= SAME_LENGTH:
            found.append(RaceResult(day, row["elapsed_s"], length, name))
        elif not length and row["kind"] == "race":
            found.append(RaceResult(day, row["elapsed_s"], run, name))
    return found
