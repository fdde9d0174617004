"""What is asked of places: where runs began, and which runs were recorded."""

from __future__ import annotations

from tercet.store.database import Row, Store


def starts(store: Store) -> list[tuple[float, float]]:
    """Where runs began, in degrees, to some 100 m; those without a place are left out."""
    found = store.rows("SELECT place FROM run WHERE place != ''")
    out = []
    for row in found:
        latitude, longitude = row["place"].split()
        out.append((float(latitude), float(longitude)))
    return out


def recorded(store: Store) -> list[Row]:
    """File, part, start, day and sport of every run that has streams, oldest first."""
    return [
        dict(row)
        for row in store.rows(
            "SELECT sha256, part, start_utc, day, sport FROM run WHERE EXISTS (SELECT 1 FROM "
            "stream WHERE stream.sha256 = run.sha256 AND stream.part = run.part) "
            "ORDER BY start_utc, id"
        )
    ]
