"""Questions behind the season's figures: causes, intensities and starting places of runs."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping, Sequence

from tercet.store.database import Store
from tercet.store.queries import METRES, SECONDS

_NAME = "put away"


#: A session's way: without what its runner left out, and as long as a belt said that it was.
_WAY = (
    "CASE WHEN j.easy_m IS NOT NULL AND r.id IN "
    "(SELECT run_id FROM correction WHERE shade = 'X' OR kind = 'belt speed') "
    "THEN j.easy_m + j.moderate_m + j.hard_m + j.unjudged_m ELSE r.distance_m END"
)


def sessions(store: Store, ids: Sequence[int] | None = None) -> list[sqlite3.Row]:
    """Sessions, oldest first: what the season's rows need and no more, ten sums at the end.

    All of them, or those with the given ids.
    """
    sums = ", ".join(f"j.{name}" for name in (*SECONDS, *METRES))
    chosen = "" if ids is None else f"WHERE {among(ids)}"
    return store.rows(
        "SELECT r.id, r.day, r.start_utc, r.utc_offset_s, r.name, r.sport, r.kind, r.elapsed_s, "
        f"r.moving_s, {_WAY}, r.hr_mean, r.climb_m, r.effort, r.note, r.clock, "
        "j.words, t.estimated, "
        f"{sums} FROM run r LEFT JOIN judgement j ON j.run_id = r.id "
        f"LEFT JOIN threshold t ON t.id = j.threshold_id {chosen}ORDER BY r.start_utc, r.id",
        tuple(ids or ()),
    )


def among(ids: Sequence[int] | None) -> str:
    """The condition that a run is one of these, if they are given; its values are the ids."""
    return "1 " if ids is None else f"r.id IN ({', '.join('?' for _ in ids)}) "


def figures(store: Store, ids: Sequence[int] | None = None) -> list[sqlite3.Row]:
    """Ids of all running, or of some, with what is kept about their moderate seconds."""
    return store.rows(
        "SELECT r.id, r.meant, r.place, j.causes, j.spread FROM run r "
        "JOIN judgement j ON j.run_id = r.id "
        f"WHERE r.sport = 'running' AND {among(ids)}ORDER BY r.id",
        tuple(ids or ()),
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


def behind(store: Store, ids: Sequence[int] | None = None) -> list[sqlite3.Row]:
    """How each run was judged: its number and day, ten counts, and the ends of its intervals."""
    ends = ", ".join(
        f"json_extract(ends, '$[{k}][{side}]') AS {name}_{shade}"
        for side, name in enumerate(("low", "high"))
        for k, shade in enumerate("emh")
    )
    return store.rows(
        "WITH judged AS (SELECT r.id, r.day, j.unjudged_s, "
        "COALESCE(j.easy_s + j.moderate_s + j.hard_s, 0) AS shaded, r.notation <> '' AS worded, "
        "j.threshold_id IS NOT NULL AS known, COALESCE(t.estimated, 0) AS guess, "
        "instr(r.channels, 'heart_rate') AND t.lt1_hr > 0 AND t.lt2_hr > 0 AS beats, "
        "(instr(r.channels, 'speed') OR instr(r.channels, 'distance') "
        "OR instr(r.channels, 'latitude')) AND t.lt1_speed > 0 AND t.lt2_speed > 0 AS paced, "
        "instr(r.channels, 'power') AND t.lt1_power > 0 AND t.lt2_power > 0 AS watts, "
        "EXISTS (SELECT 1 FROM correction c WHERE c.run_id = r.id) AS spoken, "
        "CASE WHEN json_array_length(NULLIF(j.intervals, '')) = 3 THEN j.intervals END AS ends "
        "FROM run r LEFT JOIN judgement j ON j.run_id = r.id "
        "LEFT JOIN threshold t ON t.id = j.threshold_id "
        f"WHERE r.sport = 'running' AND {among(ids)}) "
        "SELECT id, day, 1 AS runs, shaded > 0 AND NOT worded AND beats AND paced AS both, "
        "shaded > 0 AND NOT worded AND paced AND beats IS NOT 1 AS pace, "
        "shaded > 0 AND NOT worded AND watts AND paced IS NOT 1 AS power, "
        "shaded > 0 AND NOT worded AND beats AND paced IS NOT 1 AND watts IS NOT 1 AS heart, "
        "shaded > 0 AND worded AS words, shaded <= 0 AS unjudged, unjudged_s, spoken AS said, "
        "shaded > 0 AND known AS known, shaded > 0 AND known AND guess AS estimated, "
        f"ends IS NOT NULL AS ranged, {ends} FROM judged",
        tuple(ids or ()),
    )
