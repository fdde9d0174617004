"""A store with ten years of runs: the sample season's rows, copied back in time."""

from __future__ import annotations

import sqlite3
from pathlib import Path

#: Runs in the store for the season's figures: ten years of 300.
MANY_RUNS = 3000


def fill(folder: Path) -> int:
    """Fill the store below a folder up with copies of its runs; gives how many there are."""
    place = folder / "store" / "tercet.db"
    db = sqlite3.connect(place)
    columns = [row[1] for row in db.execute("PRAGMA table_info(run)") if row[1] != "id"]
    judged = [row[1] for row in db.execute("PRAGMA table_info(judgement)") if row[1] != "run_id"]
    rows = db.execute(f"SELECT id, {', '.join(columns)} FROM run").fetchall()
    day, start = columns.index("day") + 1, columns.index("start_utc") + 1
    made = len(rows)
    while made < MANY_RUNS:
        back = made // len(rows) * 168
        for row in rows[: MANY_RUNS - made]:
            copy = list(row[1:])
            copy[day - 1] = db.execute("SELECT date(?, ?)", (row[day], f"-{back} days")).fetchone()[
                0
            ]
            copy[start - 1] = row[start] - back * 86400
            marks = ", ".join("?" for _ in copy)
            number = db.execute(
                f"INSERT INTO run ({', '.join(columns)}) VALUES ({marks})", copy
            ).lastrowid
            db.execute(
                f"INSERT INTO judgement (run_id, {', '.join(judged)}) "
                f"SELECT ?, {', '.join(judged)} FROM judgement WHERE run_id = ?",
                (number, row[0]),
            )
            made += 1
    db.commit()
    db.close()
    return made
